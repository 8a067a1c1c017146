#include <groat/desk/forms.hpp>

#include "sheets.hpp"

#include <groat/paper/json.hpp>
#include <groat/paper/text.hpp>

using namespace groat;
using namespace groat::desk;

namespace {

Sheet titled(std::string title) {
    Sheet sheet;
    sheet.kind = "cost";
    sheet.title = std::move(title);
    return sheet;
}

} // namespace

TEST_CASE("a form is asked for by its word, and is text where nothing is said") {
    Sheet const sheet = titled("Loaf");
    CHECK(drawn(sheet, "") == to_text(sheet));
    CHECK(drawn(sheet, "text") == to_text(sheet));
    CHECK(drawn(sheet, "json") == to_json(sheet));
    CHECK(drawn(sheet, "html").starts_with("<!DOCTYPE html>"));
    CHECK(drawn(sheet, "markdown").starts_with("# Loaf"));
}

TEST_CASE("several sheets stand one below the other, in forms that allow it") {
    std::vector<Sheet> const two{titled("Loaf"), titled("Roll")};
    CHECK(drawn(two, "").value() == to_text(two[0]) + "\n\n" + to_text(two[1]));
    for (std::string const form : {"html", "csv", "json"}) {
        REQUIRE_FALSE(drawn(two, form).has_value());
        CHECK(drawn(std::vector<Sheet>{two[0]}, form).value() == drawn(two[0], form));
    }
}

TEST_CASE("the file of a sheet bears the ending of its form") {
    std::vector<SheetFile> const sheets{{"client/quote", titled("Loaf")}};
    CHECK(files_of(sheets, "text")[0].path == "client/quote.txt");
    CHECK(files_of(sheets, "markdown")[0].path == "client/quote.md");
    CHECK(files_of(sheets, "csv")[0].path == "client/quote.csv");
    CHECK(files_of(sheets, "csv")[0].text == drawn(sheets[0].sheet, "csv"));
}
