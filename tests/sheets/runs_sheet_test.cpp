#include "runs.hpp"
#include "sheets.hpp"

#include <groat/paper/text.hpp>
#include <groat/sheets/runs_sheet.hpp>

#include <fmt/format.h>

using namespace groat;
using namespace groat::test;

namespace {

/// Shells of 100 g, ten to the batch of 1 kg, of which by the books one in five breaks.
Book shells() {
    Book book = a_book();
    food(book, "flour", "1 kg", "2.00");
    Formula& shell = formula(book, "shell", {{"flour", "1 kg"}});
    shell.portion = quantity("100 g");
    lose(shell, "breakage", "20 %", LossStage::pieces);
    return book;
}

Sheet losses_sheet(Book& book) {
    link_well(book);
    Costing const costing(linked(book), today);
    return run_losses_sheet({run_losses(costing, 0)}, costing);
}

void five_runs(Book& book, int portioned, int good) {
    for (int i = 0; i < 5; ++i) {
        Run& run = a_run(book, fmt::format("run {}", i), "shell");
        run.portioned = portioned;
        run.good = good;
    }
}

} // namespace

TEST_CASE("the sheet sets what was lost beside the books and says what to write") {
    Book book = shells();
    five_runs(book, 10, 5);
    Sheet const sheet = losses_sheet(book);
    Table const& stages = table(sheet, "losses", "shell");
    CHECK(stages.title == "Shell, 5 runs");
    CHECK(shown(stages, "of_pieces", "books") == "20.0");
    CHECK(shown(stages, "of_pieces", "pooled") == "50.0");
    CHECK(shown(stages, "of_pieces", "write") == "50.0");
    CHECK(table(sheet, "runs", "shell").rows.size() == 5);
    REQUIRE(section<Remarks>(sheet, "news", "shell") != nullptr);
    std::string const news = section<Remarks>(sheet, "news", "shell")->lines.front();
    CHECK(says(news, "write 'breakage: 50.0 %'"));
    CHECK(says(news, "once in 16 times"));
    // 2.00 over 8 good pieces, or over 5: 0.15 more
    CHECK(says(news, "cost 0.1500 USD more than costed"));
}

TEST_CASE("fewer losses than the books say make a piece cheaper") {
    Book book = shells();
    five_runs(book, 10, 10);
    Sheet const sheet = losses_sheet(book);
    REQUIRE(section<Remarks>(sheet, "news", "shell") != nullptr);
    // 0.25 less 0.20
    CHECK(says(section<Remarks>(sheet, "news", "shell")->lines.front(), "cost 0.0500 USD less"));
}

TEST_CASE("while the evidence is thin nothing is to be written") {
    Book book = shells();
    a_run(book, "one", "shell").portioned = 10;
    book.runs.back().good = 1;
    Sheet const sheet = losses_sheet(book);
    CHECK(shown(table(sheet, "losses", "shell"), "of_pieces", "pooled") == "90.0");
    CHECK(shown(table(sheet, "losses", "shell"), "of_pieces", "write").empty());
    CHECK(section<Remarks>(sheet, "news", "shell") == nullptr);
}

TEST_CASE("where the books name several losses, it is up to the maker how they share") {
    Book book = shells();
    lose(book.formulas[0], "rejects", "0 %", LossStage::pieces);
    five_runs(book, 10, 5);
    CHECK(says(section<Remarks>(losses_sheet(book), "news", "shell")->lines.front(),
               "write 50.0 % for breakage and rejects together"));
}

TEST_CASE("runs without weights and counts say so") {
    Book book = shells();
    a_run(book, "one", "shell");
    Sheet const sheet = losses_sheet(book);
    CHECK(says(table(sheet, "losses", "shell").remark, "no run of it"));
    CHECK(says(to_text(sheet), "Shell, 1 run\n"));
}
