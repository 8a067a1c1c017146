#pragma once

#include <groat/sheets/variance_sheet.hpp>

#include <groat/base/apportion.hpp>
#include <groat/base/linkage.hpp>
#include <groat/plan/shelf.hpp>
#include <groat/sheets/buy_sections.hpp>
#include <groat/sheets/letterhead.hpp>
#include <groat/sheets/runs_sheet.hpp>
#include <groat/sheets/shape_review.hpp>

#include <fmt/ranges.h>

#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace groat {

namespace variance_sheet_detail {

inline std::string judged(Money const& difference, std::string_view dearer,
                          std::string_view cheaper) {
    if (difference.is_zero()) return "as costed";
    return fmt::format("{}: {}", difference.is_negative() ? "favourable" : "unfavourable",
                       difference.is_negative() ? cheaper : dearer);
}

inline Table came_out(OrderVariance const& variance, Book const& book) {
    Table table = table_of<sheet_shapes::variance::runs>(
        "What came out",
        {{"run", "Run"}, {"date", "Date"}, {"formula", "Formula"}, {"good", "Good"}});
    for (std::size_t const index : variance.runs) {
        Run const& run = book.runs[index];
        table.rows.push_back(
            {fmt::format("{}", table.rows.size() + 1),
             {run.name, run_date(run), run.formula.name,
              run.good ? Figures::count(Number(*run.good)) : Figures::grams(*run.out_grams)}});
    }
    return table;
}

/// The variances as they are printed: whole steps that add up to the printed whole. The tables of things are
/// rounded to these, so that the sheet adds up both down and across.
struct PrintedParts {
    Number standard;
    Number price;
    Number usage;
    Number rate;
    Number time;
    Number actual;
};

inline PrintedParts printed_parts(OrderVariance const& variance, Number const& step) {
    std::array<Number, 5> const parts{variance.standard.amount(), variance.price.amount(),
                                      variance.usage.amount(), variance.rate.amount(),
                                      variance.time.amount()};
    auto const rounded = round_together(parts, step);
    return {rounded[0], rounded[1], rounded[2],
            rounded[3], rounded[4], round_to(variance.actual.amount(), step, Tie::half_even)};
}

inline Table summary(OrderVariance const& variance, PrintedParts const& printed,
                     Figures const& figures) {
    Table table = table_of<sheet_shapes::variance::difference>(
        "Where the difference comes from", {{"part"}, {"cost", "Cost"}, {"judged"}});
    std::array<Money, 5> const parts{variance.standard, variance.price, variance.usage,
                                     variance.rate, variance.time};
    constexpr std::string_view keys[] = {"standard", "price", "usage", "rate", "time"};
    constexpr std::string_view words[] = {"What the books allow for it", "Price of ingredients",
                                          "Usage of ingredients", "Rate of labour",
                                          "Time of labour"};
    constexpr std::string_view dearer[] = {"", "dearer than costed", "more than allowed",
                                           "dearer than costed", "more than allowed"};
    constexpr std::string_view cheaper[] = {"", "cheaper than costed", "less than allowed",
                                            "cheaper than costed", "less than allowed"};
    Number const shown[] = {printed.standard, printed.price, printed.usage, printed.rate,
                            printed.time};
    for (std::size_t i = 0; i < parts.size(); ++i)
        table.rows.push_back({std::string(keys[i]),
                              {std::string(words[i]), figures.shown(shown[i], parts[i].amount(), 0),
                               i == 0 ? std::string() : judged(parts[i], dearer[i], cheaper[i])}});
    table.rows.push_back(
        {"actual",
         {std::string("What it cost"), figures.shown(printed.actual, variance.actual.amount(), 0),
          judged(variance.actual - variance.standard, "dearer than costed", "cheaper than costed")},
         Row::Kind::total});
    return table;
}

/// What is said of ingredients or of labour.
// How a thing is shown: in what, and what its price is for.
inline Cell amount_of(Number const& amount, Ingredient const& thing) {
    return Figures::amount_of(amount, thing.costed_by());
}
inline Cell amount_of(Number const& amount, Role const&) { return Figures::minutes(amount); }
inline Number per(Ingredient const& thing) { return price_unit(thing.costed_by()).size; }
inline Number per(Role const&) { return 60; }
inline std::string thing_words(Ingredient const& thing) {
    if (thing.costed_by() == Dimension::mass) return thing.name;
    return fmt::format("{}, {}", thing.name, price_unit(thing.costed_by()).word);
}
inline std::string thing_words(Role const& thing) { return thing.name; }

struct VarianceWords {
    std::string title;
    std::string thing;
    std::string allowed;
    std::string taken;
    std::string standard_price;
    std::string price;
    std::string by_price;
    std::string by_quantity;
    Number price_printed; ///< what the columns have to add up to
    Number quantity_printed;
    Money price_exact;
    Money quantity_exact;
};

/// Things that a run wrote down, the dearest difference first; the rest is named below.
template <SectionShape const& shape, class Things>
Table things(std::vector<CostVariance> const& all, Things const& named, VarianceWords const& words,
             Figures const& figures) {
    Table table = table_of<shape>(words.title, {{"name", words.thing},
                                                {"allowed", words.allowed},
                                                {"taken", words.taken},
                                                {"standard_price", words.standard_price},
                                                {"price", words.price},
                                                {"by_price", words.by_price},
                                                {"by_quantity", words.by_quantity},
                                                {"difference", "Total"}});
    std::vector<CostVariance const*> const recorded = dearest_first(all);
    std::vector<std::string> others;
    for (CostVariance const& each : all)
        if (!each.is_recorded) others.push_back(named[each.index].name);
    std::vector<Number> by_price;
    std::vector<Number> by_quantity;
    for (CostVariance const* each : recorded) {
        by_price.push_back(each->by_price().amount());
        by_quantity.push_back(each->by_quantity().amount());
    }
    if (!recorded.empty()) {
        Number const step = decimal_step(figures.digits());
        auto const prices = round_to_total(by_price, step, words.price_printed);
        auto const quantities = round_to_total(by_quantity, step, words.quantity_printed);
        for (std::size_t i = 0; i < recorded.size(); ++i) {
            CostVariance const& each = *recorded[i];
            table.rows.push_back(
                {named[each.index].name,
                 {thing_words(named[each.index]), amount_of(each.allowed, named[each.index]),
                  amount_of(each.taken, named[each.index]),
                  figures.money(each.standard_price * per(named[each.index])),
                  each.price() ? figures.money(*each.price() * per(named[each.index])) : Cell(),
                  figures.shown(prices[i], by_price[i], 0),
                  figures.shown(quantities[i], by_quantity[i], 0),
                  figures.shown(prices[i] + quantities[i], each.difference().amount(), 0)}});
        }
        table.rows.push_back(
            {"total",
             {std::string("Total"), Cell(), Cell(), Cell(), Cell(),
              figures.shown(words.price_printed, words.price_exact.amount(), 0),
              figures.shown(words.quantity_printed, words.quantity_exact.amount(), 0),
              figures.shown(words.price_printed + words.quantity_printed,
                            (words.price_exact + words.quantity_exact).amount(), 0)},
             Row::Kind::total});
    }
    if (!others.empty())
        table.remark =
            fmt::format("Not written down, so as the books say: {}.", fmt::join(others, ", "));
    return table;
}

} // namespace variance_sheet_detail

GROAT_INLINE Sheet order_variance_sheet(OrderVariance const& variance, Costing const& costing) {
    Book const& book = costing.book();
    Order const& order = book.orders[variance.order];
    Figures const figures(book.shop);
    auto const printed =
        variance_sheet_detail::printed_parts(variance, decimal_step(figures.digits()));
    Sheet sheet = sheet_for(book.shop, "variance", "maker",
                            fmt::format("What order {} cost, against the books", order.id));
    FactsOf<sheet_shapes::variance::order> facts;
    if (!order.client.empty()) facts.add("client", "For", order.client);
    facts.add("prices_of", "Prices of", Figures::day(costing.date()));
    facts.add("currency", "Currency", std::string(book.shop.currency.code()));
    sheet.sections.emplace_back(std::move(facts));
    sheet.sections.emplace_back(variance_sheet_detail::came_out(variance, book));
    sheet.sections.emplace_back(variance_sheet_detail::summary(variance, printed, figures));
    bool const is_by_mass = std::all_of(
        variance.ingredients.begin(), variance.ingredients.end(), [&](CostVariance const& each) {
            return !each.is_recorded || book.ingredients[each.index].costed_by() == Dimension::mass;
        });
    sheet.sections.emplace_back(variance_sheet_detail::things<sheet_shapes::variance::ingredients>(
        variance.ingredients, book.ingredients,
        {"Ingredients, as purchased", "Ingredient", "Allowed", "Used",
         is_by_mass ? "Book price per kg" : "Book price", is_by_mass ? "Paid per kg" : "Price paid",
         "By price", "By usage", printed.price, printed.usage, variance.price, variance.usage},
        figures));
    sheet.sections.emplace_back(variance_sheet_detail::things<sheet_shapes::variance::labour>(
        variance.roles, book.shop.roles,
        {"Labour, with on-cost", "Who", "Allowed, min", "Worked, min", "Books, h", "Paid, h",
         "By rate", "By time", printed.rate, printed.time, variance.rate, variance.time},
        figures));
    sheet.sections.emplace_back(remarks_of<sheet_shapes::variance::how>(
        "How this is calculated",
        {"Allowed is what the books would take for just the good pieces that came out. What costs "
         "more than the books say is unfavourable and stands without a sign; what costs less is "
         "favourable and stands with a minus. Packaging, consumables, energy and overhead are not "
         "followed here."}));
    return sheet;
}

} // namespace groat
