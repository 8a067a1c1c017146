/// A plan that covers every item made one that may be ordered: suppliers who are used without reaching their
/// minimum are bought more from, where that adds least to the outlay, and packs that have become idle are
/// taken off again. Quick and not always best; the search needs plans to start from.
#pragma once

#include <groat/solve/purchase_market.hpp>

namespace groat::purchasing {

/// Packs by bid, with what follows from them.
template <class Whole> class Basket {
public:
    Basket(Market<Whole> const& market, std::vector<Whole> packs);

    [[nodiscard]] std::vector<Whole> const& packs() const { return packs_; }
    /// Packs, the fees of who is used, and what is short.
    [[nodiscard]] Whole total() const;
    /// Whether the supplier is used without reaching the minimum.
    [[nodiscard]] bool is_short(std::size_t supplier) const { return lacking(supplier) > 0; }
    [[nodiscard]] bool is_used(std::size_t supplier) const { return bought_[supplier] > 0; }
    /// Whether demands are covered and the minimums of all who are used are reached.
    [[nodiscard]] bool is_good() const;

    /// Buys more from who lacks some of the minimum; false where that finds no way.
    bool fill_up();
    /// Takes off packs that nothing needs, as long as that saves money; and those that only what may be short
    /// needs, where that saves no less than they cost.
    void trim();
    /// Covers items as `other` does, one at a time, where that saves money and no minimum suffers.
    void take_better(std::vector<Whole> const& other);

private:
    void set(std::size_t bid, Whole const& packs);
    [[nodiscard]] Whole lacking(std::size_t supplier) const {
        return is_used(supplier) ? Whole(market_.suppliers[supplier].minimum - counted_[supplier])
                                 : Whole(0);
    }
    bool fill_up(std::size_t supplier);
    [[nodiscard]] bool keeps_minimums(Item<Whole> const& item) const;
    [[nodiscard]] Whole cost(Item<Whole> const& item) const;

    Market<Whole> const& market_;
    std::vector<Whole> packs_;
    std::vector<Whole> counted_; ///< by supplier
    std::vector<Whole> bought_;  ///< packs by supplier
    std::vector<Whole> content_; ///< by item
};

// ---------------------------------------------------------------------------------------------------

template <class Whole>
Basket<Whole>::Basket(Market<Whole> const& market, std::vector<Whole> packs)
    : market_(market),
      packs_(market.bids.size()),
      counted_(market.suppliers.size()),
      bought_(market.suppliers.size()),
      content_(market.items.size()) {
    for (std::size_t b = 0; b < packs_.size(); ++b) set(b, packs[b]);
}

template <class Whole> void Basket<Whole>::set(std::size_t index, Whole const& packs) {
    Bid<Whole> const& bid = market_.bids[index];
    Whole& now = packs_[index];
    counted_[bid.supplier] += bid.counted(packs) - bid.counted(now);
    bought_[bid.supplier] += packs - now;
    content_[bid.item] += (packs - now) * bid.content;
    now = packs;
}

template <class Whole> Whole Basket<Whole>::total() const {
    Whole total = 0;
    for (std::size_t b = 0; b < packs_.size(); ++b) total += market_.bids[b].cost(packs_[b]);
    for (std::size_t s = 0; s < market_.suppliers.size(); ++s)
        if (is_used(s)) total += market_.suppliers[s].fee;
    for (std::size_t i = 0; i < content_.size(); ++i)
        total += market_.items[i].shortage(market_.items[i].demand - content_[i]);
    return total;
}

template <class Whole> bool Basket<Whole>::is_good() const {
    for (std::size_t i = 0; i < content_.size(); ++i)
        if (content_[i] + market_.items[i].most_short < market_.items[i].demand) return false;
    for (std::size_t s = 0; s < counted_.size(); ++s)
        if (lacking(s) > 0) return false;
    return true;
}

template <class Whole> bool Basket<Whole>::fill_up(std::size_t supplier) {
    Whole const lack = lacking(supplier);
    bool has_move = false;
    Whole least_cost = 0;
    Whole most_gain = 1;
    std::size_t move_bid = 0;
    Whole move_packs = 0;
    for (std::size_t b = 0; b < packs_.size(); ++b) {
        Bid<Whole> const& bid = market_.bids[b];
        if (bid.supplier != supplier) continue;
        Whole const cost = bid.cost(packs_[b]);
        Whole const counted = bid.counted(packs_[b]);
        auto const consider = [&](Whole const& packs) {
            if (packs > bid.most || packs <= packs_[b]) return;
            Whole const gain = std::min(Whole(bid.counted(packs) - counted), lack);
            if (gain <= 0) return;
            Whole const added = std::max(Whole(0), Whole(bid.cost(packs) - cost));
            if (has_move && is_ratio_at_most(least_cost, most_gain, added, gain)) return;
            has_move = true;
            least_cost = added;
            most_gain = gain;
            move_bid = b;
            move_packs = packs;
        };
        consider(packs_[b] + 1);
        for (Tier<Whole> const& tier : bid.tiers) {
            consider(tier.from);
            if (tier.counted == 0) continue;
            // As many as leave nothing lacking, one fewer, and all of the tier.
            Whole const enough = (counted + lack + tier.counted - 1) / tier.counted;
            if (enough >= tier.from && enough <= tier.to) consider(enough);
            if (enough > tier.from && enough <= tier.to + 1) consider(enough - 1);
            consider(tier.to);
        }
    }
    if (has_move) set(move_bid, move_packs);
    return has_move;
}

template <class Whole> bool Basket<Whole>::fill_up() {
    for (std::size_t s = 0; s < market_.suppliers.size(); ++s)
        while (lacking(s) > 0)
            if (!fill_up(s)) return false;
    return true;
}

template <class Whole> void Basket<Whole>::trim() {
    for (std::size_t b = packs_.size(); b-- > 0;) {
        Bid<Whole> const& bid = market_.bids[b];
        while (packs_[b] > 0) {
            Whole const before = packs_[b];
            Item<Whole> const& item = market_.items[bid.item];
            Whole const spare = content_[bid.item] - item.demand;
            if (spare + item.most_short < bid.content) break;
            Whole const paid = bid.cost(before);
            Whole const cost = paid + item.shortage(-spare);
            // All that the cover can spare or do without, or one pack, whichever the minimum allows.
            bool is_better = false;
            for (Whole const& off :
                 {spare < bid.content ? Whole(0) : std::min(before, Whole(spare / bid.content)),
                  std::min(before, Whole((spare + item.most_short) / bid.content)), Whole(1)}) {
                set(b, before - off);
                is_better =
                    lacking(bid.supplier) <= 0 && bid.cost(packs_[b]) < paid &&
                    bid.cost(packs_[b]) + item.shortage(item.demand - content_[bid.item]) <= cost;
                if (is_better) break;
                set(b, before);
            }
            if (!is_better) break;
        }
    }
}

/// Of the suppliers who offer the item.
template <class Whole> bool Basket<Whole>::keeps_minimums(Item<Whole> const& item) const {
    for (std::size_t link = item.first_link; link < item.end_link; ++link)
        if (lacking(market_.link_supplier[link]) > 0) return false;
    return true;
}

/// Of the item's packs and what is short, and of the fees of all who offer it and are used.
template <class Whole> Whole Basket<Whole>::cost(Item<Whole> const& item) const {
    Whole total = 0;
    Whole missing = item.demand;
    for (std::size_t b = item.first_bid; b < item.end_bid; ++b) {
        total += market_.bids[b].cost(packs_[b]);
        missing -= packs_[b] * market_.bids[b].content;
    }
    total += item.shortage(missing);
    for (std::size_t link = item.first_link; link < item.end_link; ++link)
        if (is_used(market_.link_supplier[link]))
            total += market_.suppliers[market_.link_supplier[link]].fee;
    return total;
}

template <class Whole> void Basket<Whole>::take_better(std::vector<Whole> const& other) {
    std::vector<Whole> before;
    for (Item<Whole> const& item : market_.items) {
        auto const first = static_cast<std::ptrdiff_t>(item.first_bid);
        auto const end = static_cast<std::ptrdiff_t>(item.end_bid);
        if (std::equal(packs_.begin() + first, packs_.begin() + end, other.begin() + first))
            continue;
        before.assign(packs_.begin() + first, packs_.begin() + end);
        Whole const paid = cost(item);
        for (std::size_t b = item.first_bid; b < item.end_bid; ++b) set(b, other[b]);
        if (cost(item) < paid && keeps_minimums(item)) continue;
        for (std::size_t b = item.first_bid; b < item.end_bid; ++b)
            set(b, before[b - item.first_bid]);
    }
}

} // namespace groat::purchasing
