/// The cost rollup: each formula's cost, its own and that of what it uses, goes to those who use it in the
/// share of its demand that each took, so that nothing is lost or counted twice on the way.
#pragma once

#include <groat/base/rounding.hpp>
#include <groat/cost/making.hpp>
#include <groat/cost/request.hpp>
#include <groat/cost/shares.hpp>

#include <map>
#include <optional>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

namespace groat {

/// How a rollup goes about it.
struct RollupTerms {
    bool is_whole = true; ///< supplies come whole
    Scope scope = Scope::order;
    bool keeps_record = true;
    Shares const* shares = nullptr; ///< of what is made together with others
    std::vector<bool> wanted = {};  ///< by sale, whether it is told of; none: all are
};

/// The cost of what an explosion makes, of formulas that are all sound and whose ingredients all have a
/// purchase; others throw `std::logic_error`. `kept` is there for all that the explosion takes. Where some of the
/// sales only are wanted, the record is of their part in each formula; the lines are of all.
[[nodiscard]] Making roll_up(Book const& book, Formulary const& formulary,
                             std::vector<std::optional<KeptGood>> const& kept, Explosion const& run,
                             std::vector<Sale> const& sales, RollupTerms const& terms);

// ---------------------------------------------------------------------------------------------------

namespace rollup_detail {

class Rollup {
public:
    Rollup(Book const& book, Formulary const& formulary,
           std::vector<std::optional<KeptGood>> const& kept, Explosion const& run,
           std::vector<Sale> const& sales, RollupTerms const& terms)
        : book_(book),
          shop_(book.shop),
          formulary_(formulary),
          kept_(kept),
          run_(run),
          sales_(sales),
          terms_(terms),
          charges_packs_(terms.is_whole && terms.scope == Scope::order) {
        for (FormulaRun const& each : run_.runs)
            if (!formulary_.with_losses[each.formula].is_sound)
                throw std::logic_error("a formula with errors was costed");
        upward_.resize(run_.runs.size());
        taken_.resize(run_.runs.size());
        told_taken_.resize(run_.runs.size());
        if (charges_packs_) charge_packs();
    }

    Making lines() {
        for (Sale const& sale : sales_) {
            CostLine line;
            line.sale = sale;
            line.pieces = book_.formulas[sale.formula].makes_pieces()
                              ? Number(sale.count * sale.holds())
                              : sale.count;
            for (Money& amount : line.direct.amounts) amount = zero();
            made_.lines.push_back(std::move(line));
        }
        find_parts();
        use_supplies();
        spend_labour();
        bake();
        pass_upward();
        pack();
        take_up();
        keep_formulas();
        return std::move(made_);
    }

    /// For an explosion of a formula's own run, which stands first in it.
    KeptGood own_run() {
        find_parts();
        use_supplies();
        spend_labour();
        bake();
        pass_upward();
        keep_formulas();
        KeptGood good;
        good.run = run_.runs.front();
        good.good = good_of(good.run, formulary_);
        good.unit.add(upward_.front(), 1 / good.good);
        made_.formulas.clear(); // the day's work of whoever makes it, not of an order
        good.one.add_record(made_, 1 / good.good);
        return good;
    }

private:
    [[nodiscard]] Money zero() const { return {0, shop_.currency}; }

    [[nodiscard]] Purchase const& purchase_of(std::size_t ingredient) const {
        auto const& purchase = formulary_.costs.purchases[ingredient];
        if (!purchase) throw std::logic_error("an ingredient without a price was costed");
        return *purchase;
    }

    /// What is done for every order belongs to no run; what is taken was made in a run of its own.
    [[nodiscard]] bool is_left_out(Per per, FormulaRun const& run) const {
        return per == Per::order ? terms_.scope == Scope::run : run.is_taken;
    }
    [[nodiscard]] Number whole(Number const& value) const {
        return terms_.is_whole ? ceiling(value) : value;
    }
    /// The part of a cost that falls to this order, of what is made together with others.
    [[nodiscard]] Number share(PooledCost const& what) const {
        return terms_.shares == nullptr ? Number(1) : terms_.shares->of(what);
    }
    [[nodiscard]] Number amount_of(Consumption const& use, FormulaRun const& run) const {
        return whole(use.amount * run.driver(use));
    }

    [[nodiscard]] bool is_wanted(std::size_t sale) const {
        return terms_.wanted.empty() || terms_.wanted[sale];
    }

    /// Which part of each formula's run goes into the sales that are wanted.
    void find_parts() {
        told_.assign(run_.runs.size(), terms_.wanted.empty() ? Number(1) : Number());
        if (terms_.wanted.empty()) return;
        for (std::size_t i = 0; i < sales_.size(); ++i) {
            std::size_t const used = run_.run_of[sales_[i].formula];
            if (is_wanted(i))
                told_[used] += part_of(run_.runs[used], sales_[i].count * sales_[i].holds());
        }
        for (std::size_t i = 0; i < run_.runs.size(); ++i) {
            FormulaRun const& run = run_.runs[i];
            if (run.is_taken || told_[i].is_zero()) continue;
            for (BatchLine const& line : formulary_.with_losses[run.formula].lines) {
                if (!line.is_formula) continue;
                std::size_t const used = run_.run_of[line.index];
                told_[used] += told_[i] * part_of(run_.runs[used], line.amount * run.made);
            }
        }
    }

    /// What is bought for this alone is charged by whole packs, spread over all of its uses.
    void charge_packs() {
        for (auto const& [index, bought] : whole_pack_uses(book_, formulary_, run_, sales_)) {
            if (bought.is_zero()) continue;
            Money const packs = pack_cost(purchase_of(index), bought);
            charged_.emplace(index, packs / bought * share({PooledCost::Kind::packs, index, 0}));
        }
    }

    /// What a gram or piece is charged at here, and whether that is its share already.
    [[nodiscard]] Money cost_of(std::size_t ingredient, Number const& amount,
                                Number const& own_share) const {
        if (auto const packs = charged_.find(ingredient); packs != charged_.end())
            return packs->second * amount;
        return purchase_of(ingredient).unit_cost * (amount * own_share);
    }

    void keep(std::map<std::size_t, IngredientUse>& record, Number const& told,
              std::size_t ingredient, Number const& usable, Number const& bought,
              Number const& bought_so, Money const& cost) {
        if (!terms_.keeps_record || told.is_zero()) return;
        making_detail::add(
            record, {ingredient, usable, bought, bought_so, nullptr, cost, {}, {}, {}}, told);
    }

    void use_supplies() {
        for (std::size_t i = 0; i < run_.runs.size(); ++i) {
            FormulaRun const& run = run_.runs[i];
            auto const& consumables = book_.formulas[run.formula].consumables;
            for (std::size_t k = 0; k < consumables.size(); ++k) {
                Consumption const& use = consumables[k];
                if (is_left_out(use.per, run)) continue;
                Number const part = share({PooledCost::Kind::consumable, run.formula, k});
                Number const amount = amount_of(use, run);
                Money const cost = cost_of(use.supply.index, amount, part);
                upward_[i].consumables += cost;
                keep(made_.supplies, told_[i], use.supply.index, 0, amount * part, amount * part,
                     cost);
            }
        }
    }

    /// Keeps one task on the record, as far as it is told; gives all of its attended minutes and their cost.
    std::pair<Number, Money> spend(Task const& task, std::string const& where, Number const& count,
                                   Number const& told) {
        TaskUse use{&task, {}, count, task.minutes * count, zero()};
        if (!task.is_unattended) use.cost = shop_.labour_cost(task.role, use.minutes);
        std::pair<Number, Money> attended{task.is_unattended ? Number() : use.minutes, use.cost};
        if (terms_.keeps_record && !told.is_zero()) {
            use.where = where;
            use.count *= told;
            use.minutes *= told;
            use.cost *= told;
            made_.tasks.push_back(std::move(use));
        }
        return attended;
    }

    void spend_labour() {
        for (std::size_t i = 0; i < run_.runs.size(); ++i) {
            FormulaRun const& run = run_.runs[i];
            Formula const& formula = book_.formulas[run.formula];
            for (std::size_t k = 0; k < formula.labour.size(); ++k) {
                Task const& task = formula.labour[k];
                if (is_left_out(task.per, run)) continue;
                auto const [time, cost] = spend(
                    task, formula.name,
                    run.driver(task) * share({PooledCost::Kind::task, run.formula, k}), told_[i]);
                upward_[i].labour += cost;
                upward_[i].labour_minutes += time;
            }
        }
    }

    /// Power is drawn in full while an oven heats up, once a session, and at its duty while it bakes.
    void bake() {
        struct Baked {
            std::size_t run;
            Number minutes; ///< in the oven, as if it were made alone
        };
        std::map<std::size_t, std::vector<Baked>> baked;
        for (std::size_t i = 0; i < run_.runs.size(); ++i) {
            FormulaRun const& run = run_.runs[i];
            if (run.is_taken || !run.loads) continue;
            OvenUse const& use = *book_.formulas[run.formula].oven;
            Number minutes = *run.loads * use.minutes;
            if (!minutes.is_zero()) baked[use.oven.index].push_back({i, std::move(minutes)});
        }
        for (auto const& [index, users] : baked) {
            Oven const& oven = shop_.ovens[index];
            MoneyRate const& tariff = shop_.tariffs[oven.fuel.index].rate;
            Number all;
            for (Baked const& each : users) all += each.minutes;
            Number const preheat = oven.preheat * share({PooledCost::Kind::preheat, index, 0});
            OvenUsed used;
            used.oven = index;
            used.cost = zero();
            bool is_told = false;
            for (Baked const& each : users) {
                FormulaRun const& run = run_.runs[each.run];
                Number const part = share({PooledCost::Kind::loads, run.formula, 0});
                Number const baking = each.minutes * part;
                Number const heating = preheat * each.minutes / all;
                Quantity const energy{oven.power.amount * (baking * oven.duty.value() + heating) *
                                          60,
                                      Dimension::energy, nullptr};
                Money const cost = tariff.of(energy);
                upward_[each.run].energy += cost;
                upward_[each.run].oven_minutes += baking + heating;
                Number const& told = told_[each.run];
                is_told = is_told || !told.is_zero();
                used.loads += *run.loads * part * told;
                used.minutes += baking * told;
                used.preheat += heating * told;
                used.kilowatt_hours += energy.amount / 3600000 * told;
                used.cost += cost * told;
            }
            if (terms_.keeps_record && is_told) made_.ovens.emplace(index, std::move(used));
        }
    }

    /// The part of a run's demand that so much of it is. A demand of 0 has no parts.
    static Number part_of(FormulaRun const& run, Number const& amount) {
        return run.demand.is_zero() ? Number() : amount / run.demand;
    }

    void pass_upward() {
        for (std::size_t i = run_.runs.size(); i-- > 0;) {
            FormulaRun const& run = run_.runs[i];
            if (run.is_taken) continue; // what is done for the order alone
            Number const part = share({PooledCost::Kind::ingredients, run.formula, 0});
            Number const made = run.made * part;
            for (BatchLine const& line : formulary_.with_losses[run.formula].lines) {
                if (line.is_formula) {
                    take(upward_[i], run_.run_of[line.index], line.amount * run.made, part,
                         told_[i]);
                    continue;
                }
                Money const cost = cost_of(line.index, line.bought * run.made, part);
                upward_[i].ingredients += cost;
                keep(made_.ingredients, told_[i], line.index, line.amount * made,
                     line.bought * made, line.is_bought_so ? line.bought * made : Number(), cost);
            }
        }
    }

    /// So much of another run goes to whoever takes it. What is kept is priced like an ingredient.
    void take(Upward& taker, std::size_t used, Number const& amount, Number const& own_share,
              Number const& told) {
        taker.add(upward_[used], part_of(run_.runs[used], amount));
        if (!run_.runs[used].is_taken) return;
        Number const taken = amount * own_share;
        taker.add(kept_good(run_.runs[used].formula).unit, taken);
        taken_[used] += taken;
        told_taken_[used] += taken * told;
    }

    /// What each formula passes on, and the record of what was kept.
    void keep_formulas() {
        if (!terms_.keeps_record) return;
        for (std::size_t i = 0; i < run_.runs.size(); ++i) {
            FormulaRun const& run = run_.runs[i];
            if (run.is_taken) {
                KeptGood const& good = kept_good(run.formula);
                upward_[i].add(good.unit, taken_[i]);
                if (!told_[i].is_zero()) made_.add_record(good.one, told_taken_[i]);
            }
            if (told_[i].is_zero()) continue;
            Upward const& own = upward_[i];
            making_detail::add(made_.formulas[formulary_.order.position[run.formula]],
                               {run, own.ingredients, own.consumables, own.labour, own.energy},
                               told_[i]);
        }
    }

    [[nodiscard]] KeptGood const& kept_good(std::size_t formula) const {
        if (!kept_[formula]) throw std::logic_error("something kept that has no cost was costed");
        return *kept_[formula];
    }

    /// Boxes, liners, labels and the labour of packing belong to what is sold.
    void pack() {
        for (std::size_t i = 0; i < made_.lines.size(); ++i) {
            CostLine& line = made_.lines[i];
            SaleUnit const* const unit = line.sale.unit;
            if (unit == nullptr) continue;
            Number const told = is_wanted(i) ? 1 : 0;
            for (Consumption const& use : unit->packing) {
                Number const amount = whole(use.amount * line.sale.count);
                Money const cost = cost_of(use.supply.index, amount, 1);
                line.direct[Category::packaging] += cost;
                keep(made_.supplies, told, use.supply.index, 0, amount, amount, cost);
            }
            for (Task const& task : unit->labour) {
                auto const [time, cost] = spend(task, unit->name, line.sale.count, told);
                line.direct[Category::labour] += cost;
                line.labour_minutes += time;
            }
        }
    }

    void take_up() {
        for (std::size_t i = 0; i < made_.lines.size(); ++i) {
            CostLine& line = made_.lines[i];
            std::size_t const used = run_.run_of[line.sale.formula];
            Upward part;
            take(part, used, line.sale.count * line.sale.holds(), 1, is_wanted(i) ? 1 : 0);
            line.direct[Category::ingredients] += part.ingredients;
            line.direct[Category::consumables] += part.consumables;
            line.direct[Category::labour] += part.labour;
            line.direct[Category::energy] += part.energy;
            line.labour_minutes += part.labour_minutes;
            line.oven_minutes = part.oven_minutes;
        }
    }

    Book const& book_;
    Shop const& shop_;
    Formulary const& formulary_;
    std::vector<std::optional<KeptGood>> const& kept_;
    Explosion const& run_;
    std::vector<Sale> const& sales_;
    RollupTerms terms_;
    bool charges_packs_;
    std::map<std::size_t, Money> charged_; ///< by ingredient: a gram or piece of whole packs
    std::vector<Upward> upward_;     ///< by run; of what is taken, what is done for the order alone
    std::vector<Number> taken_;      ///< by run: pieces or grams of what is kept
    std::vector<Number> told_taken_; ///< by run: of these, for the sales that are wanted
    std::vector<Number> told_;       ///< by run: the part of it that goes into these
    Making made_;
};

} // namespace rollup_detail

inline Making roll_up(Book const& book, Formulary const& formulary,
                      std::vector<std::optional<KeptGood>> const& kept, Explosion const& run,
                      std::vector<Sale> const& sales, RollupTerms const& terms) {
    return rollup_detail::Rollup(book, formulary, kept, run, sales, terms).lines();
}

} // namespace groat
