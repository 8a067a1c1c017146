/// What it costs: demand runs down through the formulas, costs run back up in the share that each use
/// took, and nothing is lost or counted twice on the way.
#pragma once

#include <groat/cost/order_rollup.hpp>

#include <optional>
#include <vector>

namespace groat {

/// A book calculated for a date: everything that does not depend on an order is done here, once. The book
/// must stay where it is, unchanged, as long as this lives.
class Costing {
public:
    /// `book` has been linked without errors.
    Costing(Book const& book, Date date)
        : book_(&book), formulary_(formulary_of(book, date)), kept_(kept_goods(book, formulary_)) {}

    [[nodiscard]] Book const& book() const { return *book_; }
    [[nodiscard]] Date date() const { return formulary_.costs.date; }
    [[nodiscard]] Formulary const& formulary() const { return formulary_; }
    /// What a piece or gram of a formula costs of which the leftover is kept, and the run it is made in; null for
    /// others, and where it cannot be costed.
    [[nodiscard]] KeptGood const* kept(std::size_t formula) const {
        return kept_[formula] ? &*kept_[formula] : nullptr;
    }

    /// Whatever keeps a formula from being costed on the date (cycles, missing facts, missing prices), and
    /// warnings: for all formulas of the book and the ways they are sold, or for one formula, what it uses,
    /// and one way of selling it.
    [[nodiscard]] Diagnostics findings() const;
    [[nodiscard]] Diagnostics findings(std::size_t formula, SaleUnit const* unit = nullptr) const;
    /// The same for weighing a formula only, for which nothing needs a price.
    [[nodiscard]] Diagnostics weighing_findings(std::size_t formula) const;

    /// The cost of what is requested, exact.
    ///
    /// The lines' costs add up to the order's, the yield losses to the ingredient cost. The formulas must
    /// be free of errors (see `findings`), else this throws `std::logic_error`. It tells of purchases that
    /// stand in this costing, which must live as long: a costing that dies at once is refused.
    [[nodiscard]] OrderCost cost(CostRequest const& request) const&;
    OrderCost cost(CostRequest const& request) const&& = delete;

private:
    enum class Prices { needed, not_needed };
    void collect(std::size_t formula, Prices prices, std::vector<bool>& seen,
                 Diagnostics& found) const;
    void collect_packing(SaleUnit const& unit, Diagnostics& found) const;
    void need(std::size_t ingredient, Span where, Diagnostics& found) const;
    Book const* book_;
    Formulary formulary_;
    std::vector<std::optional<KeptGood>> kept_; ///< by formula
};

// ---------------------------------------------------------------------------------------------------

inline Diagnostics Costing::findings() const {
    Diagnostics found;
    std::vector<bool> seen(book_->formulas.size(), false);
    for (std::size_t i = 0; i < book_->formulas.size(); ++i) {
        collect(i, Prices::needed, seen, found);
        for (SaleUnit const& unit : book_->formulas[i].sold_as) collect_packing(unit, found);
    }
    return found;
}

inline Diagnostics Costing::findings(std::size_t formula, SaleUnit const* unit) const {
    Diagnostics found;
    std::vector<bool> seen(book_->formulas.size(), false);
    collect(formula, Prices::needed, seen, found);
    if (unit != nullptr) collect_packing(*unit, found);
    return found;
}

inline Diagnostics Costing::weighing_findings(std::size_t formula) const {
    Diagnostics found;
    std::vector<bool> seen(book_->formulas.size(), false);
    collect(formula, Prices::not_needed, seen, found);
    return found;
}

inline void Costing::need(std::size_t ingredient, Span where, Diagnostics& found) const {
    Flaw const& problem = formulary_.costs.problems[ingredient];
    if (!problem.code.empty()) found.error(where, problem);
    auto const& purchase = formulary_.costs.purchases[ingredient];
    if (!purchase || !purchase->is_instead) return;
    Flaw const said = instead_of_preferred(*purchase, ingredient, *book_, date());
    found.warn(book_->ingredients[ingredient].preferred_supplier.origin, said.code, said.what,
               said.help);
}

/// Only of what is sold itself: a box for shells does not matter to the sandwich made of them.
inline void Costing::collect_packing(SaleUnit const& unit, Diagnostics& found) const {
    for (Consumption const& use : unit.packing)
        if (use.supply.is_resolved()) need(use.supply.index, use.supply.origin, found);
}

inline void Costing::collect(std::size_t root, Prices prices, std::vector<bool>& seen,
                             Diagnostics& found) const {
    std::vector<std::size_t> open{root};
    while (!open.empty()) {
        std::size_t const index = open.back();
        open.pop_back();
        if (seen[index]) continue;
        seen[index] = true;
        Formula const& formula = book_->formulas[index];
        found.add(formulary_.problems[index]);
        if (auto const cycle = formulary_.order.cycles_of.find(index);
            cycle != formulary_.order.cycles_of.end())
            found.add(cycle->second);
        for (Line const& line : formula.lines) {
            if (line.of == Line::Of::formula)
                open.push_back(line.item.index);
            else if (line.of == Line::Of::ingredient && prices == Prices::needed)
                need(line.item.index, line.origin, found);
        }
        if (prices == Prices::not_needed) continue;
        for (Consumption const& use : formula.consumables)
            if (use.supply.is_resolved()) need(use.supply.index, use.supply.origin, found);
    }
}

inline OrderCost Costing::cost(CostRequest const& request) const& {
    return roll_up_order(*book_, formulary_, kept_, request);
}

} // namespace groat
