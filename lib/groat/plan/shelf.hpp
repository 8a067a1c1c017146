/// What stands on the shelf, in grams and pieces, and what of it is fit for use on a day: own goods are
/// taken lot by lot, those that end first before others, and no lot twice.
#pragma once

#include <groat/cost/explosion.hpp>
#include <groat/model/convert.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <utility>
#include <vector>

namespace groat {

/// Of an item that `link` has found: grams of food, pieces of a supply, pieces or grams of own goods, or sale
/// units of those that are packed.
/// Fails    where a density or unit weight is missing; where pieces or packs are not counted whole
[[nodiscard]] Result<Number> amount_of(StockItem const& item, Book const& book);

/// What is wanted on the shelf always, of an item that is bought; 0 where nothing is said.
/// Fails    as `amount_of` does
[[nodiscard]] Result<Number> par_of(StockItem const& item, Book const& book);

/// What a formula has left when all who take of it are served: pieces that are good, or grams.
[[nodiscard]] Number leftover_of(FormulaRun const& run, Formula const& formula, Batch const& batch);

/// Own goods that may still be taken.
class OwnGoods {
public:
    OwnGoods() = default;
    /// Those of stock.yaml; `found` receives what is wrong with their amounts.
    OwnGoods(Book const& book, Diagnostics& found);

    /// What is loose and fit on `day`, of all formulas.
    [[nodiscard]] OnHand loose(Date day) const;
    /// What is packed so and fit on `day`.
    [[nodiscard]] Number packed(std::size_t formula, SaleUnit const* unit, Date day) const;
    /// Takes of what is fit on `day`, at most what there is.
    void take(std::size_t formula, SaleUnit const* unit, Number amount, Date day);
    /// Puts loose goods there, as what is left of a batch and kept.
    void add(std::size_t formula, Number const& amount, std::optional<Date> good_until);
    /// Lots of the formula that end before `day`, loose or packed in any way.
    [[nodiscard]] std::vector<StockItem const*> past(std::size_t formula, Date day) const;

private:
    struct Lot {
        std::size_t formula = 0;
        SaleUnit const* unit = nullptr;
        Number amount;
        std::optional<Date> good_until = {};
        StockItem const* item = nullptr;

        [[nodiscard]] bool is_good_on(Date day) const { return !good_until || *good_until >= day; }
    };
    void put(Lot lot);

    std::vector<Lot> lots_; ///< those that end first before others
};

// ---------------------------------------------------------------------------------------------------

namespace shelf_detail {

inline Result<Number> amount(Quantity const& quantity, StockItem const& item, Book const& book) {
    if (!item.is_made()) {
        Ingredient const& ingredient = book.ingredients[item.item.index];
        return amount_in(quantity, ingredient);
    }
    Formula const& formula = book.formulas[item.item.index];
    if (!item.sale_unit.is_resolved() && !formula.makes_pieces())
        return grams_of(quantity, formula);
    if (quantity.is(Dimension::count) && quantity.amount.is_whole()) return quantity.amount;
    return refuse("wrong-dimension",
                  fmt::format("'{}' in stock is counted, in whole {}", formula.name,
                              item.sale_unit.is_resolved() ? "packs" : "pieces"),
                  fmt::format("write how many there are, as '{}: {}'", formula.name,
                              item.sale_unit.is_resolved()
                                  ? fmt::format("{{as: {}, amount: 3}}", item.sale_unit.name)
                                  : "120"));
}

} // namespace shelf_detail

inline Result<Number> amount_of(StockItem const& item, Book const& book) {
    return shelf_detail::amount(item.amount, item, book);
}

inline Result<Number> par_of(StockItem const& item, Book const& book) {
    return item.par ? shelf_detail::amount(*item.par, item, book) : Number();
}

inline Number leftover_of(FormulaRun const& run, Formula const& formula, Batch const& batch) {
    if (!formula.makes_pieces()) return run.leftover() * batch.mass_out;
    Number const gives = run.made * batch.pieces * batch.survival;
    Number const good(Integer(gives.numerator() / gives.denominator()));
    Number const wanted = ceiling(run.to_make());
    return good > wanted ? good - wanted : Number();
}

inline OwnGoods::OwnGoods(Book const& book, Diagnostics& found) {
    for (StockItem const& item : book.stock.items) {
        if (!item.is_made()) continue;
        auto const amount = amount_of(item, book);
        if (!amount) {
            found.error(item.origin, amount.error());
            continue;
        }
        Formula const& formula = book.formulas[item.item.index];
        put({item.item.index,
             item.sale_unit.is_resolved() ? &formula.sold_as[item.sale_unit.index] : nullptr,
             *amount, item.good_until, &item});
    }
}

inline void OwnGoods::put(Lot lot) {
    auto const later = std::find_if(lots_.begin(), lots_.end(), [&](Lot const& each) {
        return lot.good_until && (!each.good_until || *lot.good_until < *each.good_until);
    });
    lots_.insert(later, std::move(lot));
}

inline OnHand OwnGoods::loose(Date day) const {
    OnHand result;
    for (Lot const& lot : lots_)
        if (lot.unit == nullptr && lot.amount.is_positive() && lot.is_good_on(day))
            result[lot.formula] += lot.amount;
    return result;
}

inline Number OwnGoods::packed(std::size_t formula, SaleUnit const* unit, Date day) const {
    Number sum;
    for (Lot const& lot : lots_)
        if (lot.formula == formula && lot.unit == unit && lot.is_good_on(day)) sum += lot.amount;
    return sum;
}

inline void OwnGoods::take(std::size_t formula, SaleUnit const* unit, Number amount, Date day) {
    for (Lot& lot : lots_) {
        if (lot.formula != formula || lot.unit != unit || !lot.is_good_on(day)) continue;
        Number const part = std::min(lot.amount, amount);
        lot.amount -= part;
        amount -= part;
    }
}

inline void OwnGoods::add(std::size_t formula, Number const& amount,
                          std::optional<Date> good_until) {
    if (amount.is_positive()) put({formula, nullptr, amount, good_until, nullptr});
}

inline std::vector<StockItem const*> OwnGoods::past(std::size_t formula, Date day) const {
    std::vector<StockItem const*> result;
    for (Lot const& lot : lots_)
        if (lot.formula == formula && lot.item != nullptr && !lot.is_good_on(day))
            result.push_back(lot.item);
    return result;
}

} // namespace groat
