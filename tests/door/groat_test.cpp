#include "books.hpp"

#include <groat.hpp>

using namespace groat;
using namespace groat::test;

namespace {

/// A soup by the bowl and by the litre, ordered once and on a menu.
Book a_kitchen() {
    Book book = a_book();
    food(book, "leek", "5 kg", "9.50");
    role(book, "cook", "20.00");
    Formula& soup = formula(book, "leek soup", {{"leek", "2 kg"}});
    soup.makes = quantity("2 kg");
    soup.labour.push_back(task("cut and boil", "cook", "30"));
    sold_as(soup, "bowl", "300 g");
    sold_as(soup, "tub", "1 kg");
    book.shop.price = at_margin("40 %");
    wants(order(book, "2027-003"), "leek soup", 6, "tub");
    Menu menu;
    menu.name = "lunch";
    MenuItem bowl;
    bowl.item = named("leek soup");
    bowl.sale_unit = named("bowl");
    bowl.price = money("4.50");
    menu.items.push_back(bowl);
    book.menus.push_back(menu);
    return book;
}

struct Questions {
    Costing costing{linked(a_kitchen()), today};
    Diagnostics found;

    /// The help of the only finding.
    [[nodiscard]] std::string help() const {
        REQUIRE(found.errors() == 1);
        return found.sorted().front().help;
    }
};

} // namespace

TEST_CASE("each question is asked by name, and has the answer of the room that it belongs to") {
    Questions ask;
    Costing const& costing = ask.costing;
    auto const tub = cost(costing, "leek soup", "tub", ask.found);
    REQUIRE(tub);
    CHECK(tub->line.title(costing.book()) == "leek soup, tub");
    CHECK(cost(costing, "leek soup", "", ask.found)->line.unit->name == "bowl");
    CHECK(quote(costing, "2027-003", ask.found)->order->id == "2027-003");
    CHECK(compare(costing, "leek", ask.found)->offers.size() == 1);
    CHECK(menu(costing, "lunch", ask.found)->lines.size() == 1);
    CHECK(buy(costing, {"2027-003"}, ask.found)->total == money("19.00")); // 6 kg: 2 packs
    CHECK(make(costing, {"2027-003"}, ask.found)->works.size() == 1);
    CHECK_FALSE(ask.found.has_errors());
}

TEST_CASE("a name that is not there is told, with the nearest that is") {
    Questions ask;
    SUBCASE("an item") {
        CHECK_FALSE(cost(ask.costing, "leak soup", "", ask.found));
        CHECK(ask.help() == "did you mean 'leek soup'?");
    }
    SUBCASE("a way to sell it") {
        CHECK_FALSE(cost(ask.costing, "leek soup", "tube", ask.found));
        CHECK(ask.help() == "did you mean 'tub'?");
    }
    SUBCASE("an order") {
        CHECK_FALSE(quote(ask.costing, "2027-004", ask.found));
        CHECK(ask.help() == "did you mean '2027-003'?");
    }
    SUBCASE("one of several orders, whose ids may come from anywhere") {
        std::vector<std::string> const ids{"2027-003", "2027-004"};
        CHECK_FALSE(make(ask.costing, ids, ask.found));
        CHECK(ask.help() == "did you mean '2027-003'?");
    }
    SUBCASE("one of several orders") {
        CHECK_FALSE(buy(ask.costing, {"2027-003", "2027-004"}, ask.found));
        CHECK(ask.help() == "did you mean '2027-003'?");
    }
    SUBCASE("an ingredient") {
        CHECK_FALSE(compare(ask.costing, "leak", ask.found));
        CHECK(ask.help() == "did you mean 'leek'?");
    }
    SUBCASE("a menu") {
        CHECK_FALSE(menu(ask.costing, "launch", ask.found));
        CHECK(finding(ask.found, "unknown-menu"));
        CHECK(ask.help() == "did you mean 'lunch'?");
    }
}

TEST_CASE("what an error took out is told as that, and not as a slip of who asks") {
    Book book = a_kitchen();
    formula(book, "beet soup", {{"beet", "2 kg"}}).makes = quantity("2 kg");
    Costing const costing(sound_part(std::move(book)).value(), today);
    Diagnostics found;
    CHECK_FALSE(cost(costing, "beet soup", "", found));
    CHECK(finding(found, "unknown-formula")->help == "mend the errors of the books first");
}

TEST_CASE("an order that is named twice is made once, and none is no question") {
    Questions ask;
    CHECK(make(ask.costing, {"2027-003", "2027-003"}, ask.found)->orders.size() == 1);
    CHECK_FALSE(make(ask.costing, {}, ask.found));
    CHECK(finding(ask.found, "no-orders"));
    CHECK(ask.help() == "name one of the orders of the books");
}

TEST_CASE("a check tells what keeps anything in the books from being costed") {
    CHECK_FALSE(check(Costing(linked(a_kitchen()), today)).has_errors());
    Book book = a_kitchen();
    food(book, "cream");
    formula(book, "cream of leek", {{"cream", "1 kg"}}).makes = quantity("1 kg");
    CHECK(finding(check(Costing(linked(book), today)), "missing-price"));
}

TEST_CASE("each result has its sheet, and the client's holds no cost") {
    Questions ask;
    Costing const& costing = ask.costing;
    auto const quoted = quote(costing, "2027-003", ask.found);
    std::string const cost_of_order = decimal(quoted->cost.all().amount(), 2);
    CHECK(says(to_text(sheet_of(*quoted, costing)), cost_of_order));
    CHECK_FALSE(says(to_text(sheet_for_client(*quoted, costing)), cost_of_order));
    CHECK(says(to_text(sheet_of(*cost(costing, "leek soup", "", ask.found), costing)), "leek"));
    CHECK(says(to_text(sheet_of(*compare(costing, "leek", ask.found), costing)), "the mill"));
    CHECK(says(to_text(sheet_of(*menu(costing, "lunch", ask.found), costing)), "Leek soup"));
    CHECK(says(to_text(sheet_of(*buy(costing, {"2027-003"}, ask.found), costing)), "19.00"));
    CHECK(says(to_text(sheet_of(*make(costing, {"2027-003"}, ask.found), costing)), "leek"));
}
