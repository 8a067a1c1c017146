#include "figures.hpp"

#include <cstdint>
#include <limits>
#include <stdexcept>
#include <string>
#include <string_view>

using groat::exact;
using groat::Integer;
using groat::Number;
using groat::parse_number;
using groat::scan_number;

namespace {

/// The exact form of what was read, or the code of the refusal.
std::string read(std::string_view text) {
    auto const number = parse_number(text);
    return number ? exact(*number) : number.error().code;
}

std::string many(std::size_t count, char digit = '9') { return std::string(count, digit); }

struct Row {
    std::string_view written;
    std::string_view means;
};

} // namespace

TEST_CASE("a number is read as people write it, exactly") {
    constexpr Row rows[] = {
        {"0", "0"},
        {"12", "12"},
        {"0.25", "1/4"},
        {".5", "1/2"},
        {"12.50", "25/2"},
        {"1/3", "1/3"},
        {"6/8", "3/4"},
        {"9/3", "3"},
        {"2 1/4", "9/4"},
        {"2  1/4", "9/4"},
        {"0 1/3", "1/3"},
        {"-3", "-3"},
        {"-0.5", "-1/2"},
        {"-1/3", "-1/3"},
        {"-0", "0"},
        {"0/5", "0"},
        {"-2 1/4", "-9/4"}, // minus two and a quarter, not a quarter more than minus two
        {"2 5/4", "13/4"},  // an improper fraction adds up all the same
        {"1234567890.0987654321", "12345678900987654321/10000000000"},
    };
    for (Row const& row : rows) {
        CAPTURE(row.written);
        CHECK(read(row.written) == row.means);
    }
}

TEST_CASE("a leading zero means nothing: 010 g is ten grams, not eight") {
    // Boost's own reader takes 010 for octal.
    CHECK(read("010") == "10");
    CHECK(read("0010.50") == "21/2");
    CHECK(read("1/010") == "1/10");
    CHECK(read("08") == "8");
}

TEST_CASE("fractions of one character are read, alone or behind a whole number") {
    constexpr Row rows[] = {
        {"½", "1/2"}, {"¼", "1/4"}, {"¾", "3/4"}, {"⅓", "1/3"},  {"⅔", "2/3"},   {"⅕", "1/5"},
        {"⅖", "2/5"}, {"⅗", "3/5"}, {"⅘", "4/5"}, {"⅙", "1/6"},  {"⅚", "5/6"},   {"⅛", "1/8"},
        {"⅜", "3/8"}, {"⅝", "5/8"}, {"⅞", "7/8"}, {"2½", "5/2"}, {"2 ½", "5/2"}, {"-1¾", "-7/4"},
    };
    for (Row const& row : rows) {
        CAPTURE(row.written);
        CHECK(read(row.written) == row.means);
    }
}

TEST_CASE("what is not a number is refused, never guessed at") {
    constexpr std::string_view written[] = {
        "",      " ",     "-",         "--1",  "+1",       "- 1",      "abc",   "12a",   "1 2",
        "1 000", "1'000", "1_000",     "1,5",  "1,250.75", "0,25",     "1.",    ".",     "-.",
        "1.2.3", "1..2",  "1/",        "/3",   "1/2/3",    "1/-3",     "1.5/2", "1/2.5", "1 /2",
        "1/ 2",  "1 1/",  "2 1/4 1/2", "1e3",  "1E+3",     "1e999999", "0x10",  "0b1",   "inf",
        "nan",   "½½",    "1/2½",      "1.5½", " 12",      "12 ",      "\t12",  "12\n",  "１２",
        "٣",     "1\xC2", "\xFF",      "−3",   "50 %",
    };
    for (std::string_view const text : written) {
        CAPTURE(text);
        CHECK(read(text) == "bad-number");
    }
    CHECK(read(std::string_view("1\0", 2)) == "bad-number");
}

TEST_CASE("a fraction with 0 below its line is refused") {
    CHECK(read("1/0") == "bad-number");
    CHECK(read("2 1/0") == "bad-number");
    CHECK(read("0/000") == "bad-number");
    CHECK(parse_number("1/0").error().help == "a fraction cannot have 0 below the line");
    CHECK(parse_number("1/0").error().at == 2);
}

TEST_CASE("a decimal comma is refused with the way to write it, since 1,250 means two things") {
    auto const refused = parse_number("1250,75");
    REQUIRE(!refused);
    CHECK(refused.error().what == "'1250,75' is not a number");
    CHECK(refused.error().help ==
          "write a point for the decimals and no mark for thousands, as in 1250.75");
    CHECK(refused.error().at == 4);
}

TEST_CASE("powers of ten are refused before anyone multiplies them out") {
    auto const refused = parse_number("1e999999");
    REQUIRE(!refused);
    CHECK(refused.error().what == "'1e999999' is not a number");
    CHECK(refused.error().help == "powers of ten are not read; write the number out");
}

TEST_CASE("forty digits are read and forty-one are not, however they are spread") {
    CHECK(groat::most_digits == 40);
    CHECK(read(many(40)) == many(40));
    CHECK(read(many(41)) == "number-too-long");
    CHECK(read(many(20) + "." + many(19) + "1") == many(39) + "1/1" + many(20, '0'));
    CHECK(read(many(20) + "." + many(21)) == "number-too-long");
    CHECK(read(many(20, '1') + "/" + many(20, '2')) == "1/2");
    CHECK(read(many(20, '1') + "/" + many(21, '2')) == "number-too-long");
    CHECK(read("1 " + many(19, '1') + "/" + many(20, '2')) != "number-too-long");
    CHECK(read("1 " + many(20, '1') + "/" + many(20, '2')) == "number-too-long");
    CHECK(read("-" + many(40)) == "-" + many(40));
    CHECK(read(many(41, '0')) == "number-too-long"); // zeros count: the bound is on what is written
}

TEST_CASE("a million digits are refused at once and in one short sentence") {
    for (std::string const& text : {many(1'000'000), "0." + many(1'000'000), "1/" + many(1'000'000),
                                    "1 " + many(1'000'000) + "/2"}) {
        auto const refused = parse_number(text);
        REQUIRE(!refused);
        CHECK(refused.error().code == "number-too-long");
        CHECK(refused.error().what.size() < 60);
    }
    CHECK(parse_number(many(1'000'000)).error().what ==
          "a number of 1000000 digits; the most is 40");
    CHECK(parse_number(many(1'000'000, 'x')).error().what.size() < 60);
}

TEST_CASE("scanning takes the number and leaves the rest to the next reader") {
    struct Scan {
        std::string_view text;
        std::string_view number;
        std::string_view rest;
    };
    constexpr Scan rows[] = {
        {"2 3/4 cup", "11/4", " cup"},
        {"620 g", "620", " g"},
        {"620g", "620", "g"},
        {"12 x 500 g", "12", " x 500 g"},
        {"½ cup", "1/2", " cup"},
        {"1/2 lb", "1/2", " lb"},
        {"5ea", "5", "ea"}, // an e that no digit follows is a letter
        {"3 12 g", "3", " 12 g"},
        {"1, 2", "1", ", 2"},
        {"7", "7", ""},
    };
    for (Scan const& row : rows) {
        CAPTURE(row.text);
        auto const scanned = scan_number(row.text);
        REQUIRE(scanned);
        CHECK(exact(scanned->number) == row.number);
        CHECK(row.text.substr(scanned->length) == row.rest);
    }
}

TEST_CASE("any bytes at all are either read to some length or refused with a sentence") {
    Draw draw(20261125);
    constexpr std::string_view pool[] = {"0", "1", "9", " ",    ".", "/", "-",
                                         "½", "e", ",", "\xE2", "x", "⅞"};
    for (int i = 0; i < 20'000; ++i) {
        std::string text;
        for (auto length = draw.whole(0, 8); length > 0; --length) text += pool[draw.whole(0, 12)];
        CAPTURE(text);
        if (auto const scanned = scan_number(text)) {
            CHECK(scanned->length > 0);
            CHECK(scanned->length <= text.size());
            // what was taken, taken again alone, is the same number
            CHECK(read(text.substr(0, scanned->length)).substr(0, 3) != "bad");
        } else {
            CHECK(!scanned.error().what.empty());
            CHECK(!scanned.error().help.empty());
        }
    }
}

TEST_CASE("a number as people write it reads back as itself") {
    CHECK(groat::mixed(Number(9) / 4) == "2 1/4");
    CHECK(groat::mixed(Number(-9) / 4) == "-2 1/4");
    CHECK(groat::mixed(Number(1) / 3) == "1/3");
    CHECK(groat::mixed(Number(0)) == "0");
    CHECK(groat::mixed(Number(-4)) == "-4");
    Draw draw(2);
    for (int i = 0; i < 500; ++i) {
        Number const number = draw.number(-1'000, 1'000);
        CHECK(parse_number(groat::mixed(number)).value() == number);
    }
}

TEST_CASE("a number in its exact form reads back as itself") {
    Draw draw(1);
    for (int i = 0; i < 2'000; ++i) {
        Number const number = draw.number(-1'000'000, 1'000'000);
        CHECK(parse_number(exact(number)).value() == number);
    }
}

TEST_CASE("ten times ten cents is one, and a third taken three times is the whole") {
    Number sum;
    for (int i = 0; i < 10; ++i) sum += figure("0.10");
    CHECK(sum == 1);
    CHECK(figure("0.1") + figure("0.2") == figure("0.3"));
    CHECK(Number(1) / 3 * 3 == 1);
    CHECK(figure("0.175") * 100 == figure("17.5"));
}

TEST_CASE("exactness does not wear off: a million small shares add up to the whole") {
    Number const share = Number(1) / 999'983;
    Number sum;
    for (int i = 0; i < 10'000; ++i) sum += share;
    CHECK(sum == Number(10'000) / 999'983);
}

TEST_CASE("the laws of arithmetic hold without a remainder") {
    Draw draw(2);
    for (int i = 0; i < 2'000; ++i) {
        Number const a = draw.number(-5000, 5000);
        Number const b = draw.number(-5000, 5000);
        Number const c = draw.number(-5000, 5000);
        CHECK((a + b) + c == a + (b + c));
        CHECK((a * b) * c == a * (b * c));
        CHECK(a * (b + c) == a * b + a * c);
        CHECK(a - b == -(b - a));
        if (!b.is_zero()) CHECK(a / b * b == a);
        CHECK((a < b) == (a - b).is_negative());
        CHECK((a == b) == (a - b).is_zero());
    }
}

TEST_CASE("a number is kept in lowest terms with its sign above the line") {
    CHECK(Number(6, 8).numerator() == 3);
    CHECK(Number(6, 8).denominator() == 4);
    CHECK(exact(Number(3, -6)) == "-1/2");
    CHECK(exact(Number(-3, -6)) == "1/2");
    CHECK(exact(Number(0, -5)) == "0");
    CHECK(Number(0, 7).is_whole());
    CHECK(Number(-1, 2).sign() == -1);
    CHECK(Number().is_zero());
}

TEST_CASE("whole numbers of every machine width keep their value") {
    CHECK(exact(Number(std::numeric_limits<std::int64_t>::min())) == "-9223372036854775808");
    CHECK(exact(Number(std::numeric_limits<std::uint64_t>::max())) == "18446744073709551615");
    CHECK(exact(Number(std::int8_t{-128})) == "-128");
    CHECK(exact(Number(Integer("123456789012345678901234567890"))) ==
          "123456789012345678901234567890");
}

TEST_CASE("dividing by zero is a mistake of whoever divides") {
    CHECK_THROWS_AS((void)(Number(1) / 0), std::logic_error);
    CHECK_THROWS_AS(Number(1, 0), std::logic_error);
}
