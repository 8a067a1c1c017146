/// orders/*.yaml: what a client asks for, and on what terms.
#pragma once

#include <groat/books/read_common.hpp>
#include <groat/model/order.hpp>
#include <string_view>

namespace groat {

/// `delivery:`; what it charges may be a word or an amount.
bool read_value(Delivery& delivery, Node const& node, KeyShape const& key, Reading const& reading);

} // namespace groat

namespace groat::shapes {

inline constexpr std::string_view delivery_charges[] = {"in price", "at cost"};
inline constexpr std::string_view word_none[] = {"none"};
inline constexpr Value some_money_or_share = a_percentage | some_money;

inline constexpr KeyShape delivery_keys[] = {
    {"distance", may, to<&Delivery::distance>(a_distance_or_none), "12 km", "How far it goes."},
    {"charge", may, one_of(delivery_charges) | some_money, "at cost",
     "Whether it is contained in the prices, charged at cost, or charged with an amount."},
    {"both ways", may, to<&Delivery::is_both_ways>(yes_or_no), "yes",
     "Whether the way back is driven for it, too."},
    {"time", may, to<&Delivery::minutes>(a_time), "40 min", "How long the driver is away."},
    {"tax", may, to<&Delivery::tax>(a_name), "reduced",
     "How it is taxed, where that differs from the shop's rule."},
};
inline constexpr Synonym delivery_synonyms[] = {
    {"fee", "charge"}, {"price", "charge"}, {"return", "both ways"}, {"minutes", "time"}};
inline constexpr Shape delivery{"delivery of an order", "this delivery", delivery_keys,
                                delivery_synonyms};

inline constexpr KeyShape free_line_keys[] = {
    {"text", must, to<&FreeLine::text>(a_name), "hire of a cake stand",
     "What is charged, in words for the client."},
    {"count", may, a_count, "2", "How many; below 0 for what comes back."},
    {"price", must, some_money, "12.00", "The price of one; below 0 for what is given back."},
    {"cost", may, to<&FreeLine::cost>(some_money), "4.00", "What one costs the shop."},
    {"tax", may, to<&FreeLine::tax>(a_name), "reduced",
     "Its rate of tax, by its name in shop.yaml."},
};
inline constexpr Synonym free_line_synonyms[] = {
    {"quantity", "count"}, {"amount", "price"}, {"description", "text"}};
inline constexpr Shape free_line{"line of no item", "this line", free_line_keys,
                                 free_line_synonyms};

inline constexpr KeyShape order_line_keys[] = {
    {"item", must, to<&OrderLine::item>(a_name), "ginger-lemon sandwich",
     "The formula that is ordered."},
    {"as", may, to<&OrderLine::sale_unit>(a_name), "box of 12",
     "The sale unit; the first of the formula where none is said."},
    {"count", must, to<&OrderLine::count>(a_count), "4", "How many."},
    {"price", may, to<&OrderLine::price>(a_price), "{margin: 45 %}",
     "What its price is to reach, where that differs."},
    {"costed as", may, to<&OrderLine::costed_as>(one_of(costed_as_words)), "alone",
     "How it is costed, where that differs."},
};
inline constexpr Synonym order_line_synonyms[] = {
    {"product", "item"},   {"formula", "item"}, {"recipe", "item"}, {"name", "item"},
    {"quantity", "count"}, {"amount", "count"}, {"sold as", "as"},  {"unit", "as"}};
inline constexpr Shape order_line{"line of an order", "this line", order_line_keys,
                                  order_line_synonyms};
inline constexpr Value an_order_line = mapping(order_line) | mapping(free_line);

inline constexpr Value some_counts = list_of(a_count);
inline constexpr KeyShape quantity_break_keys[] = {
    {"starts", must, some_counts, "[1, 4, 10]", "The counts at which a price begins."},
    {"most", may, to<&Order::most_counted>(a_count), "60",
     "The count up to which the last price holds."},
};
inline constexpr Synonym quantity_break_synonyms[] = {
    {"from", "starts"}, {"counts", "starts"}, {"up to", "most"}, {"until", "most"}};
inline constexpr Shape quantity_breaks{"quantity breaks", "these quantity breaks",
                                       quantity_break_keys, quantity_break_synonyms};

inline constexpr KeyShape discount_keys[] = {
    {"share", must, a_percentage, "5 %", "The part of the goods that is taken off."},
    {"in the price", may, to<&Order::is_discount_in_price>(yes_or_no), "yes",
     "Whether prices are made so high that the target is met after the discount."},
};
inline constexpr Synonym discount_synonyms[] = {
    {"percent", "share"}, {"percentage", "share"}, {"rate", "share"}, {"in price", "in the price"}};
inline constexpr Shape discount{"discount", "this discount", discount_keys, discount_synonyms};

inline constexpr KeyShape order_keys[] = {
    {"order", must, to<&Order::id>(a_name), "2026-041", "Its number, or another name."},
    {"client", may, to<&Order::client>(a_text), "Fenwick Tea Room", "Who ordered."},
    {"date", may, to<&Order::date>(a_date), "2026-11-20",
     "The day of the order: prices are those of that day."},
    {"due", may, to<&Order::due>(a_date), "2026-11-28", "The day it is wanted for."},
    {"valid", may, to<&Order::valid>(some_days), "14 days", "How long the quote holds."},
    {"paid by", may, to<&Order::paid_by>(a_name), "card",
     "The way of paying, as 'fees' in shop.yaml calls it."},
    {"lines", must, list_of(an_order_line), "[{item: ginger-lemon sandwich, count: 4}]",
     "What is ordered."},
    {"quantity breaks", may, some_counts | mapping(quantity_breaks), "[1, 4, 10]",
     "The counts for which the quote shows a price each."},
    {"delivery", may, to<&Order::delivery>(mapping(delivery)), "{distance: 12 km, charge: at cost}",
     "How it reaches the client."},
    {"rush", may, one_of(word_none) | some_money_or_share, "15 %",
     "What being urgent costs, in place of the shop's rule."},
    {"discount", may, some_money_or_share | mapping(discount), "5 %",
     "What is taken off the goods."},
    {"deposit", may, to<&Order::deposit>(a_percentage), "30 %",
     "The part that is paid when the order is placed."},
    {"tax", may, to<&Order::tax>(a_name), "none",
     "Its rate of tax, by its name in shop.yaml, or 'none'."},
    {"notes", may, to<&Order::notes>(a_text), "by the back door",
     "What the client is told below the quote."},
    {"costed as", may, to<&Order::costed_as>(one_of(costed_as_words)), "made together",
     "How it is costed."},
    {"made with", may, to<&Order::made_with>(names), "[2026-042]",
     "Other orders that are made together with it."},
};
inline constexpr Synonym order_synonyms[] = {
    {"customer", "client"},    {"items", "lines"},
    {"id", "order"},           {"number", "order"},
    {"order number", "order"}, {"delivery date", "due"},
    {"wanted", "due"},         {"wanted for", "due"},
    {"payment", "paid by"},    {"payment method", "paid by"},
    {"comment", "notes"},      {"breaks", "quantity breaks"},
};
inline constexpr Shape order{"order", "this order", order_keys, order_synonyms};
inline constexpr Value an_order = mapping(order);

} // namespace groat::shapes

namespace groat {

/// The order of a document; without a number where the document gives none.
[[nodiscard]] Order read_order(Node const& node, Reading const& reading);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/read_orders.ipp>
#endif
