#include <groat/sheets/named_makeup.hpp>
#include <groat/sheets/price_makeup.hpp>
#include <groat/sheets/shape_cost.hpp>

#include "random_book.hpp"
#include "sheets.hpp"

#include <fmt/format.h>

using namespace groat;
using namespace groat::test;

namespace {

Table table_of(Book const& book, std::string_view item) {
    Costing const costing(linked(book), today);
    return named_makeup(item_cost(costing, item), book);
}

/// 80 g of flour at 10.00 and 20 g of butter at 20.00 a kg, a tenth of which is left in the bowl; a box of 0.10.
Book bun_book() {
    Book book = a_book();
    food(book, "flour", "1 kg", "10.00");
    food(book, "butter", "1 kg", "20.00");
    supply(book, "paper", "10", "1.00");
    Formula& bun = formula(book, "bun", {{"flour", "80 g"}, {"butter", "20 g"}});
    bun.makes = quantity("1");
    bun.standard_run = 10;
    bun.consumables.push_back(uses("paper", "1", Per::piece));
    lose(bun, "bowl", "20 %", LossStage::after_portioning);
    book.shop.price = at_price("4.00");
    link_well(book);
    return book;
}

} // namespace

TEST_CASE("a price goes to each ingredient, what is lost of them, the rest, and the profit") {
    Book book = bun_book();
    Table const table = table_of(book, "bun");
    CHECK(table.title == "Where the price of one piece goes");
    CHECK(shown(table, "flour", "amount") == "0.8000");
    CHECK(shown(table, "butter", "amount") == "0.4000");
    CHECK(shown(table, "consumables", "amount") == "0.1000");
    CHECK(shown(table, "net", "amount") == "4.0000");
    CHECK(shown(table, "net", "share") == "100.0");
    CHECK(shown(table, "flour", "share") == "20.0");
    CHECK(what_does_not_add_up(table, "USD") == "");
    CHECK(what_does_not_add_up(table, "%") == "");
    // the dearest first, what is lost last of them
    CHECK(table.rows[0].key == "flour");
    CHECK(table.rows[1].key == "butter");
}

TEST_CASE("what an ingredient costs in the piece is what it would cost without any loss") {
    // 100 g of apple, of which 25 % are peel: 0.50 are eaten at 5.00 a kg, 0.1667 are peeled off
    Book book = a_book();
    food(book, "apple", "1 kg", "5.00").yield = share_of<Yield>("75 %");
    Formula& slice = formula(book, "slice", {{"apple", "100 g"}});
    slice.makes = quantity("1");
    slice.standard_run = 10;
    book.shop.price = at_margin("50 %");
    link_well(book);
    Table const table = table_of(book, "slice");
    CHECK(shown(table, "apple", "amount") == "0.5000");
    CHECK(shown(table, "lost", "amount") == "0.1667");
    CHECK(shown(table, "cost", "amount") == "0.6667");
}

TEST_CASE("without a price there is a cost, and shares of it") {
    Book book = bun_book();
    book.shop.price = {};
    Table const table = table_of(book, "bun");
    CHECK(table.title == "What one piece costs");
    CHECK(find_row(table, "net") == nullptr);
    CHECK(shown(table, "cost", "share") == "100.0");
    CHECK(what_does_not_add_up(table, "%") == "");
}

TEST_CASE("a long list keeps its dearest, and the others stand together") {
    Book book = a_book();
    Formula& cake = formula(book, "cake", {});
    cake.makes = quantity("1");
    for (int i = 1; i <= 20; ++i) {
        std::string const name = fmt::format("food {}", i);
        food(book, name, "1 kg", fmt::format("{}.00", i));
        cake.lines.push_back(line({name, "10 g"}));
    }
    book.shop.price = at_margin("50 %");
    link_well(book);
    Table const table = table_of(book, "cake");
    CHECK(table.rows[0].key == "food 20");
    CHECK(find_row(table, "food 1") == nullptr);
    REQUIRE(find_row(table, "other ingredients") != nullptr);
    CHECK(what_does_not_add_up(table, "USD") == "");
    std::size_t lines_shown = 0;
    for (Row const& row : table.rows) lines_shown += row.kind == Row::Kind::line ? 1 : 0;
    CHECK(lines_shown <= 12);
}

TEST_CASE("of any item the printed parts add up, and the ingredients to those of the makeup") {
    for_random_books(200, [](Book const& book) {
        Costing const costing(linked(book), today);
        for (std::size_t i = 0; i < book.formulas.size(); ++i) {
            Diagnostics found;
            auto const item = cost_item(costing, i, nullptr, found);
            REQUIRE(item.has_value());
            Table const named = named_makeup(*item, book);
            REQUIRE(what_does_not_add_up(named, book.shop.currency.code()) == "");
            REQUIRE(what_does_not_add_up(named, "%") == "");
            Table const makeup =
                price_makeup<sheet_shapes::cost::costs>(item->line, book.shop, "The run");
            for (Row const& row : makeup.rows)
                if (row.key != "ingredients")
                    REQUIRE(shown(named, row.key, "amount") == shown(row.cells[1]));
            Money eaten;
            for (IngredientUse const& use : item->cost.ingredients) eaten += use.eaten;
            REQUIRE(eaten == item->line.loss.in_the_piece);
        }
    });
}
