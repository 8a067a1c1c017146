#pragma once

#include <groat/cost/steps.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/rounding.hpp>
#include <groat/cost/pace.hpp>

#include <map>
#include <stdexcept>
#include <utility>

namespace groat {

namespace steps_detail {

class Looker {
public:
    Looker(Book const& book, Formulary const& formulary, std::vector<Sale> const& sales,
           std::size_t line)
        : book_(book), formulary_(formulary), sales_{sales[line]} {
        stand_in_for_the_rest(sales, line);
    }

    std::optional<std::vector<Integer>> within(Integer const& first, Integer const& last,
                                               std::size_t most_looked_at) {
        most_looked_at_ = most_looked_at;
        Spread const start = at(first);
        Spread const end = at(last);
        set_paces(start, end);
        keep(first, start);
        if (first < last) {
            Integer const next = first + 1;
            look(next, at(next), last, end);
        }
        if (looked_at_ > most_looked_at_) return std::nullopt;
        std::vector<Integer> counts;
        for (auto const& [count, ratios] : kept_) counts.push_back(count);
        return counts;
    }

private:
    /// At one count: what is paid for, and what is wanted of that for which it is.
    struct Spread {
        std::vector<Number> paid;
        std::vector<Number> over;
    };

    /// What is kept costs the same for each that is taken, so it needs no look, and is made nowhere here.
    [[nodiscard]] Explosion made_for(std::vector<Sale> const& sales) const {
        return explode(book_, formulary_, Losses::all, Wholes::all, sales, KeptGoods::taken);
    }

    /// What other lines take, of what this one takes as well, is the same whatever its count: it stands in `sales_` as
    /// amounts of those formulas, and in `elsewhere_` where only whole packs of an ingredient are shared.
    void stand_in_for_the_rest(std::vector<Sale> const& sales, std::size_t line) {
        std::vector<bool> is_own(book_.formulas.size(), false);
        for (FormulaRun const& run : made_for({sales[line]}).runs) is_own[run.formula] = true;
        std::map<std::size_t, Number> taken;
        for (std::size_t i = 0; i < sales.size(); ++i) {
            if (i == line) continue;
            if (is_own[sales[i].formula])
                taken[sales[i].formula] += sales[i].count * sales[i].holds();
            take_packing(sales[i], elsewhere_);
        }
        for (FormulaRun const& run : made_for(sales).runs) {
            if (is_own[run.formula]) continue;
            take_run(run, elsewhere_);
            if (run.is_taken) continue;
            for (BatchLine const& each : formulary_.with_losses[run.formula].lines)
                if (each.is_formula && is_own[each.index])
                    taken[each.index] += each.amount * run.made;
        }
        for (auto const& [formula, amount] : taken)
            if (amount.is_positive()) sales_.push_back({formula, nullptr, amount});
    }

    Spread at(Integer const& count) {
        ++looked_at_;
        sales_.front().count = count;
        Explosion const explosion = made_for(sales_);
        Spread result;
        auto const fill_up = [&](Number const& over) {
            result.over.resize(result.paid.size(), over);
        };
        for (FormulaRun const& run : explosion.runs) {
            if (run.is_taken) continue;
            add_paid(book_.formulas[run.formula], making_of(run), result.paid);
            fill_up(run.demand);
        }
        add_packing(Number(count), result.paid);
        fill_up(count);
        add_packs(explosion, result);
        return result;
    }

    template <class T> void add_packing(T const& count, std::vector<T>& paid) const {
        if (sales_.front().unit == nullptr) return;
        for (Consumption const& use : sales_.front().unit->packing)
            paid.push_back(rounded_up(times(count, use.amount), 1));
    }

    /// What is bought of all that is charged by whole packs.
    using Bought = std::map<std::size_t, Number>;
    void take(std::size_t index, Number const& amount, Bought& bought) const {
        Ingredient const& each = book_.ingredients[index];
        if (each.buys_whole_packs && !each.is_metered) bought[index] += amount;
    }
    void take_run(FormulaRun const& run, Bought& bought) const {
        if (!run.is_taken)
            for (BatchLine const& line : formulary_.with_losses[run.formula].lines)
                if (!line.is_formula) take(line.index, line.bought * run.made, bought);
        for (Consumption const& use : book_.formulas[run.formula].consumables)
            if (!run.is_taken || use.per == Per::order)
                take(use.supply.index, ceiling(use.amount * run.driver(use)), bought);
    }
    void take_packing(Sale const& sale, Bought& bought) const {
        if (sale.unit == nullptr) return;
        for (Consumption const& use : sale.unit->packing)
            take(use.supply.index, ceiling(use.amount * sale.count), bought);
    }

    /// Whole packs over what is bought, of what this line buys.
    void add_packs(Explosion const& explosion, Spread& spread) {
        Bought bought;
        for (FormulaRun const& run : explosion.runs) take_run(run, bought);
        take_packing(sales_.front(), bought);
        pack_contents_.clear();
        for (auto const& [index, own] : bought) {
            auto const other = elsewhere_.find(index);
            Number const amount = other == elsewhere_.end() ? own : own + other->second;
            Number const& content = formulary_.costs.purchases[index]->content;
            pack_contents_.push_back(content);
            spread.paid.push_back(ceiling(amount / content));
            spread.over.push_back(amount);
        }
    }

    /// Takes as paces those of `at`, in its order, and drops what is the same from start to end: for each wanted that
    /// only falls.
    void set_paces(Spread const& start, Spread const& end) {
        Explosion const explosion = made_for(sales_);
        std::vector<Number> grains(explosion.runs.size());
        auto const take = [&](std::size_t formula, Number const& grain) {
            Number& own = grains[explosion.run_of[formula]];
            own = own.is_zero() ? grain : common_grain(own, grain);
        };
        take(sales_.front().formula, sales_.front().holds());
        for (std::size_t i = 1; i < sales_.size(); ++i) take(sales_[i].formula, sales_[i].count);
        std::vector<Pace> paces;
        for (std::size_t i = 0; i < explosion.runs.size(); ++i) {
            if (explosion.runs[i].is_taken) continue;
            std::size_t const formula = explosion.runs[i].formula;
            Batch const& batch = formulary_.with_losses[formula];
            Making<Pace> const making =
                making_of(book_.formulas[formula], batch, {1, 0, grains[i]});
            add_paid(book_.formulas[formula], making, paces);
            for (BatchLine const& line : batch.lines)
                if (line.is_formula) take(line.index, line.amount * making.made.grain);
        }
        add_packing(Pace{1, 0, 1}, paces);
        for (Number const& content : pack_contents_) paces.push_back({1 / content, 1, 0});
        if (paces.size() != start.paid.size()) throw std::logic_error("a quantity without a pace");
        for (std::size_t i = 0; i < paces.size(); ++i)
            if (start.paid[i] != end.paid[i]) rising_.emplace_back(i, paces[i]);
    }

    void keep(Integer const& count, Spread const& spread) {
        std::vector<Number> ratios;
        for (auto const& [i, pace] : rising_) ratios.push_back(spread.paid[i] / spread.over[i]);
        kept_.emplace_back(count, std::move(ratios));
    }

    /// Whether one that is kept is at least as dear as every count from that of `low` to that of `high`.
    [[nodiscard]] bool is_covered(Spread const& low, Spread const& high) const {
        std::vector<Number> most;
        for (auto const& [i, pace] : rising_) {
            Number const even = pace.rate + pace.slack / low.over[i];
            Number const seen = high.paid[i] / low.over[i];
            most.push_back(std::min(even, seen));
        }
        return std::any_of(kept_.rbegin(), kept_.rend(), [&](auto const& each) {
            return std::equal(most.begin(), most.end(), each.second.begin(),
                              [](Number const& a, Number const& b) { return a <= b; });
        });
    }

    /// Keeps what has to be kept of a range, from the left.
    void look(Integer const& low, Spread const& at_low, Integer const& high,
              Spread const& at_high) {
        if (looked_at_ > most_looked_at_ || is_covered(at_low, at_high)) return;
        if (low == high) return keep(low, at_low);
        if (low + 1 == high) {
            look(low, at_low, low, at_low);
            return look(high, at_high, high, at_high);
        }
        Integer const middle = (low + high) / 2;
        {
            Spread const at_middle = middle == low ? at_low : at(middle);
            look(low, at_low, middle, at_middle);
        }
        Integer const next = middle + 1;
        look(next, next == high ? at_high : at(next), high, at_high);
    }

    Book const& book_;
    Formulary const& formulary_;
    std::vector<Sale> sales_; ///< the line, then what others take of its formulas
    std::map<std::size_t, Number> elsewhere_;
    std::vector<Number> pack_contents_;
    std::vector<std::pair<std::size_t, Pace>> rising_; ///< place in a spread
    std::vector<std::pair<Integer, std::vector<Number>>> kept_;
    std::size_t looked_at_ = 0;
    std::size_t most_looked_at_ = 0;
};

} // namespace steps_detail

GROAT_INLINE std::optional<std::vector<Integer>> dearest_counts(
    Book const& book, Formulary const& formulary, std::vector<Sale> const& sales, std::size_t line,
    Integer const& first, Integer const& last, std::size_t most_looked_at) {
    return steps_detail::Looker(book, formulary, sales, line).within(first, last, most_looked_at);
}

} // namespace groat
