#include "books.hpp"

#include <groat/cost/by_products.hpp>
#include <groat/cost/engine.hpp>

using namespace groat;
using namespace groat::test;

namespace {

Number const pound = number("453.59237");

/// 12 lb of lamb at 79.80, of which 6 lb can be used, and 1 lb of kidneys is worth 6.10.
Book lamb(bool is_used) {
    Book book = a_book();
    food(book, "lamb").uses_by_products = is_used;
    book.ingredients.back().yield_source = by_test();
    offer(book, "lamb", "12 lb", "79.80");
    trim(yield_test(book, "t", "lamb", "12 lb", "6 lb"), "kidneys", "1 lb", rate("6.10", "lb"));
    formula(book, "chops", {{"lamb", "1 lb"}}).makes = quantity("1");
    return book;
}

/// What six of `item` cost.
struct Costed {
    Costing costing;
    OrderCost cost;

    explicit Costed(Book& book, std::string const& item = "chops", int count = 6)
        : costing(linked(book), today),
          cost(costing.cost({{sale(costing.book(), item, count)}, Wholes::none})) {}
};

} // namespace

TEST_CASE("a by-product that is used makes what it was cut from cheaper, by its worth") {
    Book used = lamb(true);
    Costed const costed(used);
    OrderCost const& cost = costed.cost;
    CHECK(cost.total[Category::ingredients] == money("73.70"));
    Purchase const& purchase = *of_ingredient(cost, used, "lamb").purchase;
    CHECK(purchase.by_product * (12 * pound) == money("6.10"));
    CHECK(purchase.as_bought() * (12 * pound) == money("79.80"));
    // in the piece and trim divide what is left
    CHECK(cost.loss.in_the_piece == money("36.85"));
    CHECK(cost.loss.trim == money("36.85"));
    Book saved_for_nothing = lamb(false);
    CHECK(Costed(saved_for_nothing).cost.total[Category::ingredients] == money("79.80"));
}

TEST_CASE("a stated yield cites no test, so nothing comes off") {
    Book book = lamb(true);
    book.offers.front().yield = share_of<Yield>("50 %");
    CHECK(Costed(book).cost.total[Category::ingredients] == money("79.80"));
}

TEST_CASE("a by-product worth more than was paid makes nothing cost less than nothing") {
    Book book = lamb(true);
    book.yield_tests.front().trim.front().worth = rate("90.00", "lb");
    CHECK(Costed(book).cost.total[Category::ingredients].is_zero());
}

TEST_CASE("all tests cited are taken together, a large one counting for more") {
    Book book = lamb(true);
    yield_test(book, "u", "lamb", "24 lb", "12 lb"); // nothing of it was worth anything
    OrderCost const cost = Costed(book).cost;
    // 6.10 over 36 lb bought; 12 lb are bought
    CHECK(cost.total[Category::ingredients] == money("79.80") - money("6.10") / Number(3));
}

TEST_CASE("what takes up water has no trim: what is in the piece is what was bought for it") {
    // 1 kg of rice cooked to 2.5 kg: 5 kg of it take 2 kg at 1.50, all of it eaten
    Book book = a_book();
    food(book, "rice").yield = share_of<Yield>("250 %");
    offer(book, "rice", "1 kg", "1.50");
    formula(book, "bowl", {{"rice", "500 g"}}).makes = quantity("1");
    Costed const costed(book, "bowl", 10);
    OrderCost const& cost = costed.cost;
    CHECK(cost.total[Category::ingredients] == money("3.00"));
    CHECK(cost.loss.in_the_piece == money("3.00"));
    CHECK(cost.loss.trim.is_zero());
    CHECK(of_ingredient(cost, book, "rice").eaten == money("3.00"));
}
