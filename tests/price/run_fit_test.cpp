#include <groat/price/run_fit.hpp>

#include "books.hpp"
#include "random_book.hpp"

using namespace groat;
using namespace groat::test;

namespace {

/// A shell of which one in fifty breaks, 24 to the oven load, ten to the batch.
Book shell_book() {
    Book book = a_book();
    food(book, "flour", "1 kg", "1.00");
    role(book, "baker", "20.00");
    oven(book, "deck", "5 kW", "50 %", "10", "0.30");
    Formula& shell = formula(book, "shell", {{"flour", "1 kg"}});
    shell.makes = quantity("10");
    shell.oven = baked_in("deck", "12", "24");
    lose(shell, "breakage", "2 %", LossStage::pieces);
    return book;
}

std::vector<Misfit> misfits(Book& book, Number const& count, std::string_view item = "shell",
                            std::string_view unit = "") {
    link_well(book);
    Costing const costing(linked(book), today);
    return misfits_of(costing, sale(book, item, count, unit));
}

} // namespace

TEST_CASE("a load that is not full is told with the nearest runs that fill theirs") {
    // 48 / 0.98 = 48.98: 49 in 3 loads; 47 start 48, which are 2 loads; 70 start 72, which are 3
    Book book = shell_book();
    auto const found = misfits(book, 48);
    REQUIRE(found.size() == 1);
    CHECK((found[0].vessel == Vessel::load));
    CHECK(found[0].run.started == 49);
    CHECK(found[0].taken == 3);
    CHECK(found[0].filled == Number(49) / 24);
    CHECK(found[0].smaller == Integer(47));
    CHECK(found[0].larger == Integer(70));
    CHECK(misfits(book, 47).empty());
    CHECK(misfits(book, 70).empty());
}

TEST_CASE("a first load has no smaller run") {
    Book book = shell_book();
    auto const found = misfits(book, 10);
    REQUIRE(found.size() == 1);
    CHECK_FALSE(found[0].smaller.has_value());
    CHECK(found[0].larger == Integer(23)); // 24 start 25
    REQUIRE(misfits(book, 4).size() == 1);
    CHECK_FALSE(misfits(book, 4)[0].larger.has_value()); // 23 are more than four times that
}

TEST_CASE("runs are in whole sale units, and full is what boxes allow") {
    // 12 to the box: 4 boxes start 49 in 3 loads; 3 boxes 37 in 2; 5 boxes 62 in 3, and 6 boxes 74 in 4
    Book book = shell_book();
    sold_as(book.formulas[0], "box", "12");
    auto const found = misfits(book, 4, "shell", "box");
    REQUIRE(found.size() == 1);
    CHECK(found[0].smaller == Integer(3));
    CHECK(found[0].larger == Integer(5));
    CHECK(misfits(book, 5, "shell", "box").empty());
}

TEST_CASE("steps of batches, batches paid for and mixes are told where they do not come out even") {
    Book book = shell_book();
    Formula& shell = book.formulas[0];
    shell.oven.reset();
    shell.losses.clear();
    CHECK(misfits(book, 12).empty()); // 1.2 batches, and nothing is paid for each
    shell.labour.push_back(task("mix", "baker", "10", Per::batch));
    auto found = misfits(book, 12);
    REQUIRE(found.size() == 1);
    CHECK((found[0].vessel == Vessel::batch));
    CHECK(found[0].taken == 2);
    CHECK(found[0].smaller == Integer(10));
    CHECK(found[0].larger == Integer(20));
    shell.batch_step = number("1/2");
    found = misfits(book, 12);
    REQUIRE(found.size() == 1);
    CHECK(found[0].run.made == number("1.5"));
    CHECK(found[0].larger == Integer(15));
    shell.labour.back().per = Per::mix;
    shell.largest_mix = 2;
    found = misfits(book, 35);
    REQUIRE(found.size() == 1); // 3.5 batches in 2 mixes
    CHECK((found[0].vessel == Vessel::mix));
    CHECK(found[0].smaller == Integer(20));
    CHECK(found[0].larger == Integer(40));
}

TEST_CASE("what is used is looked at as well, unless its leftover is kept") {
    Book book = shell_book();
    Formula& filling = formula(book, "filling", {{"flour", "1 kg"}});
    filling.batch_step = 1;
    Formula& pair = formula(book, "pair", {{"shell", "2"}, {"filling", "20 g"}});
    pair.makes = quantity("1");
    auto const found = misfits(book, 40, "pair"); // 800 g of 1 kg; 82 shells in 4 loads
    REQUIRE(found.size() == 2);
    bool const is_filling_first = book.formulas[found[0].run.formula].name == "filling";
    CHECK(found[is_filling_first ? 0 : 1].larger == Integer(50));
    CHECK(found[is_filling_first ? 1 : 0].larger == Integer(47)); // 94 start 96
    book.formulas[1].keeps_leftover = true;
    CHECK(misfits(book, 40, "pair").size() == 1);
}

TEST_CASE("in any book the runs that are named fill what they take") {
    for_random_books(60, [](Book const& book) {
        Costing const costing(linked(book), today);
        Sale const first = groat::test::sales_of(book).front();
        for (Misfit const& each : misfits_of(costing, first)) {
            for (auto const& other : {each.smaller, each.larger}) {
                if (!other) continue;
                Sale fitting = first;
                fitting.count = *other;
                for (Misfit const& still : misfits_of(costing, fitting))
                    REQUIRE((still.run.formula != each.run.formula || still.vessel != each.vessel));
            }
        }
    });
}
