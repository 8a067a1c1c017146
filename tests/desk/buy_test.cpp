#include <groat/desk/buy.hpp>

#include "books.hpp"

using namespace groat;
using namespace groat::test;

namespace {

/// Buns of flour from the mill and plums from the orchard; the dock sells what nobody needs.
Book bakery() {
    Book book = a_book();
    food(book, "flour", "1 kg", "2.00");
    food(book, "plum");
    offer(book, "plum", "1 kg", "4.00", "the orchard");
    food(book, "salt");
    offer(book, "salt", "1 kg", "1.00", "the dock");
    formula(book, "bun", {{"flour", "100 g"}, {"plum", "20 g"}}).makes = quantity("1");
    wants(order(book, "2026-041"), "bun", 10);
    link_well(book);
    return book;
}

template <class T> std::string refused(Result<T> const& result) {
    return result ? "given" : result.error().what;
}

} // namespace

TEST_CASE("everybody's list, or the one that goes to a supplier") {
    Book const book = bakery();
    Costing const costing(linked(book), today);
    Diagnostics found;
    auto const all = desk::buying_sheet(costing, {{"2026-041"}}, found);
    REQUIRE_MESSAGE(all.has_value(), in_words(found));
    CHECK(all->audience == "maker");
    auto const one = desk::buying_sheet(costing, {{"2026-041"}, "the orchard"}, found);
    REQUIRE(one.has_value());
    CHECK(one->audience == "supplier");
    CHECK(refused(desk::buying_sheet(costing, {{"2026-041"}, "the dock"}, found)) ==
          "nothing is to be bought from 'the dock'");
    CHECK(refused(desk::buying_sheet(costing, {{"2026-041"}, "the duck"}, found)) ==
          "no supplier is called 'the duck'");
}

TEST_CASE("drafts of receipts are documents of purchases, one for each supplier") {
    Book const book = bakery();
    Costing const costing(linked(book), today);
    Diagnostics found;
    auto const drafts = desk::receipt_drafts(costing, {{"2026-041"}}, found);
    REQUIRE(drafts.has_value());
    CHECK(says(*drafts, "# A draft by groat buy: put in what was really bought and paid"));
    CHECK(says(*drafts, "the mill"));
    CHECK(says(*drafts, "---"));
    CHECK(says(*drafts, "the orchard"));
    auto const one = desk::receipt_drafts(costing, {{"2026-041"}, "the mill"}, found);
    CHECK(!says(*one, "the orchard"));
}

TEST_CASE("where the shelf holds all, there is no draft") {
    Book book = bakery();
    for (char const* item : {"flour", "plum"}) {
        StockItem held;
        held.item = named(item);
        held.amount = quantity("50 kg");
        book.stock.items.push_back(std::move(held));
    }
    link_well(book);
    Diagnostics found;
    CHECK(refused(desk::receipt_drafts(Costing(linked(book), today), {{"2026-041"}}, found)) ==
          "nothing is to be bought: the shelf holds all of it");
    CHECK(desk::buying_sheet(Costing(linked(book), today), {{"2026-041"}}, found)); // says that
}
