#pragma once

#include <groat/sheets/compare_sheet.hpp>

#include <groat/base/linkage.hpp>
#include <groat/cost/offers_in_force.hpp>
#include <groat/price/pricing.hpp>
#include <groat/sheets/letterhead.hpp>
#include <groat/sheets/offer_words.hpp>
#include <groat/sheets/shape_compare.hpp>
#include <groat/sheets/told.hpp>

#include <fmt/ranges.h>

#include <string>
#include <utility>

namespace groat {

namespace compare_sheet_detail {

/// The offer, and whether it was paid and not listed.
inline std::string offer_title(Offer const& offer, Book const& book) {
    std::string words = offer_words(offer, book);
    if (offer.kind == Offer::Kind::paid) words += ", paid";
    if (offer.kind == Offer::Kind::stopgap) words += ", paid as a stopgap";
    return words;
}

inline Table offers(Comparison const& comparison, Book const& book, Figures const& figures) {
    Ingredient const& ingredient = book.ingredients[comparison.ingredient];
    PriceUnit const unit = price_unit(ingredient.costed_by());
    unsigned const more = unit.more;
    bool const in_pounds =
        book.shop.measures == Measures::us && ingredient.costed_by() == Dimension::mass;
    Table table = table_of<sheet_shapes::compare::offers>(
        fmt::format("{}, per {}", in_sentence(ingredient.name), unit.noun),
        {{"offer"}, {"price", "AP price"}, {"yield", "Yield"}, {"usable", "Usable cost"}});
    table.of = ingredient.name;
    if (in_pounds) add_column<sheet_shapes::compare::offers>(table, {"usable_lb", "Cost per lb"});
    add_column<sheet_shapes::compare::offers>(table, {"dearer", "Dearer by"});
    if (comparison.wanted) add_column<sheet_shapes::compare::offers>(table, {"extra", "A month"});
    add_column<sheet_shapes::compare::offers>(table, {"age", "Days old"});
    add_column<sheet_shapes::compare::offers>(table, {"break_even_yield", "Break-even yield"});
    bool has_stale = false;
    for (ComparedOffer const& entry : comparison.offers) {
        Offer const& offer = book.offers[entry.offer];
        std::vector<Cell> cells{offer_title(offer, book) + (entry.is_stale ? " *" : ""),
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
        tell_offer<sheet_shapes::compare::offers>(table.rows.back(), offer, book);
    }
    table.remark = "AP price: as purchased. Usable cost: after trim.";
    if (has_stale) table.remark += " * an old price: ask for today's.";
    return table;
}

/// What was paid beside what is listed, of those who were bought from; both without freight and delivery.
inline Table paid(Comparison const& comparison, Book const& book, Figures const& figures) {
    Ingredient const& ingredient = book.ingredients[comparison.ingredient];
    PriceUnit const unit = price_unit(ingredient.costed_by());
    unsigned const more = unit.more;
    Table table = table_of<sheet_shapes::compare::paid>(
        fmt::format("What was paid, beside what is listed, {}",
                    ingredient.is_supply() ? std::string("a piece")
                                           : fmt::format("a {} as bought", unit.noun)),
        {{"offer"},
         {"on", "Last on"},
         {"paid", "Paid"},
         {"listed", "Listed"},
         {"change", "Paid against listed"}});
    table.of = ingredient.name;
    for (ComparedOffer const& entry : comparison.offers) {
        if (!entry.paid) continue;
        auto const& listed = entry.listed;
        table.rows.push_back(
            {fmt::format("{}", table.rows.size() + 1),
             {offer_words(book.offers[entry.offer], book), Figures::short_day(entry.paid->on),
              figures.money(entry.paid->price * unit.size, more),
              listed ? Cell(figures.money(*listed * unit.size, more)) : Cell(),
              Figures::percent(entry.paid_against_listed())}});
        tell_offer<sheet_shapes::compare::paid>(table.rows.back(), book.offers[entry.offer], book);
    }
    return table;
}

inline std::string landed_note(ComparedOffer const& entry, Book const& book) {
    std::vector<std::string_view> notes;
    if (is_only_compared(book.offers[entry.offer], book)) notes.push_back("only compared");
    if (entry.is_above_most) notes.push_back("more than may be had");
    if (entry.is_below_minimum && !entry.is_above_most) notes.push_back("below the minimum order");
    return fmt::format("{}", fmt::join(notes, ", "));
}

inline Table landed(Comparison const& comparison, Book const& book, Figures const& figures) {
    Ingredient const& ingredient = book.ingredients[comparison.ingredient];
    std::string const amount = !comparison.wanted
                                   ? "one pack"
                                   : figures.words_of(*comparison.wanted, ingredient.costed_by()) +
                                         (ingredient.is_supply() ? "" : " usable");
    Table table = table_of<sheet_shapes::compare::delivered>(
        fmt::format("{} landed, if nothing else is ordered", in_sentence(amount)),
        {{"offer"},
         {"packs", "Packs"},
         {"goods", "Goods"},
         {"delivery", "Delivery"},
         {"landed", "Landed cost"},
         {"note"}});
    table.of = ingredient.name;
    for (ComparedOffer const& entry : comparison.offers) {
        table.rows.push_back(
            {fmt::format("{}", table.rows.size() + 1),
             {offer_words(book.offers[entry.offer], book), Figures::count(Number(entry.packs)),
              figures.money(entry.goods), figures.money(entry.delivery),
              figures.money(entry.landed()), landed_note(entry, book)}});
        tell_offer<sheet_shapes::compare::delivered>(table.rows.back(), book.offers[entry.offer],
                                                     book);
    }
    return table;
}

inline Table history(std::vector<PastPrice> const& prices, Comparison const& comparison,
                     Book const& book, Figures const& figures) {
    Ingredient const& ingredient = book.ingredients[comparison.ingredient];
    PriceUnit const unit = price_unit(ingredient.costed_by());
    Table table = table_of<sheet_shapes::compare::history>(
        fmt::format("How its prices went, per usable {}", unit.noun),
        {{"from", "Since"}, {"offer"}, {"usable"}});
    table.columns.push_back(bar_column());
    table.of = ingredient.name;
    for (PastPrice const& each : prices) {
        table.rows.push_back(
            {fmt::format("{}", table.rows.size() + 1),
             {each.from ? Figures::short_day(*each.from) : Cell(std::string("always")),
              offer_title(book.offers[each.offer], book),
              figures.money(each.usable * unit.size, unit.more),
              figures.money(each.usable * unit.size)}});
        tell_offer<sheet_shapes::compare::history>(table.rows.back(), book.offers[each.offer],
                                                   book);
    }
    return table;
}

} // namespace compare_sheet_detail

GROAT_INLINE Sheet compare_sheet(std::vector<Comparison> const& comparisons, Book const& book,
                                 Date date) {
    Figures const figures(book.shop);
    Sheet sheet = sheet_for(book.shop, "compare", "maker",
                            fmt::format("Offers in force on {}", Figures(book.shop).date(date)));
    for (Comparison const& comparison : comparisons) {
        sheet.sections.emplace_back(compare_sheet_detail::offers(comparison, book, figures));
        sheet.sections.emplace_back(compare_sheet_detail::landed(comparison, book, figures));
        if (Table paid = compare_sheet_detail::paid(comparison, book, figures); !paid.rows.empty())
            sheet.sections.emplace_back(std::move(paid));
        auto const prices = price_history(book, comparison.ingredient);
        if (prices && prices->size() > comparison.offers.size())
            sheet.sections.emplace_back(
                compare_sheet_detail::history(*prices, comparison, book, figures));
    }
    return sheet;
}

} // namespace groat
