#pragma once

#include <groat/price/menu.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/sum.hpp>
#include <groat/cost/reach.hpp>
#include <groat/price/item_cost.hpp>

#include <span>

namespace groat {

namespace menu_detail {

inline std::optional<Money> per_hour(Money const& contribution, Number const& time) {
    if (time.is_zero()) return std::nullopt;
    return contribution / (time / 60);
}

} // namespace menu_detail

GROAT_INLINE std::optional<Number> MenuSum::food_cost() const {
    if (sales.is_zero()) return std::nullopt;
    return cost[Category::ingredients] / sales;
}
GROAT_INLINE std::optional<Number> MenuSum::prime_cost() const {
    if (sales.is_zero()) return std::nullopt;
    return cost.prime() / sales;
}
GROAT_INLINE std::optional<Number> MenuSum::margin() const {
    if (sales.is_zero()) return std::nullopt;
    return profit / sales;
}
GROAT_INLINE std::optional<Money> MenuSum::per_labour_hour() const {
    return menu_detail::per_hour(contribution, labour_minutes);
}
GROAT_INLINE std::optional<Money> MenuSum::per_oven_hour() const {
    return menu_detail::per_hour(contribution, oven_minutes);
}
GROAT_INLINE std::optional<Money> MenuLine::per_labour_hour() const {
    return menu_detail::per_hour(earned.contribution, labour_minutes);
}
GROAT_INLINE std::optional<Money> MenuLine::per_oven_hour() const {
    return menu_detail::per_hour(earned.contribution, oven_minutes);
}

GROAT_INLINE MenuSum& MenuSum::operator+=(MenuSum const& other) {
    items += other.items;
    units += other.units;
    sales += other.sales;
    cost += other.cost;
    fee += other.fee;
    profit += other.profit;
    contribution += other.contribution;
    labour_minutes += other.labour_minutes;
    oven_minutes += other.oven_minutes;
    return *this;
}

namespace quoting_detail {

/// One item as often as it was sold.
inline MenuSum sum_of(MenuLine const& line) {
    Number const units = line.units();
    MenuSum sum{1,
                units,
                line.net_price * units,
                {},
                line.earned.fee * units,
                line.earned.profit * units,
                line.earned.contribution * units,
                line.labour_minutes * units,
                line.oven_minutes * units};
    sum.cost = line.target.cost * (units / line.target.count);
    return sum;
}

class MenuCalculator {
public:
    MenuCalculator(Costing const& costing, Menu const& menu, Diagnostics& found)
        : costing_(costing),
          book_(costing.book()),
          menu_(*keep(menu)),
          found_(found),
          pricer_(costing, found, menu.is_tax_contained) {
        result_.menu = &menu_;
        result_.date = costing.date();
        result_.is_tax_contained = menu.is_tax_contained.value_or(book_.shop.tax.is_contained);
        result_.paid_by = payment_in_words();
    }

    std::optional<MenuCost> result() {
        std::size_t const errors = found_.errors_met();
        result_.lines.reserve(menu_.items.size());
        for (MenuItem const& item : menu_.items) price(item);
        if (found_.errors_met() != errors) return std::nullopt;
        warn_of_stale_prices();
        warn_of_empty_categories();
        add_up();
        if (menu_.has_sales()) mix();
        return std::move(result_);
    }

private:
    Menu const* keep(Menu const& menu) {
        result_.kept = Kept(costing_.linked());
        return result_.kept.copy_of(menu);
    }

    /// "card", or "card 60 %, cash 40 %"; nothing where no fee is taken.
    [[nodiscard]] std::optional<std::string> payment_in_words() const {
        if (menu_.paid_by.empty())
            return book_.shop.paid_by.is_resolved()
                       ? std::optional(book_.shop.fees[book_.shop.paid_by.index].name)
                       : std::nullopt;
        bool has_fee = false;
        std::string words;
        for (PaidPart const& part : menu_.paid_by) {
            has_fee = has_fee || part.how.is_resolved();
            words += (words.empty() ? "" : ", ") + part.how.name;
            if (menu_.paid_by.size() > 1)
                words += fmt::format(" {} %", decimal_at_most(part.share.value() * 100, 2));
        }
        return has_fee ? std::optional(words) : std::nullopt;
    }

    void price(MenuItem const& item) {
        Formula const& formula = book_.formulas[item.item.index];
        SaleUnit const* const unit =
            item.sale_unit.is_resolved() ? &formula.sold_as[item.sale_unit.index] : nullptr;
        ItemTerms terms;
        terms.nearer = {&item.target};
        if (item.category.is_resolved())
            terms.nearer.push_back(&menu_.categories[item.category.index].price);
        terms.nearer.push_back(&menu_.price);
        if (item.tax.is_given()) terms.tax = &item.tax;
        if (!menu_.paid_by.empty()) terms.paid_by = &menu_.paid_by;
        terms.items_per_payment = menu_.items_per_payment;
        terms.is_at_counter = true;
        terms.where = item.origin;
        terms.is_brief = true;
        terms.is_at_counter = true;
        auto cost = pricer_.item(item.item.index, unit, terms);
        if (!cost) return;
        MenuLine line;
        line.item = &item;
        line.target = std::move(cost->line);
        line.title = line.target.title(book_);
        if (!item.name.empty()) line.title = item.name;
        CostLine const& costed = cost->cost.lines.front();
        line.labour_minutes = costed.labour_minutes / line.target.count;
        line.oven_minutes = costed.oven_minutes / line.target.count;
        line.has_run = cost->run.said != StandardRun::Said::nobody;
        if (!item.price && !line.target.has_price) {
            found_.error(
                item.origin, "no-price",
                fmt::format("'{}' has no price, and nothing says what it is to reach", line.title),
                "add 'price: 5.50', or a target such as 'price: {margin: 60 %}' to the menu");
            return;
        }
        line.is_price_now = item.price.has_value();
        static_cast<Priced&>(line) = line.target;
        if (item.price) line.ask(to_coins(*item.price), result_.is_tax_contained);
        if (item.price && line.target.has_price)
            line.gap = line.price.money() - line.target.price.money();
        pricer_.warn_of_loss(line.title, line, item.origin);
        if (line.is_price_now && line.target.has_price && line.target.loses())
            found_.warn(item.origin, "target-below-cost",
                        fmt::format("the target of '{}' would put it at {}, which loses {} each",
                                    line.title, pricer_.shown(line.target.price.money()),
                                    pricer_.shown(-line.target.earned.profit)),
                        "aim at a margin, which sees all of the cost");
        result_.lines.push_back(std::move(line));
    }

    /// Once for each thing that anything on the menu takes.
    void warn_of_stale_prices() {
        std::vector<Sale> sales;
        for (MenuLine const& line : result_.lines)
            sales.push_back({line.target.formula, line.target.unit});
        Reach const reach = reach_of(book_, sales);
        for (std::size_t i = 0; i < reach.bought.size(); ++i)
            if (reach.bought[i])
                pricer_.warn_of_stale_price(
                    book_.offers[costing_.formulary().costs.purchases[i]->offer]);
    }

    void warn_of_empty_categories() {
        std::vector<bool> has_items(menu_.categories.size(), false);
        for (MenuItem const& item : menu_.items)
            if (item.category.is_resolved()) has_items[item.category.index] = true;
        for (std::size_t i = 0; i < has_items.size(); ++i)
            if (!has_items[i])
                found_.warn(menu_.categories[i].origin, "empty-category",
                            fmt::format("nothing on the menu is in '{}'", menu_.categories[i].name),
                            fmt::format("write 'category: {}' at an item, or take it out",
                                        menu_.categories[i].name));
    }

    void add_up() {
        std::vector<std::vector<MenuLine const*>> by_category(menu_.categories.size() + 1);
        for (MenuLine const& line : result_.lines)
            by_category[line.item->category.is_resolved() ? line.item->category.index
                                                          : menu_.categories.size()]
                .push_back(&line);
        for (auto const& lines : by_category) {
            result_.categories.push_back(
                sum_in_pairs(std::span<MenuLine const* const>(lines),
                             [](MenuLine const* line) { return sum_of(*line); }));
            result_.total += result_.categories.back();
        }
    }

    void mix() {
        std::vector<ItemSales> sales;
        for (MenuLine const& line : result_.lines)
            sales.push_back({line.units(), line.earned.contribution});
        result_.mix = menu_mix(sales);
        if (!result_.mix) {
            found_.warn(menu_.origin, "nothing-sold",
                        "nothing was sold, so there is no mix to weigh",
                        "write what was sold, as 'sold: 120' at an item, or leave it out at all");
            return;
        }
        if (!menu_.fixed_costs && menu_.wanted_profit.is_zero()) return;
        MenuSum const& all = result_.total;
        Money const fixed = menu_.fixed_costs.value_or(Money(0, book_.shop.currency));
        UnitSale const average{all.contribution / all.units, all.sales / all.units};
        Money const profit = all.contribution - fixed;
        // the readers refuse a tax that takes all of a profit
        Money const wanted = before_tax(menu_.wanted_profit, menu_.tax_on_profit).value();
        result_.break_even =
            MenuBreakEven{fixed,
                          all.cost.total() - all.cost.variable(book_.shop),
                          profit,
                          profit.is_negative() ? Money(0, book_.shop.currency)
                                               : profit * menu_.tax_on_profit.value(),
                          average,
                          wanted,
                          groat::break_even(fixed, average),
                          groat::break_even(fixed, average, wanted)};
    }

    Costing const& costing_;
    Book const& book_;
    MenuCost result_;
    Menu const& menu_; ///< that the result keeps
    Diagnostics& found_;
    ItemPricer pricer_;
};

} // namespace quoting_detail

GROAT_INLINE std::optional<MenuCost> cost_menu(Costing const& costing, Menu const& menu,
                                               Diagnostics& found) {
    return quoting_detail::MenuCalculator(costing, menu, found).result();
}

} // namespace groat
