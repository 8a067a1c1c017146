/// A label as text, ready to be checked and set.
#pragma once

#include <groat/paper/sheet.hpp>
#include <groat/plan/label.hpp>

#include <string>

namespace groat {

/// The ingredient statement without its heading. Under EU law allergens stand out in it, a kind of fish beside the
/// word that the law has for it; under that of the United States sulphites are named at their ingredient.
/// Source   Regulation (EU) 1169/2011, Article 21(1)(b); 21 CFR 101.100(a)(4), from memory
/// Example  "wheat flour, butter, sugar, contains 2 % or less of: egg, salt"
[[nodiscard]] std::string ingredient_statement(Label const& label, LabelRule const& rule,
                                               Words const& words = Words::english(),
                                               Style const& style = {});

/// "Contains: milk, egg, wheat": the allergens that US law names, tree nuts, fish and crustaceans by their kind,
/// kinds of wheat as wheat; in the words of the law where English has none of the shop's own.
/// Source  21 USC 343(w)(1)(A) and (w)(2)
[[nodiscard]] std::string contains_statement(AllergenSet const& contained,
                                             Words const& words = Words::english());

/// The net weight in both systems, never more than there is; in another language than English under EU law in
/// metric units alone. Of 1 lb and more pounds stand beside ounces. In German only the figures, since what they
/// are stands before them.
/// Source   15 USC 1453 and 21 CFR 101.7 (from memory)
/// Example  144 g  ->  "Net wt 5.07 oz (144 g)"
[[nodiscard]] std::string net_weight_words(Number const& grams, AllergenLaw law,
                                           Words const& words = Words::english());

/// The label in the shop's words; with `shows_weights` also how much of each ingredient was used, for the maker.
[[nodiscard]] Sheet label_sheet(Label const& label, Book const& book, LabelRule const& rule,
                                bool shows_weights);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/sheets/label_sheet.ipp>
#endif
