#pragma once

#include <groat/model/stock_links.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/name.hpp>

namespace groat {

namespace stock_links_detail {

GROAT_INLINE void link_made(StockItem& item, Book const& book, Diagnostics& found) {
    item.of = StockItem::Of::made;
    std::vector<SaleUnit> const& ways = book.formulas[item.item.index].sold_as;
    for (std::size_t i = 0; i < ways.size(); ++i)
        if (ways[i].name == item.sale_unit.name) item.sale_unit.index = i;
    if (item.sale_unit.is_given() && !item.sale_unit.is_resolved())
        found.error(item.sale_unit.origin, "unknown-sale-unit",
                    fmt::format("no sale unit is called '{}'", item.sale_unit.name),
                    did_you_mean(item.sale_unit.name, names_of(ways),
                                 fmt::format("add it to 'sold as' of '{}'", item.item.name)));
    if (item.par)
        found.error(
            item.item.origin, "par-of-own-goods",
            fmt::format("'{}' is made here, and 'par' says what to buy up to", item.item.name),
            "remove 'par'");
}

} // namespace stock_links_detail

} // namespace groat
