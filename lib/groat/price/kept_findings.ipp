#pragma once

#include <groat/price/kept_findings.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/rounding.hpp>
#include <groat/cost/kept_goods.hpp>
#include <groat/cost/reach.hpp>

#include <fmt/format.h>

#include <map>
#include <set>
#include <string>
#include <vector>

namespace groat {

namespace kept_findings_detail {

/// What so much costs, taken from the run it is costed at, and made for itself.
struct Costs {
    Money taken;
    Money for_itself;
};

inline Costs costs_of(Costing const& costing, std::size_t formula, Number const& amount) {
    CostRequest request{{{formula, nullptr, amount}}};
    request.scope = Scope::run;
    request.divides_losses = request.keeps_record = false;
    Costs costs;
    costs.taken = costing.cost(request).total.total();
    request.makes_kept = true;
    costs.for_itself = costing.cost(request).total.total();
    return costs;
}

inline std::string amount_words(Costing const& costing, std::size_t formula, Number const& amount) {
    return costing.book().formulas[formula].makes_pieces() ? decimal_at_most(amount, 1)
                                                           : mass_text(amount);
}

inline std::string figure_words(Costing const& costing, Costs const& costs) {
    auto const shown = [&](Money const& money) {
        return decimal(money.amount(), costing.book().shop.currency.minor_digits());
    };
    return fmt::format("made for itself it would cost {}, not {}", shown(costs.for_itself),
                       shown(costs.taken));
}

/// Who takes something kept, and when.
struct Taker {
    Order const* order = nullptr;
    Date due;
};

/// By formula that is kept: the orders that take it, by the day they are due.
inline std::map<std::size_t, std::vector<Taker>> takers(Costing const& costing) {
    Book const& book = costing.book();
    std::map<std::size_t, std::vector<Taker>> result;
    for (Order const& order : book.orders) {
        auto const due = order.due ? order.due : order.date;
        if (!due) continue;
        Reach const reach = reach_of(book, sales_of(order, book));
        for (std::size_t i = 0; i < reach.formulas.size(); ++i)
            if (reach.formulas[i] && costing.kept(i) != nullptr)
                result[i].push_back({&order, *due});
    }
    for (auto& [formula, orders] : result)
        std::sort(orders.begin(), orders.end(),
                  [](Taker const& a, Taker const& b) { return a.due < b.due; });
    return result;
}

inline std::set<std::size_t> on_menus(Book const& book) {
    std::vector<Sale> sales;
    for (Menu const& menu : book.menus)
        for (MenuItem const& item : menu.items)
            if (item.item.is_resolved()) sales.push_back({item.item.index});
    Reach const reach = reach_of(book, sales);
    std::set<std::size_t> found;
    for (std::size_t i = 0; i < reach.formulas.size(); ++i)
        if (reach.formulas[i]) found.insert(i);
    return found;
}

/// Of the orders that take it, the first that nobody follows in time.
inline Taker const* lonely(std::vector<Taker> const& orders, int days) {
    for (std::size_t i = 0; i < orders.size(); ++i) {
        bool const before = i > 0 && (orders[i].due - orders[i - 1].due).count() < days;
        bool const after =
            i + 1 < orders.size() && (orders[i + 1].due - orders[i].due).count() < days;
        if (!before && !after) return &orders[i];
    }
    return nullptr;
}

} // namespace kept_findings_detail

GROAT_INLINE void warn_of_short_runs(OrderCost const& cost, Order const& order,
                                     Costing const& costing, Diagnostics& found) {
    namespace parts = kept_findings_detail;
    for (FormulaUse const& use : cost.formulas) {
        KeptGood const* const good = costing.kept(use.run.formula);
        if (!use.run.is_taken || good == nullptr || use.run.demand <= good->good) continue;
        found.warn(
            order.origin, "kept-beyond-run",
            fmt::format("{} of '{}' are taken here, more than the {} of the run it is "
                        "costed at; {}",
                        parts::amount_words(costing, use.run.formula, use.run.demand),
                        costing.book().formulas[use.run.formula].name,
                        parts::amount_words(costing, use.run.formula, good->good),
                        parts::figure_words(
                            costing, parts::costs_of(costing, use.run.formula, use.run.demand))),
            "state in its formula how much is made at a time, as 'standard run', or take "
            "'leftover: kept' out");
    }
}

GROAT_INLINE Diagnostics kept_findings(Costing const& costing) {
    namespace parts = kept_findings_detail;
    Diagnostics found;
    Book const& book = costing.book();
    auto const all = parts::takers(costing);
    if (all.empty()) return found;
    std::set<std::size_t> const on_menus = parts::on_menus(book);
    for (auto const& [formula, orders] : all) {
        auto const& days = book.formulas[formula].keeping.days;
        if (!days || on_menus.contains(formula)) continue;
        parts::Taker const* const alone = parts::lonely(orders, *days);
        if (alone == nullptr) continue;
        Explosion const made = explode(book, costing.formulary(), Losses::all, Wholes::all,
                                       sales_of(*alone->order, book));
        FormulaRun const& run = made.runs[made.run_of[formula]];
        if (!run.leftover().is_positive()) continue;
        found.warn(
            alone->order->origin, "kept-not-taken",
            fmt::format(
                "this order takes {} of '{}', and nothing in the books takes the rest of a "
                "batch within {} days; {}",
                parts::amount_words(costing, formula, run.demand), book.formulas[formula].name,
                *days, parts::figure_words(costing, parts::costs_of(costing, formula, run.demand))),
            "if it will not be sold, take 'leftover: kept' out of its formula, and the order pays "
            "for the batch");
    }
    return found;
}

} // namespace groat
