#include "sheets.hpp"

#include <groat/base/text.hpp>
#include <groat/paper/text.hpp>

using namespace groat;
using namespace groat::test;

namespace {

Figure dollars(std::string_view amount) { return {std::string(amount), number(amount), "USD"}; }

/// A letterhead, facts, a table and a remark.
Sheet some_sheet() {
    Sheet sheet{"quote", "client", {"Bakery of the Test", "1 Test Lane"}, "Quote 2026-041"};
    sheet.sections.emplace_back(Facts{
        "order",
        "",
        {{"client", "For", std::string("Reading Circle")}, {"total", "Total", dollars("31.50")}}});
    sheet.sections.emplace_back(Table{
        "lines",
        "Lines",
        {{"item", "", true}, {"share", "Share"}, {"amount", "Amount"}},
        {{"1",
          {std::string("Rye plum sandwich"), Figure{"40.0", number("2/5"), "%"}, dollars("21.00")}},
         {"2", {std::string("Bun"), {}, dollars("9.50")}},
         {"total", {std::string("Total"), {}, dollars("30.50")}, Row::Kind::total}},
        "A remark below."});
    sheet.sections.emplace_back(Remarks{"terms", "Terms", {"Paid on ordering.", "Thank you."}});
    return sheet;
}

std::vector<std::string> lines_of(std::string const& text) {
    std::vector<std::string> lines;
    for (std::size_t at = 0; at < text.size();) {
        std::size_t const end = text.find('\n', at);
        REQUIRE(end != std::string::npos); // each line ends
        lines.push_back(text.substr(at, end - at));
        at = end + 1;
    }
    return lines;
}

/// The line that holds some words.
std::string line_with(std::string const& text, std::string_view words) {
    for (std::string const& line : lines_of(text))
        if (says(line, words)) return line;
    FAIL("no line says " << std::string(words));
    return {};
}

} // namespace

TEST_CASE("a sheet opens with who it is from and what it is") {
    auto const lines = lines_of(to_text(some_sheet()));
    REQUIRE(lines.size() > 4);
    CHECK(lines[0] == "Bakery of the Test");
    CHECK(lines[1] == "1 Test Lane");
    CHECK(lines[2].empty());
    CHECK(lines[3] == "Quote 2026-041");
}

TEST_CASE("money that stands alone says its currency, in a column it does not") {
    std::string const text = to_text(some_sheet());
    CHECK(line_with(text, "31.50") == "Total  31.50 USD");
    CHECK(!says(line_with(text, "21.00"), "USD"));
    CHECK(says(line_with(text, "21.00"), "40.0 %"));
}

TEST_CASE("figures of a column end under one another") {
    std::string const text = to_text(some_sheet());
    std::size_t const width = display_width(line_with(text, "21.00"));
    CHECK(display_width(line_with(text, "9.50")) == width);
    CHECK(display_width(line_with(text, "30.50")) == width);
    CHECK(display_width(line_with(text, "Amount")) == width);
}

TEST_CASE("names of any script leave the figures aligned") {
    Sheet sheet = some_sheet();
    auto& rows = std::get<Table>(sheet.sections[1]).rows;
    rows[0].cells[0] = std::string("月餅 mooncake");
    rows[1].cells[0] = std::string("phở bò 🥐");
    std::string const text = to_text(sheet);
    CHECK(display_width(line_with(text, "月餅")) == display_width(line_with(text, "9.50")));
}

TEST_CASE("no line is wider than the paper, and no line ends in blanks") {
    for (std::size_t const columns : {50U, 60U, 80U, 120U}) {
        for (std::string const& line : lines_of(to_text(some_sheet(), columns))) {
            CHECK(display_width(line) <= columns);
            CHECK((line.empty() || line.back() != ' '));
        }
    }
}

TEST_CASE("a long name breaks between words, figures never break") {
    Sheet sheet = some_sheet();
    std::get<Table>(sheet.sections[1]).rows[0].cells[0] =
        std::string("Rye plum sandwich with cardamom sugar and a very long name, box of 12");
    std::string const text = to_text(sheet, 50);
    CHECK(says(text, "21.00"));
    for (std::string const& line : lines_of(text)) CHECK(display_width(line) <= 50);
    std::string words;
    for (char const c : text) words += c == '\n' ? ' ' : c;
    for (std::string_view const word : {"cardamom", "sugar", "very", "long"})
        CHECK(says(words, word));
}

TEST_CASE("a name cannot steer the terminal") {
    Sheet sheet = some_sheet();
    sheet.letterhead[0] = "Bakery \x1b[31mred\x1b[0m";
    std::get<Table>(sheet.sections[1]).rows[0].cells[0] = std::string("bun\nTotal  0.00\x07");
    std::get<Remarks>(sheet.sections[2]).lines[0] = "a\rb\u202Ec";
    std::string const text = to_text(sheet);
    CHECK(text.find('\x1b') == std::string::npos);
    CHECK(text.find('\x07') == std::string::npos);
    CHECK(text.find('\r') == std::string::npos);
    CHECK(text.find("\u202E") == std::string::npos);
    CHECK(says(text, "bun Total"));
}

TEST_CASE("remarks without a word take no place") {
    Sheet sheet = some_sheet();
    std::get<Remarks>(sheet.sections[2]).lines.clear();
    CHECK(!says(to_text(sheet), "Terms"));
}

TEST_CASE("a row may be shorter than the table") {
    Sheet sheet = some_sheet();
    std::get<Table>(sheet.sections[1]).rows[1].cells = {std::string("Bun")};
    CHECK(line_with(to_text(sheet), "Bun") == "Bun");
}

TEST_CASE("a list of names and what is said of each has the words right beside the names") {
    Sheet sheet{"quote", "client", {}, "Title"};
    sheet.sections.emplace_back(Table{"contains",
                                      "",
                                      {{"item", "", true}, {"words", "", true}},
                                      {{"a", {std::string("Bun"), std::string("Milk.")}},
                                       {"b", {std::string("Lemon tart"), std::string("Egg.")}}},
                                      {}});
    std::string const text = to_text(sheet);
    CHECK(line_with(text, "Milk") == "Bun         Milk.");
    CHECK(line_with(text, "Egg") == "Lemon tart  Egg.");
}

TEST_CASE("a name without a blank breaks where the table would be too wide, and only there") {
    Sheet sheet = some_sheet();
    auto& rows = std::get<Table>(sheet.sections[1]).rows;
    for (std::string const& name :
         {std::string(200, 'x'), std::string("Donaudampfschiffahrtstorte") + std::string(40, 'n'),
          std::string("月餅月餅月餅月餅月餅月餅月餅月餅月餅月餅月餅月餅")}) {
        CAPTURE(name);
        rows[0].cells[0] = name;
        for (std::size_t const columns : {40U, 80U}) {
            std::string const text = to_text(sheet, columns);
            std::string letters;
            for (std::string const& line : lines_of(text)) {
                CHECK(display_width(line) <= columns);
                letters += line.substr(0, line.find("  "));
            }
            CHECK(says(letters, name)); // nothing of it is lost
            CHECK(says(text, "40.0 %"));
            CHECK(says(text, "21.00"));
        }
    }
    rows[0].cells[0] = std::string(40, 'x');
    CHECK(says(to_text(sheet), std::string(40, 'x')));
}

TEST_CASE("another column gives way before a word breaks") {
    Sheet sheet{"x", "maker", {}, "Title"};
    sheet.sections.emplace_back(
        Table{"t",
              "",
              {{"item", "Item", true}, {"words", "What is said of it", true}},
              {{"1",
                {std::string("Nussschneckenteig mit Mandeln"),
                 std::string("one two three four five six seven eight nine ten eleven")}}},
              {}});
    std::string const text = to_text(sheet, 36);
    CHECK(says(text, "Nussschneckenteig"));
    for (std::string const& line : lines_of(text)) CHECK(display_width(line) <= 36);
}

TEST_CASE("long titles of figures break last of all, and the figures stay whole") {
    Sheet sheet{"x", "maker", {}, "Title"};
    Table table{"t", "", {{"item", "", true}}, {{"1", {std::string("bun")}}}, {}};
    for (int i = 0; i < 6; ++i) {
        table.columns.push_back({std::to_string(i), std::string(30, static_cast<char>('a' + i))});
        table.rows[0].cells.emplace_back(dollars("12345.67"));
    }
    sheet.sections.emplace_back(table);
    std::string const text = to_text(sheet);
    for (std::string const& line : lines_of(text)) CHECK(display_width(line) <= 80);
    std::size_t whole = 0;
    std::string const row = line_with(text, "bun");
    for (std::size_t at = row.find("12345.67"); at != row.npos; at = row.find("12345.67", at + 1))
        ++whole;
    CHECK(whole == 6);
}

TEST_CASE("a table without rows is not there; one with a remark says only that") {
    Sheet sheet = some_sheet();
    auto& table = std::get<Table>(sheet.sections[1]);
    table.rows.clear();
    std::string text = to_text(sheet);
    CHECK(says(text, "Lines\n"));
    CHECK(says(text, "A remark below."));
    CHECK(!says(text, "Amount"));
    table.remark.clear();
    text = to_text(sheet);
    CHECK(!says(text, "Lines"));
    CHECK(!says(text, "\n\n\n"));
}
