/// shop.yaml: wages, ovens, energy, overhead, fees, tax, and how the shop quotes.
#pragma once

#include <groat/books/read_common.hpp>
#include <groat/books/read_judgement.hpp>
#include <groat/books/read_look.hpp>
#include <groat/books/read_style.hpp>
#include <groat/books/read_words.hpp>
#include <groat/model/shop.hpp>
#include <string_view>

namespace groat {

bool read_value(Role& role, Node const& node, KeyShape const& key, Reading const& reading);
bool read_value(Oven& oven, Node const& node, KeyShape const& key, Reading const& reading);
bool read_value(Tariff& tariff, Node const& node, KeyShape const& key, Reading const& reading);
bool read_value(Overhead& overhead, Node const& node, KeyShape const& key, Reading const& reading);
bool read_value(TaxRule& tax, Node const& node, KeyShape const& key, Reading const& reading);
bool read_value(LabelRule& rule, Node const& node, KeyShape const& key, Reading const& reading);

} // namespace groat

namespace groat::shapes {

inline constexpr KeyShape role_keys[] = {
    {"wage", must, to<&Role::wage>(money_per_hour), "21.00 / h",
     "What an hour of this work is paid."},
    {"on-cost", may, to<&Role::on_cost>(a_percentage), "12 %",
     "What the shop pays on top of the wage."},
};
inline constexpr Synonym role_synonyms[] = {
    {"pay", "wage"}, {"rate", "wage"}, {"hourly rate", "wage"}, {"overhead", "on-cost"}};
inline constexpr Shape role{"role", "this role", role_keys, role_synonyms};
inline constexpr Value a_role = mapping(role);

inline constexpr KeyShape oven_keys[] = {
    {"power", must, to<&Oven::power>(quantity(ValueKind::measured, "a power", power)), "5.5 kW",
     "The power at which it heats."},
    {"duty", may, to<&Oven::duty>(a_percentage), "60 %",
     "The part of the baking time in which it heats."},
    {"preheat", may, to<&Oven::preheat>(a_time), "25 min",
     "How long it heats at full power before the first load."},
    {"fuel", may, to<&Oven::fuel>(a_name), "gas",
     "The energy that it takes, as 'energy' calls it."},
};
inline constexpr Synonym oven_synonyms[] = {{"energy", "fuel"}, {"preheating", "preheat"}};
inline constexpr Shape oven{"oven", "this oven", oven_keys, oven_synonyms};
inline constexpr Value an_oven = mapping(oven);

inline constexpr KeyShape overhead_keys[] = {
    {"name", must, to<&Overhead::name>(a_name), "rent and insurance", "What it is."},
    {"rate", must,
     written(ValueKind::text,
             "money per labour hour, oven hour, order or piece, or a percentage of ingredients or "
             "prime cost"),
     "6.40 per labour hour", "How much it is, and what it is spread over."},
    {"variable", may, to<&Overhead::is_variable>(yes_or_no), "no",
     "Whether it grows with what is made."},
};
inline constexpr Synonym overhead_synonyms[] = {{"amount", "rate"}, {"overhead", "name"}};
inline constexpr Shape overhead{"overhead", "this overhead", overhead_keys, overhead_synonyms};
inline constexpr Value an_overhead = mapping(overhead);

inline constexpr KeyShape shop_delivery_keys[] = {
    {"flat", may, to<&Shop::delivery_flat>(some_money), "3.00",
     "What each delivery costs, however far it goes."},
    {"rate", may, to<&Shop::delivery_rate>(money_per_distance), "0.60 / km",
     "What the distance costs."},
    {"driver", may, to<&Shop::driver>(a_name), "driver",
     "The role that drives; its time is a cost of the delivery."},
};
inline constexpr Shape shop_delivery{"delivery of the shop", "the delivery", shop_delivery_keys};

inline constexpr KeyShape fee_keys[] = {
    {"share", may, to<&Fee::share>(a_percentage), "2.9 %", "The part of a payment that it takes."},
    {"fixed", may, to<&Fee::fixed>(some_money), "0.30", "What each payment takes."},
};
inline constexpr Synonym fee_synonyms[] = {
    {"percent", "share"}, {"percentage", "share"}, {"rate", "share"}, {"flat", "fixed"}};
inline constexpr Shape fee{"fee", "this fee", fee_keys, fee_synonyms};
inline constexpr Value a_fee = mapping(fee);

inline constexpr std::string_view tax_roundings[] = {"per document", "per line"};
inline constexpr KeyShape tax_keys[] = {
    {"name", may, to<&TaxRule::name>(a_name), "sales tax", "What documents call it."},
    {"rate", must, to<&TaxRule::rate>(a_percentage), "8.25 %",
     "The rate of what says nothing else."},
    {"prices", may, to<&TaxRule::is_contained>(one_of(sides_of_tax)), "with",
     "Whether prices are shown with tax or without."},
    {"rounded", may, to<&TaxRule::is_rounded_per_line>(one_of(tax_roundings)), "per line",
     "What is rounded."},
    {"other rates", may, names_to("rates", a_percentage), "{reduced: 3 %}",
     "Rates for some of the goods, by name."},
    {"delivery", may, to<&TaxRule::delivery>(a_name), "main",
     "How deliveries are taxed: 'with the goods', 'main', 'none', or one of the other rates."},
};
inline constexpr Synonym tax_synonyms[] = {
    {"percent", "rate"}, {"percentage", "rate"}, {"rounding", "rounded"}, {"rates", "other rates"}};
inline constexpr Shape tax{"tax", "this tax", tax_keys, tax_synonyms};

inline constexpr KeyShape rush_keys[] = {
    {"within", must, to<&RushRule::within>(some_days), "3 days",
     "Orders wanted within so many days are urgent."},
    {"surcharge", must, to<&RushRule::surcharge>(a_percentage), "15 %",
     "What they pay on top of the goods."},
};
inline constexpr Shape rush{"rush", "this rule", rush_keys};

inline constexpr std::string_view label_laws[] = {"us", "eu"};
inline constexpr KeyShape label_keys[] = {
    {"allergens", may, to<&LabelRule::allergens>(one_of(label_laws)), "eu",
     "The law by which allergens are told."},
    {"small amounts", may, to<&LabelRule::small>(a_percentage), "2 %",
     "Ingredients up to this part are set apart at the end of the statement."},
    {"grouped", may, to<&LabelRule::is_grouped>(yes_or_no), "yes",
     "Whether parts stand in brackets behind what they make up."},
};
inline constexpr Synonym label_synonyms[] = {{"law", "allergens"}};
inline constexpr Shape label{"labels", "these labels", label_keys, label_synonyms};

inline constexpr std::string_view cup_measures[] = {"us", "label", "metric", "australian",
                                                    "imperial"};
inline constexpr Value a_category = one_of(category_words);

inline constexpr KeyShape shop_keys[] = {
    {"groat", may, a_number, "1", "The form that these books are written in."},
    {"currency", must, a_currency, "USD", "The currency of all amounts in the books."},
    {"measures", may, one_of(cup_measures), "metric", "Whose cups, spoons and ounces these are."},
    {"shop", must, to<&Sender::name>(a_name), "Quillon Street Bakehouse",
     "The name of the business."},
    {"address", may, to<&Sender::address>(texts), "[12 Quillon Street, Havenport]",
     "Its address, a line for each."},
    {"contact", may, to<&Sender::contact>(a_text), "+1 555 0100", "How a client reaches the shop."},
    {"labour", may, to<&Shop::roles>(names_to("roles", a_role)), "{baker: {wage: 21.00 / h}}",
     "Who works here, by role, and for what wage."},
    {"ovens", may, to<&Shop::ovens>(names_to("ovens", an_oven)), "{deck: {power: 5.5 kW}}",
     "The ovens, by name."},
    {"energy", may, to<&Shop::tariffs>(names_to("kinds of energy", money_per_energy)),
     "{electricity: 0.18 / kWh}", "What energy costs, by its kind."},
    {"overhead", may, to<&Shop::overheads>(list_of(an_overhead)),
     "[{name: rent and insurance, rate: 6.40 per labour hour}]",
     "What has to be paid whatever is made."},
    {"order work", may, list_of(an_order_task), "[{task: write the quote, by: baker, minutes: 6}]",
     "The work that each order takes."},
    {"counter work", may, list_of(an_order_task), "[{task: set out, by: helper, minutes: 4}]",
     "The work of an order for the shop's own counter, in place of 'order work'."},
    {"costed as", may, to<&Shop::costed_as>(one_of(costed_as_words)), "made together",
     "How orders are costed that do not say it."},
    {"delivery", may, mapping(shop_delivery), "{flat: 3.00, rate: 0.60 / km}",
     "What a delivery costs the shop."},
    {"fees", may, names_to("ways of paying", a_fee), "{card: {share: 2.9 %, fixed: 0.30}}",
     "What being paid costs, by way of paying."},
    {"paid by", may, to<&Shop::paid_by>(a_name), "card",
     "The way of paying of orders that do not say it."},
    {"tax", may, to<&Sender::tax>(mapping(tax)), "{rate: 8.25 %}", "The tax on what is sold."},
    {"price", may, to<&Shop::price>(a_price), "{margin: 40 %}",
     "What prices are to reach that do not say it."},
    {"minimum order", may, to<&Shop::minimum_order>(some_money), "60.00",
     "The least that an order's goods come to."},
    {"rush", may, to<&Shop::rush>(mapping(rush)), "{within: 3 days, surcharge: 15 %}",
     "What urgent orders pay on top."},
    {"deposit", may, to<&Shop::deposit>(a_percentage), "30 %",
     "The part that is paid when an order is placed."},
    {"valid", may, to<&Shop::valid>(some_days), "14 days", "How long a quote holds."},
    {"stale after", may, to<&Shop::stale_after>(some_days), "90 days",
     "When a price counts as old."},
    {"cash rounding", may, to<&Shop::cash_rounding>(a_step_of_money), "0.05",
     "The smallest step that is paid in cash."},
    {"household measures", may, to<&Shop::measures_by_cup>(yes_or_no), "yes",
     "Whether production sheets also show cups and spoons."},
    {"standard run", may, to<&Shop::standard_run>(a_number), "2",
     "How many batches a usual run is that says nothing else."},
    {"variable", may, list_of(a_category), "[ingredients, packaging]",
     "The categories of cost that grow with what is made."},
    {"labels", may, to<&Shop::label>(mapping(label)), "{allergens: eu}", "How labels are written."},
    {"sheets", may, mapping(sheets), "{language: de}", "How sheets look that leave the house."},
    {"terms", may, to<&Sender::terms>(texts), "Paid on receipt.", "The terms below a quote."},
    {"accept", may, names_to("codes of findings", a_text),
     "{loss-not-as-seen: new oven in January}",
     "Warnings that you have looked into, each with the reason why all is well."},
    {"severity", may, names_to("codes of findings", a_severity), "{below-cost: error}",
     "Warnings that are errors here."},
};
inline constexpr Synonym shop_synonyms[] = {
    {"name", "shop"},
    {"business", "shop"},
    {"bakery", "shop"},
    {"units", "measures"},
    {"phone", "contact"},
    {"email", "contact"},
    {"wages", "labour"},
    {"staff", "labour"},
    {"roles", "labour"},
    {"equipment", "ovens"},
    {"tariffs", "energy"},
    {"electricity", "energy"},
    {"vat", "tax"},
    {"VAT", "tax"},
    {"sales tax", "tax"},
    {"payment", "paid by"},
    {"payment fees", "fees"},
    {"validity", "valid"},
    {"margin", "price", "write it as 'price: {margin: 40 %}'"},
    {"markup", "price", "write it as 'price: {markup: 65 %}'"},
};
inline constexpr Shape shop{"shop", "the shop", shop_keys, shop_synonyms};
inline constexpr Value a_shop = mapping(shop);

} // namespace groat::shapes

namespace groat {

/// The shop of a document. The currency and the measures it names are put into `reading` first, since all
/// other amounts, here and in the other files, are read with them.
[[nodiscard]] Shop read_shop(Node const& node, Reading& reading);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/read_shop.ipp>
#endif
