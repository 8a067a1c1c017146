/// What rows tell programs by themselves: whose offer in which pack, what is sold and how.
#pragma once

#include <groat/model/book.hpp>
#include <groat/paper/sheet_shape.hpp>
#include <groat/sheets/figures.hpp>

#include <cstddef>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace groat {

/// An offer as `supplier` and `pack`, the pack as the books write it.
template <SectionShape const& shape>
void tell_offer(Row& row, Offer const& offer, Book const& book) {
    tell<shape>(row, "supplier", book.suppliers[offer.supplier].name);
    tell<shape>(row, "pack", offer.pack_text);
}

/// What is sold by its names as `formula` and `sold_as`, which is null for what is sold by the piece.
template <SectionShape const& shape>
void tell_named_sale(Row& row, std::string const& formula, std::string const& sold_as) {
    tell<shape>(row, "formula", formula);
    tell<shape>(row, "sold_as", sold_as.empty() ? Cell() : Cell(sold_as));
}

/// The same by their places in the book.
template <SectionShape const& shape>
void tell_sale(Row& row, std::size_t formula, SaleUnit const* unit, Book const& book) {
    tell_named_sale<shape>(row, book.formulas[formula].name,
                           unit == nullptr ? std::string() : unit->name);
}

/// A target as what is to be reached and how much of it.
template <SectionShape const& shape>
void tell_target(Row& row, Target const& target, Figures const& figures) {
    auto const say = [&](std::string aim, Cell reach) {
        tell<shape>(row, "aim", std::move(aim));
        tell<shape>(row, "reach", std::move(reach));
    };
    if (auto const* margin = std::get_if<Margin>(&target))
        say("margin", Figures::percent(margin->value()));
    if (auto const* markup = std::get_if<Markup>(&target))
        say("markup", Figures::percent(markup->value()));
    if (auto const* food = std::get_if<FoodCostShare>(&target))
        say("food_cost", Figures::percent(food->value()));
    if (auto const* prime = std::get_if<PrimeCostShare>(&target))
        say("prime_cost", Figures::percent(prime->value()));
    if (auto const* contribution = std::get_if<Contribution>(&target))
        say("contribution", figures.money(contribution->amount));
    if (auto const* price = std::get_if<GivenPrice>(&target))
        say("price", figures.money(price->amount));
}

} // namespace groat
