#include "reading.hpp"

#include <groat/yaml/text_check.hpp>

#include <doctest/doctest.h>

#include <string>

using groat_test::times;
using groat_test::tree_marks;

namespace {

struct Checked {
    groat::Sources sources;
    groat::Diagnostics found;
    bool is_fine;

    explicit Checked(std::string text) {
        is_fine = is_readable_text(sources, sources.add("x.yaml", std::move(text)), found);
    }
    [[nodiscard]] std::string said() const { return render(found, sources); }
};

} // namespace

TEST_CASE("text in any script is text") {
    CHECK(Checked("crème brûlée: 12 g\nкрем: 3\n蜂蜜: 1\n🍋: 2\n").is_fine);
    CHECK(Checked("").is_fine);
    CHECK(Checked("a:\tb\r\n").is_fine);
}

TEST_CASE("a picture is not mistaken for a price list") {
    CHECK(Checked(std::string("\x89PNG\r\n\x1a\n\0\0\0\rIHDR", 16)).said() ==
          "x.yaml: error: the file is not text: byte 9 is NUL [not-text]\n"
          "  help: these files are written with a text editor and saved as UTF-8\n");
}

TEST_CASE("text saved as UTF-16 is told apart from rubbish, with and without its mark") {
    CHECK(Checked(std::string("\xFF\xFEs\0h\0o\0p\0", 10)).said() ==
          "x.yaml: error: the file is UTF-16 text [not-utf-8]\n"
          "  help: save it as UTF-8\n");
    CHECK_FALSE(Checked(std::string("\xFE\xFF\0s\0h", 6)).is_fine);
    CHECK(Checked(std::string("s\0h\0o\0p\0", 8)).said().find("UTF-16") != std::string::npos);
    CHECK(Checked(std::string("\0s\0h\0o\0p", 8)).said().find("UTF-16") != std::string::npos);
}

TEST_CASE("the first byte that is no UTF-8 is shown, after letters of several bytes as well") {
    // "à la caf" is 8 characters in 9 bytes: the bad byte is number 10, in column 9.
    CHECK(Checked("à la caf\xE9: 1\n").said() ==
          "x.yaml:1:9: error: the file is not UTF-8 text: byte 10 is 0xe9 [not-utf-8]\n"
          "  1 | à la caf\uFFFD: 1\n"
          "    |         ^\n"
          "  help: save it as UTF-8 (in some editors: 'Unicode')\n");
    CHECK_FALSE(Checked("a: \xC0\xAF\n").is_fine);     // overlong
    CHECK_FALSE(Checked("a: \xED\xA0\x80\n").is_fine); // a surrogate
    CHECK_FALSE(Checked("a: \xE2\x82").is_fine);       // cut off
}

TEST_CASE("control characters are refused where they stand") {
    CHECK(Checked("a: 1\nb: \x1B[31mred\n")
              .said()
              .starts_with(
                  "x.yaml:2:4: error: a control character (U+001B) stands here [not-text]\n"));
    CHECK(tree_marks("a: x\x04\n") ==
          "1:5+1 not-text"); // yaml-cpp would take this byte for the end
    CHECK(tree_marks("a: \x7F\n") == "1:4+1 not-text");
    CHECK(tree_marks("a: \xC2\x9B\n") == "1:4+1 not-text");
}

TEST_CASE("lines may end in LF or CR LF, but not in CR alone") {
    CHECK(tree_marks("a: 1\r\nb: 2\r\n").empty());
    CHECK(tree_marks("a: 1\rb: 2\r") == "1:5+1 bad-line-end");
}

TEST_CASE("a file of more than 16 MiB is refused before it is read") {
    CHECK(Checked(std::string(groat::most_bytes, ' ')).is_fine);
    CHECK(Checked(std::string(groat::most_bytes + 1, ' '))
              .said()
              .starts_with("x.yaml: error: the file is larger than 16 MiB"));
}

TEST_CASE("places count lines and characters, wherever in a long line they lie") {
    std::string const text = times(1000, "é") + "x\n" + times(500, "ab") + "y";
    groat::Places const places(text);
    CHECK(places.at(0) == std::pair(1U, 1U));
    CHECK(places.at(2000) == std::pair(1U, 1001U));
    CHECK(places.at(2001) == std::pair(1U, 1002U)); // the line end itself
    CHECK(places.at(2002) == std::pair(2U, 1U));
    CHECK(places.at(3002) == std::pair(2U, 1001U));
    CHECK(places.at(99999) == std::pair(2U, 1002U)); // behind the text: its end
    for (std::size_t i = 0; i < 1000; ++i)
        REQUIRE(places.at(2 * i) == std::pair(1U, static_cast<std::uint32_t>(i + 1)));
}
