/// The shapes of what is asked for, offered, made and tried: orders/*.yaml, menus/*.yaml, runs/*.yaml and
/// scenarios.yaml.
#pragma once

#include <groat/books/shape_common.hpp>
#include <groat/model/costed_as.hpp>

#include <string_view>

namespace groat::shapes {

inline constexpr std::string_view delivery_charges[] = {"in price", "at cost"};
inline constexpr std::string_view word_none[] = {"none"};
inline constexpr Value some_money_or_share = a_percentage | some_money;

inline constexpr KeyShape delivery_keys[] = {
    {"distance", may, a_distance, "12 km", "How far it goes."},
    {"charge", may, one_of(delivery_charges) | some_money, "at cost",
     "Whether it is contained in the prices, charged at cost, or charged with an amount."},
    {"both ways", may, yes_or_no, "yes", "Whether the way back is driven for it, too."},
    {"time", may, a_time, "40 min", "How long the driver is away."},
    {"tax", may, a_name, "reduced", "How it is taxed, where that differs from the shop's rule."},
};
inline constexpr Synonym delivery_synonyms[] = {
    {"fee", "charge"}, {"price", "charge"}, {"return", "both ways"}, {"minutes", "time"}};
inline constexpr Shape delivery{"delivery of an order", "this delivery", delivery_keys,
                                delivery_synonyms};

inline constexpr KeyShape free_line_keys[] = {
    {"text", must, a_name, "hire of a cake stand", "What is charged, in words for the client."},
    {"count", may, a_count, "2", "How many; below 0 for what comes back."},
    {"price", must, some_money, "12.00", "The price of one; below 0 for what is given back."},
    {"cost", may, some_money, "4.00", "What one costs the shop."},
    {"tax", may, a_name, "reduced", "Its rate of tax, by its name in shop.yaml."},
};
inline constexpr Synonym free_line_synonyms[] = {
    {"quantity", "count"}, {"amount", "price"}, {"description", "text"}};
inline constexpr Shape free_line{"line of no item", "this line", free_line_keys,
                                 free_line_synonyms};

inline constexpr KeyShape order_line_keys[] = {
    {"item", must, a_name, "ginger-lemon sandwich", "The formula that is ordered."},
    {"as", may, a_name, "box of 12", "The sale unit; the first of the formula where none is said."},
    {"count", must, a_count, "4", "How many."},
    {"price", may, a_price, "{margin: 45 %}", "What its price is to reach, where that differs."},
    {"costed as", may, one_of(costed_as_words), "alone", "How it is costed, where that differs."},
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
    {"most", may, a_count, "60", "The count up to which the last price holds."},
};
inline constexpr Synonym quantity_break_synonyms[] = {
    {"from", "starts"}, {"counts", "starts"}, {"up to", "most"}, {"until", "most"}};
inline constexpr Shape quantity_breaks{"quantity breaks", "these quantity breaks",
                                       quantity_break_keys, quantity_break_synonyms};

inline constexpr KeyShape discount_keys[] = {
    {"share", must, a_percentage, "5 %", "The part of the goods that is taken off."},
    {"in the price", may, yes_or_no, "yes",
     "Whether prices are made so high that the target is met after the discount."},
};
inline constexpr Synonym discount_synonyms[] = {
    {"percent", "share"}, {"percentage", "share"}, {"rate", "share"}, {"in price", "in the price"}};
inline constexpr Shape discount{"discount", "this discount", discount_keys, discount_synonyms};

inline constexpr KeyShape order_keys[] = {
    {"order", must, a_name, "2026-041", "Its number, or another name."},
    {"client", may, a_text, "Fenwick Tea Room", "Who ordered."},
    {"date", may, a_date, "2026-11-20", "The day of the order: prices are those of that day."},
    {"due", may, a_date, "2026-11-28", "The day it is wanted for."},
    {"valid", may, some_days, "14 days", "How long the quote holds."},
    {"paid by", may, a_name, "card", "The way of paying, as 'fees' in shop.yaml calls it."},
    {"lines", must, list_of(an_order_line), "[{item: ginger-lemon sandwich, count: 4}]",
     "What is ordered."},
    {"quantity breaks", may, some_counts | mapping(quantity_breaks), "[1, 4, 10]",
     "The counts for which the quote shows a price each."},
    {"delivery", may, mapping(delivery), "{distance: 12 km, charge: at cost}",
     "How it reaches the client."},
    {"rush", may, one_of(word_none) | some_money_or_share, "15 %",
     "What being urgent costs, in place of the shop's rule."},
    {"discount", may, some_money_or_share | mapping(discount), "5 %",
     "What is taken off the goods."},
    {"deposit", may, a_percentage, "30 %", "The part that is paid when the order is placed."},
    {"tax", may, a_name, "none", "Its rate of tax, by its name in shop.yaml, or 'none'."},
    {"notes", may, a_text, "by the back door", "What the client is told below the quote."},
    {"costed as", may, one_of(costed_as_words), "made together", "How it is costed."},
    {"made with", may, names, "[2026-042]", "Other orders that are made together with it."},
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

inline constexpr KeyShape menu_item_keys[] = {
    {"item", must, a_name, "lemon tart", "The formula that is offered."},
    {"as", may, a_name, "slice", "The sale unit; the first of the formula where none is said."},
    {"name", may, a_name, "Lemon tart", "What the menu calls it."},
    {"category", may, a_name, "tarts", "The category it stands in."},
    {"price", may, some_money, "5.50", "What it costs now."},
    {"target", may, a_price, "{margin: 60 %}", "What its price is to reach."},
    {"tax", may, a_name, "reduced", "Its rate of tax, by its name in shop.yaml."},
    {"sold", may, a_count, "120", "How many were sold in the period."},
};
inline constexpr Synonym menu_item_synonyms[] = {
    {"dish", "item"},   {"product", "item"},  {"formula", "item"},
    {"recipe", "item"}, {"unit", "as"},       {"group", "category"},
    {"sales", "sold"},  {"quantity", "sold"}, {"count", "sold"}};
inline constexpr Shape menu_item{"item of a menu", "this item", menu_item_keys, menu_item_synonyms};
inline constexpr Value a_menu_item = mapping(menu_item);

inline constexpr KeyShape menu_keys[] = {
    {"menu", must, a_name, "winter counter", "What it is called."},
    {"period", may, a_name, "november 2026", "The time in which so much was sold."},
    {"prices", may, one_of(sides_of_tax), "with",
     "Whether its prices are with tax or without, where that differs from the shop's."},
    {"price", may, a_price, "{margin: 60 %}", "What its prices are to reach."},
    {"paid by", may, a_name | names_to("ways of paying", a_percentage), "{card: 60 %, cash: 40 %}",
     "How it is paid: one way, or the share of each."},
    {"items per payment", may, a_number, "2.5", "How many items one payment is for."},
    {"categories", may, names_to("categories", a_price), "{tarts: {margin: 65 %}}",
     "The categories, and what the prices in each are to reach."},
    {"items", must, list_of(a_menu_item), "[{item: lemon tart, price: 5.50}]", "What is offered."},
    {"fixed costs", may, names_to("costs", some_money), "{rent: 900.00}",
     "What the period costs whatever is sold."},
    {"wanted profit", may, some_money, "400.00", "What is to be left of the period."},
    {"tax on profit", may, a_percentage, "20 %", "The part of a profit that is taken as tax."},
};
inline constexpr Synonym menu_synonyms[] = {{"name", "menu"},           {"dishes", "items"},
                                            {"products", "items"},      {"lines", "items"},
                                            {"target", "price"},        {"overhead", "fixed costs"},
                                            {"profit", "wanted profit"}};
inline constexpr Shape menu{"menu", "this menu", menu_keys, menu_synonyms};
inline constexpr Value a_menu = mapping(menu);

inline constexpr KeyShape pieces_keys[] = {
    {"portioned", may, a_count, "84", "How many pieces went onto the trays."},
    {"good", must, a_count, "80", "How many were good in the end."},
};
inline constexpr Synonym pieces_synonyms[] = {{"made", "portioned"}, {"sellable", "good"}};
inline constexpr Shape pieces{"pieces of a run", "these pieces", pieces_keys, pieces_synonyms};

inline constexpr KeyShape used_keys[] = {
    {"amount", must, an_amount, "330 g", "How much was used."},
    {"paid", may, some_money, "2.10", "What that amount has cost."},
};
inline constexpr Synonym used_synonyms[] = {
    {"quantity", "amount"}, {"weight", "amount"}, {"cost", "paid"}, {"price", "paid"}};
inline constexpr Shape used{"ingredient of a run", "this use", used_keys, used_synonyms};
inline constexpr Value a_use = an_amount | mapping(used);

inline constexpr KeyShape worked_keys[] = {
    {"time", must, a_time, "55 min", "How long was worked."},
    {"paid", may, money_per_hour, "21.00 / h", "The wage that was paid."},
};
inline constexpr Synonym worked_synonyms[] = {{"minutes", "time"}, {"wage", "paid"}};
inline constexpr Shape worked{"work of a run", "this work", worked_keys, worked_synonyms};
inline constexpr Value some_work = a_time | mapping(worked);

inline constexpr KeyShape run_keys[] = {
    {"run", must, a_name, "shells for the reading circle", "What it is called."},
    {"formula", must, a_name, "ginger shell", "What was made."},
    {"date", may, a_date, "2026-11-21", "The day on which it was made."},
    {"order", may, a_name, "2026-041", "The order that it was made for."},
    {"batches", may, a_number, "2", "How many batches were made."},
    {"in", may, a_mass, "2.15 kg", "What went in."},
    {"dough", may, a_mass, "2.08 kg", "What came out of the mixer."},
    {"pieces", may, mapping(pieces), "{portioned: 84, good: 80}", "How many pieces there were."},
    {"out", may, a_mass, "1.80 kg", "What came out in the end."},
    {"used", may, names_to("ingredients", a_use), "{plain flour: 330 g}", "What was really used."},
    {"worked", may, names_to("roles", some_work), "{baker: 55 min}", "How long was worked."},
};
inline constexpr Synonym run_synonyms[] = {{"name", "run"},      {"recipe", "formula"},
                                           {"item", "formula"},  {"ingredients", "used"},
                                           {"labour", "worked"}, {"made", "pieces"}};
inline constexpr Shape run{"run", "this run", run_keys, run_synonyms};
inline constexpr Value a_run = mapping(run);

inline constexpr KeyShape scenario_keys[] = {
    {"scenario", must, a_name, "a dear winter", "What it is called."},
    {"changes", must, names, "[butter +20 %]",
     "The changes that are tried together, as 'groat whatif' takes them."},
};
inline constexpr Synonym scenario_synonyms[] = {
    {"name", "scenario"}, {"set", "changes"}, {"with", "changes"}};
inline constexpr Shape scenario{"scenario", "this scenario", scenario_keys, scenario_synonyms};
inline constexpr Value a_scenario = mapping(scenario);

} // namespace groat::shapes
