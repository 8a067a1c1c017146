#include "reading.hpp"

#include <groat/books/read_books.hpp>
#include <groat/model/link.hpp>
#include <groat/model/sound_part.hpp>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <iterator>
#include <random>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

using groat::Book;
using groat::BookReader;
using groat::Shelf;
using groat_test::marks;
using groat_test::times;

namespace {

struct Text {
    Shelf shelf;
    std::string name;
    std::string text;
};

/// Small books of every kind, without an error.
std::vector<Text> good_books() {
    return {
        {Shelf::shop, "shop.yaml",
         "shop: Quillon Street\ncurrency: USD\nlabour: {baker: {wage: 21.00 / h, on-cost: 12 %}}\n"
         "ovens: {deck: {power: 5.5 kW, duty: 45 %, preheat: 25 min}}\nenergy: {electricity: 0.18 / kWh}\n"
         "overhead: [{name: rent, rate: 6.40 per labour hour}]\nfees: {card: {share: 2.9 %, fixed: 0.30}}\n"
         "paid by: card\ntax: {rate: 8 %, other rates: {reduced: 5 %}}\nprice: {margin: 40 %, to: 0.25}\n"},
        {Shelf::ingredients, "ingredients.yaml",
         "plain flour: {density: 125 g / cup, allergens: [wheat]}\nbutter: {}\nlarge egg: {each: 50 g}\n"},
        {Shelf::supplies, "supplies.yaml", "window box: {}\ntray liner: {buy: whole packs}\n"},
        {Shelf::prices, "prices/mill.yaml",
         "supplier: Mill Road\nfrom: 2026-10-01\nterms: {minimum: 75.00}\noffers:\n"
         "  - {item: plain flour, pack: 25 lb, price: 13.80}\n  - {item: butter, pack: 36 x 1 lb, price: 141.00}\n"
         "  - {item: large egg, pack: 15 dozen, price: 52.00, breaks: {3 packs: 50.00}}\n"
         "  - {item: window box, pack: 100, price: 26.00}\n  - {item: tray liner, pack: 500, price: 9.00}\n"},
        {Shelf::formulas, "formulas/shell.yaml",
         "formula: ginger shell\nlines: {plain flour: 620 g, butter: 1 lb, large egg: 2}\nportion: 24 g\n"
         "losses: {bowl: 2 %, baking: 9 %, breakage: 3 %}\noven: {use: deck, minutes: 11, holds: 36}\n"
         "labour: [{task: mix, by: baker, minutes: 14}]\nconsumables: [{item: tray liner, amount: 1, per: load}]\n"
         "---\nformula: sandwich\nmakes: 1\nlines: {ginger shell: 2}\ntax: reduced\n"
         "sold as: {box of 12: {holds: 12, packing: {window box: 1}}}\n"},
        {Shelf::orders, "orders/2026-041.yaml",
         "order: 2026-041\nclient: Halden Reading Circle\ndate: 2026-11-25\n"
         "lines: [{item: sandwich, as: box of 12, count: 4}]\nquantity breaks: [1, 4]\n"},
        {Shelf::menus, "menus/counter.yaml",
         "menu: counter\nitems: [{item: sandwich, as: box of 12, price: 14.50, sold: 12}]\n"},
    };
}

struct Read {
    groat::Sources sources = {};
    groat::Diagnostics found = {};
    Book book = {};

    explicit Read(std::vector<Text> const& texts) {
        BookReader reader(sources);
        for (Text const& each : texts) reader.read(each.shelf, each.name, each.text);
        book = reader.finish();
        found = std::move(reader.found());
    }
    [[nodiscard]] std::string said() const { return render(found, sources); }
};

/// The good books with one text in the place of another, or besides them.
std::vector<Text> with(Shelf shelf, std::string text, bool replaces = true) {
    std::vector<Text> books = good_books();
    for (Text& each : books)
        if (replaces && each.shelf == shelf) {
            each.text = std::move(text);
            return books;
        }
    books.push_back({shelf, "more.yaml", std::move(text)});
    return books;
}

std::string marks_with(Shelf shelf, std::string text, bool replaces = true) {
    return marks(Read(with(shelf, std::move(text), replaces)).found);
}

} // namespace

TEST_CASE("good books are read whole, linked, and without a word") {
    Read const read(good_books());
    CHECK(read.said().empty());
    CHECK(read.book.shop.name == "Quillon Street");
    CHECK(read.book.ingredients.size() == 5);
    CHECK(read.book.offers.size() == 5);
    REQUIRE(read.book.find_formula("sandwich") != nullptr);
    CHECK(read.book.find_formula("sandwich")->lines[0].of == groat::Line::Of::formula);
    REQUIRE(read.book.find_order("2026-041") != nullptr);
    CHECK(read.book.find_order("2026-041")->lines[0].sale_unit.is_resolved());
    REQUIRE(read.book.find_menu("counter") != nullptr);
    CHECK(read.book.find_menu("counter")->items[0].sale_unit.is_resolved());
}

TEST_CASE("an ingredient that nobody knows is named with the nearest") {
    Read const read(with(Shelf::formulas,
                         "formula: sandwich\nmakes: 1\nlines:\n  plane flour: 12 g\n"
                         "sold as: {box of 12: {holds: 12}}\n"));
    CHECK(read.said() ==
          "formulas/shell.yaml:4:3: error: no ingredient or formula is called 'plane flour' "
          "[unknown-ingredient]\n"
          "  4 |   plane flour: 12 g\n"
          "    |   ^^^^^^^^^^^\n"
          "  help: did you mean 'plain flour'?\n");
}

TEST_CASE("an empty file says what belongs there") {
    Read const read(with(Shelf::formulas, "# soon\n", false));
    CHECK(read.said() == "more.yaml: error: the file is empty [empty-file]\n"
                         "  help: it begins with 'formula: a name', and 'lines:' follow\n");
    for (auto const shelf : {Shelf::shop, Shelf::ingredients, Shelf::supplies, Shelf::prices,
                             Shelf::orders, Shelf::menus})
        CHECK(marks_with(shelf, "").starts_with("empty-file"));
    CHECK(marks_with(Shelf::formulas, "---\n---\n", false) == "empty-file");
}

TEST_CASE("ingredients that cannot be read do not make every name an unknown one") {
    CHECK(marks_with(Shelf::ingredients, "plain flour: {density: 125 g / cup\nbutter: {}\n") ==
          "1:14+1 bad-yaml");
    CHECK(marks_with(Shelf::ingredients, std::string("\x89PNG\0\0", 6)) == "not-text");
    CHECK(marks_with(Shelf::ingredients, "[plain flour, butter]\n") == "1:1+1 wrong-kind");
    CHECK(marks_with(Shelf::supplies, "window box: {\n") == "1:13+1 bad-yaml");
    CHECK(marks_with(Shelf::formulas, "lines: {butter: 1 g}\n") == "1:1+1 missing-key");
    CHECK(marks_with(Shelf::shop, "shop: [\n") == "1:7+1 bad-yaml");
    CHECK(marks_with(Shelf::prices, "supplier Mill Road\n") == "1:1+18 wrong-kind");
}

TEST_CASE("an ingredient with an error in its facts is still known by name") {
    CHECK(
        marks_with(Shelf::ingredients, "plain flour: {yield: 0 %}\nbutter: {}\nlarge egg: {}\n") ==
        "1:22+3 rate-out-of-range");
}

TEST_CASE("yield tests that cannot be read do not make every citation an unknown one") {
    std::string const cites =
        "plain flour: {density: 125 g / cup, yield: tested}\nbutter: {yield: {test: butter 3}}\n"
        "large egg: {}\n";
    std::vector<Text> books = with(Shelf::ingredients, cites);
    CHECK(marks(Read(books).found) == "1:44+6 unknown-yield 2:24+8 unknown-yield-test");
    for (std::string const unreadable :
         {"test: [\n", "item: butter\ndate: 2026-11-12\nas purchased: 1 kg\nusable: 1 kg\n", ""}) {
        CAPTURE(unreadable);
        std::vector<Text> spoilt = books;
        spoilt.push_back({Shelf::yields, "yields.yaml", unreadable});
        CHECK(marks(Read(spoilt).found).find("unknown-yield") == std::string::npos);
        CHECK(Read(spoilt).found.has_errors());
    }
    books.push_back({Shelf::yields, "yields.yaml",
                     "test: flour\nitem: plain flour\ndate: 2026-11-12\nas purchased: 1 cup\n"
                     "trim: {sieved out: 1 g}\n---\ntest: butter 3\nitem: butter\n"
                     "date: 2026-11-12\nas purchased: 1 kg\nusable: 990 g\n"});
    Read const read(books);
    CHECK(read.said().empty());
    CHECK(read.book.yield_tests.size() == 2);
    CHECK(read.book.ingredients[0].yield->value() == groat::Number(124, 125)); // of 125 g
    CHECK(read.book.ingredients[1].yield->value() == groat::Number(99, 100));
}

namespace {

/// Which things of the good books are left once something else stands on a shelf: formulas and orders.
std::string left_with(Shelf shelf, std::string text, bool replaces = true) {
    Read read(with(shelf, std::move(text), replaces));
    keep_sound_part(read.book);
    if (read.book.doubts.any(groat::BookPart::shop)) return "nothing";
    CHECK_FALSE(link(read.book).has_errors());
    std::vector<std::string> names = names_of(read.book.formulas);
    for (groat::Order const& each : read.book.orders) names.push_back(each.id);
    return fmt::format("{}", fmt::join(names, ", "));
}
constexpr auto everything = "ginger shell, sandwich, 2026-041";

} // namespace

TEST_CASE("an error puts in doubt what it stands in, and what may be lost by it") {
    // beside the good books
    CHECK(left_with(Shelf::formulas, "formula: x\nmakse: 3\n", false) == everything);
    CHECK(left_with(Shelf::orders, "order: x\nlines: []\n", false) == everything);
    CHECK(left_with(Shelf::orders, "lines: []\n", false) == everything);
    CHECK(left_with(Shelf::menus, "menu: {\n", false) == everything);
    CHECK(left_with(Shelf::stock, "stock: today\n", false) == everything);
    CHECK(left_with(Shelf::runs, "run: [\n", false) == everything);
    CHECK(left_with(Shelf::ingredients, "salt: {densty: 1}\n", false) == everything);
    CHECK(left_with(Shelf::ingredients, "salt: {\n", false) == everything);
    CHECK(left_with(Shelf::formulas, "formula: sandwich\nlines: {butter: 1 g}\n", false) ==
          "ginger shell");
    CHECK(left_with(Shelf::prices, "supplier: x\noffers: [{item: butter, pack: 1 lb}]\n", false)
              .empty());
    CHECK(left_with(Shelf::prices, "supplier: x\noffers: [{item: salt, pack: 1 lb, price: 1.00}]\n",
                    false)
              .empty());
    CHECK(left_with(Shelf::prices, "supplier: x\noffers: []\nform: 2026-10-01\n", false).empty());
    CHECK(left_with(Shelf::prices, "supplier: x\noffers: [\n", false).empty());
    // in their place
    CHECK(left_with(Shelf::shop, "shop: x\n") == "nothing");
    CHECK(left_with(Shelf::supplies, "window box: {each: 1 g}\ntray liner: {}\n") ==
          "ginger shell");
    CHECK(left_with(Shelf::ingredients, "plain flour: {}\nbutter: {}\nbutter: {}\nlarge egg: {}\n")
              .empty());
}

TEST_CASE("an error in an offer puts only its own item in doubt") {
    CHECK(left_with(Shelf::prices,
                    "supplier: x\noffers: [{item: window box, pack: 1, price: free}]\n",
                    false) == "ginger shell");
}

TEST_CASE("what begins without a name may be the rest of what stands before it") {
    std::string const whole =
        "formula: a\nlines: {butter: 1 g}\n---\nformula: b\nlines: {butter: 1 g}\n";
    CHECK(left_with(Shelf::formulas, whole, false) == "ginger shell, sandwich, a, b, 2026-041");
    CHECK(left_with(Shelf::formulas, whole + "---\nmakes: 200 g\n", false) ==
          "ginger shell, sandwich, a, 2026-041");
    CHECK(left_with(Shelf::formulas, whole + "---\n  bad: [\n", false) ==
          "ginger shell, sandwich, a, 2026-041");
    // salt is cut in two here, and its allergens are the facts of nobody
    Read read(with(Shelf::ingredients, "sugar: {}\nsalt:\n---\n  allergens: [milk]\n", false));
    keep_sound_part(read.book);
    CHECK(read.book.ingredient_index.count("sugar") == 1);
    CHECK(read.book.ingredient_index.count("salt") == 0);
}

TEST_CASE("there is one shop, and several documents of the others") {
    CHECK(marks_with(Shelf::shop, good_books()[0].text + "---\nshop: another\ncurrency: EUR\n") ==
          "12:1+1 second-document");
    CHECK(marks_with(Shelf::ingredients, good_books()[1].text + "---\nsalt: {}\n").empty());
    CHECK(marks_with(Shelf::orders,
                     good_books()[5].text + "---\norder: 2\nlines: [{item: sandwich, count: 1}]\n")
              .empty());
}

TEST_CASE("words that come behind the shop are a defect of the caller") {
    std::string const shop = "shop: Backstube\ncurrency: EUR\n";
    std::string const words = "language: de\n";
    groat::Sources sources;
    groat::BookReader late(sources);
    late.read(Shelf::shop, "shop.yaml", shop);
    CHECK_THROWS_AS(late.read(Shelf::words, "words.yaml", words), std::logic_error);
    groat::BookReader early(sources);
    early.read(Shelf::words, "words.yaml", words);
    early.read(Shelf::shop, "shop.yaml", shop);
    CHECK(early.finish().shop.sheets.words.language() == "de");
}

TEST_CASE("a supplier may have several lists but only one set of terms") {
    std::string const second =
        "supplier: Mill Road\noffers: [{item: butter, pack: 1 lb, price: 4.50}]\n";
    Read const read(with(Shelf::prices, second, false));
    CHECK(read.said().empty());
    CHECK(read.book.suppliers.size() == 1);
    CHECK(read.book.offers.back().supplier == 0);
    CHECK(marks_with(Shelf::prices, second + "terms: {minimum: 1}\n", false) ==
          "3:8+1 given-twice");
}

TEST_CASE("errors of all files come together, in the order of the files") {
    std::vector<Text> books = good_books();
    books[0].text += "valid: x\n";
    books[1].text += "butter: {}\n";
    books[3].text += "  - {item: plain flour, pack: 0 g, price: 1.00 EUR}\n";
    books[4].text += "makse: 3\n";
    books[5].text += "due: 2026-11-31\n";
    CHECK(marks(Read(books).found) == "11:8+1 bad-days 4:1+6 duplicate-key 10:31+3 not-positive "
                                      "10:48+3 wrong-currency 14:1+5 unknown-key 6:6+10 bad-date");
}

TEST_CASE("a mark in front of the text moves no column") {
    CHECK(marks_with(Shelf::orders, "\xEF\xBB\xBForder: 1\nlines: []\n") == "2:8+1 missing-value");
    CHECK(marks_with(Shelf::orders, "\xEF\xBB\xBForder: [1]\n") ==
          "1:1+1 missing-key 1:8+1 wrong-kind");
}

TEST_CASE("hostile texts end quickly, on every shelf") {
    std::vector<std::string> const texts = {
        times(10'000, "["),
        times(10'000, "{"),
        times(10'000, "- "),
        times(10'000, "? "),
        times(300'000, "a: "),
        "formula: " + times(1'000'000, "7"),
        "lines: {a: " + times(1'000'000, "7") + " g}",
        "formula: a\nlines: {b: 1e999999}\n",
        "currency: " + times(1'000'000, "U"),
        times(100'000, "\n"),
        "formula: a\nmakes: " + times(100'000, "9 x ") + "1",
        "offers: [" + times(30'000, "{}, ") + "]",
        "a: &a [x, x]\nb: [" + times(200'000, "*a, ") + "]",
        times(100'000, "---\n"),
        times(50'000, "x: {y: z}\n"),
        "shop: \"" + times(100'000, "\\x41") + "\"",
        "order: |\n" + times(100'000, " x\n"),
    };
    for (std::string const& text : texts)
        for (auto const shelf : {Shelf::shop, Shelf::ingredients, Shelf::supplies, Shelf::prices,
                                 Shelf::formulas, Shelf::orders, Shelf::yields}) {
            Read const read({{shelf, "x.yaml", text}});
            CHECK((read.found.has_errors() || shelf == Shelf::ingredients ||
                   shelf == Shelf::supplies));
        }
}

TEST_CASE("books with any of their bytes changed are read or refused, and nothing worse") {
    std::mt19937 random(20261125); // the same changes in every run
    auto const below = [&](std::size_t limit) {
        return static_cast<std::size_t>(random() % limit);
    };
    std::string_view const pieces[] = {
        ":",     "- ",        "{",   "}",    "[",           "]", "\"",   "'",  "#",
        "&a ",   "*a",        "!",   "|",    ">",           "%", "\n",   "\t", "\r\n",
        "---\n", "...\n",     "? ",  "<<: ", ",",           "½", "\xFF", "0",  "-",
        "9e9",   "as bought", " x ", " / ",  "%YAML 1.1\n", "~", "\\"};
    for (int round = 0; round < 2'000; ++round) {
        std::vector<Text> books = good_books();
        std::string& text = books[below(books.size())].text;
        for (std::size_t change = 0; change <= below(4); ++change) {
            std::size_t const at = below(text.size());
            switch (below(5)) {
            case 0: text[at] = static_cast<char>(below(256)); break;
            case 1: text.erase(at, 1 + below(12)); break;
            case 2: text.insert(at, pieces[below(std::size(pieces))]); break;
            case 3: text.insert(at, text.substr(below(text.size()), below(40))); break;
            case 4: text.resize(at + 1); break;
            }
            if (text.empty()) text = " ";
        }
        Read const read(books);
        REQUIRE(read.said().size() < 200'000);
    }
}

TEST_CASE("a category that a menu does not have is told, whatever else could not be read") {
    CHECK(marks_with(Shelf::menus, "menu: counter\ncategories: {sweet: {}}\n"
                                   "items: [{item: sandwich, category: sweat}]\n")
              .ends_with("unknown-category"));
    std::vector<Text> books = with(Shelf::shop, "");
    books.push_back({Shelf::menus, "menus/more.yaml",
                     "menu: more\nitems: [{item: sandwich, category: sweat}]\n"});
    CHECK(marks(Read(books).found).ends_with("unknown-category"));
}
