#include <groat/base/text.hpp>
#include <groat/model/words.hpp>

#include <doctest/doctest.h>

#include <algorithm>
#include <set>
#include <string>
#include <string_view>

using namespace groat;

namespace {

bool says(std::string const& text, std::string_view part) {
    return text.find(part) != std::string::npos;
}

std::size_t key(std::string_view text) {
    std::size_t const index = find_word(text);
    REQUIRE_MESSAGE(index != word_count, std::string(text));
    return index;
}

} // namespace

TEST_CASE("every key stands once, with a text in each language that has the same places") {
    std::set<std::string_view> keys;
    for (WordEntry const& entry : word_table) {
        CAPTURE(std::string(entry.key));
        CHECK(keys.insert(entry.key).second);
        auto english = places_in(entry.english());
        std::sort(english.begin(), english.end());
        CHECK(std::find(english.begin(), english.end(), "") == english.end());
        for (std::string_view const text : entry.texts) {
            CHECK_FALSE(text.empty());
            auto places = places_in(text);
            std::sort(places.begin(), places.end());
            CHECK(places == english);
            CHECK(trimmed(text) == text); // a file could not say it otherwise
        }
    }
}

TEST_CASE("every allergen of the books has a word") {
    for (Allergen const& allergen : allergens) {
        CHECK(Words().name_of(allergen) == allergen.name);
        CHECK(find_word(allergen.name) != word_count);
    }
}

// Regulation (EU) No 1169/2011, Annex II, German edition (from memory): its singular names, and the kinds of
// cereals and nuts that it lists.
TEST_CASE("German allergens have the names of the law") {
    Words const german("de");
    auto const name = [&](std::string_view allergen) {
        return german.name_of(*find_allergen(allergen));
    };
    CHECK(name("wheat") == "Weizen");
    CHECK(name("rye") == "Roggen");
    CHECK(name("barley") == "Gerste");
    CHECK(name("oats") == "Hafer");
    CHECK(name("crustaceans") == "Krebstiere");
    CHECK(name("egg") == "Eier");
    CHECK(name("peanut") == "Erdnüsse");
    CHECK(name("soy") == "Sojabohnen");
    CHECK(name("milk") == "Milch");
    CHECK(name("tree nuts") == "Schalenfrüchte");
    CHECK(name("brazil nut") == "Paranüsse");
    CHECK(name("cashew") == "Kaschunüsse");
    CHECK(name("celery") == "Sellerie");
    CHECK(name("sesame") == "Sesamsamen");
    CHECK(name("sulphites") == "Schwefeldioxid und Sulphite");
    CHECK(name("lupin") == "Lupinen");
    CHECK(name("molluscs") == "Weichtiere");
}

TEST_CASE("a language may have a region, and one that is not shipped speaks English") {
    CHECK(Words()("total") == "Total");
    CHECK(Words("de")("total") == "Gesamtbetrag");
    CHECK(Words("de-AT")("total") == "Gesamtbetrag");
    CHECK(Words("fr")("total") == "Total");
    CHECK(Words("den")("total") == "Total");
    CHECK(Words("de-AT").language() == "de-AT");
    CHECK(Words().is_english());
    CHECK(Words("en-GB").is_english());
    CHECK_FALSE(Words("fr").is_english());
    CHECK(Words::is_shipped("de-CH"));
    CHECK_FALSE(Words::is_shipped("fr"));
}

TEST_CASE("texts are filled where they have places") {
    CHECK(Words()("deposit", {{"share", "30 %"}}) == "Deposit of 30 % on ordering");
    CHECK(Words("de")("deposit", {{"share", "30 %"}}) == "Anzahlung von 30 % bei Bestellung");
}

TEST_CASE("the months are twelve and in order") {
    CHECK(Words().months() == Style().months);
    CHECK(Words("de").months()[0] == "Januar");
    CHECK(Words("de").months()[2] == "März");
    CHECK(Words("de").months()[11] == "Dezember");
}

TEST_CASE("a shop's own text goes before the shipped one") {
    Words words("de");
    CHECK_FALSE(words.put(key("total"), "Summe"));
    CHECK(words("total") == "Summe");
    CHECK(words("subtotal") == "Zwischensumme");
    CHECK(words.missing().empty());
}

TEST_CASE("a text without a place, or with one more, is refused by name") {
    Words words("fr");
    auto const lacks = words.put(key("deposit"), "Acompte");
    REQUIRE(lacks);
    CHECK(lacks->what == "'{share}' is missing from the text of 'deposit'");
    CHECK(lacks->help == "in English it is 'Deposit of {share} on ordering'");
    auto const more = words.put(key("total"), "Total {amount}");
    REQUIRE(more);
    CHECK(more->what == "'{amount}' is no place to fill of 'total'");
    auto const brace = words.put(key("total"), "Total }");
    REQUIRE(brace);
    CHECK(says(brace->what, "opens or closes nothing"));
    CHECK(words("total") == "Total"); // nothing refused is kept
    CHECK_FALSE(words.put(key("tax contained"), "dont {rate} de {tax}"));
    CHECK(words("tax contained", {{"tax", "TVA"}, {"rate", "5,5 %"}}) == "dont 5,5 % de TVA");
}

TEST_CASE("what is missing from a language that is not shipped is told") {
    Words words("fr");
    CHECK(words.missing().size() == word_count);
    CHECK_FALSE(words.put(key("quote"), "Devis {order}"));
    CHECK(words.missing().size() == word_count - 1);
    CHECK(words.missing().front() == "order");
}

// RFC 5646, 2.1.1: "language tags and their subtags ... are to be treated as case insensitive", with the form
// that ISO 639, 15924 and 3166 recommend (from memory; mn-Cyrl-MN and en-CA-x-ca are its own examples)
TEST_CASE("a language tag is put into its usual capitals") {
    for (auto const& [written, usual] :
         {std::pair("DE", "de"), std::pair("De-at", "de-AT"), std::pair("PT-br", "pt-BR"),
          std::pair("MN-cYRL-mn", "mn-Cyrl-MN"), std::pair("en-ca-X-CA", "en-CA-x-ca"),
          std::pair("DE-CH-1996", "de-CH-1996"), std::pair("SL-ROZAJ", "sl-rozaj")})
        CHECK(parse_language(written).value() == usual);
}

TEST_CASE("language tags have the shape of RFC 5646") {
    for (auto const* good : {"en", "de", "de-AT", "pt-BR", "zh-Hant-TW", "sr-Latn", "de-CH-1996"})
        CHECK_MESSAGE(parse_language(good).has_value(), good);
    for (auto const* bad : {"", "e", "de_AT", "de-", "-de", "de--AT", "German language", "1de",
                            "verylonglanguage", "de-AT-verylongsubtag"})
        CHECK_MESSAGE(!parse_language(bad).has_value(), bad);
    CHECK(parse_language("de_AT").error().what == "'de_AT' is no language tag");
}
