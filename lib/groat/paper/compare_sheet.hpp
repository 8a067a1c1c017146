/// Suppliers' offers side by side, for the maker.
#pragma once

#include <groat/paper/letterhead.hpp>
#include <groat/paper/offer_words.hpp>
#include <groat/paper/quote_sheet.hpp>
#include <groat/trade/compare.hpp>

#include <string>
#include <vector>

namespace groat {

/// For each comparison the offers per usable kilogram (or piece), what the wanted amount costs delivered,
/// and how the prices went.
[[nodiscard]] Sheet compare_sheet(std::vector<Comparison> const& comparisons, Book const& book,
                                  Date date);

// ---------------------------------------------------------------------------------------------------

namespace compare_paper {

/// The unit that prices are shown for: the kilogram of food, the piece of a supply.
struct PerUnit {
    Number size;
    std::string_view word;
};
inline PerUnit per_unit(Ingredient const& ingredient) {
    return ingredient.is_supply() ? PerUnit{1, "each"} : PerUnit{1000, "kg"};
}

inline Table offers(Comparison const& comparison, Book const& book, Figures const& figures) {
    Ingredient const& ingredient = book.ingredients[comparison.ingredient];
    PerUnit const unit = per_unit(ingredient);
    unsigned const more = ingredient.is_supply() ? 2 : 0;
    bool const in_pounds = book.shop.measures == Measures::us && !ingredient.is_supply();
    Table table{"offers",
                fmt::format("{}, per usable {}", in_sentence(ingredient.name),
                            ingredient.is_supply() ? "piece" : "kilogram"),
                {{"offer", "", true},
                 {"price", fmt::format("As bought, {}", unit.word)},
                 {"yield", "Yield"},
                 {"usable", fmt::format("Usable, {}", unit.word)}},
                {},
                {}};
    table.of = ingredient.name;
    if (in_pounds) table.columns.push_back({"usable_lb", "Usable, lb"});
    table.columns.push_back({"dearer", "Dearer by"});
    if (comparison.wanted) table.columns.push_back({"extra", "A month"});
    table.columns.push_back({"age", "Days old"});
    table.columns.push_back({"level", "Level at yield"});
    bool has_stale = false;
    for (ComparedOffer const& entry : comparison.offers) {
        Offer const& offer = book.offers[entry.offer];
        std::vector<Cell> cells{offer_words(offer, book) + (entry.is_stale ? " *" : ""),
                                figures.money(entry.unit_cost * unit.size, more),
                                Figures::percent(entry.yield.value(), 0),
                                figures.money(entry.usable * unit.size, more)};
        if (in_pounds)
            cells.push_back(figures.money(entry.usable * find_unit("lb", Measures::us)->factor));
        cells.push_back(Figures::percent(entry.dearer));
        if (comparison.wanted) cells.push_back(figures.money(entry.extra));
        cells.push_back(entry.age ? Figures::count(Number(entry.age->count())) : Cell());
        cells.push_back(entry.dearer.is_zero() ? Cell() : Figures::percent(entry.break_even_yield));
        has_stale = has_stale || entry.is_stale;
        table.rows.push_back({fmt::format("{}", table.rows.size() + 1), std::move(cells)});
    }
    if (has_stale) table.remark = "* an old price: ask for today's";
    return table;
}

inline Table landed(Comparison const& comparison, Book const& book, Figures const& figures) {
    Ingredient const& ingredient = book.ingredients[comparison.ingredient];
    std::string const amount = !comparison.wanted ? "one pack"
                               : ingredient.is_supply()
                                   ? figures.number(*comparison.wanted, 2)
                                   : figures.mass(*comparison.wanted) + " usable";
    Table table{"delivered",
                fmt::format("{} at the door, if nothing else is ordered", in_sentence(amount)),
                {{"offer", "", true},
                 {"packs", "Packs"},
                 {"goods", "Goods"},
                 {"delivery", "Delivery"},
                 {"landed", "Together"},
                 {"note", "", true}},
                {},
                {},
                ingredient.name};
    for (ComparedOffer const& entry : comparison.offers)
        table.rows.push_back({fmt::format("{}", table.rows.size() + 1),
                              {offer_words(book.offers[entry.offer], book),
                               Figures::count(Number(entry.packs)), figures.money(entry.goods),
                               figures.money(entry.delivery), figures.money(entry.landed()),
                               std::string(entry.is_above_most      ? "more than may be had"
                                           : entry.is_below_minimum ? "below the minimum order"
                                                                    : "")}});
    return table;
}

inline Table history(std::vector<PastPrice> const& prices, Comparison const& comparison,
                     Book const& book, Figures const& figures) {
    Ingredient const& ingredient = book.ingredients[comparison.ingredient];
    PerUnit const unit = per_unit(ingredient);
    Table table{
        "history",
        fmt::format("How its prices went, per usable {}",
                    ingredient.is_supply() ? "piece" : "kilogram"),
        {{"from", "Since", true}, {"offer", "", true}, {"usable", ""}, {"bar", "", false, true}},
        {},
        {},
        ingredient.name};
    for (PastPrice const& each : prices)
        table.rows.push_back(
            {fmt::format("{}", table.rows.size() + 1),
             {each.from ? Figures::short_day(*each.from) : Cell(std::string("always")),
              offer_words(book.offers[each.offer], book),
              figures.money(each.usable * unit.size, ingredient.is_supply() ? 2 : 0),
              figures.money(each.usable * unit.size)}});
    return table;
}

} // namespace compare_paper

inline Sheet compare_sheet(std::vector<Comparison> const& comparisons, Book const& book,
                           Date date) {
    Figures const figures(book.shop);
    Sheet sheet = sheet_for(book.shop, "compare", "maker",
                            fmt::format("Offers in force on {}", Figures(book.shop).date(date)));
    for (Comparison const& comparison : comparisons) {
        sheet.sections.emplace_back(compare_paper::offers(comparison, book, figures));
        sheet.sections.emplace_back(compare_paper::landed(comparison, book, figures));
        auto const prices = price_history(book, comparison.ingredient);
        if (prices && prices->size() > comparison.offers.size())
            sheet.sections.emplace_back(compare_paper::history(*prices, comparison, book, figures));
    }
    return sheet;
}

} // namespace groat
