#include <groat/plan/buying.hpp>

#include "books.hpp"

#include <fmt/format.h>

using namespace groat;
using namespace groat::test;

namespace {

/// A shop in which one piece of `bun` takes so much of one thing, and one piece is ordered.
Book needing(std::string_view item, std::string_view amount) {
    Book book = a_book();
    food(book, item);
    formula(book, "bun", {{item, amount}}).makes = quantity("1");
    wants(order(book), "bun", 1);
    return book;
}

struct Bought {
    Book book;
    Diagnostics found;
    std::optional<Buying> buying;

    explicit Bought(Book wanted) : book(std::move(wanted)) {
        link_well(book);
        costing.emplace(linked(book), today);
        std::vector<Order const*> orders;
        for (Order const& each : book.orders) orders.push_back(&each);
        buying = buy(*costing, orders, found);
        if (buying) add_up();
    }
    [[nodiscard]] Buying const& operator()() const {
        REQUIRE_MESSAGE(buying.has_value(), in_words(found));
        return *buying;
    }
    /// `2 x 5 lb of the mill, 1 x 25 lb of the farm`
    [[nodiscard]] std::string packs() const {
        std::string text;
        for (Basket const& basket : (*this)().baskets)
            for (PackLine const& line : basket.lines)
                text += fmt::format("{}{} x {} of {}", text.empty() ? "" : ", ", line.packs.str(),
                                    book.offers[line.offer].pack_text,
                                    book.suppliers[basket.supplier].name);
        return text;
    }

private:
    /// What holds for every purchase.
    void add_up() const {
        Money total;
        for (Basket const& basket : buying->baskets) {
            Money goods;
            Money freight;
            Money deposit;
            for (PackLine const& line : basket.lines) {
                goods += line.goods;
                freight += line.freight;
                deposit += line.deposit;
                CHECK(line.packs > 0);
            }
            CHECK(goods == basket.goods);
            CHECK(freight == basket.freight);
            CHECK(deposit == basket.deposit);
            CHECK(basket.total() == goods + freight + deposit + basket.delivery);
            if (auto const& minimum = book.suppliers[basket.supplier].minimum_order)
                CHECK(basket.listed >= *minimum);
            total += basket.total();
        }
        CHECK(total == buying->total);
        CHECK(buying->bound <= buying->total);
        for (Need const& need : buying->needs) CHECK(need.bought >= need.to_buy());
        if (buying->single) CHECK(buying->single_total >= buying->total);
        if (!buying->by_unit_price.misses_minimum)
            CHECK(buying->by_unit_price.total >= buying->total);
    }

    std::optional<Costing> costing;
};

} // namespace

TEST_CASE("the large sack though most of it is left over") {
    // Pack case P1: 7,000 g; 5 lb 4.29, 25 lb 14.99, 4 lb 3.79. glpsol, cbc, lp_solve and trying everything
    // agree on 14.99 and 4,339.80925 g left over.
    Book book = needing("flour", "7000 g");
    offer(book, "flour", "5 lb", "4.29");
    offer(book, "flour", "25 lb", "14.99");
    offer(book, "flour", "4 lb", "3.79");
    Bought const bought(book);
    CHECK(bought.packs() == "1 x 25 lb of the mill");
    CHECK(bought().total == money("14.99"));
    CHECK(bought().is_least());
    CHECK(bought().needs.front().leftover() == number("4339.80925"));
}

TEST_CASE("small packs where the case is far too large, to nothing left over") {
    // Pack case P2: 14 lb; 1 lb 4.49, 4 lb 16.79, 36 lb 128.00 -> 59.35 with 3 and 2; the cheapest by the
    // pound would be the case at 128.00
    Book book = needing("butter", "14 lb");
    offer(book, "butter", "1 lb", "4.49");
    offer(book, "butter", "4 lb", "16.79");
    offer(book, "butter", "36 lb", "128.00");
    Bought const bought(book);
    CHECK(bought.packs() == "2 x 1 lb of the mill, 3 x 4 lb of the mill");
    CHECK(bought().total == money("59.35"));
    CHECK(bought().needs.front().leftover().is_zero());
    CHECK(bought().by_unit_price.total == money("128.00"));
}

TEST_CASE("neither the cheapest pack nor the cheapest piece, but what fits") {
    // Pack case P4: 60 units; 25 for 24.00, 20 for 20.00, 55 for 50.00 -> 60.00 as 3 packs of 20
    Book book = a_book();
    supply(book, "box", "25", "24.00");
    offer(book, "box", "20", "20.00");
    offer(book, "box", "55", "50.00");
    food(book, "flour", "1 kg", "1.00");
    Formula& bun = formula(book, "bun", {{"flour", "1 g"}});
    bun.makes = quantity("1");
    sold_as(bun, "boxed", "1").packing.push_back(uses("box", "1", Per::sale_unit));
    wants(order(book), "bun", 60, "boxed");
    Bought const bought(book);
    CHECK(says(bought.packs(), "3 x 20 of the mill"));
    CHECK(bought().total == money("61.00")); // and a kilogram of flour
}

TEST_CASE("a delivery may cost more than the dearer shop around the corner") {
    Book book = needing("flour", "10 kg");
    offer(book, "flour", "10 kg", "9.00", "the mill");
    offer(book, "flour", "10 kg", "14.00", "the corner");
    book.suppliers[0].delivery = money("4.99");
    CHECK(Bought(book).packs() == "1 x 10 kg of the mill");
    book.suppliers[0].delivery = money("5.01");
    Bought const bought(book);
    CHECK(bought.packs() == "1 x 10 kg of the corner");
    CHECK(bought().by_unit_price.total == money("14.01"));
}

TEST_CASE("what is cheapest by the unit may be below a minimum order, which is said") {
    Book book = needing("flour", "10 kg");
    offer(book, "flour", "10 kg", "9.00", "the mill");
    offer(book, "flour", "10 kg", "14.00", "the corner");
    book.suppliers[0].minimum_order = money("20.00");
    Bought const bought(book);
    CHECK(bought.packs() == "1 x 10 kg of the corner"); // not three at the mill for 27.00
    CHECK(bought().by_unit_price.misses_minimum);
}

TEST_CASE("a price break counts for all packs") {
    Book book = needing("flour", "20 kg");
    offer(book, "flour", "10 kg", "9.00").breaks = {{3, money("5.00")}};
    Bought const bought(book);
    CHECK(bought.packs() == "3 x 10 kg of the mill"); // 15.00, two would be 18.00
    CHECK(bought().baskets.front().lines.front().price == money("5.00"));
}

TEST_CASE("breaks written from one pack on, or twice for the same number, are the last word") {
    Book book = needing("flour", "20 kg");
    offer(book, "flour", "10 kg", "9.00").breaks = {
        {1, money("8.00")}, {2, money("7.00")}, {2, money("6.00")}};
    CHECK(Bought(book)().total == money("12.00"));
}

TEST_CASE("freight and deposit are paid by the pack but do not count towards the minimum") {
    Book book = needing("flour", "10 kg");
    Offer& sack = offer(book, "flour", "10 kg", "9.00");
    sack.freight = money("3.00");
    sack.deposit = money("0.50");
    book.suppliers[0].minimum_order = money("10.00");
    Bought const bought(book);
    CHECK(bought.packs() == "2 x 10 kg of the mill");
    Basket const& basket = bought().baskets.front();
    CHECK(basket.listed == money("18.00"));
    CHECK(basket.freight == money("6.00"));
    CHECK(basket.deposit == money("1.00"));
    CHECK(bought().needs.front().cost == money("24.00")); // a deposit comes back
    CHECK(bought().total == money("25.00"));
}

TEST_CASE("recoverable tax in the listed prices is not an outlay") {
    Book book = needing("flour", "10 kg");
    offer(book, "flour", "10 kg", "10.70").tax_included = share_of<TaxRate>("7 %");
    Bought const bought(book);
    CHECK(bought().total == money("10.00"));
    CHECK(bought().baskets.front().listed == money("10.70"));
}

TEST_CASE("stoned plums or whole ones: an offer counts by what of it is usable") {
    Book book = needing("plum", "8.8 kg");
    offer(book, "plum", "10 kg", "20.00", "the farm").yield = share_of<Yield>("88 %");
    offer(book, "plum", "8.8 kg", "21.00", "the freezer"); // stoned: all of it usable
    Bought const bought(book);
    CHECK(bought.packs() == "1 x 10 kg of the farm");
    CHECK(bought().needs.front().needed() == 10'000);
    CHECK(bought().needs.front().leftover().is_zero());
    book.offers[0].price = money("21.01");
    Bought const other(book);
    // 21.01 / 8.8 kg usable against 21.00 / 8.8 kg: now the stoned ones, and the need is in their grams
    CHECK(other.packs() == "1 x 8.8 kg of the freezer");
    CHECK(other().needs.front().needed() == 8800);
}

TEST_CASE("what is written as bought counts by the piece, whatever its yield") {
    Book book = needing("lemon", "1000 g as bought");
    offer(book, "lemon", "1 kg", "2.00", "the farm").yield = share_of<Yield>("40 %");
    offer(book, "lemon", "900 g", "2.20", "the market").yield = share_of<Yield>("50 %");
    Bought const bought(book);
    CHECK(bought.packs() ==
          "1 x 1 kg of the farm"); // 900 g are 900 g, though more juice is in them
}

TEST_CASE("a preferred supplier is bought from, though dearer") {
    Book book = needing("butter", "1 kg");
    offer(book, "butter", "1 kg", "8.00", "the market");
    offer(book, "butter", "1 kg", "9.00", "the farm");
    book.ingredients.front().preferred_supplier = named("the farm");
    CHECK(Bought(book).packs() == "1 x 1 kg of the farm");
}

TEST_CASE("where the preferred supplier has nothing, others are bought from") {
    Book book = needing("butter", "1 kg");
    offer(book, "butter", "1 kg", "8.00", "the farm");
    offer(book, "butter", "1 kg", "9.00", "the market");
    book.offers[0].until = day("2026-11-01");
    book.ingredients.front().preferred_supplier = named("the farm");
    CHECK(Bought(book).packs() == "1 x 1 kg of the market");
}

TEST_CASE("nothing is bought where prices are only compared") {
    Book book = needing("butter", "1 kg");
    offer(book, "butter", "1 kg", "8.00", "the farm");
    offer(book, "butter", "1 kg", "7.00", "the cash market");
    book.suppliers.back().is_only_compared = true;
    CHECK(Bought(book).packs() == "1 x 1 kg of the farm");
}

TEST_CASE("a delivery that is free from an order on may be worth another pack") {
    Book book = needing("flour", "25 kg");
    offer(book, "flour", "10 kg", "9.00", "the mill");
    book.suppliers[0].delivery = money("10.00");
    book.suppliers[0].free_delivery_from = money("36.00");
    Bought const four(book); // three and the delivery are 37.00
    CHECK(four.packs() == "4 x 10 kg of the mill");
    CHECK(four().total == money("36.00"));
    CHECK(four().baskets.front().delivery.is_zero());
    CHECK(four().by_unit_price.total == money("37.00"));
    book.suppliers[0].free_delivery_from = money("45.00");
    CHECK(Bought(book)().total == money("37.00"));
}

TEST_CASE("no more packs than may be had") {
    Book book = needing("butter", "5 kg");
    offer(book, "butter", "1 kg", "8.00", "the farm").most_packs = 3;
    offer(book, "butter", "1 kg", "9.00", "the market");
    Bought const bought(book);
    CHECK(bought.packs() == "3 x 1 kg of the farm, 2 x 1 kg of the market");
    CHECK(bought().total == money("42.00"));
}

TEST_CASE("limits that leave something short say how much may be had") {
    Book book = needing("butter", "5 kg");
    offer(book, "butter", "1 kg", "8.00", "the farm").most_packs = 3;
    Bought const bought(book);
    CHECK_FALSE(bought.buying.has_value());
    auto const found = finding(bought.found, "too-few-packs");
    REQUIRE(found);
    CHECK(says(found->what, "5 kg of 'butter'"));
    CHECK(says(found->what, "3 kg"));
}

TEST_CASE("a minimum that no order can reach is said where it stands in the way") {
    Book book = needing("butter", "2 kg");
    offer(book, "butter", "1 kg", "8.00", "the farm").most_packs = 3;
    book.suppliers[0].minimum_order = money("100.00");
    Bought const bought(book);
    CHECK_FALSE(bought.buying.has_value());
    CHECK(finding(bought.found, "minimum-unreached"));
}

TEST_CASE("the cheapest supplier who has everything stands beside") {
    Book book = needing("butter", "1 kg");
    food(book, "flour", "1 kg", "1.00");
    book.offers.back().supplier = supplier(book, "the mill");
    offer(book, "butter", "1 kg", "8.00", "the farm");
    offer(book, "butter", "1 kg", "9.00", "the market");
    offer(book, "flour", "1 kg", "1.50", "the market");
    book.formulas.front().lines.push_back(line({"flour", "500 g"}));
    Bought const bought(book);
    CHECK(bought().total == money("9.00"));
    REQUIRE(bought().single);
    CHECK(bought.book.suppliers[*bought().single].name == "the market");
    CHECK(bought().single_total == money("10.50"));
}

TEST_CASE("where nobody has everything, who comes closest and what they lack") {
    Book book = needing("butter", "1 kg");
    food(book, "flour", "1 kg", "1.00");
    offer(book, "butter", "1 kg", "8.00", "the farm");
    book.formulas.front().lines.push_back(line({"flour", "500 g"}));
    Bought const bought(book);
    CHECK_FALSE(bought().single);
    REQUIRE(bought().closest);
    REQUIRE(bought().closest_lacks.size() == 1);
}

TEST_CASE("nothing is bought where the shelf holds it all") {
    Book book = needing("butter", "1 kg");
    offer(book, "butter", "1 kg", "8.00", "the farm");
    StockItem item;
    item.item = named("butter");
    item.amount = quantity("2 kg");
    book.stock.items.push_back(item);
    Bought const bought(book);
    CHECK(bought().baskets.empty());
    CHECK(bought().total.is_zero());
    CHECK(bought().is_least());
}

TEST_CASE("what spoils is what no order takes while it is good") {
    Book book = needing("cream", "300 mL");
    book.ingredients.front().densities = {density("1 g / mL")};
    book.ingredients.front().keeping.days = 5;
    offer(book, "cream", "1 L", "6.00");
    Bought const bought(book);
    Need const& cream = bought().needs.front();
    CHECK(cream.leftover() == 700);
    CHECK(cream.may_spoil() == number("700"));
    CHECK(cream.worth() == money("4.20"));
    CHECK(bought().worth_left() == money("4.20"));
}

TEST_CASE("an old price that is bought at is warned of") {
    Book book = needing("butter", "1 kg");
    offer(book, "butter", "1 kg", "8.00").from = day("2026-01-01");
    book.shop.stale_after = Days(60);
    Bought const bought(book);
    CHECK(finding(bought.found, "stale-price"));
}

namespace {

/// One bun of a kilogram of flour is wanted today, one on each of `later` days.
Book baking_again(std::initializer_list<std::string_view> later) {
    Book book = needing("flour", "1 kg");
    offer(book, "flour", "1 kg", "1.50");
    offer(book, "flour", "3 kg", "3.00");
    for (std::string_view const due : later) {
        Order& again = order(book, due);
        again.due = day(due);
        wants(again, "bun", 1);
    }
    return book;
}

/// What is bought for the first order alone.
Buying first_of(Book& book) {
    link_well(book);
    Costing const costing(linked(book), today);
    Diagnostics found;
    auto buying = buy(costing, {&book.orders.front()}, found);
    REQUIRE_MESSAGE(buying.has_value(), in_words(found));
    return *std::move(buying);
}

} // namespace

TEST_CASE("a larger pack pays where other orders use what is left of it") {
    Book book = baking_again({"2026-12-01", "2026-12-08"});
    Buying const buying = first_of(book);
    CHECK(buying.total == money("1.50"));
    REQUIRE(buying.ahead);
    // 3 kg at 3.00; the 2 kg left over are used, at the 1.00 a kilogram that costs go by
    CHECK(buying.ahead->total == money("3.00"));
    CHECK(buying.ahead->worth == money("2.00"));
    CHECK(buying.ahead->is_least());
    CHECK(buying.ahead->least_worth.is_zero());
    REQUIRE(buying.ahead->left.size() == 1);
    CHECK(buying.ahead->left.front().used == 2000);
}

TEST_CASE("what nobody uses in time is worth nothing") {
    Book once = baking_again({"2026-12-01"});
    Buying const used_once = first_of(once);
    // 3.00 less the one kilogram that will be used is 2.00; the small pack is 1.50
    REQUIRE(used_once.ahead);
    CHECK(used_once.ahead->total == money("1.50"));
    CHECK(used_once.ahead->worth.is_zero());
    Book spoilt = baking_again({"2026-12-01", "2026-12-08"});
    spoilt.ingredients.front().keeping.days = 10; // until 5 December
    CHECK(first_of(spoilt).ahead->total == money("1.50"));
    Book alone = baking_again({});
    CHECK_FALSE(first_of(alone).ahead);
}

TEST_CASE("what is wanted on the shelf is of use as well, but no gram twice") {
    Book book = baking_again({});
    StockItem flour;
    flour.item = named("flour");
    flour.amount = quantity("100 g");
    flour.par = quantity("3 kg");
    book.stock.items.push_back(flour);
    Buying const buying = first_of(book);
    REQUIRE(buying.ahead);
    CHECK(buying.needs.front().to_buy() == 900);
    CHECK(buying.ahead->worth == money("2.10")); // all of the 2.1 kg left of a large pack
    Book both = baking_again({"2026-12-01"});
    both.stock.items.push_back(flour);
    CHECK(first_of(both).needs.front().useful() == 3000); // not 4000
}
