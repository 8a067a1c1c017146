#include <groat/plan/needs.hpp>

#include "books.hpp"

using namespace groat;
using namespace groat::test;

namespace {

/// Bread of 600 g flour and 5 g salt a loaf, and loaves ordered.
Book bakery() {
    Book book = a_book();
    food(book, "flour", "10 kg", "12.00");
    food(book, "salt", "1 kg", "1.00");
    formula(book, "loaf", {{"flour", "600 g"}, {"salt", "5 g"}}).makes = quantity("1");
    wants(order(book, "A"), "loaf", 10);
    wants(order(book, "B"), "loaf", 5);
    return book;
}

StockItem& on_shelf(Book& book, std::string_view item, std::string_view amount) {
    StockItem entry;
    entry.item = named(item);
    entry.amount = quantity(amount);
    book.stock.items.push_back(std::move(entry));
    return book.stock.items.back();
}

struct Gathered {
    Book book;
    Diagnostics found;
    std::vector<Need> needs;

    Gathered(Book wanted, std::initializer_list<std::string_view> ids) : book(std::move(wanted)) {
        link_well(book);
        costing.emplace(linked(book), today);
        std::vector<Order const*> orders;
        for (std::string_view const id : ids) orders.push_back(book.find_order(id));
        if (auto all = needs_of(*costing, orders, found)) needs = *std::move(all);
    }
    [[nodiscard]] Need const& of(std::string_view name) const {
        for (Need const& need : needs)
            if (book.ingredients[need.ingredient()].name == name) return need;
        FAIL("nothing is needed of " << std::string(name));
        return needs.front();
    }

private:
    std::optional<Costing> costing;
};

} // namespace

TEST_CASE("two orders need together what each of them needs") {
    Gathered const both(bakery(), {"A", "B"});
    CHECK(both.of("flour").needed() == 9000); // 15 * 600 g
    CHECK(both.of("salt").needed() == 75);
    CHECK(both.of("flour").to_buy() == 9000);
}

TEST_CASE("orders that share a formula share its batches") {
    Book book = bakery();
    book.formulas.front().makes = quantity("4"); // 150 g of flour a loaf
    book.formulas.front().batch_step = 1;
    // apart 3 batches and 2; together 15 loaves are 4 batches
    CHECK(Gathered(book, {"A"}).of("flour").needed() == 1800);
    CHECK(Gathered(book, {"B"}).of("flour").needed() == 1200);
    CHECK(Gathered(book, {"A", "B"}).of("flour").needed() == 2400);
}

TEST_CASE("what stands on the shelf need not be bought") {
    Book book = bakery();
    on_shelf(book, "flour", "4 kg");
    on_shelf(book, "salt", "1 kg");
    Gathered const all(book, {"A"});
    CHECK(all.of("flour").on_shelf == 4000);
    CHECK(all.of("flour").to_buy() == 2000);
    CHECK(all.of("salt").to_buy().is_zero()); // 50 g of the kilogram
}

TEST_CASE("stock past its day is not counted on, and that is said") {
    Book book = bakery();
    on_shelf(book, "flour", "4 kg").good_until = day("2026-11-24");
    Gathered const all(book, {"A"});
    CHECK(all.of("flour").to_buy() == 6000);
    REQUIRE(finding(all.found, "stock-past"));
    CHECK(says(finding(all.found, "stock-past")->what, "good until 2026-11-24"));
}

TEST_CASE("stock that is good on the day itself is counted on") {
    Book book = bakery();
    on_shelf(book, "flour", "4 kg").good_until = today;
    Gathered const all(book, {"A"});
    CHECK(all.of("flour").to_buy() == 2000);
    CHECK(all.found.empty());
}

TEST_CASE("stock that cannot be weighed says which fact is missing") {
    Book book = bakery();
    on_shelf(book, "flour", "3");
    Gathered const all(book, {"A"});
    CHECK(all.needs.empty());
    CHECK(finding(all.found, "missing-weight"));
}

TEST_CASE("what is metered is on no list") {
    Book book = bakery();
    Ingredient& water = food(book, "water", "1000 kg", "3.00");
    water.is_metered = true;
    book.formulas.front().lines.push_back(line({"water", "400 g"}));
    Gathered const all(book, {"A"});
    CHECK(all.needs.size() == 2);
}

TEST_CASE("a yield makes more to be bought than goes in") {
    Book book = bakery();
    food(book, "pear", "10 kg", "30.00").yield = share_of<Yield>("78 %");
    book.formulas.front().lines.push_back(line({"pear", "78 g"}));
    CHECK(Gathered(book, {"A"}).of("pear").needed() == 1000); // 10 * 78 g / 0.78
}

TEST_CASE("what other orders use while it is good is looked ahead for") {
    Book book = bakery();
    book.ingredients.front().keeping.days = 7;
    book.orders[1].due = day("2026-12-01"); // within the seven days
    Gathered const all(book, {"A"});
    CHECK(all.of("flour").good_until == day("2026-12-02"));
    CHECK(all.of("flour").used_later == 3000);
    CHECK(all.of("flour").last_used == today);

    book.orders[1].due = day("2026-12-03"); // too late for it
    CHECK(Gathered(book, {"A"}).of("flour").used_later.is_zero());
}

TEST_CASE("an order that cannot be costed is not bought for") {
    Book book = bakery();
    food(book, "caraway");
    book.formulas.front().lines.push_back(line({"caraway", "3 g"}));
    Gathered const all(book, {"A"});
    CHECK(all.needs.empty());
    REQUIRE(finding(all.found, "missing-price"));
    CHECK(says(finding(all.found, "missing-price")->what, "caraway"));
}
