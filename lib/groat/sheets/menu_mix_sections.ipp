#pragma once

#include <groat/sheets/menu_mix_sections.hpp>

#include <groat/base/apportion.hpp>
#include <groat/base/linkage.hpp>
#include <groat/sheets/shape_menu.hpp>

#include <fmt/ranges.h>

#include <array>
#include <string_view>
#include <vector>

namespace groat {

namespace menu_sheet_detail {

GROAT_INLINE std::string numbered(MenuCost const& cost, std::size_t i) {
    return fmt::format("{}. {}", i + 1, in_sentence(cost.lines[i].title));
}

inline std::string_view group_words(MenuGroup group) {
    return menu_group_words[static_cast<std::size_t>(group)];
}

/// Common practice; no source.
inline constexpr std::array<std::string_view, menu_group_count> advice = {
    "keep it as it is, keep it good, and put it where it is seen first",
    "raise its price a little, or lower what it costs; it may bring people in, so do not lose it",
    "show it better, name it better or offer it aloud; a lower price seldom helps",
    "take it off, or keep it for a reason you can name"};

/// Whether the items are judged in more than one plane, each of which is then named.
inline bool is_by_category(MenuCost const& cost, MixOver over) {
    return over == MixOver::categories && !cost.menu->categories.empty();
}

/// The items plane by plane; below each that is named, what was sold of it and what a unit left on average.
inline Table mix(MenuCost const& cost, std::vector<MenuPlane> const& planes, bool are_named,
                 Figures const& figures) {
    Table table = table_of<sheet_shapes::menu::mix>(
        are_named ? "What sells and what earns, within its category" : "What sells and what earns",
        {{"item"},
         {"sold", "Sold"},
         {"share", "Share"},
         {"contribution", "Contribution"},
         {"per_labour_hour", "Per labour hour"},
         {"per_oven_hour", "An oven hour"},
         {"group"}});
    auto const per_hour = [&](std::optional<Money> const& money) {
        return money ? figures.money(*money) : Cell();
    };
    for (MenuPlane const& plane : planes) {
        for (std::size_t place = 0; place < plane.lines.size(); ++place) {
            std::size_t const i = plane.lines[place];
            MenuLine const& line = cost.lines[i];
            table.rows.push_back(
                {fmt::format("{}", i + 1),
                 {numbered(cost, i), Figures::count(Number(*line.item->sold)),
                  plane.mix ? Figures::percent(plane.mix->items[place].share) : Cell(),
                  figures.money(line.earned.contribution), per_hour(line.per_labour_hour()),
                  per_hour(line.per_oven_hour()),
                  plane.is_placed() ? std::string(group_words(plane.mix->items[place].group()))
                                    : std::string()}});
        }
        if (are_named)
            table.rows.push_back(
                {plane.name,
                 {in_sentence(plane.name), Figures::count(plane.mix ? plane.mix->units : Number()),
                  plane.mix ? Figures::percent(Number(1)) : Cell(),
                  plane.mix ? figures.money(plane.mix->contribution_line) : Cell(), Cell(), Cell(),
                  std::string()},
                 Row::Kind::subtotal});
    }
    return table;
}

inline Facts lines(MenuMix const& mix, Figures const& figures) {
    return {"lines",
            "",
            {{"popularity_line", "Sells from a share of", Figures::percent(mix.popularity_line, 2)},
             {"contribution_line", "Earns from a contribution of",
              figures.money(mix.contribution_line, 2)}}};
}

/// The lines of each category that is placed.
inline Table lines_by_category(std::vector<MenuPlane> const& planes, Figures const& figures) {
    Table table = table_of<sheet_shapes::menu::mix_lines>(
        "Where the lines run", {{"category"},
                                {"items", "Items"},
                                {"sold", "Sold"},
                                {"popularity_line", "Sells from a share of"},
                                {"contribution_line", "Earns from a contribution of"}});
    std::vector<std::string> listed;
    for (MenuPlane const& plane : planes) {
        if (!plane.is_placed()) {
            listed.push_back(fmt::format("{} ({})", plane.name, plane.lines.size()));
            continue;
        }
        table.rows.push_back(
            {plane.name,
             {in_sentence(plane.name), Figures::count(Number(plane.lines.size())),
              Figures::count(plane.mix->units), Figures::percent(plane.mix->popularity_line, 2),
              figures.money(plane.mix->contribution_line, 2)}});
    }
    if (!listed.empty())
        table.remark = fmt::format("Listed and not placed, as fewer than {} items or none sold say "
                                   "little of each other: {}.",
                                   least_placed, fmt::join(listed, ", "));
    return table;
}

inline Remarks how_it_is_sorted(bool names_categories) {
    std::string textbook;
    for (std::size_t group = 0; group < menu_group_count; ++group)
        textbook += fmt::format("{}{} ({})", group == 0 ? "" : ", ", textbook_group_words[group],
                                menu_group_words[group]);
    return {"sorting",
            "",
            {fmt::format(
                "Sells: its share of all units{0} is at least 70 % of an equal share. Earns: its "
                "contribution is at least the mean of all units sold{0} (Kasavana and Smith 1982; "
                "there a contribution is price less food cost, here less all variable cost and the "
                "fee). An item at a line counts as above it. The textbook's names: {1}.",
                names_categories ? " of its category" : "", textbook)}};
}

inline Remarks what_to_do(std::vector<MenuPlane> const& planes) {
    Remarks remarks = remarks_of<sheet_shapes::menu::advice>("What one usually does", {});
    for (std::size_t group = 0; group < menu_group_count; ++group) {
        std::vector<std::size_t> numbers;
        for (MenuPlane const& plane : planes)
            for (std::size_t place = 0; plane.is_placed() && place < plane.lines.size(); ++place)
                if (static_cast<std::size_t>(plane.mix->items[place].group()) == group)
                    numbers.push_back(plane.lines[place] + 1);
        if (numbers.empty()) continue;
        std::sort(numbers.begin(), numbers.end());
        remarks.lines.push_back(fmt::format("{} ({}): {}.",
                                            in_sentence(std::string(menu_group_words[group])),
                                            fmt::join(numbers, ", "), advice[group]));
    }
    return remarks;
}

/// More items than this are shown by how many stand at a place, since their numbers would hide each other.
inline constexpr std::size_t most_numbered = 99;

/// The plane of items that are placed; with its name where there are others beside it.
inline Chart chart_of(MenuPlane const& plane, MenuCost const& cost, bool is_named,
                      Figures const& figures) {
    auto const amount = [&](Number const& number) {
        return figures.style().money(decimal(number, figures.digits()));
    };
    auto const share = [&](Number const& number) { return figures.fixed(number * 100, 1) + " %"; };
    Number const popular = plane.mix->popularity_line;
    Number const earning = plane.mix->contribution_line.amount();
    Number widest = popular;
    Number lowest = earning;
    Number highest = earning;
    bool const is_numbered = plane.lines.size() <= most_numbered;
    ChartSeries items;
    for (std::size_t place = 0; place < plane.lines.size(); ++place) {
        std::size_t const i = plane.lines[place];
        Number const& x = plane.mix->items[place].share;
        Number const& y = cost.lines[i].earned.contribution.amount();
        items.points.push_back({x, y, is_numbered ? fmt::format("{}", i + 1) : std::string()});
        widest = std::max(widest, x);
        lowest = std::min(lowest, y);
        highest = std::max(highest, y);
    }
    Chart chart{"plane",
                is_named
                    ? fmt::format("{}: contribution each (up) against share of its units (across)",
                                  in_sentence(plane.name))
                    : "Contribution each (up) against share of the units sold (across)",
                {},
                {},
                {items}};
    chart.is_lettered = true;
    if (is_named) chart.of = plane.name;
    chart.across = {"Share of the units sold",
                    {{0, "0 %"}, {widest, share(widest)}},
                    ChartLine{popular, share(popular), "sells from " + share(popular)}};
    chart.up = {"Contribution each",
                {{lowest, amount(lowest)}, {highest, amount(highest)}},
                ChartLine{earning, amount(earning), "earns from " + amount(earning)}};
    constexpr std::array<MenuGroup, 4> corners = {MenuGroup::earns, MenuGroup::sells_and_earns,
                                                  MenuGroup::neither, MenuGroup::sells};
    for (std::size_t i = 0; i < corners.size(); ++i) chart.corners[i] = group_words(corners[i]);
    chart.said = "Each item by its share and contribution; what one usually does lists the items "
                 "of each corner.";
    if (is_numbered) chart.remark = "The numbers are those of the items above.";
    return chart;
}

inline Facts break_even_facts(MenuCost const& cost, Figures const& figures) {
    MenuBreakEven const& result = *cost.break_even;
    Menu const& menu = *cost.menu;
    FactsOf<sheet_shapes::menu::break_even> facts("Break-even");
    facts.add("contribution", "Contribution of these sales",
              figures.money(cost.total.contribution));
    facts.add("fixed_costs", "Fixed costs", figures.money(result.fixed_costs));
    facts.add("profit", result.profit.is_negative() ? "Loss" : "Profit before tax",
              figures.money(result.profit));
    if (!result.tax.is_zero()) {
        facts.add("tax", "Tax on profit", figures.money(result.tax));
        facts.add("profit_after_tax", "Profit after tax", figures.money(result.profit_after_tax()));
    }
    facts.add("average_contribution", "Contribution of an average sale",
              figures.money(result.average.contribution, 2));
    facts.add("ratio", "Contribution as part of sales", Figures::percent(result.average.ratio()));
    using Member = MemberOf<sheet_shapes::menu::break_even>;
    auto const enough = [&](Member units, Member sales, std::string const& words,
                            BreakEven const& even) {
        facts.add(units, "Units to " + words, Figure{even.whole_units.str(), even.units, "each"});
        facts.add(sales, "Sales to " + words, figures.money(even.sales));
    };
    if (result.even) {
        enough("even_units", "even_sales", "break even", *result.even);
        if (auto const safety = margin_of_safety(cost.total.sales, *result.even))
            facts.add("safety", "Sales above that, as part of them", Figures::percent(*safety));
    }
    if (result.wanted && !menu.wanted_profit.is_zero()) {
        facts.add("wanted_profit", "Wanted profit", figures.money(menu.wanted_profit));
        if (!menu.tax_on_profit.value().is_zero())
            facts.add("wanted_before_tax", "That is before tax",
                      figures.money(result.wanted_before_tax));
        enough("wanted_units", "wanted_sales", "reach it", *result.wanted);
    }
    facts.add("overhead", "For comparison, overhead in the costs", figures.money(result.overhead));
    return facts;
}

inline Table break_even_items(MenuCost const& cost) {
    MenuBreakEven const& result = *cost.break_even;
    bool const has_wanted = !cost.menu->wanted_profit.is_zero();
    Table table = table_of<sheet_shapes::menu::break_even_items>(
        "How many of each, if the mix stays as it is",
        {{"item"}, {"sold", "Sold"}, {"even", "To break even"}});
    if (has_wanted)
        add_column<sheet_shapes::menu::break_even_items>(table,
                                                         {"wanted", "For the wanted profit"});
    for (std::size_t i = 0; i < cost.lines.size(); ++i)
        table.rows.push_back(
            {fmt::format("{}", i + 1),
             {numbered(cost, i), Figures::count(Number(*cost.lines[i].item->sold))}});
    table.rows.push_back(
        {"total", {std::string("All"), Figures::count(cost.total.units)}, Row::Kind::total});
    std::vector<Number> weights;
    for (MenuLine const& line : cost.lines) weights.push_back(line.units());
    auto const add = [&](BreakEven const& enough) {
        std::vector<Integer> const whole = apportion(enough.whole_units, weights);
        for (std::size_t i = 0; i < whole.size(); ++i)
            table.rows[i].cells.push_back(
                Figure{whole[i].str(), enough.units * cost.mix->items[i].share, "each"});
        table.rows.back().cells.push_back(Figure{enough.whole_units.str(), enough.units, "each"});
    };
    add(*result.even);
    if (has_wanted) add(*result.wanted);
    return table;
}

} // namespace menu_sheet_detail

GROAT_INLINE void add_menu_mix(Sheet& sheet, MenuCost const& cost, MixOver over,
                               Figures const& figures) {
    bool const by_category = menu_sheet_detail::is_by_category(cost, over);
    std::vector<MenuPlane> const planes = menu_planes(cost, over);
    sheet.sections.emplace_back(menu_sheet_detail::mix(cost, planes, by_category, figures));
    if (by_category || !planes.front().is_placed())
        sheet.sections.emplace_back(menu_sheet_detail::lines_by_category(planes, figures));
    else
        sheet.sections.emplace_back(menu_sheet_detail::lines(*planes.front().mix, figures));
    Remarks what_to_do = menu_sheet_detail::what_to_do(planes);
    if (!what_to_do.lines.empty()) {
        sheet.sections.emplace_back(menu_sheet_detail::how_it_is_sorted(by_category));
        for (MenuPlane const& plane : planes)
            if (plane.is_placed())
                sheet.sections.emplace_back(
                    menu_sheet_detail::chart_of(plane, cost, by_category, figures));
        sheet.sections.emplace_back(std::move(what_to_do));
    }
    if (!cost.break_even) return;
    sheet.sections.emplace_back(menu_sheet_detail::break_even_facts(cost, figures));
    Remarks remarks = remarks_of<sheet_shapes::menu::break_even_remarks>("", {});
    if (!cost.break_even->even)
        remarks.lines.push_back(in_sentence(cost.break_even->even.error().what) + ".");
    remarks.lines.emplace_back(
        "Fixed costs are those that the menu states. The overhead rates of the books are another "
        "count of the same money: they are in the profit of each item above, and not here.");
    sheet.sections.emplace_back(std::move(remarks));
    if (cost.break_even->even)
        sheet.sections.emplace_back(menu_sheet_detail::break_even_items(cost));
}

} // namespace groat
