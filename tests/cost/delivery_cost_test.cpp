#include "books.hpp"

#include <groat/cost/delivery_cost.hpp>

using namespace groat;
using namespace groat::test;

namespace {

Book shop_that_drives() {
    Book book = a_book();
    role(book, "assistant", "18.00", "10 %");
    book.shop.delivery_flat = money("4.00");
    book.shop.delivery_rate = rate("0.70", "mi");
    book.shop.driver = named("assistant");
    link_well(book);
    return book;
}

} // namespace

TEST_CASE("a drive is the trip, the way and the time of who drives") {
    // 4.00 + 12 x 0.70 = 12.40; both ways 4.00 + 24 x 0.70 = 20.80; 40 minutes at 18.00 + 10 %: 13.20
    Book const book = shop_that_drives();
    Delivery drive;
    drive.distance = quantity("12 mi");
    CHECK(delivery_cost(book.shop, drive).total() == money("12.40"));
    drive.is_both_ways = true;
    drive.minutes = 40;
    DeliveryCost const both = delivery_cost(book.shop, drive);
    CHECK(both.distance == quantity("24 mi"));
    CHECK(both.flat == money("4.00"));
    CHECK(both.way == money("16.80"));
    CHECK(both.time == money("13.20")); // the minutes are all that it takes, and are not doubled
    CHECK(both.total() == money("34.00"));
}

TEST_CASE("a drive without a distance is the trip alone, and nobody's time costs nothing") {
    Book book = shop_that_drives();
    CHECK(delivery_cost(book.shop, {}).total() == money("4.00"));
    book.shop.driver = {};
    Delivery drive;
    drive.minutes = 40;
    CHECK(delivery_cost(book.shop, drive).time.is_zero());
}
