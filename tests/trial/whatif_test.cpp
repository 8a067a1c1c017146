#include <groat/price/quote.hpp>
#include <groat/trial/whatif.hpp>

#include "books.hpp"

using namespace groat;
using namespace groat::test;

namespace {

/// Buns of flour and butter, baked and boxed by a baker; a card fee; one order of two lines.
struct Trial {
    Book book = a_book();
    Diagnostics found;

    Trial() {
        food(book, "flour", "10 kg", "9.00");
        food(book, "butter", "1 kg", "8.00");
        supply(book, "box", "100", "40.00");
        role(book, "baker", "21.00", "12 %");
        fee(book, "card", "2.9 %", "0.30");
        book.shop.paid_by = named("card");
        book.shop.price = at_margin("40 %");
        Formula& bun = formula(book, "bun", {{"flour", "500 g"}, {"butter", "200 g"}});
        bun.portion = quantity("30 g");
        lose(bun, "baking", "10 %", LossStage::after_portioning);
        lose(bun, "bowl", "2 %", LossStage::before_portioning);
        bun.labour.push_back(task("mix", "baker", "12"));
        bun.standard_run = number("60");
        SaleUnit& six = sold_as(bun, "box of 6", "6");
        six.packing.push_back(uses("box", "1", Per::sale_unit));
        sold_as(bun, "single", "1");
        Order& one = order(book);
        wants(one, "bun", 4, "box of 6");
        wants(one, "bun", 10, "single").price = at_price("1.50");
        link_well(book);
    }
    [[nodiscard]] WhatIf tried(std::initializer_list<std::string_view> texts,
                               Calculation const& calculation) {
        Costing const costing(linked(book), today);
        std::vector<Change> changes;
        for (std::string_view const text : texts)
            changes.push_back(parse_change(text, costing).value());
        auto trial = what_if(costing, std::move(changes), calculation, found);
        REQUIRE_MESSAGE(trial.has_value(), in_words(found));
        return *std::move(trial);
    }
    [[nodiscard]] Money more(std::initializer_list<std::string_view> texts) {
        WhatIf const trial = tried(texts, calculation_of_order("2026-041"));
        return trial.after.total() - trial.before.total();
    }
};

Calculation const boxed = calculation_of_item("bun", "box of 6");

} // namespace

TEST_CASE("nothing changes where nothing is changed") {
    WhatIf const trial = Trial().tried({}, calculation_of_order("2026-041"));
    CHECK(trial.after.total() == trial.before.total());
    REQUIRE(trial.lines.size() == 2);
    CHECK(trial.lines[0].after.earned.margin == trial.lines[0].before.earned.margin);
    CHECK(trial.lines[0].restoring == trial.lines[0].before.price);
}

TEST_CASE("before is the quote, and after the quote of changed books") {
    Trial trial;
    WhatIf const dearer = trial.tried({"butter +20 %"}, calculation_of_order("2026-041"));
    auto const now =
        quote(Costing(linked(trial.book), today), trial.book.orders.front(), trial.found);
    for (Offer& each : trial.book.offers)
        if (each.item.name == "butter") each.price *= number("1.2");
    auto const then =
        quote(Costing(linked(trial.book), today), trial.book.orders.front(), trial.found);
    REQUIRE((now && then));
    CHECK(dearer.before.total() == now->cost.total.total());
    CHECK(dearer.after.total() == then->cost.total.total());
    CHECK(dearer.lines[0].restoring == then->lines[0].price);
}

TEST_CASE("effects of single linear changes add up to the joint effect") {
    Trial trial;
    Money const butter = trial.more({"butter +20 %"});
    Money const wage = trial.more({"wage of baker 24.00"});
    Money const box = trial.more({"box -10 %"});
    CHECK(butter > money("0"));
    CHECK(trial.more({"butter +20 %", "wage of baker 24.00", "box -10 %"}) == butter + wage + box);
}

TEST_CASE("twice a rise is twice its effect") {
    Trial trial;
    CHECK(trial.more({"butter +40 %"}) == trial.more({"butter +20 %"}) * 2);
}

TEST_CASE("the price to restore gives the target back exactly") {
    WhatIf const trial = Trial().tried({"butter +20 %", "wage of baker +5 %"}, boxed);
    WhatIfLine const& line = trial.lines.front();
    CHECK(earned(*line.restoring_net, line.after.burden).margin == percent("40 %"));
    CHECK(*line.after.earned.margin < percent("40 %"));
}

TEST_CASE("where a price is given the margin it had is restored exactly") {
    WhatIf const trial = Trial().tried({"butter +20 %"}, calculation_of_order("2026-041"));
    WhatIfLine const& line = trial.lines[1];
    CHECK(line.before.price == coins("1.50"));
    CHECK(earned(*line.restoring_net, line.after.burden).margin == line.before.earned.margin);
    CHECK(*line.restoring > line.before.price);
}

TEST_CASE("an exchange is costed at what takes its place") {
    Trial trial;
    food(trial.book, "margarine", "1 kg", "3.00");
    link_well(trial.book);
    Money const less = trial.more({"butter -> margarine"});
    // butter in the order: 34 buns of 30 g, of which 2 in 7 parts are butter, over 98 % in the bowl
    Number const grams = Number(34 * 30) * 2 / 7 / percent("98 %");
    CHECK(less == money("-5.00") * (grams / 1000));
}

TEST_CASE("what moves the cost most stands first, by what a tenth more of it costs") {
    Trial trial;
    Costing const costing(linked(trial.book), today);
    auto const result = sensitivities(costing, boxed, trial.found);
    REQUIRE(result);
    std::vector<Sensitivity> const& all = result->all;
    std::vector<std::string> words;
    for (Sensitivity const& each : all) words.push_back(each.words);
    CHECK(words ==
          std::vector<std::string>{"wage of baker", "butter", "box", "flour", "bowl loss of bun"});
    CHECK(result->cost == boxed(costing, trial.found)->cost.total());
    // a box costs 0.40, a tenth of it 0.04
    CHECK(all[2].more == money("0.04"));
    // baking loss takes weight off the buns, not money; it is not listed
}

TEST_CASE("what a thing is not made of is not tried") {
    Trial trial;
    food(trial.book, "saffron", "1 g", "9.00");
    lose(formula(trial.book, "risotto", {{"saffron", "1 g"}}), "bowl", "5 %",
         LossStage::before_portioning);
    link_well(trial.book);
    Costing const costing(linked(trial.book), today);
    auto const result = sensitivities(costing, boxed, trial.found);
    REQUIRE(result);
    CHECK(result->all.size() == 5);
    Reach const reach = boxed(costing, trial.found)->reach;
    for (Change const& each : trying_detail::drivers(costing, reach)) {
        CHECK_FALSE(says(each.words, "saffron"));
        CHECK_FALSE(says(each.words, "risotto"));
    }
}

TEST_CASE("a price limit is where the target is met to the cent and beyond it missed") {
    Trial trial;
    trial.book.shop.price.point = PricePoint{money("1.00"), {}, false};
    link_well(trial.book);
    Costing const costing(linked(trial.book), today);
    auto const limits =
        price_limits(costing, ingredient_index(trial.book, "butter"), boxed, trial.found);
    REQUIRE(limits);
    REQUIRE(limits->size() == 1);
    REQUIRE(limits->front().times);
    CHECK(*limits->front().times > 1);
    Book dearer = trial.book;
    apply({"", PriceScaled{ingredient_index(trial.book, "butter"), *limits->front().times}},
          dearer);
    auto const then = boxed(Costing(linked(dearer), today), trial.found);
    auto const now = boxed(costing, trial.found);
    CHECK(then->lines.front().wanted == now->lines.front().net_price);
}

TEST_CASE("an ingredient that is not in it does not matter to it") {
    Trial trial;
    food(trial.book, "saffron", "1 g", "9.00");
    link_well(trial.book);
    Costing const costing(linked(trial.book), today);
    auto const limits =
        price_limits(costing, ingredient_index(trial.book, "saffron"), boxed, trial.found);
    REQUIRE(limits);
    CHECK_FALSE(limits->front().times);
}

TEST_CASE("the cost is calculated on each day that a price list changes, and on no other") {
    Trial trial;
    offer(trial.book, "butter", "1 kg", "9.00").from = day("2026-12-01");
    offer(trial.book, "flour", "10 kg", "8.00").from = day("2026-12-10");
    trial.book.offers.back().until = day("2026-12-14");
    offer(trial.book, "flour", "10 kg", "7.00", "another mill").from = day("2026-01-01");
    trial.book.offers.back().until = day("2026-12-05");
    link_well(trial.book);
    auto const costs =
        costs_between(linked(trial.book), today, day("2026-12-12"), boxed, trial.found);
    REQUIRE(costs);
    std::vector<std::string> days;
    for (CostSince const& each : *costs) days.push_back(iso_date(each.date));
    CHECK(days == std::vector<std::string>{"2026-11-25", "2026-12-01", "2026-12-06", "2026-12-10"});
    CHECK((*costs)[1].cost > (*costs)[0].cost);
    CHECK((*costs)[3].cost < (*costs)[2].cost);
}

TEST_CASE("a menu is tried item by item, at the prices it has and as often as each was sold") {
    Trial trial;
    trial.book.shop.tax.rate = share_of<TaxRate>("10 %");
    Menu menu;
    menu.name = "counter";
    menu.is_tax_contained = true;
    for (std::string_view const unit : {"box of 6", "single"}) {
        MenuItem item;
        item.item = named("bun");
        item.sale_unit = named(unit);
        item.price = money(unit == "single" ? "1.65" : "7.00");
        item.sold = unit == "single" ? 100 : 20;
        menu.items.push_back(item);
    }
    menu.items[1].target = at_price("1.65"); // no target of its own: the margin it had is restored
    trial.book.menus.push_back(menu);
    link_well(trial.book);
    WhatIf const dearer = trial.tried({"butter +20 %"}, calculation_of_menu("counter"));
    REQUIRE(dearer.lines.size() == 2);
    CHECK(dearer.lines[0].before.price == coins("7.00"));
    CHECK(dearer.lines[0].before.net_price == money("7.00") / number("1.1"));
    CHECK(earned(*dearer.lines[0].restoring_net, dearer.lines[0].after.burden).margin ==
          percent("40 %"));
    WhatIfLine const& single = dearer.lines[1];
    CHECK(earned(*single.restoring_net, single.after.burden).margin == single.before.earned.margin);
    CHECK(single.restoring->money() >= *single.restoring_net * number("1.1"));
    CHECK(single.restoring->money() < *single.restoring_net * number("1.1") + money("0.01"));
    // the sum over what was sold: 20 * 6 + 100 buns of butter, 20 % of 8.00 a kilogram
    Number const grams = Number(220 * 30) * 2 / 7 / percent("98 %");
    CHECK(dearer.after.total() - dearer.before.total() == money("1.60") * (grams / 1000));
}

TEST_CASE("a trial that cannot be costed says why") {
    Trial trial;
    food(trial.book, "saffron");
    link_well(trial.book);
    auto const change = parse_change("butter -> saffron", Costing(linked(trial.book), today));
    REQUIRE(change);
    CHECK_FALSE(what_if(Costing(linked(trial.book), today), {*change}, boxed, trial.found));
    CHECK(finding(trial.found, "missing-price"));
}
