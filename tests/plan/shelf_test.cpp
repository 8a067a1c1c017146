#include <groat/plan/shelf.hpp>

#include "books.hpp"

using namespace groat;
using namespace groat::test;

namespace {

StockItem lot(std::string_view item, std::string_view amount) {
    StockItem result;
    result.item = named(item);
    result.amount = quantity(amount);
    return result;
}

} // namespace

TEST_CASE("what is on the shelf in grams and pieces, with its par") {
    Book book = a_book();
    food(book, "egg", "180", "45.00").grams_each = number("50");
    supply(book, "box", "100", "40.00");
    formula(book, "glaze", {{"egg", "2"}}).densities = {density("100 g / cup")};
    for (auto const& each : {lot("egg", "1 dozen"), lot("box", "60"), lot("glaze", "2 cup")})
        book.stock.items.push_back(each);
    book.stock.items[0].par = quantity("3 dozen");
    link_well(book);
    CHECK(*amount_of(book.stock.items[0], book) == 600);
    CHECK(*par_of(book.stock.items[0], book) == 1800);
    CHECK(*amount_of(book.stock.items[1], book) == 60);
    CHECK(par_of(book.stock.items[1], book)->is_zero());
    CHECK(*amount_of(book.stock.items[2], book) == 200);
}

TEST_CASE("own goods are taken once, from what is fit on the day") {
    Book book = a_book();
    food(book, "flour", "1 kg", "1.00");
    Formula& bun = formula(book, "bun", {{"flour", "50 g"}});
    bun.makes = quantity("1");
    sold_as(bun, "dozen", "12");
    book.stock.items = {lot("bun", "10"), lot("bun", "5"), lot("bun", "2")};
    book.stock.items[0].good_until = day("2026-12-01");
    book.stock.items[2].sale_unit = named("dozen");
    link_well(book);
    Diagnostics found;
    OwnGoods goods(book, found);
    CHECK(found.empty());
    Date const before = day("2026-12-01");
    Date const after = day("2026-12-02");
    SaleUnit const* const dozen = &book.formulas[0].sold_as[0];
    CHECK(goods.loose(before).at(0) == 15);
    CHECK(goods.loose(after).at(0) == 5);
    CHECK(goods.packed(0, dozen, after) == 2);
    goods.take(0, nullptr, 12, before); // the ten that end first, and two
    CHECK(goods.loose(before).at(0) == 3);
    CHECK(goods.loose(after).at(0) == 3);
    goods.take(0, dozen, 2, before);
    CHECK(goods.packed(0, dozen, before).is_zero());
    goods.add(0, 7, std::nullopt);
    CHECK(goods.loose(after).at(0) == 10);
    CHECK(goods.past(0, after).size() == 1);
}
