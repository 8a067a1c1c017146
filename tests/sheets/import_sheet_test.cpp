#include "sheets.hpp"

#include <groat/paper/json.hpp>
#include <groat/paper/text.hpp>
#include <groat/sheets/import_sheet.hpp>

using namespace groat;
using namespace groat::test;

namespace {

struct Desk {
    Book book = a_book();
    Sources sources = {};
    std::vector<Offer> listed = {};

    Desk() {
        Span const where{sources.add("prices/mill.yaml", "a\nb\n"), 2, 1, 1};
        food(book, "flour", "50 lb", "20.00");
        food(book, "sugar", "10 lb", "8.00");
        food(book, "salt", "3 lb", "2.00");
        supply(book, "box", "100", "40.00");
        for (Offer& each : book.offers) each.origin = where;
        link_well(book);
        listed = {book.offers[0], book.offers[1], book.offers[3]};
        listed[0].price = money("21.00");
        listed[0].code = "F-1";
        listed[1].pack = quantity("8 lb");
        listed[1].pack_text = "8 lb";
    }

    Sheet sheet(std::vector<RowLeftOut> unmatched = {}) {
        ImportReport report{"list.csv", "the mill", day("2026-12-01"), today, listed};
        report.changes = price_changes(book, "the mill", listed, today);
        report.unmatched = std::move(unmatched);
        report.rows = 5;
        report.ignored = 1;
        return import_sheet(report, book, sources);
    }
};

} // namespace

TEST_CASE(
    "an import's sheet says whose list it is, of which day, and how many rows became offers") {
    Sheet const sheet = Desk().sheet();
    CHECK(sheet.title == "New prices of the mill");
    CHECK(shown(sheet, "import", "from") == "1 December 2026");
    CHECK(shown(sheet, "import", "date") == "25 November 2026");
    CHECK(shown(sheet, "import", "rows") == "5");
    CHECK(shown(sheet, "import", "offers") == "3");
    CHECK(shown(sheet, "import", "ignored") == "1");
}

TEST_CASE("each change has its old and new price and the percentage") {
    Sheet const sheet = Desk().sheet();
    CHECK(shown(table(sheet, "up"), "1", "item") == "flour");
    CHECK(shown(table(sheet, "up"), "1", "code") == "F-1");
    CHECK(shown(table(sheet, "up"), "1", "was") == "20.00");
    CHECK(shown(table(sheet, "up"), "1", "now") == "21.00");
    CHECK(shown(table(sheet, "up"), "1", "change") == "5.0");
    CHECK(shown(table(sheet, "repacked"), "1", "pack") == "8 lb");
    CHECK(shown(table(sheet, "repacked"), "1", "old_pack") == "10 lb");
    CHECK(shown(table(sheet, "repacked"), "1", "change") == "25.0"); // 10/8 - 1
    CHECK(shown(table(sheet, "unchanged"), "1", "pack") == "pack of 100");
    CHECK(section<Table>(sheet, "down") == nullptr);
    CHECK(section<Table>(sheet, "unmatched") == nullptr);
}

TEST_CASE("what is gone is shown with its place, and that it stays in force") {
    Sheet const sheet = Desk().sheet();
    CHECK(shown(table(sheet, "gone"), "1", "item") == "salt");
    CHECK(shown(table(sheet, "gone"), "1", "where") == "prices/mill.yaml:2");
    CHECK(says(table(sheet, "gone").remark, "until"));
}

TEST_CASE("rows left out are listed by line, harmless whatever they hold") {
    Desk desk;
    Sheet const sheet = desk.sheet({{7, "Z-9", "=HYPERLINK(\"x\")\x1B[31m\nb", "@1"}});
    CHECK(shown(table(sheet, "unmatched"), "1", "line") == "7");
    std::string const text = to_text(sheet);
    CHECK(says(text, "=HYPERLINK(\"x\")\uFFFD[31m b"));
    CHECK_FALSE(says(text, "\x1B"));
    CHECK(says(to_json(sheet), "\"code\": \"Z-9\""));
}

TEST_CASE("what an old offer said by hand is shown before it is lost") {
    Desk desk;
    desk.book.offers[0].yield = share_of<Yield>("90 %");
    Sheet const sheet = desk.sheet();
    CHECK(shown(table(sheet, "lost"), "1", "item") == "flour");
    CHECK(shown(table(sheet, "lost"), "1", "what") == "yield 90 %");
}

TEST_CASE("a remark tells that prices are with freight where there is any") {
    Desk desk;
    CHECK(section<Remarks>(desk.sheet(), "remark") == nullptr);
    desk.listed[0].freight = money("1.00");
    CHECK(section<Remarks>(desk.sheet(), "remark") != nullptr);
}
