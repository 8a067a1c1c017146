#include <groat/price/menu_mix.hpp>

#include "random_book.hpp"

#include <string>

using namespace groat;
using namespace groat::test;

// Formulas: Dittmer and Keefe, Principles of Food, Beverage, and Labor Cost Controls, 9th ed., ch. 11, after
// Kasavana and Smith, Menu Engineering, 1982. The figures are worked by hand in each test.

namespace {

MenuMix mix(std::vector<ItemSales> const& items) {
    auto const result = menu_mix(items);
    REQUIRE(result.has_value());
    return *result;
}

std::string groups(MenuMix const& mix) {
    std::string text;
    for (MixedItem const& item : mix.items) {
        if (!text.empty()) text += "; ";
        text += menu_group_words[static_cast<std::size_t>(item.group())];
    }
    return text;
}

} // namespace

TEST_CASE("four items, one in each group") {
    // shares 40, 40, 10 and 10 % against 70 % of a quarter, 17.5 %;
    // mean (40 x 5 + 40 x 2 + 10 x 6 + 10 x 1) / 100 = 3.50, not the plain mean of the four, which is 3.50 too:
    // so one more sold of the second: (200 + 82 + 60 + 10) / 101 = 352/101
    MenuMix const four =
        mix({{40, money("5")}, {41, money("2")}, {10, money("6")}, {10, money("1")}});
    CHECK(four.units == 101);
    CHECK(four.popularity_line == percent("17.5 %"));
    CHECK(four.contribution_line == money("352/101"));
    CHECK(four.items[0].share == number("40/101"));
    CHECK(groups(four) == "sells and earns; sells, earns little; earns, sells little; neither");
}

TEST_CASE("the contribution line is weighted by what was sold, not the mean of the items") {
    // (90 x 1 + 10 x 5) / 100 = 1.40; the plain mean would be 3
    MenuMix const two = mix({{90, money("1")}, {10, money("5")}});
    CHECK(two.contribution_line == money("1.40"));
    CHECK(groups(two) == "sells, earns little; earns, sells little");
}

TEST_CASE("an item at a line stands above it") {
    // ten items: the line is 7 %; the first sells exactly that
    std::vector<ItemSales> items{{7, money("1")}};
    for (int i = 0; i < 8; ++i) items.push_back({10, money("1")});
    items.push_back({13, money("1")});
    MenuMix const ten = mix(items);
    CHECK(ten.popularity_line == percent("7 %"));
    CHECK(ten.items.front().share == ten.popularity_line);
    CHECK(ten.items.front().group() == MenuGroup::sells_and_earns);
    // and just below it
    items.front().units = number("699/100");
    CHECK(mix(items).items.front().group() == MenuGroup::earns);
}

TEST_CASE("items that are all alike all sell and earn; so does one alone") {
    for (std::size_t count : {1U, 2U, 3U, 20U}) {
        MenuMix const alike = mix(std::vector<ItemSales>(count, {5, money("2.10")}));
        for (MixedItem const& item : alike.items) CHECK(item.group() == MenuGroup::sells_and_earns);
    }
}

TEST_CASE("an item of which none was sold counts among the items and in no mean") {
    // two of three sold: the line is 70 % of a third
    MenuMix const three = mix({{50, money("2")}, {50, money("4")}, {0, money("9")}});
    CHECK(three.popularity_line == number("7/30"));
    CHECK(three.contribution_line == money("3"));
    CHECK(three.items.back().share.is_zero());
    CHECK(three.items.back().group() == MenuGroup::earns);
}

TEST_CASE("without sales there is no mix") {
    CHECK(!menu_mix({{0, money("2")}, {0, money("4")}}).has_value());
    CHECK(!menu_mix({}).has_value());
}

TEST_CASE("in any mix shares add up to one, and something is at or above each line") {
    Draw draw(7);
    for (int round = 0; round < 200; ++round) {
        std::vector<ItemSales> items;
        for (std::int64_t i = draw.whole(1, 12); i > 0; --i)
            items.push_back({draw.whole(0, 400), money("0.01") * Number(draw.whole(-200, 900))});
        items.front().units += 1;
        MenuMix const mixed = mix(items);
        Number shares;
        Money all;
        bool any_sells = false;
        bool any_earns = false;
        bool any_pays = false;
        for (std::size_t i = 0; i < items.size(); ++i) {
            shares += mixed.items[i].share;
            all += items[i].contribution * items[i].units;
            any_sells = any_sells || mixed.items[i].sells;
            any_earns = any_earns || mixed.items[i].earns;
            any_pays = any_pays || !items[i].contribution.is_negative();
        }
        CHECK(shares == 1);
        CHECK(mixed.contribution_line * mixed.units == all);
        CHECK(any_sells);
        CHECK(any_earns == any_pays);
    }
}

TEST_CASE("what loses with every one sold does not earn, however little the others lose less") {
    MenuMix const alone = mix({{10, money("-1.31")}});
    CHECK(alone.items.front().group() == MenuGroup::sells);
}

TEST_CASE("popularity and contribution as a textbook prints them") {
    // Dittmer and Keefe, Principles of Food, Beverage, and Labor Cost Controls, 9th ed., p. 306 and fig. 11.1:
    // 252 at 23.65 less 7.50, 207 at 16.45 less 5.20, of 2,635 sold that left 36,056.75; the rest in one
    MenuMix const menu = mix({{252, money("16.15")},
                              {207, money("11.25")},
                              {2635 - 252 - 207, money("29658.20") / Number(2635 - 252 - 207)}});
    CHECK(printed(menu.items[0].share * 100, 3) == "9.564");
    CHECK(printed(menu.items[1].share * 100, 3) == "7.856");
    CHECK(printed(menu.contribution_line) == "13.68");
}

TEST_CASE("an exercise of four items, one of each kind") {
    // an answer page in circulation: price less food cost; 1,216 sold, 9,662.10 in all. The groups are worked here
    MenuMix const four = mix({{481, money("12.50") - money("4.90")},
                              {190, money("14.75") - money("6.50")},
                              {205, money("10.60") - money("5.20")},
                              {340, money("16.80") - money("7.00")}});
    CHECK(four.units == 1216);
    CHECK(four.contribution_line * four.units == money("9662.10"));
    CHECK(printed(four.contribution_line.amount(), 4) == "7.9458");
    CHECK(four.popularity_line == percent("17.5 %"));
    CHECK(printed(four.items[0].share * 100, 2) == "39.56");
    CHECK(printed(four.items[1].share * 100, 2) == "15.63"); // printed there as 15.62
    CHECK(printed(four.items[2].share * 100, 2) == "16.86");
    CHECK(printed(four.items[3].share * 100, 2) == "27.96");
    CHECK(groups(four) == "sells, earns little; earns, sells little; neither; sells and earns");
}

TEST_CASE("ten dishes and 3,000 covers") {
    // Kasavana and Smith's worksheet (1982), from memory
    struct Dish {
        int sold;
        std::string_view cost;
        std::string_view price;
    };
    std::vector<ItemSales> items;
    Money cost;
    Money sales;
    for (Dish const& dish :
         {Dish{210, "4.85", "7.95"}, Dish{420, "2.21", "4.95"}, Dish{90, "1.95", "4.50"},
          Dish{600, "4.95", "7.95"}, Dish{60, "5.65", "9.95"}, Dish{360, "4.50", "8.50"},
          Dish{510, "4.30", "7.95"}, Dish{240, "3.95", "6.95"}, Dish{150, "4.95", "9.50"},
          Dish{360, "4.00", "6.45"}}) {
        items.push_back({dish.sold, money(dish.price) - money(dish.cost)});
        cost += money(dish.cost) * Number(dish.sold);
        sales += money(dish.price) * Number(dish.sold);
    }
    MenuMix const ten = mix(items);
    CHECK(ten.units == 3000);
    CHECK(ten.popularity_line == percent("7 %"));
    CHECK(ten.contribution_line * ten.units == money("9675.30"));
    CHECK(ten.contribution_line == money("3.2251"));
    CHECK(printed(cost / sales * 100, 1) == "56.1");
}

TEST_CASE("at 70 % of an equal share an item sells that an 80 % rule would call slow") {
    // an exercise of twelve items with an 80 % rule: 925 sold for 5,423.75, food 1,579.25; one sells 6.5 %
    std::vector<ItemSales> items(12, {0, (money("5423.75") - money("1579.25")) / Number(925)});
    items[0].units = 60; // 6.49 %
    items[1].units = 865;
    MenuMix const twelve = mix(items);
    CHECK(printed(money("1579.25") / money("5423.75") * 100, 1) == "29.1");
    CHECK(twelve.contribution_line * twelve.units == money("3844.50"));
    CHECK(printed(twelve.contribution_line) == "4.16");
    CHECK(printed(twelve.popularity_line * 100, 2) == "5.83");
    CHECK(printed(twelve.items[0].share * 100, 1) == "6.5");
    CHECK(twelve.items[0].sells);
    CHECK(twelve.items[0].share < Number(8) / 10 / 12);
}
