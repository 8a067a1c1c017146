/// What it costs: demand runs down through the formulas, costs run back up in the share that each use
/// took, and nothing is lost or counted twice on the way.
#pragma once

#include <groat/cost/kept_goods.hpp>
#include <groat/cost/order_rollup.hpp>
#include <groat/model/linked_book.hpp>

#include <memory>
#include <optional>
#include <utility>
#include <vector>

namespace groat {

/// A book calculated for a date: everything that does not depend on an order is done here, once. Copies share
/// what was calculated. What it tells of owns what it points to, so that a cost or a quote may outlive it.
class Costing {
public:
    Costing(LinkedBook book, Date date)
        : all_(std::make_shared<All const>(std::move(book), date)) {}
    Costing(Costing const&) = default; // moved is copied: there is no empty one
    Costing& operator=(Costing const&) = default;

    /// These three stand in the costing: refused of one that dies at once.
    [[nodiscard]] Book const& book() const& { return all_->linked.book(); }
    [[nodiscard]] Formulary const& formulary() const& { return all_->formulary; }
    Book const& book() const&& = delete;
    Formulary const& formulary() const&& = delete;
    [[nodiscard]] LinkedBook linked() const { return all_->linked; }
    [[nodiscard]] Date date() const { return all_->formulary.costs.date; }
    /// What a piece or gram of a formula costs of which the leftover is kept, and the run it is made in; null for
    /// others, and where it cannot be costed.
    [[nodiscard]] KeptGood const* kept(std::size_t formula) const& {
        return all_->kept[formula] ? &*all_->kept[formula] : nullptr;
    }
    KeptGood const* kept(std::size_t formula) const&& = delete;

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
    /// be free of errors (see `findings`), else this throws `std::logic_error`. The result keeps alive what it
    /// points to, so it may outlive this.
    [[nodiscard]] OrderCost cost(CostRequest const& request) const;

private:
    enum class Prices { needed, not_needed };
    void collect(std::size_t formula, Prices prices, std::vector<bool>& seen,
                 Diagnostics& found) const;
    void collect_packing(SaleUnit const& unit, Diagnostics& found) const;
    void need(std::size_t ingredient, Span where, Diagnostics& found) const;

    struct All {
        All(LinkedBook book, Date date)
            : linked(std::move(book)),
              formulary(formulary_of(linked.book(), date)),
              kept(kept_goods(linked.book(), formulary)) {}

        LinkedBook linked;
        Formulary formulary;
        std::vector<std::optional<KeptGood>> kept; ///< by formula
    };
    std::shared_ptr<All const> all_;
};

// ---------------------------------------------------------------------------------------------------

inline Diagnostics Costing::findings() const {
    Diagnostics found;
    std::vector<bool> seen(book().formulas.size(), false);
    for (std::size_t i = 0; i < book().formulas.size(); ++i) {
        collect(i, Prices::needed, seen, found);
        for (SaleUnit const& unit : book().formulas[i].sold_as) collect_packing(unit, found);
    }
    return found;
}

inline Diagnostics Costing::findings(std::size_t formula, SaleUnit const* unit) const {
    Diagnostics found;
    std::vector<bool> seen(book().formulas.size(), false);
    collect(formula, Prices::needed, seen, found);
    if (unit != nullptr) collect_packing(*unit, found);
    return found;
}

inline Diagnostics Costing::weighing_findings(std::size_t formula) const {
    Diagnostics found;
    std::vector<bool> seen(book().formulas.size(), false);
    collect(formula, Prices::not_needed, seen, found);
    return found;
}

inline void Costing::need(std::size_t ingredient, Span where, Diagnostics& found) const {
    Flaw const& problem = formulary().costs.problems[ingredient];
    if (!problem.code.empty()) found.error(where, problem);
    auto const& purchase = formulary().costs.purchases[ingredient];
    if (!purchase || !purchase->is_instead) return;
    Flaw const said = instead_of_preferred(*purchase, ingredient, book(), date());
    found.warn(book().ingredients[ingredient].preferred_supplier.origin, said.code, said.what,
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
        Formula const& formula = book().formulas[index];
        found.add(formulary().problems[index]);
        if (auto const cycle = formulary().order.cycles_of.find(index);
            cycle != formulary().order.cycles_of.end())
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

inline OrderCost Costing::cost(CostRequest const& request) const {
    OrderCost result = roll_up_order(book(), formulary(), all_->kept, request);
    result.kept = Kept(linked());
    return result;
}

} // namespace groat
