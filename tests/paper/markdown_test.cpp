#include <groat/paper/markdown.hpp>

#include "hostile_sheet.hpp"

#include <doctest/doctest.h>

using namespace groat;
using namespace groat::test;

TEST_CASE("a sheet as headings and tables") {
    CHECK(to_markdown(sheet_of("words")) == "words  \n"
                                            "\n"
                                            "# words\n"
                                            "\n"
                                            "## words\n"
                                            "\n"
                                            "| | |\n"
                                            "|---|---|\n"
                                            "| words | words |\n"
                                            "| Money | 1.50 USD |\n"
                                            "\n"
                                            "## words\n"
                                            "\n"
                                            "| words | words |\n"
                                            "| --- | --: |\n"
                                            "| words | 35.2 % |\n"
                                            "| **words** | **1.234 kg** |\n"
                                            "\n"
                                            "words\n"
                                            "\n"
                                            "## words\n"
                                            "\n"
                                            "- words\n");
}

TEST_CASE("hostile words make neither markup nor a new line") {
    std::string const text = to_markdown(sheet_of(hostile));
    CHECK(text.find("<script") == std::string::npos);
    CHECK(text.find("\x1B") == std::string::npos);
    CHECK(text.find("\u202E") == std::string::npos);
    CHECK(text.find(" | * ") == std::string::npos); // a bar in words is escaped
    CHECK(text.find(" \\| \\* \\_ \\` ") != std::string::npos);
    CHECK(text.find("\nnext line") == std::string::npos);
}

TEST_CASE("a table without rows is not there; one with a remark says only that") {
    Table table{"t", "Lines", {{"item", "Item", true}, {"amount", "Amount"}}, {}, "Said below."};
    std::string text = to_markdown({"x", "maker", {}, "Title", {table}});
    CHECK(text.find("## Lines") != std::string::npos);
    CHECK(text.find("Said below.") != std::string::npos);
    CHECK(text.find("Amount") == std::string::npos);
    table.remark.clear();
    text = to_markdown({"x", "maker", {}, "Title", {table}});
    CHECK(text.find("Lines") == std::string::npos);
}
