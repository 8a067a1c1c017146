#pragma once

#include <groat/plan/buying_findings.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/rounding.hpp>
#include <groat/measure/costed_unit.hpp>

#include <fmt/format.h>

#include <optional>
#include <set>
#include <string>
#include <vector>

namespace groat {

namespace buying_findings_detail {

/// Whether nobody has said from whom it is bought, and more than one may be meant.
inline bool is_open(Book const& book, std::size_t index, Purchase const& purchase, Date date) {
    if (purchase.reason != Purchase::Reason::cheapest || purchase.is_instead) return false;
    std::set<std::size_t> suppliers;
    auto const in_force = offers_in_force(book, index, date);
    for (std::size_t const each : *in_force)
        if (!is_only_compared(book.offers[each], book))
            suppliers.insert(book.offers[each].supplier);
    return suppliers.size() > 1;
}

inline void ask_from_whom(Costing const& costing, Diagnostics& found) {
    Book const& book = costing.book();
    std::vector<std::size_t> open;
    for (std::size_t i = 0; i < book.ingredients.size(); ++i)
        if (auto const& purchase = costing.formulary().costs.purchases[i];
            purchase && is_open(book, i, *purchase, costing.date()))
            open.push_back(i);
    if (open.empty()) return;
    constexpr std::size_t most = 3;
    std::string names;
    for (std::size_t i = 0; i < open.size() && i < most; ++i)
        names += fmt::format("{}'{}'",
                             i == 0                 ? ""
                             : i + 1 == open.size() ? " and "
                                                    : ", ",
                             book.ingredients[open[i]].name);
    if (open.size() > most) names += fmt::format(" and {} more", open.size() - most);
    found.warn(book.ingredients[open.front()].origin, "from-whom",
               fmt::format("from whom do you buy {}? Several suppliers offer {}, and the cheapest "
                           "offer is taken",
                           names, open.size() == 1 ? "it" : "them"),
               "note what you buy in purchases/, or write 'prefer: NAME' in ingredients.yaml, or "
               "'terms: {only compared: yes}' in the list of whom you do not buy from");
}

inline std::string unit_words(Money const& usable, Ingredient const& ingredient) {
    PriceUnit const unit = price_unit(ingredient.costed_by());
    return fmt::format("{} {}{}", decimal((usable * unit.size).amount(), 2 + unit.more),
                       unit.size == 1 ? "" : "/ ", unit.word);
}

/// What a purchase cost per usable unit, by itself: without delivery.
inline std::optional<Money> paid_per_unit(Offer const& paid, Ingredient const& ingredient) {
    auto const content = content_of(paid, ingredient);
    if (!content) return std::nullopt;
    return paid.pack_cost() / *content / yield_of(paid, ingredient).value();
}

inline void ask_about_last_price(Book const& book, std::size_t index, Date date,
                                 Diagnostics& found) {
    Ingredient const& ingredient = book.ingredients[index];
    Offer const* last = nullptr;
    Offer const* before = nullptr;
    for (std::size_t const each : book.offers_of[index]) {
        Offer const& offer = book.offers[each];
        if (offer.kind != Offer::Kind::paid || !offer.has_begun(date)) continue;
        if (last != nullptr && last->from < offer.from) before = last;
        last = &offer;
    }
    if (before == nullptr) return;
    auto const now = paid_per_unit(*last, ingredient);
    auto const then = paid_per_unit(*before, ingredient);
    if (!now || !then || then->is_zero()) return;
    Number const change = *now / *then - 1;
    Number const size = change.is_negative() ? -change : change;
    if (size <= usual_price_move) return;
    found.add(
        {Severity::warning,
         "paid-far-off",
         fmt::format("'{}' was bought at {} on {}, {} % {} than {} on {}", ingredient.name,
                     unit_words(*now, ingredient), iso_date(*last->from), decimal(size * 100, 0),
                     change.is_negative() ? "less" : "more", unit_words(*then, ingredient),
                     iso_date(*before->from)),
         last->origin,
         {{"bought before", before->origin}},
         "correct the pack, the packs or what was paid; or add 'stopgap: yes' if it was for once, and "
         "costs are not to go by it"});
}

} // namespace buying_findings_detail

GROAT_INLINE Diagnostics buying_findings(Costing const& costing) {
    Book const& book = costing.book();
    Diagnostics found;
    buying_findings_detail::ask_from_whom(costing, found);
    if (book.receipts.size() < 2) return found;
    for (std::size_t i = 0; i < book.ingredients.size(); ++i)
        buying_findings_detail::ask_about_last_price(book, i, costing.date(), found);
    return found;
}

} // namespace groat
