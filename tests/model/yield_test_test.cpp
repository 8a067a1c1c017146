#include <groat/model/yield_test.hpp>

#include "books.hpp"

#include <groat/model/link.hpp>

using namespace groat;
using namespace groat::test;

namespace {

Book plums() {
    Book book = a_book();
    food(book, "plum", "22 lb", "33.00");
    food(book, "lemon", "12", "6.48").grams_each = number("108");
    supply(book, "box", "100", "40.00");
    return book;
}

std::string codes(Book& book) {
    std::string text;
    for (Diagnostic const& each : link(book).sorted())
        text += (text.empty() ? "" : " ") + std::string(each.code);
    return text;
}

} // namespace

TEST_CASE("yields that textbooks print") {
    struct Row {
        std::string_view bought, usable, yield;
    };
    Row const rows[] = {
        // BC Cook Articulation Committee, Basic Kitchen and Food Service Management, "Yield Testing": 1 kg of
        // carrots, 800 g left (percent not printed)
        {"1 kg", "800 g", "80 %"},
        // Bakery and Business Math (open textbook), ch. 25: 3 lb of zucchini at 95 % -> 2.85 lb
        {"3 lb", "2.85 lb", "95 %"},
        // the same: 5000 g of strawberries at 87 % -> 4350 g
        {"5000 g", "4350 g", "87 %"},
        // the same (answer not printed; DERIVED): 8 heads of 8 oz radicchio at 92 % -> 58.88 oz
        {"64 oz", "58.88 oz", "92 %"},
    };
    for (Row const& row : rows) {
        CAPTURE(row.usable);
        Book book = a_book();
        food(book, "it");
        yield_test(book, "t", "it", row.bought, row.usable);
        link_well(book);
        CHECK(yield_of(book.yield_tests[0]) == share_of<Yield>(row.yield));
    }
}

TEST_CASE("what is refuse of 100 g as purchased leaves the yield that USDA SR28 implies") {
    // USDA SR28, FOOD_DES.txt: refuse in percent of the weight as purchased, by NDB number; the documentation
    // (sr28_doc.pdf, p. 5) gives the edible part as 100 - R.
    struct Row {
        std::string_view food;
        std::initializer_list<std::string_view> parts;
        std::string_view yield;
    };
    Row const rows[] = {
        {"09004 apple without skin", {"10 g", "13 g"}, "77 %"},
        {"09040 banana", {"36 g"}, "64 %"},
        {"09150 lemon without peel", {"45 g", "2 g"}, "53 %"},
        {"09200 orange", {"27 g"}, "73 %"},
        {"09316 strawberry", {"6 g"}, "94 %"},
        {"11124 carrot", {"11 g"}, "89 %"},
        {"11282 onion", {"10 g"}, "90 %"},
        {"12061 almond in its shell", {"60 g"}, "40 %"},
        {"12154 black walnut", {"76 g"}, "24 %"},
        {"01123 egg", {"12 g"}, "88 %"},
        // its parts, 8 core + 16 crown + 26 parings, sum to 50; SR28 prints 49, so a yield of 51 %
        {"09266 pineapple", {"8 g", "16 g", "26 g"}, "50 %"},
    };
    for (Row const& row : rows) {
        CAPTURE(row.food);
        Book book = a_book();
        food(book, row.food);
        YieldTest& test = yield_test(book, "t", row.food, "100 g");
        for (std::string_view const part : row.parts) trim(test, "refuse", part);
        link_well(book);
        CHECK(yield_of(test) == share_of<Yield>(row.yield));
        CHECK(test.unexplained_grams().is_zero());
    }
}

TEST_CASE("what is weighed after trimming and what is missing add up to what was bought") {
    Book book = plums();
    YieldTest& test = yield_test(book, "t", "plum", "10 kg", "8.8 kg");
    trim(test, "stones", "0.9 kg");
    trim(test, "bruised", "0.2 kg", rate("1.20", "kg"));
    link_well(book);
    CHECK(test.bought_grams == number("10000"));
    CHECK(test.unexplained_grams() == number("100"));
    CHECK(test.usable_grams() + test.trim_grams() + test.unexplained_grams() == test.bought_grams);
    CHECK(test.by_product_value() == money("0.24"));
}

TEST_CASE("parts add up whatever was weighed") {
    for (std::uint64_t seed = 1; seed <= 300; ++seed) {
        CAPTURE(seed);
        YieldTest test;
        std::uint64_t const parts = seed % 4;
        test.bought_grams = Number(static_cast<std::int64_t>(1000 + seed * 37)) / 7;
        for (std::uint64_t i = 0; i < parts; ++i)
            test.trim.push_back({"part", test.bought_grams / Number(std::int64_t(5 + seed % 11)),
                                 MoneyRate{money("3.10"), find_unit("lb", Measures::us)}});
        if (seed % 3 == 0) test.stated_usable = test.bought_grams * Number(3) / 10;
        CHECK(test.usable_grams() + test.trim_grams() + test.unexplained_grams() ==
              test.bought_grams);
        Money sum;
        for (TrimPart const& part : test.trim) sum += part.value();
        CHECK(sum == test.by_product_value());
        CHECK(test.has_yield());
    }
}

TEST_CASE("what was counted is weighed by the ingredient's own facts") {
    Book book = plums();
    YieldTest& test = yield_test(book, "t", "lemon", "12", "21 oz");
    link_well(book);
    CHECK(test.bought_grams == number("1296")); // 12 of 108 g
    yield_test(book, "u", "plum", "12", "1 kg");
    Diagnostics const found = link(book);
    CHECK(finding(found, "missing-weight").has_value());
}

TEST_CASE("rice takes up water, and a trimmed thing does not") {
    Book book = plums();
    YieldTest& rice = yield_test(book, "t", "plum", "1 kg", "2.5 kg");
    link_well(book);
    CHECK(yield_of(rice) == share_of<Yield>("250 %"));
    CHECK(rice.unexplained_grams() == number("-1500"));
    trim(rice, "stones", "20 g");
    CHECK(codes(book) == "parts-exceed-whole");
}

TEST_CASE("trim that leaves nothing, or is worth more than was paid, is told") {
    Book book = plums();
    YieldTest& test = yield_test(book, "t", "plum", "10 kg");
    test.price = money("33.00");
    trim(test, "stones", "10 kg");
    CHECK(codes(book) == "nothing-usable");
    test.trim[0] = {"stones", number("1000"), rate("33.01", "kg")};
    Diagnostics const found = link(book);
    CHECK(!found.has_errors());
    CHECK(finding(found, "dear-by-product").has_value());
}

TEST_CASE("a yield is that of the test it cites, or of all together") {
    Book book = plums();
    yield_test(book, "first", "plum", "10 kg", "8.8 kg");
    yield_test(book, "second", "plum", "1 kg", "0.8 kg");
    yield_test(book, "a lemon", "lemon", "1 kg", "0.4 kg");
    book.ingredients[0].yield_source = by_test("second");
    link_well(book);
    CHECK(book.ingredients[0].yield == share_of<Yield>("80 %"));
    book.ingredients[0].yield_source = by_test();
    link_well(book);
    CHECK(book.ingredients[0].yield->value() ==
          number("48/55"));            // 9.6 of 11 kg, not (88 + 80) / 2 %
    CHECK(!book.ingredients[1].yield); // lemon cites nothing
}

TEST_CASE("an offer's yield is that of its own supplier's goods") {
    Book book = plums();
    Offer& stoned = offer(book, "plum", "30 lb", "49.80", "the wholesaler");
    yield_test(book, "from nobody", "plum", "1 kg", "0.9 kg");
    yield_test(book, "from the mill", "plum", "1 kg", "0.8 kg").supplier = named("the mill");
    book.offers[0].yield_source = by_test();
    stoned.yield_source = by_test();
    link_well(book);
    CHECK(book.offers[0].yield == share_of<Yield>("85 %"));
    CHECK(stoned.yield == share_of<Yield>("90 %"));
    book.yield_tests[0].supplier = named("the mill");
    CHECK(codes(book) == "unknown-yield"); // nothing was tested of what the wholesaler sells
}

TEST_CASE("what cannot be cited is told with what can") {
    Book book = plums();
    yield_test(book, "plum 12 november", "plum", "10 kg", "8.8 kg");
    yield_test(book, "lemon 12 november", "lemon", "1 kg", "0.4 kg");
    book.ingredients[0].yield_source = by_test("plum 12 novembre");
    auto missed = finding(link(book), "unknown-yield-test");
    REQUIRE(missed.has_value());
    CHECK(missed->what == "no yield test is called 'plum 12 novembre'");
    CHECK(missed->help == "did you mean 'plum 12 november'?");
    book.ingredients[0].yield_source = by_test("lemon 12 november");
    auto other = finding(link(book), "test-of-another");
    REQUIRE(other.has_value());
    CHECK(other->what == "'lemon 12 november' is a yield test of 'lemon', not of 'plum'");
    CHECK(other->help == "one of this is 'plum 12 november'");
    book.ingredients[0].yield_source = {};
    book.offers[2].yield_source = by_test(); // boxes
    CHECK(codes(book) == "unknown-yield");
}

TEST_CASE("names in a yield test are those of the books") {
    Book book = plums();
    yield_test(book, "t", "plumm", "10 kg", "8.8 kg");
    book.ingredients[0].yield_source = by_test();
    auto const found = link(book);
    REQUIRE(finding(found, "unknown-ingredient").has_value());
    CHECK(finding(found, "unknown-ingredient")->help == "did you mean 'plum'?");
    CHECK(!finding(found, "unknown-yield").has_value()); // the misspelt test may be the one
    book.yield_tests[0].item = named("box");
    CHECK(codes(book) == "supply-as-food");
    book.yield_tests[0].item = named("plum");
    yield_test(book, "t", "plum", "1 kg", "0.8 kg");
    CHECK(codes(book) == "given-twice");
    book.yield_tests[1].name = "u";
    book.yield_tests[1].supplier = named("the mil");
    CHECK(codes(book) == "unknown-supplier");
}
