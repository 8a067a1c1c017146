/// Where the ingredient cost of an item goes, by name.
#pragma once

#include <groat/price/item_cost.hpp>

#include <cstddef>
#include <vector>

namespace groat {

/// A part of the ingredient cost of a whole standard run.
struct NamedCost {
    enum class Kind { ingredient, others, lost };
    Kind kind;
    std::size_t ingredient = 0; ///< of an ingredient, in the book
    std::size_t count = 0;      ///< of others: how many ingredients
    Money cost;
};

/// What is eaten of each ingredient, the dearest first, then what of them is lost on the way. Where that is more than
/// `most` parts the cheapest stand together, but at least `fewest` by name. The parts add up to the ingredient cost.
[[nodiscard]] std::vector<NamedCost> named_costs(ItemCost const& item, std::size_t most,
                                                 std::size_t fewest);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/price/named_costs.ipp>
#endif
