#pragma once

#include <groat/solve/purchase_to_market.hpp>

#include <groat/base/linkage.hpp>

#include <algorithm>

namespace groat::purchasing {

GROAT_INLINE Integer divided_up(Integer const& a, Integer const& b) { return (a + b - 1) / b; }

GROAT_INLINE Integer count(Number const& number, Number const& unit) {
    return number.is_zero() ? Integer(0) : (number / unit).numerator();
}

GROAT_INLINE Integer count_up(Number const& number, Number const& unit) {
    if (number.is_zero()) return 0;
    Number const ratio = number / unit;
    return divided_up(ratio.numerator(), ratio.denominator());
}

GROAT_INLINE std::optional<Number> most_counted(PurchaseOffer const& offer) {
    Number most;
    PackPrice price = offer.price;
    auto const consider = [&](Integer const& packs) {
        Integer const within =
            offer.most_packs && *offer.most_packs < packs ? *offer.most_packs : packs;
        most = std::max(most, price.counted * Number(within));
    };
    for (PackBreak const& each : offer.breaks) {
        if (offer.most_packs && *offer.most_packs < each.packs) break;
        consider(each.packs - 1);
        price = each.price;
    }
    if (!offer.most_packs && price.counted.is_positive()) return std::nullopt;
    if (offer.most_packs) consider(*offer.most_packs);
    return most;
}

GROAT_INLINE std::vector<bool> reachable(PurchaseProblem const& problem) {
    std::vector<Number> most(problem.suppliers.size());
    std::vector<bool> result(problem.suppliers.size());
    for (PurchaseOffer const& offer : problem.offers) {
        std::optional<Number> const counted = most_counted(offer);
        if (!counted)
            result[offer.supplier] = true;
        else
            most[offer.supplier] += *counted;
    }
    for (std::size_t s = 0; s < result.size(); ++s)
        result[s] = result[s] || most[s] >= problem.suppliers[s].minimum;
    return result;
}

GROAT_INLINE Bid<Integer> to_bid(PurchaseOffer const& offer, Integer const& demand,
                                 Integer const& minimum, Number const& content_unit,
                                 Number const& unit) {
    Bid<Integer> bid;
    bid.item = offer.item;
    bid.supplier = offer.supplier;
    bid.content = count(offer.content, content_unit);
    auto const add = [&](Integer const& from, PackPrice const& price) {
        if (offer.most_packs && from > *offer.most_packs) return;
        if (!bid.tiers.empty()) bid.tiers.back().to = from - 1;
        bid.tiers.push_back({from, from, count(price.cost, unit), count(price.counted, unit)});
    };
    add(1, offer.price);
    for (PackBreak const& each : offer.breaks) add(each.packs, each.price);
    if (bid.tiers.empty()) return bid;
    Tier<Integer>& last = bid.tiers.back();
    Integer useful = std::max(last.from, divided_up(demand, bid.content));
    if (last.counted > 0) useful = std::max(useful, divided_up(minimum, last.counted));
    bid.most = offer.most_packs && *offer.most_packs < useful ? *offer.most_packs : useful;
    last.to = bid.most;
    bid.is_unlimited = !offer.most_packs;
    return bid;
}

GROAT_INLINE void add_worths(Market<Integer>& market) {
    std::vector<bool> is_known(market.suppliers.size());
    for (Terms<Integer>& terms : market.suppliers) terms.most_worth = 0;
    for (Bid<Integer> const& bid : market.bids) {
        for (Tier<Integer> const& tier : bid.tiers) {
            if (tier.counted == 0) continue;
            Integer const worth = tier.cost * market.grid / tier.counted;
            Integer& most = market.suppliers[bid.supplier].most_worth;
            if (!is_known[bid.supplier] || worth < most) most = worth;
            is_known[bid.supplier] = true;
        }
    }
}

GROAT_INLINE bool is_of_use(LeftoverUse const& use) {
    return use.useful.is_positive() && use.worth.is_positive();
}

GROAT_INLINE std::vector<std::optional<Number>> free_minimums(PurchaseProblem const& problem) {
    PurchaseProblem free = problem;
    std::vector<std::optional<Number>> result(problem.suppliers.size());
    for (std::size_t s = 0; s < result.size(); ++s) {
        PurchaseSupplier const& supplier = problem.suppliers[s];
        if (!supplier.free_from || supplier.delivery.is_zero()) continue;
        result[s] = std::max(*supplier.free_from, supplier.minimum);
        free.suppliers[s].minimum = *result[s];
    }
    std::vector<bool> const can_use = reachable(free);
    for (std::size_t s = 0; s < result.size(); ++s)
        if (!can_use[s]) result[s].reset();
    return result;
}

GROAT_INLINE Market<Integer> to_market(PurchaseProblem const& problem) {
    std::vector<bool> const can_use = reachable(problem);
    std::vector<Measure> contents(problem.demands.size());
    std::vector<Measure> counted(problem.suppliers.size());
    Measure paid;
    for (PurchaseSupplier const& supplier : problem.suppliers) paid.add(supplier.delivery);
    for (PurchaseOffer const& offer : problem.offers) {
        contents[offer.item].add(offer.content);
        auto const add = [&](PackPrice const& price) {
            paid.add(price.cost);
            counted[offer.supplier].add(price.counted);
        };
        add(offer.price);
        for (PackBreak const& each : offer.breaks) add(each.price);
    }
    for (std::size_t i = 0; i < problem.demands.size(); ++i) {
        LeftoverUse const use = problem.use(i);
        if (!is_of_use(use)) continue;
        contents[i].add(problem.demands[i] + use.useful);
        paid.add(use.worth * contents[i].value());
    }
    Measure money = paid;
    for (Measure const& each : counted) money.add(each.value());

    Market<Integer> market;
    market.unit = money.value().is_zero() ? Number(1) : money.value();
    market.step = std::max(Integer(1), count(paid.value(), market.unit));
    market.grid = Integer(1) << 20;
    market.ceiling = market.step;
    for (std::size_t s = 0; s < problem.suppliers.size(); ++s) {
        PurchaseSupplier const& supplier = problem.suppliers[s];
        Terms<Integer> terms{count(supplier.delivery, market.unit), 0, 0};
        Number const least = counted[s].value();
        if (!least.is_zero())
            terms.minimum = count_up(supplier.minimum, least) * count(least, market.unit);
        market.ceiling += terms.fee;
        market.suppliers.push_back(terms);
        market.twin.push_back(s);
    }
    std::vector<std::optional<Number>> const free = free_minimums(problem);
    for (std::size_t s = 0; s < free.size(); ++s) {
        if (!free[s]) continue;
        Number const least = counted[s].value();
        Terms<Integer> terms{0, 0, 0};
        if (!least.is_zero()) terms.minimum = count_up(*free[s], least) * count(least, market.unit);
        market.twin[s] = market.suppliers.size();
        market.suppliers.push_back(terms);
        market.twin.push_back(s);
    }
    std::vector<std::vector<std::size_t>> offers_of(problem.demands.size());
    for (std::size_t o = 0; o < problem.offers.size(); ++o)
        offers_of[problem.offers[o].item].push_back(o);
    for (std::size_t i = 0; i < problem.demands.size(); ++i) {
        Item<Integer> item;
        Number const content_unit = contents[i].value().is_zero() ? Number(1) : contents[i].value();
        item.demand = count_up(problem.demands[i], content_unit);
        item.most_short = item.short_price = 0;
        if (LeftoverUse const use = problem.use(i); is_of_use(use)) {
            Integer const all = count(problem.demands[i] + use.useful, content_unit);
            item.most_short = all - item.demand;
            item.short_price = count(use.worth * content_unit, market.unit);
            item.demand = all;
            market.ceiling += item.demand * item.short_price;
        }
        item.first_bid = market.bids.size();
        item.first_link = market.link_supplier.size();
        for (std::size_t const o : offers_of[i]) {
            PurchaseOffer const& offer = problem.offers[o];
            if (!can_use[offer.supplier]) continue;
            std::size_t const twin = market.twin[offer.supplier];
            for (std::size_t const s : {offer.supplier, twin}) {
                Bid<Integer> bid = to_bid(offer, item.demand, market.suppliers[s].minimum,
                                          content_unit, market.unit);
                if (bid.tiers.empty() || bid.most == 0) break;
                bid.offer = o;
                bid.supplier = s;
                auto const links = market.link_supplier.begin();
                auto const known = std::find(links + static_cast<std::ptrdiff_t>(item.first_link),
                                             market.link_supplier.end(), s);
                bid.link = static_cast<std::size_t>(known - links);
                if (known == market.link_supplier.end()) market.link_supplier.push_back(s);
                for (Tier<Integer> const& tier : bid.tiers) market.ceiling += tier.to * tier.cost;
                market.bids.push_back(std::move(bid));
                if (twin == offer.supplier) break;
            }
        }
        item.end_bid = market.bids.size();
        item.end_link = market.link_supplier.size();
        market.items.push_back(std::move(item));
    }
    add_worths(market);
    return market;
}

GROAT_INLINE std::pair<unsigned, unsigned> bits(Market<Integer> const& market) {
    Integer money = market.ceiling;
    Integer content = 1;
    for (Terms<Integer> const& terms : market.suppliers) money += terms.minimum;
    for (Bid<Integer> const& bid : market.bids) {
        for (Tier<Integer> const& tier : bid.tiers) money += tier.to * tier.counted;
        content = std::max(content, Integer(bid.most * bid.content * Integer(market.bids.size())));
    }
    for (Item<Integer> const& item : market.items) content = std::max(content, item.demand);
    money *=
        Integer(market.items.size() + 1); // each item may bear a supplier's whole fee as its share
    return {msb(money) + 1, msb(content) + 1};
}

GROAT_INLINE bool fits_64_bits(Market<Integer> const& market) {
    auto const [money, content] = bits(market);
    return money <= 48 && content <= 60;
}

GROAT_INLINE Market<std::int64_t> to_64_bits(Market<Integer> const& market) {
    auto const narrow = [](Integer const& value) { return static_cast<std::int64_t>(value); };
    unsigned const room = std::min(18U, 56 - bits(market).first);
    Market<Integer> coarse = market;
    coarse.grid = Integer(1) << room;
    add_worths(coarse);
    Market<std::int64_t> result;
    for (Item<Integer> const& item : market.items)
        result.items.push_back({narrow(item.demand), narrow(item.most_short),
                                narrow(item.short_price), item.first_bid, item.end_bid,
                                item.first_link, item.end_link});
    for (Bid<Integer> const& bid : market.bids) {
        Bid<std::int64_t> copy{bid.offer,           bid.item,         bid.supplier,    bid.link,
                               narrow(bid.content), narrow(bid.most), bid.is_unlimited};
        for (Tier<Integer> const& tier : bid.tiers)
            copy.tiers.push_back(
                {narrow(tier.from), narrow(tier.to), narrow(tier.cost), narrow(tier.counted)});
        result.bids.push_back(std::move(copy));
    }
    // A worth beyond all money would be the same as one at its edge.
    Integer const edge = Integer(1) << 60;
    for (Terms<Integer> const& terms : coarse.suppliers)
        result.suppliers.push_back(
            {narrow(terms.fee), narrow(terms.minimum), narrow(std::min(terms.most_worth, edge))});
    result.twin = market.twin;
    result.link_supplier = market.link_supplier;
    result.grid = narrow(coarse.grid);
    result.step = narrow(market.step);
    result.ceiling = narrow(market.ceiling);
    result.unit = market.unit;
    return result;
}

} // namespace groat::purchasing
