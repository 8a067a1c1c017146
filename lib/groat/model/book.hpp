/// All the books of a business together, with every name in them resolved once.
#pragma once

#include <groat/base/name.hpp>
#include <groat/model/doubt.hpp>
#include <groat/model/formula.hpp>
#include <groat/model/menu.hpp>
#include <groat/model/offer.hpp>
#include <groat/model/order.hpp>
#include <groat/model/receipt.hpp>
#include <groat/model/run.hpp>
#include <groat/model/scenario.hpp>
#include <groat/model/shop.hpp>
#include <groat/model/stock.hpp>
#include <groat/model/yield_test.hpp>

#include <fmt/format.h>

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace groat {

struct Book {
    Book(); // these stand in the half, so that including it costs little
    Book(Book const&);
    Book(Book&&) noexcept;
    Book& operator=(Book const&);
    Book& operator=(Book&&) noexcept;
    ~Book();

    Shop shop = {};
    std::vector<Ingredient> ingredients = {}; ///< food and supplies
    std::vector<Supplier> suppliers = {};
    std::vector<Offer> offers = {}; ///< of the lists, and behind them, by `link`, of the receipts
    std::vector<Receipt> receipts = {};
    std::vector<Formula> formulas = {};
    std::vector<Order> orders = {};
    Stock stock = {};
    std::vector<Scenario> scenarios = {};
    std::vector<YieldTest> yield_tests = {};
    std::vector<Run> runs = {};
    std::vector<Menu> menus = {};
    Doubts doubts = {}; ///< what could not be read, and what `keep_sound_part` took out

    /// Filled by `link`: ingredients, supplies and formulas share one set of names.
    std::map<std::string, std::size_t, std::less<>> ingredient_index = {};
    std::map<std::string, std::size_t, std::less<>> formula_index = {};
    std::vector<std::vector<std::size_t>> offers_of = {}; ///< by ingredient, in their order

    [[nodiscard]] Formula const* find_formula(std::string_view name) const;
    [[nodiscard]] Order const* find_order(std::string_view id) const;
    [[nodiscard]] Menu const* find_menu(std::string_view name) const;
};

/// The names of all `things`, for suggestions.
template <class Things> [[nodiscard]] std::vector<std::string> names_of(Things const& things) {
    std::vector<std::string> names;
    for (auto const& thing : things) names.push_back(thing.name);
    return names;
}

/// "did you mean 'x'?" where a near name exists, else `otherwise`.
template <class Names>
[[nodiscard]] std::string did_you_mean(std::string_view missed, Names const& names,
                                       std::string otherwise = {}) {
    if (auto const near = nearest_name(missed, names))
        return fmt::format("did you mean '{}'?", *near);
    return otherwise;
}

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/model/book.ipp>
#endif
