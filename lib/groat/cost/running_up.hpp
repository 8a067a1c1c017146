/// How costs run back up: each formula's cost, its own and that of what it uses, goes to those who use it in
/// the share of its demand that each took, so that nothing is lost or counted twice on the way.
#pragma once

#include <groat/cost/breakdown.hpp>
#include <groat/cost/request.hpp>
#include <groat/cost/rising.hpp>

#include <algorithm>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace groat {

/// The cost of what is requested, of formulas that are all sound and whose ingredients all have a purchase;
/// others throw `std::logic_error`. See `Costing::cost` in engine.hpp.
[[nodiscard]] OrderCost run_up(Book const& book, Formulary const& formulary,
                               CostRequest const& request);

// ---------------------------------------------------------------------------------------------------

namespace cost_engine {

class Engine {
public:
    Engine(Book const& book, Formulary const& formulary, CostRequest const& request)
        : book_(book),
          shop_(book.shop),
          formulary_(formulary),
          request_(request),
          is_whole_(request.wholes == Wholes::all),
          keeps_uses_(request.keeps_uses || is_whole_),
          run_(explode(book_, formulary_, Losses::all, request.wholes, request.sales)) {}

    OrderCost run() {
        for (Sale const& sale : request_.sales) {
            CostLine line;
            line.sale = sale;
            line.pieces = book_.formulas[sale.formula].makes_pieces()
                              ? Number(sale.count * sale.holds())
                              : sale.count;
            result_.lines.push_back(std::move(line));
        }
        rising_.resize(run_.runs.size());
        use_ingredients();
        use_supplies();
        spend_labour();
        spend_energy();
        run_up();
        if (request_.divides_losses) divide_losses();
        add_overhead_and_pool();
        return std::move(result_);
    }

private:
    [[nodiscard]] Money zero() const { return {0, shop_.currency}; }

    [[nodiscard]] Purchase const& purchase_of(std::size_t ingredient) const {
        auto const& purchase = formulary_.costs.purchases[ingredient];
        if (!purchase) throw std::logic_error("an ingredient without a price was costed");
        return *purchase;
    }

    /// Fills in packs, outlay and the cost charged, once all uses of an ingredient are known.
    void settle(IngredientUse& use) const {
        Ingredient const& ingredient = book_.ingredients[use.ingredient];
        use.purchase = &purchase_of(use.ingredient);
        use.cost = use.outlay = use.purchase->unit_cost * use.bought;
        if (ingredient.is_metered) return;
        use.packs = ceiling(use.bought / use.purchase->content).numerator();
        use.outlay = use.purchase->pack_cost * Number(use.packs);
        if (is_whole_ && ingredient.buys_whole_packs) use.cost = use.outlay;
    }

    /// What a gram or piece is charged at in this order.
    [[nodiscard]] Money const& charged(std::size_t ingredient) const {
        return keeps_uses_ ? charged_[ingredient] : purchase_of(ingredient).unit_cost;
    }
    [[nodiscard]] static Money charged_unit(IngredientUse const& use) {
        return use.bought.is_zero() ? use.purchase->unit_cost : use.cost / use.bought;
    }

    void use_ingredients() {
        std::map<std::size_t, IngredientUse> uses;
        for (FormulaRun const& run : run_.runs) {
            if (!formulary_.with_losses[run.formula].is_sound)
                throw std::logic_error("a formula with errors was costed");
            if (!keeps_uses_) continue;
            for (BatchLine const& line : formulary_.with_losses[run.formula].lines) {
                if (line.is_formula) continue;
                IngredientUse& use = uses[line.index];
                use.ingredient = line.index;
                use.usable += line.amount * run.made;
                use.bought += line.bought * run.made;
                if (line.is_bought_so) use.bought_so += line.bought * run.made;
            }
        }
        if (keeps_uses_) charged_.assign(book_.ingredients.size(), Money());
        for (auto& [index, use] : uses) {
            settle(use);
            charged_[index] = charged_unit(use);
            result_.ingredients.push_back(std::move(use));
        }
    }

    void use_supplies() {
        std::map<std::size_t, IngredientUse> uses;
        auto const whole = [&](Number const& value) { return is_whole_ ? ceiling(value) : value; };
        auto const take = [&](Consumption const& use, Number const& driver) {
            Number const amount = whole(use.amount * driver);
            if (!keeps_uses_) return amount;
            IngredientUse& entry = uses[use.supply.index];
            entry.ingredient = use.supply.index;
            entry.bought += amount;
            entry.bought_so += amount;
            return amount;
        };
        std::vector<std::pair<std::size_t, Number>>
            of_runs[2]; // 0: by run, 1: by sale; supply and amount
        std::vector<std::size_t> owners[2];
        for (std::size_t i = 0; i < run_.runs.size(); ++i) {
            for (Consumption const& use : book_.formulas[run_.runs[i].formula].consumables) {
                of_runs[0].emplace_back(use.supply.index, take(use, run_.runs[i].driver(use.per)));
                owners[0].push_back(i);
            }
        }
        for (std::size_t i = 0; i < request_.sales.size(); ++i) {
            if (request_.sales[i].unit == nullptr) continue;
            for (Consumption const& use : request_.sales[i].unit->packing) {
                of_runs[1].emplace_back(use.supply.index, take(use, request_.sales[i].count));
                owners[1].push_back(i);
            }
        }
        for (auto& [index, use] : uses) {
            settle(use);
            charged_[index] = charged_unit(use);
            result_.supplies.push_back(std::move(use));
        }
        for (std::size_t i = 0; i < owners[0].size(); ++i)
            rising_[owners[0][i]].consumables +=
                charged(of_runs[0][i].first) * of_runs[0][i].second;
        for (std::size_t i = 0; i < owners[1].size(); ++i)
            result_.lines[owners[1][i]].direct[Category::packaging] +=
                charged(of_runs[1][i].first) * of_runs[1][i].second;
    }

    /// Keeps one task on the record; gives its attended minutes and their cost.
    std::pair<Number, Money> spend(Task const& task, std::string where, Number const& count) {
        TaskUse use{&task, std::move(where), count, task.minutes * count, zero()};
        if (!task.is_unattended) {
            Role const& role = shop_.roles[task.role.index];
            use.cost = role.wage.of(minutes(use.minutes)) * (1 + role.on_cost.value());
        }
        std::pair<Number, Money> const attended{task.is_unattended ? Number() : use.minutes,
                                                use.cost};
        result_.tasks.push_back(std::move(use));
        return attended;
    }

    void spend_labour() {
        for (std::size_t i = 0; i < run_.runs.size(); ++i) {
            Formula const& formula = book_.formulas[run_.runs[i].formula];
            for (Task const& task : formula.labour) {
                auto const [time, cost] = spend(task, formula.name, run_.runs[i].driver(task.per));
                rising_[i].labour += cost;
                rising_[i].labour_minutes += time;
            }
        }
        for (CostLine& line : result_.lines) {
            if (line.sale.unit == nullptr) continue;
            for (Task const& task : line.sale.unit->labour) {
                auto const [time, cost] = spend(task, line.sale.unit->name, line.sale.count);
                line.direct[Category::labour] += cost;
                line.labour_minutes += time;
            }
        }
        for (Task const& task : shop_.order_work) {
            auto const [time, cost] = spend(task, "order", 1);
            pool_[Category::labour] += cost;
            pool_minutes_ += time;
        }
    }

    void spend_energy() {
        for (std::size_t index = 0; index < shop_.ovens.size(); ++index) {
            Oven const& oven = shop_.ovens[index];
            OvenUsed used;
            used.oven = index;
            std::vector<std::size_t> users;
            for (std::size_t i = 0; i < run_.runs.size(); ++i) {
                auto const& use = book_.formulas[run_.runs[i].formula].oven;
                if (!use || use->oven.index != index || !run_.runs[i].loads) continue;
                used.loads += *run_.runs[i].loads;
                used.minutes += *run_.runs[i].loads * use->minutes;
                users.push_back(i);
            }
            if (used.minutes.is_zero()) continue;
            used.preheat = oven.preheat;
            auto const energy = [&](Number const& time) {
                return Quantity{oven.power.amount * oven.duty.value() * time * 60,
                                Dimension::energy, nullptr};
            };
            MoneyRate const& tariff = shop_.tariffs[oven.fuel.index].rate;
            Quantity const all = energy(used.minutes + used.preheat);
            used.kilowatt_hours = all.amount / 3600000;
            used.cost = tariff.of(all);
            for (std::size_t const i : users) {
                Number const own =
                    *run_.runs[i].loads * book_.formulas[run_.runs[i].formula].oven->minutes;
                Number const with_preheat = own + used.preheat * own / used.minutes;
                rising_[i].energy += tariff.of(energy(with_preheat));
                rising_[i].oven_minutes += with_preheat;
            }
            result_.ovens.push_back(std::move(used));
        }
    }

    /// The part of a run's demand that so much of it is. A demand of 0 has no parts.
    static Number share(Number const& amount, FormulaRun const& run) {
        return run.demand.is_zero() ? Number() : amount / run.demand;
    }

    void run_up() {
        for (std::size_t i = run_.runs.size(); i-- > 0;) {
            FormulaRun const& run = run_.runs[i];
            Rising& own = rising_[i];
            Money of_a_batch = zero();
            for (BatchLine const& line : formulary_.with_losses[run.formula].lines) {
                if (line.is_formula) {
                    std::size_t const used = run_.run_of[line.index];
                    own.add(rising_[used], share(line.amount * run.made, run_.runs[used]));
                } else {
                    of_a_batch += charged(line.index) * line.bought;
                }
            }
            own.ingredients += of_a_batch * run.made;
            Money credit = zero();
            if (is_whole_ && book_.formulas[run.formula].keeps_leftover && run.made.is_positive()) {
                credit = own.ingredients * (run.leftover() / run.made);
                own.ingredients -= credit;
            }
            result_.formulas.push_back(
                {run, own.ingredients, own.consumables, own.labour, own.energy, std::move(credit)});
        }
        std::reverse(result_.formulas.begin(), result_.formulas.end());
        for (CostLine& line : result_.lines) {
            std::size_t const used = run_.run_of[line.sale.formula];
            Rising part;
            part.add(rising_[used], share(line.sale.count * line.sale.holds(), run_.runs[used]));
            line.direct[Category::ingredients] = part.ingredients;
            line.direct[Category::consumables] = part.consumables;
            line.direct[Category::labour] += part.labour;
            line.direct[Category::energy] = part.energy;
            line.labour_minutes += part.labour_minutes;
            line.oven_minutes = part.oven_minutes;
        }
    }

    /// Each line's ingredient cost at prices as purchased, of what is usable or of what is bought, in a
    /// world without whole pieces and batches.
    [[nodiscard]] std::vector<Money> ingredient_cost(Explosion const& world, Losses losses,
                                                     bool of_usable) const {
        std::vector<Money> rising(world.runs.size(), zero());
        for (std::size_t i = world.runs.size(); i-- > 0;) {
            FormulaRun const& run = world.runs[i];
            for (BatchLine const& line : formulary_.batches(losses)[run.formula].lines) {
                if (line.is_formula) {
                    std::size_t const used = world.run_of[line.index];
                    rising[i] += rising[used] * share(line.amount * run.made, world.runs[used]);
                } else {
                    rising[i] += purchase_of(line.index).unit_cost *
                                 ((of_usable ? line.amount : line.bought) * run.made);
                }
            }
        }
        std::vector<Money> lines;
        for (CostLine const& line : result_.lines) {
            std::size_t const used = world.run_of[line.sale.formula];
            lines.push_back(rising[used] *
                            share(line.sale.count * line.sale.holds(), world.runs[used]));
        }
        return lines;
    }

    void name_what_is_eaten(Explosion const& lossless) {
        std::map<std::size_t, Number> grams;
        for (FormulaRun const& run : lossless.runs)
            for (BatchLine const& line : formulary_.without_losses[run.formula].lines)
                if (!line.is_formula) grams[line.index] += line.amount * run.made;
        for (IngredientUse& use : result_.ingredients)
            use.eaten = use.purchase->unit_cost * grams[use.ingredient];
    }

    void divide_losses() {
        Explosion const lossless =
            explode(book_, formulary_, Losses::none, Wholes::none, request_.sales);
        Explosion const lossy =
            explode(book_, formulary_, Losses::all, Wholes::none, request_.sales);
        name_what_is_eaten(lossless);
        auto const eaten = ingredient_cost(lossless, Losses::none, true);
        auto const trimmed = ingredient_cost(lossless, Losses::none, false);
        auto const made = ingredient_cost(lossy, Losses::all, false);
        for (std::size_t i = 0; i < result_.lines.size(); ++i) {
            CostLine& line = result_.lines[i];
            line.loss = {eaten[i], trimmed[i] - eaten[i], made[i] - trimmed[i],
                         line.direct[Category::ingredients] - made[i]};
            result_.loss.in_the_piece += line.loss.in_the_piece;
            result_.loss.trim += line.loss.trim;
            result_.loss.process += line.loss.process;
            result_.loss.rounding += line.loss.rounding;
        }
    }

    void add_overhead_and_pool() {
        for (Overhead const& overhead : shop_.overheads) {
            OverheadUse use{&overhead, 0, zero(), zero()};
            for (CostLine& line : result_.lines) {
                Money const cost = overhead_of(overhead, line.labour_minutes, line.oven_minutes,
                                               line.pieces, line.direct, use);
                line.direct[Category::overhead] += cost;
                use.cost += cost;
            }
            Number const orders = overhead.driver == Overhead::Driver::order ? 1 : 0;
            Money pooled =
                overhead_of(overhead, pool_minutes_, 0, 0, pool_, use) + overhead.amount * orders;
            use.quantity += orders;
            use.cost += pooled;
            pool_[Category::overhead] += pooled;
            result_.overheads.push_back(std::move(use));
        }
        if (request_.delivery) {
            Money const drive =
                shop_.delivery_flat + shop_.delivery_rate.of(request_.delivery->distance);
            if (request_.delivery->charge == DeliveryCharge::in_price)
                pool_[Category::delivery] += drive;
            else
                result_.delivery_apart = drive;
        }
        Money all_direct = zero();
        for (CostLine const& line : result_.lines) all_direct += line.direct.total();
        for (CostLine& line : result_.lines) {
            Number const part = all_direct.is_zero() || result_.lines.size() == 1
                                    ? Number(1) / result_.lines.size()
                                    : line.direct.total() / all_direct;
            line.cost = line.direct;
            for (std::size_t i = 0; i < category_count; ++i)
                if (!pool_.amounts[i].is_zero()) line.cost.amounts[i] += pool_.amounts[i] * part;
            result_.total += line.cost;
        }
    }

    static Money overhead_of(Overhead const& overhead, Number const& labour_minutes,
                             Number const& oven_minutes, Number const& pieces,
                             CostByCategory const& direct, OverheadUse& use) {
        auto const by = [&](Number const& quantity) {
            use.quantity += quantity;
            return overhead.amount * quantity;
        };
        auto const of = [&](Money const& base) {
            use.base += base;
            return base * overhead.share.value();
        };
        switch (overhead.driver) {
        case Overhead::Driver::labour_hour: return by(labour_minutes / 60);
        case Overhead::Driver::oven_hour: return by(oven_minutes / 60);
        case Overhead::Driver::piece: return by(pieces);
        case Overhead::Driver::ingredients: return of(direct[Category::ingredients]);
        case Overhead::Driver::prime_cost: return of(direct.prime());
        case Overhead::Driver::order: break; // once, in the pool
        }
        return overhead.amount * 0;
    }

    Book const& book_;
    Shop const& shop_;
    Formulary const& formulary_;
    CostRequest const& request_;
    bool is_whole_;
    bool keeps_uses_;
    Explosion run_;
    std::vector<Rising> rising_; ///< by run
    std::vector<Money> charged_; ///< by ingredient: per gram or piece
    CostByCategory pool_;        ///< spent once for the order
    Number pool_minutes_;
    OrderCost result_;
};

} // namespace cost_engine

inline OrderCost run_up(Book const& book, Formulary const& formulary, CostRequest const& request) {
    return cost_engine::Engine(book, formulary, request).run();
}

} // namespace groat
