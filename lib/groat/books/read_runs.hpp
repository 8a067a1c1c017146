/// runs/*.yaml: what happened in the kitchen, as it was weighed, counted and paid.
#pragma once

#include <groat/books/read_common.hpp>
#include <groat/model/run.hpp>
#include <string_view>

namespace groat {

/// `330 g`, or with what was paid for it.
bool read_value(UsedFood& used, Node const& node, KeyShape const& key, Reading const& reading);
/// `55 min`, or with the wage that was paid.
bool read_value(WorkedTime& worked, Node const& node, KeyShape const& key, Reading const& reading);

} // namespace groat

namespace groat::shapes {

inline constexpr KeyShape pieces_keys[] = {
    {"portioned", may, to<&Run::portioned>(a_count), "84", "How many pieces went onto the trays."},
    {"good", must, to<&Run::good>(a_count_or_none), "80", "How many were good in the end."},
};
inline constexpr Synonym pieces_synonyms[] = {{"made", "portioned"}, {"sellable", "good"}};
inline constexpr Shape pieces{"pieces of a run", "these pieces", pieces_keys, pieces_synonyms};

inline constexpr KeyShape used_keys[] = {
    {"amount", must, to<&UsedFood::amount>(an_amount_or_nothing), "330 g", "How much was used."},
    {"paid", may, to<&UsedFood::paid>(some_money), "2.10", "What that amount has cost."},
};
inline constexpr Synonym used_synonyms[] = {
    {"quantity", "amount"}, {"weight", "amount"}, {"cost", "paid"}, {"price", "paid"}};
inline constexpr Shape used{"ingredient of a run", "this use", used_keys, used_synonyms};
inline constexpr Value a_use = an_amount_or_nothing | mapping(used);

inline constexpr KeyShape worked_keys[] = {
    {"time", must, to<&WorkedTime::minutes>(a_time), "55 min", "How long was worked."},
    {"paid", may, to<&WorkedTime::paid>(money_per_hour), "21.00 / h", "The wage that was paid."},
};
inline constexpr Synonym worked_synonyms[] = {{"minutes", "time"}, {"wage", "paid"}};
inline constexpr Shape worked{"work of a run", "this work", worked_keys, worked_synonyms};
inline constexpr Value some_work = a_time | mapping(worked);

inline constexpr KeyShape run_keys[] = {
    {"run", must, to<&Run::name>(a_name), "shells for the reading circle", "What it is called."},
    {"formula", must, to<&Run::formula>(a_name), "ginger shell", "What was made."},
    {"date", may, to<&Run::date>(a_date), "2026-11-21", "The day on which it was made."},
    {"order", may, to<&Run::order>(a_name), "2026-041", "The order that it was made for."},
    {"batches", may, to<&Run::batches>(a_number), "2", "How many batches were made."},
    {"in", may, to<&Run::in_grams>(a_mass), "2.15 kg", "What went in."},
    {"dough", may, to<&Run::dough_grams>(a_mass), "2.08 kg", "What came out of the mixer."},
    {"pieces", may, mapping(pieces), "{portioned: 84, good: 80}", "How many pieces there were."},
    {"out", may, to<&Run::out_grams>(a_mass), "1.80 kg", "What came out in the end."},
    {"used", may, to<&Run::used>(names_to("ingredients", a_use)), "{plain flour: 330 g}",
     "What was really used."},
    {"worked", may, to<&Run::worked>(names_to("roles", some_work)), "{baker: 55 min}",
     "How long was worked."},
};
inline constexpr Synonym run_synonyms[] = {{"name", "run"},      {"recipe", "formula"},
                                           {"item", "formula"},  {"ingredients", "used"},
                                           {"labour", "worked"}, {"made", "pieces"}};
inline constexpr Shape run{"run", "this run", run_keys, run_synonyms};
inline constexpr Value a_run = mapping(run);

} // namespace groat::shapes

namespace groat {

/// The run of a document; without a name where the document gives none. More good pieces than were portioned
/// are refused here; what cannot be judged without the formula is left to `run_findings` (review/run_findings.hpp).
[[nodiscard]] Run read_run(Node const& node, Reading const& reading);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/read_runs.ipp>
#endif
