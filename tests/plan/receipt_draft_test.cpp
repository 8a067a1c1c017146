#include <groat/books/read_receipts.hpp>
#include <groat/books/write_receipt.hpp>
#include <groat/plan/buying.hpp>
#include <groat/plan/receipt_draft.hpp>
#include <groat/yaml/tree.hpp>

#include "books.hpp"

using namespace groat;
using namespace groat::test;

namespace {

/// Ten loaves: 6 kg of flour from the mill, 200 g of butter from the farm.
Book bakery() {
    Book book = a_book();
    food(book, "flour");
    food(book, "butter");
    offer(book, "flour", "2 1/2 kg", "4.00", "the mill");
    offer(book, "butter", "250 g", "2.50", "the farm");
    formula(book, "loaf", {{"flour", "600 g"}, {"butter", "20 g"}}).makes = quantity("1");
    wants(order(book), "loaf", 10);
    return book;
}

std::vector<Receipt> drafts_of(Book& book) {
    link_well(book);
    Diagnostics found;
    auto const buying = buy(Costing(linked(book), today), {&book.orders.front()}, found);
    REQUIRE_MESSAGE(buying.has_value(), in_words(found));
    return drafted_receipts(buying->baskets, buying->date, book);
}

/// As the loader reads a file of `purchases/`.
Receipt read_back(std::string const& text) {
    Sources sources;
    Diagnostics found;
    std::uint32_t const file = sources.add("purchases/draft.yaml", text);
    auto const tree = read_tree(sources, file, found);
    REQUIRE(tree.documents.size() == 1);
    Receipt receipt = read_receipt(tree.documents.front(), {found, currency("USD"), Measures::us});
    CHECK_MESSAGE(found.empty(), in_words(found));
    return receipt;
}

} // namespace

TEST_CASE("a receipt for each supplier, of the day of buying") {
    Book book = bakery();
    auto const drafts = drafts_of(book);
    REQUIRE(drafts.size() == 2);
    CHECK(drafts[0].supplier.name == "the mill");
    CHECK(drafts[0].bought == today);
    REQUIRE(drafts[0].items.size() == 1);
    CHECK(drafts[0].items[0].packs == 3);
    CHECK(drafts[0].items[0].paid == money("12.00"));
    CHECK(drafts[1].items[0].paid == money("2.50"));
    CHECK(drafts[1].items[0].deposit.is_zero());
}

TEST_CASE(
    "freight and deposit of all packs are in what is paid, and the tax that prices contain; a delivery is not") {
    Book book = bakery();
    Offer& flour = book.offers.front();
    flour.freight = money("0.20");
    flour.deposit = money("0.50");
    flour.tax_included = share_of<TaxRate>("7 %");
    book.suppliers[0].delivery = money("6.00");
    auto const drafts = drafts_of(book);
    BoughtPacks const& bought = drafts[0].items[0];
    CHECK(bought.paid == money("14.10")); // 3 * (4.00 + 0.20 + 0.50)
    CHECK(bought.deposit == money("1.50"));
    CHECK(bought.tax_included == share_of<TaxRate>("7 %"));
}

TEST_CASE("packs are at the price of so many, and a third of a cent is paid by nobody") {
    Book book = bakery();
    Offer& flour = book.offers.front();
    flour.breaks = {{3, money("10.00") / Number(3) + money("0.001")}};
    CHECK(drafts_of(book)[0].items[0].paid == money("10.00")); // 10.003
}

TEST_CASE("what is drafted reads back with the same figures") {
    Book book = bakery();
    Offer& flour = book.offers.front();
    flour.deposit = money("0.50");
    flour.tax_included = share_of<TaxRate>("7 %");
    flour.pack_text = "2 1/2 kg";
    for (Receipt const& draft : drafts_of(book)) {
        Receipt const back = read_back(write_receipt(draft, "a draft"));
        CHECK(back.bought == draft.bought);
        CHECK(back.supplier.name == draft.supplier.name);
        REQUIRE(back.items.size() == draft.items.size());
        for (std::size_t i = 0; i < back.items.size(); ++i) {
            CHECK(back.items[i].item.name == draft.items[i].item.name);
            CHECK(back.items[i].pack.amount == draft.items[i].pack.amount);
            CHECK(back.items[i].packs == draft.items[i].packs);
            CHECK(back.items[i].paid == draft.items[i].paid);
            CHECK(back.items[i].cost() == draft.items[i].cost());
            CHECK(back.items[i].tax_included == draft.items[i].tax_included);
        }
    }
}
