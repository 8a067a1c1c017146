#include "books.hpp"

#include <groat/cost/unit_cost.hpp>

#include <fmt/format.h>

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
    REQUIRE(purchase != nullptr);
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

TEST_CASE("freight is in the cost; a deposit that comes back and recoverable tax are not") {
    Book book = a_book();
    food(book, "flour", "1 kg", "9.00");
    book.offers[0].freight = money("0.63");
    book.offers[0].deposit = money("1.07");
    book.offers[0].tax_included = share_of<TaxRate>("7 %");
    Purchase const flour = bought(book, "flour");
    CHECK(flour.pack_cost == money("9.00"));    // 9.63 / 1.07
    CHECK(flour.pack_outlay == money("10.00")); // 10.70 / 1.07
}

TEST_CASE("a delivery is in the cost by a usual order, and in none without one") {
    // 7.50 on goods of 120.00 adds 1/16: 14.40 becomes 15.30, and with 0.70 of freight 16.00
    Book book = a_book();
    food(book, "flour", "1 kg", "14.40");
    book.offers[0].freight = money("0.70");
    book.suppliers[0].delivery = money("7.50");
    CHECK(bought(book, "flour").pack_cost == money("15.10"));
    CHECK(book.suppliers[0].has_delivery_apart());
    book.suppliers[0].usual_order = money("120.00");
    CHECK(bought(book, "flour").pack_cost == money("16.00"));
    CHECK(bought(book, "flour").pack_outlay ==
          money("15.10")); // the delivery is paid once, not by the pack
    CHECK_FALSE(book.suppliers[0].has_delivery_apart());
    book.suppliers[0].free_delivery_from = money("120.00"); // reached by the usual order
    CHECK(bought(book, "flour").pack_cost == money("15.10"));
    book.suppliers[0].free_delivery_from = money("120.01");
    CHECK(bought(book, "flour").pack_cost == money("16.00"));
}

TEST_CASE("delivery may make the nearer shop the cheaper one") {
    // 10.00 and an eighth are 11.25; 11.00 has no delivery
    Book book = a_book();
    food(book, "flour");
    offer(book, "flour", "1 kg", "10.00", "the mill");
    offer(book, "flour", "1 kg", "11.00", "the dock");
    CHECK(bought(book, "flour").offer == 0);
    book.suppliers[0].delivery = money("10.00");
    book.suppliers[0].usual_order = money("80.00");
    CHECK(bought(book, "flour").offer == 1);
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

TEST_CASE(
    "where the preferred supplier has no price in force, another is taken, and that is said") {
    Book book = a_book();
    food(book, "butter").preferred_supplier = named("the farm");
    offer(book, "butter", "1 lb", "4.20", "the mill");
    offer(book, "butter", "1 lb", "6.00", "the farm").from = day("2027-01-01");
    Purchase const butter = bought(book, "butter");
    CHECK(butter.offer == 0);
    CHECK(butter.is_instead);
    Flaw const said = instead_of_preferred(butter, 0, book, today);
    CHECK(said.code == "preferred-not-in-force");
    CHECK(said.what ==
          "'butter' is to be bought from the farm, who has no price in force on 2026-11-25: "
          "its cost goes by the mill, 1 lb");
}

TEST_CASE("whoever was last bought from is taken although another is cheaper") {
    Book book = a_book();
    food(book, "butter");
    offer(book, "butter", "1 lb", "4.20", "the mill").from = day("2026-10-01");
    offer(book, "butter", "1 lb", "4.50", "the dock").from = day("2026-10-01");
    receipt(book, "2026-11-20", "butter", "1 lb", 6, "25.14", "the dock");
    Purchase const butter = bought(book, "butter");
    CHECK(butter.pack_cost == money("4.19")); // 25.14 / 6, newer than the list
    CHECK(butter.reason == Purchase::Reason::last_bought);
    CHECK(butter.last_bought == butter.offer);
    CHECK(butter.considered == 2);
    // nothing was bought yet the day before
    CHECK(bought(book, "butter", day("2026-11-19")).reason == Purchase::Reason::cheapest);
    CHECK(bought(book, "butter", day("2026-11-19")).pack_cost == money("4.20"));
}

TEST_CASE("a newer list of whom it was bought from rules, and of one day what was paid") {
    Book book = a_book();
    food(book, "butter");
    offer(book, "butter", "1 lb", "4.20", "the mill");
    offer(book, "butter", "16 oz", "4.80", "the dock").from = day("2026-11-20");
    receipt(book, "2026-11-20", "butter", "1 lb", 1, "4.60", "the dock");
    CHECK(bought(book, "butter").pack_cost == money("4.60"));
    offer(book, "butter", "1 lb", "4.90", "the dock").from = day("2026-11-21");
    CHECK(bought(book, "butter", day("2026-11-20")).pack_cost == money("4.60"));
    Purchase const later = bought(book, "butter", day("2026-11-21"));
    CHECK(later.pack_cost == money("4.90"));
    CHECK(later.reason == Purchase::Reason::last_bought); // from the dock, at today's price
    CHECK(later.last_bought != later.offer);
}

TEST_CASE("a pack that has no price any more is costed at the nearest one of the same supplier") {
    Book book = a_book();
    food(book, "butter");
    offer(book, "butter", "1 kg", "1.00", "the mill");
    receipt(book, "2026-11-10", "butter", "5 kg", 1, "40.00", "the dock");
    Offer& special = offer(book, "butter", "5 kg", "38.00", "the dock");
    special.from = day("2026-11-12");
    special.until = day("2026-11-20");
    offer(book, "butter", "1 kg", "9.00", "the dock");
    offer(book, "butter", "8 kg", "64.00", "the dock");
    offer(book, "butter", "20 kg", "150.00", "the dock");
    Purchase const butter = bought(book, "butter");
    CHECK(butter.content == 8000); // 3 kg off; 1 kg is 4 kg off
    CHECK(butter.reason == Purchase::Reason::nearest_pack);
}

TEST_CASE("of one day the larger outlay is the last purchase, of equals the first that is read") {
    Book book = a_book();
    food(book, "butter");
    receipt(book, "2026-11-10", "butter", "1 kg", 1, "9.00", "the mill");
    receipt(book, "2026-11-10", "butter", "1 kg", 5, "50.00", "the dock");
    receipt(book, "2026-11-10", "butter", "1 kg", 4, "50.00", "the farm");
    CHECK(bought(book, "butter").pack_cost == money("10.00"));
    // and of the same supplier and pack
    receipt(book, "2026-11-11", "butter", "1 kg", 5, "45.00", "the dock");
    receipt(book, "2026-11-11", "butter", "1 kg", 1, "12.00", "the dock");
    CHECK(bought(book, "butter").pack_cost == money("9.00"));
}

TEST_CASE("a stopgap is history and no price to go by") {
    Book book = a_book();
    food(book, "butter");
    offer(book, "butter", "1 lb", "4.20", "the mill");
    receipt(book, "2026-11-20", "butter", "1 lb", 1, "7.90", "the corner shop").is_stopgap = true;
    Purchase const butter = bought(book, "butter");
    CHECK(butter.pack_cost == money("4.20"));
    CHECK(butter.reason == Purchase::Reason::only);
    food(book, "saffron");
    receipt(book, "2026-11-20", "saffron", "1 g", 1, "9.00").is_stopgap = true;
    CHECK(no_purchase(book, "saffron").code == "missing-price");
}

TEST_CASE("what is only compared never enters a cost") {
    Book book = a_book();
    food(book, "flour");
    offer(book, "flour", "1 kg", "2.00", "the mill");
    offer(book, "flour", "50 kg", "40.00", "the wholesaler");
    book.suppliers[1].is_only_compared = true;
    CHECK(bought(book, "flour").pack_cost == money("2.00"));
    CHECK(bought(book, "flour").reason == Purchase::Reason::only);
    // one offer of whom one buys from
    offer(book, "flour", "10 kg", "10.00", "the mill").is_only_compared = true;
    CHECK(bought(book, "flour").pack_cost == money("2.00"));
    // not even where it is preferred
    book.ingredients[0].preferred_supplier = named("the wholesaler");
    Purchase const flour = bought(book, "flour");
    CHECK(flour.is_instead);
    CHECK(says(instead_of_preferred(flour, 0, book, today).what, "whose prices are only compared"));
    book.offers.erase(book.offers.begin());
    Flaw const none = no_purchase(book, "flour");
    CHECK(none.code == "only-compared");
    CHECK(none.what ==
          "'flour' is offered by the wholesaler and others, but only to compare: nothing "
          "says what it costs");
}

TEST_CASE(
    "who has nothing in force that costs may go by is passed over for whom was bought from before") {
    Book book = a_book();
    food(book, "butter");
    receipt(book, "2026-11-01", "butter", "1 kg", 1, "9.00", "the mill");
    receipt(book, "2026-11-10", "butter", "1 kg", 1, "8.00", "the dock");
    Offer& special = offer(book, "butter", "1 kg", "7.00", "the dock");
    special.from = day("2026-11-12");
    special.until = day("2026-11-20");
    CHECK(bought(book, "butter", day("2026-11-11")).pack_cost == money("8.00"));
    CHECK(bought(book, "butter", day("2026-11-15")).pack_cost == money("7.00"));
    CHECK(bought(book, "butter").pack_cost == money("9.00"));
}

TEST_CASE("eggs by the case, a dozen and an egg by weight") {
    // 7 Pa. Code 87.42, least net weight of a case of 30 dozen: jumbo 56 lb, large 45, medium 39.5. At 90.00 a
    // case of large an egg is 0.25, a dozen 3.00 and 24 oz, so 2.00 a pound
    Book book = a_book();
    food(book, "large egg", "30 dozen", "90.00").grams_each = pound * 45 / 360;
    Purchase const large = bought(book, "large egg");
    CHECK(large.content == pound * 45);
    CHECK(large.unit_cost * pound == money("2.00"));
    CHECK(large.unit_cost * (ounce * 24) == money("3.00"));
    CHECK(large.unit_cost * (ounce * 2) == money("0.25"));
    // At one price a case, a pound of medium is dearer by 45/39.5 - 1 = 13.9 %, one of jumbo cheaper
    food(book, "medium egg", "30 dozen", "90.00").grams_each = pound * number("39.5") / 360;
    food(book, "jumbo egg", "30 dozen", "90.00").grams_each = pound * 56 / 360;
    CHECK(bought(book, "medium egg").unit_cost / large.unit_cost == number("90/79"));
    CHECK(printed(bought(book, "jumbo egg").unit_cost * pound) == "1.61");
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

TEST_CASE(
    "a pack measured by volume is one of a mass where the density of what is in it is known") {
    Book book = a_book();
    food(book, "honey", "1 quart", "9.00");
    CHECK(bought(book, "honey").content == quantity("1 quart").amount);
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

TEST_CASE("what is only bought by the piece or by volume costs so much a piece or millilitre") {
    Book book = a_book();
    food(book, "shell", "100", "35.00");
    food(book, "vanilla", "8 fl oz", "19.20");
    CHECK(bought(book, "shell").content == 100);
    CHECK(bought(book, "shell").unit_cost == money("0.35"));
    // 8 fl oz are 48 tsp
    CHECK(bought(book, "vanilla").unit_cost * quantity("1 tsp").amount == money("0.40"));
    book.ingredients[0].grams_each = number("12");
    CHECK(bought(book, "shell").content == 1200);
}

TEST_CASE("what is sold by the piece and by mass needs the weight of one") {
    Book book = a_book();
    food(book, "shell", "100", "35.00");
    offer(book, "shell", "1 kg", "30.00", "another mill");
    CHECK(no_purchase(book, "shell").code == "missing-weight");
}
