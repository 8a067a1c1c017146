#pragma once

#include <groat/cost/order_rollup.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/rounding.hpp>
#include <groat/cost/delivery_cost.hpp>
#include <groat/cost/rollup.hpp>
#include <groat/cost/standard_run.hpp>
#include <groat/cost/yield_split.hpp>

#include <algorithm>
#include <utility>

namespace groat {

namespace rollup_detail {

class OrderRollup {
public:
    OrderRollup(Book const& book, Formulary const& formulary,
                std::vector<std::optional<KeptGood>> const& kept, CostRequest const& request)
        : book_(book), shop_(book.shop), formulary_(formulary), kept_(kept), request_(request) {}

    OrderCost result() {
        made_.lines.resize(request_.sales.size());
        // without companions, made together is made alone
        bool const is_shared = !request_.companions.empty();
        make({CostedAs::alone, is_shared ? CostedAs::alone : CostedAs::made_together}, nullptr);
        if (is_shared && uses(CostedAs::made_together)) {
            std::vector<std::vector<Sale>> all = request_.companions;
            all.push_back(request_.sales);
            Shares const shares(book_, formulary_, all);
            make({CostedAs::made_together, CostedAs::made_together}, &shares);
        }
        for (std::size_t i = 0; i < request_.sales.size(); ++i)
            if (way_of(i) == CostedAs::usual_run) make_usual(i);
        result_.lines = std::move(made_.lines);
        if (request_.divides_losses)
            result_.loss =
                split_yield(book_, formulary_, request_.sales, result_.lines, made_.ingredients);
        add_overhead_and_pool();
        keep_record();
        return std::move(result_);
    }

private:
    [[nodiscard]] Money zero() const { return {0, shop_.currency}; }

    [[nodiscard]] CostedAs way_of(std::size_t sale) const {
        return request_.ways.empty() ? CostedAs::made_together : request_.ways[sale];
    }
    [[nodiscard]] bool uses(CostedAs way) const {
        for (std::size_t i = 0; i < request_.sales.size(); ++i)
            if (way_of(i) == way) return true;
        return false;
    }

    /// Costs all of the order in one way, and takes the lines from it that are costed so: each costs what it
    /// would if all were.
    void make(std::pair<CostedAs, CostedAs> const& ways, Shares const* shares) {
        std::vector<bool> wanted;
        for (std::size_t i = 0; i < request_.sales.size(); ++i)
            wanted.push_back(way_of(i) == ways.first || way_of(i) == ways.second);
        auto const count = std::count(wanted.begin(), wanted.end(), true);
        if (count == 0) return;
        // in exact parts there is nothing left over that could be kept
        KeptGoods const kept = request_.wholes != Wholes::all ? KeptGoods::made
                               : request_.makes_kept          ? KeptGoods::taken_below
                                                              : KeptGoods::taken;
        Explosion const run =
            explode(book_, formulary_, Losses::all, request_.wholes, request_.sales, kept);
        RollupTerms terms{request_.wholes == Wholes::all, request_.scope, request_.keeps_record,
                          shares};
        if (static_cast<std::size_t>(count) < wanted.size()) terms.wanted = wanted;
        Making made = roll_up(book_, formulary_, kept_, run, request_.sales, terms);
        for (std::size_t i = 0; i < wanted.size(); ++i)
            if (wanted[i]) made_.lines[i] = std::move(made.lines[i]);
        if (request_.keeps_record) made_.add_record(made, 1);
    }

    /// So many at what one costs in the standard run of its item.
    void make_usual(std::size_t place) {
        Sale const& sale = request_.sales[place];
        Sale const usual = standard_run(book_, formulary_, sale.formula, sale.unit).sale;
        Number const times = sale.count / usual.count;
        Explosion const run =
            explode(book_, formulary_, Losses::all, Wholes::all, {usual}, KeptGoods::taken);
        Making const made = roll_up(book_, formulary_, kept_, run, {usual},
                                    {true, Scope::run, request_.keeps_record});
        CostLine line = made.lines.front();
        line.sale = sale;
        line.direct = line.direct * times;
        line.labour_minutes *= times;
        line.oven_minutes *= times;
        line.pieces *= times;
        made_.lines[place] = std::move(line);
        if (request_.keeps_record) made_.add_record(made, times);
    }

    /// Work that is done so many times for all that is sold: its minutes and what they cost go to `minutes` and
    /// `cost`.
    void work(std::vector<Task> const& tasks, std::string const& where, Number const& times,
              Number& minutes, CostByCategory& cost) {
        for (Task const& task : tasks) {
            TaskUse use{&task, where, times, task.minutes * times, zero()};
            if (!task.is_unattended) {
                use.cost = shop_.labour_cost(task.role, use.minutes);
                minutes += use.minutes;
                cost[Category::labour] += use.cost;
            }
            if (request_.keeps_record) made_.tasks.push_back(std::move(use));
        }
    }

    void add_overhead_and_pool() {
        bool const is_order = request_.scope == Scope::order;
        if (is_order) work(shop_.order_work, "order", 1, pool_minutes_, pool_);
        if (!request_.counter_sales.is_zero())
            for (CostLine& line : result_.lines)
                work(shop_.counter_work, "counter", request_.counter_sales, line.labour_minutes,
                     line.direct);
        for (Overhead const& overhead : shop_.overheads) {
            OverheadUse use{&overhead, 0, zero(), zero()};
            bool const is_variable = overhead.is_variable.value_or(
                shop_.is_variable[static_cast<std::size_t>(Category::overhead)]);
            for (CostLine& line : result_.lines) {
                Money const cost = overhead_of(overhead, line.labour_minutes, line.oven_minutes,
                                               line.pieces, line.direct, use);
                line.direct[Category::overhead] += cost;
                if (is_variable) line.direct.variable_overhead += cost;
                use.cost += cost;
            }
            Number const orders =
                is_order && overhead.driver == Overhead::Driver::order ? Number(1) : Number();
            Money pooled =
                overhead_of(overhead, pool_minutes_, 0, 0, pool_, use) + overhead.amount * orders;
            use.quantity += orders;
            use.cost += pooled;
            pool_[Category::overhead] += pooled;
            if (is_variable) pool_.variable_overhead += pooled;
            result_.overheads.push_back(std::move(use));
        }
        if (request_.delivery) {
            Money const drive = delivery_cost(shop_, *request_.delivery).total();
            if (request_.delivery->charge == DeliveryCharge::in_price)
                pool_[Category::delivery] += drive;
            else
                result_.delivery_apart = drive;
        }
        share_pool();
    }

    /// In proportion to what the lines cost by themselves.
    void share_pool() {
        Money all_direct = zero();
        for (CostLine const& line : result_.lines) all_direct += line.direct.total();
        for (CostLine& line : result_.lines) {
            Number const part = all_direct.is_zero() || result_.lines.size() == 1
                                    ? Number(1) / result_.lines.size()
                                    : line.direct.total() / all_direct;
            line.cost = line.direct;
            for (std::size_t i = 0; i < category_count; ++i)
                if (!pool_.amounts[i].is_zero()) line.cost.amounts[i] += pool_.amounts[i] * part;
            line.cost.variable_overhead += pool_.variable_overhead * part;
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

    /// Of each thing used, its purchase and the packs that it takes.
    void settle(std::map<std::size_t, IngredientUse>& uses, std::vector<IngredientUse>& all) {
        for (auto& [index, use] : uses) {
            use.purchase = formulary_.costs.purchases[index];
            if (use.cost.is_zero()) use.cost += zero();
            use.outlay = use.purchase->unit_cost * use.bought;
            if (!book_.ingredients[index].is_metered) {
                use.packs = ceiling(use.bought / use.purchase->content).numerator();
                use.outlay = use.purchase->pack_outlay * Number(use.packs);
            }
            all.push_back(std::move(use));
        }
    }

    void keep_record() {
        settle(made_.ingredients, result_.ingredients);
        settle(made_.supplies, result_.supplies);
        for (auto& [place, use] : made_.formulas) result_.formulas.push_back(std::move(use));
        for (auto& [index, used] : made_.ovens) result_.ovens.push_back(std::move(used));
        result_.tasks = std::move(made_.tasks);
    }

    Book const& book_;
    Shop const& shop_;
    Formulary const& formulary_;
    std::vector<std::optional<KeptGood>> const& kept_;
    CostRequest const& request_;
    Making made_;
    CostByCategory pool_; ///< spent once for the order
    Number pool_minutes_;
    OrderCost result_;
};

} // namespace rollup_detail

GROAT_INLINE OrderCost roll_up_order(Book const& book, Formulary const& formulary,
                                     std::vector<std::optional<KeptGood>> const& kept,
                                     CostRequest const& request) {
    return rollup_detail::OrderRollup(book, formulary, kept, request).result();
}

} // namespace groat
