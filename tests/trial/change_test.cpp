#include <groat/trial/change.hpp>

#include "books.hpp"

using namespace groat;
using namespace groat::test;

namespace {

struct Trial {
    Book book = a_book();

    Trial() {
        food(book, "plain flour", "10 kg", "9.00");
        food(book, "butter", "1 kg", "8.00");
        offer(book, "butter", "5 kg", "36.00", "the farm").freight = money("1.00");
        book.offers.back().breaks = {{3, money("34.00")}};
        food(book, "margarine", "1 kg", "3.00");
        food(book, "lemon", "1 kg", "2.00").yield = share_of<Yield>("45 %");
        book.offers.back().yield = share_of<Yield>("50 %");
        food(book, "sugar 2 mm", "1 kg", "2.00");
        supply(book, "box", "100", "40.00");
        role(book, "baker", "20.00");
        oven(book, "deck", "5 kW", "50 %", "20", "0.20");
        Formula& dough = formula(book, "dough", {{"plain flour", "500 g"}, {"butter", "250 g"}});
        dough.makes = quantity("20");
        lose(dough, "baking", "10 %", LossStage::after_portioning);
        formula(book, "glaze", {{"butter", "20 g"}, {"lemon", "30 g"}});
        link_well(book);
        costing.emplace(linked(book), today);
    }
    [[nodiscard]] Result<Change> read(std::string_view text) const {
        return parse_change(text, *costing);
    }
    /// The book with the change made.
    [[nodiscard]] Book with(std::string_view text) const {
        auto const change = read(text);
        REQUIRE_MESSAGE(change.has_value(), change.error().what);
        Book changed = book;
        apply(*change, changed);
        return changed;
    }
    [[nodiscard]] std::string code(std::string_view text) const {
        auto const change = read(text);
        return change ? "no error" : change.error().code;
    }

private:
    std::optional<Costing> costing;
};

} // namespace

TEST_CASE("a dearer ingredient is dearer at every supplier, with freight and breaks") {
    Book const book = Trial().with("butter +20 %");
    CHECK(book.offers[1].price == money("9.60"));
    CHECK(book.offers[2].price == money("43.20"));
    CHECK(book.offers[2].freight == money("1.00")); // what the haulier asks stays
    CHECK(book.offers[2].breaks[0].price == money("40.80"));
    CHECK(book.offers[0].price == money("9.00")); // not the flour
}

TEST_CASE("a cheaper one, with a fraction in its percentage") {
    CHECK(Trial().with("butter -2 1/2 %").offers[1].price == money("7.80"));
    CHECK(Trial().with("butter - 5 %").offers[1].price == money("7.60"));
}

TEST_CASE("a name may hold figures") {
    CHECK(Trial().with("sugar 2 mm +50 %").offers[5].price == money("3.00"));
}

TEST_CASE("a price for an amount is what the offer in use comes to") {
    // (36.00 + 1.00) / 5 kg = 7.40 a kilogram is the cheapest; 14.60 are 73.00 for 5 kg: the price doubles, the
    // freight stays
    Book const book = Trial().with("butter 14.60 / kg");
    CHECK(book.offers[1].price == money("16.00"));
    CHECK(book.offers[2].price == money("72.00"));
    CHECK(unit_costs(book, today).purchases[1]->unit_cost * 1000 == money("14.60"));
}

TEST_CASE("a price below the freight alone is none") {
    Trial const trial;
    CHECK(trial.code("butter 0.19 / kg") == "bad-change");
    CHECK(Trial().with("butter 0.20 / kg").offers[2].price.is_zero());
}

TEST_CASE("a trial of a price holds on to the offer, though another is the cheapest then") {
    // at a tenth of the price freight decides: 0.80 against (3.60 + 1.00) / 5 = 0.92 a kilogram
    Book const book = Trial().with("butter -90 %");
    Purchase const butter = *unit_costs(book, today).purchases[1];
    CHECK(butter.offer == 2);
    CHECK(butter.reason == Purchase::Reason::held);
    CHECK(butter.unit_cost * 1000 == money("0.92"));
}

TEST_CASE("a price for a pound, and for a piece of a supply") {
    Book const book = Trial().with("butter 4.00 / lb");
    CHECK(unit_costs(book, today).purchases[1]->unit_cost * number("453.59237") == money("4.00"));
    Book const boxes = Trial().with("box 0.50 / each");
    CHECK(boxes.offers[6].price == money("50.00"));
}

TEST_CASE("wages and tariffs") {
    CHECK(Trial().with("wage of baker 24.00").shop.roles[0].wage.amount == money("24.00"));
    CHECK(Trial().with("wage of baker +5 %").shop.roles[0].wage.amount == money("21.00"));
    CHECK(Trial().with("tariff of electricity of the deck +50 %").shop.tariffs[0].rate.amount ==
          money("0.30"));
}

TEST_CASE("a yield holds whoever sells it") {
    Book const book = Trial().with("yield of lemon 40 %");
    CHECK(book.ingredients[3].yield->value() == percent("40 %"));
    CHECK_FALSE(book.offers[4].yield);
}

TEST_CASE("a loss of a formula") {
    CHECK(Trial().with("baking loss of dough 12 %").formulas[0].losses[0].share.value() ==
          percent("12 %"));
}

TEST_CASE("one ingredient for another, everywhere or in one formula") {
    Book const everywhere = Trial().with("butter -> margarine");
    CHECK(everywhere.formulas[0].lines[1].item.name == "margarine");
    CHECK(everywhere.formulas[1].lines[0].item.index == 2);
    Book const one = Trial().with("butter -> margarine in glaze");
    CHECK(one.formulas[0].lines[1].item.name == "butter");
    CHECK(one.formulas[1].lines[0].item.name == "margarine");
}

TEST_CASE("what is no change says so") {
    Trial const trial;
    CHECK(trial.code("") == "bad-change");
    CHECK(trial.code("butter") == "bad-change");
    CHECK(trial.code("butter 9.00") == "bad-change");
    CHECK(trial.code("butter -100 %") == "bad-change");
    CHECK(trial.code("butter -> box") == "bad-change");
    CHECK(trial.code("wage of baker free") == "bad-change");
    CHECK(trial.code("butter +20") == "bad-percent");
    CHECK(trial.code("buttr +20 %") == "unknown-ingredient");
    CHECK(trial.code("wage of chef 3") == "unknown-role");
    CHECK(trial.code("tariff of gas +1 %") == "unknown-tariff");
    CHECK(trial.code("cooling loss of dough 1 %") == "unknown-loss");
    CHECK(trial.code("baking loss of bread 1 %") == "unknown-formula");
    CHECK(trial.code("baking loss of dough 100 %") == "rate-out-of-range");
    CHECK(trial.code("yield of lemon 0 %") == "rate-out-of-range");
    CHECK(trial.code("butter 9.00 / cup") == "missing-density");
    CHECK(trial.read("buttr +20 %").error().help == "did you mean 'butter'?");
}

TEST_CASE("an ingredient that nobody sells has no price to change") {
    Trial trial;
    food(trial.book, "saffron");
    link_well(trial.book);
    Costing const costing(linked(trial.book), today);
    CHECK(parse_change("saffron +1 %", costing).error().code == "missing-price");
}
