/// An order costed, priced and added up: what the client is asked for, and what it earns.
#pragma once

#include <groat/trade/line_price.hpp>

#include <optional>
#include <string>
#include <vector>

namespace groat {

/// The price of a line at another quantity, everything costed anew.
struct BreakPrice {
    std::size_t line = 0;
    Integer count;
    Money cost;  ///< per sale unit
    Coins price; ///< per sale unit, as shown
};

struct QuoteTotals {
    Coins subtotal; ///< of the lines; this and all down to `shown` on the side of tax that is shown
    Coins to_minimum; ///< what a small order is raised by
    Coins rush;
    Coins discount; ///< taken off
    Coins delivery; ///< where it is on a line of its own
    Coins shown;    ///< all of the above together
    std::vector<TaxClass> taxes;
    Coins tax;
    Coins net;   ///< without tax
    Coins total; ///< what the client pays
    Coins deposit;
    Coins balance;             ///< total less deposit
    std::optional<Coins> cash; ///< total where it is paid in cash, if the shop rounds that
    Money revenue;             ///< exact net of tax
    Money fee;
    Money cost;                   ///< of all lines, and of delivery charged apart
    Money profit;                 ///< revenue less fee and cost
    std::optional<Number> margin; ///< profit / revenue
};

struct Quote {
    Order const* order = nullptr;
    Date date; ///< prices are those in force on this day
    std::optional<Date> valid_until;
    std::optional<std::string> paid_by; ///< the fee that was reckoned with
    OrderCost cost;
    std::vector<QuoteLine> lines;
    std::vector<BreakPrice> breaks;
    QuoteTotals totals;
};

/// Costs and prices an order.
///
/// Fails    with every finding that stands in the way: formulas that cannot be costed, targets out of
///          reach, a discount above the amount. `found` also receives the warnings of what is used:
///          stale prices, a quantity break dearer than a smaller one, a line that loses money.
[[nodiscard]] std::optional<Quote> quote(Costing const& costing, Order const& order,
                                         Diagnostics& found);

// ---------------------------------------------------------------------------------------------------

namespace quoting {

class OrderQuoter : Pricer {
public:
    OrderQuoter(Costing const& costing, Order const& order, Diagnostics& found)
        : Pricer(costing, found), order_(order) {
        request_.delivery = order.delivery;
        request_.sales = sales_of(order, book_);
        Reference const& payment = order.paid_by.is_given() ? order.paid_by : shop_.paid_by;
        if (payment.is_resolved()) {
            Fee const& fee = shop_.fees[payment.index];
            fee_ = {fee.share, fee.fixed};
            quote_.paid_by = fee.name;
        }
    }

    std::optional<Quote> run() {
        std::size_t const errors = found_.errors_met();
        quote_.order = &order_;
        quote_.date = costing_.date();
        if (auto const days = order_.valid ? order_.valid : shop_.valid)
            quote_.valid_until = order_.date.value_or(quote_.date) + *days;
        for (std::size_t i = 0; i < request_.sales.size(); ++i)
            (void)can_cost({request_.sales[i]}, order_.lines[i].origin);
        if (found_.errors_met() != errors) return std::nullopt;
        quote_.cost = costing_.cost(request_);
        for (std::size_t i = 0; i < request_.sales.size(); ++i) {
            auto line = price(quote_.cost, i);
            if (!line) continue;
            warn_of_loss(*line, order_.lines[i].origin);
            quote_.lines.push_back(std::move(*line));
        }
        warn_of_stale_prices(quote_.cost);
        if (found_.errors_met() != errors) return std::nullopt;
        add_breaks();
        add_up();
        if (found_.errors_met() != errors) return std::nullopt;
        return std::move(quote_);
    }

private:
    [[nodiscard]] TaxRate tax_of_line(std::size_t i) const {
        if (order_.tax.is_given()) return tax_rate(shop_.tax, order_.tax);
        return tax_rate(shop_.tax, book_.formulas[request_.sales[i].formula].tax);
    }

    std::optional<QuoteLine> price(OrderCost const& cost, std::size_t i) {
        OrderLine const& line = order_.lines[i];
        Sale const& sale = request_.sales[i];
        Policy const policy =
            policy_of(shop_, book_.formulas[sale.formula], sale.unit, &line.price);
        FeeTerms const fee{fee_.share, fixed_share(fee_.fixed, cost, cost.lines[i])};
        return price_line(cost.lines[i], policy, line.origin, fee, tax_of_line(i));
    }

    void add_breaks() {
        for (std::size_t i = 0; i < order_.lines.size(); ++i) {
            std::size_t const first = quote_.breaks.size();
            for (Integer const& count : order_.quantity_breaks) {
                CostRequest request = request_;
                request.sales[i].count = count;
                request.divides_losses = false;
                OrderCost const cost = costing_.cost(request);
                auto const line = price(cost, i);
                if (!line) return;
                quote_.breaks.push_back({i, count, line->burden.cost, line->price});
            }
            warn_of_dearer_breaks(i, first);
        }
    }

    /// Of the breaks of a line, from `first` on: each that is dearer than a smaller one, once.
    void warn_of_dearer_breaks(std::size_t line, std::size_t first) {
        for (std::size_t i = first; i < quote_.breaks.size(); ++i) {
            BreakPrice const& entry = quote_.breaks[i];
            BreakPrice const* best = nullptr;
            for (std::size_t k = first; k < quote_.breaks.size(); ++k) {
                BreakPrice const& other = quote_.breaks[k];
                if (other.count < entry.count && other.price < entry.price &&
                    (best == nullptr || other.price < best->price))
                    best = &other;
            }
            if (best != nullptr)
                found_.warn(
                    order_.lines[line].origin, "break-dearer",
                    fmt::format("{} of '{}' cost more each than {} do: {} against {}",
                                entry.count.str(), quote_.lines[line].title(book_),
                                best->count.str(), shown(entry.price.money()),
                                shown(best->price.money())),
                    "a part batch or a further oven load does this: choose another quantity");
        }
    }

    [[nodiscard]] static Coins adjustment(Adjustment const& adjustment, Coins const& base) {
        if (auto const* amount = std::get_if<Money>(&adjustment)) return to_coins(*amount);
        return to_coins(base.money() * std::get<Surcharge>(adjustment).value());
    }

    [[nodiscard]] Coins rush(Coins const& base) const {
        if (order_.rush) return adjustment(*order_.rush, base);
        if (!shop_.rush || !order_.due) return {0, shop_.currency};
        if (*order_.due - order_.date.value_or(quote_.date) > shop_.rush->within)
            return {0, shop_.currency};
        return adjustment(shop_.rush->surcharge, base);
    }

    [[nodiscard]] TaxRate delivery_tax() const {
        return order_.tax.is_given() ? tax_rate(shop_.tax, order_.tax) : shop_.tax.rate;
    }

    [[nodiscard]] Coins delivery_price() {
        if (!order_.delivery || order_.delivery->charge == DeliveryCharge::in_price)
            return {0, shop_.currency};
        if (order_.delivery->charge == DeliveryCharge::amount)
            return to_coins(order_.delivery->amount);
        Burden const burden{
            quote_.cost.delivery_apart, {}, {}, {}, {fee_.share, {}}, delivery_tax()};
        auto const net = price_for(Markup(), burden);
        if (!net) {
            found_.error(order_.origin, net.error());
            return {0, shop_.currency};
        }
        return to_coins(shop_.tax.is_contained ? with_tax(*net, burden.tax) : *net, {Tie::up, 0});
    }

    void add_up() {
        QuoteTotals& totals = quote_.totals;
        totals.subtotal = Coins(0, shop_.currency);
        for (QuoteLine const& line : quote_.lines) totals.subtotal += line.amount;
        totals.to_minimum = Coins(0, shop_.currency);
        if (shop_.minimum_order && to_coins(*shop_.minimum_order) > totals.subtotal)
            totals.to_minimum = to_coins(*shop_.minimum_order) - totals.subtotal;
        totals.rush = rush(totals.subtotal + totals.to_minimum);
        Coins const before_discount = totals.subtotal + totals.to_minimum + totals.rush;
        totals.discount = order_.discount ? adjustment(*order_.discount, before_discount)
                                          : Coins(0, shop_.currency);
        if (totals.discount > before_discount)
            found_.error(order_.origin, "discount-too-large",
                         fmt::format("a discount of {} is more than the order's {}",
                                     shown(totals.discount.money()),
                                     shown(before_discount.money())),
                         "lower the discount");
        totals.delivery = delivery_price();
        totals.shown = before_discount - totals.discount + totals.delivery;
        add_tax();
        totals.deposit =
            to_coins(totals.total.money() * order_.deposit.value_or(shop_.deposit).value());
        totals.balance = totals.total - totals.deposit;
        if (shop_.cash_rounding)
            totals.cash =
                to_coins(totals.total.money(), {Tie::half_up, shop_.cash_rounding->amount()});
        totals.fee = fee_on(totals.total.money(), fee_);
        totals.cost = quote_.cost.all();
        totals.profit = totals.revenue - totals.fee - totals.cost;
        if (!totals.revenue.is_zero()) totals.margin = totals.profit / totals.revenue;
    }

    void add_tax() {
        QuoteTotals& totals = quote_.totals;
        std::vector<TaxedAmount> lines;
        for (std::size_t i = 0; i < quote_.lines.size(); ++i)
            lines.push_back({quote_.lines[i].amount, tax_of_line(i)});
        std::vector<TaxedAmount> delivery;
        if (!totals.delivery.is_zero()) delivery.push_back({totals.delivery, delivery_tax()});
        totals.taxes = tax_classes(lines, totals.to_minimum + totals.rush - totals.discount,
                                   delivery, shop_.tax);
        totals.tax = Coins(0, shop_.currency);
        totals.revenue = Money(0, shop_.currency);
        for (TaxClass const& each : totals.taxes) {
            totals.tax += each.tax;
            totals.revenue += shop_.tax.is_contained ? without_tax(each.base.money(), each.rate)
                                                     : each.base.money();
        }
        totals.net = shop_.tax.is_contained ? totals.shown - totals.tax : totals.shown;
        totals.total = shop_.tax.is_contained ? totals.shown : totals.shown + totals.tax;
    }

    Order const& order_;
    CostRequest request_;
    FeeTerms fee_;
    Quote quote_;
};

} // namespace quoting

inline std::optional<Quote> quote(Costing const& costing, Order const& order, Diagnostics& found) {
    return quoting::OrderQuoter(costing, order, found).run();
}

} // namespace groat
