/// formulas/*.yaml: what goes in, what is lost, what it takes, and how it is sold.
#pragma once

#include <groat/books/read_common.hpp>
#include <groat/books/read_oven.hpp>
#include <groat/model/formula.hpp>
#include <groat/model/keeping.hpp>
#include <string_view>

namespace groat {

/// `cold`, or with the days.
bool read_value(Keeping& keeping, Node const& node, KeyShape const& key, Reading const& reading);

} // namespace groat

namespace groat::shapes {

inline constexpr std::string_view loss_stages[] = {"before portioning", "after portioning",
                                                   "pieces"};
inline constexpr std::string_view batch_steps[] = {"exact", "half", "whole", "quarter"};
inline constexpr std::string_view leftover_ways[] = {"charged", "kept"};

inline constexpr Value a_line_amount =
    an_amount | a_percentage | written(ValueKind::text, "an amount 'as bought'");

/// Those of a line below its name, and behind the item of one in a list.
inline constexpr KeyShape line_amount{
    "amount", must, a_line_amount, "620 g",
    "How much of it is needed, ready to use; a percentage is of the base under 'percent of'."};
inline constexpr KeyShape line_as_bought{
    "as bought", may, to<&Line::is_as_bought>(yes_or_no), "yes",
    "Whether the amount is of what is bought, before it is trimmed."};
inline constexpr KeyShape line_yield{"yield", may, to<&Line::yield>(a_percentage), "88 %",
                                     "What is usable of it in this line, where that differs."};
inline constexpr Synonym line_synonyms[] = {
    {"ingredient", "item"}, {"name", "item"}, {"quantity", "amount"}, {"weight", "amount"}};
inline constexpr Synonym named_line_synonyms[] = {{"quantity", "amount"}, {"weight", "amount"}};

inline constexpr KeyShape listed_line_keys[] = {
    {"item", must, to<&Line::item>(a_name), "plain flour", "An ingredient, or another formula."},
    line_amount,
    line_as_bought,
    line_yield};
inline constexpr Shape listed_line{"line of a formula, in a list", "this line", listed_line_keys,
                                   line_synonyms};
inline constexpr KeyShape named_line_keys[] = {line_amount, line_as_bought, line_yield};
inline constexpr Shape named_line{"line of a formula", "this line", named_line_keys,
                                  named_line_synonyms};
inline constexpr Value a_listed_line = mapping(listed_line);
inline constexpr Value a_named_line = a_line_amount | mapping(named_line);

inline constexpr KeyShape loss_keys[] = {
    {"share", must, to<&NamedLoss::share>(a_percentage), "2 %",
     "The part that is lost of what the stage begins with."},
    {"when", must, to<&NamedLoss::stage>(one_of(loss_stages)), "before portioning",
     "The stage at which it is lost."},
};
inline constexpr Synonym loss_synonyms[] = {
    {"percent", "share"}, {"percentage", "share"}, {"stage", "when"}};
inline constexpr Shape loss{"loss", "this loss", loss_keys, loss_synonyms};
inline constexpr Value a_loss = a_percentage | mapping(loss);

inline constexpr KeyShape keeping_keys[] = {
    {"at", may, to<&Keeping::at>(one_of(keep_at_words)), "cool", "Where it is kept."},
    {"for", may, to<&Keeping::days>(some_days), "4 days",
     "How long it keeps; the day of making is day one."},
};
inline constexpr Synonym keeping_synonyms[] = {
    {"days", "for"}, {"shelf life", "for"}, {"in", "at"}, {"where", "at"}};
inline constexpr Shape keeping{"keeping", "the keeping", keeping_keys, keeping_synonyms};

inline constexpr KeyShape sale_unit_keys[] = {
    {"holds", must, a_count_or_mass, "12", "What it holds: so many pieces, or a mass."},
    {"packing", may, to<&SaleUnit::packing>(names_to("supplies", a_count)),
     "{window box: 1, liner: 2}", "The supplies that each one takes."},
    {"labour", may, list_of(a_sale_unit_task), "[{task: pack, by: helper, minutes: 1.5}]",
     "The work of packing each one."},
    {"price", may, to<&SaleUnit::price>(a_price), "{margin: 40 %}", "What its price is to reach."},
};
inline constexpr Synonym sale_unit_synonyms[] = {
    {"pieces", "holds"},      {"contains", "holds"}, {"content", "holds"},
    {"packaging", "packing"}, {"work", "labour"},
};
inline constexpr Shape sale_unit{"sale unit", "this sale unit", sale_unit_keys, sale_unit_synonyms};
inline constexpr Value a_sale_unit = mapping(sale_unit);

inline constexpr KeyShape formula_keys[] = {
    {"formula", must, to<&Formula::name>(a_name), "ginger shell", "What it is called."},
    {"percent of", may, to<&Formula::percentage_base>(names), "plain flour",
     "The line, or the lines together, that are 100 %, where others are percentages of it."},
    {"portion", may, to<&Formula::portion>(a_mass_or_volume), "24 g",
     "What one piece takes when it is portioned, before the oven."},
    {"makes", may, a_count_or_mass, "40", "What one batch makes: so many pieces, or a mass."},
    {"oven", may, mapping(oven_use), "{use: deck, minutes: 11, holds: 36}",
     "Which oven it goes into, how long, and how much at once."},
    {"lines", must,
     names_to("ingredients and formulas", a_named_line) | only_a_list_of(a_listed_line),
     "{plain flour: 620 g}", "What goes in, a line for each."},
    {"total",
     may,
     to<&Formula::total_grams>(a_mass),
     "5 kg",
     "What all lines weigh together, where they are percentages.",
     {with("percent of")}},
    {"density", may, to<&Formula::densities>(some_densities), "240 g / cup",
     "What a volume of it weighs."},
    {"losses", may, names_to("losses", a_loss), "{mixing: 2 %, baking: 11 %}",
     "What is lost on the way, by name."},
    {"labour", may, list_of(a_formula_task), "[{task: mix, by: baker, minutes: 14}]",
     "The work that it takes, a task for each."},
    {"consumables", may, list_of(a_consumable), "[{item: tray liner, amount: 1}]",
     "The supplies that are used up in making it."},
    {"batches", may, one_of(batch_steps), "half", "The steps in which batches can be made."},
    {"largest mix", may, to<&Formula::largest_mix>(a_number), "3",
     "How many batches go into the mixer at once."},
    {"leftover", may, to<&Formula::keeps_leftover>(one_of(leftover_ways)), "kept",
     "Whether what is made beyond an order is charged to it, or kept for others."},
    {"keep", may, to<&Formula::keeping>(one_of(keep_at_words) | mapping(keeping)),
     "{at: cool, for: 4 days}", "How it is kept, and how long."},
    {"standard run", may, a_count_or_mass, "120",
     "How much is usually made at once; its usual cost is that of such a run."},
    {"price", may, to<&Formula::price>(a_price), "{margin: 40 %}", "What its price is to reach."},
    {"tax", may, to<&Formula::tax>(a_name), "reduced",
     "Its rate of tax, by its name in shop.yaml."},
    {"label", may, to<&Formula::label>(a_text), "ginger biscuit", "What labels call it."},
    {"sold as", may, names_to("sale units", a_sale_unit), "{box of 12: {holds: 12}}",
     "The units that it is sold in."},
};
inline constexpr Synonym formula_synonyms[] = {
    {"recipe", "formula"},
    {"name", "formula"},
    {"title", "formula"},
    {"ingredients", "lines"},
    {"serves", "makes"},
    {"servings", "makes"},
    {"pieces", "makes"},
    {"batch size", "makes"},
    {"output", "makes"},
    {"yield", "makes", "write what one batch makes, as 'makes: 40'; what is lost, under 'losses'"},
    {"yields", "makes", "write what one batch makes, as 'makes: 40'; what is lost, under 'losses'"},
    {"waste", "losses"},
    {"work", "labour"},
    {"tasks", "labour"},
    {"method", {}, "the work stands under 'labour', a task for each; how it is done, in notes"},
    {"steps", {}, "the work stands under 'labour', a task for each; how it is done, in notes"},
    {"time", {}, "times stand with their tasks under 'labour', and as 'minutes' of the 'oven'"},
    {"supplies", "consumables"},
    {"shelf life", {}, "write it as 'keep: {for: 4 days}'"},
    {"packaging",
     {},
     "it belongs to a sale unit: 'sold as: {box of 12: {holds: 12, packing: ...}}'"},
};
inline constexpr Shape formula{"formula", "this formula", formula_keys, formula_synonyms};
inline constexpr Value a_formula = mapping(formula);

} // namespace groat::shapes

namespace groat {

/// The formula of a document; without a name where the document gives none. What cannot be read is
/// reported and left out, so the formula is of use only while nothing was.
[[nodiscard]] Formula read_formula(Node const& node, Reading const& reading);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/read_formulas.ipp>
#endif
