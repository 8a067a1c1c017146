#pragma once

#include <groat/plan/production.hpp>

#include <groat/base/linkage.hpp>
#include <groat/plan/kitchen.hpp>
#include <groat/price/contents.hpp>
#include <groat/price/line_price.hpp>

#include <algorithm>

namespace groat {

GROAT_INLINE Number Work::leftover() const {
    if (run.made.is_zero()) return 0;
    return run.leftover() * (portioned.is_zero() ? mass_out : portioned) / run.made;
}

GROAT_INLINE std::vector<MixSize> mixes_of(Formula const& formula, FormulaRun const& run) {
    if (!formula.counts_mixes() || !run.mixes.is_positive()) return {};
    Integer const count = run.mixes.numerator();
    std::vector<MixSize> const equal{{count, run.made / run.mixes}};
    if (formula.batch_step.is_zero()) return equal;
    Integer const all =
        steps(run.made, formula.batch_step, Tie::half_even); // a whole number of them
    Integer const least = all / count;
    Integer const larger = all - least * count;
    Number const most = Number(least + (larger.is_zero() ? 0 : 1)) * formula.batch_step;
    if (larger.is_zero() || least.is_zero() || most > formula.largest_mix.value_or(1)) return equal;
    return {{larger, most}, {count - larger, most - formula.batch_step}};
}

namespace production_detail {

inline Work work_of(Formula const& formula, Batch const& batch, FormulaRun const& run) {
    Work work{run,
              {},
              mixes_of(formula, run),
              !batch.unweighed,
              batch.mass_in * run.made,
              batch.mass_out * run.made,
              batch.pieces * run.made,
              batch.portion_grams,
              batch.piece_grams};
    Number base;
    for (std::size_t i = 0; i < batch.lines.size(); ++i)
        for (Reference const& name : formula.percentage_base)
            if (formula.lines[i].item.name == name.name) base += *batch.lines[i].grams;
    for (BatchLine const& line : batch.lines)
        work.lines.push_back(
            {line, base.is_zero() ? std::nullopt : std::optional<Number>(*line.grams / base)});
    return work;
}

class Planner : quoting_detail::Pricer {
public:
    Planner(Costing const& costing, std::vector<Order const*> const& orders, Diagnostics& found)
        : Pricer(costing, found) {
        plan_.kept = Kept(costing.linked());
        plan_.orders = plan_.kept.copies_of(orders);
    }

    std::optional<Production> result() {
        plan_.date = costing_.date();
        if (!can_cost_all()) return std::nullopt;
        std::size_t const errors = found_.errors_met();
        OwnGoods goods(book_, found_);
        if (found_.errors_met() != errors) return std::nullopt;
        Kitchen kitchen = kitchen_of(costing_, plan_.orders, goods);
        warn_of_past_goods(kitchen, plan_.orders, goods, costing_, found_);
        take_from_stock(kitchen);
        plan_.ingredients = std::move(kitchen.ingredients);
        plan_.supplies = std::move(kitchen.supplies);
        std::vector<FormulaRun> const& runs = kitchen.explosion.runs;
        for (auto run = runs.rbegin(); run != runs.rend(); ++run)
            if (Kitchen::is_made(*run))
                plan_.works.push_back(work_of(book_.formulas[run->formula],
                                              costing_.formulary().with_losses[run->formula],
                                              *run));
        heat_ovens();
        gather_tasks();
        warn_of_keeping();
        return std::move(plan_);
    }

private:
    bool can_cost_all() {
        std::size_t const errors = found_.errors_met();
        for (Order const* const order : plan_.orders)
            can_cost_each(sales_of(*order, book_), *order);
        return found_.errors_met() == errors;
    }

    /// What is packed already, and what else is there; and so what is to be packed.
    void take_from_stock(Kitchen const& kitchen) {
        for (Ordered const& ordered : kitchen.ordered) {
            Packed packed{ordered.order, ordered.sale, ordered.ready, {}};
            if (ordered.sale.unit != nullptr && ordered.to_pack().is_positive())
                for (Consumption const& use : ordered.sale.unit->packing)
                    if (use.supply.is_resolved())
                        packed.packing.emplace_back(use.supply.index,
                                                    ceiling(use.amount * ordered.to_pack()));
            plan_.packed.push_back(std::move(packed));
            if (ordered.sale.unit == nullptr) continue;
            auto const known = std::find_if(
                plan_.taken.begin(), plan_.taken.end(), [&](TakenFromStock const& each) {
                    return each.formula == ordered.sale.formula && each.unit == ordered.sale.unit;
                });
            TakenFromStock& taken = known != plan_.taken.end()
                                        ? *known
                                        : plan_.taken.emplace_back(TakenFromStock{
                                              ordered.sale.formula, ordered.sale.unit, 0, 0});
            taken.wanted += ordered.sale.count;
            taken.taken += ordered.ready;
        }
        std::erase_if(plan_.taken, [](TakenFromStock const& each) { return each.taken.is_zero(); });
        for (FormulaRun const& run : kitchen.explosion.runs) {
            if (run.from_stock.is_zero()) continue;
            bool const is_counted = book_.formulas[run.formula].makes_pieces();
            auto const whole = [&](Number const& amount) {
                return is_counted ? ceiling(amount) : amount;
            };
            plan_.taken.push_back({run.formula, nullptr, whole(run.demand), whole(run.from_stock)});
        }
    }

    void heat_ovens() {
        for (std::size_t oven = 0; oven < shop_.ovens.size(); ++oven) {
            OvenTime time{oven, 0, 0, shop_.ovens[oven].preheat};
            for (Work const& work : plan_.works) {
                auto const& use = book_.formulas[work.run.formula].oven;
                if (!use || use->oven.index != oven || !work.run.loads) continue;
                time.loads += *work.run.loads;
                time.baking += *work.run.loads * use->minutes;
            }
            if (!time.baking.is_zero()) plan_.ovens.push_back(std::move(time));
        }
    }

    void add_task(Task const& task, std::string where, Number const& count) {
        plan_.tasks.push_back({&task, std::move(where), count});
        if (task.is_unattended) return;
        minutes_.resize(book_.shop.roles.size());
        minutes_[task.role.index] += plan_.tasks.back().minutes();
    }

    void gather_tasks() {
        for (Work const& work : plan_.works) {
            Formula const& formula = book_.formulas[work.run.formula];
            for (Task const& task : formula.labour)
                add_task(task, formula.name, work.run.driver(task));
        }
        for (Packed const& packed : plan_.packed) {
            if (packed.sale.unit == nullptr || !packed.to_pack().is_positive()) continue;
            for (Task const& task : packed.sale.unit->labour)
                add_task(task,
                         fmt::format("{}, {}", book_.formulas[packed.sale.formula].name,
                                     packed.sale.unit->name),
                         packed.to_pack());
        }
        for (Task const& task : book_.shop.order_work)
            add_task(task, "each order", Number(Integer(plan_.orders.size())));
        for (std::size_t role = 0; role < minutes_.size(); ++role)
            if (!minutes_[role].is_zero()) plan_.roles.push_back({role, minutes_[role]});
    }

    /// What is made together is made by the day on which the first of the orders is wanted.
    void warn_of_keeping() {
        Order const* first = nullptr;
        for (Order const* const order : plan_.orders)
            if (order->due && (first == nullptr || *order->due < *first->due)) first = order;
        if (first == nullptr) return;
        for (Packed const& packed : plan_.packed) {
            std::optional<int> const days = contents_of(book_, packed.sale.formula).keeping.days;
            if (!days || !packed.order->due) continue;
            auto const apart = (*packed.order->due - *first->due).count();
            if (apart < *days) continue;
            found_.warn(packed.order->origin, "will-not-keep",
                        fmt::format("'{}' is to be eaten within {} days, and order {} is wanted {} "
                                    "days after order {}",
                                    book_.formulas[packed.sale.formula].name, *days,
                                    packed.order->id, apart, first->id),
                        "make the two apart: groat make with one order at a time");
        }
    }

    std::vector<Number> minutes_;
    Production plan_;
};

} // namespace production_detail

GROAT_INLINE std::optional<Production> produce(Costing const& costing,
                                               std::vector<Order const*> const& orders,
                                               Diagnostics& found) {
    return production_detail::Planner(costing, orders, found).result();
}

} // namespace groat
