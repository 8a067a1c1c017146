#include <groat/sheets/fit_remarks.hpp>

#include "books.hpp"
#include "sheets.hpp"

#include <groat/sheets/cost_sheet.hpp>

using namespace groat;
using namespace groat::test;

namespace {

using List = std::vector<std::string>;

Book shell_book() {
    Book book = a_book();
    food(book, "flour", "1 kg", "1.00");
    role(book, "baker", "20.00");
    oven(book, "deck", "5 kW", "50 %", "10", "0.30");
    Formula& shell = formula(book, "rye shell", {{"flour", "1 kg"}});
    shell.makes = quantity("10");
    shell.oven = baked_in("deck", "12", "24");
    lose(shell, "breakage", "2 %", LossStage::pieces);
    book.shop.price = at_margin("50 %");
    return book;
}

List said(Book& book, Number const& count, std::string_view unit = "") {
    link_well(book);
    Costing const costing(linked(book), today);
    Sale const run = sale(book, "rye shell", count, unit);
    return fit_remarks(misfits_of(costing, run), book, run.unit, Figures(book.shop)).lines;
}

} // namespace

TEST_CASE("what a run does not fill is said with the runs that do") {
    Book book = shell_book();
    CHECK(said(book, 48) ==
          List{"Rye shell: 49 started in 3 oven loads, enough for 2.04; a run of 47 "
               "or 70 fills what it takes."});
    CHECK(said(book, 10) ==
          List{"Rye shell: 11 started in 1 oven load, enough for 0.46; a run of 23 "
               "fills what it takes."});
    CHECK(said(book, 4) ==
          List{"Rye shell: 5 started in 1 oven load, enough for 0.21; no run up to 4 "
               "times as large fills it."});
    CHECK(said(book, 70).empty());
    sold_as(book.formulas[0], "box of 12", "12");
    CHECK(said(book, 4, "box of 12") ==
          List{"Rye shell: 49 started in 3 oven loads, enough for 2.04; "
               "a run of 3 or 5 × box of 12 fills what it takes."});
}

TEST_CASE("batches and mixes have their own words") {
    Book book = shell_book();
    Formula& shell = book.formulas[0];
    shell.oven.reset();
    shell.losses.clear();
    shell.batch_step = number("1/2");
    shell.largest_mix = 2;
    shell.labour.push_back(task("mix", "baker", "10", Per::mix));
    CHECK(
        said(book, 21) ==
        List{"Rye shell: 2.5 batches made, 2.1 needed; a run of 20 or 25 fills what it takes.",
             "Rye shell: 2.5 batches in 2 mixes, enough for 1.25; a run of 20 or 40 fills what it "
             "takes."});
    shell.batch_step = 0;
    shell.labour.back().per = Per::batch;
    CHECK(said(book, 21) ==
          List{"Rye shell: 3 batches begun for 2.1; a run of 20 or 30 fills what it takes."});
}

TEST_CASE("the cost sheet shows how the run is made and what it does not fill") {
    Book book = shell_book();
    book.formulas[0].standard_run = 48;
    link_well(book);
    Costing const costing(linked(book), today);
    Sheet const sheet = cost_sheet(item_cost(costing, "rye shell"), costing);
    CHECK(table(sheet, "formulas").title.substr(0, 19) == "How the run is made");
    REQUIRE(section<Remarks>(sheet, "run_fit") != nullptr);
    CHECK(says(section<Remarks>(sheet, "run_fit")->lines[0], "a run of 47 or 70"));
    book.formulas[0].standard_run = 70;
    Costing const fitting(linked(book), today);
    CHECK(section<Remarks>(cost_sheet(item_cost(fitting, "rye shell"), fitting), "run_fit") ==
          nullptr);
}
