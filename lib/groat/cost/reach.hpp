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

// ---------------------------------------------------------------------------------------------------

inline Reach reach_of(Book const& book, std::vector<Sale> const& sales) {
    Reach reach{std::vector<bool>(book.formulas.size(), false),
                std::vector<bool>(book.ingredients.size(), false)};
    std::vector<std::size_t> open;
    auto const use = [&](std::vector<Consumption> const& all) {
        for (Consumption const& each : all)
            if (each.supply.is_resolved()) reach.bought[each.supply.index] = true;
    };
    for (Sale const& sale : sales) {
        open.push_back(sale.formula);
        if (sale.unit != nullptr) use(sale.unit->packing);
    }
    while (!open.empty()) {
        std::size_t const index = open.back();
        open.pop_back();
        if (reach.formulas[index]) continue;
        reach.formulas[index] = true;
        for (Line const& line : book.formulas[index].lines) {
            if (line.of == Line::Of::formula)
                open.push_back(line.item.index);
            else if (line.of == Line::Of::ingredient)
                reach.bought[line.item.index] = true;
        }
        use(book.formulas[index].consumables);
    }
    return reach;
}

} // namespace groat
