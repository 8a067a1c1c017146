// Results outlive the costing and the books that they were made of. Built with the address sanitizer, which ends the
// program where anything is read that has died; the last test shows that it does.
#include "books.hpp"

#include <groat.hpp>

using namespace groat;
using namespace groat::test;

namespace {

/// A tart in a box, with everything that a result points to: work, overhead, packing, a menu, an order of two parts
/// that is made together with another.
Book a_pastry_book() {
    Book book = a_book();
    food(book, "flour", "1 kg", "1.10");
    supply(book, "box", "50", "9.00");
    role(book, "baker", "21.00");
    overhead(book, "rent of the kitchen, by the hour", Overhead::Driver::labour_hour, "7.00");
    book.shop.order_work.push_back(task("write the invoice for this", "baker", "6"));
    book.shop.price = at_margin("30 %");
    Formula& tart = formula(book, "tart", {{"flour", "900 g"}});
    tart.makes = quantity("6");
    tart.labour.push_back(task("roll it out and fill the tins", "baker", "25"));
    SaleUnit& pair = sold_as(tart, "a pair of them in a box", "2");
    pair.packing.push_back(uses("box", "1"));
    Order& first = order(book, "2027-001");
    wants(first, "tart", 3, "a pair of them in a box");
    first.extras.push_back({"hire of a stand for the tarts", 1, money("5.00"), {}, {}, {}});
    first.made_with.push_back(named("2027-002"));
    wants(order(book, "2027-002"), "tart", 2, "a pair of them in a box");
    Menu menu;
    menu.name = "the menu of the afternoon";
    MenuItem item;
    item.item = named("tart");
    item.sale_unit = named("a pair of them in a box");
    item.name = "two tarts, as the guests call it";
    menu.items.push_back(item);
    book.menus.push_back(menu);
    return book;
}

struct Results {
    OrderCost cost;
    ItemCost item;
    Quote quote;
    MenuCost menu;
    Buying buying;
    Production plan;
    Label label;
    SmallestOrder smallest;
};

/// The costing, the linked book and the book it came from die at the end.
Results results() {
    Costing const costing(linked(a_pastry_book()), today);
    std::vector<std::string> const orders{"2027-001", "2027-002"};
    Order copy =
        *costing.book().find_order("2027-001"); // as one that is asked for with other counts
    return {
        costing.cost({sales_of(copy, costing.book())}),
        calculated([&](auto& found) { return cost(costing, "tart", "", found); }),
        calculated([&](auto& found) { return quote(costing, copy, found); }),
        calculated([&](auto& found) { return menu(costing, "the menu of the afternoon", found); }),
        calculated([&](auto& found) { return buy(costing, orders, found); }),
        calculated([&](auto& found) { return make(costing, orders, found); }),
        calculated([&](auto& found) {
            return label_of(costing, 0, &costing.book().formulas[0].sold_as[0], {}, {}, found);
        }),
        smallest_order(costing).value()};
}

} // namespace

TEST_CASE("a cost tells of purchases, work and overhead when its costing and its books have died") {
    OrderCost const cost = results().cost;
    CHECK(cost.ingredients.front().purchase->pack_cost == money("1.10"));
    CHECK(cost.supplies.front().purchase->pack_cost == money("9.00"));
    CHECK(cost.tasks.front().task->name == "roll it out and fill the tins");
    CHECK(cost.overheads.front().overhead->name == "rent of the kitchen, by the hour");
    CHECK(cost.lines.front().sale.unit->name == "a pair of them in a box");
}

TEST_CASE("so do a quote, the cost of an item and of a menu") {
    Results const all = results();
    Quote const quote = all.quote; // a copy keeps as well
    CHECK(quote.order->client == "Reading Circle");
    CHECK(quote.companions.front()->id == "2027-002");
    CHECK(quote.lines.front().unit->name == "a pair of them in a box");
    CHECK(quote.extras.front().line->text == "hire of a stand for the tarts");
    CHECK(quote.cost.tasks.back().task->name == "write the invoice for this");
    CHECK(all.item.line.unit->name == "a pair of them in a box");
    CHECK(all.menu.menu->name == "the menu of the afternoon");
    CHECK(all.menu.lines.front().item->name == "two tarts, as the guests call it");
    CHECK(all.menu.lines.front().target.unit->packing.size() == 1);
}

TEST_CASE("so do what is bought, what is made, a label and the smallest order") {
    Results const all = results();
    CHECK(all.buying.orders.front()->client == "Reading Circle");
    CHECK(all.buying.needs.front().use.purchase->pack_cost == money("1.10"));
    CHECK(all.plan.orders.back()->id == "2027-002");
    CHECK(all.plan.packed.front().order->id == "2027-001");
    CHECK(all.plan.packed.front().sale.unit->name == "a pair of them in a box");
    CHECK(all.plan.tasks.front().task->name == "roll it out and fill the tins");
    CHECK(all.plan.ingredients.front().purchase->pack_cost == money("1.10"));
    CHECK(all.label.unit->name == "a pair of them in a box");
    CHECK(all.smallest.unit->name == "a pair of them in a box");
}

TEST_CASE(
    "a costing outlives the linked book that it was made of, and is itself after it was moved from") {
    auto book = std::make_unique<LinkedBook>(linked(a_pastry_book()));
    Costing costing(*book, today);
    book.reset();
    Costing const other = std::move(costing);
    CHECK(costing.book().shop.name == other.book().shop.name);
}

// Run by a test of its own, which must fail.
TEST_CASE("reading what has died ends the program" * doctest::skip()) {
    auto order = std::make_unique<Order>();
    order->client = "a name that is too long to stand in the string itself";
    std::string const& client = order->client;
    order.reset();
    CHECK(client.size() > 0);
}
