#include <groat/base/json_text.hpp>

#include <doctest/doctest.h>

using namespace groat;

TEST_CASE("text goes into JSON with its quotation marks and strokes kept") {
    CHECK(json_text::in_quotes("a \"tray\"") == "\"a \\\"tray\\\"\"");
    CHECK(json_text::in_quotes("\\s*") == "\"\\\\s*\"");
}

TEST_CASE("words become a list to choose from") {
    constexpr std::string_view words[] = {"yes", "no"};
    CHECK(json_text::enumeration(words) == "{\"enum\": [\"yes\", \"no\"]}");
    CHECK(json_text::joined({"a", "b"}, "; ") == "a; b");
    CHECK(json_text::list_of({}) == "[]");
}
