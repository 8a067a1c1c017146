#include <groat/desk/import.hpp>

#include "sheets.hpp"

using namespace groat;
using namespace groat::test;

namespace {

std::string const map_text = "supplier: the mill\n"
                             "columns: {code: Code, name: Name, pack: Pack, price: Price}\n"
                             "items: {F1: flour, B1: butter}\n";
std::string const header = "Code,Name,Pack,Price\n";

/// Books in which the mill sells flour at 2.00 and butter at 9.00 the kilogram.
desk::OpenBooks mill() {
    Book book = a_book();
    food(book, "flour", "1 kg", "2.00");
    food(book, "butter", "1 kg", "9.00");
    desk::OpenBooks books;
    books.linked = linked(book);
    return books;
}

std::optional<desk::Imported> imported(desk::OpenBooks& books, std::string const& rows,
                                       std::string const& more = "") {
    auto map = desk::import_map_of({"mill.yaml", map_text + more}, books);
    REQUIRE_MESSAGE(map.has_value(), render(books.found, books.sources));
    map->from = day("2026-12-07");
    return desk::import_csv(*map, {"list.csv", header + rows}, today, books);
}

} // namespace

TEST_CASE("an import gives what belongs into the books, and what it changes") {
    desk::OpenBooks books = mill();
    auto const list = imported(books, "F1,Flour,1 kg,2.00\nB1,Butter,1 kg,9.60\n");
    REQUIRE(list.has_value());
    CHECK(books.found.empty());
    CHECK(says(list->document, "# From list.csv, by groat import."));
    CHECK(says(list->document, "from: 2026-12-07"));
    CHECK(says(list->document, "9.60"));
    REQUIRE(section<Table>(list->changes, "up") != nullptr); // butter is dearer, flour the same
    CHECK(table(list->changes, "up").rows.size() == 1);
    CHECK(section<Table>(list->changes, "down") == nullptr);
    CHECK(books.book().offers.size() == 2); // the books themselves are as before
}

TEST_CASE("a receipt becomes a file of purchases") {
    desk::OpenBooks books = mill();
    auto map = desk::import_map_of({"mill.yaml",
                                    "supplier: the mill\nreceipt: yes\n"
                                    "columns: {code: Code, packs: Packs, pack: Pack, paid: Paid}\n"
                                    "items: {F1: flour, B1: butter}\n"},
                                   books);
    REQUIRE_MESSAGE(map.has_value(), render(books.found, books.sources));
    map->from = day("2026-11-20");
    auto const receipt = desk::import_csv(
        *map, {"receipt.csv", "Code,Packs,Pack,Paid\nB1,2,1 kg,18.40\n"}, today, books);
    REQUIRE_MESSAGE(receipt.has_value(), render(books.found, books.sources));
    CHECK(says(receipt->document, "bought: 2026-11-20"));
    CHECK(says(receipt->document, "18.40"));
}

TEST_CASE("a price that is none imports nothing") {
    desk::OpenBooks books = mill();
    CHECK(!imported(books, "F1,Flour,1 kg,2.00\nB1,Butter,1 kg,soon\n"));
    CHECK(books.has_new_errors());
}

TEST_CASE("a pack that its item is not costed by imports nothing") {
    desk::OpenBooks books = mill();
    CHECK(!imported(books, "B1,Butter,1 L,9.60\n"));
    CHECK(books.found.errors() == 1);
}

TEST_CASE("a supplier who is almost a known one is asked about") {
    desk::OpenBooks books = mill();
    auto map = desk::import_map_of(
        {"mill.yaml", "supplier: teh mill\n" + map_text.substr(map_text.find('\n') + 1)}, books);
    REQUIRE(map.has_value());
    map->from = today;
    REQUIRE(desk::import_csv(*map, {"list.csv", header + "F1,Flour,1 kg,2.00\n"}, today, books));
    auto const asked = finding(books.found, "new-supplier");
    REQUIRE(asked.has_value());
    CHECK(asked->help == "did you mean 'the mill'?");
}

TEST_CASE("a map is one document that names what the books have") {
    for (auto const& each : {std::pair("", "empty-file"),
                             std::pair("supplier: a\n---\nsupplier: b\n", "second-document")}) {
        desk::OpenBooks books = mill();
        CHECK(!desk::import_map_of({"mill.yaml", each.first}, books));
        CHECK(finding(books.found, each.second));
    }
    desk::OpenBooks books = mill();
    CHECK(
        !desk::import_map_of({"mill.yaml", map_text + "ignore: []\nitems: {F2: flower}\n"}, books));
    CHECK(books.found.has_errors());
}
