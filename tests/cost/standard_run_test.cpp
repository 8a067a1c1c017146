#include "books.hpp"

#include <groat/cost/standard_run.hpp>

using namespace groat;
using namespace groat::test;

namespace {

StandardRun run_of(Book& book, std::string_view name, SaleUnit const* unit = nullptr) {
    link_well(book);
    Formulary const formulary = formulary_of(book, today);
    return standard_run(book, formulary, index_of(book, name), unit);
}

} // namespace

TEST_CASE("a standard run is as its formula says, else as the shop does, in whole sale units") {
    Book book = a_book();
    food(book, "flour", "1 kg", "1.00");
    Formula& cookie = formula(book, "cookie", {{"flour", "1 kg"}});
    cookie.makes = quantity("20");
    SaleUnit const& box = sold_as(cookie, "box of 8", "8");
    cookie.standard_run = 60;
    book.shop.standard_run = 100;
    StandardRun const run = run_of(book, "cookie", &box);
    CHECK(run.said == StandardRun::Said::formula);
    CHECK(run.stated == 60);
    CHECK(run.sale.count == 8); // 7 1/2 boxes
    book.formulas[0].standard_run.reset();
    CHECK(run_of(book, "cookie", &box).said == StandardRun::Said::shop);
    CHECK(run_of(book, "cookie", &box).sale.count == 13);
    CHECK(run_of(book, "cookie").sale.count == 100);
}

TEST_CASE("where no run is stated it is what a full mix gives, else one batch") {
    // 20 pieces to the batch of which 5 % break: 19 good ones, two boxes of 8; two batches to the mix: 38, four
    Book book = a_book();
    food(book, "flour", "1 kg", "1.00");
    Formula& cookie = formula(book, "cookie", {{"flour", "1 kg"}});
    cookie.makes = quantity("20");
    lose(cookie, "breakage", "5 %", LossStage::pieces);
    SaleUnit const& box = sold_as(cookie, "box of 8", "8");
    SaleUnit const& crate = sold_as(cookie, "crate", "100");
    StandardRun const run = run_of(book, "cookie", &box);
    CHECK(run.said == StandardRun::Said::nobody);
    CHECK(run.stated == 19);
    CHECK(run.sale.count == 2);
    book.formulas[0].largest_mix = 2;
    CHECK(run_of(book, "cookie", &box).sale.count == 4);
    CHECK(run_of(book, "cookie", &crate).sale.count == 1); // at least one
}

TEST_CASE("the shop's run is of pieces: what is made by mass has its own, or one batch") {
    Book book = a_book();
    food(book, "plum", "1 kg", "4.00");
    Formula& jam = formula(book, "jam", {{"plum", "1 kg"}});
    lose(jam, "cooking", "10 %", LossStage::before_portioning);
    SaleUnit const& jar = sold_as(jam, "jar", "250 g");
    book.shop.standard_run = 60;
    CHECK(run_of(book, "jam", &jar).sale.count == 3); // 900 g
    CHECK(run_of(book, "jam", &jar).stated == 900);
    book.formulas[0].standard_run = 2000;
    CHECK(run_of(book, "jam", &jar).sale.count == 8);
}
