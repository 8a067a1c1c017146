/// Books written in C++ as briefly as a baker would write them, for the tests of all upper layers:
///
///     Book book = a_book();
///     food(book, "plain flour", "25 lb", "13.80");
///     formula(book, "shell", {{"plain flour", "620 g"}}).makes = quantity("40");
///     link_well(book);
///
/// A text that is no amount fails the test it stands in. Whatever is not said is the plainest: US dollars,
/// US measures, no wages, no tax, no losses. What is given back by `food`, `formula` and the like is a place
/// in the book: it stays good while fewer than `room_for` things of its kind are written.
#pragma once

#include <groat/cost/engine.hpp>
#include <groat/measure/coins.hpp>
#include <groat/model/link.hpp>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

// How figures are shown when a check fails.
template <> struct doctest::StringMaker<groat::Number> {
    static String convert(groat::Number const& number) {
        std::string const text =
            fmt::format("{} ({})", groat::exact(number), groat::decimal(number, 6));
        return text.c_str();
    }
};
template <> struct doctest::StringMaker<std::optional<groat::Number>> {
    static String convert(std::optional<groat::Number> const& number) {
        return number ? StringMaker<groat::Number>::convert(*number) : String("nothing");
    }
};
template <> struct doctest::StringMaker<groat::Money> {
    static String convert(groat::Money const& money) {
        return StringMaker<groat::Number>::convert(money.amount());
    }
};
template <> struct doctest::StringMaker<std::optional<groat::Money>> {
    static String convert(std::optional<groat::Money> const& money) {
        return money ? StringMaker<groat::Money>::convert(*money) : String("nothing");
    }
};
template <> struct doctest::StringMaker<groat::Coins> {
    static String convert(groat::Coins const& coins) {
        return StringMaker<groat::Money>::convert(coins.money());
    }
};

namespace groat::test {

inline constexpr std::size_t room_for = 64;

// Texts into figures ----------------------------------------------------------------------------------

Currency currency(std::string_view code = "USD");

Number number(std::string_view text);

/// `percent("2.9 %")`  ->  29/1000
Number percent(std::string_view text);

/// `share_of<Yield>("80 %")`
template <class R> R share_of(std::string_view text) { return R::of(percent(text)).value(); }

Money money(std::string_view text, std::string_view code = "USD");

Coins coins(std::string_view text, std::string_view code = "USD");

Quantity quantity(std::string_view text, Measures measures = Measures::us);

Density density(std::string_view text, Measures measures = Measures::us);

Date day(std::string_view text);

/// `rate("21.00", "h")`: money for each of a unit.
MoneyRate rate(std::string_view amount, std::string_view unit, std::string_view code = "USD");

/// `value` as it is printed with `places` digits, for figures that a source prints rounded.
std::string printed(Number const& value, unsigned places);
std::string printed(Money const& value, unsigned places = 2);

Reference named(std::string_view name);

// The book --------------------------------------------------------------------------------------------

/// The day on which the tests calculate unless they say otherwise.
inline Date const today = day("2026-11-25");

Book a_book(std::string_view code = "USD");

/// The index of a supplier, written down when first named.
std::size_t supplier(Book& book, std::string_view name);

Offer& offer(Book& book, std::string_view item, std::string_view pack, std::string_view price,
             std::string_view from_whom = "the mill");

/// A receipt of one thing, by default from where `offer` is from.
BoughtPacks& receipt(Book& book, std::string_view bought, std::string_view item,
                     std::string_view pack, Integer const& packs, std::string_view paid,
                     std::string_view from_whom = "the mill");

/// Food without a price, for which `offer` may be called as often as wanted.
Ingredient& food(Book& book, std::string_view name);
Ingredient& food(Book& book, std::string_view name, std::string_view pack, std::string_view price);

/// Boxes, liners, bags: used up but not eaten.
Ingredient& supply(Book& book, std::string_view name, std::string_view pack,
                   std::string_view price);

/// One line of a formula: `620 g`, `3 as bought`, `60 %` (a baker's percentage).
struct Part {
    std::string_view item;
    std::string_view amount;
};

Line line(Part const& part, Measures measures = Measures::us);

Formula& formula(Book& book, std::string_view name, std::initializer_list<Part> parts);

void lose(Formula& formula, std::string_view name, std::string_view share, LossStage stage);

SaleUnit& sold_as(Formula& formula, std::string_view name, std::string_view holds);

Role& role(Book& book, std::string_view name, std::string_view wage,
           std::string_view on_cost = "0 %");

Task task(std::string_view name, std::string_view by, std::string_view minutes,
          Per per = Per::batch);

/// Time that needs nobody.
Task rest(std::string_view name, std::string_view minutes);

Consumption uses(std::string_view supply, std::string_view amount, Per per = Per::batch);

/// An oven on electricity at a tariff of the same name as its fuel.
Oven& oven(Book& book, std::string_view name, std::string_view power, std::string_view duty,
           std::string_view preheat_minutes, std::string_view per_kilowatt_hour);

OvenUse baked_in(std::string_view oven, std::string_view minutes, std::string_view holds);

Overhead& overhead(Book& book, std::string_view name, Overhead::Driver driver,
                   std::string_view amount);

Fee& fee(Book& book, std::string_view name, std::string_view share, std::string_view fixed);

/// `bought` of `item`, of which `usable` was left; without it, what the trim leaves.
YieldTest& yield_test(Book& book, std::string_view name, std::string_view item,
                      std::string_view bought, std::string_view usable = "");
void trim(YieldTest& test, std::string_view part, std::string_view mass,
          std::optional<MoneyRate> worth = {});

/// A yield that is that of one test, or of all where none is named.
YieldSource by_test(std::string_view name = "");

// Prices ----------------------------------------------------------------------------------------------

PricePolicy aims_at(Target target);
PricePolicy at_margin(std::string_view share);
PricePolicy at_markup(std::string_view share);
PricePolicy at_food_cost(std::string_view share);
PricePolicy at_price(std::string_view amount, std::string_view code = "USD");

// Orders ----------------------------------------------------------------------------------------------

OrderLine& wants(Order& order, std::string_view item, Integer const& count,
                 std::string_view unit = "");

Order& order(Book& book, std::string_view id = "2026-041");

// Calculation -------------------------------------------------------------------------------------------

std::string in_words(Diagnostics const& found);

/// Resolves all names, anew where a test has changed the book; anything found fails the test.
void link_well(Book& book);

/// The book as one to cost by: a copy, so that what is changed later does not count. An error fails the test.
LinkedBook linked(Book const& book);

/// What is calculated; what is found instead fails the test.
///
///     auto const plan = calculated([&](Diagnostics& found) { return produce(costing, orders, found); });
template <class Calculate> auto calculated(Calculate const& calculate) {
    Diagnostics found;
    auto result = calculate(found);
    REQUIRE_MESSAGE(result.has_value(), in_words(found));
    return *std::move(result);
}

std::size_t index_of(Book const& book, std::string_view formula);
std::size_t ingredient_index(Book const& book, std::string_view name);

Sale sale(Book const& book, std::string_view item, Number const& count, std::string_view unit = "");

/// The record of one formula, ingredient or supply in a cost.
FormulaUse const& of_formula(OrderCost const& cost, Book const& book, std::string_view name);
IngredientUse const& of_ingredient(OrderCost const& cost, Book const& book, std::string_view name);

/// The first finding with a code, or null.
std::optional<Diagnostic> finding(Diagnostics const& found, std::string_view code);

bool says(std::string_view text, std::string_view words);

} // namespace groat::test
