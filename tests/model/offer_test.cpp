#include "books.hpp"

using namespace groat;
using namespace groat::test;

namespace {

Offer priced(std::string_view price, std::string_view freight = "0", std::string_view deposit = "0",
             std::string_view tax = "0 %") {
    Offer result;
    result.price = money(price);
    result.freight = money(freight);
    result.deposit = money(deposit);
    result.tax_included = share_of<TaxRate>(tax);
    return result;
}

} // namespace

TEST_CASE("a pack costs its price with freight; its deposit is paid as well, but comes back") {
    CHECK(priced("13.80").pack_cost() == money("13.80"));
    CHECK(priced("13.80", "1.10", "0.50").pack_cost() == money("14.90"));
    CHECK(priced("13.80", "1.10", "0.50").pack_outlay() == money("15.40"));
}

TEST_CASE("a share for delivery is one of the price, not of freight") {
    // 14.40 and a sixteenth of it, 0.90, and 1.10 of freight, less 7 % contained
    CHECK(priced("14.40", "1.10", "0.50").pack_cost(Number(1) / 16) == money("16.40"));
    CHECK(priced("14.40", "1.10", "0.50", "7 %").pack_cost(Number(1) / 16) ==
          money("16.40") / number("1.07"));
}

TEST_CASE("a supplier's delivery is shared over a usual order, and may be free from an amount on") {
    Supplier mill;
    mill.delivery = money("7.50");
    CHECK(mill.share_of_usual_order().is_zero());
    CHECK(mill.has_delivery_apart());
    mill.usual_order = money("120.00");
    CHECK(mill.share_of_usual_order() == Number(1) / 16);
    CHECK_FALSE(mill.has_delivery_apart());
    mill.free_delivery_from = money("150.00");
    CHECK(mill.delivery_of(money("149.99")) == money("7.50"));
    CHECK(mill.delivery_of(money("150.00")).is_zero());
    CHECK(mill.share_of_usual_order() == Number(1) / 16);
    mill.usual_order = money("150.00");
    CHECK(mill.share_of_usual_order().is_zero());
    CHECK_FALSE(mill.has_delivery_apart());
}

TEST_CASE("recoverable tax is taken out of a listed price by the VAT fraction") {
    // HMRC VAT Notice 700 (paragraph from memory): the fraction is rate / (100 + rate), so 20 % is 1/6,
    // 5 % 1/21, 17.5 % 7/47, 15 % 3/23; the worked amounts are those of practitioners' pages
    struct Row {
        std::string_view gross, tax, contained;
    };
    constexpr Row rows[] = {
        {"60.00", "20 %", "10"},       {"24.00", "20 %", "4"},
        {"120", "20 %", "20"},         {"80.00", "5 %", "80/21"}, // printed 3.81
        {"105", "5 %", "5"},           {"117.50", "17.5 %", "17.50"},
        {"24.00", "17.5 %", "168/47"}, // printed 3.57
        {"115", "15 %", "15"},
    };
    for (Row const& row : rows) {
        CAPTURE(row.gross);
        Money const gross = money(row.gross);
        CHECK(gross - priced(row.gross, "0", "0", row.tax).pack_cost() == money(row.contained));
    }
    CHECK(printed(number("80/21"), 2) == "3.81");
    CHECK(printed(number("168/47"), 2) == "3.57");
}

TEST_CASE("the tax that a price list contains is in its freight and deposits as well") {
    // (9.00 + 0.63) / 1.07 = 9.00, with 1.07 of deposit 10.00
    CHECK(priced("9.00", "0.63", "1.07", "7 %").pack_cost() == money("9.00"));
    CHECK(priced("9.00", "0.63", "1.07", "7 %").pack_outlay() == money("10.00"));
}

TEST_CASE("an offer holds from its first day to its last, both included") {
    Offer offer = priced("1.00");
    CHECK(offer.has_begun(today));
    CHECK(!offer.has_ended(today));
    offer.from = day("2026-10-01");
    offer.until = day("2026-12-31");
    CHECK(!offer.has_begun(day("2026-09-30")));
    CHECK(offer.has_begun(day("2026-10-01")));
    CHECK(!offer.has_ended(day("2026-12-31")));
    CHECK(offer.has_ended(day("2027-01-01")));
}
