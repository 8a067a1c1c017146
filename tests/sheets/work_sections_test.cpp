#include <groat/sheets/work_sections.hpp>

#include "sheets.hpp"

#include <algorithm>

using namespace groat;
using namespace groat::test;

namespace {

/// The facts and lines of the formula called `name`, made for the first order.
struct Sections {
    Facts facts;
    Table lines;
};
Sections sections_of(Book& book, std::string_view name) {
    link_well(book);
    Costing const costing(linked(book), today);
    Diagnostics found;
    auto const plan = produce(costing, {&book.orders.front()}, found);
    REQUIRE_MESSAGE(plan.has_value(), in_words(found));
    for (std::size_t i = 0; i < plan->works.size(); ++i)
        if (book.formulas[plan->works[i].run.formula].name == name)
            return {work_facts(plan->works[i], i + 1, book), work_lines(plan->works[i], book)};
    FAIL("nothing is made of it");
    return {};
}

std::string fact(Facts const& facts, std::string_view key) {
    for (Fact const& each : facts.facts)
        if (each.key == key) return shown(each.value);
    return {};
}

/// Shells of 25 g of flour, butter, eggs, 2 % left in the bowl, half batches, of which the mixer holds two.
Book shells(Integer const& count) {
    Book book = a_book();
    food(book, "flour", "1 kg", "1.00").densities = {density("125 g / cup")};
    food(book, "butter", "1 kg", "8.00").densities = {density("227 g / cup")};
    food(book, "egg", "12", "4.00").grams_each = 50;
    (void)oven(book, "deck", "6 kW", "50 %", "30", "0.20");
    Formula& shell =
        formula(book, "shell", {{"flour", "500 g"}, {"butter", "400 g"}, {"egg", "2"}});
    shell.portion = quantity("24.5 g");
    lose(shell, "bowl", "2 %", LossStage::before_portioning);
    lose(shell, "baking", "10 %", LossStage::after_portioning);
    lose(shell, "breakage", "4 %", LossStage::pieces);
    shell.batch_step = Number(1, 2);
    shell.largest_mix = 2;
    shell.oven = baked_in("deck", "10", "48");
    wants(order(book), "shell", count);
    return book;
}

} // namespace

TEST_CASE("a weight is shown as a scale shows it, and keeps its exact value") {
    CHECK(shown(scale_weight(number("1234.56"))) == "1235");
    CHECK(shown(scale_weight(number("12.345"))) == "12.3");
    CHECK(shown(scale_weight(number("1.63"))) == "1.63");
    CHECK(std::get<Figure>(scale_weight(number("100/3"))).exact == number("100/3"));
}

TEST_CASE("one mix has one column of weights, with eggs counted") {
    // 1000 g less 2 % are 40 pieces of 24.5 g a batch; 48 good ones of 96 % are 50: 1 1/4 batches, so 1 1/2
    Book book = shells(48);
    Sections const made = sections_of(book, "shell");
    CHECK(made.lines.columns.size() == 3);
    CHECK(shown(made.lines, "flour", "all") == "750");
    CHECK(shown(made.lines, "egg", "all_in_hand") == "3");
    CHECK(shown(made.lines, "total", "all") == "1500");
    CHECK(fact(made.facts, "mixes") == "1.5 batches at once");
    CHECK(fact(made.facts, "pieces") == "50, for 48 good ones");
    CHECK(fact(made.facts, "scale") == "24.5 g");
    CHECK(fact(made.facts, "finished") == "22 g"); // 22.05 g, a tie, goes to the even digit
    CHECK(fact(made.facts, "oven") == "deck, 2 loads of 10 minutes: 48, the last 2");
    CHECK(fact(made.facts, "left") == "10 pieces' worth"); // a quarter of a batch
}

TEST_CASE("mixes of two sizes have a column each, and one for all") {
    // 96 good ones are 100 started: 2 1/2 batches, one mix of 1 1/2 and one of 1
    Book book = shells(96);
    Sections const made = sections_of(book, "shell");
    CHECK(shown(made.lines, "flour", "mix") == "750");
    CHECK(shown(made.lines, "flour", "last_mix") == "500");
    CHECK(shown(made.lines, "flour", "all") == "1250");
    CHECK(shown(made.lines, "egg", "mix_in_hand") == "3");
    CHECK(shown(made.lines, "egg", "last_mix_in_hand") == "2");
    CHECK(fact(made.facts, "mixes") == "1 × 1.5 batches, then 1 × 1 batch");
    CHECK(fact(made.facts, "oven") == "deck, 3 loads of 10 minutes: 48 each, the last 4");
    CHECK(fact(made.facts, "left").empty());
}

TEST_CASE("a shop that wants cups has them beside the weights") {
    Book book = shells(48);
    book.shop.measures_by_cup = true;
    Sections const made = sections_of(book, "shell");
    CHECK(shown(made.lines, "flour", "all_in_hand") == "6 cup");      // 750 / 125
    CHECK(shown(made.lines, "butter", "all_in_hand") == "2 2/3 cup"); // 600 / 227 = 2.64
    CHECK(shown(made.lines, "egg", "all_in_hand") == "3");
}

TEST_CASE("what is trimmed says what to take, what is counted in part says so") {
    Book book = a_book();
    food(book, "plum", "1 kg", "3.00").yield = share_of<Yield>("88 %");
    Ingredient& lemon = food(book, "lemon", "1 kg", "4.00");
    lemon.grams_each = 108;
    lemon.yield = share_of<Yield>("45 %");
    (void)formula(book, "jam", {{"plum", "880 g"}, {"lemon", "2 as bought"}});
    formula(book, "tart", {{"jam", "100 g"}}).makes = quantity("1");
    wants(order(book), "tart", 6);
    Sections const made = sections_of(book, "jam");
    // 977.2 g a batch, 600 g wanted: 540.3 g of plums, from 614.0 g; 2 x 600 / 977.2 = 1.23 lemons
    CHECK(shown(made.lines, "plum", "all_in_hand") == "from 614 g");
    CHECK(shown(made.lines, "lemon", "all_in_hand") == "2 (1.23), from 133 g");
    CHECK(fact(made.facts, "gives") == "600 g");
}

TEST_CASE("what is put together tells one piece, and all of them") {
    Book book = shells(1);
    food(book, "cream", "1 kg", "6.00");
    formula(book, "sandwich", {{"shell", "2"}, {"cream", "20 g"}}).makes = quantity("1");
    book.orders.clear();
    wants(order(book), "sandwich", 12);
    Sections const made = sections_of(book, "sandwich");
    CHECK(shown(made.lines, "shell", "piece") == "44.1");
    CHECK(shown(made.lines, "shell", "piece_in_hand") == "2 pieces");
    CHECK(shown(made.lines, "shell", "all_in_hand") == "24 pieces");
    CHECK(shown(made.lines, "cream", "all") == "240");
}

TEST_CASE("baker's percentages stand beside the weights, and their sum below") {
    // "Baker's math" slides (slideplayer 7820492): 100 / 1.75 / 2 / 0.375 / 58 are 162.125 % together
    Book book = a_book();
    for (std::string_view const name : {"flour", "salt", "yeast", "malt", "water"})
        food(book, name, "1 kg", "1.00");
    Formula& bread = formula(book, "bread",
                             {{"flour", "40 lb"},
                              {"salt", "1.75 %"},
                              {"yeast", "2 %"},
                              {"malt", "0.375 %"},
                              {"water", "58 %"}});
    bread.percentage_base = {named("flour")};
    bread.makes = quantity("1");
    wants(order(book), "bread", 1);
    Sections const made = sections_of(book, "bread");
    CHECK(shown(made.lines, "salt", "percent") == "1.75");
    CHECK(shown(made.lines, "salt", "all") == "318"); // 0.7 lb
    CHECK(std::get<Figure>(find_row(made.lines, "total")->cells.back()).exact ==
          percent("162.125 %"));
}

TEST_CASE("trays are told where the oven is") {
    Book book = shells(48);
    book.formulas.front().oven->trays = 4;
    CHECK(fact(sections_of(book, "shell").facts, "oven") ==
          "deck, 2 loads of 10 minutes: 48, the last 2; 12 to a tray");
}

TEST_CASE("counts are in the style of the shop, wherever they stand") {
    Book book = shells(96);
    book.shop.sheets.style = parse_money_style("1.234,56", currency("USD"), {}).value();
    OvenUse& use = *book.formulas.front().oven;
    use.holds = quantity("6000");
    use.trays = 4;
    CHECK(fact(sections_of(book, "shell").facts, "oven") ==
          "deck, 1 load of 10 minutes: 100; 1.500 to a tray");
    Book many = shells(96'001);
    many.shop.sheets.style = book.shop.sheets.style;
    CHECK(says(sections_of(many, "shell").lines.columns[1].title, "Each of 1.2"));
}
