#include <groat/price/quote.hpp>
#include <groat/price/quote_for_client.hpp>
#include <groat/sheets/client_quote_sheet.hpp>
#include <groat/sheets/tier_sections.hpp>

#include "books.hpp"
#include "sheets.hpp"

#include <groat/paper/text.hpp>
#include <groat/sheets/quote_sheet.hpp>

using namespace groat;
using namespace groat::test;

namespace {

/// A bun of 1.00 of flour in whole batches of four at a margin of half: 1 to 4 take 4.00 and sell for 8.00 in all.
Book bun_book() {
    Book book = a_book();
    food(book, "flour", "1 kg", "10.00");
    Formula& bun = formula(book, "bun", {{"flour", "400 g"}});
    bun.makes = quantity("4");
    bun.batch_step = 1;
    book.shop.price = at_margin("50 %");
    Order& wanted = order(book);
    wants(wanted, "bun", 4);
    wanted.quantity_breaks = {1, 4};
    wanted.most_counted = 12;
    return book;
}

struct Papers {
    explicit Papers(Book& book) {
        link_well(book);
        Costing const costing(linked(book), today);
        Diagnostics found;
        auto const made = groat::quote(costing, book.orders.front(), found);
        REQUIRE_MESSAGE(made.has_value(), in_words(found));
        client = client_quote_sheet(quote_for_client(*made, book), book.shop);
        maker = maker_quote_sheet(*made, costing);
    }
    Sheet client;
    Sheet maker;
};

std::vector<std::string> row(Table const& table, std::size_t index) {
    std::vector<std::string> cells;
    for (Cell const& cell : table.rows.at(index).cells) cells.push_back(shown(cell));
    return cells;
}
using List = std::vector<std::string>;

} // namespace

TEST_CASE("the client sees what each is asked from a count on") {
    // 1 needs 8.00; from 4 on the worst is 5: 16.00 / 5 = 3.20
    Book book = bun_book();
    Papers const papers(book);
    Table const& tiers = table(papers.client, "tiers");
    CHECK(tiers.title == "Price each by quantity");
    REQUIRE(tiers.rows.size() == 2);
    CHECK(row(tiers, 0) == List{"Bun", "1", "3", "8.00"});
    CHECK(row(tiers, 1) == List{"Bun", "4", "12", "3.20"});
    CHECK(tiers.remark == "What is ordered has the price that stands above."); // 2.00
}

TEST_CASE("the client is told where no more is asked than for more") {
    Book book = bun_book(); // 4 that are ordered are 8.00
    CHECK(section<Remarks>(Papers(book).client, "tier_caps")->lines ==
          List{"No more is asked for 2 or 3 than for 4: 8.00."});
    formula(book, "roll", {{"flour", "100 g"}}).makes = quantity("1");
    wants(book.orders[0], "roll", 4);
    CHECK(section<Remarks>(Papers(book).client, "tier_caps")->lines ==
          List{"Bun: No more is asked for 2 or 3 than for 4: 8.00."});
    CHECK(says(table(Papers(book).client, "tiers").remark, "and the rest as above"));
    book.orders[0].lines.pop_back();
    book.orders[0].quantity_breaks = {4};
    CHECK(section<Remarks>(Papers(book).client, "tier_caps") == nullptr);
}

TEST_CASE("caps are told in the language of the shop") {
    Book book = bun_book();
    book.shop.sheets.words = Words("de");
    CHECK(section<Remarks>(Papers(book).client, "tier_caps")->lines ==
          List{"Für 2 oder 3 wird nicht mehr verlangt als für 4: 8.00."});
    book.orders[0].quantity_breaks = {1};
    book.orders[0].lines[0].count = 8;
    CHECK(section<Remarks>(Papers(book).client, "tier_caps")->lines ==
          List{"Für 3 bis 7 wird nicht mehr verlangt als für 8: 16.00."});
}

TEST_CASE("with a discount the prices are said to be those before it") {
    Book book = bun_book();
    book.orders[0].discount = share_of<Surcharge>("10 %");
    CHECK(says(table(Papers(book).client, "tiers").remark,
               "before what is added to the goods or taken off them"));
}

TEST_CASE("the maker sees what a tier earns where it earns least, and what its last count needs") {
    Book book = bun_book();
    Papers const papers(book);
    Table const& tiers = table(papers.maker, "tiers");
    REQUIRE(tiers.rows.size() == 2);
    CHECK(row(tiers, 0) == List{"Bun", "1", "3", "8.00", "1", "4.00", "50.0", "2.67"});
    CHECK(row(tiers, 1) == List{"Bun", "4", "12", "3.20", "5", "1.60", "50.0", "2.00"});
    auto const& remarks = section<Remarks>(papers.maker, "tier_remarks")->lines;
    REQUIRE(remarks.size() == 3);
    CHECK(remarks[0] == "No more is asked for 2 or 3 than for 4: 8.00.");
    CHECK(remarks[1] ==
          "Bun, from 1: 8.00 is far above the 2.67 that 3 would need; with a start at 2 "
          "as well, 4.00 would do from there on.");
    CHECK(remarks[2] ==
          "Bun, from 4: 3.20 is far above the 2.00 that 12 would need; with a start at "
          "7 as well, 2.67 would do from there on."); // 9: 24.00 / 9
}

TEST_CASE("without quantity breaks nothing is said of them") {
    Book book = bun_book();
    book.orders[0].quantity_breaks.clear();
    Papers const papers(book);
    CHECK(section<Table>(papers.client, "tiers") == nullptr);
    CHECK(section<Table>(papers.maker, "tiers") == nullptr);
    CHECK(section<Remarks>(papers.maker, "tier_remarks") == nullptr);
}
