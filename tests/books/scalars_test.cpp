#include "reading.hpp"

#include <groat/books/scalars.hpp>

#include <doctest/doctest.h>

#include <string>

using groat::Dimension;
using groat::Reading;
using groat::Wanted;
using groat_test::Desk;
using groat_test::times;

namespace {

struct Reader : Desk {
    Reading reading{found, *groat::Currency::find("USD"), groat::Measures::us};

    std::string quantity(std::string const& text, bool may_be_zero = false) {
        Wanted const pack{"the pack", groat::shapes::what_is_bought, "25 lb", may_be_zero};
        auto const read = read_quantity(value(text), pack, reading);
        return read ? groat::exact(read->amount) : marked();
    }
};

} // namespace

TEST_CASE("what is absent is nothing, and no error") {
    Reader desk;
    CHECK_FALSE(read_text(nullptr, desk.reading));
    CHECK_FALSE(read_money(nullptr, desk.reading));
    CHECK_FALSE(read_date(nullptr, desk.reading));
    CHECK(read_list(nullptr, "a list", desk.reading).empty());
    CHECK_FALSE(read_reference(nullptr, desk.reading).is_given());
    CHECK(desk.said().empty());
}

TEST_CASE("a quantity is read as the measures have it") {
    CHECK(Reader().quantity("pack: 620 g") == "620");
    CHECK(Reader().quantity("pack: '12 x 500 g'") == "6000");
    CHECK(Reader().quantity("pack: \" 2 dozen \"") == "24");
    CHECK(Reader().quantity("pack: \"2 x #30 scoop\"") ==
          exact(2 * groat::Number(946352946, 1000000) / 30));
}

TEST_CASE("a unit that is not known is underlined within the quantity") {
    Reader desk;
    (void)desk.quantity("pack: 2 3/4 cupz # of flour");
    CHECK(desk.said() == "x.yaml:1:13: error: 'cupz' is not a unit [unknown-unit]\n"
                         "  1 | pack: 2 3/4 cupz # of flour\n"
                         "    |             ^^^^\n"
                         "  help: did you mean 'cup'?\n");
    CHECK(Reader().quantity("pack: 'é 3'") == "1:8+1 bad-quantity");
    CHECK(Reader().quantity("pack: ' 3 cupz'") == "1:11+4 unknown-unit");
    CHECK(Reader().quantity("pack: \"3\\x20cupz\"") ==
          "1:7+2 unknown-unit"); // written with an escape
}

TEST_CASE("a quantity of nothing, or of less, is refused with its value") {
    CHECK(Reader().quantity("pack: 0 g") == "1:7+3 not-positive");
    CHECK(Reader().quantity("pack: -3 lb") == "1:7+5 not-positive");
    CHECK(Reader().quantity("pack: 0 g", true) == "0");
    CHECK(Reader().quantity("pack: -1/2 g", true) == "1:7+6 not-positive");
    Reader desk;
    (void)desk.quantity("pack: -3 lb");
    CHECK(desk.said().starts_with(
        "x.yaml:1:7: error: the pack must be above 0, not '-3 lb' [not-positive]\n"));
}

TEST_CASE("a quantity of the wrong kind is refused with an example of the right one") {
    Reader desk;
    (void)desk.quantity("pack: 3 min");
    CHECK(
        desk.said() ==
        "x.yaml:1:7: error: the pack must be a mass, a volume or a count, and '3 min' is a time [wrong-dimension]\n"
        "  1 | pack: 3 min\n"
        "    |       ^^^^^\n"
        "  help: write it as 25 lb\n");
}

TEST_CASE("numbers of any size end as a value or as an error") {
    CHECK(Reader().quantity("pack: 1e999999 g") == "1:8+1 bad-number");
    Reader number;
    CHECK_FALSE(read_positive(number.value("n: 1e999999"), "it", number.reading));
    CHECK(number.said() == "x.yaml:1:5: error: '1e999999' is not a number [bad-number]\n"
                           "  1 | n: 1e999999\n"
                           "    |     ^\n"
                           "  help: powers of ten are not read; write the number out\n");
    Reader digits;
    CHECK_FALSE(read_positive(digits.value("n: " + times(1'000'000, "7")), "it", digits.reading));
    CHECK(digits.marked() == "1:4+1000000 number-too-long");
    CHECK(digits.said().size() < 600);
    CHECK(Reader().quantity("pack: " + times(4, "99 x ") + "3 g") == "288178803"); // 3 * 99^4
    CHECK(Reader()
              .quantity("pack: " + times(4'000'000, "9 x ") + "3 g")
              .ends_with("quantity-too-long"));
    CHECK(
        Reader().quantity("pack: " + times(1'000'000, "7") + " g").ends_with("quantity-too-long"));
}

TEST_CASE("counts are whole and begin with one") {
    auto const count = [](std::string const& text) {
        Reader desk;
        auto const read = read_count(desk.value(text), "the count", desk.reading);
        return read ? read->str() : desk.marked();
    };
    CHECK(count("n: 4") == "4");
    CHECK(count("n: 2 dozen") == "24");
    CHECK(count("n: 1 1/2 dozen") == "18");
    CHECK(count("n: 2.5") == "1:4+3 not-whole");
    CHECK(count("n: 0") == "1:4+1 not-positive");
    CHECK(count("n: 4 kg") == "1:4+4 wrong-dimension");
}

TEST_CASE("percentages are of one kind each") {
    Reader desk;
    CHECK(read_rate<groat::Margin>(desk.value("m: 40 %"), desk.reading)->value() ==
          groat::Number(2, 5));
    CHECK_FALSE(read_rate<groat::Margin>(desk.value("m: 100 %"), desk.reading));
    CHECK(
        desk.said() ==
        "x.yaml:1:4: error: a margin of 100 % is out of reach at any price: a margin is at least 0 % and below "
        "100 % [rate-out-of-range]\n"
        "  1 | m: 100 %\n"
        "    |    ^^^^^\n"
        "  help: a margin is a share of the price; for a share of the cost write a markup, such as 'markup: 100 %'\n");
    Reader loss;
    CHECK_FALSE(read_rate<groat::Loss>(loss.value("l: 100 %"), loss.reading));
    CHECK_FALSE(read_rate<groat::Loss>(loss.value("l: -1 %"), loss.reading));
    CHECK_FALSE(read_rate<groat::Loss>(loss.value("l: 3"), loss.reading));
    CHECK(loss.found.errors() == 3);
    CHECK(loss.said().find("write it with its sign, as 12.5 %") != std::string::npos);
}

TEST_CASE("what has to be paid is a whole number of the smallest coins") {
    auto const coins = [](std::string const& text, bool is_step, char const* currency) {
        Reader desk;
        desk.reading.currency = *groat::Currency::find(currency);
        auto const read = read_coins(desk.value(text), "a given price", is_step, desk.reading);
        return read ? groat::exact(read->amount()) : desk.marked();
    };
    CHECK(coins("p: 0.25", true, "USD") == "1/4");
    CHECK(coins("p: 1/3", false, "USD") == "1:4+3 not-payable");
    CHECK(coins("p: 0.005", true, "USD") == "1:4+5 not-payable");
    CHECK(coins("p: 0.005", true, "KWD") == "1/200");
    CHECK(coins("p: 0.5", false, "JPY") == "1:4+3 not-payable");
    CHECK(coins("p: 0", true, "USD") == "1:4+1 not-positive");
    CHECK(coins("p: 0", false, "USD") == "0");
}

TEST_CASE("an amount in another currency is underlined at the code") {
    Reader desk;
    CHECK_FALSE(read_money(desk.value("price: 13.80 EUR"), desk.reading));
    CHECK(
        desk.said() ==
        "x.yaml:1:14: error: this amount is in EUR, but the books are kept in USD [wrong-currency]\n"
        "  1 | price: 13.80 EUR\n"
        "    |              ^^^\n"
        "  help: write what it is in USD\n");
}

TEST_CASE("a word that means nothing brings those that do") {
    constexpr std::string_view words[] = {"exact", "half", "whole", "quarter"};
    Reader desk;
    CHECK(read_word(desk.value("batches: whole"), words, desk.reading) == 2);
    CHECK_FALSE(read_word(desk.value("batches: hole"), words, desk.reading));
    CHECK(desk.said() ==
          "x.yaml:1:10: error: 'hole' means nothing here [unknown-word]\n"
          "  1 | batches: hole\n"
          "    |          ^^^^\n"
          "  help: did you mean 'whole'? possible are: exact, half, whole, quarter\n");
}

TEST_CASE("lists, mappings and nothing are refused where text is expected") {
    for (auto const& [text, said] : {
             std::pair{"price: [1, 2]",
                       "an amount of money is expected here, not a list [wrong-kind]"},
             std::pair{"price: {a: 1}",
                       "an amount of money is expected here, not a mapping [wrong-kind]"},
             std::pair{"price:",
                       "nothing stands here, but an amount of money is expected [missing-value]"},
         }) {
        Reader desk;
        CHECK_FALSE(read_money(desk.value(text), desk.reading));
        CHECK(desk.said().find(said) != std::string::npos);
    }
}

TEST_CASE("one thing may stand where a list of them may") {
    Reader desk;
    CHECK(read_list(desk.value("terms: none"), "a list of terms", desk.reading).size() == 1);
    CHECK(read_list(desk.value("terms: [none, some]"), "a list of terms", desk.reading).size() ==
          2);
    CHECK(read_list(desk.value("terms: {a: 1}"), "a list of terms", desk.reading).size() == 1);
    CHECK(desk.said().empty());
    CHECK(read_list(desk.value("terms:"), "a list of terms", desk.reading).empty());
    CHECK(desk.said().find("nothing stands here, but a list of terms is expected") !=
          std::string::npos);
}

TEST_CASE("names are one line of bearable length") {
    auto const name = [](std::string const& text) {
        Reader desk;
        auto const read = read_name(desk.value(text), desk.reading);
        return read ? *read : desk.marked();
    };
    CHECK(name("n: crème brûlée") == "crème brûlée");
    CHECK(name("n: ' a '") == "a");
    CHECK(name("n: ''") == "1:4+2 bad-name");
    CHECK(name("n: |\n  a\n  b\n") == "1:4+1 bad-name");
    CHECK(name("n: " + times(300, "x")).ends_with("bad-name"));
}

TEST_CASE("a reference keeps where it was written") {
    Reader desk;
    auto const reference = read_reference(desk.value("use: deck"), desk.reading);
    CHECK(reference.name == "deck");
    CHECK(reference.origin == groat::Span{1, 1, 6, 4});
}
