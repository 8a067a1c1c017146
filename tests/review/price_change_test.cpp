#include "books.hpp"

#include <groat/review/price_change.hpp>

using namespace groat;
using namespace groat::test;

namespace {

using Kind = PriceChange::Kind;

/// A new list of the mill, beside a book that has its old one.
struct Lists {
    Book book = a_book();
    std::vector<Offer> listed = {};

    Offer& now(std::string_view item, std::string_view pack, std::string_view price) {
        listed.push_back(offer(book, item, pack, price));
        book.offers.pop_back();
        return listed.back();
    }

    std::vector<PriceChange> changes(Date date = today) {
        link_well(book);
        for (Offer& each : listed) each.item.index = ingredient_index(book, each.item.name);
        return price_changes(book, "the mill", listed, date);
    }
};

} // namespace

TEST_CASE("a dearer pack is up by the share of what it was") {
    Lists lists;
    food(lists.book, "flour", "50 lb", "21.50");
    lists.now("flour", "50 lb", "22.90");
    auto const changes = lists.changes();
    REQUIRE(changes.size() == 1);
    CHECK(changes[0].kind == Kind::up);
    CHECK(changes[0].was == money("21.50"));
    CHECK(changes[0].now == money("22.90"));
    CHECK(*changes[0].change == Number(14, 215)); // 1.40 / 21.50
}

TEST_CASE("rises come first, the largest before others; then falls, new, gone and unchanged") {
    Lists lists;
    for (char const* item : {"a", "b", "c", "d", "e", "f"}) food(lists.book, item, "1 kg", "10.00");
    food(lists.book, "g");
    lists.now("a", "1 kg", "10.00");
    lists.now("b", "1 kg", "11.00");
    lists.now("c", "1 kg", "12.00");
    lists.now("d", "1 kg", "9.00");
    lists.now("e", "1 kg", "8.00");
    lists.now("g", "1 kg", "3.00");
    std::string order;
    for (PriceChange const& each : lists.changes())
        order += lists.book.ingredients[each.ingredient].name;
    CHECK(order == "cbedgfa");
}

TEST_CASE("what counts is the offer in force on the day, of this supplier") {
    Lists lists;
    food(lists.book, "flour");
    offer(lists.book, "flour", "1 kg", "1.00").from = day("2026-01-01");
    offer(lists.book, "flour", "1 kg", "2.00").from = day("2026-06-01");
    offer(lists.book, "flour", "1 kg", "4.00").from = day("2026-12-01");
    offer(lists.book, "flour", "1 kg", "9.00", "another");
    lists.now("flour", "1 kg", "3.00");
    CHECK(*lists.changes()[0].change == Number(1, 2));
    CHECK(*lists.changes(day("2026-12-01"))[0].change == Number(-1, 4));
    lists.book.offers[1].until = day("2026-07-01"); // it hides the first one even when ended
    CHECK(lists.changes()[0].kind == Kind::added);
}

TEST_CASE("a list is compared with the list before, not with what was paid") {
    Lists lists;
    food(lists.book, "flour");
    offer(lists.book, "flour", "1 kg", "2.00").from = day("2026-06-01");
    receipt(lists.book, "2026-11-01", "flour", "1 kg", 1, "1.50");
    lists.now("flour", "1 kg", "3.00");
    CHECK(*lists.changes()[0].change == Number(1, 2));
}

TEST_CASE("the same amount written otherwise is the same pack") {
    Lists lists;
    food(lists.book, "egg", "15 dozen", "45.00").grams_each = 50;
    food(lists.book, "milk", "1 L", "1.20").densities = {density("1030 g / L")};
    lists.now("egg", "9 kg", "45.00");
    lists.now("milk", "1000 mL", "1.20");
    for (PriceChange const& each : lists.changes()) CHECK(each.kind == Kind::unchanged);
}

TEST_CASE("a smaller pack at the same price is dearer by the amount that is missing") {
    // 5 lb at 10.00 is 2.00 a pound, 4 lb at 10.00 is 2.50: a quarter more
    Lists lists;
    food(lists.book, "cocoa", "5 lb", "10.00");
    lists.now("cocoa", "4 lb", "10.00");
    auto const changes = lists.changes();
    REQUIRE(changes.size() == 1);
    CHECK(changes[0].kind == Kind::repacked);
    CHECK(*changes[0].change == Number(1, 4));
}

TEST_CASE("of several packs that come and go none is taken for another") {
    Lists lists;
    food(lists.book, "cocoa", "5 lb", "10.00");
    lists.now("cocoa", "4 lb", "9.00");
    lists.now("cocoa", "10 lb", "18.00");
    auto const changes = lists.changes();
    REQUIRE(changes.size() == 3);
    CHECK(changes[0].kind == Kind::added);
    CHECK(changes[1].kind == Kind::added);
    CHECK(changes[2].kind == Kind::gone);
}

TEST_CASE("packs are compared with freight, without deposit, net of recoverable tax") {
    // (10.00 + 0.70) / 1.07 = 10.00
    Lists lists;
    food(lists.book, "cream", "1 L", "10.00");
    Offer& cream = lists.now("cream", "1 L", "10.00");
    cream.freight = money("0.70");
    cream.tax_included = share_of<TaxRate>("7 %");
    cream.deposit = money("3.00");
    CHECK(lists.changes()[0].kind == Kind::unchanged);
}

TEST_CASE("what the old offer says by hand and the new one does not is told") {
    Lists lists;
    food(lists.book, "plum");
    Offer& old = offer(lists.book, "plum", "30 lb", "50.00");
    old.yield = share_of<Yield>("80 %");
    old.freight = money("2.00");
    old.breaks = {{3, money("48.00")}};
    lists.now("plum", "30 lb", "50.00");
    auto const changes = lists.changes();
    CHECK(changes[0].kind == Kind::down); // by the freight
    CHECK(changes[0].lost == std::vector<std::string>{"yield 80 %", "freight", "price breaks"});
    lists.listed[0].yield = share_of<Yield>("90 %");
    CHECK(lists.changes()[0].lost == std::vector<std::string>{"freight", "price breaks"});
}

TEST_CASE("from nothing there is no percentage") {
    Lists lists;
    food(lists.book, "water", "1 L", "0.00");
    lists.now("water", "1 L", "0.10");
    auto const changes = lists.changes();
    CHECK(changes[0].kind == Kind::up);
    CHECK_FALSE(changes[0].change);
}

TEST_CASE("to a supplier without offers everything is new, and an empty list leaves all gone") {
    Lists lists;
    food(lists.book, "flour", "1 kg", "1.00");
    lists.now("flour", "1 kg", "2.00");
    link_well(lists.book);
    lists.listed[0].item.index = 0;
    CHECK(price_changes(lists.book, "nobody", lists.listed, today)[0].kind == Kind::added);
    CHECK(price_changes(lists.book, "the mill", {}, today)[0].kind == Kind::gone);
}
