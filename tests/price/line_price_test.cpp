#include "books.hpp"

#include <groat/price/line_price.hpp>
#include <groat/price/tax.hpp>

using namespace groat;
using namespace groat::test;

namespace {

/// Ten pieces for 20.00 of ingredients, in boxes of five.
Book box_book() {
    Book book = a_book();
    food(book, "plum", "1 kg", "20.00");
    Formula& bar = formula(book, "bar", {{"plum", "1 kg"}});
    bar.makes = quantity("10");
    sold_as(bar, "box of 5", "5");
    book.shop.price = at_margin("50 %");
    link_well(book);
    return book;
}

struct PricedLine {
    std::optional<QuoteLine> line;
    Diagnostics found;
};
PricedLine priced(Book const& book, Number const& count, FeeTerms const& fee = {},
                  TaxRate const& tax = {}) {
    PricedLine result;
    Costing const costing(linked(book), today);
    Sale const what = sale(book, "bar", count, "box of 5");
    OrderCost const cost = costing.cost({{what}, Wholes::none, {}});
    result.line =
        quoting_detail::Pricer(costing, result.found)
            .price_line(cost.lines.front(),
                        quoting_detail::policy_of(book.shop, book.formulas[0], what.unit, nullptr),
                        {}, fee, tax);
    return result;
}

} // namespace

TEST_CASE("a line is priced by the sale unit") {
    Book const book = box_book();
    QuoteLine const line = *priced(book, 4).line;
    CHECK(line.title(book) == "bar, box of 5");
    CHECK(line.burden.cost == money("10.00"));
    CHECK(line.pieces == 20);
    CHECK(line.wanted == money("20.00"));
    CHECK(line.price == coins("20.00"));
    CHECK(line.amount == coins("80.00"));
    CHECK(line.earned.margin == percent("50 %"));
}

TEST_CASE("the target nearest to the line rules: order line, sale unit, formula, shop") {
    Book book = box_book();
    PricePolicy const on_line = at_margin("10 %");
    Formula& bar = book.formulas[0];
    SaleUnit& unit = bar.sold_as[0];
    auto const ruling = [&](PricePolicy const* line) {
        return std::get<Margin>(*quoting_detail::policy_of(book.shop, bar, &unit, line).target);
    };
    CHECK(ruling(nullptr) == share_of<Margin>("50 %"));
    bar.price = at_margin("40 %");
    CHECK(ruling(nullptr) == share_of<Margin>("40 %"));
    unit.price = at_margin("30 %");
    CHECK(ruling(nullptr) == share_of<Margin>("30 %"));
    CHECK(ruling(&on_line) == share_of<Margin>("10 %"));
}

TEST_CASE("target and price point are looked for apart") {
    // the formula says where a price may land, the shop what it has to reach
    Book book = box_book();
    book.shop.price = at_margin("51 %");
    PricePoint point;
    point.step = money("0.25");
    book.formulas[0].price.point = point;
    QuoteLine const line = *priced(book, 4).line;
    CHECK(printed(*line.wanted, 4) == "20.4082"); // 10 / 0.49
    CHECK(line.price == coins("20.50"));
    // what the line earns is what it earns at the price shown
    CHECK(line.earned.profit == money("10.50"));
}

TEST_CASE("where prices contain the tax, the price with it lands on the point") {
    // wanted 20.00 net, 7 %: 21.40, up to 21.50; net 21.50 / 1.07
    Book book = box_book();
    book.shop.tax.is_contained = true;
    PricePoint point;
    point.step = money("0.50");
    book.shop.price.point = point;
    QuoteLine const line = *priced(book, 4, {}, share_of<TaxRate>("7 %")).line;
    CHECK(line.wanted == money("20.00"));
    CHECK(line.price == coins("21.50"));
    CHECK(line.net_price == money("21.50") / number("1.07"));
    CHECK(line.earned.profit == line.net_price - money("10.00"));
}

TEST_CASE("a given price is judged, not solved, on the side of tax that is shown") {
    Book book = box_book();
    book.shop.price = at_price("21.40");
    book.shop.tax.is_contained = true;
    QuoteLine const line = *priced(book, 4, {}, share_of<TaxRate>("7 %")).line;
    CHECK(!line.wanted);
    CHECK(line.price == coins("21.40"));
    CHECK(line.earned.margin == percent("50 %"));
    book.shop.tax.is_contained = false;
    CHECK(priced(book, 4, {}, share_of<TaxRate>("7 %")).line->net_price == money("21.40"));
}

TEST_CASE("a line bears its share of the fixed fee, spread over its units") {
    // (10.00 + 2.00 / 4) / 0.5 = 21.00
    Book const book = box_book();
    QuoteLine const line = *priced(book, 4, {FeeRate(), money("2.00")}).line;
    CHECK(line.wanted == money("21.00"));
    CHECK(line.earned.margin == percent("50 %"));
}

TEST_CASE("without any target there is no price, and it is said where one can be written") {
    Book book = box_book();
    book.shop.price = {};
    PricedLine const result = priced(book, 4);
    CHECK(!result.line);
    auto const told = finding(result.found, "no-target");
    REQUIRE(told.has_value());
    CHECK(told->what == "nothing says what the price of 'bar, box of 5' is to reach");
    CHECK(says(told->help, "price: {margin: 40 %}"));
}

TEST_CASE("a target out of reach names the item") {
    Book book = box_book();
    book.shop.price = at_margin("99 %");
    PricedLine const result = priced(book, 4, {share_of<FeeRate>("2 %"), {}});
    CHECK(!result.line);
    auto const told = finding(result.found, "target-out-of-reach");
    REQUIRE(told.has_value());
    CHECK(says(told->what, "'bar, box of 5': a margin of 99 % is out of reach at any price"));
}

TEST_CASE("a name of a tax rate, none of them, or none at all") {
    TaxRule rule;
    rule.rate = share_of<TaxRate>("20 %");
    rule.other_rates.push_back({"reduced", share_of<TaxRate>("5 %")});
    Reference reduced = named("reduced");
    reduced.index = 0;
    CHECK(tax_rate(rule, {}) == rule.rate);
    CHECK(tax_rate(rule, reduced) == share_of<TaxRate>("5 %"));
    CHECK(tax_rate(rule, named("none")) == TaxRate());
}
