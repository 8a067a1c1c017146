#include "amounts.hpp"

#include <groat/measure/money_rate.hpp>

#include <stdexcept>
#include <string_view>

using groat::find_unit;
using groat::Measures;
using groat::minutes;
using groat::Money;
using groat::MoneyRate;
using groat::Number;

namespace {

MoneyRate rate(std::string_view amount, std::string_view code, std::string_view per) {
    return {money(amount, code), find_unit(per, Measures::us)};
}

} // namespace

TEST_CASE("a wage pays for minutes exactly") {
    CHECK(rate("21.00", "USD", "h").of(quantity("20 min")) == money("7.00", "USD"));
    // Controlling Costs in Foodservice (Goodheart-Willcox 2014), p. 25
    CHECK(rate("10.00", "USD", "hour").of(minutes(10)) == Money(Number(5) / 3, currency("USD")));
    CHECK(rate("3.50", "USD", "hour").of(minutes(3)) == money("0.175", "USD"));
    CHECK(rate("8.00", "USD", "hour").of(minutes(1)) == Money(Number(2) / 15, currency("USD")));
}

TEST_CASE("a tariff pays for kilowatt-hours, however they are written") {
    // OpenStax College Physics 2e m42714: 60 W for 1000 h are 60 kWh, at 0.12 7.20; 15 W: 1.80
    CHECK(rate("0.12", "USD", "kWh").of(quantity("60 kWh")) == money("7.20", "USD"));
    CHECK(rate("0.12", "USD", "kWh").of(quantity("216 MJ")) == money("7.20", "USD")); // 60 x 3.6
    CHECK(rate("0.12", "USD", "kWh").of(quantity("15 kWh")) == money("1.80", "USD"));
    // EN 16931 sample invoice ubl-tc434-example8.xml
    CHECK(rate("0.00880", "EUR", "kWh").of(quantity("16000 kWh")) == money("140.80", "EUR"));
}

TEST_CASE("a price by the dozen pays for pieces") {
    // EN 16931 sample invoice ubl-tc434-example8.xml: 132 at 15.24 for 12
    CHECK(rate("15.24", "EUR", "dozen").of(quantity("132")) == money("167.64", "EUR"));
    CHECK(rate("441", "EUR", "dozen").of(quantity("1")) == money("36.75", "EUR"));
}

TEST_CASE("a drive is paid by the kilometre also where the road is in miles") {
    CHECK(rate("0.50", "EUR", "km").of(quantity("10 mi")) ==
          money("8.04672", "EUR")); // 16.09344 km
}

TEST_CASE("a rate that nobody stated costs nothing") {
    CHECK(MoneyRate{}.of(minutes(20)).is_zero());
}

TEST_CASE("paying a weight by the hour is a mistake of the caller") {
    CHECK_THROWS_AS((void)rate("21", "USD", "h").of(quantity("1 kg")), std::logic_error);
    CHECK_THROWS_AS((void)rate("21", "USD", "kWh").of(quantity("1 kW")), std::logic_error);
}

TEST_CASE("minutes are a time") {
    CHECK(minutes(90) == quantity("1 1/2 h"));
    CHECK(minutes(Number(1) / 2) == quantity("30 s"));
}
