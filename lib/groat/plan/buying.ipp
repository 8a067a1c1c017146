#pragma once

#include <groat/plan/buying.hpp>

#include <groat/base/linkage.hpp>
#include <groat/cost/shares.hpp>
#include <groat/measure/costed_unit.hpp>
#include <groat/plan/shelf.hpp>
#include <groat/price/compare.hpp>
#include <groat/price/line_price.hpp>
#include <groat/solve/purchase_to_market.hpp>

namespace groat {

GROAT_INLINE Money Buying::worth_left() const {
    Money sum;
    for (Need const& need : needs) sum += need.worth();
    return sum;
}

namespace buying_detail {

class Buyer : quoting_detail::Pricer {
public:
    Buyer(Costing const& costing, std::vector<Order const*> const& orders, Diagnostics& found,
          std::uint64_t work)
        : Pricer(costing, found), work_(work) {
        result_.date = costing.date();
        result_.kept = Kept(costing.linked());
        result_.orders = result_.kept.copies_of(orders);
    }

    std::optional<Buying> result() {
        auto needs = needs_of(costing_, result_.orders, found_);
        if (!needs) return std::nullopt;
        result_.needs = *std::move(needs);
        std::size_t const errors = found_.errors_met();
        pose();
        if (found_.errors_met() != errors) return std::nullopt;
        if (!solve()) return std::nullopt;
        look_at_other_ways();
        return std::move(result_);
    }

private:
    /// The problem: an item for each need of which something is to be bought.
    void pose() {
        for (Supplier const& supplier : book_.suppliers) {
            PurchaseSupplier& terms = problem_.suppliers.emplace_back();
            terms.delivery = supplier.delivery.value_or(zero()).amount();
            terms.minimum = supplier.minimum_order.value_or(zero()).amount();
            if (supplier.free_delivery_from)
                terms.free_from = supplier.free_delivery_from->amount();
        }
        for (std::size_t i = 0; i < result_.needs.size(); ++i) {
            if (result_.needs[i].to_buy().is_zero()) continue;
            problem_.demands.push_back(result_.needs[i].to_buy());
            items_.push_back(i);
            auto const in_force =
                offers_in_force(book_, result_.needs[i].ingredient(), result_.date);
            if (!in_force) {
                found_.error(book_.ingredients[result_.needs[i].ingredient()].origin,
                             in_force.error());
                continue;
            }
            std::vector<std::size_t> offers = *in_force;
            std::erase_if(offers, [&](std::size_t each) {
                return is_only_compared(book_.offers[each], book_);
            });
            // A preferred supplier who has nothing of it is no reason to buy nothing.
            Reference const& preferred =
                book_.ingredients[result_.needs[i].ingredient()].preferred_supplier;
            auto const is_preferred = [&](std::size_t each) {
                return book_.offers[each].supplier == preferred.index;
            };
            if (std::any_of(offers.begin(), offers.end(), is_preferred))
                std::erase_if(offers, [&](std::size_t each) { return !is_preferred(each); });
            for (std::size_t const offer : offers) add_offer(offer, i);
        }
    }

    void add_offer(std::size_t index, std::size_t need) {
        Offer const& offer = book_.offers[index];
        Ingredient const& ingredient = book_.ingredients[result_.needs[need].ingredient()];
        Number content = *content_of(offer, ingredient);
        IngredientUse const& use = result_.needs[need].use;
        Number ratio = yield_of(offer, ingredient).value() / use.purchase->yield.value();
        if (use.bought_so == use.bought || (use.bought_so.is_positive() && ratio > 1)) ratio = 1;
        PurchaseOffer entry;
        entry.supplier = offer.supplier;
        entry.item = problem_.demands.size() - 1;
        entry.content = content * ratio;
        entry.price = pack_price_at(offer, 1);
        for (PriceBreak const& each : offer.breaks) {
            Integer const packs = each.packs.numerator();
            PackPrice const price = pack_price_at(offer, packs);
            if (packs <= 1) continue;
            if (!entry.breaks.empty() && entry.breaks.back().packs == packs)
                entry.breaks.back().price = price;
            else
                entry.breaks.push_back({packs, price});
        }
        entry.most_packs = offer.most_packs;
        problem_.offers.push_back(std::move(entry));
        offers_.push_back(index);
    }

    static PackPrice pack_price_at(Offer const& offer, Integer const& packs) {
        Money const price = pack_price(offer, packs);
        return {offer.untaxed(price + offer.freight + offer.deposit).amount(), price.amount()};
    }

    bool solve() {
        result_.total = result_.bound = zero();
        if (problem_.demands.empty()) return true;
        bool is_blocked = false;
        for (PurchaseObstacle const& obstacle : purchase_obstacles(problem_)) {
            report(obstacle);
            is_blocked = true;
        }
        if (is_blocked) return false;
        auto const plan = cheapest_purchase(problem_, work_);
        if (!plan) {
            found_.error(result_.orders.front()->origin, plan.error());
            return false;
        }
        result_.total = money(plan->total);
        result_.bound = money(plan->bound);
        result_.baskets = baskets_of(plan->packs);
        for (Basket const& basket : result_.baskets)
            for (PackLine const& line : basket.lines) warn_of_stale_price(book_.offers[line.offer]);
        for (std::size_t i = 0; i < plan->packs.size(); ++i) {
            if (plan->packs[i] == 0) continue;
            Need& need = result_.needs[items_[problem_.offers[i].item]];
            need.bought += problem_.offers[i].content * Number(plan->packs[i]);
            need.cost += line_of(i, plan->packs[i]).cost();
        }
        look_ahead(plan->packs);
        return true;
    }

    /// The purchase that is least after what its leftovers will be used for.
    void look_ahead(std::vector<Integer> const& least) {
        PurchaseProblem problem = problem_;
        bool is_any_useful = false;
        for (std::size_t const item : items_) {
            Need const& need = result_.needs[item];
            problem.uses.push_back({need.useful(), need.use.purchase->unit_cost.amount()});
            is_any_useful = is_any_useful || need.useful().is_positive();
        }
        if (!is_any_useful) return;
        auto const plan = cheapest_purchase(problem, work_ / 4);
        if (!plan) return;
        BuyingAhead ahead;
        ahead.baskets = baskets_of(plan->packs);
        ahead.left = leftovers_of(plan->packs);
        ahead.total = money(plan->total);
        ahead.worth = money(plan->worth);
        ahead.bound = money(plan->bound);
        ahead.least_worth = zero();
        std::vector<Leftover> least_left = leftovers_of(least);
        for (Leftover const& each : least_left) ahead.least_worth += each.worth;
        if (result_.total - ahead.least_worth <= ahead.net()) {
            ahead.baskets = result_.baskets;
            ahead.left = std::move(least_left);
            ahead.total = result_.total;
            ahead.worth = ahead.least_worth;
        }
        result_.ahead = std::move(ahead);
    }

    [[nodiscard]] std::vector<Leftover> leftovers_of(std::vector<Integer> const& packs) const {
        std::vector<Leftover> result;
        for (std::size_t item = 0; item < items_.size(); ++item) {
            Need const& need = result_.needs[items_[item]];
            Leftover left{items_[item], Number() - need.to_buy(), 0, zero()};
            for (std::size_t i = 0; i < packs.size(); ++i)
                if (problem_.offers[i].item == item)
                    left.left += problem_.offers[i].content * Number(packs[i]);
            left.used = std::min(left.left, need.useful());
            left.worth = need.use.purchase->unit_cost * left.used;
            result.push_back(std::move(left));
        }
        return result;
    }

    void report(PurchaseObstacle const& obstacle) {
        Need const& need = result_.needs[items_[obstacle.item]];
        Ingredient const& ingredient = book_.ingredients[need.ingredient()];
        Number most;
        Span where = ingredient.origin;
        for (std::size_t i = 0; i < offers_.size(); ++i) {
            PurchaseOffer const& offer = problem_.offers[i];
            if (offer.item != obstacle.item) continue;
            where = book_.offers[offers_[i]].origin;
            if (offer.most_packs) most += offer.content * Number(*offer.most_packs);
        }
        std::string const wanted = amount_words(need.to_buy(), ingredient);
        if (obstacle.kind == PurchaseObstacle::Kind::unreached_order)
            found_.error(where, "minimum-unreached",
                         fmt::format("{} of '{}' are to be bought, but nobody who sells it can be "
                                     "given an order that reaches their minimum",
                                     wanted, ingredient.name),
                         "raise 'most packs', lower 'minimum' under 'terms', or add another offer");
        else
            found_.error(where, "too-few-packs",
                         fmt::format("{} of '{}' are to be bought, but all that may be had is {}",
                                     wanted, ingredient.name, amount_words(most, ingredient)),
                         "raise 'most packs' of this offer, or add another offer");
    }

    static std::string amount_words(Number const& amount, Ingredient const& ingredient) {
        return amount_text(amount, ingredient.costed_by());
    }

    /// So many packs of an offer of the problem.
    [[nodiscard]] PackLine line_of(std::size_t index, Integer const& packs) const {
        Offer const& offer = book_.offers[offers_[index]];
        Number const count(packs);
        PackLine line;
        line.offer = offers_[index];
        line.packs = packs;
        line.price = pack_price(offer, packs);
        line.goods = offer.untaxed(line.price) * count;
        line.freight = offer.untaxed(offer.freight) * count;
        line.deposit = offer.untaxed(offer.deposit) * count;
        return line;
    }

    [[nodiscard]] std::vector<Basket> baskets_of(std::vector<Integer> const& packs) const {
        std::vector<Basket> baskets;
        for (std::size_t supplier = 0; supplier < book_.suppliers.size(); ++supplier) {
            Basket basket{supplier, {}, zero(), zero(), zero(), zero(), zero()};
            for (std::size_t i = 0; i < packs.size(); ++i) {
                if (problem_.offers[i].supplier != supplier || packs[i] == 0) continue;
                PackLine line = line_of(i, packs[i]);
                basket.listed += line.price * Number(line.packs);
                basket.goods += line.goods;
                basket.freight += line.freight;
                basket.deposit += line.deposit;
                basket.lines.push_back(std::move(line));
            }
            if (basket.lines.empty()) continue;
            basket.delivery = zero() + book_.suppliers[supplier].delivery_of(basket.listed);
            baskets.push_back(std::move(basket));
        }
        return baskets;
    }

    void look_at_other_ways() {
        OtherWay& usual = result_.by_unit_price;
        usual.total = zero();
        std::vector<Money> listed(book_.suppliers.size(), zero());
        std::vector<bool> is_used(book_.suppliers.size());
        for (std::size_t const item : items_) {
            Purchase const& purchase = *result_.needs[item].use.purchase;
            Offer const& offer = book_.offers[purchase.offer];
            Integer const packs =
                ceiling(result_.needs[item].to_buy() / purchase.content).numerator();
            PackPrice const price = pack_price_at(offer, packs);
            usual.total += money(price.cost * Number(packs));
            listed[offer.supplier] += money(price.counted * Number(packs));
            is_used[offer.supplier] = true;
            if (offer.most_packs && packs > *offer.most_packs) usual.misses_minimum = true;
        }
        for (std::size_t s = 0; s < is_used.size(); ++s) {
            if (!is_used[s]) continue;
            usual.total += money(problem_.suppliers[s].delivery_of(listed[s].amount()));
            if (listed[s].amount() < problem_.suppliers[s].minimum) usual.misses_minimum = true;
        }
        if (items_.empty()) return;
        std::size_t fewest = 0;
        for (std::size_t s = 0; s < book_.suppliers.size(); ++s) {
            auto const obstacles = purchase_obstacles(problem_, s);
            if (result_.closest && obstacles.size() >= fewest) continue;
            result_.closest = s;
            fewest = obstacles.size();
            result_.closest_lacks.clear();
            for (PurchaseObstacle const& each : obstacles)
                result_.closest_lacks.push_back(result_.needs[items_[each.item]].ingredient());
        }
        if (fewest > 0) return;
        if (auto const single = cheapest_single_purchase(problem_, work_)) {
            result_.single = single->supplier;
            result_.single_total = money(single->purchase.total);
        }
    }

    [[nodiscard]] Money zero() const { return {0, shop_.currency}; }
    [[nodiscard]] Money money(Number const& amount) const { return {amount, shop_.currency}; }

    std::uint64_t work_;
    Buying result_;
    PurchaseProblem problem_;
    std::vector<std::size_t> items_;  ///< by item of the problem: the need
    std::vector<std::size_t> offers_; ///< by offer of the problem: the book's
};

} // namespace buying_detail

GROAT_INLINE std::optional<Buying> buy(Costing const& costing,
                                       std::vector<Order const*> const& orders, Diagnostics& found,
                                       std::uint64_t work) {
    return buying_detail::Buyer(costing, orders, found, work).result();
}

} // namespace groat
