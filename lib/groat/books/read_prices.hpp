/// prices/*.yaml: price lists, each of one supplier; a supplier may have several.
#pragma once

#include <groat/books/read_common.hpp>
#include <groat/books/read_yields.hpp>
#include <groat/model/offer.hpp>
#include <optional>
#include <vector>

namespace groat {

/// A price list as read: whose it is, and its offers, which do not know yet which supplier that is in the
/// book. `supplier` is not given where the list does not name one.
struct PriceList {
    Reference supplier = {};
    /// What it says under `terms`: of a supplier without name and place.
    Supplier terms = {};
    Span terms_origin = {}; ///< unknown where it says none
    std::vector<Offer> offers = {};
    bool is_in_doubt = false; ///< an error stands outside its offers, or in one that names no item
};

/// Prices by the packs from which they hold, the least first.
bool read_value(std::vector<PriceBreak>& breaks, Node const& node, KeyShape const& key,
                Reading const& reading);

} // namespace groat

namespace groat::shapes {

inline constexpr KeyShape offer_keys[] = {
    {"item", must, to<&Offer::item>(a_name), "plain flour",
     "The ingredient or supply that is offered."},
    {"pack", must, to<&Offer::pack>(an_amount), "25 lb", "What one pack holds."},
    {"price", must, to<&Offer::price>(some_money), "13.80", "What one pack costs."},
    {"freight", may, to<&Offer::freight>(some_money), "1.20", "What a pack costs to come here."},
    {"deposit", may, to<&Offer::deposit>(some_money), "0.50",
     "What comes back when the empty pack does."},
    {"yield", may, a_yield, "88 %", "What is usable of this offer, where that differs."},
    {"from", may, to<&Offer::from>(a_date), "2026-11-02", "The first day on which it holds."},
    {"until", may, to<&Offer::until>(a_date), "2026-12-31", "The last day on which it holds."},
    {"breaks", may, to<&Offer::breaks>(names_to("numbers of packs", some_money)),
     "{3 packs: 13.10}", "What one pack costs from so many packs on."},
    {"most packs", may, to<&Offer::most_packs>(a_count), "10",
     "How many packs can be bought at most."},
    {"code", may, to<&Offer::code>(a_text), "FL-01", "What the supplier calls it."},
    {"only compared", may, to<&Offer::is_only_compared>(yes_or_no), "yes",
     "Whether it is compared, and never bought."},
};
inline constexpr Synonym offer_synonyms[] = {
    {"ingredient", "item"},
    {"product", "item"},
    {"name", "item"},
    {"size", "pack"},
    {"pack size", "pack"},
    {"cost", "price"},
    {"shipping", "freight"},
    {"valid from", "from"},
    {"date", "from"},
    {"valid until", "until"},
    {"price breaks", "breaks"},
    {"quantity breaks", "breaks"},
    {"sku", "code"},
    {"SKU", "code"},
    {"article", "code"},
};
inline constexpr Shape offer{"offer", "this offer", offer_keys, offer_synonyms};
inline constexpr Value an_offer = mapping(offer);

inline constexpr KeyShape terms_keys[] = {
    {"minimum", may, to<&Supplier::minimum_order>(some_money), "50.00",
     "The least that the supplier takes an order for."},
    {"delivery", may, to<&Supplier::delivery>(some_money), "9.00", "What a delivery costs."},
    {"free delivery from", may, to<&Supplier::free_delivery_from>(some_money), "150.00",
     "The order from which delivery is free."},
    {"usual order", may, to<&Supplier::usual_order>(some_money), "120.00",
     "What an order usually comes to; a delivery is shared over it."},
    {"only compared", may, to<&Supplier::is_only_compared>(yes_or_no), "yes",
     "Whether the supplier is compared, and never used."},
};
inline constexpr Synonym terms_synonyms[] = {{"minimum order", "minimum"},
                                             {"delivery fee", "delivery"},
                                             {"free delivery", "free delivery from"}};
inline constexpr Shape terms{"terms", "these terms", terms_keys, terms_synonyms};

inline constexpr KeyShape price_list_keys[] = {
    {"supplier", must, to<&PriceList::supplier>(a_name), "Mill Road Provisions",
     "Whose list it is."},
    {"currency", may, a_currency, "USD", "The currency of its prices: that of the books."},
    {"tax included", may, a_percentage, "7 %", "The tax that its prices contain."},
    {"from", may, a_date, "2026-11-02", "The first day of offers that name none."},
    {"terms", may, mapping(terms), "{minimum: 50.00, delivery: 9.00}",
     "What the supplier asks of every order."},
    {"offers", must, list_of(an_offer), "[{item: plain flour, pack: 25 lb, price: 13.80}]",
     "What is offered, an entry for each pack."},
};
inline constexpr Synonym price_list_synonyms[] = {{"vendor", "supplier"},
                                                  {"date", "from"},
                                                  {"valid from", "from"},
                                                  {"vat included", "tax included"},
                                                  {"prices", "offers"}};
inline constexpr Shape price_list{"price list", "this price list", price_list_keys,
                                  price_list_synonyms};
inline constexpr Value a_price_list = mapping(price_list);

} // namespace groat::shapes

namespace groat {

/// The price list of a document. What it says for all its offers (`from`, `tax included`) is put into each
/// that does not say otherwise. An offer that names no item is left out.
[[nodiscard]] PriceList read_price_list(Node const& node, Reading const& reading);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/read_prices.ipp>
#endif
