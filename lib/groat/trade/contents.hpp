/// What is in an item that a client must know: allergens and how to keep it, gathered from all formulas and
/// ingredients that it is made of.
#pragma once

#include <groat/model/book.hpp>

#include <vector>

namespace groat {

struct Contents {
    AllergenSet allergens;
    Keeping keeping;
};

/// Allergens are those that the books state, no more. How to keep it is what the formula itself states;
/// where it states nothing, the strictest of what the formulas in it state.
[[nodiscard]] Contents contents_of(Book const& book, std::size_t formula);

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

} // namespace groat
