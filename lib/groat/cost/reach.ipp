#pragma once

#include <groat/cost/reach.hpp>

#include <groat/base/linkage.hpp>

namespace groat {

GROAT_INLINE Reach reach_of(Book const& book, std::vector<Sale> const& sales) {
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
