#include "books.hpp"

#include <groat/price/minimum_order.hpp>

using namespace groat;
using namespace groat::test;

namespace {

/// Cookies of 1.00 each in a bag of 4 or a box of 12, whole batches of ten, and 6.00 of work for every order.
Book bakery() {
    Book book = a_book();
    food(book, "flour", "1 kg", "10.00");
    Formula& cookie = formula(book, "cookie", {{"flour", "1 kg"}});
    cookie.makes = quantity("10");
    cookie.batch_step = 1;
    sold_as(cookie, "box of 12", "12");
    sold_as(cookie, "bag of 4", "4");
    role(book, "baker", "18.00");
    book.shop.order_work.push_back(task("papers", "baker", "20", Per::order));
    return book;
}

std::optional<std::string> told(Book& book, std::string_view minimum) {
    book.shop.minimum_order = money(minimum);
    link_well(book);
    Costing const costing(linked(book), today);
    auto const warning = finding(minimum_order_findings(costing), "minimum-below-cost");
    return warning ? std::optional(warning->what) : std::nullopt;
}

} // namespace

TEST_CASE("the smallest order is the cheapest to make, with all that one order takes") {
    // a bag takes a batch of 10.00 and 6.00 of papers
    Book book = bakery();
    link_well(book);
    Costing const costing(linked(book), today);
    auto const least = smallest_order(costing);
    REQUIRE(least.has_value());
    CHECK(least->unit->name == "bag of 4");
    CHECK(least->cost == money("16.00"));
}

TEST_CASE("a minimum order that does not pay for the smallest order is told, with both figures") {
    Book book = bakery();
    CHECK(told(book, "15.99") ==
          "an order of 15.99 does not pay for the smallest one: a single 'cookie, bag of 4' costs "
          "16.00 with order work and payment");
    CHECK(!told(book, "16.00"));
    // a fee of 5 % and 0.30 on 16.00: 17.10; 17.16 pay for themselves: 16.00 + 0.858 + 0.30 = 17.158
    fee(book, "card", "5 %", "0.30");
    book.shop.paid_by = named("card");
    CHECK(told(book, "16.00").value().ends_with("costs 17.10 with order work and payment"));
    CHECK(told(book, "17.15"));
    CHECK(!told(book, "17.16"));
}

TEST_CASE("a minimum order that contains tax is judged without it") {
    // 19.20 with 20 %: 16.00
    Book book = bakery();
    book.shop.tax.rate = share_of<TaxRate>("20 %");
    book.shop.tax.is_contained = true;
    CHECK(!told(book, "19.20"));
    CHECK(told(book, "18.00").value().starts_with("an order of 15.00 without tax does not pay"));
}

TEST_CASE("without a minimum order, or anything that is sold, there is nothing to say") {
    Book book = bakery();
    link_well(book);
    CHECK(minimum_order_findings(Costing(linked(book), today)).sorted().empty());
    book.formulas[0].sold_as.clear();
    CHECK(!told(book, "1.00"));
}
