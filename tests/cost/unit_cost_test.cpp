#include "books.hpp"

#include <groat/cost/unit_cost.hpp>

using namespace groat;
using namespace groat::test;

namespace {

Number const pound = number("453.59237");
Number const ounce = pound / 16;

/// What something is bought by, on a day, in a linked book.
Purchase bought(Book& book, std::string_view name, Date date = today) {
    link_well(book);
    UnitCosts const costs = unit_costs(book, date);
    auto const& purchase = costs.purchases[ingredient_index(book, name)];
    REQUIRE(purchase.has_value());
    return *purchase;
}

Flaw no_purchase(Book& book, std::string_view name, Date date = today) {
    link_well(book);
    UnitCosts const costs = unit_costs(book, date);
    std::size_t const index = ingredient_index(book, name);
    REQUIRE(!costs.purchases[index]);
    return costs.problems[index];
}

/// The usable cost per gram of a pack at a yield.
Money usable(std::string_view pack, std::string_view price, std::string_view yield) {
    Book book = a_book();
    food(book, "it", pack, price).yield = share_of<Yield>(yield);
    return bought(book, "it").usable_cost();
}

} // namespace

TEST_CASE("a pound of flour from a sack of twenty") {
    // VCC Learning Centre, "Culinary Math: Recipe Costing": 20 lb flour 10.50 -> 0.525 per lb
    Book book = a_book();
    food(book, "flour", "20 lb", "10.50");
    Purchase const flour = bought(book, "flour");
    CHECK(flour.unit_cost * pound == money("0.525"));
    CHECK(flour.usable_cost() == flour.unit_cost);
    CHECK(flour.reason == Purchase::Reason::only);
}

TEST_CASE("trimmed apples cost their price over the yield") {
    // Same source: 10 lb apples 5.60, yield 75 %. It prints 7.465 from a factor rounded to 1.333 (and a
    // misprint 100/80); the exact factor 4/3 gives 112/15 = 7.4667
    CHECK(usable("10 lb", "5.60", "75 %") * (pound * 10) == money("112/15"));
    CHECK(printed(money("112/15")) == "7.47");
    CHECK(printed(number("5.60") * number("1.333"), 4) == "7.4648");
}

TEST_CASE("carrots, an ounce and four") {
    // CIA calculation guide (copy): 0.106 per oz at 75 %. One line prints 0.401, a misprint; the next 0.141,
    // and 0.564 for 4 oz from that rounded figure. Exactly 53/375 = 0.141333 and 0.565333
    Money const an_ounce = usable("1 oz", "0.106", "75 %") * ounce;
    CHECK(an_ounce == money("53/375"));
    CHECK(printed(an_ounce, 3) == "0.141");
    CHECK(printed(an_ounce * 4, 3) == "0.565");
}

TEST_CASE("three ounces of peppers at 1.67 a pound and 71 %") {
    // openwa.pressbooks.pub/bakeryandbusinessmath ch. 25, an exercise without a printed answer:
    // 1.67 / 16 x 3 / 0.71 = 501/1136 = 0.441021
    CHECK(usable("1 lb", "1.67", "71 %") * (ounce * 3) == money("501/1136"));
}

TEST_CASE("the cost factor of a yield is one over it: refuse of food as purchased") {
    // USDA SR28, FOOD_DES.txt, refuse R in percent; yield 100 - R, factor 100 / (100 - R)
    struct Row {
        std::string_view food;
        int refuse;
        std::string_view factor;
    };
    constexpr Row rows[] = {
        {"apples with skin 09003", 10, "1.1111"},
        {"apples without skin 09004", 23, "1.2987"},
        {"bananas 09040", 36, "1.5625"},
        {"blueberries 09050", 5, "1.0526"},
        {"lemons without peel 09150", 47, "1.8868"},
        {"mangos 09176", 29, "1.4085"},
        {"oranges 09200", 27, "1.3699"},
        {"pineapple 09266", 49, "1.9608"},
        {"strawberries 09316", 6, "1.0638"},
        {"watermelon 09326", 48, "1.9231"},
        {"carrots 11124", 11, "1.1236"},
        {"onions 11282", 10, "1.1111"},
        {"potatoes 11352", 25, "1.3333"},
        {"almonds in shell 12061", 60, "2.5000"},
        {"walnuts in shell 12155", 55, "2.2222"},
        {"black walnuts in shell 12154", 76, "4.1667"},
        {"egg, whole 01123", 12, "1.1364"},
        {"butter 01145", 0, "1.0000"},
    };
    for (Row const& row : rows) {
        CAPTURE(row.food);
        Money const factor = usable("1 g", "1.00", fmt::format("{} %", 100 - row.refuse));
        CHECK(printed(factor, 4) == row.factor);
        CHECK(factor * (Number(100 - row.refuse) / 100) == money("1"));
    }
}

TEST_CASE("kept to 80 %, a kilogram of carrots costs a quarter more") {
    // BC Cook Articulation Committee, Basic Kitchen and Food Service Management, "Yield Testing":
    // 1 kg of carrots leaves 800 g
    CHECK(usable("1 kg", "1.00", "80 %") * 1000 == money("1.25"));
}

TEST_CASE("what swells has a yield above one and costs less per usable gram") {
    CHECK(usable("1 kg", "3.00", "300 %") * 1000 == money("1.00"));
}

TEST_CASE("freight and deposit are in the cost, recoverable tax is not") {
    Book book = a_book();
    food(book, "flour", "1 kg", "9.00");
    book.offers[0].freight = money("0.60");
    book.offers[0].deposit = money("0.03");
    book.offers[0].tax_included = share_of<TaxRate>("7 %");
    CHECK(bought(book, "flour").pack_cost == money("9.00")); // 9.63 / 1.07
}

TEST_CASE("an offer's own yield goes before the ingredient's") {
    Book book = a_book();
    food(book, "plum", "1 kg", "4.00").yield = share_of<Yield>("80 %");
    book.offers[0].yield = share_of<Yield>("50 %");
    CHECK(bought(book, "plum").usable_cost() * 1000 == money("8.00"));
}

TEST_CASE("of several offers the cheapest per usable gram is taken, not per gram as bought") {
    // whole nuts 6.00 a kg at 45 % are 13.33 usable, shelled ones 12.00
    Book book = a_book();
    food(book, "walnut");
    offer(book, "walnut", "1 kg", "6.00", "the farm").yield = share_of<Yield>("45 %");
    offer(book, "walnut", "1 kg", "12.00", "the mill");
    Purchase const walnut = bought(book, "walnut");
    CHECK(walnut.offer == 1);
    CHECK(walnut.reason == Purchase::Reason::cheapest);
    CHECK(walnut.considered == 2);
}

TEST_CASE("a larger pack of the same supplier is a candidate of its own") {
    Book book = a_book();
    food(book, "flour");
    offer(book, "flour", "5 lb", "4.29");
    offer(book, "flour", "25 lb", "14.99");
    CHECK(bought(book, "flour").offer == 1);
}

TEST_CASE("of equals the first in reading order is taken") {
    Book book = a_book();
    food(book, "flour");
    offer(book, "flour", "2 kg", "3.00", "the mill");
    offer(book, "flour", "1 kg", "1.50", "the farm");
    CHECK(bought(book, "flour").offer == 0);
}

TEST_CASE("the newest price of a supplier and pack is in force, even when it is dearer") {
    Book book = a_book();
    food(book, "butter");
    offer(book, "butter", "1 lb", "5.10").from = day("2026-10-01");
    offer(book, "butter", "1 lb", "4.20").from = day("2026-03-01");
    offer(book, "butter", "1 lb", "3.90");                           // always was
    offer(book, "butter", "16 oz", "5.90").from = day("2026-12-01"); // not yet
    CHECK(bought(book, "butter").offer == 0);
    CHECK(bought(book, "butter", day("2026-09-30")).offer == 1);
    CHECK(bought(book, "butter", day("2025-01-01")).offer == 2);
    CHECK(bought(book, "butter", day("2026-12-01")).offer == 3); // 16 oz are the same pack as 1 lb
}

TEST_CASE("of two prices from one day the later one written counts") {
    Book book = a_book();
    food(book, "butter");
    offer(book, "butter", "1 lb", "4.20").from = day("2026-10-01");
    offer(book, "butter", "1 lb", "4.40").from = day("2026-10-01");
    CHECK(bought(book, "butter").offer == 1);
}

TEST_CASE("a price that has ended does not bring back the one before it") {
    Book book = a_book();
    food(book, "butter");
    offer(book, "butter", "1 lb", "3.90");
    Offer& special = offer(book, "butter", "1 lb", "3.10");
    special.from = day("2026-11-01");
    special.until = day("2026-11-14");
    CHECK(bought(book, "butter", day("2026-11-14")).offer == 1);
    CHECK(no_purchase(book, "butter", day("2026-11-15")).code == "ended-price");
}

TEST_CASE("a preferred supplier is taken although another is cheaper") {
    Book book = a_book();
    food(book, "butter").preferred_supplier = named("the farm");
    offer(book, "butter", "1 lb", "4.20", "the mill");
    offer(book, "butter", "1 lb", "6.00", "the farm");
    offer(book, "butter", "4 lb", "22.00", "the farm");
    Purchase const butter = bought(book, "butter");
    CHECK(butter.offer == 2);
    CHECK(butter.reason == Purchase::Reason::preferred);
}

TEST_CASE("a preferred supplier without a price in force is told, not passed over") {
    Book book = a_book();
    food(book, "butter").preferred_supplier = named("the farm");
    offer(book, "butter", "1 lb", "4.20", "the mill");
    offer(book, "butter", "1 lb", "6.00", "the farm").from = day("2027-01-01");
    Flaw const flaw = no_purchase(book, "butter");
    CHECK(flaw.code == "missing-price");
    CHECK(says(flaw.what, "'butter' is to be bought from the farm"));
}

TEST_CASE("what has no price, a later one only, or none any more is told apart") {
    Book book = a_book();
    food(book, "sugar");
    food(book, "butter");
    food(book, "plum");
    offer(book, "butter", "1 lb", "4.20").from = day("2027-01-01");
    offer(book, "plum", "1 kg", "4.20").until = day("2026-10-31");
    CHECK(no_purchase(book, "sugar").what == "'sugar' has no price in any price list");
    Flaw const future = no_purchase(book, "butter");
    CHECK(future.code == "future-price");
    CHECK(says(future.what, "no price on 2026-11-25: its next one is in force from 2027-01-01"));
    Flaw const ended = no_purchase(book, "plum");
    CHECK(ended.code == "ended-price");
    CHECK(says(ended.what, "ended on 2026-10-31"));
}

TEST_CASE("a pack measured by volume needs the density of what is in it") {
    Book book = a_book();
    food(book, "honey", "1 quart", "9.00");
    CHECK(no_purchase(book, "honey").code == "missing-density");
    // USDA SR28 19296: honey 339 g a cup, four of them in a quart
    book.ingredients[0].densities.push_back(density("339 g / cup"));
    CHECK(bought(book, "honey").content == 1356);
}

TEST_CASE("supplies are bought by the piece") {
    Book book = a_book();
    supply(book, "tray liner", "4 x 50", "18.00");
    CHECK(bought(book, "tray liner").unit_cost == money("0.09"));
}

TEST_CASE("price breaks belong to buying and do not lower what a cookie costs") {
    Book book = a_book();
    food(book, "flour", "25 lb", "13.80");
    book.offers[0].breaks.push_back({3, money("13.10")});
    CHECK(bought(book, "flour").pack_cost == money("13.80"));
}
