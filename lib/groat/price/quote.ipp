#pragma once

#include <groat/price/quote.hpp>

#include <groat/base/linkage.hpp>
#include <groat/cost/shares.hpp>
#include <groat/cost/steps.hpp>
#include <groat/price/contents.hpp>
#include <groat/price/kept_findings.hpp>

#include <map>
#include <string>

namespace groat {

namespace quoting_detail {

class OrderQuoter : Pricer {
public:
    OrderQuoter(Costing const& costing, Order const& order,
                std::vector<Order const*> const& companions, Diagnostics& found)
        : Pricer(costing, found), order_(*keep(order)) {
        request_.delivery = order_.delivery;
        request_.sales = sales_of(order_, book_);
        quote_.companions = quote_.kept.copies_of(companions);
        for (OrderLine const& line : order_.lines) quote_.ways.push_back(way_of(line));
        request_.ways = quote_.ways;
        Reference const& payment = order_.paid_by.is_given() ? order_.paid_by : shop_.paid_by;
        if (payment.is_resolved()) {
            Fee const& fee = shop_.fees[payment.index];
            payment_ = {fee.share, fee.fixed};
            quote_.paid_by = fee.name;
        }
    }

    std::optional<Quote> result() {
        std::size_t const errors = found_.errors_met();
        quote_.order = &order_;
        quote_.date = costing_.date();
        say_how_long();
        can_cost_each(request_.sales, order_);
        add_companions();
        if (found_.errors_met() != errors) return std::nullopt;
        quote_.cost = costing_.cost(request_);
        for (std::size_t i = 0; i < request_.sales.size(); ++i) {
            auto line = price(quote_.cost, i);
            if (!line) continue;
            warn_of_loss(*line, order_.lines[i].origin);
            quote_.lines.push_back(std::move(*line));
        }
        for (FreeLine const& extra : order_.extras) quote_.extras.push_back(price(extra));
        warn_of_stale_prices(quote_.cost);
        warn_of_short_runs(quote_.cost, order_, costing_, found_);
        for (Sale const& sale : request_.sales) warn_of_cold_inside(book_, sale.formula, found_);
        if (found_.errors_met() != errors) return std::nullopt;
        add_tiers();
        add_other_ways();
        add_up();
        judge();
        if (found_.errors_met() != errors) return std::nullopt;
        return std::move(quote_);
    }

private:
    Order const* keep(Order const& order) {
        quote_.kept = Kept(costing_.linked());
        return quote_.kept.copy_of(order);
    }

    [[nodiscard]] CostedAs way_of(OrderLine const& line) const {
        if (line.costed_as) return *line.costed_as;
        if (order_.costed_as) return *order_.costed_as;
        return shop_.costed_as.value_or(CostedAs::made_together);
    }

    /// What is sold to others and made together with this.
    void add_companions() {
        for (Order const* const other : quote_.companions) {
            std::vector<Sale> sales = sales_of(*other, book_);
            can_cost_each(sales, *other);
            if (!sales.empty()) request_.companions.push_back(std::move(sales));
        }
    }

    void add_other_ways() {
        for (CostedAs const way : {CostedAs::alone, CostedAs::made_together, CostedAs::usual_run}) {
            if (way == CostedAs::made_together && request_.companions.empty()) continue;
            CostRequest request = request_;
            request.ways.assign(request.sales.size(), way);
            request.divides_losses = request.keeps_record = false;
            OrderCost const cost = costing_.cost(request);
            CostedWay result{way, {}, cost.all()};
            for (std::size_t i = 0; i < request.sales.size(); ++i) {
                auto const line = price(cost, i);
                if (!line) return;
                result.lines.push_back(*line);
            }
            quote_.in_other_ways.push_back(std::move(result));
        }
    }

    [[nodiscard]] TaxRate tax_of_line(std::size_t i) const {
        if (order_.tax.is_given()) return tax_rate(shop_.tax, order_.tax);
        return tax_rate(shop_.tax, book_.formulas[request_.sales[i].formula].tax);
    }

    std::optional<QuoteLine> price(OrderCost const& cost, std::size_t i) {
        OrderLine const& line = order_.lines[i];
        Sale const& sale = request_.sales[i];
        Policy const policy =
            policy_of(shop_, book_.formulas[sale.formula], sale.unit, &line.price);
        Share const deposit = order_.deposit.value_or(shop_.deposit);
        Money const fixed = payment_.fixed * payments_with(deposit);
        FeeTerms const fee{payment_.share, fixed_share(fixed, cost, cost.lines[i])};
        return price_line(cost.lines[i], policy, line.origin, fee, tax_of_line(i), true,
                          discount_in_price());
    }

    /// The part of a price that the order's discount takes, where it is said to be in the price.
    [[nodiscard]] Number discount_in_price() const {
        if (!order_.is_discount_in_price || !order_.discount) return 0;
        auto const* share = std::get_if<Surcharge>(&*order_.discount);
        return share == nullptr ? Number() : share->value();
    }

    /// What is no item has a price that is given, bears no fixed fee, and earns what is left over its cost.
    QuoteExtra price(FreeLine const& line) {
        QuoteExtra extra;
        extra.line = &line;
        Money const nothing(0, shop_.currency);
        extra.burden = {line.cost + nothing,
                        nothing,
                        nothing,
                        line.cost + nothing,
                        {payment_.share, nothing},
                        tax_rate(shop_.tax, order_.tax.is_given() ? order_.tax : line.tax)};
        extra.ask(to_coins(line.price), is_tax_contained());
        extra.amount = extra.price * line.count;
        if (line.count.sign() > 0 && !line.price.is_negative())
            warn_of_loss(line.text, extra, line.origin);
        return extra;
    }

    void say_how_long() {
        auto const days = order_.valid ? order_.valid : shop_.valid;
        if (!days) return;
        Date const from = order_.date.value_or(quote_.date);
        quote_.valid_until = from + *days;
        quote_.is_validity_cut = order_.due && *order_.due < *quote_.valid_until;
        if (quote_.is_validity_cut) quote_.valid_until = order_.due;
    }

    /// The whole order with another count of one line. The one place where tiers cost anything.
    [[nodiscard]] OrderCost cost_at(std::size_t line, Integer const& count) const {
        CostRequest request = request_;
        request.sales[line].count = count;
        request.divides_losses = request.keeps_record = false;
        return costing_.cost(request);
    }

    /// A line at other counts, each costed once.
    class LineCounts {
    public:
        LineCounts(OrderQuoter& quoter, std::size_t line) : quoter_(quoter), line_(line) {}

        [[nodiscard]] std::optional<std::vector<Integer>> dearest(Integer const& first,
                                                                  Integer const& last) const {
            CostRequest const& request = quoter_.request_;
            // what is shared may fall more heavily on a larger count: each has to be costed
            if (request.ways[line_] == CostedAs::made_together && !request.companions.empty())
                return all_counts(first, last);
            return dearest_counts(quoter_.book_, quoter_.costing_.formulary(), request.sales, line_,
                                  first, last);
        }
        [[nodiscard]] CountPrice const& at(Integer const& count) {
            auto known = known_.find(count);
            if (known == known_.end()) {
                // what keeps a target out of reach does not depend on the count: the order itself has a price
                QuoteLine const line = quoter_.price(quoter_.cost_at(line_, count), line_).value();
                known = known_.emplace(count, CountPrice{line, count}).first;
            }
            return known->second;
        }
        [[nodiscard]] bool is_tax_contained() const { return quoter_.is_tax_contained(); }

    private:
        static std::optional<std::vector<Integer>> all_counts(Integer const& first,
                                                              Integer const& last) {
            if (last - first > most_shared_counts) return std::nullopt;
            std::vector<Integer> counts;
            for (Integer count = first; count <= last; ++count) counts.push_back(count);
            return counts;
        }
        static constexpr int most_shared_counts = 200;

        OrderQuoter& quoter_;
        std::size_t line_;
        std::map<Integer, CountPrice> known_;
    };

    void add_tiers() {
        if (order_.quantity_breaks.empty()) return;
        for (std::size_t i = 0; i < order_.lines.size(); ++i) {
            std::vector<Tier> tiers = tiers_of_line(i);
            lower_to_cap(i, tiers);
            QuoteLine const& line = quote_.lines[i];
            cap_tiers(tiers, Cap{order_.lines[i].count, order_.lines[i].count, line.amount});
            warn_of_dearer_tiers(i, tiers);
            quote_.tiers.insert(quote_.tiers.end(), std::make_move_iterator(tiers.begin()),
                                std::make_move_iterator(tiers.end()));
        }
    }

    /// A price that is given is one tier.
    std::vector<Tier> tiers_of_line(std::size_t i) {
        std::vector<Integer> starts = order_.quantity_breaks;
        starts.push_back(order_.lines[i].count);
        std::vector<TierRange> ranges = tier_ranges(starts, order_.most_counted);
        if (std::holds_alternative<GivenPrice>(quote_.lines[i].target))
            ranges = {{ranges.front().from, ranges.back().to}};
        LineCounts counts(*this, i);
        std::vector<Tier> tiers;
        for (TierRange const& range : ranges) {
            if (auto tier = tier_of(i, range, counts))
                tiers.push_back(*std::move(tier));
            else
                found_.warn(order_.lines[i].origin, "tier-too-wide",
                            fmt::format("what '{}' costs at most from {} to {} of them takes too "
                                        "long to tell",
                                        quote_.lines[i].title(book_), range.from.str(),
                                        range.to.str()),
                            "add quantity breaks between, or say the most: "
                            "'quantity breaks: {starts: [1, 10], most: 60}'");
        }
        return tiers;
    }

    /// Where more than is ordered would cost less, that is the most that is asked: in whole coins each, on no price point.
    void lower_to_cap(std::size_t i, std::vector<Tier> const& tiers) {
        QuoteLine& line = quote_.lines[i];
        Integer const& count = order_.lines[i].count;
        auto const cap = cap_above(count, line.amount, tiers, std::nullopt);
        if (!cap) return;
        bool const lost = line.loses();
        Coins const asked = line.amount;
        line.ask(to_coins(cap->total.money() / Number(count), {Tie::down, 0}), is_tax_contained());
        line.amount = line.price * count;
        found_.warn(order_.lines[i].origin, "more-costs-less",
                    fmt::format("{} of '{}' would be {}, but {} are {}: no more than {} is asked",
                                count.str(), line.title(book_), shown(asked.money()),
                                cap->more.str(), shown(cap->total.money()),
                                shown(line.amount.money())),
                    fmt::format("offer {}, or give this line its own price", cap->more.str()));
        if (!lost) warn_of_loss(line, order_.lines[i].origin);
    }

    /// Each tier that is dearer than a smaller one, once.
    void warn_of_dearer_tiers(std::size_t line, std::vector<Tier> const& tiers) {
        Tier const* best = nullptr;
        for (Tier const& tier : tiers) {
            if (best != nullptr && best->price < tier.price)
                found_.warn(
                    order_.lines[line].origin, "break-dearer",
                    fmt::format("'{}' from {} on costs more each than from {} on: {} against {}",
                                quote_.lines[line].title(book_), tier.from.str(), best->from.str(),
                                shown(tier.price.money()), shown(best->price.money())),
                    "a part batch or a further oven load does this: choose another start");
            if (best == nullptr || tier.price < best->price) best = &tier;
        }
    }

    void add_up() {
        OrderBill bill;
        for (std::size_t i = 0; i < quote_.lines.size(); ++i)
            bill.goods.push_back({quote_.lines[i].amount, tax_of_line(i)});
        for (QuoteExtra const& extra : quote_.extras)
            bill.goods.push_back({extra.amount, extra.burden.tax});
        bill.main = order_.tax.is_given() ? tax_rate(shop_.tax, order_.tax) : shop_.tax.rate;
        bill.date = order_.date.value_or(quote_.date);
        bill.fee = payment_;
        bill.cost = quote_.cost.all();
        for (QuoteExtra const& extra : quote_.extras)
            bill.cost += extra.burden.cost * Number(extra.line->count);
        bill.delivery_cost = quote_.cost.delivery_apart;
        auto totals = order_totals(shop_, order_, bill);
        if (!totals) return found_.error(order_.origin, totals.error());
        quote_.totals = *std::move(totals);
        for (std::size_t i = 0; i < bill.goods.size(); ++i) {
            Coins revenue = bill.goods[i].amount;
            if (shop_.tax.is_contained) revenue += -quote_.totals.tax_of_goods[i];
            std::size_t const lines = quote_.lines.size();
            (i < lines ? quote_.lines[i].revenue : quote_.extras[i - lines].revenue) = revenue;
        }
    }

    /// What all lines earn together, and what is left of that after the discount.
    void judge() {
        QuoteTotals const& totals = quote_.totals;
        bool const has_discount = !totals.discount.is_zero();
        Number const left =
            has_discount ? 1 - totals.discount.money() / totals.subtotal.money() : Number(1);
        Number const in_price = 1 - discount_in_price();
        GoodsEarned after;
        Money missing;
        auto const enter = [&](auto& line, Number const& count,
                               std::optional<Money> const& wanted) {
            quote_.goods.net += line.net_price * count;
            quote_.goods.profit += line.earned.profit * count;
            AfterDiscount rest{has_discount ? earning(line.net_price * left, line.burden) : line};
            after.net += rest.net_price * count;
            after.profit += rest.earned.profit * count;
            if (wanted) {
                rest.is_below_target = rest.net_price < *wanted * in_price;
                missing += (*wanted * in_price - rest.net_price) * count;
            }
            if (has_discount) line.after_discount = std::move(rest);
        };
        for (QuoteLine& line : quote_.lines) enter(line, line.count, line.wanted);
        for (QuoteExtra& extra : quote_.extras) enter(extra, Number(extra.line->count), {});
        after.is_below_target = missing.amount().is_positive();
        for (GoodsEarned* goods : {&quote_.goods, &after})
            if (goods->net.amount().is_positive()) goods->margin = goods->profit / goods->net;
        if (!has_discount) return;
        quote_.goods_after_discount = after;
        warn_of_discount();
    }

    /// That the discount costs more than there is to give, once: of the order, else of its lines.
    void warn_of_discount() {
        GoodsEarned const& after = *quote_.goods_after_discount;
        std::string const discount = shown(quote_.totals.discount.money());
        std::string const help = "lower it, or have the prices pay for it: "
                                 "'discount: {share: 5 %, in the price: yes}'";
        Money const profit = quote_.totals.profit;
        Money const without = profit + quote_.goods.profit - after.profit;
        if (profit.is_negative() && !without.is_negative())
            return found_.warn(order_.origin, "discount-below-cost",
                               fmt::format("with its discount of {} this order loses {}", discount,
                                           shown(-profit)),
                               help);
        auto const tell = [&](Code code, std::string_view one, std::string_view several,
                              auto is_told) {
            std::size_t count = 0;
            QuoteLine const* first = nullptr;
            for (QuoteLine const& line : quote_.lines) {
                if (!is_told(line)) continue;
                if (first == nullptr) first = &line;
                ++count;
            }
            if (first == nullptr) return false;
            std::string const names = count == 1 ? fmt::format("'{}' {}", first->title(book_), one)
                                                 : fmt::format("{} lines {}, '{}' first", count,
                                                               several, first->title(book_));
            found_.warn(order_.origin, code,
                        fmt::format("with the discount of {} {}", discount, names), help);
            return true;
        };
        if (tell("discount-below-cost", "loses money", "lose money", [](QuoteLine const& line) {
                return line.after_discount->loses() && !line.loses();
            }))
            return;
        (void)tell("below-target", "misses its target", "miss their targets",
                   [](QuoteLine const& line) { return line.after_discount->is_below_target; });
    }

    Quote quote_;
    Order const& order_; ///< that the quote keeps
    CostRequest request_;
    FeeTerms payment_; ///< the fee of one
};

} // namespace quoting_detail

GROAT_INLINE std::vector<Order const*> companions_of(Order const& order, Book const& book) {
    std::vector<Order const*> others;
    for (std::size_t const index : order.companions) others.push_back(&book.orders[index]);
    return others;
}

GROAT_INLINE std::optional<Date> pricing_date(Order const& order,
                                              std::vector<Order const*> const& companions) {
    std::optional<Date> latest = order.date;
    for (Order const* const other : companions) latest = std::max(latest, other->date);
    return latest;
}

GROAT_INLINE std::optional<Quote> quote(Costing const& costing, Order const& order,
                                        std::vector<Order const*> companions, Diagnostics& found) {
    return quoting_detail::OrderQuoter(costing, order, companions, found).result();
}

GROAT_INLINE std::optional<Quote> quote(Costing const& costing, Order const& order,
                                        Diagnostics& found) {
    return quote(costing, order, companions_of(order, costing.book()), found);
}

} // namespace groat
