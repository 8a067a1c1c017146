#pragma once

#include <groat/review/variance.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/rounding.hpp>
#include <groat/cost/shares.hpp>
#include <groat/model/convert.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

namespace groat {

GROAT_INLINE std::vector<CostVariance const*> dearest_first(std::vector<CostVariance> const& all) {
    std::vector<CostVariance const*> recorded;
    for (CostVariance const& each : all)
        if (each.is_recorded) recorded.push_back(&each);
    std::stable_sort(recorded.begin(), recorded.end(), [](auto const* a, auto const* b) {
        return a->difference() > b->difference();
    });
    return recorded;
}

GROAT_INLINE Result<Number> output_of(Run const& run, Formula const& formula) {
    bool const by_piece = formula.makes_pieces();
    if (by_piece && run.good) return Number(*run.good);
    if (!by_piece && run.out_grams) return *run.out_grams;
    return refuse("missing-output",
                  fmt::format("the run '{}' does not say what came out", run.name),
                  by_piece ? "add 'pieces: {portioned: 84, good: 80}'" : "add 'out: 2.7 kg'");
}

namespace variance_detail {

class Calculator {
public:
    Calculator(Costing const& costing, std::size_t order, Diagnostics& found)
        : costing_(costing), book_(costing.book()), formulary_(costing.formulary()), found_(found) {
        result_.order = order;
    }

    std::optional<OrderVariance> result() {
        std::size_t const errors = found_.errors_met();
        find_runs();
        if (found_.errors_met() > errors) return std::nullopt;
        cut_off_parts_with_runs();
        for (std::size_t const index : result_.runs) take(book_.runs[index]);
        if (found_.errors_met() > errors) return std::nullopt;
        for (auto& [index, entry] : ingredients_) {
            result_.price += entry.by_price();
            result_.usage += entry.by_quantity();
            add(entry, result_.ingredients);
        }
        for (auto& [index, entry] : roles_) {
            result_.rate += entry.by_price();
            result_.time += entry.by_quantity();
            add(entry, result_.roles);
        }
        return std::move(result_);
    }

private:
    void add(CostVariance& entry, std::vector<CostVariance>& all) {
        result_.standard += entry.standard();
        result_.actual += entry.cost;
        all.push_back(std::move(entry));
    }

    void find_runs() {
        Order const& order = book_.orders[result_.order];
        for (std::size_t i = 0; i < book_.runs.size(); ++i) {
            Run const& run = book_.runs[i];
            if (run.order.index != result_.order) continue;
            result_.runs.push_back(i);
            found_.add(costing_.findings(run.formula.index));
            auto const output = output_of(run, book_.formulas[run.formula.index]);
            if (!output) found_.error(run.origin, output.error());
        }
        if (result_.runs.empty())
            found_.error(order.origin, "no-runs",
                         fmt::format("no run names the order {}", order.id),
                         "write 'order:' with its number into the runs that were for it");
    }

    /// From here on the formulas that have runs of their own take nothing from those that use them.
    void cut_off_parts_with_runs() {
        std::set<std::size_t> own;
        for (std::size_t const index : result_.runs) own.insert(book_.runs[index].formula.index);
        for (Batch& batch : formulary_.with_losses)
            std::erase_if(batch.lines, [&](BatchLine const& line) {
                return line.is_formula && own.contains(line.index);
            });
    }

    using Amounts = std::map<std::size_t, Number>;

    /// Adds one run: what it was allowed, and what it took.
    void take(Run const& run) {
        Sale const made{run.formula.index, nullptr,
                        *output_of(run, book_.formulas[run.formula.index])};
        Explosion const allowed = explode(book_, formulary_, Losses::all, Wholes::none, {made});
        Amounts grams;
        Amounts minutes;
        for (FormulaRun const& each : allowed.runs) {
            for (BatchLine const& line : formulary_.with_losses[each.formula].lines)
                if (!line.is_formula) grams[line.index] += line.bought * each.made;
            for (Task const& task : book_.formulas[each.formula].labour)
                if (!task.is_unattended)
                    minutes[task.role.index] += task.minutes * times(task, each, run);
            begun_.insert(each.formula);
        }
        for (UsedFood const& used : run.used) grams.try_emplace(used.item.index);
        for (WorkedTime const& worked : run.worked) minutes.try_emplace(worked.role.index);
        for (auto const& [index, amount] : grams) take_food(index, amount, run);
        for (auto const& [index, amount] : minutes) take_work(index, amount, run);
    }

    /// What a task's minutes are allowed for.
    [[nodiscard]] Number times(Task const& task, FormulaRun const& allowed, Run const& run) const {
        if (task.per == Per::order) return begun_.contains(allowed.formula) ? 0 : 1;
        if (task.per == Per::piece || task.scales) return allowed.driver(task);
        Number const whole = ceiling(allowed.driver(task));
        if (allowed.formula != run.formula.index) return whole;
        auto const made = task.per == Per::load  ? loads_made(run)
                          : task.per == Per::mix ? mixes_made(run)
                                                 : batches_begun(run);
        return made ? std::min(whole, *made) : whole;
    }

    [[nodiscard]] std::optional<Number> batches_begun(Run const& run) const {
        if (!run.batches) return std::nullopt;
        return ceiling(*run.batches);
    }

    [[nodiscard]] std::optional<Number> mixes_made(Run const& run) const {
        if (!run.batches) return std::nullopt;
        return ceiling(*run.batches /
                       book_.formulas[run.formula.index].largest_mix.value_or(Number(1)));
    }

    [[nodiscard]] std::optional<Number> loads_made(Run const& run) const {
        Formula const& formula = book_.formulas[run.formula.index];
        std::optional<Number> in_the_oven;
        if (!formula.makes_pieces())
            in_the_oven = run.in_grams;
        else if (run.portioned)
            in_the_oven = Number(*run.portioned);
        if (!formula.oven || !in_the_oven) return std::nullopt;
        return ceiling(*in_the_oven / formula.oven->holds.amount);
    }

    void take_food(std::size_t index, Number const& allowed, Run const& run) {
        Money const price = formulary_.costs.purchases[index]->as_bought();
        CostVariance& entry = ingredients_[index];
        entry.index = index;
        entry.standard_price = price;
        entry.allowed += allowed;
        auto const used = std::find_if(run.used.begin(), run.used.end(), [&](UsedFood const& each) {
            return each.item.index == index;
        });
        if (used == run.used.end()) {
            entry.taken += allowed;
            entry.cost += price * allowed;
            return;
        }
        auto const amount = amount_in(used->amount, book_.ingredients[index]);
        if (!amount) return found_.error(used->item.origin, amount.error());
        entry.is_recorded = true;
        entry.taken += *amount;
        entry.cost += used->paid.value_or(price * *amount);
    }

    void take_work(std::size_t index, Number const& allowed, Run const& run) {
        Role const& role = book_.shop.roles[index];
        Number const with_on_cost = 1 + role.on_cost.value();
        CostVariance& entry = roles_[index];
        entry.index = index;
        entry.standard_price = role.wage.of(minutes(1)) * with_on_cost;
        entry.allowed += allowed;
        auto const worked =
            std::find_if(run.worked.begin(), run.worked.end(),
                         [&](WorkedTime const& each) { return each.role.index == index; });
        if (worked == run.worked.end()) {
            entry.taken += allowed;
            entry.cost += entry.standard_price * allowed;
            return;
        }
        entry.is_recorded = true;
        entry.taken += worked->minutes;
        entry.cost += worked->paid.value_or(role.wage).of(minutes(worked->minutes)) * with_on_cost;
    }

    Costing const& costing_;
    Book const& book_;
    Formulary formulary_; ///< without the parts that have runs of their own
    Diagnostics& found_;
    OrderVariance result_;
    std::map<std::size_t, CostVariance> ingredients_;
    std::map<std::size_t, CostVariance> roles_;
    std::set<std::size_t> begun_; ///< formulas whose tasks per order have been allowed
};

} // namespace variance_detail

GROAT_INLINE std::optional<OrderVariance> order_variance(Costing const& costing, std::size_t order,
                                                         Diagnostics& found) {
    return variance_detail::Calculator(costing, order, found).result();
}

} // namespace groat
