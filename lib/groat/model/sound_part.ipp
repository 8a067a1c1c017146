#pragma once

#include <groat/model/sound_part.hpp>

#include <groat/base/linkage.hpp>
#include <groat/model/link.hpp>

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

namespace groat {

namespace sound_part_detail {

/// One pass: what is marked marks what uses it, and all of it goes.
class Sieve {
public:
    explicit Sieve(Book& book) : book_(book), doubts_(book.doubts) {}

    /// Whether anything had to go.
    bool run() {
        mark_bought();
        mark_formulas();
        mark_companions();
        for (YieldTest& test : book_.yield_tests)
            test.is_in_doubt = test.is_in_doubt || is_in_doubt(test.item);
        bool is_changed = take_out_stock();
        for (Receipt& receipt : book_.receipts)
            is_changed |= std::erase_if(receipt.items, [this](BoughtPacks const& each) {
                              return is_in_doubt(each.item);
                          }) > 0;
        is_changed |= std::erase_if(book_.offers, [this](Offer const& each) {
                          return is_in_doubt(each.item);
                      }) > 0;
        is_changed |= take_out(book_.yield_tests, BookPart::yields, &YieldTest::name);
        is_changed |= take_out(book_.ingredients, BookPart::ingredients, &Ingredient::name);
        is_changed |= take_out(book_.formulas, BookPart::formulas, &Formula::name);
        is_changed |= take_out(book_.orders, BookPart::orders, &Order::id);
        is_changed |= take_out(book_.menus, BookPart::menus, &Menu::name);
        is_changed |= take_out(book_.runs, BookPart::runs, &Run::name);
        is_changed |= take_out(book_.scenarios, BookPart::scenarios, &Scenario::name);
        return is_changed;
    }

private:
    /// Of something bought, while no ingredient has been taken out.
    [[nodiscard]] bool is_in_doubt(Reference const& bought) const {
        return !bought.is_resolved() || book_.ingredients[bought.index].is_in_doubt;
    }

    void mark_bought() {
        bool are_all = doubts_.any(BookPart::prices);
        for (Offer const& offer : book_.offers) {
            if (!offer.item.is_resolved())
                are_all = true;
            else if (offer.is_in_doubt || cites_doubt(offer.yield_source, offer.item.index))
                book_.ingredients[offer.item.index].is_in_doubt = true;
        }
        for (Receipt const& receipt : book_.receipts)
            for (BoughtPacks const& bought : receipt.items) {
                if (!bought.item.is_resolved())
                    are_all = true;
                else if (bought.is_in_doubt || !receipt.supplier.is_resolved())
                    book_.ingredients[bought.item.index].is_in_doubt = true;
            }
        for (std::size_t i = 0; i < book_.ingredients.size(); ++i)
            if (are_all || cites_doubt(book_.ingredients[i].yield_source, i))
                book_.ingredients[i].is_in_doubt = true;
    }

    /// Whether a yield comes from a test in doubt. A test of nobody knows what may be one of this.
    [[nodiscard]] bool cites_doubt(YieldSource const& source, std::size_t ingredient) const {
        if (!source.is_cited()) return false;
        if (source.kind == YieldSource::Kind::one_test)
            return !source.test.is_resolved() || book_.yield_tests[source.test.index].is_in_doubt;
        return doubts_.names(BookPart::yields, {}) ||
               std::any_of(book_.yield_tests.begin(), book_.yield_tests.end(),
                           [&](YieldTest const& test) {
                               return !test.item.is_resolved() ||
                                      (test.is_in_doubt && test.item.index == ingredient);
                           });
    }

    /// What two orders share cannot be told where one of them is in doubt.
    void mark_companions() {
        for (Order& order : book_.orders) {
            if (!order.is_in_doubt) continue;
            for (std::size_t const other : order.companions) book_.orders[other].is_in_doubt = true;
        }
    }

    [[nodiscard]] bool uses_doubt(std::vector<Consumption> const& all) const {
        return std::any_of(all.begin(), all.end(),
                           [this](Consumption const& each) { return is_in_doubt(each.supply); });
    }

    [[nodiscard]] bool is_in_doubt(Formula const& formula) const {
        return formula.is_in_doubt || uses_doubt(formula.consumables) ||
               std::any_of(formula.sold_as.begin(), formula.sold_as.end(),
                           [this](SaleUnit const& unit) { return uses_doubt(unit.packing); }) ||
               std::any_of(formula.lines.begin(), formula.lines.end(), [this](Line const& line) {
                   return line.of != Line::Of::formula && is_in_doubt(line.item);
               });
    }

    /// Upwards from what is in doubt by itself. Without recursion: a chain of formulas may be of any length.
    void mark_formulas() {
        std::vector<std::vector<std::size_t>> users(book_.formulas.size());
        std::vector<std::size_t> open;
        for (std::size_t i = 0; i < book_.formulas.size(); ++i) {
            Formula& formula = book_.formulas[i];
            for (Line const& line : formula.lines)
                if (line.of == Line::Of::formula) users[line.item.index].push_back(i);
            formula.is_in_doubt = is_in_doubt(formula);
            if (formula.is_in_doubt) open.push_back(i);
        }
        while (!open.empty()) {
            std::size_t const used = open.back();
            open.pop_back();
            for (std::size_t const user : users[used]) {
                if (book_.formulas[user].is_in_doubt) continue;
                book_.formulas[user].is_in_doubt = true;
                open.push_back(user);
            }
        }
    }

    bool take_out_stock() {
        if (!book_.stock.is_in_doubt) {
            std::erase_if(book_.stock.items, [this](StockItem const& each) {
                return each.is_made() ? book_.formulas[each.item.index].is_in_doubt
                                      : is_in_doubt(each.item);
            });
            return false;
        }
        doubts_.add(BookPart::stock);
        book_.stock = {};
        return true;
    }

    template <class Thing>
    bool take_out(std::vector<Thing>& things, BookPart part, std::string Thing::*name) {
        return std::erase_if(things, [&](Thing const& each) {
                   if (each.is_in_doubt) doubts_.add(part, each.*name);
                   return each.is_in_doubt;
               }) > 0;
    }

    Book& book_;
    Doubts& doubts_;
};

} // namespace sound_part_detail

GROAT_INLINE void keep_sound_part(Book& book) {
    if (book.shop.is_in_doubt) book.doubts.add(BookPart::shop);
    if (book.doubts.any(BookPart::shop)) return;
    // Who names what is gone is found out by linking anew, and goes in the next pass.
    while (sound_part_detail::Sieve(book).run()) (void)link(book);
}

GROAT_INLINE std::optional<LinkedBook> sound_part(Book&& book) {
    (void)link(book);
    keep_sound_part(book);
    if (book.doubts.any(BookPart::shop)) return std::nullopt;
    return LinkedBook(std::move(book));
}

} // namespace groat
