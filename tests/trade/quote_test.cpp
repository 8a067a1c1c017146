#include "books.hpp"
#include "random_book.hpp"

#include <groat/trade/quote.hpp>

using namespace groat;
using namespace groat::test;

namespace {

/// A quote, with what it points into and what was found.
struct Quoted {
    std::unique_ptr<Costing> costing;
    std::optional<Quote> quote;
    Diagnostics found;
};
Quoted try_quote(Book const& book) {
    Quoted result;
    result.costing = std::make_unique<Costing>(book, today);
    result.quote = quote(*result.costing, book.orders.front(), result.found);
    return result;
}
Quote quoted(Book& book) {
    link_well(book);
    Quoted result = try_quote(book);
    REQUIRE_MESSAGE(result.quote.has_value(), in_words(result.found));
    return *result.quote; // its pointers into the costing are not used by these tests
}
QuoteTotals totals(Book& book) { return quoted(book).totals; }

std::optional<Diagnostic> told(Book& book, std::string_view code) {
    link_well(book);
    return finding(try_quote(book).found, code);
}

/// Things at given prices, costing nothing, and an order for so many of each.
struct Priced {
    std::string_view item, price;
    Integer count;
    std::string_view tax = "";
};
Book priced_book(std::initializer_list<Priced> things, std::string_view code = "USD") {
    Book book = a_book(code);
    food(book, "stuff", "1 kg", "0");
    order(book);
    for (Priced const& each : things) {
        Formula& made = formula(book, each.item, {{"stuff", "1 g"}});
        made.makes = quantity("1");
        made.price = at_price(each.price, code);
        made.tax = named(each.tax);
        wants(book.orders[0], each.item, each.count);
    }
    return book;
}

/// Ten pieces of 1.00 each to the batch.
Book cost_book() {
    Book book = a_book();
    food(book, "flour", "1 kg", "10.00");
    formula(book, "cookie", {{"flour", "1 kg"}}).makes = quantity("10");
    book.shop.price = at_margin("50 %");
    wants(order(book), "cookie", 20);
    return book;
}

} // namespace

// Invoices of others ----------------------------------------------------------------------------------------

TEST_CASE("an invoice of three lines at two rates") {
    // EN 16931 sample ubl-tc434-example4.xml (DKK): 1000 x 1.00 and 100 x 5.00 at 25 %, 500 cookies x 5.00 at
    // 12 %: 4000 + 375 + 300 = 4675
    Book book = priced_book(
        {{"paper", "1.00", 1000}, {"pens", "5.00", 100}, {"American cookies", "5.00", 500, "food"}},
        "DKK");
    book.shop.tax.rate = share_of<TaxRate>("25 %");
    book.shop.tax.other_rates.push_back({"food", share_of<TaxRate>("12 %")});
    QuoteTotals const invoice = totals(book);
    CHECK(invoice.subtotal == coins("4000.00", "DKK"));
    REQUIRE(invoice.taxes.size() == 2);
    CHECK(invoice.taxes[0].tax == coins("375.00", "DKK"));
    CHECK(invoice.taxes[1].tax == coins("300.00", "DKK"));
    CHECK(invoice.total == coins("4675.00", "DKK"));

    // ubl-tc434-example5.xml: the same with an allowance of 150 and a charge of 150, half prepaid: due 2337.50
    book.orders[0].rush = money("150.00", "DKK");
    book.orders[0].discount = money("150.00", "DKK");
    book.orders[0].deposit = share_of<Share>("50 %");
    QuoteTotals const half_paid = totals(book);
    CHECK(half_paid.total == coins("4675.00", "DKK"));
    CHECK(half_paid.balance == coins("2337.50", "DKK"));
}

TEST_CASE("a bill paid in cash is rounded after tax, to the nickel") {
    // Canada, Budget 2012, "Eliminating the penny": 1.83 + 2.86, GST 5 % -> 4.92 (4.9245), cash 4.90
    Book book = priced_book({{"coffee", "1.83", 1}, {"sandwich", "2.86", 1}}, "CAD");
    book.shop.tax.rate = share_of<TaxRate>("5 %");
    book.shop.cash_rounding = money("0.05", "CAD");
    QuoteTotals const bill = totals(book);
    CHECK(bill.tax == coins("0.23", "CAD"));
    CHECK(bill.total == coins("4.92", "CAD"));
    CHECK(bill.cash == coins("4.90", "CAD"));
}

TEST_CASE("cents ending in 1, 2, 6, 7 go down in cash, 3, 4, 8, 9 up") {
    // Same source; 1.01 to 1.09 and 772.72 -> 772.70 (CTV, after the CRA guideline); 5.98 -> 6.00 and 5.97 ->
    // 5.95 (Office de la protection du consommateur). CLDR 41: Danish cash goes by 0.50, half up: 12.24 ->
    // 12.00, 12.25 -> 12.50, 12.74 -> 12.50, 12.75 -> 13.00 (DERIVED)
    struct Row {
        std::string_view code, step, total, cash;
    };
    constexpr Row rows[] = {
        {"CAD", "0.05", "1.01", "1.00"},     {"CAD", "0.05", "1.02", "1.00"},
        {"CAD", "0.05", "1.03", "1.05"},     {"CAD", "0.05", "1.04", "1.05"},
        {"CAD", "0.05", "1.05", "1.05"},     {"CAD", "0.05", "1.06", "1.05"},
        {"CAD", "0.05", "1.07", "1.05"},     {"CAD", "0.05", "1.08", "1.10"},
        {"CAD", "0.05", "1.09", "1.10"},     {"CAD", "0.05", "1.10", "1.10"},
        {"CAD", "0.05", "772.72", "772.70"}, {"CAD", "0.05", "5.98", "6.00"},
        {"CAD", "0.05", "5.97", "5.95"},     {"DKK", "0.50", "12.24", "12.00"},
        {"DKK", "0.50", "12.25", "12.50"},   {"DKK", "0.50", "12.74", "12.50"},
        {"DKK", "0.50", "12.75", "13.00"},
    };
    for (Row const& row : rows) {
        CAPTURE(row.total);
        Book book = priced_book({{"it", row.total, 1}}, row.code);
        book.shop.cash_rounding = money(row.step, row.code);
        QuoteTotals const bill = totals(book);
        CHECK(bill.total == coins(row.total, row.code));
        CHECK(bill.cash == coins(row.cash, row.code));
    }
}

TEST_CASE("discounts of a mathematics textbook") {
    // OpenStax Contemporary Mathematics m00058: 75.80 - 25 % = 56.85; 168.90 - 30 % = 118.23; 450 is 500 less
    // 10 %; 90 is 360 less 75 %
    struct Row {
        std::string_view price, discount, left;
    };
    constexpr Row rows[] = {{"75.80", "25 %", "56.85"},
                            {"168.90", "30 %", "118.23"},
                            {"500", "10 %", "450.00"},
                            {"360", "75 %", "90.00"}};
    for (Row const& row : rows) {
        CAPTURE(row.price);
        Book book = priced_book({{"it", row.price, 1}});
        book.orders[0].discount = share_of<Surcharge>(row.discount);
        CHECK(totals(book).total == coins(row.left));
    }
}

TEST_CASE("prices that contain the tax") {
    // OpenStax Contemporary Mathematics m00058: 467.64 with 8.25 % is 432.00 and 35.64
    Book book = priced_book({{"it", "467.64", 1}});
    book.shop.tax.rate = share_of<TaxRate>("8.25 %");
    book.shop.tax.is_contained = true;
    QuoteTotals const bill = totals(book);
    CHECK(bill.total == coins("467.64"));
    CHECK(bill.net == coins("432.00"));
    CHECK(bill.tax == coins("35.64"));
    CHECK(bill.revenue == money("432.00"));
}

// The lines of a quote --------------------------------------------------------------------------------------

TEST_CASE("from the subtotal to the balance, line by line") {
    // 20 x 2.00 = 40.00; minimum 60.00: + 20.00; rush 10 % of 60.00: 6.00; discount 5 % of 66.00: 3.30; a
    // drive at 12.00; 74.70; tax 8 %: 5.976 -> 5.98; 80.68; deposit 30 %: 24.204 -> 24.20; balance 56.48
    Book book = cost_book();
    book.shop.minimum_order = money("60.00");
    book.shop.rush = RushRule{Days(3), share_of<Surcharge>("10 %")};
    book.shop.tax.rate = share_of<TaxRate>("8 %");
    book.shop.deposit = share_of<Share>("30 %");
    Order& wanted = book.orders[0];
    wanted.due = today + Days(3);
    wanted.discount = share_of<Surcharge>("5 %");
    wanted.delivery = Delivery{quantity("0 km"), DeliveryCharge::amount, money("12.00")};
    QuoteTotals const sums = totals(book);
    CHECK(sums.subtotal == coins("40.00"));
    CHECK(sums.to_minimum == coins("20.00"));
    CHECK(sums.rush == coins("6.00"));
    CHECK(sums.discount == coins("3.30"));
    CHECK(sums.delivery == coins("12.00"));
    CHECK(sums.shown == coins("74.70"));
    CHECK(sums.tax == coins("5.98"));
    CHECK(sums.net == coins("74.70"));
    CHECK(sums.total == coins("80.68"));
    CHECK(sums.deposit == coins("24.20"));
    CHECK(sums.balance == coins("56.48"));
    CHECK(sums.revenue == money("74.70"));
    CHECK(sums.profit == money("54.70"));
}

TEST_CASE("an order at its minimum is not raised") {
    Book book = cost_book();
    book.shop.minimum_order = money("40.00");
    CHECK(totals(book).to_minimum.is_zero());
    book.shop.minimum_order = money("40.01");
    CHECK(totals(book).to_minimum == coins("0.01"));
}

TEST_CASE("a rush is counted in days from the order to the day it is wanted") {
    struct Row {
        std::optional<Days> due;
        std::string_view surcharge;
    };
    Row const rows[] = {{Days(0), "6.00"}, {Days(3), "6.00"}, {Days(4), "0.00"}, {{}, "0.00"}};
    for (Row const& row : rows) {
        Book book = cost_book();
        book.shop.rush = RushRule{Days(3), share_of<Surcharge>("15 %")};
        if (row.due) book.orders[0].due = today + *row.due;
        CHECK(totals(book).rush == coins(row.surcharge));
    }
}

TEST_CASE("an order can set its own rush, an amount or none") {
    Book book = cost_book();
    book.shop.rush = RushRule{Days(3), share_of<Surcharge>("15 %")};
    book.orders[0].due = today;
    book.orders[0].rush = share_of<Surcharge>("10 %");
    CHECK(totals(book).rush == coins("4.00"));
    book.orders[0].rush = money("7.50");
    CHECK(totals(book).rush == coins("7.50"));
    book.orders[0].rush = Surcharge();
    CHECK(totals(book).rush.is_zero());
}

TEST_CASE("a discount of everything is a gift, of more than that a mistake") {
    Book book = cost_book();
    book.orders[0].discount = money("40.00");
    CHECK(totals(book).total.is_zero());
    book.orders[0].discount = money("40.01");
    auto const error = told(book, "discount-too-large");
    REQUIRE(error.has_value());
    CHECK(error->what == "a discount of 40.01 is more than the order's 40.00");
}

TEST_CASE("nobody keeps a fee of nothing") {
    Book book = cost_book();
    fee(book, "card", "2.9 %", "0.30");
    book.shop.paid_by = named("card");
    book.orders[0].discount = share_of<Surcharge>("100 %");
    QuoteTotals const gift = totals(book);
    CHECK(gift.fee.is_zero());
    CHECK(gift.profit == money("-20.00"));
    CHECK(!gift.margin);
}

TEST_CASE("a quote holds for the days of the order, else of the shop, from the order's date") {
    Book book = cost_book();
    CHECK(!quoted(book).valid_until);
    book.shop.valid = Days(14);
    CHECK(quoted(book).valid_until == day("2026-12-09"));
    book.orders[0].valid = Days(7);
    CHECK(quoted(book).valid_until == day("2026-12-02"));
}

TEST_CASE("a drive at cost is paid on its own line, with the fee that is taken of it") {
    // 12.20 / (1 - 2.9 % x 1.25) = 12.6586..., up to 12.66; it is taxed at the shop's rate
    Book book = cost_book();
    book.shop.delivery_flat = money("5.00");
    book.shop.delivery_rate = rate("0.60", "km");
    book.shop.tax.rate = share_of<TaxRate>("25 %");
    fee(book, "card", "2.9 %", "0.00");
    book.shop.paid_by = named("card");
    book.orders[0].delivery = Delivery{quantity("12 km"), DeliveryCharge::at_cost, {}};
    QuoteTotals const sums = totals(book);
    CHECK(sums.delivery == coins("12.66"));
    CHECK(sums.cost == money("32.20"));
    // where prices contain the tax, so does the drive: 12.6586 x 1.25 = 15.823...
    book.shop.tax.is_contained = true;
    CHECK(totals(book).delivery == coins("15.83"));
}

TEST_CASE("a drive in the prices is on no line and raises them") {
    // 20.00 + 5.00 for 20 cookies: 1.25 each, at 50 % 2.50
    Book book = cost_book();
    book.shop.delivery_flat = money("5.00");
    book.orders[0].delivery = Delivery();
    Quote const offer = quoted(book);
    CHECK(offer.totals.delivery.is_zero());
    CHECK(offer.lines[0].price == coins("2.50"));
}

TEST_CASE("fixed fees are paid once and shared by the lines' costs") {
    // lines of 20.00 and 60.00 bear a quarter and three quarters of 0.80, spread over 20 and 60 pieces
    Book book = cost_book();
    formula(book, "biscuit", {{"flour", "1 kg"}}).makes = quantity("10");
    wants(book.orders[0], "biscuit", 60);
    fee(book, "card", "0 %", "0.80");
    book.shop.paid_by = named("card");
    Quote const offer = quoted(book);
    CHECK(offer.lines[0].burden.fee.fixed == money("0.01"));
    CHECK(offer.lines[1].burden.fee.fixed == money("0.01"));
    CHECK(offer.lines[0].wanted == money("2.02"));
    CHECK(offer.totals.fee == money("0.80"));
    CHECK(offer.paid_by == "card");
    book.orders[0].paid_by = named("none");
    CHECK(quoted(book).lines[0].wanted == money("2.00"));
    CHECK(!quoted(book).paid_by);
}

// Tax -------------------------------------------------------------------------------------------------------

TEST_CASE("two rates share a discount in proportion to what they tax") {
    // 20.00 at 20 % and 10.00 at 5 %, 10.00 off: 13.33 and 6.67, tax 2.67 and 0.33; a drive of 4.00 is taxed
    // with the shop's rate: 17.33 x 20 % = 3.466 -> 3.47
    Book book = priced_book({{"tool", "20.00", 1}, {"bread", "10.00", 1, "reduced"}});
    book.shop.tax.rate = share_of<TaxRate>("20 %");
    book.shop.tax.other_rates.push_back({"reduced", share_of<TaxRate>("5 %")});
    book.orders[0].discount = money("10.00");
    QuoteTotals const bill = totals(book);
    REQUIRE(bill.taxes.size() == 2);
    CHECK(bill.taxes[0].base == coins("13.33"));
    CHECK(bill.taxes[1].base == coins("6.67"));
    CHECK(bill.tax == coins("3.00"));
    CHECK(bill.total == coins("23.00"));
    book.orders[0].delivery = Delivery{quantity("0 km"), DeliveryCharge::amount, money("4.00")};
    CHECK(totals(book).taxes[0].tax == coins("3.47"));
}

TEST_CASE("a rate for the whole order goes before the items' and the drive's") {
    Book book = priced_book({{"tool", "20.00", 1}, {"bread", "10.00", 1, "reduced"}});
    book.shop.tax.rate = share_of<TaxRate>("20 %");
    book.shop.tax.other_rates.push_back({"reduced", share_of<TaxRate>("5 %")});
    book.orders[0].delivery = Delivery{quantity("0 km"), DeliveryCharge::amount, money("10.00")};
    book.orders[0].tax = named("none");
    CHECK(totals(book).tax.is_zero());
    book.orders[0].tax = named("reduced");
    CHECK(totals(book).tax == coins("2.00"));
}

TEST_CASE("an item may be free of tax") {
    Book book = priced_book({{"tool", "20.00", 1}, {"bread", "10.00", 1, "none"}});
    book.shop.tax.rate = share_of<TaxRate>("20 %");
    CHECK(totals(book).tax == coins("4.00"));
}

TEST_CASE("tax per line or per document differ by the coins that rounding leaves") {
    // 3 lines of 0.10 at 5 %: 0.005 each
    Book book = priced_book({{"a", "0.10", 1}, {"b", "0.10", 1}, {"c", "0.10", 1}});
    book.shop.tax.rate = share_of<TaxRate>("5 %");
    CHECK(totals(book).tax == coins("0.02")); // 0.015
    book.shop.tax.is_rounded_per_line = true;
    CHECK(totals(book).tax == coins("0.03"));
}

// What is told ----------------------------------------------------------------------------------------------

TEST_CASE("an item without a target is told, and so is every other one") {
    Book book = cost_book();
    book.shop.price = {};
    formula(book, "biscuit", {{"flour", "1 kg"}}).makes = quantity("10");
    wants(book.orders[0], "biscuit", 1);
    link_well(book);
    Quoted const result = try_quote(book);
    CHECK(!result.quote);
    CHECK(result.found.errors() == 2);
    CHECK(says(in_words(result.found), "nothing says what the price of 'biscuit' is to reach"));
}

TEST_CASE("a margin that the fee leaves no room for is told with the item") {
    Book book = cost_book();
    book.shop.price = at_margin("98 %");
    fee(book, "card", "2.9 %", "0.30");
    book.shop.paid_by = named("card");
    auto const error = told(book, "target-out-of-reach");
    REQUIRE(error.has_value());
    CHECK(says(error->what, "'cookie': a margin of 98 % is out of reach at any price"));
}

TEST_CASE("what is made by mass is not sold by the piece") {
    Book book = cost_book();
    formula(book, "curd", {{"flour", "1 kg"}});
    wants(book.orders[0], "curd", 1);
    CHECK(told(book, "no-sale-unit"));
}

TEST_CASE("a line that loses money is warned of and quoted all the same") {
    Book book = cost_book();
    book.orders[0].lines[0].price = at_price("0.90");
    auto const warning = told(book, "below-cost");
    REQUIRE(warning.has_value());
    CHECK(warning->severity == Severity::warning);
    CHECK(warning->what == "'cookie' at 0.90 loses 0.10 each");
    CHECK(totals(book).profit == money("-2.00"));
}

TEST_CASE("a price that nobody has asked for in sixty days is stale") {
    Book book = cost_book();
    book.shop.stale_after = Days(60);
    book.offers[0].from = today - Days(60);
    CHECK(!told(book, "stale-price"));
    book.offers[0].from = today - Days(61);
    auto const warning = told(book, "stale-price");
    REQUIRE(warning.has_value());
    CHECK(warning->what == "the price of 'flour' is 61 days old");
    book.shop.stale_after.reset();
    CHECK(!told(book, "stale-price"));
}

// Quantity breaks -------------------------------------------------------------------------------------------

TEST_CASE("each break is the whole order costed anew, so that set-up is spread") {
    // 6.00 once and 1.00 each, at 50 %: for 1, 4, 10 and 20 of them 14.00, 5.00, 3.20, 2.60
    Book book = cost_book();
    role(book, "baker", "12.00");
    book.formulas[0].labour.push_back(task("weigh", "baker", "30", Per::order));
    book.orders[0].quantity_breaks = {1, 4, 10, 20};
    Quote const offer = quoted(book);
    REQUIRE(offer.breaks.size() == 4);
    CHECK(offer.breaks[0].price == coins("14.00"));
    CHECK(offer.breaks[1].price == coins("5.00"));
    CHECK(offer.breaks[2].price == coins("3.20"));
    CHECK(offer.breaks[3].price == coins("2.60"));
    CHECK(offer.breaks[3].price == offer.lines[0].price);
    CHECK(offer.breaks[2].cost == money("1.60"));
}

TEST_CASE("a break of one item leaves the others as ordered") {
    // the biscuit's 30 pieces share a drive of 8.00: with 10 cookies 10.00 to 30.00, a quarter
    Book book = cost_book();
    formula(book, "biscuit", {{"flour", "1 kg"}}).makes = quantity("10");
    wants(book.orders[0], "biscuit", 30);
    book.shop.delivery_flat = money("8.00");
    book.orders[0].delivery = Delivery();
    book.orders[0].quantity_breaks = {10};
    Quote const offer = quoted(book);
    REQUIRE(offer.breaks.size() == 2);
    CHECK(offer.breaks[0].line == 0);
    CHECK(offer.breaks[0].cost == money("1.20")); // 12.00 / 10
    CHECK(offer.breaks[1].line == 1);
    CHECK(offer.breaks[1].cost ==
          money("1.00") + money("8.00") / 30); // 10 to 20: a third of 8.00 on 10
}

TEST_CASE("more that cost more each are warned of") {
    // whole batches of ten: ten cost 1.00 each, eleven take two batches, 20.00 / 11
    Book book = cost_book();
    book.formulas[0].batch_step = 1;
    book.orders[0].quantity_breaks = {10, 11, 20};
    auto const warning = told(book, "break-dearer");
    REQUIRE(warning.has_value());
    CHECK(warning->what == "11 of 'cookie' cost more each than 10 do: 3.64 against 2.00");
}

TEST_CASE("breaks that get cheaper or stay as they are give no warning") {
    Book book = cost_book();
    book.formulas[0].batch_step = 1;
    book.orders[0].quantity_breaks = {5, 10, 20, 30};
    CHECK(!told(book, "break-dearer"));
}

TEST_CASE("breaks written from large to small are warned of in the same way") {
    Book book = cost_book();
    book.formulas[0].batch_step = 1;
    book.orders[0].quantity_breaks = {11, 10};
    CHECK(told(book, "break-dearer"));
}

TEST_CASE("every break that is dearer than a smaller one is told") {
    // 10: 2.00; 11: 3.64; 20: 2.00; 21: 30.00 / 21 x 2 = 2.86
    Book book = cost_book();
    book.formulas[0].batch_step = 1;
    book.orders[0].quantity_breaks = {10, 11, 20, 21};
    link_well(book);
    CHECK(try_quote(book).found.warnings() == 2);
}

// Laws ------------------------------------------------------------------------------------------------------

TEST_CASE("any order can be quoted") {
    for_random_books(200, [](Book const& book) {
        Quoted const result = try_quote(book);
        REQUIRE_MESSAGE(result.quote.has_value(), in_words(result.found));
        REQUIRE(result.quote->lines.size() == book.orders[0].lines.size());
    });
}

TEST_CASE("in any quote a solved price, put back unrounded, returns its target exactly") {
    for_random_books(300, {true, true, false}, [](Book const& book) {
        Quoted const result = try_quote(book);
        REQUIRE(result.quote.has_value());
        for (QuoteLine const& line : result.quote->lines) {
            REQUIRE(line.wanted.has_value());
            Earned const back = earned(*line.wanted, line.burden);
            if (auto const* margin = std::get_if<Margin>(&line.target)) {
                REQUIRE((line.wanted->is_zero() || back.margin == margin->value()));
            } else if (auto const* markup = std::get_if<Markup>(&line.target)) {
                REQUIRE((line.burden.cost.is_zero() || back.markup == markup->value()));
            } else if (auto const* food = std::get_if<FoodCostShare>(&line.target)) {
                REQUIRE((line.wanted->is_zero() || back.food_cost == food->value()));
            } else {
                REQUIRE(back.contribution == std::get<Contribution>(line.target).amount);
            }
        }
    });
}

TEST_CASE("in any quote whose prices go up to their points, no line earns less than its target") {
    for_random_books(200, {true, true, false}, [](Book const& book) {
        Quoted const result = try_quote(book);
        REQUIRE(result.quote.has_value());
        for (QuoteLine const& line : result.quote->lines) {
            if (line.net_price < *line.wanted) continue; // to the nearest
            Earned const wanted = earned(*line.wanted, line.burden);
            REQUIRE(line.earned.profit >= wanted.profit);
            REQUIRE(line.earned.contribution >= wanted.contribution);
        }
    });
}

TEST_CASE("in any quote the sums add up, down to the coin") {
    for_random_books(200, [](Book const& book) {
        Quoted const result = try_quote(book);
        REQUIRE(result.quote.has_value());
        Quote const& offer = *result.quote;
        QuoteTotals const& sums = offer.totals;
        Coins lines(0, book.shop.currency);
        Money fixed;
        for (QuoteLine const& line : offer.lines) {
            REQUIRE(line.amount == line.price * line.count.numerator());
            lines += line.amount;
            fixed += line.burden.fee.fixed * line.count;
            REQUIRE(line.burden.cost + line.earned.fee + line.earned.profit == line.net_price);
        }
        REQUIRE(lines == sums.subtotal);
        if (sums.fee.amount().is_positive() && offer.paid_by)
            REQUIRE(fixed == book.shop.fees[0].fixed); // shared without rest
        REQUIRE(sums.shown ==
                sums.subtotal + sums.to_minimum + sums.rush - sums.discount + sums.delivery);
        Coins bases(0, book.shop.currency);
        Coins taxes(0, book.shop.currency);
        for (TaxClass const& each : sums.taxes) {
            bases += each.base;
            taxes += each.tax;
        }
        REQUIRE(bases == sums.shown);
        REQUIRE(taxes == sums.tax);
        REQUIRE(sums.net + sums.tax == sums.total);
        REQUIRE(sums.total == (book.shop.tax.is_contained ? sums.shown : sums.shown + sums.tax));
        REQUIRE(sums.deposit + sums.balance == sums.total);
        REQUIRE(sums.revenue - sums.fee - sums.cost == sums.profit);
        REQUIRE(sums.cost == offer.cost.all());
        if (book.shop.minimum_order)
            REQUIRE(sums.subtotal + sums.to_minimum >= to_coins(*book.shop.minimum_order));
    });
}

TEST_CASE("in any quote a break at the ordered count is the price of the line") {
    for_random_books(200, [](Book const& book) {
        Book with_breaks = book;
        for (OrderLine const& line : book.orders[0].lines)
            with_breaks.orders[0].quantity_breaks.push_back(line.count);
        Quoted const result = try_quote(with_breaks);
        REQUIRE(result.quote.has_value());
        std::size_t const lines = book.orders[0].lines.size();
        for (std::size_t i = 0; i < lines; ++i) {
            REQUIRE(result.quote->breaks[i * lines + i].price == result.quote->lines[i].price);
            REQUIRE(result.quote->breaks[i * lines + i].cost == result.quote->lines[i].burden.cost);
        }
    });
}

TEST_CASE("what was found before still stands in the way of a quote") {
    Book book = cost_book();
    food(book, "saffron");
    book.formulas.front().lines.push_back(line({"saffron", "1 g"}));
    book.shop.price = at_margin("40 %");
    link_well(book);
    Costing const costing(book, today);
    Diagnostics found = costing.findings();
    REQUIRE(finding(found, "missing-price"));
    CHECK_FALSE(quote(costing, book.orders.front(), found).has_value());
    CHECK(found.errors() == 1);
}
