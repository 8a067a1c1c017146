#include <groat/model/link.hpp>

#include "books.hpp"

using namespace groat;
using namespace groat::test;

namespace {

/// A bun sold by the dozen, and one lot on the shelf.
Book shelf_with(std::string_view item, std::string_view as = "") {
    Book book = a_book();
    food(book, "flour", "1 kg", "1.00");
    Formula& bun = formula(book, "bun", {{"flour", "50 g"}});
    bun.makes = quantity("1");
    sold_as(bun, "dozen", "12");
    StockItem lot;
    lot.item = named(item);
    lot.amount = quantity("3");
    if (!as.empty()) lot.sale_unit = named(as);
    book.stock.items.push_back(std::move(lot));
    return book;
}

} // namespace

TEST_CASE("stock is of what is bought or of what is made") {
    Book bought = shelf_with("flour");
    CHECK(link(bought).empty());
    CHECK_FALSE(bought.stock.items.front().is_made());
    Book made = shelf_with("bun", "dozen");
    CHECK(link(made).empty());
    CHECK(made.stock.items.front().is_made());
    CHECK(made.stock.items.front().sale_unit.index == 0);
}

TEST_CASE("stock of something unknown, or packed as nothing is sold, is an error") {
    Book unknown = shelf_with("bunn");
    Diagnostics const no_such = link(unknown);
    REQUIRE(finding(no_such, "unknown-ingredient"));
    CHECK(says(finding(no_such, "unknown-ingredient")->help, "'bun'"));
    Book unpacked = shelf_with("bun", "dozn");
    CHECK(finding(link(unpacked), "unknown-sale-unit"));
    Book butter = shelf_with("flour", "dozen");
    CHECK(finding(link(butter), "not-sold"));
}

TEST_CASE("a par is for what is bought") {
    Book book = shelf_with("bun");
    book.stock.items.front().par = quantity("10");
    CHECK(finding(link(book), "par-of-own-goods"));
}
