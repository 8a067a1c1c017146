#include "reading.hpp"

#include <groat/yaml/csv.hpp>

#include <doctest/doctest.h>

#include <string>
#include <vector>

using groat::Encoding;
using groat_test::Desk;
using groat_test::times;

namespace {

using Rows = std::vector<std::vector<std::string>>;

struct Table : Desk {
    Rows rows = {};
    std::vector<groat::Span> places = {}; ///< of all cells

    explicit Table(std::string bytes, std::string delimiter = ",",
                   Encoding encoding = Encoding::utf_8, std::size_t skip = 0) {
        auto const file = groat::add_csv(sources, "x.csv", std::move(bytes), encoding, found);
        if (!file) return;
        groat::CsvReader reader(sources, *file, std::move(delimiter), skip, found);
        for (groat::CsvRow row; reader.next(row);) {
            auto& cells = rows.emplace_back();
            for (groat::CsvCell const& cell : row.cells) {
                cells.push_back(cell.text);
                places.push_back(reader.place_of(cell));
            }
        }
    }
};

Rows rows(std::string text, std::string delimiter = ",") {
    Table const table(std::move(text), std::move(delimiter));
    CHECK(table.said().empty());
    return table.rows;
}
std::string wrong(std::string text, std::string delimiter = ",",
                  Encoding encoding = Encoding::utf_8) {
    return Table(std::move(text), std::move(delimiter), encoding).marked();
}

} // namespace

TEST_CASE("rows end in LF or CR LF, the last one in nothing as well") {
    Rows const expected{{"a", "b"}, {"c", ""}};
    CHECK(rows("a,b\nc,\n") == expected);
    CHECK(rows("a,b\r\nc,\r\n") == expected);
    CHECK(rows("a,b\nc,") == expected);
    CHECK(rows("").empty());
    CHECK(rows("a\n\nb\n") == Rows{{"a"}, {}, {"b"}});
}

TEST_CASE("a quoted cell keeps delimiters, line ends and doubled quotation marks") {
    CHECK(rows("\"a,b\",\"c\nd\",\"e\r\nf\",\"12\"\" box\",\"\"\n") ==
          Rows{{"a,b", "c\nd", "e\r\nf", "12\" box", ""}});
}

TEST_CASE("a quotation mark in the middle of a plain cell is text") {
    CHECK(rows("box 12\" white,1\n") == Rows{{"box 12\" white", "1"}});
}

TEST_CASE("any one character is a delimiter") {
    CHECK(rows("a;b,c\td", ";") == Rows{{"a", "b,c\td"}});
    CHECK(rows("a\tb", "\t") == Rows{{"a", "b"}});
    CHECK(rows("a\u00A6b\u00A7c", "\u00A6") == Rows{{"a", "b\u00A7c"}});
}

TEST_CASE("a row may have as few or many cells as it likes: what that means is for others") {
    CHECK(rows("a,b\nc\nd,e,f\n") == Rows{{"a", "b"}, {"c"}, {"d", "e", "f"}});
}

TEST_CASE("every cell knows its place, also behind line ends within cells") {
    Table const table("\u00E4,bb\n\"x\ny\",ccc\n");
    REQUIRE(table.places.size() == 4);
    CHECK(table.places[1] == groat::Span{1, 1, 3, 2});
    CHECK(table.places[2] == groat::Span{1, 2, 1, 2}); // of the quoted cell what stands on its line
    CHECK(table.places[3] == groat::Span{1, 3, 4, 3});
}

TEST_CASE("lines in front of the table are passed over unread") {
    CHECK(Table("say \"hi\n\na,b\n", ",", Encoding::utf_8, 2).rows == Rows{{"a", "b"}});
    CHECK(Table("a", ",", Encoding::utf_8, 9).rows.empty());
}

TEST_CASE("a quotation mark that is never closed is reported where it opens") {
    CHECK(wrong("a,b\nc,\"d\ne,f\n") == "2:3+1 unclosed-quote");
    CHECK(wrong("\"") == "1:1+1 unclosed-quote");
    CHECK(wrong("\"a\"\"") == "1:1+1 unclosed-quote");
}

TEST_CASE("what would leave it open where a cell ends is refused") {
    CHECK(wrong("\"a\"b,c\n") == "1:4+1 text-behind-quote");
    CHECK(wrong("a,\"b\" ,c\n") == "1:6+1 text-behind-quote");
    CHECK(wrong("a,b\rc,d\r") == "1:4+1 bad-line-end");
    CHECK(wrong("\"a\"\rb") == "1:4+1 bad-line-end");
}

TEST_CASE("rows before an error are given, and none behind it") {
    CHECK(Table("a\n\"b\"c\nd\n").rows == Rows{{"a"}});
}

TEST_CASE("a byte order mark is no part of the first cell") {
    CHECK(rows("\xEF\xBB\xBF\"code\",price\n") == Rows{{"code", "price"}});
}

TEST_CASE("a byte that is not UTF-8 is reported with its place and not guessed at") {
    CHECK(wrong("a,b\nCr\xE8me,2\n") == "2:3+1 not-utf-8");
    CHECK(wrong("\xED\xA0\x80") == "1:1+1 not-utf-8");
    CHECK(Table("Cr\xE8me").said().find("encoding: windows-1252") != std::string::npos);
}

TEST_CASE("latin-1 and windows-1252 are read where they are declared") {
    CHECK(Table("Cr\xE8me;2", ";", Encoding::latin_1).rows == Rows{{"Cr\u00E8me", "2"}});
    CHECK(Table("\x80 2;\x93x\x94", ";", Encoding::windows_1252).rows ==
          Rows{{"\u20AC 2", "\u201Cx\u201D"}});
    // 0x80 is a control character to latin-1, 0x81 nothing to windows-1252
    CHECK(wrong("a\n\xE8\x80", ",", Encoding::latin_1) == "2:2+1 wrong-encoding");
    CHECK(wrong("a\n\xE8\x81", ",", Encoding::windows_1252) == "2:2+1 wrong-encoding");
    CHECK(wrong("\xEF\xBB\xBF"
                "a",
                ",", Encoding::latin_1) == "wrong-encoding");
}

TEST_CASE("what is no text at all is refused") {
    CHECK(wrong(std::string("a,b\nc\0,d\n", 9)) == "2:2+1 not-text");
    CHECK(wrong(std::string("a\0,\0b\0\n\0", 8)) == "not-utf-8");
    CHECK(wrong("\xFF\xFE"
                "a") == "not-utf-8");
}

TEST_CASE("sizes are bounded: bytes of a file, its lines, the cells of a row") {
    CHECK(wrong(std::string(groat::most_csv_bytes + 1, 'x')) == "file-too-large");
    CHECK(wrong(std::string(groat::most_csv_lines + 1, '\n')) == "file-too-large");
    CHECK(wrong(times(groat::most_csv_cells, ",")) == "1:1001+1 row-too-long");
    CHECK(rows(times(groat::most_csv_cells - 1, ",")).front().size() == groat::most_csv_cells);
}

TEST_CASE("a file of one line is read in time that grows with its size") {
    // 8 MiB of quotation marks in one cell: quadratic work would not end here
    std::string text = "\"" + times(std::size_t{4} << 20U, "\"\"") + "\"";
    CHECK(rows(std::move(text)).front().front().size() == std::size_t{4} << 20U);
}
