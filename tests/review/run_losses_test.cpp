#include "runs.hpp"

#include <groat/review/run_losses.hpp>

#include <fmt/format.h>

using namespace groat;
using namespace groat::test;

namespace {

/// A shell of 25 g from a batch of 1000 g; it loses 2 % in the bowl, 10 % in the oven, and 3 % of its pieces.
Book shells() {
    Book book = a_book();
    food(book, "flour", "1 kg", "2.00");
    Formula& shell = formula(book, "shell", {{"flour", "1 kg"}});
    shell.portion = quantity("25 g");
    lose(shell, "bowl", "2 %", LossStage::before_portioning);
    lose(shell, "baking", "10 %", LossStage::after_portioning);
    lose(shell, "breakage", "3 %", LossStage::pieces);
    return book;
}

RunLosses learnt(Book& book, std::string_view name) {
    link_well(book);
    return run_losses(Costing(linked(book), today), index_of(book, name));
}

StageLosses const& at(RunLosses const& losses, SeenStage stage) {
    for (StageLosses const& each : losses.stages)
        if (each.stage == stage) return each;
    FAIL("nothing was seen at that stage");
    return losses.stages.front();
}

/// Runs of so many pieces from 1000 g each, of which so many are good.
void count(Book& book, std::initializer_list<int> good, int portioned = 40) {
    for (int const each : good) {
        Run& run = a_run(book, fmt::format("run {}", book.runs.size() + 1), "shell");
        run.portioned = portioned;
        run.good = each;
    }
}

} // namespace

TEST_CASE("weights before and after the oven give the bake loss of USDA SR28") {
    // USDA SR28, WEIGHT.txt: refrigerated sugar cookie dough 18205 -> baked 18206, 17 g -> 15 g; frozen pie
    // crust 18334 -> baked 18335, 173 g -> 154 g. The shares are DERIVED: 1 - 15/17 = 11.76 %, 1 - 154/173 =
    // 10.98 %.
    struct Pair {
        std::string_view raw;
        std::string_view baked;
        std::string_view loss;
    };
    for (Pair const& pair : {Pair{"17 g", "15 g", "0.1176"}, Pair{"173 g", "154 g", "0.1098"}}) {
        Book book = a_book();
        food(book, "dough", "1 kg", "2.00");
        formula(book, "shell", {{"dough", "1 kg"}}).portion = quantity(pair.raw);
        Run& run = a_run(book, "one", "shell");
        run.portioned = 1;
        run.good = 1;
        run.out_grams = quantity(pair.baked).amount;
        StageLosses const baked = at(learnt(book, "shell"), SeenStage::after_portioning);
        CHECK(baked.pooled == 1 - quantity(pair.baked).amount / quantity(pair.raw).amount);
        CHECK(printed(baked.pooled, 4) == pair.loss);
    }
}

TEST_CASE("a loss is told of by stage: bowl, oven and pieces") {
    Book book = shells();
    Run& run = a_run(book, "Monday", "shell");
    run.in_grams = 2000;
    run.dough_grams = 1950;
    run.portioned = 78;
    run.good = 75;
    run.out_grams = 1650;
    RunLosses const losses = learnt(book, "shell");
    REQUIRE(losses.stages.size() == 3);
    // 50 of 2000 g
    CHECK(at(losses, SeenStage::before_portioning).pooled == percent("2.5 %"));
    // 75 pieces of 1950 / 78 = 25 g are 1875 g, and 1650 came out
    CHECK(at(losses, SeenStage::after_portioning).pooled == percent("12 %"));
    CHECK(at(losses, SeenStage::pieces).pooled == number("3/78"));
    CHECK(at(losses, SeenStage::before_portioning).books == percent("2 %"));
    CHECK(at(losses, SeenStage::after_portioning).books == percent("10 %"));
    CHECK(at(losses, SeenStage::pieces).books == percent("3 %"));
}

TEST_CASE("pieces that were scaled heavy are not held against the oven") {
    Book book = shells();
    Run& run = a_run(book, "Monday", "shell");
    run.dough_grams = 2600; // 100 of 26 g, not 25 g
    run.portioned = 100;
    run.good = 100;
    run.out_grams = 2340;
    CHECK(at(learnt(book, "shell"), SeenStage::after_portioning).pooled == percent("10 %"));
}

TEST_CASE("where nothing was weighed in, so many batches weigh what the books say") {
    Book book = shells();
    Run& run = a_run(book, "Monday", "shell");
    run.batches = number("1/2"); // 500 g
    run.portioned = 19;          // 475 g
    run.good = 19;
    RunLosses const losses = learnt(book, "shell");
    REQUIRE(losses.stages.size() == 2);
    CHECK(at(losses, SeenStage::before_portioning).pooled == percent("5 %"));
    CHECK(at(losses, SeenStage::pieces).pooled.is_zero());
}

TEST_CASE("of a formula by mass the loss is one figure beside all that the books name") {
    Book book = a_book();
    food(book, "plum", "1 kg", "2.00");
    Formula& butter = formula(book, "plum butter", {{"plum", "1 kg"}});
    lose(butter, "simmering", "30 %", LossStage::before_portioning);
    lose(butter, "cooling", "10 %", LossStage::after_portioning);
    Run& run = a_run(book, "Monday", "plum butter");
    run.in_grams = 4000;
    run.out_grams = 2400;
    StageLosses const all = at(learnt(book, "plum butter"), SeenStage::all);
    CHECK(all.pooled == percent("40 %"));
    CHECK(all.books == percent("37 %")); // 1 - 0.7 * 0.9
    CHECK(all.names == std::vector<std::string>{"simmering", "cooling"});
}

TEST_CASE("the pooled loss weighs large runs more, the mean does not") {
    Book book = shells();
    count(book, {9}, 10);
    count(book, {30}, 40);
    StageLosses const pieces = at(learnt(book, "shell"), SeenStage::pieces);
    CHECK(pieces.pooled == number("11/50"));
    CHECK(pieces.mean == percent("17.5 %")); // of 10 % and 25 %
    CHECK(pieces.lowest == percent("10 %"));
    CHECK(pieces.highest == percent("25 %"));
}

TEST_CASE("how likely so one-sided a record is, by the sign test") {
    // Zar's deer (Biostatistical Analysis; as quoted in Wikipedia, "Sign test"): 8 of 10 hind legs longer, two-sided
    // 0.109375 (MEM).
    CHECK(chance_of_one_sided(8, 2) == number("0.109375"));
    CHECK(chance_of_one_sided(2, 8) == number("0.109375"));
    // Tables of critical values of the sign test, two-sided 10 %: 0 of 5, 0 of 7, 1 of 8, 1 of 10, 2 of 12 (MEM).
    CHECK(chance_of_one_sided(4, 0) > percent("10 %"));
    CHECK(chance_of_one_sided(5, 0) <= percent("10 %"));
    CHECK(chance_of_one_sided(6, 1) > percent("10 %"));
    CHECK(chance_of_one_sided(7, 1) <= percent("10 %"));
    CHECK(chance_of_one_sided(8, 2) > percent("10 %"));
    CHECK(chance_of_one_sided(10, 2) <= percent("10 %"));
    CHECK(chance_of_one_sided(0, 0) == 1);
    CHECK(chance_of_one_sided(3, 3) == 1);
}

TEST_CASE("the chances of all ways to fall add up to one") {
    // Each split has its own part of 2 ^ n; what is as one-sided as the most even split is everything.
    for (std::size_t n = 1; n < 40; ++n) {
        CHECK(chance_of_one_sided(n / 2, n - n / 2) == 1);
        for (std::size_t k = 1; k <= n / 2; ++k) {
            CHECK(chance_of_one_sided(k, n - k) >= chance_of_one_sided(k - 1, n - k + 1));
            CHECK(chance_of_one_sided(k, n - k) == chance_of_one_sided(n - k, k));
        }
    }
}

TEST_CASE("what is enough: five of five and eight of nine, not four of four and seven of eight") {
    CHECK(chance_of_one_sided(5, 0) <= enough_evidence);
    CHECK(chance_of_one_sided(8, 1) <= enough_evidence);
    CHECK(chance_of_one_sided(10, 2) <= enough_evidence);
    CHECK(chance_of_one_sided(4, 0) > enough_evidence);
    CHECK(chance_of_one_sided(7, 1) > enough_evidence);
    CHECK(chance_of_one_sided(9, 2) > enough_evidence);
}

TEST_CASE("five runs that all lost more than the books say give a loss to write") {
    Book book = shells();
    count(book, {38, 37, 38, 36}); // 5 %, 7.5 %, 5 %, 10 % against 3 %
    CHECK_FALSE(at(learnt(book, "shell"), SeenStage::pieces).written.has_value());
    count(book, {36});
    StageLosses const pieces = at(learnt(book, "shell"), SeenStage::pieces);
    CHECK(pieces.more == 5);
    CHECK(pieces.written == number("15/200"));
    CHECK(pieces.names == std::vector<std::string>{"breakage"});
}

TEST_CASE("runs on both sides of the books' figure leave it as it is") {
    Book book = shells();
    count(book, {38, 40, 38, 40, 39, 40, 38}); // 5, 0, 5, 0, 2.5, 0, 5 %
    StageLosses const pieces = at(learnt(book, "shell"), SeenStage::pieces);
    CHECK(pieces.more == 3);
    CHECK(pieces.less == 4);
    CHECK_FALSE(pieces.written.has_value());
}

TEST_CASE("runs that lost just what the books say count on neither side") {
    Book book = shells();
    count(book, {97, 97, 97, 97, 97, 97}, 100);
    StageLosses const pieces = at(learnt(book, "shell"), SeenStage::pieces);
    CHECK(pieces.more + pieces.less == 0);
    CHECK(pieces.chance == 1);
    CHECK_FALSE(pieces.written.has_value());
}

TEST_CASE("a gain is no loss that could be written") {
    Book book = shells();
    for (int i = 0; i < 6; ++i) {
        Run& run = a_run(book, fmt::format("run {}", i), "shell");
        run.in_grams = 1000;
        run.dough_grams = 1001;
    }
    StageLosses const bowl = at(learnt(book, "shell"), SeenStage::before_portioning);
    CHECK(bowl.pooled == number("-1/1000"));
    CHECK_FALSE(bowl.written.has_value());
}

TEST_CASE("what a larger loss costs a good piece: the same flour over fewer of them") {
    // A batch of 2.00 gives 1000 * 0.98 / 25 = 39.2 pieces, 38.024 good ones. With 20 % broken it gives 31.36,
    // and each costs 2 / 31.36 - 2 / 38.024 more.
    Book book = shells();
    count(book, {32, 32, 32, 32, 32});
    Run& run = a_run(book, "weighed", "shell");
    run.portioned = 100;
    run.good = 80;
    run.out_grams = 1500; // 25 % off in the oven
    RunLosses const losses = learnt(book, "shell");
    CHECK(at(losses, SeenStage::pieces).costs_more ==
          Money(2 / number("31.36") - 2 / number("38.024"), book.shop.currency));
    // What leaves in the oven makes a piece lighter, not dearer.
    CHECK(at(losses, SeenStage::after_portioning).costs_more.is_zero());
}

TEST_CASE("runs that were made just as the books say teach nothing new") {
    for (std::uint64_t seed = 0; seed < 40; ++seed) {
        Book book = random_book(seed);
        link_well(book);
        Costing const costing(linked(book), today);
        for (std::size_t i = 0; i < book.formulas.size(); ++i)
            for (int day = 0; day < 6; ++day) by_the_book(book, costing, i, Number(day + 1) * 500);
        for (std::size_t i = 0; i < book.formulas.size(); ++i) {
            for (StageLosses const& stage : run_losses(costing, i).stages) {
                if (stage.stage == SeenStage::pieces) continue; // pieces are whole
                CHECK(stage.pooled == stage.books);
                CHECK(stage.mean == stage.books);
                CHECK_FALSE(stage.written.has_value());
                CHECK(stage.costs_more.is_zero());
            }
        }
    }
}

TEST_CASE("the pooled loss and the mean lie between the least and the most") {
    Draw draw(7);
    for (int i = 0; i < 100; ++i) {
        Book book = shells();
        for (std::int64_t run = draw.whole(1, 9); run > 0; --run) {
            int const portioned = static_cast<int>(draw.whole(1, 200));
            count(book, {static_cast<int>(draw.whole(0, portioned))}, portioned);
        }
        StageLosses const pieces = at(learnt(book, "shell"), SeenStage::pieces);
        CHECK(pieces.lowest <= pieces.pooled);
        CHECK(pieces.pooled <= pieces.highest);
        CHECK(pieces.lowest <= pieces.mean);
        CHECK(pieces.mean <= pieces.highest);
    }
}
