/// What a new price list changes against what the same supplier asked before.
#pragma once

#include <groat/model/book.hpp>

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace groat {

/// One pack of the new list, of the old offers, or of both. Money is what a pack costs: price and freight, net of
/// recoverable tax; a deposit is no cost, and delivery is the supplier's, not the list's. Exact.
struct PriceChange {
    enum class Kind { up, down, repacked, added, gone, unchanged };

    Kind kind = Kind::unchanged;
    std::size_t ingredient = 0;
    std::optional<std::size_t> before = {}; ///< index among the book's offers
    std::optional<std::size_t> after = {};  ///< index among the new ones
    Money was = {};
    Money now = {};
    /// `now / was - 1`; for another pack the same of the cost per gram, millilitre or piece. Nothing where
    /// there is nothing to compare, or it was free.
    std::optional<Number> change = {};
    std::vector<std::string> lost = {}; ///< what the old offer said and the new one does not
};

/// The changes that `listed` brings for a supplier: the dearer ones first, the largest rise before others,
/// then the cheaper ones likewise, other packs, what is new, what is gone and what stays; of equals in
/// reading order.
///
/// `listed` are offers whose items are resolved to ingredients of the book. The old offers are those of lists in
/// force on `date`: of each pack the newest that has begun and not ended. An item of which exactly one pack
/// is gone and one is new is in another pack.
/// Example  50 lb of flour from 21.50 to 22.90  ->  up, by 6.5 %
[[nodiscard]] std::vector<PriceChange> price_changes(Book const& book, std::string_view supplier,
                                                     std::vector<Offer> const& listed, Date date);

/// The same for what was paid and not listed: each pack against the supplier's list. Nothing is gone by it, and
/// what a list says by hand stays as it is.
[[nodiscard]] std::vector<PriceChange> paid_against_list(Book const& book,
                                                         std::string_view supplier,
                                                         std::vector<Offer> const& paid, Date date);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/review/price_change.ipp>
#endif
