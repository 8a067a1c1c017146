/// A label as text, ready to be checked and set.
#pragma once

#include <groat/paper/cautions.hpp>
#include <groat/paper/figures.hpp>
#include <groat/paper/letterhead.hpp>
#include <groat/trade/label.hpp>

#include <string>
#include <string_view>
#include <vector>

namespace groat {

/// The ingredient statement without its heading.
/// Example  "wheat flour, butter, sugar, contains 2 % or less of: egg, salt"
[[nodiscard]] std::string ingredient_statement(Label const& label, LabelRule const& rule);

/// "Contains: milk, egg, wheat": the allergens that US law names, tree nuts by their kind.
/// Source  21 USC 343(w)(1)(A)
[[nodiscard]] std::string contains_statement(AllergenSet const& contained);

/// The net weight in both systems, never more than there is. Of 1 lb and more pounds stand beside ounces.
/// Source   15 USC 1453 and 21 CFR 101.7 (from memory)
/// Example  144 g  ->  "Net wt 5.07 oz (144 g)"
[[nodiscard]] std::string net_weight_words(Number const& grams, AllergenLaw law);

/// The label; with `shows_weights` also how much of each ingredient was used, for the maker.
[[nodiscard]] Sheet label_sheet(Label const& label, Book const& book, LabelRule const& rule,
                                bool shows_weights);

// ---------------------------------------------------------------------------------------------------

namespace label_paper {

inline char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }
inline char upper(char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c; }
inline bool is_letter(char c) {
    return (lower(c) >= 'a' && lower(c) <= 'z') || (static_cast<unsigned char>(c) & 0x80U) != 0;
}

/// Puts each word of `text` that begins with `word` into capitals; says whether there was one.
inline bool emphasise(std::string& text, std::string_view word) {
    bool is_found = false;
    for (std::size_t i = 0; i + word.size() <= text.size(); ++i) {
        if (i > 0 && is_letter(text[i - 1])) continue;
        std::size_t same = 0;
        while (same < word.size() && lower(text[i + same]) == word[same]) ++same;
        if (same < word.size()) continue;
        is_found = true;
        for (std::size_t k = i; k < text.size() && is_letter(text[k]); ++k)
            text[k] = upper(text[k]);
    }
    return is_found;
}

inline std::string words_of(LabelPart const& part, AllergenLaw law) {
    std::string text = part.name;
    if (!part.parts.empty()) {
        std::string inner;
        for (LabelPart const& each : part.parts)
            inner += (inner.empty() ? "" : ", ") + words_of(each, law);
        return text + " (" + inner + ")";
    }
    if (!part.made_of.empty()) text += fmt::format(" ({})", fmt::join(part.made_of, ", "));
    if (law != AllergenLaw::eu) return text;
    std::string missing;
    for (Allergen const* allergen : part.allergens) {
        if (allergen->eu.empty() || emphasise(text, allergen->name)) continue;
        std::string name(allergen->name);
        for (char& c : name) c = upper(c);
        missing += (missing.empty() ? "" : ", ") + name;
    }
    return missing.empty() ? text : fmt::format("{} ({})", text, missing);
}

/// Rounded down to hundredths, without zeros at the end.
inline std::string at_most(Number const& value) { return decimal_at_most(value, 2, Tie::down); }

inline Table weights(Label const& label) {
    Table table{"weights",
                "As used, for the maker",
                {{"item", "", true}, {"grams", "Weight"}, {"share", "Share"}},
                {},
                {}};
    Number const all = label.weight_as_used();
    for (LabelPart const& part : label.parts)
        table.rows.push_back({fmt::format("{}", table.rows.size() + 1),
                              {part.name, Figures::grams(part.grams),
                               all.is_zero() ? Cell() : Figures::percent(part.grams / all)}});
    return table;
}

inline Remarks cautions(Label const& label, Book const& book, LabelRule const& rule) {
    Remarks cautions{
        "cautions",
        "Before you print",
        {maker_allergen_caution,
         "The net weight is what the formula gives, rounded down: weigh what you pack.",
         "Local law decides what a label must say, and how large: this gathers what "
         "the books know."}};
    Keeping const& keeping = label.contents.keeping;
    if (is_kept_cold(keeping))
        cautions.lines.insert(cautions.lines.begin() + 1, maker_cold_caution);
    if (keeping.at == KeepAt::cold && keeping.days && *keeping.days > 7)
        cautions.lines.push_back(
            fmt::format("It is said to keep {} days in the cold; ready-to-eat food that needs the "
                        "cold is held at most 7 days, the day of making being day one (FDA Food "
                        "Code 2022, 3-501.17).",
                        *keeping.days));
    Formula const& formula = book.formulas[label.formula];
    if (!formula.keeping.is_stated() && keeping.is_stated())
        cautions.lines.push_back(
            fmt::format("How to keep '{}' is what its parts state: say it of the item itself, with "
                        "'keep' in its formula.",
                        formula.name));
    for (Line const& line : formula.lines) {
        if (line.of != Line::Of::formula) continue;
        Formula const& part = book.formulas[line.item.index];
        bool const is_colder = part.keeping.at && keeping.at && *part.keeping.at > *keeping.at;
        bool const is_shorter =
            part.keeping.days && keeping.days && *part.keeping.days < *keeping.days;
        if (formula.keeping.is_stated() && (is_colder || is_shorter))
            cautions.lines.push_back(fmt::format(
                "It holds '{}', for which the books say: {}. Be sure that it keeps as stated here.",
                part.name, keeping_words(part.keeping)));
    }
    bool const has_unnamed_nuts = label.contents.allergens.count(find_allergen("tree nuts")) > 0;
    if (rule.allergens == AllergenLaw::us && has_unnamed_nuts)
        cautions.lines.emplace_back("Tree nuts are to be named by their kind: write almond, walnut "
                                    "or another under 'allergens'.");
    return cautions;
}

} // namespace label_paper

inline std::string ingredient_statement(Label const& label, LabelRule const& rule) {
    std::string text;
    for (std::size_t i = 0; i < label.parts.size(); ++i) {
        if (i > 0) text += ", ";
        if (i == label.small_from)
            text += fmt::format("contains {} % or less of: ",
                                decimal_at_most(rule.small->value() * 100, 1));
        text += label_paper::words_of(label.parts[i], rule.allergens);
    }
    return text;
}

inline std::string contains_statement(AllergenSet const& contained) {
    std::string text;
    for (Allergen const* allergen : contained) {
        if (allergen->us.empty()) continue;
        text += text.empty() ? "Contains: " : ", ";
        text += allergen->us == "tree nuts" ? allergen->name : allergen->us;
    }
    return text;
}

inline std::string net_weight_words(Number const& grams, AllergenLaw law) {
    std::string const metric = grams < 1000 ? decimal_at_most(grams, 0, Tie::down) + " g"
                                            : label_paper::at_most(grams / 1000) + " kg";
    Number const ounces = grams / find_unit("oz", Measures::us)->factor;
    std::string avoirdupois = label_paper::at_most(ounces) + " oz";
    if (law == AllergenLaw::eu) return fmt::format("Net weight {} ({})", metric, avoirdupois);
    if (ounces < 16) return fmt::format("Net wt {} ({})", avoirdupois, metric);
    Number const pounds = round_to(ounces / 16, 1, Tie::down);
    return fmt::format("Net wt {} ({} lb {} oz) {}", avoirdupois, decimal_at_most(pounds, 0),
                       label_paper::at_most(ounces - pounds * 16), metric);
}

inline Sheet label_sheet(Label const& label, Book const& book, LabelRule const& rule,
                         bool shows_weights) {
    Formula const& formula = book.formulas[label.formula];
    std::string title = in_sentence(formula.label.empty() ? formula.name : formula.label);
    if (label.unit != nullptr) title += ", " + label.unit->name;
    Sheet sheet =
        sheet_for(book.shop, "label", shows_weights ? "maker" : "client", std::move(title));
    sheet.letterhead.clear();
    Facts facts{"label", "", {}};
    auto const add = [&](std::string key, std::string name, Cell value) {
        facts.facts.push_back({std::move(key), std::move(name), std::move(value)});
    };
    add("ingredients", "Ingredients", ingredient_statement(label, rule));
    if (rule.allergens == AllergenLaw::us)
        if (std::string contains = contains_statement(label.contents.allergens); !contains.empty())
            add("contains", "Allergens", std::move(contains));
    add("net", "Net", Figure{net_weight_words(label.grams, rule.allergens), label.grams, "g"});
    if (label.pieces > 1) add("pieces", "Pieces", Figures::count(label.pieces));
    if (std::string keep = keeping_words(label.contents.keeping); !keep.empty())
        add("keep", "Storage", in_sentence(std::move(keep)));
    if (label.made) add("made", "Made", long_date(*label.made));
    if (label.use_by) add("use_by", "Use by", long_date(*label.use_by));
    std::string by = book.shop.name;
    for (std::string const& line : book.shop.address) by += ", " + line;
    add("by", "Made by", std::move(by));
    sheet.sections.emplace_back(std::move(facts));
    if (shows_weights) sheet.sections.emplace_back(label_paper::weights(label));
    sheet.sections.emplace_back(label_paper::cautions(label, book, rule));
    return sheet;
}

} // namespace groat
