#include <groat/base/text.hpp>

#include <doctest/doctest.h>

#include <string>
#include <string_view>
#include <utility>
#include <vector>

using groat::character_at;
using groat::character_count;
using groat::display_width;
using groat::printable;
using groat::shortened;
using groat::trimmed;
using groat::wrapped;

namespace {

using Lines = std::vector<std::string>;
constexpr std::string_view stranger = "\uFFFD";

} // namespace

TEST_CASE("characters are counted as people count them, not in bytes") {
    CHECK(character_count("") == 0);
    CHECK(character_count("flour") == 5);
    CHECK(character_count("crème brûlée") == 12);
    CHECK(character_count("小麦粉") == 3);
    CHECK(character_count("🥐") == 1);
}

TEST_CASE("a byte that starts no character stands alone, so that a walk over any bytes ends") {
    // Unicode 15, table 3-7: overlong forms, surrogates and what lies beyond U+10FFFF are not UTF-8
    for (std::string_view const bytes :
         {"\x80", "\xC0\xAF", "\xC1\x81", "\xE0\x80\xAF", "\xED\xA0\x80", "\xF4\x90\x80\x80",
          "\xF5\x80\x80\x80", "\xFF", "\xE2\x82"}) {
        CHECK(!character_at(bytes, 0).is_valid);
        CHECK(character_at(bytes, 0).length == 1);
        CHECK(character_count(bytes) == bytes.size());
    }
    CHECK(character_at("\xF4\x8F\xBF\xBF", 0).code == 0x10FFFF);
    CHECK(character_at("\xE2\x82\xAC", 0).code == 0x20AC);
    CHECK(character_at("a€", 1).length == 3);
}

TEST_CASE("names of many kitchens take the columns that a terminal gives them") {
    // Unicode Standard Annex 11; the same widths as wcwidth of glibc 2.36 in C.UTF-8
    struct Row {
        std::string_view name;
        std::size_t columns;
    };
    constexpr Row rows[] = {
        {"", 0},
        {"plain flour", 11},
        {"crème fraîche", 13},
        {"cre\u0300me frai\u0302che",
         13}, // accents as marks of their own, as some systems write them
        {"phở bò", 6},
        {"смётана", 7},
        {"小麦粉", 6},
        {"バター", 6},
        {"ｂ", 2},
        {"밀가루", 6},
        {"แป้ง", 3},
        {"🥐", 2},
        {"€ 3.50", 6},
        {"½ · – … ×", 9},
    };
    for (Row const& row : rows) {
        CAPTURE(row.name);
        CHECK(display_width(row.name) == row.columns);
    }
}

TEST_CASE("combining marks take no column in any script") {
    // widths as wcwidth of glibc 2.36 gives them
    CHECK(display_width("か\u3099") == 2);           // a kana and its voicing mark apart
    CHECK(display_width("\u1112\u1161\u11AB") == 2); // a Korean syllable in its letters
    CHECK(display_width("\u092E\u0915\u094D\u0916\u0928") == 4); // Hindi for butter
    CHECK(display_width("\u05D7\u05B8\u05DC\u05C1") == 2);       // Hebrew letters with points
    CHECK(display_width("\u0632\u0670") == 1); // an Arabic letter with a small alef
}

TEST_CASE("widths are those of wcwidth") {
    // wcswidth of Debian's python3-wcwidth 0.2.5+dfsg1 (Unicode 15.0). By a script, outside these tests: of all
    // 282,165 assigned characters only those of the next case differ.
    constexpr std::pair<std::string_view, std::size_t> rows[] = {
        {"naïve", 5},
        {"e\u0301", 1},
        {"o\u0308a\u0323", 2},
        {"Vie\u0323\u0302t", 4},
        {"日本語", 6},
        {"ｱｲｳ", 3},
        {"Ａ", 2},
        {"＄", 2},
        {"（", 2},
        {"〜", 2},
        {"한글", 4},
        {"ﾊﾟ", 2},
        {"𠀋", 2},
        {"㈱", 2},
        {"👍", 2},
        {"☕", 2},
        {"🍞", 2},
        {"🧁", 2},
        {"🧋", 2},
        {"🫓", 2},
        {"⌚", 2},
        {"⭐", 2},
        {"🀄", 2},
        {"🃏", 2},
        {"♈", 2},
        {"🇩🇪", 2}, // two letters of one column each
        {"❤", 1},
        {"☀", 1},
        {"☃", 1},
        {"™", 1},
        {"①", 1},
        {"ﬁ", 1},
        {"●○■→×", 5},
        {"𝒳", 1},
        {"€", 1},
        {"ก็", 1},
        {"क्षि", 3},
        {"שָׁלוֹם", 4},
        {"مَرْحَبًا", 5},
        {"\u200B", 0},
        {"\u2060", 0},
        {"\u00A0", 1},
        {"\u202F", 1},
        {"\u00AD", 1},
    };
    for (auto const& row : rows) {
        CAPTURE(std::string(row.first));
        CHECK(display_width(row.first) == row.second);
    }
}

TEST_CASE("where that wcwidth counts by the character, what is drawn as one counts as one") {
    // Unicode Technical Standard 51: a sequence is one picture, and all 3,655 fully qualified emoji of
    // emoji-test.txt 15.0 come to two columns here (by a script, outside these tests). In brackets, wcwidth 0.2.5,
    // which adds up the characters; later ones count sequences as well.
    CHECK(display_width("👍🏽") == 2);             // [4] a tone of skin
    CHECK(display_width("✌🏽") == 2);              // [3] on a sign of one column
    CHECK(display_width("👨\u200D👩\u200D👧") == 2);      // [6] joined
    CHECK(display_width("🧑\u200D🍳") == 2);       // [4]
    CHECK(display_width("🏳\uFE0F\u200D🌈") == 2); // [3]
    CHECK(display_width("❤\uFE0F") == 2);              // [1] a sign drawn as a picture
    CHECK(display_width("1\uFE0F\u20E3") == 2);        // [1] a key
    CHECK(display_width("©\uFE0F") == 2);              // [1]
    CHECK(display_width("👍❤\uFE0F👍🏽!") == 7);
    // joiners between letters draw no picture, nor does a selector on one
    CHECK(display_width("a\u200Db") == 2);
    CHECK(display_width("a\uFE0F") == 1);
    CHECK(display_width("\u200D🍞") == 2);
    CHECK(display_width("🍞\u200Da") == 3);
    CHECK(display_width("🏽") == 2); // alone
    // Korean syllables in their letters [4, 1], as glibc has them; marks that only steer [1, 3]
    CHECK(display_width("\u1112\u1161\u11AB") == 2);
    CHECK(display_width("\u1161") == 0);
    CHECK(display_width("\uFEFF") == 0);
    CHECK(display_width("\u2066a\u2069") == 1);
}

TEST_CASE("text from a file cannot steer the terminal it is shown on") {
    CHECK(printable("plain flour") == "plain flour");
    CHECK(printable("crème 小麦粉 🥐 €") == "crème 小麦粉 🥐 €");
    CHECK(printable("\x1B[31mred") == std::string(stranger) + "[31mred");
    CHECK(printable("a\nb\tc\rd") == "a b c d");
    CHECK(printable(std::string_view("a\0b", 3)) == "a" + std::string(stranger) + "b");
    for (std::string_view const bad :
         {"\x07", "\x7F", "\u009B", "\u202E", "\u2066", "\u200F", "\uFEFF", "\u2028", "\u200B",
          "\U000E0041", "\xFF", "\xC3"}) {
        CAPTURE(bad.size());
        CHECK(printable(bad) == stranger);
    }
}

TEST_CASE("blanks at either end are cut, those between are kept") {
    CHECK(trimmed("  2 3/4 cup \t\r\n") == "2 3/4 cup");
    CHECK(trimmed("flour") == "flour");
    CHECK(trimmed(" \t ").empty());
    CHECK(trimmed("").empty());
}

TEST_CASE("a long name is cut to its columns with an ellipsis") {
    CHECK(shortened("plain flour", 11) == "plain flour");
    CHECK(shortened("plain flour", 10) == "plain flo…");
    CHECK(shortened("小麦粉", 6) == "小麦粉");
    CHECK(shortened("小麦粉", 5) == "小麦…");
    CHECK(shortened("小麦粉", 4) == "小…"); // half a character is none
    CHECK(shortened("a\x1B[2Jb", 20) == "a" + std::string(stranger) + "[2Jb");
}

TEST_CASE("what is drawn as one sign is not cut apart") {
    std::string const family = "\U0001F468\u200D\U0001F469\u200D\U0001F467"; // two columns
    CHECK(shortened(family + "ab", 4) == family + "ab");
    CHECK(shortened(family + "abc", 4) == family + "a…");
    CHECK(shortened(family + "abc", 3) == family + "…");
    CHECK(shortened(family + "abc", 2) == "…");
    std::string const heart = "\u2764\uFE0F"; // one column alone, two as a picture
    CHECK(shortened(heart + "abc", 3) == heart + "…");
    CHECK(shortened(heart + "abc", 2) == "…");
    CHECK(shortened("a\U0001F44D\U0001F3FDbc", 4) == "a\U0001F44D\U0001F3FD…");
    CHECK(shortened("ne\u0301e", 3) == "ne\u0301e");
    CHECK(shortened("ne\u0301es", 3) == "ne\u0301…");
}

TEST_CASE("a long text is measured once, not anew for each character") {
    // to measure each beginning of this million characters would take an hour
    std::string const text(1'000'000, 'x');
    CHECK(shortened(text, 500'000).size() == 499'999 + std::string_view("…").size());
}

TEST_CASE("tables that are searched by halves are in order") {
    auto const is_in_order = [](auto const& ranges) {
        char32_t last = 0;
        bool is_first = true;
        for (auto const& range : ranges) {
            if (range.first > range.last || (!is_first && range.first <= last)) return false;
            last = range.last;
            is_first = false;
        }
        return true;
    };
    CHECK(is_in_order(groat::text_tables_detail::unsafe));
    CHECK(is_in_order(groat::width_tables::none));
    CHECK(is_in_order(groat::width_tables::two));
}

TEST_CASE("a hostile megabyte is shortened without being walked to its end") {
    std::string const shown = shortened(std::string(1'000'000, 'x'), 8);
    CHECK(shown == "xxxxxxx…");
}

TEST_CASE("a shortened text is never wider than asked for") {
    for (std::string_view const text :
         {"plain flour, stone ground", "小麦粉 とバター", "crème\u0301\u0301", "🥐🥐🥐"})
        for (std::size_t columns = 1; columns < 30; ++columns) {
            CAPTURE(columns);
            CHECK(display_width(shortened(text, columns)) <= columns);
        }
}

TEST_CASE("lines break at blanks, and a word that is too long stands alone") {
    CHECK(wrapped("mix until just combined", 10) == Lines{"mix until", "just", "combined"});
    CHECK(wrapped("mix until just combined", 100) == Lines{"mix until just combined"});
    CHECK(wrapped("a buttercreamfrosting b", 6) == Lines{"a", "buttercreamfrosting", "b"});
    CHECK(wrapped("小麦 粉 粉", 7) == Lines{"小麦 粉", "粉"});
    CHECK(wrapped("", 10) == Lines{""});
    CHECK(wrapped("  a   b ", 10) == Lines{"a b"});
}

TEST_CASE("a word that is too long may break, but never within what is seen as one character") {
    auto const broken = [](std::string_view text, std::size_t columns) {
        return wrapped(text, columns, groat::LongWord::broken);
    };
    CHECK(broken("a buttercream b", 6) == Lines{"a", "butter", "cream", "b"});
    CHECK(broken("buttercream of 2", 8) == Lines{"buttercr", "eam of 2"});
    CHECK(broken("butter cream", 6) == Lines{"butter", "cream"});
    CHECK(broken("butterbutter", 6) == Lines{"butter", "butter"});
    CHECK(broken("小麦粉小麦", 5) == Lines{"小麦", "粉小", "麦"});
    CHECK(broken("小麦", 1) == Lines{"小", "麦"}); // wider than the line, but not lost
    CHECK(broken("e\u0301e\u0301e\u0301", 2) == Lines{"e\u0301e\u0301", "e\u0301"});
    CHECK(broken("👩‍👩‍👧‍👦👩‍👩‍👧‍👦", 3) ==
          Lines{"👩‍👩‍👧‍👦", "👩‍👩‍👧‍👦"});
    CHECK(broken("👍🏽👍🏽", 2) == Lines{"👍🏽", "👍🏽"});
    CHECK(broken("☺\uFE0F☺\uFE0F", 3) == Lines{"☺\uFE0F", "☺\uFE0F"});
    CHECK(broken("", 6) == Lines{""});
}
