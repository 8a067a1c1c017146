#include "random_book.hpp"
#include "sheets.hpp"

#include <groat/sheets/figures.hpp>

using namespace groat;
using namespace groat::test;

TEST_CASE("money shows the digits of its currency, and more where they mean something") {
    CHECK(shown(Figures(currency("USD")).money(money("3.4778"))) == "3.48");
    CHECK(shown(Figures(currency("USD")).money(money("3.4778"), 2)) == "3.4778");
    CHECK(shown(Figures(currency("JPY")).money(money("347.5", "JPY"))) == "348");
    CHECK(shown(Figures(currency("KWD")).money(money("3.4775", "KWD"))) == "3.478");
    CHECK(shown(Figures(currency("USD")).coins(coins("12.00"))) == "12.00");
}

TEST_CASE("a figure that lies between two goes to the even one on paper") {
    CHECK(shown(Figures(currency()).money(money("0.125"))) == "0.12");
    CHECK(shown(Figures(currency()).money(money("0.135"))) == "0.14");
}

TEST_CASE("a figure keeps what it is exactly, and its unit") {
    auto const figure = std::get<Figure>(Figures(currency()).money(money("10/3")));
    CHECK(figure.shown == "3.33");
    CHECK(figure.exact == number("10/3"));
    CHECK(figure.unit == "USD");
    auto const share = std::get<Figure>(Figures::percent(number("1/3")));
    CHECK(share.shown == "33.3");
    CHECK(share.exact == number("1/3"));
    CHECK(share.unit == "%");
}

TEST_CASE("what there is no figure for stays empty") {
    CHECK(std::holds_alternative<std::monostate>(Figures::percent(std::optional<Number>())));
}

TEST_CASE("counts, masses and minutes show no more digits than mean something") {
    CHECK(shown(Figures::count(12)) == "12");
    CHECK(shown(Figures::count(number("2.5"))) == "2.5");
    CHECK(shown(Figures::count(number("1/3"))) == "0.33");
    CHECK(shown(Figures::grams(number("1234"))) == "1.234 kg");
    CHECK(shown(Figures::grams(number("620"))) == "620 g");
    CHECK(shown(Figures::minutes(number("17/3"))) == "5.7");
}

TEST_CASE("three thirds of a dollar are printed so that they make a dollar") {
    std::vector<Money> const thirds(3, money("1/3"));
    auto const column = Figures(currency()).column(thirds);
    REQUIRE(column.size() == 4);
    CHECK(shown(column[0]) == "0.34");
    CHECK(shown(column[1]) == "0.33");
    CHECK(shown(column[2]) == "0.33");
    CHECK(shown(column[3]) == "1.00");
    CHECK(std::get<Figure>(column[0]).exact == number("1/3"));
}

TEST_CASE("a column of nothing adds up to nothing") {
    auto const column = Figures(currency()).column({});
    REQUIRE(column.size() == 1);
    CHECK(shown(column[0]) == "0.00");
}

TEST_CASE("whatever stands in a column, it adds up as printed and no figure is a cent off") {
    Draw draw(5);
    Figures const figures(currency());
    for (int i = 0; i < 1000; ++i) {
        std::vector<Money> amounts;
        for (std::int64_t count = draw.whole(1, 9); count > 0; --count)
            amounts.push_back({Number(draw.whole(-9999, 99999)) / draw.whole(1, 999), currency()});
        auto const column = figures.column(amounts);
        Number sum;
        for (std::size_t k = 0; k < amounts.size(); ++k) {
            sum += number(shown(column[k]));
            Number const off = number(shown(column[k])) - amounts[k].amount();
            REQUIRE(off < number("0.01"));
            REQUIRE(off > number("-0.01"));
        }
        REQUIRE(sum == number(shown(column.back())));
    }
}

TEST_CASE("an item's name stands at the head of a line as a sentence does") {
    CHECK(in_sentence("rye plum sandwich") == "Rye plum sandwich");
    CHECK(in_sentence("Éclair") == "Éclair");
    CHECK(in_sentence("äpfel") == "Äpfel");
    CHECK(in_sentence("").empty());
}

TEST_CASE("figures inside words are in the style of the shop") {
    Shop shop;
    shop.currency = currency("EUR");
    shop.sheets.style = parse_money_style("1.234,56 €", shop.currency, {}).value();
    Figures const figures(shop);
    CHECK(figures.number(number("1234.5"), 2) == "1.234,5");
    CHECK(figures.fixed(number("1234.5"), 2) == "1.234,50");
    CHECK(figures.share(number("0.075")) == "7,5 %");
    CHECK(figures.mass(number("1250")) == "1,25 kg");
    CHECK(figures.amount(money("-1234.5", "EUR")) == "-1.234,50\u00A0€");
    CHECK(figures.amount(money("0.0125", "EUR"), 2) == "0,0125\u00A0€");
    CHECK(figures.full_amount(money("2", "EUR")) == "2,00\u00A0€");
    CHECK(figures.date(day("2026-11-05")) == "5 November 2026");
    // cells stay plain until they are drawn
    CHECK(shown(figures.money(money("1234.5", "EUR"))) == "1234.50");
    Figures const plain(currency("USD"));
    CHECK(plain.amount(money("2")) == "2.00");
    CHECK(plain.full_amount(money("2")) == "2.00 USD");
}

TEST_CASE("in the words of the shop dates follow its language, in the house they are as declared") {
    Shop shop;
    shop.currency = currency("EUR");
    shop.sheets.words = Words("de");
    CHECK(Figures::in_words(shop).date(day("2027-03-05")) == "5. März 2027");
    CHECK(Figures(shop).date(day("2027-03-05")) == "5 March 2027");
}
