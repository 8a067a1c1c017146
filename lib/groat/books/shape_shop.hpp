/// The shapes of shop.yaml and words.yaml.
#pragma once

#include <groat/books/shape_common.hpp>
#include <groat/model/shop.hpp>

#include <array>
#include <string_view>

namespace groat::shapes {

inline constexpr KeyShape role_keys[] = {
    {"wage", must, money_per_hour, "21.00 / h", "What an hour of this work is paid."},
    {"on-cost", may, a_percentage, "12 %", "What the shop pays on top of the wage."},
};
inline constexpr Synonym role_synonyms[] = {
    {"pay", "wage"}, {"rate", "wage"}, {"hourly rate", "wage"}, {"overhead", "on-cost"}};
inline constexpr Shape role{"role", "this role", role_keys, role_synonyms};
inline constexpr Value a_role = mapping(role);

inline constexpr KeyShape oven_keys[] = {
    {"power", must, written(ValueKind::measured, "a power"), "5.5 kW",
     "The power at which it heats."},
    {"duty", may, a_percentage, "60 %", "The part of the baking time in which it heats."},
    {"preheat", may, a_time, "25 min", "How long it heats at full power before the first load."},
    {"fuel", may, a_name, "gas", "The energy that it takes, as 'energy' calls it."},
};
inline constexpr Synonym oven_synonyms[] = {{"energy", "fuel"}, {"preheating", "preheat"}};
inline constexpr Shape oven{"oven", "this oven", oven_keys, oven_synonyms};
inline constexpr Value an_oven = mapping(oven);

inline constexpr KeyShape overhead_keys[] = {
    {"name", must, a_name, "rent and insurance", "What it is."},
    {"rate", must,
     written(ValueKind::text,
             "money per labour hour, oven hour, order or piece, or a percentage of ingredients or "
             "prime cost"),
     "6.40 per labour hour", "How much it is, and what it is spread over."},
    {"variable", may, yes_or_no, "no", "Whether it grows with what is made."},
};
inline constexpr Synonym overhead_synonyms[] = {{"amount", "rate"}, {"overhead", "name"}};
inline constexpr Shape overhead{"overhead", "this overhead", overhead_keys, overhead_synonyms};
inline constexpr Value an_overhead = mapping(overhead);

inline constexpr KeyShape shop_delivery_keys[] = {
    {"flat", may, some_money, "3.00", "What each delivery costs, however far it goes."},
    {"rate", may, money_per_distance, "0.60 / km", "What the distance costs."},
    {"driver", may, a_name, "driver", "The role that drives; its time is a cost of the delivery."},
};
inline constexpr Shape shop_delivery{"delivery of the shop", "the delivery", shop_delivery_keys};

inline constexpr KeyShape fee_keys[] = {
    {"share", may, a_percentage, "2.9 %", "The part of a payment that it takes."},
    {"fixed", may, some_money, "0.30", "What each payment takes."},
};
inline constexpr Synonym fee_synonyms[] = {
    {"percent", "share"}, {"percentage", "share"}, {"rate", "share"}, {"flat", "fixed"}};
inline constexpr Shape fee{"fee", "this fee", fee_keys, fee_synonyms};
inline constexpr Value a_fee = mapping(fee);

inline constexpr std::string_view tax_roundings[] = {"per document", "per line"};
inline constexpr KeyShape tax_keys[] = {
    {"name", may, a_name, "sales tax", "What documents call it."},
    {"rate", must, a_percentage, "8.25 %", "The rate of what says nothing else."},
    {"prices", may, one_of(sides_of_tax), "with", "Whether prices are shown with tax or without."},
    {"rounded", may, one_of(tax_roundings), "per line", "What is rounded."},
    {"other rates", may, names_to("rates", a_percentage), "{reduced: 3 %}",
     "Rates for some of the goods, by name."},
    {"delivery", may, a_name, "main",
     "How deliveries are taxed: 'with the goods', 'main', 'none', or one of the other rates."},
};
inline constexpr Synonym tax_synonyms[] = {
    {"percent", "rate"}, {"percentage", "rate"}, {"rounding", "rounded"}, {"rates", "other rates"}};
inline constexpr Shape tax{"tax", "this tax", tax_keys, tax_synonyms};

inline constexpr KeyShape rush_keys[] = {
    {"within", must, some_days, "3 days", "Orders wanted within so many days are urgent."},
    {"surcharge", must, a_percentage, "15 %", "What they pay on top of the goods."},
};
inline constexpr Shape rush{"rush", "this rule", rush_keys};

inline constexpr std::string_view label_laws[] = {"us", "eu"};
inline constexpr KeyShape label_keys[] = {
    {"allergens", may, one_of(label_laws), "eu", "The law by which allergens are told."},
    {"small amounts", may, a_percentage, "2 %",
     "Ingredients up to this part are set apart at the end of the statement."},
    {"grouped", may, yes_or_no, "yes", "Whether parts stand in brackets behind what they make up."},
};
inline constexpr Synonym label_synonyms[] = {{"law", "allergens"}};
inline constexpr Shape label{"labels", "these labels", label_keys, label_synonyms};

inline constexpr Value a_colour = written(ValueKind::text, "a colour");
inline constexpr KeyShape colour_keys[] = {
    {"mark", may, a_colour, "'#7a3b12'", "The colour of lines and bars."},
    {"ink", may, a_colour, "'#222222'", "The colour of text."},
};
inline constexpr Shape colours{"colours", "the colours", colour_keys};

inline constexpr KeyShape sheets_keys[] = {
    {"language", may, a_language, "de", "The language of sheets that leave the house."},
    {"money", may, written(ValueKind::text, "the amount 1234.56 as you write it"), "'1,234.56'",
     "How amounts are written."},
    {"dates", may, written(ValueKind::text, "the 31st of December 2026 as you write it"),
     "31 December 2026", "How dates are written."},
    {"logo", may, written(ValueKind::text, "the name of a file"), "logo.svg",
     "A picture in the folder, SVG or PNG, for the head of pages."},
    {"colours", may, mapping(colours), "{mark: '#7a3b12'}", "The colours of pages."},
};
inline constexpr Synonym sheets_synonyms[] = {{"currency", "money"}};
inline constexpr Shape sheets{"sheets", "the sheets", sheets_keys, sheets_synonyms};

inline constexpr std::string_view cup_measures[] = {"us", "label", "metric", "australian",
                                                    "imperial"};
inline constexpr Value a_category = one_of(category_words);

/// What the severity of a finding may be set to.
inline constexpr std::string_view severities[] = {"error"};
inline constexpr Value a_severity = one_of(severities);

inline constexpr KeyShape shop_keys[] = {
    {"groat", may, a_number, "1", "The form that these books are written in."},
    {"currency", must, a_currency, "USD", "The currency of all amounts in the books."},
    {"measures", may, one_of(cup_measures), "metric", "Whose cups, spoons and ounces these are."},
    {"shop", must, a_name, "Quillon Street Bakehouse", "The name of the business."},
    {"address", may, texts, "[12 Quillon Street, Havenport]", "Its address, a line for each."},
    {"contact", may, a_text, "+1 555 0100", "How a client reaches the shop."},
    {"labour", may, names_to("roles", a_role), "{baker: {wage: 21.00 / h}}",
     "Who works here, by role, and for what wage."},
    {"ovens", may, names_to("ovens", an_oven), "{deck: {power: 5.5 kW}}", "The ovens, by name."},
    {"energy", may, names_to("kinds of energy", money_per_energy), "{electricity: 0.18 / kWh}",
     "What energy costs, by its kind."},
    {"overhead", may, list_of(an_overhead),
     "[{name: rent and insurance, rate: 6.40 per labour hour}]",
     "What has to be paid whatever is made."},
    {"order work", may, list_of(an_order_task), "[{task: write the quote, by: baker, minutes: 6}]",
     "The work that each order takes."},
    {"counter work", may, list_of(an_order_task), "[{task: set out, by: helper, minutes: 4}]",
     "The work of an order for the shop's own counter, in place of 'order work'."},
    {"costed as", may, one_of(costed_as_words), "made together",
     "How orders are costed that do not say it."},
    {"delivery", may, mapping(shop_delivery), "{flat: 3.00, rate: 0.60 / km}",
     "What a delivery costs the shop."},
    {"fees", may, names_to("ways of paying", a_fee), "{card: {share: 2.9 %, fixed: 0.30}}",
     "What being paid costs, by way of paying."},
    {"paid by", may, a_name, "card", "The way of paying of orders that do not say it."},
    {"tax", may, mapping(tax), "{rate: 8.25 %}", "The tax on what is sold."},
    {"price", may, a_price, "{margin: 40 %}", "What prices are to reach that do not say it."},
    {"minimum order", may, some_money, "60.00", "The least that an order's goods come to."},
    {"rush", may, mapping(rush), "{within: 3 days, surcharge: 15 %}",
     "What urgent orders pay on top."},
    {"deposit", may, a_percentage, "30 %", "The part that is paid when an order is placed."},
    {"valid", may, some_days, "14 days", "How long a quote holds."},
    {"stale after", may, some_days, "90 days", "When a price counts as old."},
    {"cash rounding", may, some_money, "0.05", "The smallest step that is paid in cash."},
    {"household measures", may, yes_or_no, "yes",
     "Whether production sheets also show cups and spoons."},
    {"standard run", may, a_number, "2", "How many batches a usual run is that says nothing else."},
    {"variable", may, list_of(a_category), "[ingredients, packaging]",
     "The categories of cost that grow with what is made."},
    {"labels", may, mapping(label), "{allergens: eu}", "How labels are written."},
    {"sheets", may, mapping(sheets), "{language: de}", "How sheets look that leave the house."},
    {"terms", may, texts, "Paid on receipt.", "The terms below a quote."},
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

inline constexpr auto word_keys = [] {
    std::array<std::string_view, std::size(word_table)> all{};
    for (std::size_t i = 0; i < all.size(); ++i) all[i] = word_table[i].key;
    return all;
}();
inline constexpr KeyShape words_keys[] = {
    {"language", may, a_language, "fr",
     "The language that the words are of, where it does not come with groat."},
    {"words", may, names_to("words that 'groat words' lists", a_text, word_keys), "{total: Total}",
     "The shop's own words, by the word that groat knows them as."},
};
inline constexpr Shape words{"words", "the words", words_keys};
inline constexpr Value some_words = mapping(words);

} // namespace groat::shapes
