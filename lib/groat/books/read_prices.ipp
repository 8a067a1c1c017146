#pragma once

#include <groat/books/read_prices.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>
#include <groat/books/read_yields.hpp>

#include <algorithm>
#include <utility>

namespace groat {

namespace read_prices_detail {

inline void check_currency(Node const* node, Reading const& reading) {
    (void)read_scalar(node, "a currency", reading, [&](std::string_view text) -> Result<Currency> {
        auto const currency = Currency::find(text);
        if (!currency)
            return refuse("unknown-currency",
                          fmt::format("'{}' is not a currency", shortened(text, 32)),
                          "write the three letters of ISO 4217, or leave it out");
        if (!reading.currency.is_none() && !(*currency == reading.currency))
            return refuse("wrong-currency",
                          fmt::format("this list is in {}, but the books are kept in {}", text,
                                      reading.currency.code()),
                          fmt::format("write what the prices are in {}", reading.currency.code()));
        return *currency;
    });
}

/// The packs of a break: `3 packs`.
inline Result<Number> parse_packs(std::string_view text) {
    std::string_view number = trimmed(text);
    if (number.ends_with("packs"))
        number.remove_suffix(5);
    else if (number.ends_with("pack"))
        number.remove_suffix(4);
    auto packs = parse_number(trimmed(number));
    if (!packs || !packs->is_whole() || !packs->is_positive())
        return refuse("bad-break",
                      fmt::format("'{}' is not a number of packs", shortened(text, 32)),
                      "write from how many on, as {3 packs: 13.10}");
    return packs;
}

inline Offer read_offer(Node const& node, std::optional<Date> from, TaxRate const& tax,
                        Reading const& reading) {
    Fields<shapes::offer> fields(node, reading.found);
    Offer offer;
    offer.origin = fields.where();
    offer.tax_included = tax;
    if (fields.at("from") == nullptr) offer.from = from;
    offer.tax_included = tax;
    fields.read_into(offer, reading);
    if (Node const* const pack = fields.at("pack"); pack != nullptr && pack->is_scalar())
        offer.pack_text = trimmed(pack->text);
    offer.yield = read_yield(fields.at("yield"), offer.yield_source, reading);
    if (offer.from && offer.until && *offer.until < *offer.from)
        reading.found.warn(fields.place_of("until"), "never-in-force",
                           fmt::format("this offer ends on {}, before it begins on {}",
                                       iso_date(*offer.until), iso_date(*offer.from)),
                           "'until' is the last day of an offer, 'from' the first");
    fields.close();
    return offer;
}

inline Supplier read_terms(Node const& node, Reading const& reading) {
    Fields<shapes::terms> fields(node, reading.found);
    Supplier terms;
    fields.read_into(terms, reading);
    if (terms.usual_order && terms.usual_order->is_zero())
        reading.found.error(
            fields.place_of("usual order"), "not-positive", "the usual order has to be above 0",
            "write what an order of this supplier's goods usually comes to, as 120.00");
    else if (terms.usual_order && terms.minimum_order && *terms.usual_order < *terms.minimum_order)
        reading.found.warn(fields.place_of("usual order"), "usual-below-minimum",
                           "the usual order is below the minimum order, and would be refused",
                           "write what an order usually comes to, at list prices");
    fields.close();
    return terms;
}

} // namespace read_prices_detail

GROAT_INLINE bool read_value(std::vector<PriceBreak>& breaks, Node const& node, KeyShape const&,
                             Reading const& reading) {
    if (!node.is_mapping()) {
        expected("a mapping of packs to prices", node, reading.found,
                 "write it as {3 packs: 13.10}");
        return false;
    }
    for (std::size_t i = 0; i < node.items.size(); ++i) {
        auto packs = read_prices_detail::parse_packs(node.keys[i].text);
        if (!packs) reading.found.error(node.keys[i].where, packs.error());
        auto price = read_money(&node.items[i], reading);
        if (packs && price) breaks.push_back({*std::move(packs), *std::move(price)});
    }
    std::stable_sort(breaks.begin(), breaks.end(),
                     [](PriceBreak const& a, PriceBreak const& b) { return a.packs < b.packs; });
    return true;
}

GROAT_INLINE PriceList read_price_list(Node const& node, Reading const& reading) {
    namespace parts = read_prices_detail;
    std::size_t const errors = reading.found.errors_met();
    std::size_t errors_of_offers = 0;
    Fields<shapes::price_list> fields(node, reading.found);
    PriceList list;
    fields.read_into(list, reading);
    parts::check_currency(fields.at("currency"), reading);
    TaxRate tax;
    assign(tax, read_rate<TaxRate>(fields.at("tax included"), reading));
    auto const from = read_date(fields.at("from"), reading);
    if (Node const* const terms = fields.at("terms")) {
        list.terms = parts::read_terms(*terms, reading);
        list.terms_origin = terms->where;
    }
    Node const* const offers = fields.at("offers");
    for (Node const& each : read_list(offers, "a list of offers", reading)) {
        std::size_t const before = reading.found.errors_met();
        Offer offer = parts::read_offer(each, from, tax, reading);
        offer.is_in_doubt = reading.found.errors_met() > before;
        if (!offer.item.is_given()) continue;
        errors_of_offers += reading.found.errors_met() - before;
        list.offers.push_back(std::move(offer));
    }
    fields.close();
    list.is_in_doubt = reading.found.errors_met() - errors > errors_of_offers;
    return list;
}

} // namespace groat
