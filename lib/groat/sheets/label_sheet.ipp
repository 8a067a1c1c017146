#pragma once

#include <groat/sheets/label_sheet.hpp>

#include <groat/base/capital.hpp>
#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>
#include <groat/plan/shortfall.hpp>
#include <groat/sheets/cautions.hpp>
#include <groat/sheets/figures.hpp>
#include <groat/sheets/letterhead.hpp>
#include <groat/sheets/shape_label.hpp>

#include <fmt/ranges.h>

#include <algorithm>
#include <optional>
#include <string_view>
#include <vector>

namespace groat {

namespace label_sheet_detail {

/// ASCII letters, and whatever is no ASCII.
inline bool is_letter(char c) {
    return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') ||
           (static_cast<unsigned char>(c) & 0x80U) != 0;
}

/// Where `text` goes on behind `wanted`, which is in capitals, at `at`; nothing where something else stands there.
inline std::optional<std::size_t> behind(std::string_view text, std::size_t at,
                                         std::string_view wanted) {
    while (!wanted.empty()) {
        if (at == text.size()) return std::nullopt;
        std::size_t const length = character_at(text, at).length;
        std::string const next = capitals(text.substr(at, length));
        if (!wanted.starts_with(next)) return std::nullopt;
        wanted.remove_prefix(next.size());
        at += length;
    }
    return at;
}

/// Puts the words of `text` that are `word` or its plural into capitals; with `is_joined` also those that begin
/// with it. Says whether there was one.
/// Example  "egg" in "eggs" and "egg yolk", not in "eggplant"; where words are joined, "Weizen" in "Weizenmehl"
inline bool emphasise(std::string& text, std::string_view word, bool is_joined) {
    std::string const wanted = capitals(word);
    auto const end_of_word = [&](std::size_t at) {
        while (at < text.size() && is_letter(text[at])) ++at;
        return at;
    };
    std::string result;
    bool is_found = false;
    for (std::size_t at = 0; at < text.size();) {
        std::size_t end = is_letter(text[at]) ? end_of_word(at) : at + 1;
        std::string piece = text.substr(at, end - at);
        if (auto const last = is_letter(text[at]) ? behind(text, at, wanted) : std::nullopt) {
            std::size_t const whole = end_of_word(*last);
            std::string const rest = capitals(std::string_view(text).substr(*last, whole - *last));
            if (is_joined || rest.empty() || rest == "S" || rest == "ES") {
                end = whole;
                piece = capitals(std::string_view(text).substr(at, end - at));
                is_found = true;
            }
        }
        result += piece;
        at = end;
    }
    text = std::move(result);
    return is_found;
}

inline Allergen const& sulphites() { return *find_allergen("sulphites"); }

/// As it is spelt where it must be declared, if the shop has no word of its own.
inline std::string us_sulphites(Words const& words) {
    bool const is_american = words.is_english() && !words.has_own_name_of(sulphites());
    return is_american ? "sulfites" : words.name_of(sulphites());
}

/// Whether a text names a sulphiting agent already, in English or German.
inline bool names_sulphites(std::string_view text) {
    std::string const whole = capitals(text);
    for (std::string_view const word :
         {"SULFIT", "SULPHIT", "SULFUR DIOX", "SULPHUR DIOX", "SCHWEFELDIOX"})
        if (whole.find(word) != std::string::npos) return true;
    return false;
}

inline std::string words_of(LabelPart const& part, AllergenLaw law, Words const& words) {
    std::string text = part.name;
    if (!part.parts.empty()) {
        std::string inner;
        for (LabelPart const& each : part.parts)
            inner += (inner.empty() ? "" : ", ") + words_of(each, law, words);
        return text + " (" + inner + ")";
    }
    if (!part.made_of.empty()) text += fmt::format(" ({})", fmt::join(part.made_of, ", "));
    if (law != AllergenLaw::eu)
        return part.allergens.count(&sulphites()) == 0 || names_sulphites(text)
                   ? text
                   : fmt::format("{} ({})", text, us_sulphites(words));
    AllergenSet named;
    for (Allergen const* allergen : part.allergens)
        if (!allergen->eu.empty()) named.insert(&broader(*allergen));
    std::string missing;
    for (Allergen const* allergen : named) {
        std::string const name = words.name_of(*allergen);
        if (emphasise(text, name, words.joins_words())) continue;
        missing += (missing.empty() ? "" : ", ") + capitals(name);
    }
    return missing.empty() ? text : fmt::format("{} ({})", text, missing);
}

/// The weight that a label declares: whole grams, and of kilograms hundredths, never more than there is.
inline Number declared(Number const& grams) {
    return round_to(grams, grams < 1000 ? 1 : 10, Tie::down);
}
inline std::string metric(Number const& grams) {
    return grams < 1000 ? decimal(declared(grams), 0) + " g"
                        : decimal_at_most(declared(grams) / 1000, 2) + " kg";
}

/// Rounded down to hundredths, without zeros at the end.
inline std::string at_most(Number const& value) { return decimal_at_most(value, 2, Tie::down); }

inline Table weights(Label const& label, Words const& words) {
    Table table = table_of<sheet_shapes::maker_label::weights>(
        words("as used"), {{"item"}, {"grams", words("weight")}, {"share", words("share")}});
    for (LabelPart const& part : label.parts)
        table.rows.push_back(
            {fmt::format("{}", table.rows.size() + 1),
             {part.name, Figures::grams(part.grams), Figures::percent(label.share_of(part))}});
    return table;
}

inline Remarks cautions(Label const& label, Book const& book, LabelRule const& rule,
                        Words const& words) {
    Remarks cautions = remarks_of<sheet_shapes::shared::cautions>(
        words("before you print"),
        {words("check labels"), words("weigh it"), words("law decides")});
    Keeping const& keeping = label.contents.keeping;
    if (is_kept_cold(keeping))
        cautions.lines.insert(cautions.lines.begin() + 1, words("cold by law"));
    if (keeping.at == KeepAt::cold && keeping.days && *keeping.days > 7)
        cautions.lines.push_back(words("cold for days", {{"days", std::to_string(*keeping.days)}}));
    Formula const& formula = book.formulas[label.formula];
    if (!formula.keeping.is_stated() && keeping.is_stated())
        cautions.lines.push_back(words("kept as its parts", {{"item", formula.name}}));
    for (Line const& line : formula.lines) {
        if (line.of != Line::Of::formula) continue;
        Formula const& part = book.formulas[line.item.index];
        bool const is_colder = part.keeping.at && keeping.at && *part.keeping.at > *keeping.at;
        bool const is_shorter =
            part.keeping.days && keeping.days && *part.keeping.days < *keeping.days;
        if (formula.keeping.is_stated() && (is_colder || is_shorter))
            cautions.lines.push_back(
                words("part keeps worse",
                      {{"part", part.name}, {"keeping", keeping_words(part.keeping, words)}}));
    }
    if (auto const part = cold_inside(book, label.formula))
        cautions.lines.push_back(
            words("cold inside", {{"part", book.ingredients[part->ingredient].name}}));
    auto const holds = [&](std::string_view name) {
        return label.contents.allergens.count(find_allergen(name)) > 0;
    };
    if (rule.allergens == AllergenLaw::eu) return cautions;
    if (holds("tree nuts")) cautions.lines.push_back(words("name the nuts"));
    if (holds("fish") || holds("crustaceans")) cautions.lines.push_back(words("name the fish"));
    if (holds("sulphites")) cautions.lines.push_back(words("sulphites named"));
    return cautions;
}

} // namespace label_sheet_detail

GROAT_INLINE std::string ingredient_statement(Label const& label, LabelRule const& rule,
                                              Words const& words, Style const& style) {
    std::string text;
    for (std::size_t i = 0; i < label.parts.size(); ++i) {
        if (i > 0) text += ", ";
        if (i == label.small_from)
            text += words("small amounts",
                          {{"share", Figures(Currency(), style).share(rule.small->value(), 1)}}) +
                    ' ';
        text += label_sheet_detail::words_of(label.parts[i], rule.allergens, words);
    }
    return text;
}

GROAT_INLINE std::string contains_statement(AllergenSet const& contained, Words const& words) {
    std::vector<std::string> names;
    for (Allergen const* allergen : contained) {
        if (allergen->us.empty()) continue;
        Allergen const& named = allergen->us == "wheat" ? broader(*allergen) : *allergen;
        bool const is_as_in_law = words.is_english() && named.us != "tree nuts" &&
                                  named.kind_of.empty() && !words.has_own_name_of(named);
        std::string name = is_as_in_law ? std::string(named.us) : words.name_of(named);
        if (std::find(names.begin(), names.end(), name) == names.end())
            names.push_back(std::move(name));
    }
    if (names.empty()) return {};
    return words("contains statement", {{"allergens", fmt::format("{}", fmt::join(names, ", "))}});
}

GROAT_INLINE std::string net_weight_words(Number const& grams, AllergenLaw law,
                                          Words const& words) {
    std::string const metric = label_sheet_detail::metric(grams);
    if (law == AllergenLaw::eu && !words.is_english())
        return words("net weight", {{"weight", metric}});
    Number const ounces = grams / find_unit("oz", Measures::us)->factor;
    std::string avoirdupois = label_sheet_detail::at_most(ounces) + " oz";
    if (law == AllergenLaw::eu)
        return words("net weight", {{"weight", fmt::format("{} ({})", metric, avoirdupois)}});
    if (ounces < 16)
        return words("net wt", {{"weight", fmt::format("{} ({})", avoirdupois, metric)}});
    Number const pounds = round_to(ounces / 16, 1, Tie::down);
    return words(
        "net wt",
        {{"weight", fmt::format("{} ({} lb {} oz) {}", avoirdupois, decimal_at_most(pounds, 0),
                                label_sheet_detail::at_most(ounces - pounds * 16), metric)}});
}

GROAT_INLINE Sheet label_sheet(Label const& label, Book const& book, LabelRule const& rule,
                               bool shows_weights) {
    Formula const& formula = book.formulas[label.formula];
    std::string title = in_sentence(formula.label.empty() ? formula.name : formula.label);
    if (label.unit != nullptr) title += ", " + label.unit->name;
    Words const& words = book.shop.sheets.words;
    Sheet sheet =
        sheet_in_words(book.shop, "label", shows_weights ? "maker" : "client", std::move(title));
    sheet.letterhead.clear();
    FactsOf<sheet_shapes::maker_label::label> facts;
    facts.add("ingredients", words("ingredients"),
              ingredient_statement(label, rule, words, sheet.style));
    if (rule.allergens == AllergenLaw::us)
        if (std::string contains = contains_statement(label.contents.allergens, words);
            !contains.empty())
            facts.add("contains", words("allergens"), std::move(contains));
    facts.add("net", words("net quantity"),
              Figure{net_weight_words(label.grams, rule.allergens, words), label.grams, "g"});
    if (label.pieces > 1) facts.add("pieces", words("pieces"), Figures::count(label.pieces));
    if (std::string keep = keeping_words(label.contents.keeping, words); !keep.empty())
        facts.add("keep", words("storage"), in_sentence(std::move(keep)));
    if (label.made) facts.add("made", words("made"), Figures::day(*label.made));
    // What needs the cold is used by a day, all else best before it: Regulation (EU) 1169/2011, Article 24.
    bool const is_perishable =
        rule.allergens != AllergenLaw::eu || is_kept_cold(label.contents.keeping);
    if (label.use_by)
        facts.add("use_by", is_perishable ? words("use by") : words("best before"),
                  Figures::day(*label.use_by));
    std::string by = book.shop.name;
    for (std::string const& line : book.shop.address) by += ", " + line;
    facts.add("by", words("made by"), std::move(by));
    facts.tell("formula", formula.name);
    facts.tell("sold_as", label.unit == nullptr ? Cell() : Cell(label.unit->name));
    facts.tell("allergens", allergen_names(label.contents.allergens));
    sheet.sections.emplace_back(std::move(facts));
    if (shows_weights) sheet.sections.emplace_back(label_sheet_detail::weights(label, words));
    Remarks cautions = label_sheet_detail::cautions(label, book, rule, words);
    auto const shortfall = tolerable_shortfall(label_sheet_detail::declared(label.grams));
    if (shows_weights && rule.allergens == AllergenLaw::eu && shortfall)
        cautions.lines.push_back(
            words("tolerable shortfall",
                  {{"weight", label_sheet_detail::metric(label.grams)},
                   {"shortfall", Figures(Currency(), sheet.style).fixed(*shortfall, 1)}}));
    sheet.sections.emplace_back(std::move(cautions));
    return sheet;
}

} // namespace groat
