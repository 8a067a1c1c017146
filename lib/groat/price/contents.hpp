/// What is in an item that a client must know: allergens and how to keep it, gathered from all formulas and
/// ingredients that it is made of; and whether something in it needs more cold than is said.
#pragma once

#include <groat/base/diagnostic.hpp>
#include <groat/model/book.hpp>

#include <fmt/format.h>

#include <optional>
#include <vector>

namespace groat {

struct Contents {
    AllergenSet allergens;
    Keeping keeping;
};

/// Allergens are those that the books state, no more. How to keep it is what the formula itself states;
/// where it states nothing, the strictest of what the formulas in it state.
[[nodiscard]] Contents contents_of(Book const& book, std::size_t formula);

/// Something kept cold that reaches an item without being baked.
struct ColdPart {
    std::size_t ingredient = 0;
    std::size_t formula = 0; ///< in whose lines it stands
};

/// The first such part of an item that is not itself kept cold. A formula is baked that has an oven of its own;
/// what is in it was baked with it. What is eaten on the day it is made, and not said to be kept anywhere, is
/// served rather than kept: a coffee with milk.
/// Source  FDA Food Code 2022, 3-501.16(A)(2): food that needs the cold for safety is held at 5 °C (41 °F) or below
[[nodiscard]] std::optional<ColdPart> cold_inside(Book const& book, std::size_t formula);

/// A warning for an item of which `cold_inside` is true: at the item where that says how to keep it, else at the
/// formula that the cold part goes into.
void warn_of_cold_inside(Book const& book, std::size_t formula, Diagnostics& found);
/// The same for everything that is sold or goes into nothing else.
[[nodiscard]] Diagnostics cold_findings(Book const& book);

// ---------------------------------------------------------------------------------------------------

inline Contents contents_of(Book const& book, std::size_t root) {
    Contents result;
    struct Open {
        std::size_t formula;
        bool keeping_counts; // not below a formula that states its own
    };
    std::vector<Open> open{{root, true}};
    std::vector<unsigned> seen(book.formulas.size(), 0); // 1: for allergens, 2: for keeping as well
    while (!open.empty()) {
        Open const next = open.back();
        open.pop_back();
        unsigned const wanted = next.keeping_counts ? 2 : 1;
        if (seen[next.formula] >= wanted) continue;
        seen[next.formula] = wanted;
        Formula const& formula = book.formulas[next.formula];
        if (next.keeping_counts) result.keeping = strictest(result.keeping, formula.keeping);
        for (Line const& line : formula.lines) {
            if (line.of == Line::Of::formula)
                open.push_back(
                    {line.item.index, next.keeping_counts && !formula.keeping.is_stated()});
            else if (line.of == Line::Of::ingredient)
                result.allergens.insert(book.ingredients[line.item.index].allergens.begin(),
                                        book.ingredients[line.item.index].allergens.end());
        }
    }
    return result;
}

inline std::optional<ColdPart> cold_inside(Book const& book, std::size_t root) {
    Keeping const keeping = contents_of(book, root).keeping;
    if (is_kept_cold(keeping) || (!keeping.at && keeping.days == 1)) return std::nullopt;
    std::vector<bool> seen(book.formulas.size(), false);
    std::vector<std::size_t> open{root};
    while (!open.empty()) {
        std::size_t const next = open.back();
        open.pop_back();
        Formula const& formula = book.formulas[next];
        if (seen[next] || formula.oven) continue;
        seen[next] = true;
        for (Line const& line : formula.lines) {
            if (line.of == Line::Of::formula) open.push_back(line.item.index);
            if (line.of == Line::Of::ingredient &&
                is_kept_cold(book.ingredients[line.item.index].keeping))
                return ColdPart{line.item.index, next};
        }
    }
    return std::nullopt;
}

inline void warn_of_cold_inside(Book const& book, std::size_t root, Diagnostics& found) {
    auto const part = cold_inside(book, root);
    if (!part) return;
    Formula const& holder = book.formulas[part->formula];
    bool const is_overruled =
        book.formulas[root].keeping.is_stated() || is_kept_cold(holder.keeping);
    Formula const& formula = is_overruled ? book.formulas[root] : holder;
    found.warn(
        formula.origin, "not-kept-cold",
        fmt::format("'{}' holds '{}', which is kept cold, and is neither baked nor said to be "
                    "kept cold",
                    formula.name, book.ingredients[part->ingredient].name),
        "write 'keep: {at: cold, for: 3 days}' into the formula (FDA Food Code 2022, "
        "3-501.16), or 'oven' if it is baked");
}

inline Diagnostics cold_findings(Book const& book) {
    std::vector<bool> is_part(book.formulas.size(), false);
    for (Formula const& formula : book.formulas)
        for (Line const& line : formula.lines)
            if (line.of == Line::Of::formula) is_part[line.item.index] = true;
    Diagnostics found;
    for (std::size_t i = 0; i < book.formulas.size(); ++i)
        if (!is_part[i] || !book.formulas[i].sold_as.empty()) warn_of_cold_inside(book, i, found);
    return found;
}

} // namespace groat
