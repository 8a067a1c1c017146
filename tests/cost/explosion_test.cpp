#include "books.hpp"
#include "random_book.hpp"

#include <groat/cost/explosion.hpp>

using namespace groat;
using namespace groat::test;

namespace {

/// The runs of an order, by name of the formula.
class Runs {
public:
    Runs(Book& book, std::vector<std::pair<std::string_view, Number>> const& wanted,
         Wholes wholes = Wholes::all, Losses losses = Losses::all)
        : book_(book) {
        link_well(book);
        Formulary const formulary = formulary_of(book, today);
        std::vector<Sale> sales;
        for (auto const& [item, count] : wanted) sales.push_back(sale(book, item, count));
        explosion_ = explode(book, formulary, losses, wholes, sales);
    }
    FormulaRun const& of(std::string_view name) const {
        std::size_t const run = explosion_.run_of[index_of(book_, name)];
        REQUIRE(run != unresolved);
        return explosion_.runs[run];
    }
    [[nodiscard]] Explosion const& all() const { return explosion_; }

private:
    Book const& book_;
    Explosion explosion_;
};

/// Shells of 24 g, 40 to the batch: 960 g of dough.
Book shell_book() {
    Book book = a_book();
    food(book, "flour", "1 kg", "1.00");
    formula(book, "shell", {{"flour", "960 g"}}).portion = quantity("24 g");
    return book;
}

} // namespace

TEST_CASE("broken cookies are baked as well: 48 good ones at 3 % take 50") {
    Book book = shell_book();
    lose(book.formulas[0], "breakage", "3 %", LossStage::pieces);
    Runs const runs(book, {{"shell", 48}});
    // 48 / 0.97 = 49.48..., up to 50; 50 / 40 = 1.25 batches
    CHECK(runs.of("shell").demand == 48);
    CHECK(runs.of("shell").started == 50);
    CHECK(runs.of("shell").batches == number("1.25"));
    CHECK(runs.of("shell").made == number("1.25"));
    CHECK(runs.of("shell").leftover().is_zero());
}

TEST_CASE("without wholes nothing is rounded up") {
    Book book = shell_book();
    lose(book.formulas[0], "breakage", "3 %", LossStage::pieces);
    book.formulas[0].batch_step = 1;
    book.formulas[0].oven.reset();
    Runs const runs(book, {{"shell", 48}}, Wholes::none);
    CHECK(runs.of("shell").started == number("4800/97"));
    CHECK(runs.of("shell").made == number("120/97"));
    CHECK(runs.of("shell").mixes == number("120/97"));
}

TEST_CASE("batches come as the formula says: any part, halves, quarters or whole ones") {
    struct Row {
        Number step;
        std::string_view made;
    };
    Row const rows[] = {{0, "2.1"}, {number("1/4"), "2.25"}, {number("1/2"), "2.5"}, {1, "3"}};
    for (Row const& row : rows) {
        CAPTURE(row.step);
        Book book = shell_book();
        book.formulas[0].batch_step = row.step;
        Runs const runs(book, {{"shell", 84}}); // 84 / 40 = 2.1
        CHECK(runs.of("shell").batches == number("2.1"));
        CHECK(runs.of("shell").made == number(row.made));
        CHECK(runs.of("shell").leftover() == number(row.made) - number("2.1"));
    }
}

TEST_CASE("a batch that comes out even is not raised") {
    Book book = shell_book();
    book.formulas[0].batch_step = number("1/4");
    CHECK(Runs(book, {{"shell", 50}}).of("shell").made == number("1.25"));
}

TEST_CASE("mixes are turns of the mixer, loads are ovens full") {
    Book book = shell_book();
    oven(book, "deck", "5 kW", "50 %", "20", "0.20");
    book.formulas[0].oven = baked_in("deck", "11", "36");
    Runs const one_each(book, {{"shell", 84}});
    CHECK(one_each.of("shell").mixes == 3);         // 2.1 batches, one at a time
    CHECK(one_each.of("shell").loads == Number(3)); // 84 / 36
    book.formulas[0].largest_mix = 2;
    CHECK(Runs(book, {{"shell", 84}}).of("shell").mixes == 2); // 2.1 / 2
    CHECK(Runs(book, {{"shell", 72}}).of("shell").loads == Number(2));
}

TEST_CASE("by mass an oven load is filled with what goes in") {
    Book book = a_book();
    food(book, "nuts", "1 kg", "9.00");
    oven(book, "deck", "5 kW", "50 %", "20", "0.20");
    Formula& roasted = formula(book, "roasted nuts", {{"nuts", "1 kg"}});
    lose(roasted, "roasting", "20 %", LossStage::after_portioning);
    roasted.oven = baked_in("deck", "15", "2 kg");
    formula(book, "bar", {{"roasted nuts", "50 g"}}).makes = quantity("1");
    Runs const runs(book, {{"bar", 80}});
    CHECK(runs.of("roasted nuts").demand == 4000);
    CHECK(runs.of("roasted nuts").batches == 5);       // 4000 / 800
    CHECK(runs.of("roasted nuts").loads == Number(3)); // 5 kg / 2 kg
    CHECK(runs.of("roasted nuts").started.is_zero());
}

TEST_CASE("one filling in two cookies is cooked once, for both") {
    Book book = a_book();
    food(book, "plum", "1 kg", "4.00");
    formula(book, "plum sandwich", {{"plum filling", "16 g"}, {"plum", "1 g"}}).makes =
        quantity("1");
    formula(book, "plum bar", {{"plum filling", "30 g"}}).makes = quantity("1");
    formula(book, "plum filling", {{"plum", "1 kg"}}).batch_step = 1;
    Runs const runs(book, {{"plum sandwich", 48}, {"plum bar", 20}});
    // 48 x 16 + 20 x 30 = 1368 g: two whole batches, where each for itself would take one and one
    CHECK(runs.of("plum filling").demand == 1368);
    CHECK(runs.of("plum filling").batches == number("1.368"));
    CHECK(runs.of("plum filling").made == 2);
    CHECK(runs.all().runs.size() == 3);
}

TEST_CASE("demand runs down with what is made, leftovers included, not with what is sold") {
    // 84 sandwiches of a batch of 40 in whole batches: 120 are assembled and take 240 shells
    Book book = shell_book();
    Formula& sandwich = formula(book, "sandwich", {{"shell", "80"}});
    sandwich.makes = quantity("40");
    sandwich.batch_step = 1;
    Runs const runs(book, {{"sandwich", 84}});
    CHECK(runs.of("shell").demand == 240);
    CHECK(runs.of("shell").made == 6);
}

TEST_CASE("half a piece that a formula takes is a whole one on the bench") {
    Book book = shell_book();
    formula(book, "cake", {{"shell", "5/2"}}).makes = quantity("1");
    CHECK(Runs(book, {{"cake", 1}}).of("shell").started == 3);
    CHECK(Runs(book, {{"cake", 1}}, Wholes::none).of("shell").started == number("2.5"));
}

TEST_CASE("an effort goes by order, batch, mix, load or piece") {
    FormulaRun run;
    run.started = 50;
    run.made = number("1.5");
    run.begun = 2;
    run.mixes = 2;
    run.loads = Number(3);
    CHECK(run.driver(Per::order) == 1);
    CHECK(run.driver(Per::batch) == 2); // what is begun is paid
    CHECK(run.driver(Per::batch, true) == number("1.5"));
    CHECK(run.driver(Per::mix) == 2);
    CHECK(run.driver(Per::load) == 3);
    CHECK(run.driver(Per::piece) == 50);
    CHECK_THROWS_AS((void)run.driver(Per::sale_unit), std::logic_error);
}

TEST_CASE(
    "in any order each formula is run once, after all that use it, for the sum of their needs") {
    for_random_books(200, [](Book const& book) {
        Formulary const formulary = formulary_of(book, today);
        std::vector<Sale> const sales = sales_of(book);
        for (Wholes const wholes : {Wholes::none, Wholes::all}) {
            Explosion const explosion = explode(book, formulary, Losses::all, wholes, sales);
            std::vector<Number> needs(book.formulas.size());
            for (Sale const& each : sales) needs[each.formula] += each.count * each.holds();
            std::vector<bool> was_run(book.formulas.size(), false);
            for (FormulaRun const& run : explosion.runs) {
                REQUIRE(!was_run[run.formula]);
                was_run[run.formula] = true;
                REQUIRE(run.demand == needs[run.formula]);
                REQUIRE(run.made >= run.batches);
                for (BatchLine const& each : formulary.with_losses[run.formula].lines) {
                    if (!each.is_formula) continue;
                    REQUIRE(!was_run[each.index]);
                    needs[each.index] += each.amount * run.made;
                }
            }
        }
    });
}

TEST_CASE("in any order there is enough: survivors of what is started cover what is wanted") {
    for_random_books(200, [](Book const& book) {
        Formulary const formulary = formulary_of(book, today);
        for (FormulaRun const& run :
             explode(book, formulary, Losses::all, Wholes::all, sales_of(book)).runs) {
            Formula const& formula = book.formulas[run.formula];
            Batch const& batch = formulary.with_losses[run.formula];
            if (formula.makes_pieces()) {
                REQUIRE(run.started.is_whole());
                REQUIRE(run.started * batch.survival >= run.demand);
                REQUIRE(run.made * batch.pieces >= run.started);
                // and one less would not do
                REQUIRE((run.started - 1) * batch.survival < ceiling(run.demand));
            } else {
                REQUIRE(run.made * batch.mass_out >= run.demand);
            }
            REQUIRE(run.mixes.is_whole());
            if (!formula.batch_step.is_zero()) {
                REQUIRE((run.made / formula.batch_step).is_whole());
                REQUIRE(run.leftover() < formula.batch_step);
            }
        }
    });
}
