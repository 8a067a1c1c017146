#pragma once

#include <groat/sheets/buy_sections.hpp>

#include <groat/base/linkage.hpp>
#include <groat/sheets/offer_words.hpp>
#include <groat/sheets/shape_buy.hpp>

#include <string>
#include <string_view>

namespace groat::buy_sheet_detail {

GROAT_INLINE Cell amount(Number const& amount, Ingredient const& ingredient) {
    return Figures::amount_of(amount, ingredient.costed_by());
}

inline std::string step_words(CostStep::Kind kind) {
    using Kind = CostStep::Kind;
    switch (kind) {
    case Kind::prices: return "Prices of this day, not of the orders'";
    case Kind::run: return "Made by itself, costed in another run";
    case Kind::whole_packs: return "Charged to orders by the whole pack";
    case Kind::kept: return "Made by the batch, costed by what is taken";
    case Kind::together: return "Made together, costed apart";
    case Kind::own_goods: return "Own goods taken from the shelf";
    case Kind::metered: return "Metered, and on no list";
    case Kind::shelf: return "Taken from the shelf";
    case Kind::offers: return "Other offers and packs than costs go by";
    case Kind::left_over: return "Packs beyond need";
    case Kind::delivery: return "Delivery, beyond what costs carry of it";
    case Kind::deposit: return "Deposit, which comes back";
    }
    return {};
}

inline std::string_view step_key(CostStep::Kind kind) {
    constexpr std::string_view keys[] = {"prices",   "run",       "whole_packs", "kept",
                                         "together", "own_goods", "metered",     "shelf",
                                         "offers",   "left_over", "delivery",    "deposit"};
    return keys[static_cast<std::size_t>(kind)];
}

GROAT_INLINE Table costed(CostedAndPaid const& way, Figures const& figures) {
    Table table = table_of<sheet_shapes::shared::costed_and_paid>(
        "What the goods were costed at, and what is paid", {{"step"}, {"amount", "Amount"}});
    std::vector<Money> amounts{way.costed};
    for (CostStep const& each : way.steps) amounts.push_back(each.amount);
    std::vector<Cell> const shown = figures.column(amounts);
    table.rows.push_back(
        {"quotes", {std::string("Ingredients, consumables and packaging as quoted"), shown[0]}});
    for (std::size_t i = 0; i < way.steps.size(); ++i)
        table.rows.push_back({std::string(step_key(way.steps[i].kind)),
                              {step_words(way.steps[i].kind), shown[i + 1]}});
    table.rows.push_back({"total", {std::string("To be paid"), shown.back()}, Row::Kind::total});
    return table;
}

GROAT_INLINE Table by_day(std::vector<BuyingDay> const& days, Buying const& buying,
                          Book const& book) {
    Table table = table_of<sheet_shapes::buy::days>(
        "When to buy what would spoil",
        {{"item"}, {"from", "Buy from"}, {"amount", "Amount"}, {"until", "Used until"}});
    table.remark =
        "Bought before that day, it does not keep until the last order that takes it is wanted. "
        "The packs above are planned as if all were bought at once: where one of them "
        "would serve two days, buy another for the later.";
    for (BuyingDay const& each : days) {
        Ingredient const& ingredient = book.ingredients[buying.needs[each.need].ingredient()];
        table.rows.push_back(
            {fmt::format("{}", table.rows.size() + 1),
             {in_sentence(ingredient.name), Figures::short_day(each.from),
              amount(each.amount, ingredient), Figures::short_day(each.used_until)}});
    }
    return table;
}

/// What of the leftovers of that purchase will be used.
inline Table ahead_left(Buying const& buying, Book const& book, Figures const& figures) {
    Table table = table_of<sheet_shapes::buy::ahead_left>(
        "", {{"item"}, {"left", "Left over"}, {"used", "Will be used"}, {"worth", "Worth"}});
    table.remark =
        "Will be used: what other orders in the books take while it is good, each made for "
        "itself, or the par of stock.yaml where that is more. Sales of menus have no day, and "
        "are not counted. It is worth what costs go by.";
    std::vector<Money> worths;
    for (Leftover const& each : buying.ahead->left)
        if (each.used.is_positive()) worths.push_back(each.worth);
    std::vector<Cell> const shown = figures.column(worths);
    std::size_t next = 0;
    for (Leftover const& each : buying.ahead->left) {
        if (!each.used.is_positive()) continue;
        Ingredient const& ingredient = book.ingredients[buying.needs[each.need].ingredient()];
        table.rows.push_back({ingredient.name,
                              {in_sentence(ingredient.name), amount(each.left, ingredient),
                               amount(each.used, ingredient), shown[next++]}});
    }
    table.rows.push_back({"total", {std::string("Total"), {}, {}, shown.back()}, Row::Kind::total});
    return table;
}

inline Table ahead_packs(BuyingAhead const& ahead, Book const& book, Figures const& figures) {
    Table packs = table_of<sheet_shapes::buy::ahead_packs>("", {{"item"},
                                                                {"supplier", "From"},
                                                                {"pack", "Pack"},
                                                                {"packs", "Packs"},
                                                                {"amount", "Amount"}});
    std::vector<Money> amounts;
    for (Basket const& basket : ahead.baskets) {
        for (PackLine const& line : basket.lines) amounts.push_back(line.goods);
        Money const apart = basket.freight + basket.deposit + basket.delivery;
        if (!apart.is_zero()) amounts.push_back(apart);
    }
    std::vector<Cell> const shown = figures.column(amounts);
    std::size_t next = 0;
    for (Basket const& basket : ahead.baskets) {
        std::string const& supplier = book.suppliers[basket.supplier].name;
        auto const row = [&](std::string item, Cell pack, Cell count) {
            packs.rows.push_back(
                {fmt::format("{}", next + 1),
                 {std::move(item), supplier, std::move(pack), std::move(count), shown[next]}});
            ++next;
        };
        for (PackLine const& line : basket.lines) {
            Offer const& offer = book.offers[line.offer];
            row(in_sentence(offer.item.name), pack_words(offer, figures),
                Figures::count(Number(line.packs)));
        }
        if (!(basket.freight + basket.deposit + basket.delivery).is_zero())
            row("Freight, deposit, delivery", {}, {});
    }
    packs.rows.push_back(
        {"total", {std::string("Total"), {}, {}, {}, shown.back()}, Row::Kind::total});
    return packs;
}

GROAT_INLINE void add_ahead(Sheet& sheet, Buying const& buying, Book const& book,
                            Figures const& figures) {
    BuyingAhead const& ahead = *buying.ahead;
    Money const least_net = buying.net();
    bool const is_as_listed = ahead.net() == least_net;
    FactsOf<sheet_shapes::buy::ahead> facts("Buying ahead");
    facts.add("listed_worth", "Worth of leftovers, as listed above",
              figures.money(ahead.least_worth));
    facts.add("listed_net", "Outlay less that, as listed above", figures.money(least_net));
    if (is_as_listed) {
        facts.add("least", "Could it be less",
                  std::string(ahead.is_least() ? "no, this is the least" : "not that is known"));
        sheet.sections.emplace_back(std::move(facts));
        sheet.sections.emplace_back(ahead_left(buying, book, figures));
        return;
    }
    facts.add("total", "Outlay, buying ahead", figures.money(ahead.total));
    facts.add("more", "More today", figures.money(ahead.total - buying.total));
    facts.add("worth", "Worth of leftovers, buying ahead", figures.money(ahead.worth));
    facts.add("net", "Outlay less that, buying ahead", figures.money(ahead.net()));
    facts.add(
        "least", "Could it be less",
        ahead.is_least()
            ? std::string("no, this is the least")
            : fmt::format("by at most {}", figures.amount(ahead.net() - ahead.bound, 0, Tie::up)));
    sheet.sections.emplace_back(std::move(facts));
    sheet.sections.emplace_back(ahead_packs(ahead, book, figures));
    sheet.sections.emplace_back(ahead_left(buying, book, figures));
}

} // namespace groat::buy_sheet_detail
