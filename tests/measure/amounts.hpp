/// What the tests of all layers above share about amounts: how one is shown when a check fails, and a
/// short way to write one as its source prints it.
#pragma once

#include "../base/figures.hpp"

#include <groat/measure/coins.hpp>
#include <groat/measure/quantity.hpp>

#include <string>
#include <string_view>

template <> struct doctest::StringMaker<groat::Money> {
    static doctest::String convert(groat::Money const& money) {
        return (groat::exact(money.amount()) + ' ' + std::string(money.currency().code())).c_str();
    }
};

template <> struct doctest::StringMaker<groat::Coins> {
    static doctest::String convert(groat::Coins const& coins) {
        auto const digits = coins.currency().minor_digits();
        return (groat::decimal(coins.money().amount(), digits) + ' ' +
                std::string(coins.currency().code()))
            .c_str();
    }
};

template <> struct doctest::StringMaker<groat::Quantity> {
    static doctest::String convert(groat::Quantity const& quantity) {
        return (groat::exact(quantity.amount) + " of " + std::string(to_text(quantity.dimension)))
            .c_str();
    }
};

[[nodiscard]] inline groat::Currency currency(std::string_view code) {
    return groat::Currency::find(code).value();
}

/// `money("365.125", "NOK")`
[[nodiscard]] inline groat::Money money(std::string_view amount, std::string_view code) {
    return {figure(amount), currency(code)};
}

/// `coins("365.13", "NOK")`; an amount between two coins fails the test that holds it.
[[nodiscard]] inline groat::Coins coins(std::string_view amount, std::string_view code) {
    groat::Money const exactly = money(amount, code);
    groat::Coins const paid = groat::to_coins(exactly);
    REQUIRE(paid.money() == exactly);
    return paid;
}

/// `quantity("2 3/4 cup")`, in US measures where the text does not say.
[[nodiscard]] inline groat::Quantity quantity(std::string_view text,
                                              groat::Measures measures = groat::Measures::us) {
    return groat::parse_quantity(text, measures).value();
}
