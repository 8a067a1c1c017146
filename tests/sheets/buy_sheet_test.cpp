#include <groat/sheets/buy_sheet.hpp>
#include <groat/sheets/figures.hpp>
#include <groat/sheets/offer_words.hpp>

#include "sheets.hpp"

#include <groat/paper/csv.hpp>
#include <groat/paper/text.hpp>

using namespace groat;
using namespace groat::test;

namespace {

/// Buns of flour and butter; the mill delivers flour only, the farm asks freight for its butter.
struct Corner {
    Book book = a_book();
    Diagnostics found;

    Corner() {
        food(book, "flour");
        food(book, "butter").keeping = {KeepAt::cold, 5};
        offer(book, "flour", "10 kg", "9.99", "the mill").code = "F-10";
        Offer& butter = offer(book, "butter", "1 kg", "8.015", "the farm");
        butter.freight = money("0.333");
        book.suppliers[0].delivery = money("4.00");
        book.suppliers[1].minimum_order = money("10.00");
        formula(book, "bun", {{"flour", "100 g"}, {"butter", "20 g"}}).makes = quantity("1");
        Order& one = order(book);
        one.due = day("2026-12-06");
        wants(one, "bun", 80);
        link_well(book);
    }
    [[nodiscard]] Buying bought() {
        costing.emplace(linked(book), today);
        auto buying = buy(*costing, {&book.orders.front()}, found);
        REQUIRE_MESSAGE(buying.has_value(), in_words(found));
        return *std::move(buying);
    }

private:
    std::optional<Costing> costing;
};

} // namespace

TEST_CASE("the printed amounts of a supplier add up to the printed total") {
    Corner shop;
    Sheet const sheet = buy_sheet(shop.bought(), shop.book);
    Table const& farm = table(sheet, "baskets", "the farm");
    // 2 * 8.015 = 16.03 goods and 2 * 0.333 = 0.666 freight, together 16.696 -> 16.70
    CHECK(shown(farm, "1", "amount") == "16.03");
    CHECK(shown(farm, "freight", "amount") == "0.67");
    CHECK(shown(farm, "total", "amount") == "16.70");
    CHECK(farm.remark == "Minimum order 10.00: the goods come to 16.03.");
    CHECK(find_row(farm, "delivery") == nullptr);
    CHECK(shown(table(sheet, "baskets", "the mill"), "delivery", "amount") == "4.00");
}

TEST_CASE("the sheet says that nothing cheaper exists, or how much cheaper it may be") {
    Corner shop;
    Buying buying = shop.bought();
    CHECK(shown(buy_sheet(buying, shop.book), "purchase", "least") == "no, this is the least");
    buying.bound = buying.total - money("1.001");
    Sheet const sheet = buy_sheet(buying, shop.book);
    // 1.001 of 30.686 is 3.262 %: both are rounded up, never down
    CHECK(shown(sheet, "purchase", "least") == "by at most 1.01 (3.27 %)");
    CHECK(shown(sheet, "purchase", "bound") == "29.68"); // 29.685, half to even
}

TEST_CASE("what will not keep until the order is due is to be bought later") {
    Corner shop;
    Buying const buying = shop.bought();
    Costing const costing(linked(shop.book), today);
    Sheet const sheet = buy_sheet(buying, shop.book, buying_days(costing, buying));
    Table const& days = table(sheet, "days");
    REQUIRE(days.rows.size() == 1);
    CHECK(shown(days, "1", "item") == "Butter");
    CHECK(shown(days, "1", "from") == "2026-12-01"); // it keeps 5 days, and is wanted on the 6th
    CHECK(shown(days, "1", "amount") == "1.6 kg");
    CHECK(shown(days, "1", "until") == "2026-12-06");
    CHECK(section<Table>(buy_sheet(buying, shop.book), "days") == nullptr);
}

TEST_CASE("what is left over is shown with its worth and what of it may spoil") {
    Corner shop;
    Sheet const sheet = buy_sheet(shop.bought(), shop.book);
    Table const& left = table(sheet, "left");
    CHECK(shown(left, "butter", "to_buy") == "1.6 kg");
    CHECK(shown(left, "butter", "left") == "400 g");
    CHECK(shown(left, "butter", "until") == "2026-11-30");
    CHECK(shown(left, "butter", "spoils") == "400 g");
    CHECK(shown(left, "flour", "spoils") == "");
    CHECK(shown(left, "flour", "worth") == "2.00"); // 9.99 * 2 kg / 10 kg = 1.998
}

TEST_CASE("the list for one supplier says nothing of another, nor of what is left over") {
    Corner shop;
    Buying const buying = shop.bought();
    Basket const& mill = buying.baskets.front();
    Sheet const sheet = supplier_order_sheet(mill, buying.date, shop.book);
    CHECK(sheet.audience == "supplier");
    std::string const text = to_text(sheet);
    CHECK(says(text, "Order to the mill"));
    CHECK(says(text, "F-10"));
    CHECK_FALSE(says(text, "farm"));
    CHECK_FALSE(says(text, "utter"));
    CHECK_FALSE(says(text, "left"));
    CHECK(shown(table(sheet, "lines"), "total", "amount") == "9.99");
    CHECK_FALSE(says(to_csv(sheet), "Unit")); // which no words of the shop put right
}

TEST_CASE("a pack that is a bare number is written as the shop writes numbers") {
    Corner shop;
    shop.book.shop.sheets.words = Words("de");
    shop.book.shop.sheets.style = parse_money_style("1.234,56", currency("USD"), {}).value();
    Offer& offer = shop.book.offers.front();
    offer.pack_text = "1000";
    Buying const buying = shop.bought();
    Sheet const order = supplier_order_sheet(buying.baskets.front(), buying.date, shop.book);
    CHECK(shown(table(order, "lines"), "1", "pack") == "Packung mit 1.000");
    CHECK(says(to_text(buy_sheet(buying, shop.book)), "pack of 1.000"));
    CHECK(offer_words(offer, shop.book) == "the mill, pack of 1.000");
    offer.pack_text = "6 x 1000 g"; // as the supplier names it
    CHECK(pack_words(offer, Figures(shop.book.shop)) == "6 x 1000 g");
}

TEST_CASE("cold goods bring the caution of the cold") {
    Corner shop;
    Sheet const sheet = buy_sheet(shop.bought(), shop.book);
    Remarks const* cautions = section<Remarks>(sheet, "cautions");
    REQUIRE(cautions != nullptr);
    CHECK(cautions->lines.size() == 3);
}

TEST_CASE("the printed steps from what was costed add up to what is to be paid") {
    Corner shop;
    Buying const buying = shop.bought();
    Costing const costing(linked(shop.book), today);
    Sheet const sheet = buy_sheet(buying, shop.book, {}, costed_and_paid(costing, buying));
    Table const& costed = table(sheet, "costed");
    // 8 kg of flour at 0.999 and 1.6 kg of butter at 8.348 are 21.3488; 2 kg and 0.4 kg are beyond need
    CHECK(shown(costed, "quotes", "amount") == "21.35");
    CHECK(shown(costed, "left_over", "amount") == "5.34");
    CHECK(shown(costed, "delivery", "amount") == "4.00");
    CHECK(shown(costed, "total", "amount") == "30.69");
    CHECK(find_row(costed, "shelf") == nullptr);
    CHECK(section<Table>(buy_sheet(buying, shop.book), "costed") == nullptr);
}

TEST_CASE("what it takes more today to buy ahead, and what that will be used for") {
    Corner shop;
    Buying buying = shop.bought();
    CHECK(section<Facts>(buy_sheet(buying, shop.book), "ahead") == nullptr);
    BuyingAhead ahead;
    ahead.baskets = buying.baskets;
    ahead.left = {{0, 4000, 3000, money("3.00")}};
    ahead.total = buying.total + money("2.00");
    ahead.worth = money("3.00");
    ahead.bound = ahead.net();
    ahead.least_worth = money("0.50");
    buying.ahead = ahead;
    Sheet const sheet = buy_sheet(buying, shop.book);
    CHECK(shown(sheet, "ahead", "listed_net") == "30.19"); // 30.69 less 0.50
    CHECK(shown(sheet, "ahead", "more") == "2.00");
    CHECK(shown(sheet, "ahead", "net") == "29.69");
    CHECK(says(shown(sheet, "ahead", "least"), "this is the least"));
    CHECK(shown(table(sheet, "ahead_left"), "flour", "used") == "3 kg");
    CHECK(shown(table(sheet, "ahead_left"), "total", "worth") == "3.00");
    CHECK(find_row(table(sheet, "ahead_packs"), "total") != nullptr);
}
