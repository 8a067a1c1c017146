#include <groat/books/read_shop.hpp>
#include <groat/books/read_words.hpp>

#include "reading.hpp"

#include <doctest/doctest.h>

#include <string>

using groat::Words;
using groat_test::Desk;

namespace {

struct Reader : Desk {
    groat::Reading reading{found};

    Words words(std::string const& text) { return read_words(node(text), reading); }
    groat::Shop shop(std::string const& sheets, std::string const& currency = "EUR") {
        return read_shop(node("shop: Backstube\ncurrency: " + currency + "\n" + sheets), reading);
    }
};

} // namespace

TEST_CASE("own words go over the shipped ones of their language") {
    Reader desk;
    Words const words = desk.words("language: de\nwords: {total: Summe}\n");
    CHECK(desk.said() == "");
    CHECK(words.language() == "de");
    CHECK(words("total") == "Summe");
    CHECK(words("subtotal") == "Zwischensumme");
}

TEST_CASE("words without any are those that are shipped") {
    Reader desk;
    CHECK(desk.words("language: de\n")("total") == "Gesamtbetrag");
    CHECK(desk.said() == "");
}

TEST_CASE("a shop without sheets has the words of words.yaml") {
    Reader desk;
    desk.reading.own_words = Words("de-AT");
    groat::Shop const shop = desk.shop("");
    CHECK(shop.sheets.words.language() == "de-AT");
    CHECK(shop.sheets.words("total") == "Gesamtbetrag");
}

TEST_CASE("sheets and words that name the same language agree") {
    Reader desk;
    desk.reading.own_words = Words("fr");
    CHECK(desk.shop("sheets: {language: fr}\n").sheets.words.language() == "fr");
    CHECK(desk.said() == "");
}

TEST_CASE("words whose language could not be read contradict none") {
    Reader desk;
    desk.reading.own_words = Words(std::string());
    (void)desk.shop("sheets: {language: fr}\n");
    CHECK(desk.said() == "");
}

TEST_CASE("a language in capitals is the same language") {
    Reader desk;
    desk.reading.own_words = desk.words("language: DE-at\n");
    groat::Shop const shop = desk.shop("sheets: {language: De-AT, dates: 31. Dezember 2026}\n");
    CHECK(desk.said() == "");
    CHECK(shop.sheets.words("december") == "Dezember");
    CHECK(shop.sheets.words.language() == "de-AT");
}

TEST_CASE("where the language is wrong, its month is not held against the date as well") {
    for (std::string const language : {"deutsch land", "xx"}) {
        Reader desk;
        (void)desk.shop("sheets: {language: " + language + ", dates: 31. Dezember 2026}\n");
        CHECK(desk.found.errors() == 1);
        CHECK(desk.said().find("language") != std::string::npos);
    }
    Reader desk;
    desk.reading.own_words = Words("fr");
    (void)desk.shop("sheets: {language: de, dates: 31. Dezember 2026}\n");
    CHECK(desk.found.errors() == 1);
    CHECK(desk.said().find("two-languages") != std::string::npos);
}

TEST_CASE("who asks for a language that is not shipped is told all that are") {
    Reader desk;
    (void)desk.shop("sheets: {language: xx}\n");
    std::string const said = desk.said();
    for (std::string_view const each : groat::shipped_languages)
        CHECK(said.find(each) != std::string::npos);
}

TEST_CASE("sheets are set by example") {
    Reader desk;
    groat::Shop const shop =
        desk.shop("sheets: {language: de, money: '1.234,56 €', dates: 31. Dezember 2026}\n");
    CHECK(desk.said() == "");
    groat::Style const& style = shop.sheets.style;
    CHECK(style.money("-1234.50") == "-1.234,50\u00A0€");
    CHECK(style.date(*groat::parse_date("2027-03-05")) == "5. März 2027");
    CHECK(shop.sheets.words("total") == "Gesamtbetrag");
}

TEST_CASE("without an example dates are those of the language, and plain in the house") {
    Reader desk;
    groat::Shop const shop = desk.shop("sheets: {language: de}\n");
    groat::Date const day = *groat::parse_date("2027-03-05");
    CHECK(shop.sheets.style.date(day) == "5 March 2027");
    CHECK(shop.sheets.style_in_words().date(day) == "5. März 2027");
    CHECK(shop.sheets.style_in_words().number("1234.5") == "1234.5");
}

TEST_CASE("the amount of an example has the decimals of the currency") {
    Reader desk;
    CHECK(desk.shop("sheets: {money: '￥1,235'}\n", "JPY").sheets.style.money("12345") ==
          "￥12,345");
    CHECK(desk.shop("sheets: {money: '1,234.560 KD'}\n", "KWD").sheets.style.money("5.250") ==
          "5.250\u00A0KD");
    CHECK(desk.said() == "");
}
