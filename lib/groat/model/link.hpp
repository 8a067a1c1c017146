/// Names into indices: every reference in a book resolved once, and what stands for nothing reported.
#pragma once

#include <groat/model/book.hpp>
#include <groat/model/run_links.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace groat {

/// Resolves every name in the book to an index and reports names that stand for nothing, with the nearest
/// that does; names given twice; supplies used as food and food used as supplies.
///
/// To be called once after the book was filled; what comes later (see cost/) relies on the indices and
/// takes a book without errors.
[[nodiscard]] Diagnostics link(Book& book);

// ---------------------------------------------------------------------------------------------------

namespace book_links {

class Linker {
public:
    explicit Linker(Book& book) : book_(book) {}

    Diagnostics run() {
        index_names();
        link_shop();
        link_offers();
        link_yields();
        for (Formula& formula : book_.formulas) link_formula(formula);
        for (StockItem& item : book_.stock.items)
            link_bought(item.item, "add it to ingredients.yaml or supplies.yaml");
        for (Order& order : book_.orders) link_order(order);
        link_runs(
            book_.runs, {book_.formulas, book_.orders, book_.shop.roles, book_.ingredient_index},
            [this](auto missed, auto const& names, std::string otherwise) {
                return suggest(missed, names, std::move(otherwise));
            },
            found_);
        for (Menu& menu : book_.menus) link_menu(menu);
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
    void twice(Span where, std::string const& what, Span first) {
        found_.add({Severity::error,
                    "given-twice",
                    fmt::format("{} is given twice", what),
                    where,
                    {{"first given here", first}},
                    "a name stands for one thing: rename or remove one"});
    }

    /// Reports each of `things` that is called as one before it; `words` says what it is called.
    template <class Things, class Words>
    void refuse_repeats(Things const& things, Words const& words) {
        std::map<std::string, Span> known;
        for (auto const& thing : things) {
            auto const [first, is_new] = known.emplace(words(thing), thing.origin);
            if (!is_new) twice(thing.origin, first->first, first->second);
        }
    }

    void index_names() {
        book_.ingredient_index.clear();
        book_.formula_index.clear();
        std::map<std::string_view, Span> all;
        auto const enter = [&](std::string_view name, Span origin) {
            auto const [first, is_new] = all.emplace(name, origin);
            if (!is_new) twice(origin, fmt::format("'{}'", name), first->second);
        };
        for (std::size_t i = 0; i < book_.ingredients.size(); ++i) {
            enter(book_.ingredients[i].name, book_.ingredients[i].origin);
            book_.ingredient_index.emplace(book_.ingredients[i].name, i);
        }
        ingredient_names_ = names_of(book_.ingredients);
        formula_names_ = names_of(book_.formulas);
        all_names_ = ingredient_names_;
        all_names_.insert(all_names_.end(), formula_names_.begin(), formula_names_.end());
        for (Ingredient const& each : book_.ingredients)
            if (each.is_supply()) supply_names_.push_back(each.name);
        for (std::size_t i = 0; i < book_.formulas.size(); ++i) {
            enter(book_.formulas[i].name, book_.formulas[i].origin);
            book_.formula_index.emplace(book_.formulas[i].name, i);
        }
    }

    /// Resolves `reference` among `things` by name; `what` and `where_to` word the complaint.
    template <class Things>
    void resolve(Reference& reference, Things const& things, std::string_view what,
                 std::string const& where_to) {
        if (!reference.is_given()) return;
        for (std::size_t i = 0; i < things.size(); ++i) {
            if (things[i].name == reference.name) {
                reference.index = i;
                return;
            }
        }
        std::string code = fmt::format("unknown-{}", what);
        std::replace(code.begin(), code.end(), ' ', '-');
        found_.error(reference.origin, code,
                     fmt::format("no {} is called '{}'", what, reference.name),
                     suggest(reference.name, names_of(things), where_to));
    }

    void link_task(Task& task) {
        if (task.is_unattended) return;
        if (!task.role.is_given())
            found_.error(task.origin, "missing-role",
                         fmt::format("nobody is said to do '{}'", task.name),
                         "add 'by:' with a role, or 'unattended: yes'");
        else
            resolve(task.role, book_.shop.roles, "role", "add it to 'labour' in shop.yaml");
    }

    void link_shop() {
        Shop& shop = book_.shop;
        for (Oven& oven : shop.ovens) {
            if (!oven.fuel.is_given())
                found_.error(oven.origin, "missing-fuel",
                             fmt::format("'{}' does not say what it burns", oven.name),
                             "add 'fuel: electricity'");
            resolve(oven.fuel, shop.tariffs, "tariff",
                    fmt::format("add '{}: 0.00 / kWh' with its price to 'energy' in shop.yaml",
                                oven.fuel.name));
        }
        for (Task& task : shop.order_work) link_task(task);
        link_fee(shop.paid_by);
        for (Ingredient& ingredient : book_.ingredients)
            resolve(ingredient.preferred_supplier, book_.suppliers, "supplier",
                    "suppliers are named in the price lists");
    }

    void link_fee(Reference& fee) {
        if (fee.name != "none")
            resolve(fee, book_.shop.fees, "fee", "add it to 'fees' in shop.yaml, or write none");
    }

    void link_tax(Reference& tax) {
        if (tax.name != "none")
            resolve(tax, book_.shop.tax.other_rates, "tax rate",
                    "add it to 'other rates' of 'tax' in shop.yaml, or write none");
    }

    void link_offers() {
        book_.offers_of.assign(book_.ingredients.size(), {});
        for (std::size_t i = 0; i < book_.offers.size(); ++i) {
            Reference& item = book_.offers[i].item;
            link_bought(item, "add it to ingredients.yaml or supplies.yaml");
            if (item.is_resolved()) book_.offers_of[item.index].push_back(i);
        }
    }

    /// What is bought: an ingredient or a supply.
    void link_bought(Reference& item, std::string const& otherwise) {
        auto const found = book_.ingredient_index.find(item.name);
        if (found != book_.ingredient_index.end())
            item.index = found->second;
        else
            found_.error(item.origin, "unknown-ingredient",
                         fmt::format("no ingredient or supply is called '{}'", item.name),
                         suggest(item.name, ingredient_names_, otherwise));
    }

    /// Weighs the yield tests, and gives what cites them its yield.
    void link_yields() {
        for (YieldTest& test : book_.yield_tests) {
            resolve(test.supplier, book_.suppliers, "supplier",
                    "suppliers are named in the price lists");
            if (!test.item.is_given()) continue;
            link_bought(test.item, "add it to ingredients.yaml");
            if (!test.item.is_resolved()) continue;
            Ingredient const& item = book_.ingredients[test.item.index];
            if (!item.is_supply()) {
                weigh(test, item, found_);
                continue;
            }
            test.item.index = unresolved;
            found_.error(test.item.origin, "supply-as-food",
                         fmt::format("'{}' is a supply and has no yield", item.name),
                         "what is trimmed is food, and stands in ingredients.yaml");
        }
        for (std::size_t i = 0; i < book_.ingredients.size(); ++i)
            cite(book_.ingredients[i].yield, book_.ingredients[i].yield_source, i, std::nullopt);
        for (Offer& offer : book_.offers)
            if (offer.item.is_resolved())
                cite(offer.yield, offer.yield_source, offer.item.index, offer.supplier);
    }

    void cite(std::optional<Yield>& yield, YieldSource& source, std::size_t ingredient,
              std::optional<std::size_t> supplier) {
        if (!source.is_cited()) return;
        resolve(source.test, book_.yield_tests, "yield test", "add it to yields.yaml");
        if (source.test.is_given() && !source.test.is_resolved()) return;
        auto const cited = cited_yield(source, book_.yield_tests, book_.ingredients[ingredient],
                                       ingredient, supplier);
        if (cited)
            yield = *cited;
        else if (cited.error().code != "unknown-yield" || has_placed_all_tests())
            found_.error(source.test.is_given() ? source.test.origin : source.origin,
                         cited.error());
    }

    /// Whether every yield test is one of something: where an item is misspelt, that is the error.
    [[nodiscard]] bool has_placed_all_tests() const {
        return std::all_of(book_.yield_tests.begin(), book_.yield_tests.end(),
                           [](YieldTest const& test) { return test.item.is_resolved(); });
    }

    void link_supply(Consumption& use) {
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
            resolve(formula.oven->oven, book_.shop.ovens, "oven", "add it to 'ovens' in shop.yaml");
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

    /// A trip that is reckoned at nothing would be given away in silence.
    void judge_delivery(Order const& order) {
        if (!order.delivery || order.delivery->charge == DeliveryCharge::amount) return;
        bool const is_far = order.delivery->distance.amount.is_positive();
        bool const is_paid_by_way = book_.shop.delivery_rate.amount.amount().is_positive();
        if (book_.shop.delivery_flat.amount().is_positive() || (is_far && is_paid_by_way)) return;
        found_.warn(order.delivery->origin, "delivery-unpaid",
                    "this delivery is reckoned at nothing: shop.yaml says of no trip what it costs",
                    "say it there, 'delivery: {flat: 4.00, rate: 0.70 / mi}', or say here what is "
                    "charged, 'charge: 5.00'");
    }

    void link_order(Order& order) {
        link_fee(order.paid_by);
        link_tax(order.tax);
        judge_delivery(order);
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
            resolve(line.sale_unit, book_.formulas[found->second].sold_as, "sale unit",
                    fmt::format("add it to 'sold as' of '{}'", line.item.name));
        }
    }

    void link_menu(Menu& menu) {
        link_fee(menu.paid_by);
        std::map<std::pair<std::size_t, std::size_t>, Span> offered;
        for (MenuItem& item : menu.items) {
            link_tax(item.tax);
            resolve(item.category, menu.categories, "category",
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
            resolve(item.sale_unit, ways, "sale unit",
                    fmt::format("add it to 'sold as' of '{}'", item.item.name));
            if (item.sale_unit.is_given() && !item.sale_unit.is_resolved()) continue;
            if (!item.sale_unit.is_given() && !ways.empty()) item.sale_unit.index = 0;
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

    /// As `did_you_mean`, while it is likely that a slip of the finger is behind it: to look for the nearest
    /// of thousands of names for thousands of misses would take minutes.
    std::string suggest(std::string_view missed, std::vector<std::string> const& names,
                        std::string otherwise) {
        if (suggestions_ == 0) return otherwise;
        --suggestions_;
        return did_you_mean(missed, names, std::move(otherwise));
    }

    Book& book_;
    Diagnostics found_;
    std::vector<std::string> ingredient_names_; ///< and supplies
    std::vector<std::string> supply_names_;
    std::vector<std::string> formula_names_;
    std::vector<std::string> all_names_;
    std::size_t suggestions_ = 100;
};

} // namespace book_links

inline Diagnostics link(Book& book) { return book_links::Linker(book).run(); }

} // namespace groat
