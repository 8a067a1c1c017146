#include "runs.hpp"

#include <groat/review/run_findings.hpp>

#include <fmt/format.h>

using namespace groat;
using namespace groat::test;

namespace {

/// A baked shell that loses 10 % in the oven, one of it to a run.
Book shells() {
    Book book = a_book();
    food(book, "flour", "1 kg", "2.00");
    oven(book, "deck", "5 kW", "50 %", "0", "0.20");
    Formula& shell = formula(book, "shell", {{"flour", "1 kg"}});
    shell.portion = quantity("100 g");
    shell.oven = baked_in("deck", "10", "30");
    lose(shell, "baking", "10 %", LossStage::after_portioning);
    return book;
}

Run& came_out(Book& book, Number const& grams) {
    Run& run = a_run(book, fmt::format("run {}", book.runs.size()), "shell");
    run.portioned = 1;
    run.good = 1;
    run.out_grams = grams;
    return run;
}

Diagnostics findings(Book& book) {
    link_well(book);
    return run_findings(Costing(linked(book), today));
}

} // namespace

TEST_CASE("books whose loss is not the one seen are warned of, once the evidence is enough") {
    Book book = shells();
    for (int grams : {88, 87, 88, 86}) came_out(book, grams);
    CHECK(findings(book).empty());
    came_out(book, 86);
    auto const warning = finding(findings(book), "loss-not-as-seen");
    REQUIRE(warning.has_value());
    CHECK(warning->severity == Severity::warning);
    // 65 of 500 g
    CHECK(warning->what == "'shell' loses 10 % after portioning by the books, but 5 of 5 runs lost "
                           "more: 13 % in total");
}

TEST_CASE("dough does not get heavier in the oven") {
    Book book = shells();
    came_out(book, 104);
    auto const warning = finding(findings(book), "more-out-than-in");
    REQUIRE(warning.has_value());
    CHECK(warning->what == "after portioning 100 g became 104 g");
    // What is not baked may take up water.
    book.formulas[0].oven.reset();
    CHECK(findings(book).empty());
}

TEST_CASE("nor does dough grow in the bowl") {
    Book book = shells();
    Run& run = a_run(book, "one", "shell");
    run.in_grams = 1000;
    run.dough_grams = 1010;
    CHECK(finding(findings(book), "more-out-than-in").has_value());
}

TEST_CASE("an amount that cannot be turned into grams is an error of the run") {
    Book book = shells();
    Run& run = a_run(book, "one", "shell");
    run.used.push_back({named("flour"), quantity("2 cup")});
    auto const error = finding(findings(book), "missing-density");
    REQUIRE(error.has_value());
    CHECK(error->severity == Severity::error);
}

TEST_CASE("a run for an order that does not say what came out is warned of") {
    Book book = shells();
    wants(order(book, "7"), "shell", 1);
    a_run(book, "one", "shell");
    CHECK(findings(book).empty());
    book.runs[0].order = named("7");
    CHECK(finding(findings(book), "missing-output").has_value());
}

TEST_CASE("runs of a formula that cannot be calculated are passed over") {
    Book book = shells();
    for (int i = 0; i < 6; ++i) came_out(book, 80);
    book.formulas[0].lines[0].amount = quantity("3 cup"); // of unknown density
    CHECK(findings(book).empty());
}
