#include <groat/paper/csv.hpp>

#include "hostile_sheet.hpp"

#include <doctest/doctest.h>

using namespace groat;
using namespace groat::test;

TEST_CASE("a sheet row by row, with units in a column of their own where a column mixes them") {
    CHECK(to_csv(sheet_of("words")) == "\xEF\xBB\xBF"
                                       "words\r\n"
                                       "words\r\n"
                                       "\r\n"
                                       "words\r\n"
                                       "words,words,\r\n"
                                       "Money,1.50,USD\r\n"
                                       "\r\n"
                                       "words\r\n"
                                       "words,words,Unit\r\n"
                                       "words,35.2,%\r\n"
                                       "words,1234,g\r\n"
                                       "words\r\n"
                                       "\r\n"
                                       "words\r\n"
                                       "words\r\n");
}

TEST_CASE("the unit of a column stands in its title where it is one") {
    Sheet sheet{"x", "maker", {}, "title", {}};
    sheet.sections.emplace_back(Table{
        "t",
        "",
        {{"a", "Item", true}, {"b", "Weight"}, {"c", ""}},
        {{"1", {"flour", Figure{"2.5 kg", 2500, "g"}, Figure{"-0.30", Number(-3) / 10, "USD"}}},
         {"2", {"salt", {}, {}}}},
        {}});
    CHECK(to_csv(sheet) ==
          "\xEF\xBB\xBFtitle\r\n\r\nItem,Weight (g),USD\r\nflour,2500,-0.30\r\nsalt,,\r\n");
}

TEST_CASE("a table without titles has no row of them") {
    Sheet sheet{"x", "maker", {}, "title", {}};
    sheet.sections.emplace_back(
        Table{"t", "", {{"a", "", true}, {"b", "", true}}, {{"1", {"bun", "contains milk"}}}, {}});
    CHECK(to_csv(sheet) == "\xEF\xBB\xBFtitle\r\n\r\nbun,contains milk\r\n");
}

TEST_CASE("what a spreadsheet would take for a formula is made harmless") {
    for (std::string const words : {"=1+1", "+1", "-1", "@sum"})
        CHECK(to_csv(sheet_of(words)).find("\r\n'" + words + "\r\n") != std::string::npos);
    CHECK(to_csv(sheet_of("=a,\"b\"")).find("\r\n\"'=a,\"\"b\"\"\"\r\n") != std::string::npos);
}

TEST_CASE("hostile words stay in their cell") {
    std::string const text = to_csv(sheet_of(hostile));
    CHECK(text.find("\x1B") == std::string::npos);
    CHECK(text.find("\nnext line") == std::string::npos);
    CHECK(text.find("\"\"quoted\"\"") != std::string::npos);
}

TEST_CASE("a table without rows is not there; one with a remark says only that") {
    Table table{"t", "Lines", {{"item", "Item", true}, {"amount", "Amount"}}, {}, "Said below."};
    std::string text = to_csv({"x", "maker", {}, "Title", {table}});
    CHECK(text.find("Lines\r\n") != std::string::npos);
    CHECK(text.find("Said below.") != std::string::npos);
    CHECK(text.find("Amount") == std::string::npos);
    table.remark.clear();
    text = to_csv({"x", "maker", {}, "Title", {table}});
    CHECK(text.find("Lines") == std::string::npos);
}
