#pragma once

#include <groat/price/contents.hpp>

#include <groat/base/linkage.hpp>

#include <fmt/format.h>

#include <vector>

namespace groat {

GROAT_INLINE Contents contents_of(Book const& book, std::size_t root) {
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

GROAT_INLINE std::optional<ColdPart> cold_inside(Book const& book, std::size_t root) {
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

GROAT_INLINE void warn_of_cold_inside(Book const& book, std::size_t root, Diagnostics& found) {
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

GROAT_INLINE Diagnostics cold_findings(Book const& book) {
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
