/// What it costs to bring an order up to its minimum with packs that nobody needs. Offers of one price without
/// limit can be added freely, whatever else is bought; so the least cost of counting so and so much more
/// is a matter of the supplier alone, and is worked out once, for every whole step of what it counts in.
#pragma once

#include <groat/base/rounding.hpp>
#include <groat/solve/purchase_market.hpp>

namespace groat::purchasing {

template <class Whole> class Padding {
public:
    /// For a supplier without a minimum, with too fine steps, or with no such offers there is nothing here.
    Padding(Market<Whole> const& market, std::size_t supplier);

    [[nodiscard]] bool is_known() const { return !least_.empty(); }
    /// Whether packs of this bid may be added freely.
    [[nodiscard]] static bool is_free(Bid<Whole> const& bid) {
        return bid.is_unlimited && bid.tiers.size() == 1 && bid.tiers.front().counted > 0;
    }
    /// The least cost of packs that count `lacking` or more, up to the minimum.
    [[nodiscard]] Whole const& cost(Whole const& lacking) const { return least_[index(lacking)]; }
    /// Adds those packs to `packs`, by bid.
    void add(Whole const& lacking, std::vector<Whole>& packs) const;
    /// The most that a unit counted may be worth, in parts of the grid, before padding would seem to pay.
    [[nodiscard]] Whole const& most_worth() const { return most_worth_; }
    /// The steps of work that it took.
    [[nodiscard]] std::uint64_t steps() const { return least_.size() * bids_.size(); }

private:
    static constexpr std::uint64_t most_steps = 50'000'000;
    [[nodiscard]] std::size_t index(Whole const& lacking) const {
        return static_cast<std::size_t>((lacking + step_ - 1) / step_);
    }

    Whole step_;
    Whole most_worth_;
    std::vector<Whole> least_;         ///< by steps lacking
    std::vector<std::uint32_t> first_; ///< the bid to add first, as an index into `bids_`
    std::vector<std::size_t> bids_;
    std::vector<std::size_t> gains_; ///< steps that a pack counts
};

// ---------------------------------------------------------------------------------------------------

template <class Whole> Padding<Whole>::Padding(Market<Whole> const& market, std::size_t supplier) {
    Whole const& minimum = market.suppliers[supplier].minimum;
    if (minimum == 0) return;
    Whole step = 0;
    for (std::size_t b = 0; b < market.bids.size(); ++b) {
        Bid<Whole> const& bid = market.bids[b];
        if (bid.supplier != supplier) continue;
        for (Tier<Whole> const& tier : bid.tiers) step = common_measure(step, tier.counted);
        if (is_free(bid)) bids_.push_back(b);
    }
    if (bids_.empty()) return;
    // The best value first; a bid is of no use where packs of one before it count as much for no more.
    auto const pack = [&](std::size_t b) -> Tier<Whole> const& {
        return market.bids[b].tiers.front();
    };
    std::stable_sort(bids_.begin(), bids_.end(), [&](std::size_t a, std::size_t b) {
        return !is_ratio_at_most(pack(b).cost, pack(b).counted, pack(a).cost, pack(a).counted);
    });
    std::vector<std::size_t> useful;
    for (std::size_t const b : bids_) {
        Tier<Whole> const& own = pack(b);
        if (std::none_of(useful.begin(), useful.end(), [&](std::size_t a) {
                Tier<Whole> const& other = pack(a);
                Whole const packs = (own.counted + other.counted - 1) / other.counted;
                return packs * other.cost <= own.cost;
            }))
            useful.push_back(b);
    }
    bids_ = std::move(useful);
    Whole const most = Whole(static_cast<std::int64_t>(most_steps / bids_.size()));
    if (minimum / step >= most) return;
    step_ = step;
    most_worth_ = pack(bids_.front()).cost * market.grid / pack(bids_.front()).counted;
    std::size_t const size = index(minimum) + 1;
    for (std::size_t const b : bids_) {
        Whole const gain = market.bids[b].tiers.front().counted / step_;
        gains_.push_back(static_cast<std::size_t>(std::min(gain, Whole(minimum / step_ + 1))));
    }
    least_.resize(size);
    first_.resize(size);
    for (std::size_t lacking = 1; lacking < size; ++lacking) {
        for (std::size_t k = 0; k < bids_.size(); ++k) {
            std::size_t const rest = lacking > gains_[k] ? lacking - gains_[k] : 0;
            Whole const cost = least_[rest] + market.bids[bids_[k]].tiers.front().cost;
            if (k > 0 && cost >= least_[lacking]) continue;
            least_[lacking] = cost;
            first_[lacking] = static_cast<std::uint32_t>(k);
        }
    }
}

template <class Whole>
void Padding<Whole>::add(Whole const& lacking, std::vector<Whole>& packs) const {
    for (std::size_t at = index(lacking); at > 0;) {
        std::size_t const k = first_[at];
        packs[bids_[k]] += 1;
        at = at > gains_[k] ? at - gains_[k] : 0;
    }
}

} // namespace groat::purchasing
