/// yields.yaml, yields/*.yaml: yield tests, and how an ingredient or an offer cites them.
#pragma once

#include <groat/books/read_common.hpp>
#include <groat/model/yield_test.hpp>
#include <optional>
#include <string_view>

namespace groat {

/// `{stones: 0.9 kg}`, or with what it is worth.
bool read_value(TrimPart& part, Node const& node, KeyShape const& key, Reading const& reading);

} // namespace groat

namespace groat::shapes {

inline constexpr KeyShape cited_test_keys[] = {{"test", must, to<&YieldSource::test>(a_name),
                                                "plum 12 november",
                                                "The one yield test that is cited, by its name."}};
inline constexpr Shape cited_test{"cited yield", "this yield", cited_test_keys};
inline constexpr std::string_view tested[] = {"tested"};
inline constexpr Value a_yield = a_percentage | one_of(tested) | mapping(cited_test);

inline constexpr KeyShape trim_keys[] = {
    {"mass", must, to<&TrimPart::grams>(a_mass_or_nothing), "0.3 kg", "What it weighs."},
    {"worth", may, to<&TrimPart::worth>(money_per_mass), "5.00 / kg",
     "What it is worth where it is used."},
};
inline constexpr Synonym trim_synonyms[] = {
    {"weight", "mass"}, {"amount", "mass"}, {"value", "worth"}};
inline constexpr Shape trim{"part that is trimmed off", "this part", trim_keys, trim_synonyms};
inline constexpr Value a_trim = a_mass_or_nothing | mapping(trim);

inline constexpr KeyShape yield_test_keys[] = {
    {"test", must, to<&YieldTest::name>(a_name), "plum 12 november",
     "What it is called, so that it can be cited."},
    {"item", must, to<&YieldTest::item>(a_name), "plum", "The ingredient that was tested."},
    {"date", must, to<&YieldTest::date>(a_date), "2026-11-12", "The day of the test."},
    {"as purchased", must, to<&YieldTest::as_purchased>(an_amount), "10 kg",
     "What was bought for it."},
    {"trim", may, to<&YieldTest::trim>(names_to("parts", a_trim)), "{stones: 0.9 kg}",
     "What was cut off, by name."},
    {"usable",
     may,
     to<&YieldTest::stated_usable>(a_mass),
     "8.8 kg",
     "What was left to use.",
     {unless("trim")}},
    {"price", may, to<&YieldTest::price>(some_money), "24.00", "What was paid for all of it."},
    {"supplier", may, to<&YieldTest::supplier>(a_name), "Mill Road Provisions",
     "From whom it came."},
};
inline constexpr Synonym yield_test_synonyms[] = {{"name", "test"},
                                                  {"ingredient", "item"},
                                                  {"as bought", "as purchased"},
                                                  {"purchased", "as purchased"},
                                                  {"waste", "trim"},
                                                  {"edible portion", "usable"},
                                                  {"cost", "price"},
                                                  {"paid", "price"}};
inline constexpr Shape yield_test{"yield test", "this yield test", yield_test_keys,
                                  yield_test_synonyms};
inline constexpr Value a_yield_test = mapping(yield_test);

} // namespace groat::shapes

namespace groat {

/// The yield test of a document; without a name where the document gives none.
[[nodiscard]] YieldTest read_yield_test(Node const& node, Reading const& reading);

/// `yield:` of an ingredient or an offer: a percentage, `tested`, or `{test: NAME}`. What is cited has no
/// yield yet: `link` finds it.
[[nodiscard]] std::optional<Yield> read_yield(Node const* node, YieldSource& source,
                                              Reading const& reading);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/read_yields.ipp>
#endif
