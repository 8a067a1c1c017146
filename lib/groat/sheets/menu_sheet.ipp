#pragma once

#include <groat/sheets/menu_sheet.hpp>

#include <groat/base/linkage.hpp>
#include <groat/plan/shelf.hpp>
#include <groat/price/contents.hpp>
#include <groat/sheets/cautions.hpp>
#include <groat/sheets/letterhead.hpp>
#include <groat/sheets/menu_mix_sections.hpp>
#include <groat/sheets/price_makeup.hpp>
#include <groat/sheets/shape_menu.hpp>
#include <groat/sheets/shape_quote.hpp>
#include <groat/sheets/told.hpp>
#include <groat/solve/purchase_padding.hpp>
#include <groat/solve/purchase_to_market.hpp>

#include <fmt/ranges.h>

#include <string>
#include <vector>

namespace groat {

namespace menu_sheet_detail {

/// The side of tax that the prices of a menu are on.
inline std::string_view side_of_tax(MenuCost const& cost) {
    return cost.is_tax_contained ? "with tax" : "without tax";
}

inline Facts head(MenuCost const& cost, Figures const& figures) {
    FactsOf<sheet_shapes::menu::menu> facts;
    MenuSum const& total = cost.total;
    facts.add("costs_on", "Costs of", Figures::day(cost.date));
    if (!cost.menu->period.empty()) facts.add("period", "Period", cost.menu->period);
    facts.add("side", "Prices shown", std::string(side_of_tax(cost)));
    if (cost.paid_by) facts.add("paid_by", "Paid by", *cost.paid_by);
    if (cost.menu->items_per_payment)
        facts.add("items_per_payment", "Items paid together",
                  Figures::count(*cost.menu->items_per_payment));
    facts.add("items", "Items", Figures::count(Number(cost.lines.size())));
    if (!cost.mix) return facts;
    facts.add("units", "Sold", Figures::count(total.units));
    facts.add("sales", "Sales without tax", figures.money(total.sales));
    facts.add("food_cost", "Standard food cost of the mix", Figures::percent(total.food_cost()));
    facts.add("prime_cost", "Prime cost of the mix", Figures::percent(total.prime_cost()));
    facts.add("margin", "Margin of the mix", Figures::percent(total.margin()));
    facts.add("contribution", "Contribution each", figures.money(cost.mix->contribution_line));
    if (auto const hour = total.per_labour_hour())
        facts.add("per_labour_hour", "Contribution per labour hour", figures.money(*hour));
    if (auto const hour = total.per_oven_hour())
        facts.add("per_oven_hour", "Contribution per oven hour", figures.money(*hour));
    return facts;
}

inline bool has_targets(MenuCost const& cost) {
    return std::any_of(cost.lines.begin(), cost.lines.end(),
                       [](MenuLine const& line) { return line.target.has_price; });
}

/// What stands out about a price, in plain words.
inline std::string mark(MenuLine const& line, Figures const& figures) {
    if (line.loses())
        return fmt::format("LOSES {}{}", figures.amount(-line.earned.profit),
                           line.earned.contribution.is_negative() ? ", before overhead too" : "");
    if (!line.is_price_now) return "no price yet";
    if (line.is_below_target()) return "below target";
    return {};
}

/// The same, with what is to be known of the wanted price.
inline std::string marks(MenuLine const& line, Figures const& figures) {
    std::string words = mark(line, figures);
    if (!line.wanted_misses_target()) return words;
    return words + (words.empty() ? "" : "; ") + "wanted is rounded below target";
}

/// The same for programs.
inline std::vector<std::string> mark_keys(MenuLine const& line) {
    std::vector<std::string> keys;
    if (line.loses()) keys.emplace_back("loses");
    if (line.loses() && line.earned.contribution.is_negative())
        keys.emplace_back("loses_before_overhead");
    if (!line.is_price_now) keys.emplace_back("no_price_yet");
    if (line.is_below_target()) keys.emplace_back("below_target");
    if (line.wanted_misses_target()) keys.emplace_back("wanted_misses_target");
    return keys;
}

/// Prices now against those that the targets take.
inline Table prices(MenuCost const& cost, Book const& book, Figures const& figures) {
    bool const has_categories = !cost.menu->categories.empty();
    Table table = table_of<sheet_shapes::menu::prices>(fmt::format("Prices, {}", side_of_tax(cost)),
                                                       {{"item"}});
    if (has_categories) add_column<sheet_shapes::menu::prices>(table, {"category", "Category"});
    add_column<sheet_shapes::menu::prices>(table, {"price", "Price now"});
    add_column<sheet_shapes::menu::prices>(table, {"wanted", "Wanted price"});
    add_column<sheet_shapes::menu::prices>(table, {"gap", "Price gap"});
    add_column<sheet_shapes::menu::prices>(table, {"mark"});
    for (std::size_t i = 0; i < cost.lines.size(); ++i) {
        MenuLine const& line = cost.lines[i];
        std::vector<Cell> cells{numbered(cost, i)};
        if (has_categories) cells.emplace_back(line.item->category.name);
        cells.push_back(line.is_price_now ? figures.coins(line.price) : Cell());
        cells.push_back(line.target.has_price ? figures.coins(line.target.price) : Cell());
        cells.push_back(line.gap ? figures.money(*line.gap) : Cell());
        cells.emplace_back(marks(line, figures));
        table.rows.push_back({fmt::format("{}", i + 1), std::move(cells)});
        Row& row = table.rows.back();
        tell_sale<sheet_shapes::menu::prices>(row, line.target.formula, line.target.unit, book);
        tell<sheet_shapes::menu::prices>(row, "marks", mark_keys(line));
    }
    if (std::any_of(cost.lines.begin(), cost.lines.end(),
                    [](MenuLine const& line) { return line.gap.has_value(); }))
        table.remark =
            "Price gap: the price now less the wanted one; below 0 is too cheap for its target.";
    return table;
}

inline Table targets(MenuCost const& cost, Figures const& figures) {
    Table table = table_of<sheet_shapes::menu::targets>(
        "What the targets take, without tax and before price points",
        {{"item"}, {"target", "Target"}, {"wanted", "Net price it takes"}});
    for (std::size_t i = 0; i < cost.lines.size(); ++i) {
        QuoteLine const& line = cost.lines[i].target;
        if (!line.has_price) continue;
        table.rows.push_back({fmt::format("{}", i + 1),
                              {numbered(cost, i), in_words(line.target, figures),
                               line.wanted ? figures.money(*line.wanted, 2) : Cell()}});
        tell_target<sheet_shapes::menu::targets>(table.rows.back(), line.target, figures);
    }
    return table;
}

/// What a food cost on a menu is, and is not.
inline constexpr std::string_view standard_food_cost =
    "Food cost is the standard one: what the formulas take, not what was used.";

inline Table earnings(MenuCost const& cost, Figures const& figures) {
    Table table = table_of<sheet_shapes::menu::earned>("What each price earns",
                                                       {{"item"},
                                                        {"net_price", "Without tax"},
                                                        {"profit", "Profit"},
                                                        {"contribution", "Contribution"},
                                                        {"margin", "Margin"},
                                                        {"food_cost", "Food cost"},
                                                        {"prime_cost", "Prime cost"}});
    for (std::size_t i = 0; i < cost.lines.size(); ++i) {
        MenuLine const& line = cost.lines[i];
        Earned const& earned = line.earned;
        table.rows.push_back(
            {fmt::format("{}", i + 1),
             {numbered(cost, i), figures.money(line.net_price), figures.money(earned.profit),
              figures.money(earned.contribution), Figures::percent(earned.margin),
              Figures::percent(earned.food_cost), Figures::percent(earned.prime_cost)}});
    }
    table.remark = cost.paid_by
                       ? "Profit: after all costs and the payment fee. Contribution: after the "
                         "variable ones and the fee."
                       : "Profit: after all costs. Contribution: after the variable ones.";
    table.remark += " " + std::string(standard_food_cost);
    return table;
}

/// The categories that cost anything on this menu.
inline std::vector<Category> used_categories(MenuCost const& cost) {
    std::vector<Category> used;
    for (Category const each : all_categories)
        if (std::any_of(cost.lines.begin(), cost.lines.end(),
                        [&](MenuLine const& line) { return !line.target.cost[each].is_zero(); }))
            used.push_back(each);
    return used;
}

inline Table costs(MenuCost const& cost, Figures const& figures) {
    std::vector<Category> const categories = used_categories(cost);
    Table table = table_of<sheet_shapes::menu::costs>("What each costs", {{"item"}});
    for (Category const each : categories)
        add_column<sheet_shapes::menu::costs>(
            table, {MemberOf<sheet_shapes::menu::costs>::named(word_of(each)),
                    in_sentence(std::string(word_of(each)))});
    add_column<sheet_shapes::menu::costs>(table, {"cost", "Cost"});
    for (std::size_t i = 0; i < cost.lines.size(); ++i) {
        std::vector<Money> parts;
        for (Category const each : categories) parts.push_back(cost.lines[i].unit_cost(each));
        std::vector<Cell> cells = figures.column(parts);
        cells.insert(cells.begin(), numbered(cost, i));
        table.rows.push_back({fmt::format("{}", i + 1), std::move(cells)});
    }
    table.remark = "Ingredients: what is bought for it, trimming and losses included.";
    if (std::find(categories.begin(), categories.end(), Category::consumables) != categories.end())
        table.remark += " Consumables: liners, bags, gloves.";
    table.remark += " A standard run spreads what is done once for many.";
    return table;
}

/// The sums of the menu's categories and the name of each; those without items left out.
struct NamedSum {
    std::string name;
    MenuSum const* sum;
};
inline std::vector<NamedSum> named_sums(MenuCost const& cost) {
    std::vector<NamedSum> sums;
    for (std::size_t i = 0; i < cost.categories.size(); ++i) {
        if (cost.categories[i].items == 0) continue;
        sums.push_back(
            {i < cost.menu->categories.size() ? cost.menu->categories[i].name : "in no category",
             &cost.categories[i]});
    }
    return sums;
}

/// A table with a row for each category and one for all.
template <SectionShape const& shape>
Table by_category(std::string title, std::vector<NamedSum> const& sums) {
    Table table = table_of<shape>(std::move(title), {{"category"}});
    for (NamedSum const& each : sums) table.rows.push_back({each.name, {in_sentence(each.name)}});
    table.rows.push_back({"total", {std::string("All")}, Row::Kind::total});
    return table;
}

/// Adds a column of money with its total to such a table.
template <SectionShape const& shape, class AmountOf>
void add_amounts(Table& table, std::vector<NamedSum> const& sums, Figures const& figures,
                 ColumnOf<shape> const& column, AmountOf const& amount_of) {
    add_column<shape>(table, column);
    std::vector<Money> amounts;
    for (NamedSum const& each : sums) amounts.push_back(amount_of(*each.sum));
    std::vector<Cell> cells = figures.column(amounts);
    for (std::size_t i = 0; i < cells.size(); ++i)
        table.rows[i].cells.push_back(std::move(cells[i]));
}

inline Table totals(MenuCost const& cost, Figures const& figures) {
    bool const has_sales = cost.menu->has_sales();
    std::vector<NamedSum> const sums = named_sums(cost);
    constexpr SectionShape const& shape = sheet_shapes::menu::totals;
    Table table = by_category<shape>(
        has_sales ? "What was sold, by category" : "One of each, by category", sums);
    auto const add_cells = [&](MemberOf<shape> member, std::string title, auto const& cell_of) {
        add_column<shape>(table, {member, std::move(title)});
        for (std::size_t i = 0; i < table.rows.size(); ++i)
            table.rows[i].cells.push_back(cell_of(i < sums.size() ? *sums[i].sum : cost.total));
    };
    auto const add = [&](MemberOf<shape> member, std::string title, auto const& amount_of) {
        add_amounts<shape>(table, sums, figures, {member, std::move(title)}, amount_of);
    };
    add_cells("units", has_sales ? "Sold" : "Items",
              [](MenuSum const& sum) { return Figures::count(sum.units); });
    add("sales", "Sales", [](MenuSum const& sum) { return sum.sales; });
    add("contribution", "Contribution", [](MenuSum const& sum) { return sum.contribution; });
    add("profit", "Profit", [](MenuSum const& sum) { return sum.profit; });
    add_cells("margin", "Margin",
              [](MenuSum const& sum) { return Figures::percent(sum.margin()); });
    add_cells("food_cost", "Food cost",
              [](MenuSum const& sum) { return Figures::percent(sum.food_cost()); });
    add_cells("prime_cost", "Prime cost",
              [](MenuSum const& sum) { return Figures::percent(sum.prime_cost()); });
    table.remark =
        "Sales without tax; shares are of the sales. Profit: after the overhead that the "
        "books put on each item.";
    return table;
}

inline Table cost_totals(MenuCost const& cost, Figures const& figures) {
    std::vector<NamedSum> const sums = named_sums(cost);
    constexpr SectionShape const& shape = sheet_shapes::menu::cost_totals;
    Table table = by_category<shape>("What that cost", sums);
    for (Category const each : used_categories(cost))
        add_amounts<shape>(
            table, sums, figures,
            {MemberOf<shape>::named(word_of(each)), in_sentence(std::string(word_of(each)))},
            [each](MenuSum const& sum) { return sum.cost[each]; });
    add_amounts<shape>(table, sums, figures, {"cost", "Cost"},
                       [](MenuSum const& sum) { return sum.cost.total(); });
    if (cost.paid_by)
        add_amounts<shape>(table, sums, figures, {"fee", "Fee"},
                           [](MenuSum const& sum) { return sum.fee; });
    return table;
}

/// Items that bear alone what is done once for many.
inline Remarks without_run(MenuCost const& cost) {
    Remarks remarks = remarks_of<sheet_shapes::menu::run_remark>("", {});
    std::vector<std::size_t> numbers;
    for (std::size_t i = 0; i < cost.lines.size(); ++i)
        if (!cost.lines[i].has_run) numbers.push_back(i + 1);
    if (!numbers.empty())
        remarks.lines.push_back(fmt::format(
            "No standard run is stated for {}: one alone bears what is done once. Add 'standard "
            "run: 96' to the formula, or to shop.yaml for all.",
            fmt::join(numbers, ", ")));
    return remarks;
}

} // namespace menu_sheet_detail

GROAT_INLINE Sheet menu_sheet(MenuCost const& cost, Costing const& costing, MixOver over) {
    Book const& book = costing.book();
    Figures const figures(book.shop);
    Sheet sheet = sheet_for(book.shop, "menu", "maker", "Menu: " + cost.menu->name);
    sheet.sections.emplace_back(menu_sheet_detail::head(cost, figures));
    sheet.sections.emplace_back(menu_sheet_detail::prices(cost, costing.book(), figures));
    sheet.sections.emplace_back(menu_sheet_detail::earnings(cost, figures));
    sheet.sections.emplace_back(menu_sheet_detail::costs(cost, figures));
    if (Remarks remarks = menu_sheet_detail::without_run(cost); !remarks.lines.empty())
        sheet.sections.emplace_back(std::move(remarks));
    if (menu_sheet_detail::has_targets(cost))
        sheet.sections.emplace_back(menu_sheet_detail::targets(cost, figures));
    sheet.sections.emplace_back(menu_sheet_detail::totals(cost, figures));
    sheet.sections.emplace_back(menu_sheet_detail::cost_totals(cost, figures));
    if (cost.mix) add_menu_mix(sheet, cost, over, figures);
    bool const has_cold =
        std::any_of(cost.lines.begin(), cost.lines.end(), [&](MenuLine const& line) {
            return is_kept_cold(contents_of(book, line.target.formula).keeping);
        });
    sheet.sections.emplace_back(maker_cautions(has_cold));
    return sheet;
}

} // namespace groat
