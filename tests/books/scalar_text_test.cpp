#include <groat/books/scalar_text.hpp>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <string>
#include <string_view>

namespace {

groat::Currency const usd = *groat::Currency::find("USD");

std::string money(std::string_view text) {
    auto const read = groat::parse_money(text, usd);
    return read ? groat::exact(read->amount()) : read.error().code;
}

std::string rate(std::string_view text, groat::Dimension dimension) {
    auto const read = groat::parse_money_rate(text, dimension, usd, groat::Measures::us);
    return read ? groat::exact(read->amount.amount()) + " / " + read->per->name : read.error().code;
}

std::string overhead(std::string_view text) {
    auto const read = groat::parse_overhead_rate(text, usd);
    if (!read) return read.error().code;
    return fmt::format("{} {} {}", static_cast<int>(read->driver),
                       groat::exact(read->amount.amount()), groat::exact(read->share.value()));
}

} // namespace

TEST_CASE("money is a number, with or without the currency of the books before or behind it") {
    CHECK(money("13.80") == "69/5");
    CHECK(money("13.80 USD") == "69/5");
    CHECK(money("USD 13.80") == "69/5");
    CHECK(money("13.80USD") == "69/5");
    CHECK(money("1/3") == "1/3");
    CHECK(money("2½ USD") == "5/2");
    CHECK(money("½") == "1/2");
    CHECK(money(".50") == "1/2");
    CHECK(money("0") == "0");
}

TEST_CASE("money in another currency is refused at the code") {
    auto const read = groat::parse_money("13.80 EUR", usd);
    REQUIRE_FALSE(read);
    CHECK(read.error().code == "wrong-currency");
    CHECK(read.error().what == "this amount is in EUR, but the books are kept in USD");
    CHECK(read.error().at == 6);
    CHECK(read.error().length == 3);
    CHECK(money("EUR 13.80") == "wrong-currency");
}

TEST_CASE("while the currency of the books is unknown, any code will do") {
    CHECK(groat::parse_money("13.80 EUR", groat::Currency()).has_value());
}

TEST_CASE("signs and words are no money") {
    for (auto const* text :
         {"$13.80", "13.80 $", "€ 3", "free", "about 3", "13.80 dollars", "", "USD", "x3", "3 usd"})
        CHECK_MESSAGE(!groat::parse_money(text, usd), text);
    CHECK(money("$13.80") == "bad-money");
    CHECK(money("13.80 dollars") == "bad-money");
    CHECK(money("3 usd") == "bad-money");
    CHECK(money("1,250.00") == "bad-number");
    CHECK(money("1e999999") == "bad-number");
    CHECK(money("-3") == "negative-money");
    CHECK(money("-3 USD") == "negative-money");
}

TEST_CASE("a money rate says what the money is for") {
    CHECK(rate("21.00 / h", groat::Dimension::time) == "21 / h");
    CHECK(rate("21.00/h", groat::Dimension::time) == "21 / h");
    CHECK(rate("USD 21.00 per hour", groat::Dimension::time) == "21 / h");
    CHECK(rate("1/3 / min", groat::Dimension::time) == "1/3 / min");
    CHECK(rate("0.18 / kWh", groat::Dimension::energy) == "9/50 / kWh");
    CHECK(rate("0.60 / km", groat::Dimension::distance) == "3/5 / km");
    CHECK(rate("21.00", groat::Dimension::time) == "bad-rate");
    CHECK(rate("21.00 / km", groat::Dimension::time) == "bad-rate");
    CHECK(rate("21.00 / fortnight", groat::Dimension::time) == "bad-rate");
    CHECK(rate("EUR 21.00 / h", groat::Dimension::time) == "wrong-currency");
    CHECK(rate("1/3", groat::Dimension::time) == "bad-rate");
    CHECK(rate("/ h", groat::Dimension::time) == "bad-money");
    CHECK(rate("/", groat::Dimension::time) == "bad-money");
}

TEST_CASE("the flaw of a money rate stands at the part that has it") {
    auto const read =
        groat::parse_money_rate("21.00 / hr.", groat::Dimension::time, usd, groat::Measures::us);
    REQUIRE_FALSE(read);
    CHECK(read.error().at == 8);
    CHECK(read.error().length == 3);
}

TEST_CASE("an overhead is spread by hours, orders or pieces, or as a share of what was spent") {
    CHECK(overhead("6.40 per labour hour") == "0 32/5 0");
    CHECK(overhead("6.40 per oven hour") == "1 32/5 0");
    CHECK(overhead("3 USD per order") == "2 3 0");
    CHECK(overhead("1/3 per piece") == "3 1/3 0");
    CHECK(overhead("2 % of ingredients") == "4 0 1/50");
    CHECK(overhead("2% of prime cost") == "5 0 1/50");
    CHECK(overhead("6.40") == "bad-rate");
    CHECK(overhead("6.40 per hour") == "bad-rate");
    CHECK(overhead("2 % of labour hour") == "bad-rate");
    CHECK(overhead("2 of ingredients") == "bad-percent");
    CHECK(overhead("2 % per piece") != "3 1/50 0");
    CHECK(overhead("-1 per piece") == "negative-money");
    CHECK(overhead("-1 % of ingredients") == "rate-out-of-range");
}

TEST_CASE("days are whole and do not exceed a century") {
    CHECK(groat::parse_days("14 days")->count() == 14);
    CHECK(groat::parse_days("1 day")->count() == 1);
    CHECK(groat::parse_days("3")->count() == 3);
    CHECK(groat::parse_days("0 days")->count() == 0);
    for (auto const* text :
         {"", "days", "2.5 days", "-1 day", "two days", "14 weeks", "99999", "14 days days"})
        CHECK_MESSAGE(!groat::parse_days(text), text);
    CHECK_FALSE(groat::parse_days(std::string(1'000'000, '9')));
}

TEST_CASE("yes and no, and nothing that only looks like them") {
    CHECK(*groat::parse_yes_no("yes"));
    CHECK_FALSE(*groat::parse_yes_no("no"));
    for (auto const* text : {"true", "Yes", "y", "1", ""}) CHECK_FALSE(groat::parse_yes_no(text));
}
