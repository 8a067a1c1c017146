#pragma once

#include <groat/price/order_totals.hpp>

#include <groat/base/linkage.hpp>
#include <groat/price/pricing.hpp>

#include <fmt/format.h>

#include <tuple>

namespace groat {

GROAT_INLINE int payments_with(Share const& deposit) {
    return deposit.value().is_zero() || deposit.value() == 1 ? 1 : 2;
}

namespace order_totals_detail {

class Totaller {
public:
    Totaller(Shop const& shop, Order const& order, OrderBill const& bill)
        : shop_(shop), order_(order), bill_(bill), nothing_(0, shop.currency) {}

    Result<QuoteTotals> result() {
        totals_.subtotal = nothing_;
        for (TaxedAmount const& each : bill_.goods) totals_.subtotal += each.amount;
        goods_ = std::max(totals_.subtotal, nothing_);
        if (auto const flaw = take_discount()) return Refused(*flaw);
        add_rush();
        if (auto const flaw = add_delivery()) return Refused(*flaw);
        totals_.shown = totals_.subtotal - totals_.discount + totals_.to_minimum + totals_.rush +
                        totals_.delivery;
        add_tax();
        ask_for_payment();
        return std::move(totals_);
    }

private:
    /// An amount, or a share of the goods, which is kept in `share` as well.
    [[nodiscard]] Coins adjustment(Adjustment const& adjustment,
                                   std::optional<Number>& share) const {
        if (auto const* amount = std::get_if<Money>(&adjustment)) return to_coins(*amount);
        share = std::get<Surcharge>(adjustment).value();
        return to_coins(goods_.money() * *share);
    }

    /// The discount, cut where it would go below the minimum order, and the rest up to that.
    std::optional<Flaw> take_discount() {
        totals_.discount = totals_.to_minimum = nothing_;
        Coins const minimum = shop_.minimum_order ? to_coins(*shop_.minimum_order) : nothing_;
        if (order_.discount) {
            totals_.discount = adjustment(*order_.discount, totals_.discount_share);
            if (totals_.discount > goods_)
                return Flaw{"discount-too-large",
                            fmt::format("a discount of {} is more than the goods' {}",
                                        shown(totals_.discount), shown(goods_)),
                            "lower the discount", 0, 0};
            Coins const most = std::max(goods_ - minimum, nothing_);
            totals_.is_discount_cut = totals_.discount > most;
            totals_.discount = std::min(totals_.discount, most);
        }
        if (totals_.subtotal >= nothing_ && totals_.subtotal < minimum)
            totals_.to_minimum = minimum - totals_.subtotal;
        return std::nullopt;
    }

    void add_rush() {
        totals_.rush = nothing_;
        if (order_.rush)
            totals_.rush = adjustment(*order_.rush, totals_.rush_share);
        else if (shop_.rush && order_.due && *order_.due - bill_.date <= shop_.rush->within)
            totals_.rush = adjustment(shop_.rush->surcharge, totals_.rush_share);
    }

    /// What a delivery is taxed at; empty where it is taxed with the goods.
    [[nodiscard]] std::optional<TaxRate> rate_of_delivery() const {
        if (order_.tax.is_given()) return bill_.main;
        Reference const& tax = order_.delivery && order_.delivery->tax.is_given()
                                   ? order_.delivery->tax
                                   : shop_.tax.delivery;
        if (!tax.is_given() || tax.name == "with the goods") return std::nullopt;
        return tax_rate(shop_.tax, tax);
    }

    std::optional<Flaw> add_delivery() {
        totals_.delivery = nothing_;
        if (!order_.delivery || order_.delivery->charge == DeliveryCharge::in_price)
            return std::nullopt;
        if (order_.delivery->charge == DeliveryCharge::amount) {
            totals_.delivery = to_coins(order_.delivery->amount);
            return std::nullopt;
        }
        TaxRate const rate =
            rate_of_delivery().value_or(mean_rate({bill_.goods, {}, {}, bill_.main}, shop_.tax));
        auto const net =
            price_for(Markup(), {bill_.delivery_cost, {}, {}, {}, {bill_.fee.share, {}}, rate});
        if (!net) return net.error();
        totals_.delivery =
            to_coins(shop_.tax.is_contained ? with_tax(*net, rate) : *net, {Tie::up, 0});
        return std::nullopt;
    }

    void add_tax() {
        TaxedDocument document{
            bill_.goods, {totals_.to_minimum + totals_.rush - totals_.discount}, {}, bill_.main};
        auto const rate = rate_of_delivery();
        if (!rate)
            document.shared.push_back(totals_.delivery);
        else if (!totals_.delivery.is_zero())
            document.apart.push_back({totals_.delivery, *rate});
        DocumentTax tax = tax_of_document(document, shop_.tax);
        totals_.taxes = std::move(tax.classes);
        totals_.tax_of_goods = std::move(tax.of_lines);
        totals_.tax = nothing_;
        for (TaxClass const& each : totals_.taxes) totals_.tax += each.tax;
        totals_.net = shop_.tax.is_contained ? totals_.shown - totals_.tax : totals_.shown;
        totals_.total = totals_.net + totals_.tax;
    }

    void ask_for_payment() {
        Share const share = order_.deposit.value_or(shop_.deposit);
        Coins const due = std::max(totals_.total, nothing_);
        totals_.deposit = to_coins(due.money() * share.value());
        totals_.balance = totals_.total - totals_.deposit;
        if (shop_.cash_rounding)
            totals_.cash =
                to_coins(totals_.total.money(), {Tie::half_up, shop_.cash_rounding->amount()});
        totals_.revenue = totals_.net.money();
        totals_.fee = nothing_.money();
        for (Coins const& payment : {totals_.deposit, totals_.balance})
            if (payment > nothing_) totals_.fee += fee_on(payment.money(), bill_.fee);
        totals_.cost = bill_.cost;
        totals_.profit = totals_.revenue - totals_.fee - totals_.cost;
        if (!totals_.revenue.is_zero()) totals_.margin = totals_.profit / totals_.revenue;
    }

    [[nodiscard]] std::string shown(Coins const& coins) const {
        return decimal(coins.money().amount(), shop_.currency.minor_digits());
    }

    Shop const& shop_;
    Order const& order_;
    OrderBill const& bill_;
    Coins nothing_;
    Coins goods_; ///< the subtotal; 0 where that is below
    QuoteTotals totals_;
};

} // namespace order_totals_detail

GROAT_INLINE Result<QuoteTotals> order_totals(Shop const& shop, Order const& order,
                                              OrderBill const& bill) {
    return order_totals_detail::Totaller(shop, order, bill).result();
}

} // namespace groat
