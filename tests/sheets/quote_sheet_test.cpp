#include "random_book.hpp"
#include "sheets.hpp"

#include <groat/base/text.hpp>
#include <groat/paper/csv.hpp>
#include <groat/paper/json.hpp>
#include <groat/paper/text.hpp>
#include <groat/price/quote.hpp>
#include <groat/price/quote_for_client.hpp>
#include <groat/sheets/client_quote_sheet.hpp>
#include <groat/sheets/quote_sheet.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <set>

using namespace groat;
using namespace groat::test;

namespace {

/// A quote with its costing, and both of its sheets.
struct Papers {
    explicit Papers(Book const& book) : costing(linked(book), today) {
        Diagnostics found;
        auto made = groat::quote(costing, book.orders.front(), found);
        REQUIRE_MESSAGE(made.has_value(), in_words(found));
        quote = std::move(*made);
        client = client_quote_sheet(quote_for_client(quote, book), book.shop);
        maker = maker_quote_sheet(quote, costing);
    }
    Costing costing;
    Quote quote;
    Sheet client;
    Sheet maker;
};

/// A sandwich of a wheaten shell and a cold filling, in boxes of twelve, on all possible terms.
Book sandwich_book() {
    Book book = a_book();
    book.shop.address = {"1 Test Lane", "Testbury"};
    book.shop.contact = "orders at the door";
    food(book, "flour", "25 lb", "13.80").allergens = {find_allergen("wheat")};
    food(book, "butter", "1 lb", "4.20").allergens = {find_allergen("milk")};
    supply(book, "window box", "50", "31.00");
    role(book, "baker", "21.00", "12 %");
    Formula& shell = formula(book, "shell", {{"flour", "620 g"}});
    shell.portion = quantity("24 g");
    shell.labour.push_back(task("mix", "baker", "14"));
    Formula& filling = formula(book, "filling", {{"butter", "500 g"}});
    filling.keeping = {KeepAt::cold, 4};
    Formula& sandwich = formula(book, "butter sandwich", {{"shell", "2"}, {"filling", "16 g"}});
    sandwich.makes = quantity("1");
    sold_as(sandwich, "box of 12", "12").packing.push_back(uses("window box", "1", Per::sale_unit));
    book.shop.price = at_margin("45 %");
    book.shop.tax.rate = share_of<TaxRate>("8.25 %");
    book.shop.tax.name = "sales tax";
    book.shop.terms = {"Collection from the back door."};
    Order& wanted = order(book);
    wants(wanted, "butter sandwich", 4, "box of 12");
    link_well(book);
    return book;
}

std::vector<std::string> row_keys(Table const& table) {
    std::vector<std::string> keys;
    for (Row const& row : table.rows) keys.push_back(row.key);
    return keys;
}

void collect_keys(nlohmann::ordered_json const& json, std::set<std::string>& keys) {
    if (json.is_object())
        for (auto const& [key, value] : json.items()) {
            keys.insert(key);
            collect_keys(value, keys);
        }
    else if (json.is_array())
        for (auto const& value : json) collect_keys(value, keys);
}

std::string lower(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return text;
}

} // namespace

TEST_CASE("a client's quote says what, how many, at what price, and what it comes to") {
    Book const book = sandwich_book();
    Papers const papers(book);
    CHECK(papers.client.audience == "client");
    CHECK(papers.client.title == "Quote 2026-041");
    CHECK(papers.client.letterhead == std::vector<std::string>{"Bakery of the Test",
                                                               "1 Test Lane, Testbury",
                                                               "orders at the door"});
    Table const& lines = table(papers.client, "lines");
    CHECK(shown(lines, "1", "item") == "Butter sandwich, box of 12");
    CHECK(shown(lines, "1", "count") == "4");
    CHECK(number(shown(lines, "1", "unit_price")) * 4 == number(shown(lines, "1", "amount")));
    CHECK(row_keys(lines) == std::vector<std::string>{"1", "subtotal", "tax", "total"});
    CHECK(shown(lines, "tax", "item") == "Sales tax 8.25 %");
    CHECK(shown(papers.client, "order", "client") == "Reading Circle");
}

TEST_CASE("a quote without tax or terms is its lines and their total") {
    Book book = sandwich_book();
    book.shop.tax.rate = {};
    CHECK(row_keys(table(Papers(book).client, "lines")) == std::vector<std::string>{"1", "total"});
}

TEST_CASE("discount, minimum, rush, delivery, tax, deposit and balance stand in that order") {
    Book book = sandwich_book();
    book.shop.minimum_order = money("500.00");
    book.shop.deposit = share_of<Share>("30 %");
    book.shop.cash_rounding = money("0.05");
    Order& wanted = book.orders[0];
    wanted.rush = share_of<Surcharge>("10 %");
    wanted.discount = money("0.03");
    wanted.delivery = Delivery{quantity("0 km"), DeliveryCharge::amount, money("12.00")};
    Table const lines = table(Papers(book).client, "lines");
    CHECK(row_keys(lines) == std::vector<std::string>{"1", "subtotal", "discount", "minimum",
                                                      "rush", "delivery", "tax", "total", "deposit",
                                                      "balance", "cash"});
    CHECK(shown(lines, "discount", "amount") == "0.00");
    CHECK(shown(lines, "discount", "item") == "Discount, down to the minimum order");
    CHECK(shown(lines, "rush", "item") == "Rush surcharge of 10 %");
    CHECK(shown(lines, "deposit", "item") == "Deposit of 30 % on ordering");
    CHECK(number(shown(lines, "deposit", "amount")) + number(shown(lines, "balance", "amount")) ==
          number(shown(lines, "total", "amount")));
    CHECK(what_does_not_add_up(lines, "USD").empty());
}

TEST_CASE("a rush and a discount of one size are both shown, below a subtotal") {
    Book book = sandwich_book();
    book.shop.tax.rate = {};
    book.orders[0].rush = money("5.00");
    book.orders[0].discount = money("5.00");
    CHECK(row_keys(table(Papers(book).client, "lines")) ==
          std::vector<std::string>{"1", "subtotal", "discount", "rush", "total"});
}

TEST_CASE("where there are several rates, each says what it is of, on both sheets") {
    // a box of 12 at 30.00 and a stand at 12.00 that is not taxed; a drive of 7.00 is shared 5.00 and 2.00
    Book book = sandwich_book();
    Order& wanted = book.orders[0];
    wanted.lines[0].count = 1;
    wanted.lines[0].price = at_price("30.00");
    wanted.extras.push_back(
        {"hire of a cake stand", 1, money("12.00"), money("5.00"), named("none"), 0});
    wanted.delivery = Delivery{quantity("0 km"), DeliveryCharge::amount, money("7.00")};
    wanted.delivery->is_both_ways = true;
    Papers const papers(book);
    Table const& lines = table(papers.client, "lines");
    CHECK(row_keys(lines) ==
          std::vector<std::string>{"1", "2", "subtotal", "delivery", "tax", "tax", "total"});
    CHECK(shown(lines.rows[0].cells[0]) == "Hire of a cake stand");
    CHECK(shown(lines.rows[1].cells[0]) == "Butter sandwich, box of 12");
    CHECK(shown(lines.rows[4].cells[0]) == "Sales tax 8.25 % on 35.00");
    CHECK(shown(lines.rows[4].cells[3]) == "2.89"); // 2.8875
    CHECK(shown(lines.rows[5].cells[0]) == "Sales tax 0 % on 14.00");
    Table const& taxes = table(papers.maker, "taxes");
    CHECK(shown(taxes, "1", "taxable") == "35.00");
    CHECK(shown(taxes, "2", "taxable") == "14.00");
    CHECK(shown(taxes, "total", "taxable") == "49.00");
    CHECK(shown(table(papers.maker, "order_costs"), "other", "cost") == "5.00");
    CHECK(section<Table>(Papers(sandwich_book()).maker, "taxes") == nullptr);
}

TEST_CASE(
    "what a discount leaves stands on the worksheet by line and for all, marked where too little") {
    Book book = sandwich_book();
    CHECK(section<Table>(Papers(book).maker, "after_discount") == nullptr);
    book.orders[0].discount = share_of<Surcharge>("10 %");
    Table const some = table(Papers(book).maker, "after_discount");
    CHECK(shown(some, "1", "mark") == "below target");
    CHECK(shown(some, "goods", "after") == shown(some, "1", "after"));
    CHECK(shown(some, "goods", "mark") == "below target");
    book.orders[0].discount = share_of<Surcharge>("60 %");
    CHECK(shown(table(Papers(book).maker, "after_discount"), "goods", "mark") == "below cost");
    book.orders[0].is_discount_in_price = true;
    CHECK(shown(table(Papers(book).maker, "after_discount"), "1", "mark").empty());
}

TEST_CASE("the worksheet says how far was counted, one way or both, and whose time") {
    Book book = sandwich_book();
    role(book, "driver", "18.00", "10 %");
    book.shop.driver = named("driver");
    book.shop.delivery_rate = rate("0.70", "mi");
    Delivery drive{quantity("12 mi"), DeliveryCharge::at_cost, {}};
    book.orders[0].delivery = drive;
    link_well(book);
    CHECK(shown(table(Papers(book).maker, "delivery"), "way", "what") ==
          "12 mi as driven, one way");
    book.orders[0].delivery->is_both_ways = true;
    book.orders[0].delivery->minutes = 40;
    Table const both = table(Papers(book).maker, "delivery");
    CHECK(shown(both, "way", "what") == "24 mi as driven, both ways");
    CHECK(shown(both, "way", "cost") == "16.80");
    CHECK(shown(both, "time", "what") == "40 minutes of driver");
    CHECK(shown(both, "time", "cost") == "13.20");
    CHECK(shown(both, "total", "cost") == "30.00");
}

TEST_CASE("prices hold no longer than until the day the goods are wanted, and the sheets say so") {
    Book book = sandwich_book();
    book.shop.valid = Days(14);
    book.orders[0].due = day("2026-12-01");
    Papers const papers(book);
    CHECK(says(to_text(papers.client),
               "These prices hold until 1 December 2026, the day it is wanted."));
    CHECK(shown(papers.maker, "order", "validity").starts_with("ends on the day it is wanted"));
}

TEST_CASE("tax that prices contain is told below the total, not added to it") {
    Book book = sandwich_book();
    book.shop.tax.is_contained = true;
    Table const lines = table(Papers(book).client, "lines");
    CHECK(row_keys(lines) == std::vector<std::string>{"1", "total", "tax"});
    CHECK(shown(lines, "tax", "item") == "Of this sales tax 8.25 %");
}

TEST_CASE("a client is told what is in it and how to keep it") {
    Book const book = sandwich_book();
    Papers const papers(book);
    CHECK(shown(table(papers.client, "contains"), "butter sandwich", "words") ==
          "Contains milk, wheat; keep cold, at or below 5 °C (41 °F); eat within 4 days.");
    Remarks const* cautions = section<Remarks>(papers.client, "cautions");
    REQUIRE(cautions != nullptr);
    CHECK(cautions->lines.size() == 3); // allergens, the cold, tax
}

TEST_CASE("what needs no cold brings no caution of it, what has no allergen on record says so") {
    Book book = sandwich_book();
    book.formulas[1].keeping = {};
    for (Ingredient& each : book.ingredients) each.allergens.clear();
    Papers const papers(book);
    CHECK(shown(table(papers.client, "contains"), "butter sandwich", "words") ==
          "No allergen stands in our records.");
    CHECK(section<Remarks>(papers.client, "cautions")->lines.size() == 2);
}

TEST_CASE("terms, notes and the day until which prices hold are said") {
    Book book = sandwich_book();
    book.shop.valid = Days(14);
    book.orders[0].notes = "Names on the boxes, please.";
    Papers const papers(book);
    CHECK(section<Remarks>(papers.client, "notes")->lines ==
          std::vector<std::string>{"Names on the boxes, please."});
    CHECK(section<Remarks>(papers.client, "terms")->lines ==
          std::vector<std::string>{"These prices hold until 9 December 2026.",
                                   "Collection from the back door."});
    CHECK(section<Remarks>(Papers(sandwich_book()).client, "notes") == nullptr);
}

TEST_CASE("a client's quote speaks the language of the shop, the maker's speaks English") {
    Book book = sandwich_book();
    book.shop.sheets.words = Words("de");
    Papers const papers(book);
    CHECK(papers.client.language == "de");
    CHECK(papers.maker.language == "en");
    std::string const client = to_text(papers.client);
    CHECK(says(client, "Gesamtbetrag"));
    CHECK(says(client, "Enthält Milch, Weizen; gekühlt bei höchstens 5 °C lagern"));
    std::string const maker = to_text(papers.maker);
    CHECK(says(maker, "Total"));
    CHECK_FALSE(says(maker, "Gesamtbetrag"));
    // of the client's sheet no English word is left but names and what is nobody's word
    for (auto const* english : {"Total", "Subtotal", "Price", "Count", "Amount", "Contains",
                                "Terms", "Please", "Valid", "Date", "Deposit", "Balance"})
        CHECK_MESSAGE(!says(client, std::string(english) + " "), english);
}

TEST_CASE("the maker's sheet has all that the client's does not say") {
    Book const book = sandwich_book();
    Papers const papers(book);
    CHECK(papers.maker.audience == "maker");
    for (std::string_view const key :
         {"lines", "totals", "yield_loss", "formulas", "ingredients", "supplies", "labour", "ovens",
          "overhead", "formula_costs", "purchases"})
        CHECK_MESSAGE(section<Table>(papers.maker, key) != nullptr, std::string(key));
    CHECK(says(shown(papers.maker, "line_prices", "target", "1"), "a margin of 45 %"));
    CHECK(find_row(table(papers.maker, "line_costs", "1"), "net") != nullptr);
    CHECK(says(to_text(papers.maker), "the mill"));
}

TEST_CASE("both sheets come to the same total") {
    for_random_books(200, [](Book const& book) {
        Papers const papers(book);
        std::string const total = shown(table(papers.client, "lines"), "total", "amount");
        REQUIRE(total == shown(table(papers.maker, "totals"), "total", "amount"));
        REQUIRE(number(total) == papers.quote.totals.total.money().amount());
    });
}

TEST_CASE("on any sheet the printed figures of a column add up to its printed total") {
    for_random_books(200, [](Book const& book) {
        Papers const papers(book);
        std::string_view const code = book.shop.currency.code();
        REQUIRE(what_does_not_add_up(papers.client, code) == "");
        REQUIRE(what_does_not_add_up(papers.maker, code) == "");
        REQUIRE(what_does_not_add_up(papers.maker, "%") == "");
    });
}

TEST_CASE("on any maker's sheet a figure is the same number wherever it stands") {
    for_random_books(200, [](Book const& book) {
        Papers const papers(book);
        Table const& costs = table(papers.maker, "order_costs");
        auto const of = [&](std::string_view category) {
            return find_row(costs, category) == nullptr ? Number()
                                                        : number(shown(costs, category, "cost"));
        };
        auto const total = [&](std::string_view key) {
            return number(shown(table(papers.maker, key), "total", "cost"));
        };
        REQUIRE(of("labour") == total("labour"));
        REQUIRE(of("ingredients") == total("ingredients"));
        REQUIRE(of("ingredients") == total("yield_loss"));
        REQUIRE(of("energy") == total("ovens"));
        REQUIRE(of("overhead") == total("overhead"));
        REQUIRE(of("packaging") + of("consumables") == total("supplies"));
        REQUIRE(-of("cost") == number(shown(table(papers.maker, "result"), "cost", "amount")));
        Order const& wanted = book.orders[0];
        if (wanted.delivery) REQUIRE(of("delivery") == total("delivery"));
        Number lines;
        for (std::size_t i = 0; i < wanted.lines.size(); ++i) {
            Table const& line =
                table(papers.maker, "line_costs", fmt::format("{}", number_of_line(wanted, i)));
            lines += number(shown(line, "cost", "all"));
            if (wanted.lines.size() == 1 && find_row(line, "labour") != nullptr)
                REQUIRE(number(shown(line, "labour", "all")) == of("labour"));
        }
        bool const is_apart =
            wanted.delivery && wanted.delivery->charge != DeliveryCharge::in_price;
        REQUIRE(lines == of("cost") - of("other") - (is_apart ? of("delivery") : Number()));
    });
}

TEST_CASE("on any maker's sheet a formula's row adds up to what it costs together") {
    for_random_books(200, [](Book const& book) {
        Papers const papers(book);
        for (Row const& row : table(papers.maker, "formula_costs").rows) {
            Number sum;
            for (std::size_t i = 1; i + 1 < row.cells.size(); ++i)
                sum += number(shown(row.cells[i]));
            REQUIRE(sum == number(shown(row.cells.back())));
        }
    });
}

TEST_CASE("on any maker's sheet the printed minutes that are paid add up to those of all hands") {
    for_random_books(200, [](Book const& book) {
        Papers const papers(book);
        Number sum;
        Table const& labour = table(papers.maker, "labour");
        for (Row const& row : labour.rows)
            if (row.kind == Row::Kind::line && shown(row.cells[2]) != "nobody")
                sum += number(shown(row.cells[4]));
        REQUIRE(sum == number(shown(labour, "total", "minutes")));
    });
}

TEST_CASE("on any client's sheet a line is its printed price times its count, to the coin") {
    for_random_books(200, [](Book const& book) {
        Papers const papers(book);
        Table const& lines = table(papers.client, "lines");
        for (Row const& row : lines.rows) {
            if (row.kind != Row::Kind::line) continue;
            REQUIRE(number(shown(row.cells[1])) * number(shown(row.cells[2])) ==
                    number(shown(row.cells[3])));
        }
        // a spreadsheet's column of units, whose title no words of the shop put right
        REQUIRE(!says(to_csv(papers.client), "Unit"));
    });
}

TEST_CASE("no client's sheet holds a cost, a margin, a supplier or a loss") {
    for_random_books(200, [](Book const& book) {
        Book with_breaks = book;
        with_breaks.orders[0].quantity_breaks = {1, 10};
        Papers const papers(with_breaks);
        std::string const json = to_json(papers.client);
        for (std::string const& paper : {lower(to_text(papers.client)), lower(json)}) {
            for (Supplier const& supplier : book.suppliers)
                REQUIRE(!says(paper, lower(supplier.name)));
            for (std::string_view const word :
                 {"zarnitz", "cost", "margin", "markup", "profit", "contribution", "supplier",
                  "wage", "overhead", "yield", "trim"})
                REQUIRE_MESSAGE(!says(paper, word), std::string(word));
        }
        std::set<std::string> keys;
        collect_keys(nlohmann::ordered_json::parse(json), keys);
        for (std::string const& key : keys)
            for (std::string_view const word :
                 {"cost", "margin", "markup", "food_cost", "wanted", "profit", "fee", "loss",
                  "supplier", "purchase", "burden", "target", "labour", "overhead"})
                REQUIRE_MESSAGE(!says(key, word), key);
    });
}

TEST_CASE("no client's sheet changes when only what things cost does, at given prices") {
    // Prices that are given do not depend on cost: then nothing on the sheet may.
    for_random_books(200, [](Book const& book) {
        Book fixed = book;
        for (OrderLine& line : fixed.orders[0].lines)
            line.price = aims_at(GivenPrice{{7, fixed.shop.currency}});
        if (fixed.orders[0].delivery && fixed.orders[0].delivery->charge == DeliveryCharge::at_cost)
            fixed.orders[0].delivery.reset();
        Book dearer = fixed;
        for (Offer& offer : dearer.offers) offer.price *= 3;
        for (Role& role : dearer.shop.roles) role.wage.amount *= 2;
        REQUIRE(to_json(Papers(fixed).client) == to_json(Papers(dearer).client));
    });
}

TEST_CASE("any sheet fits the paper, as text and as JSON") {
    for_random_books(50, [](Book const& book) {
        Papers const papers(book);
        for (Sheet const* sheet : {&papers.client, &papers.maker}) {
            std::string const text = to_text(*sheet, 100);
            for (std::size_t at = 0, end = 0; at < text.size(); at = end + 1) {
                end = text.find('\n', at);
                REQUIRE(display_width(text.substr(at, end - at)) <= 100);
            }
            REQUIRE(nlohmann::ordered_json::accept(to_json(*sheet)));
        }
    });
}
