#include "books.hpp"

using namespace groat;
using namespace groat::test;

namespace {

/// The offers of the book that came from receipts.
std::vector<Offer> paid_offers(Book& book) {
    link_well(book);
    std::vector<Offer> paid;
    for (Offer const& offer : book.offers)
        if (!offer.is_listed()) paid.push_back(offer);
    return paid;
}

} // namespace

TEST_CASE("a purchase is an offer at what was paid for a pack, without its deposit") {
    Book book = a_book();
    food(book, "cream");
    BoughtPacks& cream = receipt(book, "2026-11-20", "cream", "1 kg", 4, "25.68");
    cream.deposit = money("4.28");
    cream.tax_included = share_of<TaxRate>("7 %");
    auto const paid = paid_offers(book);
    REQUIRE(paid.size() == 1);
    CHECK(paid[0].kind == Offer::Kind::paid);
    CHECK(paid[0].price == money("5.35")); // (25.68 - 4.28) / 4
    CHECK(paid[0].deposit == money("1.07"));
    CHECK(paid[0].pack_cost() == money("5.00"));   // / 1.07
    CHECK(paid[0].pack_outlay() == money("6.00")); // 25.68 / 4 / 1.07
    CHECK(paid[0].from == day("2026-11-20"));
    CHECK_FALSE(paid[0].until);
    CHECK(cream.outlay() == money("24.00"));
    CHECK(cream.cost() == money("20.00"));
}

TEST_CASE(
    "what the list says of a pack holds for what was bought: its yield, its code, the most packs") {
    Book book = a_book();
    food(book, "plum");
    Offer& old = offer(book, "plum", "22 lb", "33.00");
    old.from = day("2026-10-01");
    old.yield = share_of<Yield>("80 %");
    Offer& listed = offer(book, "plum", "22 lb", "34.00");
    listed.from = day("2026-11-01");
    listed.yield = share_of<Yield>("88 %");
    listed.code = "PL-22";
    listed.most_packs = 3;
    listed.freight = money("1.00");
    listed.breaks = {{2, money("30.00")}};
    offer(book, "plum", "22 lb", "20.00").from = day("2026-12-01");
    offer(book, "plum", "10 lb", "15.00").yield = share_of<Yield>("50 %");
    receipt(book, "2026-11-20", "plum", "352 oz", 1, "35.00");
    auto const paid = paid_offers(book);
    REQUIRE(paid.size() == 1);
    CHECK(paid[0].yield->value() == percent("88 %"));
    CHECK(paid[0].code == "PL-22");
    CHECK(paid[0].most_packs == Integer(3));
    CHECK(paid[0].freight.is_zero()); // what was paid is what was paid
    CHECK(paid[0].breaks.empty());
}

TEST_CASE("before there was a list, its first price says it") {
    Book book = a_book();
    food(book, "plum");
    offer(book, "plum", "22 lb", "36.00").from = day("2027-01-01");
    Offer& first = offer(book, "plum", "22 lb", "34.00");
    first.from = day("2026-12-01");
    first.yield = share_of<Yield>("88 %");
    receipt(book, "2026-11-20", "plum", "22 lb", 1, "35.00");
    CHECK(paid_offers(book)[0].yield->value() == percent("88 %"));
}

TEST_CASE("linked again, a book has the same offers") {
    Book book = a_book();
    food(book, "plum", "22 lb", "33.00");
    receipt(book, "2026-11-20", "plum", "22 lb", 1, "35.00");
    CHECK(paid_offers(book).size() == 1);
    CHECK(paid_offers(book).size() == 1);
    CHECK(book.offers.size() == 2);
    CHECK(book.offers_of[0].size() == 2);
}

TEST_CASE("who is on receipts but has no list may be a slip of the pen") {
    Book book = a_book();
    food(book, "plum", "22 lb", "33.00");
    receipt(book, "2026-11-20", "plum", "22 lb", 1, "35.00", "the mil");
    receipt(book, "2026-11-21", "plum", "22 lb", 1, "35.00", "Corner Dock");
    Diagnostics const found = link(book);
    CHECK(found.warnings() == 1);
    auto const slip = finding(found, "new-supplier");
    REQUIRE(slip);
    CHECK(slip->what == "'the mil' has no price list");
    CHECK(says(slip->help, "did you mean 'the mill'?"));
}

TEST_CASE("to buy where one only compares is asked about, but for a stopgap") {
    Book book = a_book();
    food(book, "plum", "22 lb", "33.00");
    book.suppliers[0].is_only_compared = true;
    receipt(book, "2026-11-20", "plum", "22 lb", 1, "35.00");
    CHECK(finding(link(book), "bought-where-compared"));
    book.receipts[0].items[0].is_stopgap = true;
    link_well(book);
}

TEST_CASE("an item on a receipt that nobody knows is an error") {
    Book book = a_book();
    food(book, "plum", "22 lb", "33.00");
    receipt(book, "2026-11-20", "plums", "22 lb", 1, "35.00");
    Diagnostics const found = link(book);
    CHECK(finding(found, "unknown-ingredient"));
    CHECK(book.offers.size() == 1);
}
