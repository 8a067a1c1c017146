#include "books.hpp"
#include "random_book.hpp"

#include <groat/price/tax.hpp>

using namespace groat;
using namespace groat::test;

namespace {

TaxedAmount taxed(std::string_view amount, std::string_view rate, std::string_view code = "USD") {
    return {coins(amount, code), share_of<TaxRate>(rate)};
}

/// Lines with an adjustment, and a delivery with a rate of its own.
std::vector<TaxClass> tax_classes(std::vector<TaxedAmount> lines, Coins const& adjustment,
                                  std::vector<TaxedAmount> delivery, TaxRule const& rule) {
    return tax_of_document({std::move(lines), {adjustment}, std::move(delivery), rule.rate}, rule)
        .classes;
}

Coins tax_on(std::string_view amount, std::string_view rate, bool is_contained = false) {
    return tax_of(coins(amount), share_of<TaxRate>(rate), is_contained);
}

} // namespace

TEST_CASE("sales tax of a mathematics textbook") {
    // OpenStax Contemporary Mathematics m00058: 428.99 at 8.25 % -> 35.39 (its printed total "428.99 + 35.88 =
    // 464.87" is wrong: 464.38); 34.88 at 8.25 % -> 2.88, 37.76; 499.00 at 8.81 % -> 43.96, 542.96
    CHECK(tax_on("428.99", "8.25 %") == coins("35.39"));
    CHECK(coins("428.99") + tax_on("428.99", "8.25 %") == coins("464.38"));
    CHECK(coins("34.88") + tax_on("34.88", "8.25 %") == coins("37.76"));
    CHECK(coins("499.00") + tax_on("499.00", "8.81 %") == coins("542.96"));
}

TEST_CASE("tax that a price contains") {
    // Same source: 467.64 with 8.25 % contains 35.64. HMRC VAT Notice 700 (from memory), the VAT fraction,
    // with practitioners' worked amounts: 1/6, 1/21, 7/47, 3/23
    CHECK(tax_on("467.64", "8.25 %", true) == coins("35.64"));
    CHECK(tax_on("60.00", "20 %", true) == coins("10.00"));
    CHECK(tax_on("24.00", "20 %", true) == coins("4.00"));
    CHECK(tax_on("120.00", "20 %", true) == coins("20.00"));
    CHECK(tax_on("80.00", "5 %", true) == coins("3.81"));
    CHECK(tax_on("105.00", "5 %", true) == coins("5.00"));
    CHECK(tax_on("117.50", "17.5 %", true) == coins("17.50"));
    CHECK(tax_on("24.00", "17.5 %", true) == coins("3.57"));
    CHECK(tax_on("115.00", "15 %", true) == coins("15.00"));
}

TEST_CASE("half a coin of tax goes up: 365.125 is 365.13, not the 365.12 of half even") {
    // EN 16931 sample ubl-tc434-example2.xml (NOK): 25 % of 1460.50 -> 365.13, 15 % of 1.00 -> 0.15, 0 % of
    // -25.00; in all 1436.50 + 365.28 = 1801.78, less 1000 prepaid 801.78
    TaxRule const rule;
    auto const classes = tax_classes({taxed("1460.50", "25 %", "NOK"), taxed("1.00", "15 %", "NOK"),
                                      taxed("-25.00", "0 %", "NOK")},
                                     coins("0", "NOK"), {}, rule);
    REQUIRE(classes.size() == 3);
    CHECK(classes[0].tax == coins("365.13", "NOK"));
    CHECK(classes[1].tax == coins("0.15", "NOK"));
    CHECK(classes[2].tax.is_zero());
    Coins total;
    for (TaxClass const& each : classes) total += each.base + each.tax;
    CHECK(total == coins("1801.78", "NOK"));
    CHECK(total - coins("1000.00", "NOK") == coins("801.78", "NOK"));
}

TEST_CASE("ten lines at one rate are taxed once: BR-CO-17") {
    // EN 16931 sample ubl-tc434-example8.xml (EUR): lines of 908.91, 21 % of it 190.8711 -> 190.87, 1099.78
    std::vector<TaxedAmount> lines;
    for (std::string_view const amount : {"140.80", "16.16", "167.64", "36.75", "56.50", "88.74",
                                          "83.34", "190.31", "64.21", "64.46"})
        lines.push_back(taxed(amount, "21 %", "EUR"));
    TaxRule rule;
    auto const once = tax_classes(lines, coins("0", "EUR"), {}, rule);
    REQUIRE(once.size() == 1);
    CHECK(once[0].base == coins("908.91", "EUR"));
    CHECK(once[0].tax == coins("190.87", "EUR"));
    CHECK(once[0].base + once[0].tax == coins("1099.78", "EUR"));
    // line by line, worked here: 29.568 3.3936 35.2044 7.7175 11.865 18.6354 17.5014 39.9651 13.4841 13.5366
    // -> 29.57 3.39 35.20 7.72 11.87 18.64 17.50 39.97 13.48 13.54 = 190.88
    rule.is_rounded_per_line = true;
    CHECK(tax_classes(lines, coins("0", "EUR"), {}, rule)[0].tax == coins("190.88", "EUR"));
}

TEST_CASE("a discounted unit price") {
    // EN 16931 sample-discount-price.xml: 12.12 at 25 % -> 3.03, 15.15
    CHECK(coins("12.12") + tax_on("12.12", "25 %") == coins("15.15"));
}

TEST_CASE("classes stand in the order in which their rates first appear") {
    TaxRule const rule;
    auto const classes =
        tax_classes({taxed("10.00", "7 %"), taxed("20.00", "19 %"), taxed("5.00", "7 %")},
                    coins("0"), {}, rule);
    REQUIRE(classes.size() == 2);
    CHECK(classes[0].base == coins("15.00"));
    CHECK(classes[1].base == coins("20.00"));
}

TEST_CASE("a discount belongs to all rates in proportion, to the coin") {
    // 10.00 off 20.00 and 10.00: 6.67 and 3.33 (6.666... has the larger remainder)
    TaxRule const rule;
    auto const classes =
        tax_classes({taxed("20.00", "20 %"), taxed("10.00", "5 %")}, coins("-10.00"), {}, rule);
    CHECK(classes[0].base == coins("13.33"));
    CHECK(classes[1].base == coins("6.67"));
    CHECK(classes[0].tax == coins("2.67")); // 2.666
    CHECK(classes[1].tax == coins("0.33")); // 0.3335
}

TEST_CASE("a surcharge on lines that cost nothing goes to the shop's own rate") {
    TaxRule rule;
    rule.rate = share_of<TaxRate>("5 %");
    auto const classes =
        tax_classes({taxed("0.00", "20 %"), taxed("-3.00", "5 %")}, coins("7.00"), {}, rule);
    CHECK(classes[0].base.is_zero());
    CHECK(classes[1].base == coins("4.00"));
}

TEST_CASE("what comes back draws no part of a surcharge to its rate") {
    // 20.00 at 20 %, 10.00 less 9.00 at 5 %: of 3.00 two thirds and one, as the lines above 0 are
    TaxRule const rule;
    auto const classes =
        tax_classes({taxed("20.00", "20 %"), taxed("10.00", "5 %"), taxed("-9.00", "5 %")},
                    coins("3.00"), {}, rule);
    CHECK(classes[0].base == coins("22.00"));
    CHECK(classes[1].base == coins("2.00"));
}

TEST_CASE("the tax of a rate is divided over its lines, and what is shared takes the rest") {
    // three lines of 0.99 and a delivery of 0.99 that contain 7 %: 3.96 x 7/107 = 0.2591 -> 0.26; each 0.0648
    TaxRule rule;
    rule.is_contained = true;
    std::vector<TaxedAmount> const lines(3, taxed("0.99", "7 %"));
    auto const tax = tax_of_document({lines, {coins("0.99")}, {}, {}}, rule);
    REQUIRE(tax.classes.size() == 1);
    CHECK(tax.classes[0].tax == coins("0.26"));
    CHECK(tax.classes[0].net == coins("3.70"));
    CHECK(tax.of_lines == std::vector{coins("0.07"), coins("0.07"), coins("0.06")});
}

TEST_CASE("one rate that stands for several") {
    // 20.00 at 20 % and 20.00 at 0 %: on top 10 %; contained, 40.00 hold 20.00 / 1.2 + 20.00 net: 1/11 of tax
    TaxedDocument const document{
        {taxed("20.00", "20 %"), taxed("20.00", "0 %"), taxed("-5.00", "50 %")}, {}, {}, {}};
    TaxRule rule;
    CHECK(mean_rate(document, rule).value() == percent("10 %"));
    rule.is_contained = true;
    CHECK(mean_rate(document, rule).value() == number("1/11"));
    CHECK(mean_rate({{}, {}, {}, share_of<TaxRate>("7 %")}, rule) == share_of<TaxRate>("7 %"));
}

TEST_CASE("delivery is taxed at its own rate and bears no part of the discount") {
    TaxRule const rule;
    auto const classes = tax_classes({taxed("20.00", "5 %")}, coins("-2.00"),
                                     {taxed("10.00", "20 %"), taxed("4.00", "5 %")}, rule);
    REQUIRE(classes.size() == 2);
    CHECK(classes[0].base == coins("22.00"));
    CHECK(classes[1].base == coins("10.00"));
}

TEST_CASE("line by line, an adjustment is rounded for itself as well") {
    // 3 x 0.10 at 5 %: 0.005 each -> 0.01 each; -0.10: -0.005 -> -0.01; delivery 0.10 -> 0.01
    TaxRule rule;
    rule.is_rounded_per_line = true;
    std::vector<TaxedAmount> const lines(3, taxed("0.10", "5 %"));
    auto const classes = tax_classes(lines, coins("-0.10"), {taxed("0.10", "5 %")}, rule);
    REQUIRE(classes.size() == 1);
    CHECK(classes[0].base == coins("0.30"));
    CHECK(classes[0].tax == coins("0.03")); // 3 - 1 + 1
    rule.is_rounded_per_line = false;
    CHECK(tax_classes(lines, coins("-0.10"), {taxed("0.10", "5 %")}, rule)[0].tax ==
          coins("0.02")); // 0.015
}

TEST_CASE("whatever is taxed, the bases add up to what is shown and no tax is half a coin off") {
    Draw draw(3);
    for (int i = 0; i < 1000; ++i) {
        CAPTURE(i);
        std::vector<TaxedAmount> lines;
        Coins shown;
        for (std::int64_t count = draw.whole(1, 6); count > 0; --count) {
            lines.push_back({Coins(draw.whole(0, 99999), currency()),
                             share_of<TaxRate>(draw.one_of<std::string>({"0 %", "5 %", "19 %"}))});
            shown += lines.back().amount;
        }
        Coins const adjustment(-(shown.minor_units() / draw.whole(1, 9)), currency());
        std::vector<TaxedAmount> delivery;
        if (draw.chance(50)) delivery.push_back(taxed("12.34", "19 %"));
        TaxRule rule;
        rule.is_contained = draw.chance(50);
        Coins bases;
        for (TaxClass const& each : tax_classes(lines, adjustment, delivery, rule)) {
            bases += each.base;
            Money const exact =
                rule.is_contained ? each.base.money() * each.rate.value() / (1 + each.rate.value())
                                  : each.base.money() * each.rate.value();
            Money const off = each.tax.money() - exact;
            REQUIRE(off <= money("0.005"));
            REQUIRE(off >= money("-0.005"));
            REQUIRE(each.base >= coins("0"));
        }
        REQUIRE(bases == shown + adjustment + (delivery.empty() ? Coins() : delivery[0].amount));
    }
}
