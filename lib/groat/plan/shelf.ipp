#pragma once

#include <groat/plan/shelf.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/rounding.hpp>
#include <groat/model/convert.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace groat {

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

GROAT_INLINE Result<Number> amount_of(StockItem const& item, Book const& book) {
    return shelf_detail::amount(item.amount, item, book);
}

GROAT_INLINE Result<Number> par_of(StockItem const& item, Book const& book) {
    return item.par ? shelf_detail::amount(*item.par, item, book) : Number();
}

GROAT_INLINE Number leftover_of(FormulaRun const& run, Formula const& formula, Batch const& batch) {
    if (!formula.makes_pieces()) return run.leftover() * batch.mass_out;
    Number const gives = run.made * batch.pieces * batch.survival;
    Number const good(Integer(gives.numerator() / gives.denominator()));
    Number const wanted = ceiling(run.to_make());
    return good > wanted ? good - wanted : Number();
}

GROAT_INLINE OwnGoods::OwnGoods(Book const& book, Diagnostics& found) {
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

GROAT_INLINE void OwnGoods::put(Lot lot) {
    auto const later = std::find_if(lots_.begin(), lots_.end(), [&](Lot const& each) {
        return lot.good_until && (!each.good_until || *lot.good_until < *each.good_until);
    });
    lots_.insert(later, std::move(lot));
}

GROAT_INLINE OnHand OwnGoods::loose(Date day) const {
    OnHand result;
    for (Lot const& lot : lots_)
        if (lot.unit == nullptr && lot.amount.is_positive() && lot.is_good_on(day))
            result[lot.formula] += lot.amount;
    return result;
}

GROAT_INLINE Number OwnGoods::packed(std::size_t formula, SaleUnit const* unit, Date day) const {
    Number sum;
    for (Lot const& lot : lots_)
        if (lot.formula == formula && lot.unit == unit && lot.is_good_on(day)) sum += lot.amount;
    return sum;
}

GROAT_INLINE void OwnGoods::take(std::size_t formula, SaleUnit const* unit, Number amount,
                                 Date day) {
    for (Lot& lot : lots_) {
        if (lot.formula != formula || lot.unit != unit || !lot.is_good_on(day)) continue;
        Number const part = std::min(lot.amount, amount);
        lot.amount -= part;
        amount -= part;
    }
}

GROAT_INLINE void OwnGoods::add(std::size_t formula, Number const& amount,
                                std::optional<Date> good_until) {
    if (amount.is_positive()) put({formula, nullptr, amount, good_until, nullptr});
}

GROAT_INLINE std::vector<StockItem const*> OwnGoods::past(std::size_t formula, Date day) const {
    std::vector<StockItem const*> result;
    for (Lot const& lot : lots_)
        if (lot.formula == formula && lot.item != nullptr && !lot.is_good_on(day))
            result.push_back(lot.item);
    return result;
}

} // namespace groat
