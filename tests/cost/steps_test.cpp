#include <groat/cost/steps.hpp>

#include "books.hpp"
#include "random_book.hpp"

#include <groat/cost/engine.hpp>

using namespace groat;
using namespace groat::test;

namespace {

using Counts = std::vector<Integer>;

/// A cookie of 100 g of flour at 10.00 a kilogram, ten to the batch.
Book cookie_book() {
    Book book = a_book();
    food(book, "flour", "1 kg", "10.00");
    role(book, "baker", "60.00");
    formula(book, "cookie", {{"flour", "1 kg"}}).makes = quantity("10");
    wants(order(book), "cookie", 10);
    return book;
}

Counts dearest(Book& book, int first, Integer const& last, std::size_t line = 0) {
    link_well(book);
    Costing const costing(linked(book), today);
    auto const dear =
        dearest_counts(book, costing.formulary(), groat::test::sales_of(book), line, first, last);
    REQUIRE(dear.has_value());
    return *dear;
}

} // namespace

TEST_CASE("where all is in proportion, the first count is the dearest") {
    Book book = cookie_book();
    CHECK(dearest(book, 1, 1000) == Counts{1});
    CHECK(dearest(book, 7, 7) == Counts{7});
}

TEST_CASE("what is paid once only falls on more") {
    Book book = cookie_book();
    book.formulas[0].labour.push_back(task("weigh", "baker", "10", Per::order));
    CHECK(dearest(book, 1, 1000) == Counts{1});
}

TEST_CASE("a whole batch is dearest for the first that it is begun for") {
    // 1 batch for 1; of 11 to 20 each bears 2/11 of one at most, which is less than 1
    Book book = cookie_book();
    book.formulas[0].batch_step = 1;
    CHECK(dearest(book, 1, 100) == Counts{1});
    CHECK(dearest(book, 10, 100) == Counts{10, 11}); // 1/10, 2/11; 3/21 is less again
    CHECK(dearest(book, 15, 100) == Counts{15, 21}); // 2/15, 3/21; 4/31 is less again
}

TEST_CASE("an oven load counts where it is paid for, and what comes out even does not") {
    Book book = cookie_book();
    oven(book, "deck", "5 kW", "50 %", "10", "0.30");
    book.formulas[0].oven = baked_in("deck", "12", "20");
    CHECK(dearest(book, 20, 100) == Counts{20, 21});
    sold_as(book.formulas[0], "box of 20", "20");
    book.orders[0].lines[0].sale_unit = named("box of 20");
    CHECK(dearest(book, 1, 100) == Counts{1}); // a load for each box
}

TEST_CASE("mixes count where a task is done for each") {
    Book book = cookie_book();
    book.formulas[0].largest_mix = 2;
    CHECK(dearest(book, 20, 100) == Counts{20});
    book.formulas[0].labour.push_back(task("mix", "baker", "5", Per::mix));
    CHECK(dearest(book, 20, 100) == Counts{20, 21});
}

TEST_CASE("a piece that will break is one more to start") {
    // 19 of 20 survive: 19 take 20, of which each bears 20/19; 20 take 22, each 22/20
    Book book = cookie_book();
    lose(book.formulas[0], "breakage", "5 %", LossStage::pieces);
    CHECK(dearest(book, 19, 100) == Counts{19, 20});
    CHECK(dearest(book, 1, 100) == Counts{1}); // 2 for 1
}

TEST_CASE("whole packs count where they are charged") {
    // a pack holds 10 g: 100 cookies of 0.1 g
    Book book = cookie_book();
    food(book, "saffron", "10 g", "80.00").buys_whole_packs = true;
    book.formulas[0].lines.push_back(line({"saffron", "1 g"}));
    CHECK(dearest(book, 100, 300) == Counts{100, 101});
    book.ingredients.back().buys_whole_packs = false;
    CHECK(dearest(book, 100, 300) == Counts{100});
}

TEST_CASE("a supply rounded up counts") {
    Book book = cookie_book();
    food(book, "liner", "1 each", "0.10").kind = Ingredient::Kind::supply;
    book.formulas[0].consumables.push_back(uses("liner", "1/3", Per::piece));
    CHECK(dearest(book, 3, 100) == Counts{3, 4}); // 1/3, 2/4
    CHECK(dearest(book, 1, 100) == Counts{1});
}

TEST_CASE("another line that shares the batch moves where the next begins") {
    // 7 biscuits on the same dough: 3 cookies fill the first batch, a fourth takes a second
    Book book = cookie_book();
    formula(book, "biscuit", {{"cookie", "1"}}).makes = quantity("1");
    book.formulas[0].batch_step = 1;
    wants(book.orders[0], "biscuit", 7);
    CHECK(dearest(book, 1, 20) == Counts{1, 4});
    CHECK(dearest(book, 1, 20, 1) == Counts{1}); // 10 cookies already: 2 of the batch for 1
}

TEST_CASE("the width of a range does not matter where steps are few") {
    Book book = cookie_book();
    book.formulas[0].batch_step = 1;
    CHECK(dearest(book, 10, Integer("1000000000000000000000")) == Counts{10, 11});
}

TEST_CASE("a range that would take too long is not told") {
    Book book = cookie_book();
    book.formulas[0].batch_step = 1;
    link_well(book);
    Costing const costing(linked(book), today);
    auto const told = [&](std::size_t most) {
        return dearest_counts(book, costing.formulary(), groat::test::sales_of(book), 0, 1, 100000,
                              most)
            .has_value();
    };
    CHECK(told(10));
    CHECK_FALSE(told(2));
}

TEST_CASE("the ends of what is alike are found by halving") {
    auto const tens = [](Integer const& count) { return Integer(count / 10); };
    CHECK(last_alike(tens, 23, 1000) == 29);
    CHECK(last_alike(tens, 23, 26) == 26);
    CHECK(first_alike(tens, 23, 1) == 20);
    CHECK(first_alike(tens, 23, 22) == 22);
    CHECK(last_alike(tens, 23, 23) == 23);
}

TEST_CASE("in any order no count costs more each, in all or by category, than one that is costed") {
    std::size_t tried = 0;
    std::size_t costed = 0;
    for_random_books(150, [&](Book const& book) {
        Costing const costing(linked(book), today);
        CostRequest request;
        request.sales = groat::test::sales_of(book);
        request.divides_losses = false;
        std::vector<Sale> const sales = request.sales;
        for (std::size_t line = 0; line < sales.size(); ++line) {
            Integer const first = sales[line].count.numerator();
            Integer const last = first + 40;
            auto const dear = dearest_counts(book, costing.formulary(), sales, line, first, last);
            REQUIRE(dear.has_value());
            Counts const& counts = *dear;
            REQUIRE(counts.front() == first);
            costed += counts.size();
            std::vector<CostByCategory> kept;
            std::size_t next = 0;
            for (Integer count = first; count <= last; ++count, ++tried) {
                request.sales = sales;
                request.sales[line].count = count;
                OrderCost const cost = costing.cost(request);
                CostByCategory each = cost.lines[line].cost;
                for (Money& amount : each.amounts) amount /= Number(count);
                if (next < counts.size() && counts[next] == count) {
                    kept.push_back(each);
                    ++next;
                    continue;
                }
                bool const is_covered =
                    std::any_of(kept.begin(), kept.end(), [&](CostByCategory const& dearer) {
                        for (std::size_t i = 0; i < category_count; ++i)
                            if (each.amounts[i] > dearer.amounts[i]) return false;
                        return true;
                    });
                REQUIRE_MESSAGE(is_covered, count.str());
            }
        }
    });
    CHECK(costed * 3 < tried); // most counts need not be costed
}
