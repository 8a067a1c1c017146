#include "reading.hpp"

#include <groat/books/read_orders.hpp>

#include <doctest/doctest.h>

#include <string>
#include <variant>

using groat::Money;
using groat::Number;
using groat::Order;
using groat::Surcharge;
using groat_test::Desk;

namespace {

struct Reader : Desk {
    groat::Reading reading{found, *groat::Currency::find("USD"), groat::Measures::us};

    Order order(std::string const& text) { return read_order(node(text), reading); }
};

/// What is found in an order of one line; what is added begins in line 4.
std::string order_marks(std::string const& text) {
    Reader desk;
    (void)desk.order("order: 1\ndate: 2026-11-25\nlines: [{item: a, count: 1}]\n" + text + "\n");
    return desk.marked();
}

std::string line_marks(std::string const& text) {
    Reader desk;
    (void)desk.order("order: 1\nlines: [" + text + "]\n");
    return desk.marked();
}

} // namespace

TEST_CASE("every field of an order arrives") {
    Reader desk;
    Order const order = desk.order(R"(
order: 2026-041
client: Halden Reading Circle
date: 2026-11-25
due: 2026-12-12
valid: 14 days
paid by: card
lines:
  - {item: ginger-lemon sandwich, as: box of 12, count: 4, price: {margin: 45 %}}
  - {item: plum butter, count: 2 dozen}
quantity breaks: [1, 4, 10, 25]
delivery: {distance: 12 km, charge: at cost}
rush: 10 %
discount: 5 %
deposit: 50 %
tax: none
notes: Ring twice.
)");
    CHECK(desk.said().empty());
    CHECK(order.id == "2026-041");
    CHECK(order.client == "Halden Reading Circle");
    CHECK(groat::iso_date(*order.due) == "2026-12-12");
    REQUIRE(order.lines.size() == 2);
    CHECK(order.lines[0].sale_unit.name == "box of 12");
    CHECK(order.lines[0].count == 4);
    CHECK(order.lines[0].price.target.has_value());
    CHECK(order.lines[1].count == 24);
    CHECK(order.lines[1].counted == "2 dozen");
    CHECK(order.lines[0].counted.empty());
    CHECK_FALSE(order.lines[1].sale_unit.is_given());
    CHECK(order.quantity_breaks.size() == 4);
    CHECK(order.delivery->distance.amount == 12000);
    CHECK(order.delivery->charge == groat::DeliveryCharge::at_cost);
    CHECK(std::get<Surcharge>(*order.rush).value() == Number(1, 10));
    CHECK(std::get<Surcharge>(*order.discount).value() == Number(1, 20));
    CHECK(order.deposit->value() == Number(1, 2));
    CHECK(order.tax.name == "none");
}

TEST_CASE("rush may be a rate, money or none, and the shop's rule where nothing is said") {
    Reader desk;
    std::string const begin = "order: 1\nlines: [{item: a, count: 1}]\n";
    CHECK_FALSE(desk.order(begin).rush);
    CHECK(std::get<Money>(*desk.order(begin + "rush: 12.50\n").rush).amount() == Number(25, 2));
    CHECK(std::get<Surcharge>(*desk.order(begin + "rush: none\n").rush).value() == 0);
    CHECK(desk.said().empty());
}

TEST_CASE("delivery is in the price, at cost or a set amount") {
    Reader desk;
    std::string const begin = "order: 1\nlines: [{item: a, count: 1}]\ndelivery: ";
    CHECK(desk.order(begin + "{}\n").delivery->charge == groat::DeliveryCharge::in_price);
    CHECK(desk.order(begin + "{distance: 3 mi, charge: in price}\n").delivery->charge ==
          groat::DeliveryCharge::in_price);
    auto const fixed = desk.order(begin + "{charge: 5.00 USD}\n").delivery;
    CHECK(fixed->charge == groat::DeliveryCharge::amount);
    CHECK(fixed->amount.amount() == 5);
    CHECK(desk.said().empty());
    CHECK(order_marks("delivery: {charge: free}") == "4:20+4 unknown-word");
    CHECK(order_marks("delivery: {charge: 5 EUR}") == "4:22+3 wrong-currency");
    CHECK(order_marks("delivery: {distance: 12}") == "4:22+2 wrong-dimension");
    CHECK(order_marks("delivery: {distance: -1 km}") == "4:22+5 not-positive");
    CHECK(order_marks("delivery: yes") == "4:11+3 wrong-kind");
}

TEST_CASE("an order has a number and lines, and a line an item and a count") {
    Reader desk;
    CHECK(desk.order("lines: [{item: a, count: 1}]\n").id.empty());
    CHECK(desk.marked() == "1:1+1 missing-key");
    CHECK(line_marks("") == "2:8+1 missing-value");
    CHECK(line_marks("{item: a}") == "2:9+1 missing-key");
    CHECK(line_marks("{count: 1}") == "2:9+1 missing-key");
    CHECK(line_marks("{item: a, count: 0}") == "2:26+1 not-positive");
    CHECK(line_marks("{item: a, count: -4}") == "2:26+2 not-positive");
    CHECK(line_marks("{item: a, count: 1.5}") == "2:26+3 not-whole");
    CHECK(line_marks("{item: a, count: four}") == "2:26+1 bad-quantity");
    CHECK(line_marks("{item: a, cuont: 4}") == "2:19+5 unknown-key");
    CHECK(line_marks("{item: [a], count: 4}") == "2:16+1 wrong-kind");
}

TEST_CASE("a line may be of no item: hire, a crate that comes back") {
    Reader desk;
    Order const order = desk.order(R"(
order: 1
lines:
  - {text: hire of two cake stands, count: 2, price: 12.00, cost: 5.00, tax: none}
  - {item: a, count: 1}
  - {text: crate returned, count: -1, price: 4.00}
  - {text: thanks, price: -2.50}
)");
    CHECK(desk.said().empty());
    REQUIRE(order.lines.size() == 1);
    REQUIRE(order.extras.size() == 3);
    CHECK(order.extras[0].text == "hire of two cake stands");
    CHECK(order.extras[0].count == 2);
    CHECK(order.extras[0].price.amount() == 12);
    CHECK(order.extras[0].cost.amount() == 5);
    CHECK(order.extras[0].tax.name == "none");
    CHECK(order.extras[0].before == 0);
    CHECK(order.extras[1].count == -1);
    CHECK(order.extras[1].before == 1);
    CHECK(order.extras[2].count == 1);
    CHECK(order.extras[2].price.amount() == Number(-5, 2));
    CHECK(number_of_line(order, 0) == 2);
    CHECK(number_of_extra(order, 0) == 1);
    CHECK(number_of_extra(order, 2) == 4);
    CHECK(line_marks("{item: a, count: 1}, {text: b}") == "2:30+1 missing-key");
    CHECK(line_marks("{item: a, count: 1}, {text: b, price: 1, count: 0}") ==
          "2:57+1 not-positive");
    CHECK(line_marks("{item: a, count: 1}, {text: b, price: --1}") == "2:47+3 negative-money");
    CHECK(line_marks("{item: a, count: 1}, {text: b, price: 1/3}") == "2:47+3 not-payable");
    CHECK(line_marks("{item: a, count: 1}, {text: b, price: 1, cost: -1}") ==
          "2:56+2 negative-money");
    CHECK(line_marks("{item: a, count: 1}, {text: b, item: c, price: 1}") == "2:40+4 unknown-key");
    CHECK(line_marks("{text: b, price: 1}") == "2:8+1 nothing-made");
}

TEST_CASE("a discount may be said to be in the price") {
    Reader desk;
    std::string const begin = "order: 1\nlines: [{item: a, count: 1}]\ndiscount: ";
    CHECK_FALSE(desk.order(begin + "5 %\n").is_discount_in_price);
    Order const order = desk.order(begin + "{share: 5 %, in the price: yes}\n");
    CHECK(order.is_discount_in_price);
    CHECK(std::get<Surcharge>(*order.discount).value() == Number(1, 20));
    CHECK_FALSE(desk.order(begin + "{share: 100 %, in the price: no}\n").is_discount_in_price);
    CHECK(desk.said().empty());
    CHECK(order_marks("discount: {in the price: yes}") == "4:11+1 missing-key");
    CHECK(order_marks("discount: {share: 5.00}") == "4:19+4 bad-percent");
    CHECK(order_marks("discount: {share: 100 %, in the price: yes}") ==
          "4:12+5 target-out-of-reach");
    CHECK(order_marks("discount: {share: 5 %, in price: yes}") == "4:24+8 unknown-key");
}

TEST_CASE("a delivery may be both ways, take a driver's time and have a tax of its own") {
    Reader desk;
    auto const drive = desk.order("order: 1\nlines: [{item: a, count: 1}]\ndelivery: {distance: 12 "
                                  "mi, both ways: yes, time: 40 min, tax: main}\n")
                           .delivery;
    CHECK(desk.said().empty());
    CHECK(drive->is_both_ways);
    CHECK(drive->minutes == 40);
    CHECK(drive->tax.name == "main");
    CHECK(order_marks("delivery: {both ways: 2}") == "4:23+1 bad-yes-no");
    CHECK(order_marks("delivery: {time: 40}") == "4:18+2 wrong-dimension");
}

TEST_CASE("what makes no sense on an order is refused where it stands") {
    CHECK(order_marks("due: 2026-11-24") == "4:1+3 due-before-date");
    CHECK(order_marks("due: 2026-11-25").empty());
    CHECK(order_marks("due: tomorrow") == "4:6+8 bad-date");
    CHECK(order_marks("discount: 101 %") == "4:11+5 rate-out-of-range");
    CHECK(order_marks("discount: -1") == "4:11+2 negative-money");
    CHECK(order_marks("discount: 1/3") == "4:11+3 not-payable");
    CHECK(order_marks("rush: -1 %") == "4:7+4 rate-out-of-range");
    CHECK(order_marks("deposit: 101 %") == "4:10+5 rate-out-of-range");
    CHECK(order_marks("quantity breaks: [1, 0, 2.5]") == "4:22+1 not-positive 4:25+3 not-whole");
    CHECK(order_marks("quantity breaks: [4, 1, 4]") == "4:25+1 break-twice");
    CHECK(order_marks("quantity breaks: 10").empty()); // one stands for a list of one
    CHECK(order_marks("quantity breaks: {starts: [1, 10], most: 9}") == "4:42+1 most-below-start");
    CHECK(order_marks("quantity breaks: {most: 9}") == "4:18+1 missing-key");
    CHECK(order_marks("quantity breaks: {starts: [1], upto: 9}") == "4:32+4 unknown-key");
    CHECK(order_marks("payed by: card") == "4:1+8 unknown-key");
}
