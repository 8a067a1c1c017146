#include "amounts.hpp"

#include <initializer_list>
#include <stdexcept>
#include <string_view>

using groat::Coins;
using groat::Integer;
using groat::Money;
using groat::Number;
using groat::Rounding;
using groat::Tie;
using groat::to_coins;

namespace {

/// What is paid in cash for an amount that was first rounded to the minor unit.
Coins in_cash(Coins const& total, std::string_view step) {
    return to_coins(total.money(), Rounding{Tie::half_up, figure(step)});
}

} // namespace

TEST_CASE("an invoice taxes each category once and adds up what is paid") {
    // EN 16931 sample invoice ubl-tc434-example2.xml, in NOK; BR-CO-17: one rounding for each category
    Coins const standard = to_coins(money("1460.50", "NOK") * figure("0.25")); // 365.125
    Coins const food = to_coins(money("1.00", "NOK") * figure("0.15"));
    Coins const exempt = to_coins(money("-25.00", "NOK") * 0);
    CHECK(standard == coins("365.13", "NOK"));
    CHECK(standard + food + exempt == coins("365.28", "NOK"));
    Coins const total = coins("1436.50", "NOK") + standard + food + exempt;
    CHECK(total == coins("1801.78", "NOK"));
    CHECK(total - coins("1000.00", "NOK") == coins("801.78", "NOK"));
    CHECK(to_coins(money("365.125", "NOK"), Rounding{Tie::half_even}) == coins("365.12", "NOK"));
}

TEST_CASE("further sample invoices of EN 16931 come out as printed") {
    // example4 (DKK): (1000 x 1.00 + 100 x 5.00) at 25 %, 500 x 5.00 at 12 %
    CHECK(to_coins(money("1500", "DKK") * figure("0.25")) == coins("375.00", "DKK"));
    CHECK(to_coins(money("2500", "DKK") * figure("0.12")) == coins("300.00", "DKK"));
    // example8 (EUR): 908.91 at 21 % is 190.8711
    Coins const tax = to_coins(money("908.91", "EUR") * figure("0.21"));
    CHECK(tax == coins("190.87", "EUR"));
    CHECK(coins("908.91", "EUR") + tax == coins("1099.78", "EUR"));
    // sample-discount-price (100 x 0.1212 at 25 %)
    CHECK(to_coins(money("0.1212", "EUR") * 100) +
              to_coins(money("12.12", "EUR") * figure("0.25")) ==
          coins("15.15", "EUR"));
}

TEST_CASE("VAT inside a price is taken out by its fraction") {
    // practitioner pages that quote HMRC's VAT fractions: rate / (1 + rate)
    struct Row {
        std::string_view gross, rate, tax;
    };
    constexpr Row rows[] = {
        {"60.00", "0.20", "10.00"}, {"24.00", "0.20", "4.00"}, {"120", "0.20", "20"},
        {"80.00", "0.05", "3.81"},  {"105", "0.05", "5.00"},   {"117.50", "0.175", "17.50"},
        {"24.00", "0.175", "3.57"}, {"115", "0.15", "15"},
    };
    for (Row const& row : rows) {
        CAPTURE(row.gross);
        Number const rate = figure(row.rate);
        CHECK(to_coins(money(row.gross, "GBP") * (rate / (1 + rate))) == coins(row.tax, "GBP"));
    }
}

TEST_CASE("sales tax is rounded to the cent before it is added") {
    // OpenStax Contemporary Mathematics m00058, in USD: price, rate, tax, total
    struct Row {
        std::string_view price, rate, tax, total;
    };
    constexpr Row rows[] = {
        {"428.99", "0.0825", "35.39", "464.38"}, // 35.391675; its printed total, 464.87, adds 35.88
        {"34.88", "0.0825", "2.88", "37.76"},
        {"499.00", "0.0881", "43.96", "542.96"},
    };
    for (Row const& row : rows) {
        Coins const tax = to_coins(money(row.price, "USD") * figure(row.rate));
        CHECK(tax == coins(row.tax, "USD"));
        CHECK(coins(row.price, "USD") + tax == coins(row.total, "USD"));
    }
}

TEST_CASE("labour rounded line by line is paid line by line") {
    // Controlling Costs in Foodservice (Goodheart-Willcox 2014), p. 25: 10 min at 10.00, 3 min at 3.50 and
    // 1 min at 8.00 an hour: 1.67 + 0.18 + 0.13 = 1.98 as printed, 1.975 unrounded
    Money const cook = money("10.00", "USD") * 10 / 60;
    Money const server = money("3.50", "USD") * 3 / 60;
    Money const dishwasher = money("8.00", "USD") / 60;
    CHECK(to_coins(cook) + to_coins(server) + to_coins(dishwasher) == coins("1.98", "USD"));
    CHECK(cook + server + dishwasher == money("1.975", "USD"));
}

TEST_CASE("Canada rounds a cash total to five cents by its last digit") {
    // Canada, Budget 2012 (budget.canada.ca/2012/themes/rounding-arrondissement-eng.html)
    struct Row {
        std::string_view total, cash;
    };
    constexpr Row rows[] = {
        {"1.00", "1.00"},     {"1.01", "1.00"},
        {"1.02", "1.00"},     {"1.03", "1.05"},
        {"1.04", "1.05"},     {"1.05", "1.05"},
        {"1.06", "1.05"},     {"1.07", "1.05"},
        {"1.08", "1.10"},     {"1.09", "1.10"},
        {"5.98", "6.00"},     {"5.97", "5.95"}, // Quebec's consumer office (opc.gouv.qc.ca)
        {"772.72", "772.70"}, {"-1.03", "-1.05"},
        {"-1.02", "-1.00"}, // a refund like a sale
    };
    for (Row const& row : rows) {
        CAPTURE(row.total);
        CHECK(in_cash(coins(row.total, "CAD"), "0.05") == coins(row.cash, "CAD"));
    }
}

TEST_CASE("Canada taxes first and rounds only the cash total") {
    // the worked example of Budget 2012: 1.83 + 2.86 at 5 % GST is 4.9245, so 4.92, in cash 4.90
    Money const taxed = (money("1.83", "CAD") + money("2.86", "CAD")) * figure("1.05");
    CHECK(taxed == money("4.9245", "CAD"));
    CHECK(to_coins(taxed) == coins("4.92", "CAD"));
    CHECK(in_cash(to_coins(taxed), "0.05") == coins("4.90", "CAD"));
}

TEST_CASE("cash in Switzerland, Denmark and Sweden goes by the steps of CLDR") {
    // CLDR 41 supplementalData.xml: cashRounding 5 for CHF, 50 for DKK; cashDigits 0 for SEK.
    // The Danish amounts are worked from it, not printed there.
    CHECK(in_cash(coins("7.42", "CHF"), "0.05") == coins("7.40", "CHF"));
    CHECK(in_cash(coins("7.43", "CHF"), "0.05") == coins("7.45", "CHF"));
    CHECK(in_cash(coins("12.24", "DKK"), "0.50") == coins("12.00", "DKK"));
    CHECK(in_cash(coins("12.25", "DKK"), "0.50") == coins("12.50", "DKK"));
    CHECK(in_cash(coins("12.74", "DKK"), "0.50") == coins("12.50", "DKK"));
    CHECK(in_cash(coins("12.75", "DKK"), "0.50") == coins("13.00", "DKK"));
    CHECK(in_cash(coins("99.49", "SEK"), "1") == coins("99", "SEK"));
    CHECK(in_cash(coins("99.50", "SEK"), "1") == coins("100", "SEK"));
    // Hungary rounds cash to 5 forint (from memory, not in CLDR)
    CHECK(in_cash(coins("1002", "HUF"), "5") == coins("1000", "HUF"));
    CHECK(in_cash(coins("1003", "HUF"), "5") == coins("1005", "HUF"));
}

TEST_CASE("coins have as many digits as their currency") {
    CHECK(to_coins(money("1234.5", "JPY")).minor_units() == 1235);
    CHECK(to_coins(money("1.0005", "KWD")).minor_units() == 1001);
    CHECK(to_coins(money("1.00005", "UYW")).minor_units() == 10'001);
    CHECK(to_coins(money("2.5", "USD")).minor_units() == 250);
    CHECK(Coins(1235, currency("JPY")).money() == money("1235", "JPY"));
    CHECK(Coins(1, currency("KWD")).money() == money("0.001", "KWD"));
}

TEST_CASE("every way of rounding reaches the till") {
    Money const owed = money("2.345", "EUR");
    CHECK(to_coins(owed) == coins("2.35", "EUR"));
    CHECK(to_coins(owed, Rounding{Tie::half_even}) == coins("2.34", "EUR"));
    CHECK(to_coins(owed, Rounding{Tie::up}) == coins("2.35", "EUR"));
    CHECK(to_coins(owed, Rounding{Tie::down}) == coins("2.34", "EUR"));
    CHECK(to_coins(-owed) == coins("-2.35", "EUR"));
    CHECK(to_coins(money("2.01", "EUR"), Rounding{Tie::up, figure("0.10")}) ==
          coins("2.10", "EUR"));
}

TEST_CASE("a step that no coin can pay is a mistake of whoever asks for it, whatever the amount") {
    CHECK_THROWS_AS((void)to_coins(money("1.003", "USD"), Rounding{Tie::half_up, figure("0.005")}),
                    std::logic_error);
    CHECK_THROWS_AS((void)to_coins(money("3", "JPY"), Rounding{Tie::half_up, figure("1.5")}),
                    std::logic_error);
    CHECK_THROWS_AS((void)to_coins(money("1", "USD"), Rounding{Tie::half_up, figure("-0.05")}),
                    std::logic_error);
    // also where this amount happens to come out even
    CHECK_THROWS_AS((void)to_coins(money("1.00", "USD"), Rounding{Tie::half_up, figure("0.005")}),
                    std::logic_error);
}

TEST_CASE("coins of two currencies do not add, and no coins are the zero of all") {
    CHECK_THROWS_AS((void)(coins("1", "EUR") + coins("1", "USD")), std::logic_error);
    CHECK_THROWS_AS((void)(coins("1", "EUR") == coins("1", "USD")), std::logic_error);
    CHECK_THROWS_AS((void)(coins("1", "EUR") < coins("1", "USD")), std::logic_error);
    Coins sum;
    CHECK(sum.is_zero());
    sum += coins("1.50", "EUR");
    CHECK(sum == coins("1.50", "EUR"));
    CHECK(sum * 3 == coins("4.50", "EUR"));
    CHECK(-sum == coins("-1.50", "EUR"));
    CHECK(coins("1.49", "EUR") < sum);
}

TEST_CASE("paying is never further off than half a coin, and paying coins changes nothing") {
    Draw draw(12);
    for (int i = 0; i < 1'000; ++i) {
        Money const owed(draw.number(-500, 500), currency("EUR"));
        for (Tie const tie : {Tie::half_up, Tie::half_even}) {
            Coins const paid = to_coins(owed, Rounding{tie});
            Money const off = paid.money() - owed;
            CHECK(off <= money("0.005", "EUR"));
            CHECK(-off <= money("0.005", "EUR"));
            CHECK(to_coins(paid.money(), Rounding{tie}) == paid);
        }
    }
}
