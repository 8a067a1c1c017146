/// What things are made of, all the way down: which formulas and which ingredients and supplies they reach.
#pragma once

#include <groat/cost/explosion.hpp>

#include <vector>

namespace groat {

struct Reach {
    std::vector<bool> formulas; ///< by formula: sold itself, or a part of what is
    std::vector<bool>
        bought; ///< by ingredient or supply: goes in, is used up on the way, or packs it
};

/// Everything that the sales take. Names have been linked; what stands for nothing is passed over.
[[nodiscard]] Reach reach_of(Book const& book, std::vector<Sale> const& sales);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/cost/reach.ipp>
#endif
