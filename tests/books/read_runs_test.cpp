#include "reading.hpp"

#include <groat/books/read_runs.hpp>

#include <groat/books/read_books.hpp>

#include <doctest/doctest.h>

#include <string>

using groat::Money;
using groat::Number;
using groat::Run;
using groat::Shelf;
using groat_test::Desk;

namespace {

struct RunReader : Desk {
    groat::Reading reading{found, *groat::Currency::find("USD"), groat::Measures::us};

    Run run(std::string const& text) { return read_run(node(text), reading); }
};

/// What is found in a run; what is added begins in line 3.
std::string run_marks(std::string const& text) {
    RunReader desk;
    (void)desk.run("run: shells\nformula: shell\n" + text + "\n");
    return desk.marked();
}

/// What is found in a small folder of books with these runs, whose text begins in line 1.
std::string book_marks(std::string const& runs, bool has_formula_gap = false,
                       std::string const& orders = "order: 7\nlines: [{item: shell, count: 9}]\n") {
    Desk desk;
    groat::BookReader reader(desk.sources);
    reader.read(Shelf::shop, "shop.yaml",
                "shop: The Test\ncurrency: USD\nlabour: {baker: {wage: 20.00 / h}}\n");
    reader.read(Shelf::ingredients, "ingredients.yaml", "flour: {}\nrye: {}\nplum: {}\n");
    reader.read(Shelf::formulas, "formulas/shell.yaml",
                "formula: dough\nlines: {flour: 1 kg}\n---\n"
                "formula: shell\nlines: {dough: 20 g, rye: 5 g}\nmakes: 1\n");
    if (has_formula_gap) reader.has_gap(Shelf::formulas);
    reader.read(Shelf::orders, "orders/7.yaml", orders);
    reader.read(Shelf::runs, "runs/may.yaml", runs);
    (void)reader.finish();
    return groat_test::marks(reader.found());
}

} // namespace

TEST_CASE("every field of a run arrives") {
    RunReader desk;
    Run const run = desk.run(R"(
run: shells for the reading circle
formula: rye shell
date: 2026-12-09
order: 2026-041
batches: 1/2
in: 2.12 kg
dough: 2.08 kg
pieces: {portioned: 84, good: 80}
out: 1.78 kg
used: {butter: {amount: 330 g, paid: 2.90}, plain flour: 640 g, large egg: 2}
worked: {baker: {time: 55 min, paid: 24.00 / h}, assistant: 1 h 20 min}
)");
    CHECK(desk.said().empty());
    CHECK(run.name == "shells for the reading circle");
    CHECK(run.formula.name == "rye shell");
    CHECK(groat::iso_date(*run.date) == "2026-12-09");
    CHECK(run.order.name == "2026-041");
    CHECK(run.batches == Number(1, 2));
    CHECK(run.in_grams == Number(2120));
    CHECK(run.dough_grams == Number(2080));
    CHECK(run.portioned == 84);
    CHECK(run.good == 80);
    CHECK(run.out_grams == Number(1780));
    REQUIRE(run.used.size() == 3);
    CHECK(run.used[0].item.name == "butter");
    CHECK(run.used[0].amount.amount == 330);
    CHECK(run.used[0].paid->amount() == Number(29, 10));
    CHECK(run.used[1].amount.amount == 640);
    CHECK_FALSE(run.used[1].paid.has_value());
    CHECK(run.used[2].amount.is(groat::Dimension::count));
    REQUIRE(run.worked.size() == 2);
    CHECK(run.worked[0].minutes == 55);
    CHECK(run.worked[0].paid->of(groat::minutes(60)).amount() == 24);
    CHECK(run.worked[1].minutes == 80);
}

TEST_CASE("a run needs a name and a formula, and nothing else") {
    RunReader desk;
    CHECK(desk.run("run: shells\nformula: shell\n").name == "shells");
    CHECK(desk.said().empty());
    (void)desk.run("date: 2026-12-09\n");
    CHECK(desk.marked() == "1:1+1 missing-key 1:1+1 missing-key");
}

TEST_CASE("no more pieces can be good than were portioned") {
    CHECK(run_marks("pieces: {portioned: 84, good: 85}") == "3:25+4 more-good-than-made");
    CHECK(run_marks("pieces: {portioned: 84, good: 84}").empty());
    CHECK(run_marks("pieces: {portioned: 84, good: 0}").empty());
    CHECK(run_marks("pieces: {good: 7}").empty());
}

TEST_CASE("what cannot be a count, a weight or a time is refused where it stands") {
    CHECK(run_marks("pieces: {portioned: 84}") == "3:9+1 missing-key");
    CHECK(run_marks("pieces: {portioned: 84, good: 79.5}") == "3:31+4 not-whole");
    CHECK(run_marks("pieces: {portioned: 0, good: 0}") == "3:21+1 not-positive");
    CHECK(run_marks("pieces: {portioned: 84, good: -1}") == "3:31+2 not-positive");
    CHECK(run_marks("pieces: 84") == "3:9+2 wrong-kind");
    CHECK(run_marks("dough: 3 cup") == "3:8+5 wrong-dimension");
    CHECK(run_marks("in: 0 g") == "3:5+3 not-positive");
    CHECK(run_marks("out: -2 kg") == "3:6+5 not-positive");
    CHECK(run_marks("batches: 0") == "3:10+1 not-positive");
    CHECK(run_marks("date: yesterday") == "3:7+9 bad-date");
    CHECK(run_marks("worked: {baker: 55}") == "3:17+2 wrong-dimension");
    CHECK(run_marks("worked: {baker: {time: 1 h, paid: 20.00}}") == "3:35+5 bad-rate");
    CHECK(run_marks("worked: {baker: {paid: 20.00 / h}}") == "3:17+1 missing-key");
    CHECK(run_marks("used: {butter: 3 min}") == "3:16+5 wrong-dimension");
    CHECK(run_marks("used: [butter]") == "3:7+1 wrong-kind");
    CHECK(run_marks("used: {butter: {amount: 3 g, paid: free}}") == "3:36+4 bad-money");
    CHECK(run_marks("used: {butter: {amount: 3 g, price: 1.00}}") == "3:30+5 unknown-key");
}

TEST_CASE("nothing can be paid for no butter at all, but none may be used") {
    CHECK(run_marks("used: {butter: {amount: 0 g, paid: 2.00}}") == "3:30+4 paid-for-nothing");
    CHECK(run_marks("used: {butter: 0 g}").empty());
}

TEST_CASE("a mistyped key of a run is an error beside the nearest known one") {
    RunReader desk;
    (void)desk.run("run: shells\nformula: shell\ndough weight: 2 kg\nportoined: 84\n");
    CHECK(desk.marked() == "3:1+12 unknown-key 4:1+9 unknown-key");
    RunReader other;
    (void)other.run("run: shells\nformula: shell\nbatchs: 2\n");
    CHECK(other.said().find("did you mean 'batches'?") != std::string::npos);
}

TEST_CASE("the names in a run have to stand for something in the books") {
    std::string const begin = "run: a\nformula: shell\n";
    CHECK(book_marks("run: a\nformula: shel\n") == "2:10+4 unknown-formula");
    CHECK(book_marks(begin + "order: 8\n") == "3:8+1 unknown-order");
    CHECK(book_marks(begin + "order: 7\n").empty());
    CHECK(book_marks(begin + "worked: {bakr: 3 min}\n") == "3:10+4 unknown-role");
    CHECK(book_marks(begin + "used: {plum: 3 g}\n") == "3:8+4 not-in-formula");
    // Rye goes into the shell itself, flour into the dough it is made of.
    CHECK(book_marks(begin + "used: {rye: 3 g, flour: 3 g}\n").empty());
    CHECK(book_marks(begin + "used: {dough: 3 g}\n") == "3:8+5 not-in-formula");
}

TEST_CASE("a formula by mass has neither dough nor pieces") {
    CHECK(book_marks("run: a\nformula: dough\npieces: {good: 3}\n") == "1:6+1 made-by-mass");
    CHECK(book_marks("run: a\nformula: dough\ndough: 3 kg\n") == "1:6+1 made-by-mass");
    CHECK(book_marks("run: a\nformula: dough\nin: 3 kg\nout: 2.9 kg\n").empty());
}

TEST_CASE("the same run of the same day stands once") {
    std::string const run = "run: a\nformula: shell\ndate: 2026-12-09\n";
    CHECK(book_marks(run + "---\n" + run) == "5:6+1 given-twice");
    CHECK(book_marks(run + "---\nrun: a\nformula: shell\ndate: 2026-12-10\n").empty());
}

TEST_CASE("a name is not missed where the file that may hold it could not be read") {
    CHECK(book_marks("run: a\nformula: shel\nused: {plum: 3 g}\n", true).empty());
    CHECK(book_marks("run: a\nformula: shell\nused: {plum: 3 g}\n", true).empty());
    // The order has lost its number: that is said, and not a second time of the run.
    CHECK(book_marks("run: a\nformula: shell\norder: 7\n", false,
                     "lines: [{item: shell, count: 9}]\n") == "1:1+1 missing-key");
}
