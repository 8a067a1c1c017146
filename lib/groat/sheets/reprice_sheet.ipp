#pragma once

#include <groat/sheets/reprice_sheet.hpp>

#include <groat/base/linkage.hpp>
#include <groat/sheets/letterhead.hpp>
#include <groat/sheets/menu_mix_sections.hpp>
#include <groat/sheets/shape_menu.hpp>

#include <fmt/ranges.h>

#include <string>
#include <vector>

namespace groat {

GROAT_INLINE Sheet reprice_sheet(Repricing const& repricing, MenuCost const& cost,
                                 Book const& book) {
    Figures const figures(book.shop);
    bool const has_sales = cost.menu->has_sales();
    auto const whole_units = [](Number const& units) {
        return Figure{decimal_at_most(units, 0, Tie::down), units, "each"};
    };
    bool const is_margin = std::holds_alternative<Margin>(repricing.aim);
    std::string const what = is_margin ? "Margin" : "Standard food cost";
    Number const aim = is_margin ? std::get<Margin>(repricing.aim).value()
                                 : std::get<FoodCostShare>(repricing.aim).value();
    Sheet sheet =
        sheet_for(book.shop, "reprice", "maker", "Prices to change on menu: " + cost.menu->name);
    FactsOf<sheet_shapes::reprice::aim> facts;
    facts.add("costs_on", "Costs of", Figures::day(cost.date));
    facts.add("wanted", what + " wanted over the menu", Figures::percent(aim));
    facts.add("before", what + " now", Figures::percent(repricing.before));
    facts.add("after", what + " then", Figures::percent(repricing.after));
    facts.add("limit", "A price may move by", Figures::percent(repricing.limits.move.value()));
    facts.add("count", "Prices to change", Figures::count(Number(repricing.rises.size())));
    RepriceLimits const& limits = repricing.limits;
    if (limits.at_most)
        facts.add("at_most", "Prices that may change", Figures::count(Number(*limits.at_most)));
    if (!limits.left_alone.empty()) {
        std::vector<std::string> names;
        for (std::size_t const line : limits.left_alone) names.push_back(cost.lines[line].title);
        facts.add("left_alone", "Left alone", fmt::format("{}", fmt::join(names, "; ")));
    }
    if (!repricing.rises.empty()) {
        facts.add("change", "Change in total", figures.money(repricing.change));
        facts.add("profit", "That earns more", figures.money(repricing.profit));
    }
    sheet.sections.emplace_back(std::move(facts));
    Remarks remarks = remarks_of<sheet_shapes::reprice::remarks>("", {});
    if (repricing.rises.empty()) {
        remarks.lines.emplace_back("The prices now reach it already.");
    } else {
        Table table = table_of<sheet_shapes::reprice::rises>(
            "Prices to change", {{"item"},
                                 {"now", "Price now"},
                                 {"price", "New price"},
                                 {"change", "Change"},
                                 {"share", "Of the price"},
                                 {"sold", has_sales ? "Sold" : "Items"},
                                 {"bears", "Can lose"},
                                 {"profit", "Earns more"}});
        std::vector<Money> profits;
        for (PriceRise const& rise : repricing.rises) profits.push_back(rise.profit);
        std::vector<Cell> const column = figures.column(profits);
        for (std::size_t i = 0; i < repricing.rises.size(); ++i) {
            PriceRise const& rise = repricing.rises[i];
            MenuLine const& line = cost.lines[rise.line];
            table.rows.push_back(
                {fmt::format("{}", rise.line + 1),
                 {menu_sheet_detail::numbered(cost, rise.line), figures.coins(line.price),
                  figures.coins(rise.price), figures.money(rise.change),
                  Figures::percent(rise.share_of(line.price)), Figures::count(line.units()),
                  has_sales ? whole_units(rise.bears) : Figures::percent(rise.bears), column[i]}});
        }
        table.rows.push_back({"total",
                              {std::string("All"),
                               {},
                               {},
                               figures.money(repricing.change),
                               {},
                               {},
                               {},
                               column.back()},
                              Row::Kind::total});
        sheet.sections.emplace_back(std::move(table));
        if (limits.below_first)
            remarks.lines.emplace_back(
                "Items below their target go first: others rise only where all of these, as far as "
                "they may, are not enough.");
        if (repricing.least_change == repricing.change)
            remarks.lines.emplace_back(
                limits.below_first
                    ? "Of what is left to choose, no smaller set of changes does it: "
                      "fewest prices, and of these the least change in all, on "
                      "price points."
                    : "No smaller set of changes does it: fewest prices, and of "
                      "these the least change in all, on price points.");
        else
            remarks.lines.push_back(fmt::format(
                "No fewer prices do it. The change is the least that was found, and can be no less "
                "than {} in all.",
                figures.amount(repricing.least_change)));
        remarks.lines.emplace_back(
            "Sales are taken as unchanged: whether people buy as many at these prices, you judge. "
            "Can lose: so much of its sales may be lost before that price earns no more than now "
            "(the contribution now for all, over the contribution then).");
    }
    sheet.sections.emplace_back(std::move(remarks));
    return sheet;
}

} // namespace groat
