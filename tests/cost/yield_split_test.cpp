#include "books.hpp"

#include <groat/cost/engine.hpp>

using namespace groat;
using namespace groat::test;

TEST_CASE("of what takes up water, all that was bought is in the piece, and nothing is trim") {
    // 100 g of rice at 2.00 a kg cook up to 250 g
    Book book = a_book();
    food(book, "rice", "1 kg", "2.00").yield = share_of<Yield>("250 %");
    formula(book, "pudding", {{"rice", "250 g"}}).makes = quantity("1");
    link_well(book);
    Costing const costing(linked(book), today);
    YieldLoss const loss = costing.cost({{sale(book, "pudding", 1)}}).loss;
    CHECK(loss.in_the_piece == money("0.20"));
    CHECK(loss.trim.is_zero());
    CHECK(loss.total() == money("0.20"));
}

TEST_CASE("what is kept in a run that rounds up tells of that as rounding") {
    // a batch of 10 pieces of 96 g of a kilogram: 10 are portioned, 40 g are scrap; 5 take half of 1.00, of which
    // 5 x 96 g are in the piece
    Book book = a_book();
    food(book, "flour", "1 kg", "1.00");
    Formula& shell = formula(book, "shell", {{"flour", "1 kg"}});
    shell.portion = quantity("96 g");
    shell.keeps_leftover = true;
    link_well(book);
    Costing const costing(linked(book), today);
    YieldLoss const loss = costing.cost({{sale(book, "shell", 5)}}).loss;
    CHECK(loss.in_the_piece == money("0.48"));
    CHECK(loss.rounding == money("0.02"));
}
