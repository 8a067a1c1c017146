/// What is bought from one supplier, pack by pack. Parts add up: a basket's goods, freight and deposit are those of
/// its lines.
#pragma once

#include <groat/measure/money.hpp>

#include <cstddef>
#include <vector>

namespace groat {

/// So many packs of one offer. Amounts are net of recoverable tax.
struct PackLine {
    std::size_t offer = 0;
    Integer packs;
    Money price;   ///< of a pack, as listed, at so many packs
    Money goods;   ///< price times packs, net
    Money freight; ///< of all packs, net
    Money deposit; ///< of all packs, net; it comes back

    /// What is paid and does not come back.
    [[nodiscard]] Money cost() const { return goods + freight; }
};

/// What is bought from one supplier.
struct Basket {
    std::size_t supplier = 0;
    std::vector<PackLine> lines;
    Money listed; ///< goods at their listed prices: what counts towards the minimum order
    Money goods;
    Money freight;
    Money deposit;
    Money delivery;

    [[nodiscard]] Money total() const { return goods + freight + deposit + delivery; }
};

} // namespace groat
