#pragma once

#include <groat/sheets/ways_table.hpp>

#include <groat/base/linkage.hpp>
#include <groat/sheets/shape_quote.hpp>

#include <string>

namespace groat {

namespace ways_table_detail {

inline std::string words(CostedAs way, Quote const& quote) {
    if (way == CostedAs::usual_run) return "in a usual run";
    if (way == CostedAs::alone) return "alone";
    std::string names;
    for (Order const* const other : quote.companions)
        names += (names.empty() ? "" : ", ") + other->id;
    return "made together with " + names;
}

/// How a line was costed: without companions, together is alone.
inline CostedAs used(CostedAs way, Quote const& quote) {
    return way == CostedAs::made_together && quote.companions.empty() ? CostedAs::alone : way;
}

} // namespace ways_table_detail

GROAT_INLINE Table ways_table(Quote const& quote, Book const& book, Figures const& figures) {
    Table table = table_of<sheet_shapes::maker_quote::ways>(
        "The same alone, together and in a usual run",
        {{"item"}, {"way", "Costed"}, {"cost", "Cost each"}, {"price", "Price each"}, {"used"}});
    table.remark =
        "The price that is asked is the one marked. 'costed as' of a line, of the order or of "
        "shop.yaml says which.";
    for (std::size_t i = 0; i < quote.lines.size(); ++i)
        for (CostedWay const& way : quote.in_other_ways)
            table.rows.push_back(
                {fmt::format("{}", i + 1),
                 {in_sentence(quote.lines[i].title(book)), ways_table_detail::words(way.way, quote),
                  figures.money(way.lines[i].burden.cost), figures.coins(way.lines[i].price),
                  ways_table_detail::used(quote.ways[i], quote) == way.way
                      ? Cell(std::string("asked"))
                      : Cell()}});
    return table;
}

} // namespace groat
