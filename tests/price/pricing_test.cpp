#include "books.hpp"
#include "random_book.hpp"

#include <groat/price/pricing.hpp>

using namespace groat;
using namespace groat::test;

namespace {

/// A cost and nothing else to carry.
Burden bears(std::string_view cost, std::string_view ingredients = "0",
             std::string_view labour = "0") {
    Burden burden;
    burden.cost = money(cost);
    burden.ingredients = money(ingredients);
    burden.prime = money(ingredients) + money(labour);
    burden.variable = burden.cost;
    return burden;
}

Money marked_up(std::string_view cost, std::string_view markup) {
    return price_for(share_of<Markup>(markup), bears(cost)).value();
}
Money at_food_share(std::string_view ingredients, std::string_view share) {
    return price_for(share_of<FoodCostShare>(share), bears(ingredients, ingredients)).value();
}

} // namespace

TEST_CASE("a margin is a share of the price, a markup a share of the cost") {
    CHECK(price_for(share_of<Margin>("70 %"), bears("3.00")).value() == money("10.00"));
    CHECK(marked_up("3.00", "70 %") == money("5.10"));
}

TEST_CASE("markups of a bakery's textbook") {
    // openwa.pressbooks.pub/bakeryandbusinessmath ch. 13: cost 0.35, markup 30 % -> 0.455, printed 0.46;
    // the exercises print no answers. 0.39 + 50 % = 0.585 is 0.59 half up and would be 0.58 half even
    struct Row {
        std::string_view cost, markup, exact, printed;
    };
    constexpr Row rows[] = {
        {"0.35", "30 %", "0.455", "0.46"},  {"0.39", "50 %", "0.585", "0.59"},
        {"0.97", "45 %", "1.4065", "1.41"}, {"2.14", "60 %", "3.424", "3.42"},
        {"0.28", "75 %", "0.49", "0.49"},   {"2.36", "50 %", "3.54", "3.54"},
    };
    for (Row const& row : rows) {
        CAPTURE(row.cost);
        CHECK(marked_up(row.cost, row.markup) == money(row.exact));
        CHECK(printed(money(row.exact)) == row.printed);
    }
    CHECK(decimal(number("0.585"), 2, Tie::half_even) == "0.58");
}

TEST_CASE("markups of a mathematics textbook, forwards and backwards") {
    // OpenStax Contemporary Mathematics m00058, "Discounts, Markups, and Sales Tax". For 26.55 at 125 % it
    // prints steps "1 + 2.25" and "3.25"; its answer 11.80 is 26.55 / 2.25 and right
    struct Row {
        std::string_view cost, markup, price;
    };
    constexpr Row rows[] = {{"62.00", "15 %", "71.30"}, {"750", "45 %", "1087.50"},
                            {"8.85", "20 %", "10.62"},  {"11.80", "125 %", "26.55"},
                            {"1.30", "60 %", "2.08"},   {"480", "75 %", "840"},
                            {"25.00", "18 %", "29.50"}};
    for (Row const& row : rows) {
        CAPTURE(row.cost);
        CHECK(marked_up(row.cost, row.markup) == money(row.price));
        CHECK(earned(money(row.price), bears(row.cost)).markup == percent(row.markup));
    }
}

TEST_CASE("the same profit is 90.38 % of the cost and 47.47 % of the price") {
    // Same source: cost 5.20, retail 9.90, markup 4.70 = 90.38 % (47.4747 % of the price is DERIVED);
    // cost 480, retail 840: 75 %, of the price 42.857143 %
    Earned const wrench = earned(money("9.90"), bears("5.20"));
    CHECK(wrench.profit == money("4.70"));
    CHECK(printed(*wrench.markup * 100, 2) == "90.38");
    CHECK(printed(*wrench.margin * 100, 4) == "47.4747");
    CHECK(printed(*earned(money("840"), bears("480")).margin * 100, 6) == "42.857143");
}

TEST_CASE("margin and markup of one profit give one price") {
    // g = m / (1 + m), m = g / (1 - g)
    struct Row {
        std::string_view margin, markup;
    };
    constexpr Row rows[] = {
        {"10 %", "1/9"},     {"16 2/3 %", "1/5"}, {"20 %", "1/4"}, {"25 %", "1/3"}, {"30 %", "3/7"},
        {"33 1/3 %", "1/2"}, {"37.5 %", "3/5"},   {"40 %", "2/3"}, {"50 %", "1"},   {"60 %", "3/2"},
        {"66 2/3 %", "2"},   {"75 %", "3"},       {"80 %", "4"}};
    for (Row const& row : rows) {
        CAPTURE(row.margin);
        Margin const margin = share_of<Margin>(row.margin);
        Markup const markup = Markup::of(number(row.markup)).value();
        CHECK(to_markup(margin) == markup);
        CHECK(to_margin(markup) == margin);
        CHECK(price_for(margin, bears("7.31")).value() == price_for(markup, bears("7.31")).value());
    }
}

TEST_CASE("the price of which the food is a share") {
    // 173.89 / 200 = 0.86945 at 25 %: 3.4778, printed 3.48 (openwa ch. 11); 36.00 / 24 = 1.50 at 35 %: 4.29,
    // 2.30 x 3 = 6.90 ("FSM2025 Supplement" ch. 17); 6.75 x 35 % = 2.3625, printed 2.36, and 1.60 at 40 % =
    // 4.00 (cookery textbook); 1.70 at 23 %: 7.39 ("Red Seal" practice item)
    CHECK(at_food_share("0.86945", "25 %") == money("3.4778"));
    CHECK(at_food_share("1.50", "35 %") == money("30/7"));
    CHECK(printed(money("30/7")) == "4.29");
    CHECK(at_food_share("2.30", "33 1/3 %") == money("6.90"));
    CHECK(at_food_share("2.3625", "35 %") == money("6.75"));
    CHECK(at_food_share("1.60", "40 %") == money("4.00"));
    CHECK(printed(at_food_share("1.70", "23 %")) == "7.39");
}

TEST_CASE("a pricing factor rounded to one place is not the food cost share") {
    // "FSM2025 Supplement" tables 17.6 and 17.7: factors 2.5, 2.9, 3.3 for 40, 35, 30 %. Rounded: 1.50 x 2.9
    // = 4.35 is not the 4.29 that it prints beside it
    CHECK(at_food_share("1", "40 %") == money("2.5"));
    CHECK(printed(at_food_share("1", "35 %"), 1) == "2.9");
    CHECK(printed(at_food_share("1", "30 %"), 1) == "3.3");
    CHECK(money("1.50") * number("2.9") == money("4.35"));
}

TEST_CASE("what share of a price the food is") {
    // VCC Learning Centre, "Culinary Math", objective 8: 2.13 of 5.95 (no answer printed) = 35.798319 %
    CHECK(printed(*earned(money("5.95"), bears("2.13", "2.13")).food_cost * 100, 6) == "35.798319");
}

TEST_CASE("prime cost of half the price") {
    // Controlling Costs in Foodservice (Goodheart-Willcox 2014) p. 26: food 3.75, labour 2.00 + 20 % = 6.15;
    // at 50 % the price is 12.30. p. 36, 13-14: food 4.00 at 45 % = 8.89; prime 6.40 at 55 % = 11.64
    CHECK(earned(money("12.30"), bears("6.15", "3.75", "2.40")).prime_cost == percent("50 %"));
    CHECK(printed(at_food_share("4.00", "45 %")) == "8.89");
    Burden const meal = bears("6.40", "4.00", "2.40");
    Money const price = price_for(share_of<PrimeCostShare>("55 %"), meal).value();
    CHECK(printed(price) == "11.64");
    CHECK(earned(price, meal).prime_cost == percent("55 %"));
}

TEST_CASE("labour 20 %, the rest 45 % and profit 25 % leave 10 % for food") {
    // Same book, the residual method
    Burden burden = bears("75", "10", "20");
    Money const price = price_for(share_of<Margin>("25 %"), burden).value();
    CHECK(price == money("100"));
    CHECK(earned(price, burden).food_cost == percent("10 %"));
}

TEST_CASE("a percentage fee is grossed up, not added on") {
    // 34.44 net, 2.9 % and 0.30: (34.44 + 0.30) / 0.971 = 35.777549, paid 35.78. Adding the fee on top,
    // 34.44 x 1.029 + 0.30 = 35.74, would leave 34.40
    Burden burden = bears("34.44");
    burden.fee = {share_of<FeeRate>("2.9 %"), money("0.30")};
    Money const price = price_for(Markup(), burden).value();
    CHECK(printed(price, 6) == "35.777549");
    CHECK(earned(price, burden).profit.is_zero());
    CHECK(printed(earned(money("35.78"), burden).profit) == "0.00");
    CHECK(printed(money("35.74") - fee_on(money("35.74"), burden.fee)) == "34.40");
}

TEST_CASE("what is to be left after a share of it is taken") {
    // OpenStax Managerial Accounting m68116: 24,000 after 40 % are 40,000 before. The printed inclusive price
    // 467.64 of 432.00 at 8.25 % (Contemporary Mathematics m00058) is the same algebra
    Burden burden = bears("24000");
    burden.fee.share = share_of<FeeRate>("40 %");
    CHECK(price_for(Markup(), burden).value() == money("40000"));
    CHECK(with_tax(money("432.00"), share_of<TaxRate>("8.25 %")) == money("467.64"));
    CHECK(without_tax(money("467.64"), share_of<TaxRate>("8.25 %")) == money("432.00"));
}

TEST_CASE("a fee is taken of the tax as well") {
    // cost 9.00, margin 40 %, fee 10 % of price and 50 % tax: 1 - 0.4 - 0.1 x 1.5 = 0.45, so 20.00; the fee
    // is 10 % of 30.00
    Burden burden = bears("9.00");
    burden.fee.share = share_of<FeeRate>("10 %");
    burden.tax = share_of<TaxRate>("50 %");
    Money const price = price_for(share_of<Margin>("40 %"), burden).value();
    CHECK(price == money("20.00"));
    CHECK(earned(price, burden).fee == money("3.00"));
    CHECK(earned(price, burden).profit == money("8.00"));
}

TEST_CASE("the fee is a cost: a markup is marked up on it as well") {
    // cost 8.00, markup 25 %, fee 4 % of price and 25 % tax (5 % of the net price) and 0.55 fixed:
    // 1.25 x 8.55 / (1 - 1.25 x 0.05) = 10.6875 / 0.9375 = 11.40; the fee is 0.57 + 0.55 = 1.12, the profit
    // 11.40 - 9.12 = 2.28 = 25 % of 9.12 and 20 % of 11.40
    Burden burden = bears("8.00");
    burden.fee = {share_of<FeeRate>("4 %"), money("0.55")};
    burden.tax = share_of<TaxRate>("25 %");
    Money const price = price_for(share_of<Markup>("25 %"), burden).value();
    CHECK(price == money("11.40"));
    Earned const sold = earned(price, burden);
    CHECK(sold.profit == money("2.28"));
    CHECK(sold.markup == percent("25 %"));
    CHECK(sold.margin == percent("20 %"));
}

TEST_CASE("a markup that the fee outruns is out of reach, and it is said how far one can aim") {
    // a fee of 5 % of the net price: marked up by 1900 % it is the whole price
    Burden burden = bears("3.00");
    burden.fee.share = share_of<FeeRate>("4 %");
    burden.tax = share_of<TaxRate>("25 %");
    auto const refused = price_for(share_of<Markup>("1900 %"), burden);
    REQUIRE(!refused);
    CHECK(refused.error().code == "target-out-of-reach");
    CHECK(
        refused.error().what ==
        "a markup of 1900 % is out of reach at any price: the fee takes 5 % of the net price, and "
        "is a cost to be marked up as well");
    CHECK(refused.error().help == "aim below 1900 %");
    CHECK(price_for(share_of<Markup>("1899 %"), burden).has_value());
}

TEST_CASE("a contribution comes on top of what is variable") {
    // variable 5.00 of a cost of 8.00, 2.00 wanted, 0.35 fixed fee, 2 %: 7.35 / 0.98 = 7.50, below cost
    Burden burden = bears("8.00");
    burden.variable = money("5.00");
    burden.fee = {share_of<FeeRate>("2 %"), money("0.35")};
    Money const price = price_for(Contribution{money("2.00")}, burden).value();
    CHECK(price == money("7.50"));
    CHECK(earned(price, burden).contribution == money("2.00"));
    CHECK(earned(price, burden).profit == money("-1.00"));
}

TEST_CASE(
    "a margin that the fee leaves no room for is out of reach, and it is said how far one can aim") {
    Burden burden = bears("3.00");
    burden.fee.share = share_of<FeeRate>("4 %");
    burden.tax = share_of<TaxRate>("25 %");
    auto const refused = price_for(share_of<Margin>("95 %"), burden);
    REQUIRE(!refused);
    CHECK(refused.error().code == "target-out-of-reach");
    CHECK(refused.error().what ==
          "a margin of 95 % is out of reach at any price: the fee takes 5 % of "
          "the net price, so nothing is left for the cost");
    CHECK(refused.error().help == "aim below 95 %");
    CHECK(price_for(share_of<Margin>("94.9 %"), burden).has_value());
}

TEST_CASE("a fee that takes the whole price is told for markup and contribution") {
    Burden burden = bears("3.00");
    burden.fee.share = share_of<FeeRate>("80 %");
    burden.tax = share_of<TaxRate>("25 %");
    for (auto const& refused : {price_for(share_of<Markup>("10 %"), burden),
                                price_for(Contribution{money("1.00")}, burden)}) {
        REQUIRE(!refused);
        CHECK(refused.error().code == "target-out-of-reach");
        CHECK(says(refused.error().what, "80 % of price and tax leaves nothing"));
    }
    CHECK(price_for(share_of<FoodCostShare>("30 %"), burden).has_value());
}

TEST_CASE("given away, a thing has no margin and no food cost; free to make, it has no markup") {
    Earned const gift = earned(money("0"), bears("3.00", "1.00"));
    CHECK(!gift.margin);
    CHECK(!gift.food_cost);
    CHECK(!gift.prime_cost);
    CHECK(gift.markup == Number(-1));
    CHECK(!earned(money("5.00"), bears("0")).markup);
}

TEST_CASE("whatever is to be carried, a price solved for a target returns that target exactly") {
    Draw draw(7);
    auto const amount = [&] {
        return Money{Number(draw.whole(1, 99999)) / draw.whole(1, 999), currency()};
    };
    for (int i = 0; i < 2000; ++i) {
        CAPTURE(i);
        Burden burden;
        burden.ingredients = amount();
        burden.prime = burden.ingredients + amount();
        burden.variable = burden.prime + amount();
        burden.cost = burden.variable + amount();
        burden.fee = {share_of<FeeRate>(draw.share(0, 15)), amount()};
        burden.tax = share_of<TaxRate>(draw.share(0, 100));
        Money const some_price = amount(); // of a price that nobody solved as well
        Earned const some = earned(some_price, burden);
        REQUIRE(*some.margin == *some.markup / (1 + *some.markup));
        Margin const margin = share_of<Margin>(draw.share(0, 69)); // 0.69 + 0.15 x 2 < 1
        REQUIRE(earned(price_for(margin, burden).value(), burden).margin == margin.value());
        Markup const markup = share_of<Markup>(draw.share(0, 200)); // 3 x 0.15 x 2 < 1
        REQUIRE(earned(price_for(markup, burden).value(), burden).markup == markup.value());
        FoodCostShare const food = share_of<FoodCostShare>(draw.share(1, 100));
        REQUIRE(earned(price_for(food, burden).value(), burden).food_cost == food.value());
        PrimeCostShare const prime = share_of<PrimeCostShare>(draw.share(1, 100));
        REQUIRE(earned(price_for(prime, burden).value(), burden).prime_cost == prime.value());
        Contribution const contribution{amount()};
        REQUIRE(earned(price_for(contribution, burden).value(), burden).contribution ==
                contribution.amount);
    }
}
