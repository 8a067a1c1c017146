#include <groat/plan/label.hpp>

#include "books.hpp"

using namespace groat;
using namespace groat::test;

namespace {

/// A filled wafer: two wafers of flour, butter and sugar, and a filling of sugar, cream and salt.
Book wafers() {
    Book book = a_book();
    food(book, "flour", "1 kg", "1.00").label = "wheat flour";
    food(book, "butter", "1 kg", "9.00");
    food(book, "sugar", "1 kg", "1.50");
    food(book, "cream", "1 kg", "5.00");
    food(book, "salt", "1 kg", "1.00");
    book.ingredients[0].allergens = {find_allergen("wheat")};
    book.ingredients[1].allergens = {find_allergen("milk")};
    book.ingredients[3].allergens = {find_allergen("milk")};
    Formula& wafer =
        formula(book, "wafer", {{"flour", "100 g"}, {"butter", "50 g"}, {"sugar", "30 g"}});
    wafer.portion = quantity("18 g");
    lose(wafer, "baking", "10 %", LossStage::after_portioning);
    formula(book, "filling", {{"sugar", "60 g"}, {"cream", "39 g"}, {"salt", "1 g"}}).label =
        "cream filling";
    Formula& filled = formula(book, "filled wafer", {{"wafer", "2"}, {"filling", "10 g"}});
    filled.makes = quantity("1");
    filled.keeping = {KeepAt::cold, 4};
    sold_as(filled, "box", "6");
    link_well(book);
    return book;
}

Label labelled(Book const& book, LabelRule const& rule = {}, std::string_view unit = "",
               std::optional<Date> made = {}) {
    Costing const costing(linked(book), today);
    Diagnostics found;
    auto label = label_of(costing, index_of(book, "filled wafer"),
                          sale(book, "filled wafer", 1, unit).unit, rule, made, found);
    REQUIRE_MESSAGE(label.has_value(), in_words(found));
    return *std::move(label);
}

std::vector<std::string> names(std::vector<LabelPart> const& parts) {
    std::vector<std::string> all;
    for (LabelPart const& part : parts) all.push_back(part.name);
    return all;
}

} // namespace

TEST_CASE("ingredients stand in falling order of their weight as used") {
    // 21 CFR 101.4(a)(1). For one: 20 g flour, 10 g butter, 6 g + 6 g sugar, 3.9 g cream, 0.1 g salt: the
    // sugar of both parts together goes before the butter.
    Label const label = labelled(wafers());
    CHECK(names(label.parts) ==
          std::vector<std::string>{"wheat flour", "sugar", "butter", "cream", "salt"});
    CHECK(label.parts[1].grams == 12);
    CHECK(label.parts[3].grams == number("3.9"));
    CHECK(label.weight_as_used() == 46);
}

TEST_CASE("what bakes off does not count against what was used") {
    Label const label = labelled(wafers());
    CHECK(label.weight_as_used() == 46);  // 2 * 18 g + 10 g
    CHECK(label.grams == number("42.4")); // 2 * 16.2 g + 10 g
}

TEST_CASE("grouped, a formula stands with its own ingredients in their own order") {
    Label const label = labelled(wafers(), {AllergenLaw::us, {}, true});
    CHECK(names(label.parts) == std::vector<std::string>{"wafer", "cream filling"});
    CHECK(names(label.parts[1].parts) == std::vector<std::string>{"sugar", "cream", "salt"});
    CHECK(label.parts[0].grams == 36);
    CHECK(label.weight_as_used() == labelled(wafers()).weight_as_used());
}

TEST_CASE("no ingredient above the share follows the phrase for small amounts") {
    // 21 CFR 101.4(a)(2); 0.1 g of 46 g is 0.2 %, 3.9 g are 8.5 %
    LabelRule rule;
    CHECK(labelled(wafers(), rule).small_from == 5);
    rule.small = share_of<Share>("2 %");
    CHECK(labelled(wafers(), rule).small_from == 4);
}

TEST_CASE("a share is small up to the share itself") {
    Book book = a_book();
    food(book, "flour", "1 kg", "1.00");
    food(book, "salt", "1 kg", "1.00");
    formula(book, "filled wafer", {{"flour", "98 g"}, {"salt", "2 g"}}).makes = quantity("1");
    link_well(book);
    LabelRule rule;
    rule.small = share_of<Share>("2 %");
    CHECK(labelled(book, rule).small_from == 1);
    rule.small = share_of<Share>("1.5 %");
    CHECK(labelled(book, rule).small_from == 2);
}

TEST_CASE("the day of making is day one") {
    // FDA Food Code 2022, 3-501.17: prepared on the 1st and kept 7 days -> to the 7th; the books say 4 days
    Label const label = labelled(wafers(), {}, "", day("2026-01-01"));
    CHECK(label.use_by == day("2026-01-04"));
    Book book = wafers();
    book.formulas[2].keeping.days = 7;
    CHECK(labelled(book, {}, "", day("2026-01-01")).use_by == day("2026-01-07"));
}

TEST_CASE("without a day of making or a shelf life there is no day to use it by") {
    CHECK_FALSE(labelled(wafers()).use_by);
    Book book = wafers();
    book.formulas[2].keeping.days.reset();
    CHECK_FALSE(labelled(book, {}, "", today).use_by);
}

TEST_CASE("a box weighs and uses as much as what is in it") {
    Label const one = labelled(wafers());
    Label const box = labelled(wafers(), {}, "box");
    CHECK(box.grams == one.grams * 6);
    CHECK(box.weight_as_used() == one.weight_as_used() * 6);
    CHECK(box.pieces == 6);
    CHECK(names(box.parts) == names(one.parts));
}

TEST_CASE("a label needs weights, not prices") {
    Book book = wafers();
    book.offers.clear();
    link_well(book);
    CHECK(labelled(book).parts.size() == 5);
}

TEST_CASE("what cannot be weighed is said") {
    Book book = wafers();
    std::get<Quantity>(book.formulas[0].lines[0].amount) = quantity("1 cup");
    Costing const costing(linked(book), today);
    Diagnostics found;
    CHECK_FALSE(label_of(costing, 2, nullptr, {}, {}, found));
    CHECK(finding(found, "missing-density"));
}

TEST_CASE("what is only counted has no order by weight until the weight of one is known") {
    Book book = a_book();
    food(book, "shell", "100", "35.00");
    formula(book, "pair", {{"shell", "2"}}).makes = quantity("1");
    link_well(book);
    Diagnostics found;
    CHECK_FALSE(label_of(Costing(linked(book), today), 0, nullptr, {}, {}, found));
    CHECK(finding(found, "missing-weight"));
    book.ingredients[0].grams_each = number("12");
    link_well(book);
    Costing const weighed(linked(book), today);
    CHECK(label_of(weighed, 0, nullptr, {}, {}, found)->grams == 24);
}

TEST_CASE("what is made by mass is labelled as it is sold") {
    Book book = wafers();
    Costing const costing(linked(book), today);
    Diagnostics found;
    CHECK_FALSE(label_of(costing, 1, nullptr, {}, {}, found));
    CHECK(finding(found, "no-sale-unit"));
}
