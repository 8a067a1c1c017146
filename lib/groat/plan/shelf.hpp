/// What stands on the shelf, in grams and pieces, and what of it is fit for use on a day: own goods are
/// taken lot by lot, those that end first before others, and no lot twice.
#pragma once

#include <groat/cost/explosion.hpp>

#include <optional>
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

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/plan/shelf.ipp>
#endif
