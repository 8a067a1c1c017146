#pragma once

#include <groat/plan/label.hpp>

#include <groat/base/linkage.hpp>

#include <algorithm>
#include <utility>

namespace groat {

GROAT_INLINE Number Label::weight_as_used() const {
    Number sum;
    for (LabelPart const& part : parts) sum += part.grams;
    return sum;
}

GROAT_INLINE std::optional<Number> Label::share_of(LabelPart const& part) const {
    Number const all = weight_as_used();
    if (all.is_zero()) return std::nullopt;
    return part.grams / all;
}

namespace label_detail {

/// Adds a part to those of the same name.
inline void add(std::vector<LabelPart>& parts, LabelPart part) {
    for (LabelPart& known : parts) {
        if (known.name != part.name || known.made_of != part.made_of ||
            known.parts.empty() != part.parts.empty())
            continue;
        known.grams += part.grams;
        known.allergens.insert(part.allergens.begin(), part.allergens.end());
        for (LabelPart& each : part.parts) add(known.parts, std::move(each));
        return;
    }
    parts.push_back(std::move(part));
}

inline void sort_by_weight(std::vector<LabelPart>& parts) {
    std::stable_sort(parts.begin(), parts.end(),
                     [](LabelPart const& a, LabelPart const& b) { return a.grams > b.grams; });
    for (LabelPart& part : parts) sort_by_weight(part.parts);
}

class Writer {
public:
    explicit Writer(Costing const& costing) : book_(costing.book()), costing_(costing) {}

    /// All ingredients of so many pieces or grams of a formula, in one list.
    [[nodiscard]] std::vector<LabelPart> flat(std::size_t formula, Number const& amount) const {
        Explosion const run = explode(book_, costing_.formulary(), Losses::all, Wholes::none,
                                      {{formula, nullptr, amount}});
        std::vector<LabelPart> parts;
        for (FormulaRun const& each : run.runs)
            for (BatchLine const& line : costing_.formulary().with_losses[each.formula].lines)
                if (!line.is_formula) add(parts, bought(line.index, line.amount * each.made));
        return parts;
    }

    /// One entry for each formula that the formula names in its lines.
    [[nodiscard]] std::vector<LabelPart> grouped(std::size_t formula, Number const& amount) const {
        Explosion const run = explode(book_, costing_.formulary(), Losses::all, Wholes::none,
                                      {{formula, nullptr, amount}});
        Number const& made = run.runs[run.run_of[formula]].made;
        std::vector<LabelPart> parts;
        for (BatchLine const& line : costing_.formulary().with_losses[formula].lines) {
            if (!line.is_formula) {
                add(parts, bought(line.index, line.amount * made));
                continue;
            }
            Formula const& used = book_.formulas[line.index];
            LabelPart part;
            part.name = used.label.empty() ? used.name : used.label;
            part.parts = flat(line.index, line.amount * made);
            for (LabelPart const& each : part.parts) part.grams += each.grams;
            add(parts, std::move(part));
        }
        return parts;
    }

private:
    [[nodiscard]] LabelPart bought(std::size_t index, Number grams) const {
        Ingredient const& ingredient = book_.ingredients[index];
        return {ingredient.label.empty() ? ingredient.name : ingredient.label,
                std::move(grams),
                ingredient.made_of,
                ingredient.allergens,
                {}};
    }

    Book const& book_;
    Costing const& costing_;
};

/// What keeps a formula from being weighed; that something has no price does not.
inline bool can_weigh(Costing const& costing, std::size_t formula, SaleUnit const* unit, Span where,
                      Diagnostics& found) {
    Book const& book = costing.book();
    if (unit == nullptr && !book.formulas[formula].makes_pieces()) {
        found.error(where, "no-sale-unit",
                    fmt::format("'{}' is made by mass: a label is for a way it is sold",
                                book.formulas[formula].name),
                    "add one under 'sold as' of its formula, or name it with --in");
        return false;
    }
    Diagnostics const own = costing.weighing_findings(formula);
    found.add(own);
    if (own.has_errors()) return false;
    if (auto const& unweighed = costing.formulary().with_losses[formula].unweighed) {
        found.error(where, *unweighed);
        return false;
    }
    return true;
}

} // namespace label_detail

GROAT_INLINE std::optional<Label> label_of(Costing const& costing, std::size_t formula,
                                           SaleUnit const* unit, LabelRule const& rule,
                                           std::optional<Date> made, Diagnostics& found) {
    Book const& book = costing.book();
    if (!label_detail::can_weigh(costing, formula, unit, book.formulas[formula].origin, found))
        return std::nullopt;
    Batch const& batch = costing.formulary().with_losses[formula];
    bool const by_piece = book.formulas[formula].makes_pieces();
    Number const amount = unit == nullptr ? Number(1) : unit->holds.amount;
    label_detail::Writer const writer(costing);
    Label label;
    label.kept = Kept(costing.linked());
    label.formula = formula;
    label.unit = unit;
    label.parts = rule.is_grouped ? writer.grouped(formula, amount) : writer.flat(formula, amount);
    label_detail::sort_by_weight(label.parts);
    label.small_from = label.parts.size();
    if (rule.small) {
        Number const most = label.weight_as_used() * rule.small->value();
        while (label.small_from > 0 && label.parts[label.small_from - 1].grams <= most)
            --label.small_from;
    }
    label.grams = by_piece ? amount * batch.piece_grams : amount;
    if (by_piece) label.pieces = amount;
    label.contents = contents_of(book, formula);
    label.made = made;
    if (made && label.contents.keeping.days)
        label.use_by = *made + Days(*label.contents.keeping.days - 1);
    return label;
}

} // namespace groat
