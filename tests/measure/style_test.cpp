#include <groat/measure/style.hpp>

#include <doctest/doctest.h>

#include <string>
#include <string_view>

using namespace groat;

namespace {

Currency of(std::string_view code) { return Currency::find(code).value(); }

Style money_as(std::string_view example, std::string_view code = "EUR") {
    auto const style = parse_money_style(example, of(code), {});
    REQUIRE_MESSAGE(style.has_value(), std::string(example));
    return *style;
}

Flaw money_flaw(std::string_view example, std::string_view code = "EUR") {
    auto const style = parse_money_style(example, of(code), {});
    REQUIRE_FALSE_MESSAGE(style.has_value(), std::string(example));
    return style.error();
}

Style dates_as(std::string_view example, std::string_view december = "December") {
    Style plain;
    plain.months[11] = december;
    auto const style = parse_date_style(example, december, plain);
    REQUIRE_MESSAGE(style.has_value(), std::string(example));
    return *style;
}

Flaw date_flaw(std::string_view example, std::string_view december = "December") {
    auto const style = parse_date_style(example, december, {});
    REQUIRE_FALSE_MESSAGE(style.has_value(), std::string(example));
    return style.error();
}

Date day(std::string_view text) { return parse_date(text).value(); }

bool says(std::string const& text, std::string_view part) {
    return text.find(part) != std::string::npos;
}

} // namespace

TEST_CASE("what is not declared is written plainly") {
    Style const style;
    CHECK(style.number("-1234567.125") == "-1234567.125");
    CHECK(style.money("1234.56") == "1234.56");
    CHECK(style.numbers_in("5.07 oz (144 g)") == "5.07 oz (144 g)");
    CHECK(style.date(day("2026-11-25")) == "25 November 2026");
    CHECK(style.short_date(day("2026-11-25")) == "2026-11-25");
    CHECK_FALSE(style.has_sign());
}

// Babel 2.10.3 of Debian 12 (CLDR 41): format_currency of 1234.56, -1234567.5, 12 and 0.05, and
// format_decimal of 1234567.125, in each locale.
TEST_CASE("amounts as CLDR has them follow from one example") {
    struct Locale {
        std::string_view code;
        std::string_view example;
        std::string_view millions;
        std::string_view twelve;
        std::string_view cents;
        std::string_view decimal;
    };
    constexpr Locale locales[] = {
        // de, en_US, en_GB, fr, sv, pl
        {"EUR", "1.234,56\u00A0€", "-1.234.567,50\u00A0€", "12,00\u00A0€", "0,05\u00A0€",
         "1.234.567,125"},
        {"USD", "$1,234.56", "-$1,234,567.50", "$12.00", "$0.05", "1,234,567.125"},
        {"GBP", "£1,234.56", "-£1,234,567.50", "£12.00", "£0.05", "1,234,567.125"},
        {"EUR", "1\u202F234,56\u00A0€", "-1\u202F234\u202F567,50\u00A0€", "12,00\u00A0€",
         "0,05\u00A0€", "1\u202F234\u202F567,125"},
        {"SEK", "1\u00A0234,56\u00A0kr", "-1\u00A0234\u00A0567,50\u00A0kr", "12,00\u00A0kr",
         "0,05\u00A0kr", "1\u00A0234\u00A0567,125"},
        {"PLN", "1\u00A0234,56\u00A0zł", "-1\u00A0234\u00A0567,50\u00A0zł", "12,00\u00A0zł",
         "0,05\u00A0zł", "1\u00A0234\u00A0567,125"},
        // de_CH, but for the minus: CLDR has CHF-1’234’567.50, here it goes before everything
        {"CHF", "CHF\u00A01’234.56", "-CHF\u00A01’234’567.50", "CHF\u00A012.00", "CHF\u00A00.05",
         "1’234’567.125"},
        // en, KWD
        {"KWD", "KWD1,234.560", "-KWD1,234,567.500", "KWD12.000", "KWD0.050", "1,234,567.125"},
    };
    for (Locale const& each : locales) {
        CAPTURE(std::string(each.example));
        Style const style = money_as(each.example, each.code);
        bool const is_three = each.code == "KWD";
        CHECK(style.money(is_three ? "1234.560" : "1234.56") == each.example);
        CHECK(style.money(is_three ? "-1234567.500" : "-1234567.50") == each.millions);
        CHECK(style.money(is_three ? "12.000" : "12.00") == each.twelve);
        CHECK(style.money(is_three ? "0.050" : "0.05") == each.cents);
        CHECK(style.number("1234567.125") == each.decimal);
    }
    // ja: yen have no decimals, other figures do
    Style const yen = money_as("￥1,235", "JPY");
    CHECK(yen.money("1235") == "￥1,235");
    CHECK(yen.money("-1234568") == "-￥1,234,568");
    CHECK(yen.money("12") == "￥12");
    CHECK(yen.number("1234567.125") == "1,234,567.125");
}

TEST_CASE("a blank is one that no line breaks at") {
    CHECK(money_as("1 234,56 kr", "SEK").money("1234.56") == "1\u00A0234,56\u00A0kr");
    CHECK(money_as("CHF 1'234.56", "CHF").money("1234567.00") == "CHF\u00A01'234'567.00");
}

TEST_CASE("an amount without groups or without a sign is one") {
    Style const style = money_as("1234,56");
    CHECK(style.money("-1234567.50") == "-1234567,50");
    CHECK_FALSE(style.has_sign());
    CHECK(money_as("1.234,56").money("1234.56") == "1.234,56");
    CHECK(money_as("1234", "JPY").number("1234.5") == "1234.5");
    CHECK(money_as("1.234", "CLP").number("1234.5") == "1.234,5");
    CHECK(money_as("1 235", "JPY").number("1234.5") == "1\u00A0234,5");
}

TEST_CASE("what is beside the digits of a figure stays, and every decimal is put in style") {
    Style const style = money_as("1.234,56 €");
    CHECK(style.money("+1234.50") == "+1.234,50\u00A0€");
    CHECK(style.money("-0.06") == "-0,06\u00A0€");
    CHECK(style.number("999") == "999");
    CHECK(style.number("1000") == "1.000");
    CHECK(style.numbers_in("Net wt 35.27 oz (2 lb 3.27 oz) 1 kg") ==
          "Net wt 35,27 oz (2 lb 3,27 oz) 1 kg");
    CHECK(style.numbers_in("12345.678 kg.") == "12.345,678 kg.");
    CHECK(style.numbers_in("none") == "none");
    CHECK(style.number("") == "");
}

TEST_CASE("another amount than 1234.56 is refused, with one to write") {
    CHECK(money_flaw("1.234,5 €").what == "'1.234,5 €' is not the amount 1234.56");
    CHECK(says(money_flaw("1.234,5 €").help, "1.234,56 €"));
    for (auto const* bad : {"", "€", "12.34", "1.234,56,00", "1,23,4.56", "12,34.56", "1.234",
                            "1235.56", "1.234.56,00", "1 2 3 4,56", "01234,56"})
        CHECK_MESSAGE(money_flaw(bad).code == "bad-money-style", std::string(bad));
    CHECK(money_flaw("1234.56", "JPY").what == "'1234.56' is not the amount 1234");
    CHECK(money_flaw("1,234.56", "KWD").what == "'1,234.56' is not the amount 1234.560");
}

TEST_CASE("marks and signs have their bounds") {
    CHECK(says(money_flaw("1.234.56").what, "the same mark"));
    CHECK(says(money_flaw("1_234.56").what, "'_' cannot stand between"));
    CHECK(says(money_flaw("1,,234.56").what, "',,' cannot stand between"));
    CHECK(says(money_flaw("1.234 56").what, "cannot stand before decimals"));
    CHECK(says(money_flaw("-1,234.56").what, "letters or signs of a currency"));
    for (char const* const odd : {"(1,234.56)", "1,234.56%", "|1,234.56|", "1234,56.", "#1,234.56"})
        CHECK(says(money_flaw(odd).what, "cannot stand beside an amount"));
    CHECK(parse_money_style("Fr. 1'234.56", *Currency::find("CHF"), {}).has_value());
    CHECK(parse_money_style("1 234,56 kr.", *Currency::find("SEK"), {}).has_value());
    CHECK(says(money_flaw("1,234.56 much too long").what, "at most 8"));
    CHECK(says(money_flaw("1,234.56 \u202Ekr").what, "cannot stand beside"));
    CHECK(money_as("abcdefgh1,234.56").has_sign());
    CHECK(money_as("R$ 1.234,56", "BRL").money("5.00") == "R$\u00A05,00");
}

// Babel 2.10.3 of Debian 12 (CLDR 41): format_date of 2026-12-31 and 2027-03-05, short and long.
TEST_CASE("dates as CLDR has them follow from one example") {
    struct Locale {
        std::string_view december;
        std::string_view march;
        std::string_view example;
        std::string_view other;
    };
    constexpr Locale locales[] = {
        // short: de, en_GB and fr, ja, sv, pl
        {"Dezember", "März", "31.12.26", "05.03.27"},
        {"December", "March", "31/12/2026", "05/03/2027"},
        {"十二月", "三月", "2026/12/31", "2027/03/05"},
        {"december", "mars", "2026-12-31", "2027-03-05"},
        // medium: de
        {"Dezember", "März", "31.12.2026", "05.03.2027"},
        // long: de, en_US, en_GB, fr, ja, sv
        {"Dezember", "März", "31. Dezember 2026", "5. März 2027"},
        {"December", "March", "December 31, 2026", "March 5, 2027"},
        {"December", "March", "31 December 2026", "5 March 2027"},
        {"décembre", "mars", "31 décembre 2026", "5 mars 2027"},
        {"12月", "3月", "2026年12月31日", "2027年3月5日"},
        {"december", "mars", "31 december 2026", "5 mars 2027"},
        // long: es, es_419
        {"diciembre", "marzo", "31 de diciembre de 2026", "5 de marzo de 2027"},
    };
    for (Locale const& each : locales) {
        CAPTURE(std::string(each.example));
        Style style = dates_as(each.example, each.december);
        style.months[2] = each.march;
        CHECK(style.date(day("2026-12-31")) == each.example);
        CHECK(style.date(day("2027-03-05")) == each.other);
    }
    CHECK(dates_as("2026年12月31日").date(day("2027-03-05")) == "2027年3月5日");
    // en_US short is 3/5/27 in CLDR: from 12/31/26 nobody can tell that, and two digits are read as well
    CHECK(dates_as("12/31/26").date(day("2027-03-05")) == "03/05/27");
}

TEST_CASE("columns have dates in figures, as declared or as ISO 8601") {
    CHECK(dates_as("31.12.2026").short_date(day("2026-11-05")) == "05.11.2026");
    CHECK(dates_as("31 December 2026").short_date(day("2026-11-05")) == "2026-11-05");
}

TEST_CASE("another day than the 31st of December 2026 is refused, with one to write") {
    CHECK(date_flaw("1.12.2026").what == "'1.12.2026' is not the 31st of December 2026");
    CHECK(says(date_flaw("1.12.2026").help, "31.12.2026, 12/31/2026"));
    for (auto const* bad : {"", "31.12.", "31.12.2025", "31.12.31.2026", "31.12", "12.2026",
                            "20261231", "31.12.2026.12", "DD.MM.YYYY"})
        CHECK_MESSAGE(date_flaw(bad).code == "bad-date-style", std::string(bad));
    CHECK(says(date_flaw("31 Dec 2026").what, "does not name the month"));
    CHECK(says(date_flaw("31 December 2026", "Dezember").what, "it is 12 or 'Dezember'"));
    CHECK(says(date_flaw("{31}.12.2026").what, "more than a date"));
    CHECK(says(date_flaw("on the very last day: 31.12.2026").what, "more than a date"));
}
