#include <groat/plan/buying_days.hpp>

#include "random_book.hpp"

using namespace groat;
using namespace groat::test;

namespace {

/// Loaves of 100 g of flour; an order for each day and count. It is the 25 November.
Book bakery(std::vector<std::pair<std::string_view, int>> const& orders, std::optional<int> keeps) {
    Book book = a_book();
    food(book, "flour", "1 kg", "2.00").keeping.days = keeps;
    formula(book, "loaf", {{"flour", "100 g"}}).makes = quantity("1");
    for (std::size_t i = 0; i < orders.size(); ++i) {
        Order& each = order(book, std::string(1, static_cast<char>('A' + i)));
        each.due = day(orders[i].first);
        wants(each, "loaf", orders[i].second);
    }
    return book;
}

std::vector<BuyingDay> days_of(Book& book) {
    link_well(book);
    Costing const costing(linked(book), today);
    std::vector<Order const*> orders;
    for (Order const& each : book.orders) orders.push_back(&each);
    Diagnostics found;
    auto const buying = buy(costing, orders, found);
    REQUIRE_MESSAGE(buying.has_value(), in_words(found));
    auto days = buying_days(costing, *buying);
    for (BuyingDay const& each : days) CHECK(each.need < buying->needs.size());
    return days;
}

void check(BuyingDay const& part, std::string_view from, int amount, std::string_view until) {
    CHECK(part.from == day(from));
    CHECK(part.amount == amount);
    CHECK(part.used_until == day(until));
}

} // namespace

TEST_CASE("what keeps long enough, or has no shelf life stated, is bought at once") {
    Book keeps = bakery({{"2026-11-30", 20}, {"2026-12-05", 10}}, 10);
    CHECK(days_of(keeps).empty());
    Book unstated = bakery({{"2026-11-30", 20}, {"2027-12-05", 10}}, std::nullopt);
    CHECK(days_of(unstated).empty());
}

TEST_CASE("one order wanted late has it bought late") {
    Book book = bakery({{"2026-12-10", 20}}, 10);
    auto const days = days_of(book);
    REQUIRE(days.size() == 1);
    check(days[0], "2026-11-30", 2000, "2026-12-10");
}

TEST_CASE("so much now, and so much for each later day as one purchase keeps for") {
    // 10 days from the 25 November are until the 5 December; the 14th and the 20th are bought for on the 10th
    Book book =
        bakery({{"2026-12-20", 10}, {"2026-11-30", 20}, {"2026-12-14", 30}, {"2027-01-10", 5}}, 10);
    auto const days = days_of(book);
    REQUIRE(days.size() == 3);
    check(days[0], "2026-11-25", 2000, "2026-11-30");
    check(days[1], "2026-12-10", 4000, "2026-12-20");
    check(days[2], "2026-12-31", 500, "2027-01-10");
}

TEST_CASE("a day on which it keeps exactly is in time") {
    Book book = bakery({{"2026-12-05", 20}, {"2026-12-06", 10}, {"2026-12-16", 10}}, 10);
    auto const days = days_of(book);
    REQUIRE(days.size() == 2);
    check(days[0], "2026-11-25", 2000, "2026-12-05");
    check(days[1], "2026-12-06", 2000, "2026-12-16");
}

TEST_CASE("the shelf serves who is first") {
    Book book = bakery({{"2026-12-10", 10}, {"2026-11-30", 20}}, 10);
    StockItem lot;
    lot.item = named("flour");
    lot.amount = quantity("1.5 kg");
    book.stock.items.push_back(lot);
    auto const days = days_of(book);
    REQUIRE(days.size() == 2);
    check(days[0], "2026-11-25", 500, "2026-11-30");
    check(days[1], "2026-11-30", 1000, "2026-12-10");

    book.stock.items.front().amount = quantity("2.5 kg"); // all of the first order
    auto const later = days_of(book);
    REQUIRE(later.size() == 1);
    check(later[0], "2026-11-30", 500, "2026-12-10");
}

TEST_CASE("a batch that both orders share is bought for when it is begun") {
    Book book = bakery({{"2026-11-30", 1}, {"2026-12-10", 3}}, 10);
    book.formulas.front().makes = quantity("4"); // 25 g each, and 100 g the batch
    book.formulas.front().batch_step = 1;
    CHECK(days_of(book).empty());
}

TEST_CASE("an order that is late already is bought for now") {
    Book book = bakery({{"2026-11-20", 10}, {"2026-12-10", 10}}, 10);
    auto const days = days_of(book);
    REQUIRE(days.size() == 2);
    check(days[0], "2026-11-25", 1000, "2026-11-25");
}

TEST_CASE("whatever the books are, the parts add up, in order, and each keeps") {
    std::size_t parts = 0;
    for (unsigned seed = 1; seed <= 40; ++seed) {
        CAPTURE(seed);
        Book book = random_book(seed);
        if (book.orders.empty()) continue;
        for (std::size_t i = 0; i < book.ingredients.size(); ++i)
            book.ingredients[i].keeping.days = static_cast<int>(1 + (seed + i) % 9);
        for (std::size_t i = 0; i < book.orders.size(); ++i)
            book.orders[i].due = today + Days(static_cast<int>((seed * 7 + i * 5) % 30));
        link_well(book);
        Costing const costing(linked(book), today);
        std::vector<Order const*> orders;
        for (Order const& each : book.orders) orders.push_back(&each);
        Diagnostics found;
        auto const buying = buy(costing, orders, found, 100'000);
        if (!buying) continue;
        auto const days = buying_days(costing, *buying);
        parts += days.size();
        for (std::size_t need = 0; need < buying->needs.size(); ++need) {
            Number sum;
            Date before = today - Days(1);
            bool is_split = false;
            for (BuyingDay const& each : days) {
                if (each.need != need) continue;
                is_split = true;
                sum += each.amount;
                CHECK(each.amount.is_positive());
                CHECK(each.from > before);
                CHECK(each.used_until - each.from <= *buying->needs[need].good_until - today);
                before = each.from;
            }
            if (is_split) CHECK(sum == buying->needs[need].to_buy());
        }
    }
    MESSAGE(parts << " parts in random books");
    CHECK(parts > 20);
}
