#pragma once

#include <groat/model/link.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/name.hpp>
#include <groat/base/rounding.hpp>
#include <groat/model/base_links.hpp>
#include <groat/model/book_names.hpp>
#include <groat/model/companion_links.hpp>
#include <groat/model/receipt_links.hpp>
#include <groat/model/run_links.hpp>
#include <groat/model/stock_links.hpp>
#include <groat/model/yield_links.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <tuple>
#include <utility>
#include <vector>

namespace groat {

namespace link_detail {

class Linker : private BookNames {
public:
    explicit Linker(Book& book) : BookNames(book) {}

    Diagnostics run() {
        index_names();
        watch(book_.shop, [this](Shop& shop) { link_shop(shop); });
        watch_each(book_.ingredients, [this](Ingredient& each) {
            resolve(each.preferred_supplier, book_.suppliers, "unknown-supplier", "supplier",
                    "suppliers are named in the price lists and on receipts");
        });
        link_offers();
        link_yields(book_, suggesting(), found_);
        link_by_products();
        link_receipts();
        watch_each(book_.formulas, [this](Formula& each) { link_formula(each); });
        watch(book_.stock, [this](Stock&) {
            link_stock(
                book_,
                [this](auto missed, std::string otherwise) {
                    return suggest(missed, all_names_, std::move(otherwise));
                },
                found_);
        });
        watch_each(book_.orders, [this](Order& each) { link_order(each); });
        link_companions(book_, suggesting(), found_);
        link_runs(book_.runs,
                  {book_.formulas, book_.orders, book_.shop.roles, book_.ingredient_index},
                  suggesting(), found_);
        watch_each(book_.menus, [this](Menu& each) { link_menu(each); });
        refuse_repeats(book_.scenarios,
                       [](auto const& each) { return fmt::format("'{}'", each.name); });
        refuse_repeats(book_.orders,
                       [](auto const& each) { return fmt::format("order {}", each.id); });
        refuse_repeats(book_.menus,
                       [](auto const& each) { return fmt::format("menu '{}'", each.name); });
        refuse_repeats(book_.yield_tests, [](auto const& each) {
            return fmt::format("the yield test '{}'", each.name);
        });
        return std::move(found_);
    }

private:
    void link_shop(Shop& shop) {
        for (Oven& oven : shop.ovens) {
            if (!oven.fuel.is_given())
                found_.error(oven.origin, "missing-fuel",
                             fmt::format("'{}' does not say what it burns", oven.name),
                             "add 'fuel: electricity'");
            resolve(oven.fuel, shop.tariffs, "unknown-tariff", "tariff",
                    fmt::format("add '{}: 0.00 / kWh' with its price to 'energy' in shop.yaml",
                                oven.fuel.name));
        }
        for (Task& task : shop.order_work) link_task(task);
        for (Task& task : shop.counter_work) link_task(task);
        resolve(shop.driver, shop.roles, "unknown-role", "role", "add it to 'labour' in shop.yaml");
        link_delivery_tax(shop.tax.delivery);
        link_fee(shop.paid_by);
        for (Supplier& supplier : book_.suppliers)
            supplier.delivery_share = supplier.share_of_usual_order();
    }

    void link_receipts() {
        for (Receipt& receipt : book_.receipts)
            for (BoughtPacks& bought : receipt.items)
                link_bought(bought.item, "add it to ingredients.yaml or supplies.yaml");
        link_suppliers_of_receipts(book_, found_);
        link_bases(book_);
        add_paid_offers(book_);
    }

    void link_offers() {
        drop_paid_offers(book_);
        book_.offers_of.assign(book_.ingredients.size(), {});
        for (std::size_t i = 0; i < book_.offers.size(); ++i) {
            Reference& item = book_.offers[i].item;
            watch(book_.offers[i], [&](Offer&) {
                link_bought(item, "add it to ingredients.yaml or supplies.yaml");
            });
            if (item.is_resolved()) book_.offers_of[item.index].push_back(i);
        }
    }

    /// What is bought: an ingredient or a supply.
    void link_bought(Reference& item, std::string const& otherwise) {
        auto const found = book_.ingredient_index.find(item.name);
        item.index = found == book_.ingredient_index.end() ? unresolved : found->second;
        if (!item.is_resolved())
            found_.error(item.origin, "unknown-ingredient",
                         fmt::format("no ingredient or supply is called '{}'", item.name),
                         suggest(item.name, ingredient_names_, otherwise));
    }

    void link_by_products() {
        for (std::size_t i = 0; i < book_.ingredients.size(); ++i) {
            auto const& offers = book_.offers_of[i];
            bool const is_cited = std::any_of(offers.begin(), offers.end(), [&](std::size_t offer) {
                return book_.offers[offer].yield_source.is_cited();
            });
            watch(book_.ingredients[i],
                  [&](Ingredient const& each) { check_by_products(each, is_cited, found_); });
        }
    }

    void link_supply(Consumption& use) {
        use.supply.index = unresolved;
        auto const found = book_.ingredient_index.find(use.supply.name);
        if (found == book_.ingredient_index.end()) {
            found_.error(use.supply.origin, "unknown-supply",
                         fmt::format("no supply is called '{}'", use.supply.name),
                         suggest(use.supply.name, supply_names_, "add it to supplies.yaml"));
        } else if (!book_.ingredients[found->second].is_supply()) {
            found_.error(use.supply.origin, "food-as-supply",
                         fmt::format("'{}' is food, not a supply", use.supply.name),
                         "food goes under 'lines'; what is not eaten is listed in supplies.yaml");
        } else {
            use.supply.index = found->second;
        }
    }

    void link_line(Line& line) {
        line.of = Line::Of::unknown;
        line.item.index = unresolved;
        if (auto const food = book_.ingredient_index.find(line.item.name);
            food != book_.ingredient_index.end()) {
            if (book_.ingredients[food->second].is_supply()) {
                found_.error(line.item.origin, "supply-as-food",
                             fmt::format("'{}' is a supply and is not eaten", line.item.name),
                             "supplies go under 'consumables', or under 'packing' of what is sold");
                return;
            }
            line.of = Line::Of::ingredient;
            line.item.index = food->second;
        } else if (auto const used = book_.formula_index.find(line.item.name);
                   used != book_.formula_index.end()) {
            line.of = Line::Of::formula;
            line.item.index = used->second;
        } else {
            found_.error(line.item.origin, "unknown-ingredient",
                         fmt::format("no ingredient or formula is called '{}'", line.item.name),
                         suggest(line.item.name, all_names_,
                                 "add it to ingredients.yaml, or write its formula"));
        }
    }

    void link_formula(Formula& formula) {
        for (Line& line : formula.lines) link_line(line);
        for (Reference& base : formula.percentage_base) {
            std::vector<std::string> names;
            base.index = unresolved;
            for (std::size_t i = 0; i < formula.lines.size(); ++i) {
                names.push_back(formula.lines[i].item.name);
                if (names.back() == base.name) base.index = i;
            }
            if (!base.is_resolved())
                found_.error(base.origin, "unknown-ingredient",
                             fmt::format("the base '{}' is not a line of this formula", base.name),
                             did_you_mean(base.name, names, "name a line, such as the flour"));
        }
        if (formula.oven)
            resolve(formula.oven->oven, book_.shop.ovens, "unknown-oven", "oven",
                    "add it to 'ovens' in shop.yaml");
        for (Task& task : formula.labour) link_task(task);
        for (Consumption& use : formula.consumables) link_supply(use);
        link_tax(formula.tax);
        refuse_repeats(formula.sold_as,
                       [](auto const& each) { return fmt::format("'{}'", each.name); });
        for (SaleUnit& unit : formula.sold_as) {
            for (Consumption& use : unit.packing) link_supply(use);
            for (Task& task : unit.labour) link_task(task);
        }
    }

    /// A trip that is costed at nothing would be given away in silence.
    void judge_delivery(Order const& order) {
        if (!order.delivery) return;
        bool const is_timed = order.delivery->minutes.is_positive();
        if (is_timed && !book_.shop.driver.is_given())
            found_.error(order.delivery->origin, "missing-driver",
                         "this delivery takes somebody's time, and shop.yaml does not say whose",
                         "add 'driver: assistant', one of its roles, to its 'delivery'");
        if (is_timed || order.delivery->charge == DeliveryCharge::amount) return;
        bool const is_far = order.delivery->distance.amount.is_positive();
        bool const is_paid_by_way = book_.shop.delivery_rate.amount.amount().is_positive();
        if (book_.shop.delivery_flat.amount().is_positive() || (is_far && is_paid_by_way)) return;
        found_.warn(order.delivery->origin, "delivery-unpaid",
                    "this delivery is costed at nothing: shop.yaml says of no trip what it costs",
                    "say it there, 'delivery: {flat: 4.00, rate: 0.70 / mi}', or say here what is "
                    "charged, 'charge: 5.00'");
    }

    void link_order(Order& order) {
        link_fee(order.paid_by);
        link_tax(order.tax);
        judge_delivery(order);
        if (order.delivery) link_delivery_tax(order.delivery->tax);
        for (FreeLine& extra : order.extras) link_tax(extra.tax);
        for (OrderLine& line : order.lines) {
            auto const found = book_.formula_index.find(line.item.name);
            if (found == book_.formula_index.end()) {
                found_.error(line.item.origin, "unknown-formula",
                             fmt::format("no formula is called '{}'", line.item.name),
                             suggest(line.item.name, formula_names_,
                                     "an order names formulas: write one for it"));
                continue;
            }
            line.item.index = found->second;
            link_way(line.sale_unit, book_.formulas[found->second]);
            ask_which(line, line.count, "count");
        }
    }

    /// How something is sold, in the one way that is meant wherever nothing is said.
    void link_way(Reference& way, Formula const& formula) {
        resolve(way, formula.sold_as, "unknown-sale-unit", "sale unit",
                fmt::format("add it to 'sold as' of '{}'", formula.name));
        if (!way.is_given()) way.index = formula.usual_way();
    }

    /// "4 dozen" of what is sold by the box: that many pieces, or that many boxes?
    template <class Entry>
    void ask_which(Entry const& entry, Integer const& count, std::string_view key) {
        if (entry.counted.empty() || !entry.sale_unit.is_resolved()) return;
        SaleUnit const& way = book_.formulas[entry.item.index].sold_as[entry.sale_unit.index];
        if (!way.holds.is(Dimension::count) || way.holds.amount == 1) return;
        Number const units = Number(count) / way.holds.amount;
        std::string const in_units = decimal_at_most(units, 2);
        found_.error(
            entry.origin, "which-count",
            fmt::format("'{}' may be {} pieces, which are {} of '{}', or {} of '{}'", entry.counted,
                        count.str(), in_units, way.name, count.str(), way.name),
            units.is_whole()
                ? fmt::format("write '{}: {}' or '{}: {}'", key, in_units, key, count.str())
                : fmt::format("write how many of '{}' are meant, as '{}: {}'", way.name, key,
                              decimal_at_most(ceiling(units), 0)));
    }

    void link_menu(Menu& menu) {
        for (PaidPart& part : menu.paid_by) link_paid_part(part.how);
        std::map<std::pair<std::size_t, std::size_t>, Span> offered;
        for (MenuItem& item : menu.items) {
            link_tax(item.tax);
            resolve(item.category, menu.categories, "unknown-category", "category",
                    "add it to 'categories' of this menu, as 'drinks: {margin: 60 %}'");
            auto const found = book_.formula_index.find(item.item.name);
            if (found == book_.formula_index.end()) {
                found_.error(item.item.origin, "unknown-formula",
                             fmt::format("no formula is called '{}'", item.item.name),
                             suggest(item.item.name, formula_names_,
                                     "a menu names formulas: write one for it"));
                continue;
            }
            item.item.index = found->second;
            auto const& ways = book_.formulas[found->second].sold_as;
            link_way(item.sale_unit, book_.formulas[found->second]);
            if (item.sale_unit.is_given() && !item.sale_unit.is_resolved()) continue;
            ask_which(item, item.sold.value_or(0), "sold");
            auto const [first, is_new] =
                offered.emplace(std::pair(item.item.index, item.sale_unit.index), item.origin);
            if (!is_new)
                found_.add({Severity::error,
                            "given-twice",
                            item.sale_unit.is_resolved()
                                ? fmt::format("'{}' as '{}' stands on this menu twice",
                                              item.item.name, ways[item.sale_unit.index].name)
                                : fmt::format("'{}' stands on this menu twice", item.item.name),
                            item.origin,
                            {{"first given here", first->second}},
                            "remove one, or say with 'as' how each is sold"});
        }
    }
};

} // namespace link_detail

GROAT_INLINE Diagnostics link(Book& book) { return link_detail::Linker(book).run(); }

namespace link_detail {

/// Whether an error stands anywhere in the book, in its names or in what was read of it.
inline bool has_doubts(Book const& book) {
    for (std::size_t part = 0; part < part_count; ++part)
        if (book.doubts.any(static_cast<BookPart>(part))) return true;
    auto const any = [](auto const& things) {
        return std::any_of(things.begin(), things.end(),
                           [](auto const& each) { return each.is_in_doubt; });
    };
    return book.shop.is_in_doubt || book.stock.is_in_doubt || any(book.ingredients) ||
           any(book.offers) || any(book.formulas) || any(book.orders) || any(book.scenarios) ||
           any(book.yield_tests) || any(book.runs) || any(book.menus);
}

/// Adds what is not there yet, however far back it stands.
inline void add_new(Diagnostics const& met, Diagnostics& found) {
    if (met.empty()) return;
    std::set<std::tuple<Span, std::string, std::string>> known;
    for (Diagnostic const& each : found.sorted()) known.emplace(each.where, each.code, each.what);
    for (Diagnostic const& each : met.sorted())
        if (known.count({each.where, each.code, each.what}) == 0) found.add(each);
}

} // namespace link_detail

GROAT_INLINE std::optional<LinkedBook> link(Book book, Diagnostics& found) {
    Diagnostics const met = link(book);
    link_detail::add_new(met, found);
    if (found.has_errors() || met.has_errors() || link_detail::has_doubts(book))
        return std::nullopt;
    return LinkedBook(std::move(book));
}

} // namespace groat
