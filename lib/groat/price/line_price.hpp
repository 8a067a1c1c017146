/// A line of what is sold with its cost, its price and what that earns.
#pragma once

#include <groat/cost/engine.hpp>
#include <groat/price/price_point.hpp>
#include <groat/price/priced.hpp>

#include <optional>
#include <span>
#include <string>
#include <type_traits>
#include <variant>
#include <vector>

namespace groat {

/// What a line earns when the order's discount is off, per sale unit.
struct AfterDiscount : Earning {
    bool is_below_target = false; ///< the net price is less than the target takes
};

/// One line of what is sold, priced. Money is per sale unit unless it says otherwise.
struct QuoteLine : Priced {
    std::size_t formula = 0;
    SaleUnit const* unit = nullptr;
    Number count;
    CostByCategory cost;    ///< of the whole line
    YieldLoss loss;         ///< of the whole line
    Number pieces;          ///< in the whole line
    bool has_price = false; ///< else it asks nothing, and all from `target` on is empty
    PricePoint point = {};  ///< where its price may land
    Target target = Margin();
    std::optional<Money>
        wanted;   ///< net price that meets the target exactly, after a discount that is
                  ///< said to be in the price; absent where the price was given
    Coins amount; ///< price times count
    std::optional<AfterDiscount> after_discount; ///< of an order that has one
    std::optional<Coins> revenue; ///< of an order: the amount less its part of the tax printed

    /// The item in words: "rye plum sandwich, box of 12".
    [[nodiscard]] std::string title(Book const& book) const;
    /// Its share of what is paid once for the whole payment.
    [[nodiscard]] Money fixed_fee() const { return burden.fee.fixed * count; }
};

namespace quoting_detail {

/// The first policy in the cascade that has a target, and the first that has a price point.
struct Policy {
    Target const* target = nullptr;
    PricePoint point = {};
    Span origin = {};
};

/// `nearer` go first, in their order: the line of an order, or what a menu says.
Policy policy_of(Shop const& shop, Formula const& formula, SaleUnit const* unit,
                 std::span<PricePolicy const* const> nearer);
Policy policy_of(Shop const& shop, Formula const& formula, SaleUnit const* unit,
                 PricePolicy const* line);

/// Prices lines of what was costed and words what is wrong with them; an order and an item share it.
class Pricer {
public:
    /// Prices contain tax as the shop's do, unless it is said for these.
    Pricer(Costing const& costing, Diagnostics& found, std::optional<bool> is_contained = {})
        : costing_(costing),
          book_(costing.book()),
          shop_(book_.shop),
          found_(found),
          is_contained_(is_contained.value_or(shop_.tax.is_contained)) {}

    /// Whether everything that the sales need can be costed.
    bool can_cost(std::vector<Sale> const& sales, Span where) {
        std::size_t const errors = found_.errors_met();
        for (Sale const& sale : sales) {
            found_.add(costing_.findings(sale.formula, sale.unit));
            Formula const& formula = book_.formulas[sale.formula];
            if (sale.unit == nullptr && !formula.makes_pieces())
                found_.error(
                    where, "no-sale-unit",
                    fmt::format("'{}' is made by mass and cannot be sold by the piece",
                                formula.name),
                    "say how it is sold with 'as', and add that under 'sold as' of its formula");
        }
        return found_.errors_met() == errors;
    }

    /// The same for each sale of an order, which are its lines, said where the line stands.
    void can_cost_each(std::vector<Sale> const& sales, Order const& order) {
        for (std::size_t i = 0; i < sales.size(); ++i)
            (void)can_cost({sales[i]}, order.lines[i].origin);
    }

    /// Prices one line of a cost; the fixed fee is its share of the order's. A price that is solved meets its
    /// target when `discount` is taken off it.
    std::optional<QuoteLine> price_line(CostLine const& cost, Policy const& policy, Span where,
                                        FeeTerms const& fee, TaxRate const& tax,
                                        bool must_have_target = true, Number const& discount = 0) {
        QuoteLine line;
        line.formula = cost.sale.formula;
        line.unit = cost.sale.unit;
        line.count = cost.sale.count;
        line.cost = cost.cost;
        line.loss = cost.loss;
        line.pieces = cost.pieces;
        line.point = policy.point;
        Number const& count = line.count;
        line.burden = {cost.cost.total() / count,      cost.cost[Category::ingredients] / count,
                       cost.cost.prime() / count,      cost.cost.variable(shop_) / count,
                       {fee.share, fee.fixed / count}, tax};
        if (policy.target == nullptr) {
            if (!must_have_target) return line;
            found_.error(
                where, "no-target",
                fmt::format("nothing says what the price of '{}' is to reach", line.title(book_)),
                "add 'price: {margin: 40 %}' to shop.yaml, to the formula or to this line");
            return std::nullopt;
        }
        line.target = *policy.target;
        line.has_price = true;
        if (auto const* given = std::get_if<GivenPrice>(policy.target)) {
            line.ask(to_coins(given->amount), is_contained_);
        } else {
            Result<Money> const wanted = std::visit(
                [&](auto const& target) -> Result<Money> {
                    if constexpr (std::is_same_v<std::decay_t<decltype(target)>, GivenPrice>)
                        return target.amount;
                    else
                        return price_for(target, line.burden);
                },
                *policy.target);
            if (!wanted) {
                Flaw flaw = wanted.error();
                flaw.what = fmt::format("'{}': {}", line.title(book_), flaw.what);
                found_.error(policy.origin.is_known() ? policy.origin : where, flaw);
                return std::nullopt;
            }
            line.wanted = *wanted / (1 - discount);
            line.ask(to_price_point(is_contained_ ? with_tax(*line.wanted, tax) : *line.wanted,
                                    policy.point),
                     is_contained_);
        }
        if (count.is_whole()) line.amount = line.price * count.numerator();
        return line;
    }

    /// Whether shown prices contain tax here.
    [[nodiscard]] bool is_tax_contained() const { return is_contained_; }

    void warn_of_loss(QuoteLine const& line, Span where) {
        if (line.has_price) warn_of_loss(line.title(book_), line, where);
    }
    void warn_of_loss(std::string const& title, Priced const& priced, Span where) {
        if (!priced.loses()) return;
        found_.warn(where, "below-cost",
                    fmt::format("'{}' at {} loses {} each", title, shown(priced.price.money()),
                                shown(-priced.earned.profit)),
                    "raise the price or lower what it costs");
    }

    [[nodiscard]] std::string shown(Money const& money) const {
        return decimal(money.amount(), shop_.currency.minor_digits());
    }

    /// The shares of a fee that is paid once per order, in proportion to the lines' costs.
    static Money fixed_share(Money const& fixed, OrderCost const& cost, CostLine const& line) {
        Money const all = cost.total.total();
        if (all.is_zero()) return fixed / Number(cost.lines.size());
        return fixed * (line.cost.total() / all);
    }

    void warn_of_stale_prices(OrderCost const& cost) {
        for (auto const* uses : {&cost.ingredients, &cost.supplies})
            for (IngredientUse const& use : *uses)
                warn_of_stale_price(book_.offers[use.purchase->offer]);
    }

    void warn_of_stale_price(Offer const& offer) {
        if (!shop_.stale_after || !offer.from ||
            costing_.date() - *offer.from <= *shop_.stale_after)
            return;
        found_.warn(offer.origin, "stale-price",
                    fmt::format("the price of '{}' is {} days old", offer.item.name,
                                (costing_.date() - *offer.from).count()),
                    "ask for today's and add it as a new offer");
    }

protected:
    Costing const& costing_;
    Book const& book_;
    Shop const& shop_;
    Diagnostics& found_;
    bool is_contained_;
};

} // namespace quoting_detail

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/price/line_price.ipp>
#endif
