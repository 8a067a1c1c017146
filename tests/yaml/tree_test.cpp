#include "reading.hpp"

#include <groat/yaml/tree.hpp>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <chrono>
#include <string>
#include <tuple>
#include <vector>

using groat::Node;
using groat_test::Desk;
using groat_test::times;
using groat_test::tree_marks;

namespace {

std::tuple<unsigned, unsigned, unsigned> at(groat::Span where) {
    return {where.line, where.column, where.length};
}
std::tuple<unsigned, unsigned, unsigned> at(unsigned line, unsigned column, unsigned length) {
    return {line, column, length};
}

} // namespace

TEST_CASE("everything keeps its text, its order and its place") {
    Desk desk;
    Node const& node = desk.node("zest: 010\nlist: [no, '12 x 500 g', ~]\n\nempty:\nlast: {}\n");
    REQUIRE(node.is_mapping());
    REQUIRE(node.keys.size() == 4);
    CHECK(node.keys[0].text == "zest");
    CHECK(node.items[0].text == "010");
    CHECK(at(node.keys[1].where) == at(2, 1, 4));
    REQUIRE(node.items[1].is_sequence());
    CHECK(at(node.items[1].where) == at(2, 7, 1));
    CHECK(node.items[1].items[0].text == "no");
    CHECK(node.items[1].items[1].text == "12 x 500 g");
    CHECK(at(node.items[1].items[1].where) == at(2, 12, 12)); // with its quotation marks
    CHECK(node.items[1].items[1].is_quoted);
    CHECK(node.items[1].items[2].is_null());
    CHECK(node.items[2].is_null());
    CHECK(at(node.items[2].where) == at(4, 1, 5)); // what is not there is shown at its key
    CHECK(node.items[3].is_mapping());
    CHECK(desk.said().empty());
}

TEST_CASE("columns count characters, not bytes") {
    Desk desk;
    Node const& node = desk.node("crème brûlée: {œufs: 3 é, sucre: [à, ½ cup]}\n");
    CHECK(at(node.keys[0].where) == at(1, 1, 12));
    Node const& inner = node.items[0];
    CHECK(at(inner.where) == at(1, 15, 1));
    CHECK(at(inner.keys[0].where) == at(1, 16, 4));
    CHECK(at(inner.items[0].where) == at(1, 22, 3));
    CHECK(at(inner.keys[1].where) == at(1, 27, 5));
    CHECK(at(inner.items[1].items[0].where) == at(1, 35, 1));
    CHECK(at(inner.items[1].items[1].where) == at(1, 38, 5));
}

TEST_CASE("a byte order mark and CR LF move no line") {
    Desk desk;
    Node const& node = desk.node("a: 1\r\nb:\r\n  - x y\r\n  - z\r\n");
    CHECK(node.items[0].text == "1");
    CHECK(at(node.items[1].items[0].where) == at(3, 5, 3));
    CHECK(node.items[1].items[0].text == "x y");
    Desk marked;
    Node const& first = marked.node("\xEF\xBB\xBF"
                                    "a: 1\nb: 2\n");
    CHECK(first.keys[0].text == "a");
    CHECK(at(first.keys[0].where) ==
          at(1, 2, 1)); // the mark is a character of the line it stands in
    CHECK(at(first.keys[1].where) == at(2, 1, 1));
}

TEST_CASE("a tab between words counts as one character") {
    Desk desk;
    Node const& node = desk.node("a:\tb c\n");
    CHECK(at(node.items[0].where) == at(1, 4, 3));
}

TEST_CASE("a part of a value has a place of its own only where it stands there letter by letter") {
    Desk desk;
    Node const& node = desk.node(
        "a: é 12 cupz\nb: \"é 12 cupz\"\nc: \"\\u00e9 12 cupz\"\nd: é 12\n  cupz\ne: |\n  é 12\n");
    // "é 12 cupz": the unit begins at byte 6 and has 4 bytes.
    CHECK(at(node.items[0].place_of(6, 4)) == at(1, 9, 4));
    CHECK(at(node.items[1].place_of(6, 4)) == at(2, 10, 4));
    CHECK(at(node.items[2].place_of(6, 4)) == at(node.items[2].where));
    CHECK(at(node.items[3].place_of(6, 4)) == at(4, 4, 4)); // the first line of it
    CHECK(at(node.items[4].place_of(0, 2)) == at(6, 4, 1));
    CHECK(at(node.items[0].place_of(0, 0)) == at(1, 4, 9));
    CHECK(at(node.items[0].place_of(99, 1)) == at(1, 4, 9));
}

TEST_CASE("a file holds as many documents as it says, and empty ones do not count") {
    Desk desk;
    auto const& all =
        desk.documents("formula: a\n---\nformula: b\n---\n# nothing\n---\nformula: c\n...\n");
    REQUIRE(all.size() == 3);
    CHECK(all[2].items[0].text == "c");
    CHECK(desk.said().empty());
    CHECK(Desk().documents("").empty());
    CHECK(Desk().documents("# only a remark\n").empty());
    CHECK(Desk().documents("---\n---\n").empty());
}

TEST_CASE(
    "an anchor is a value that can be used again, and a mistake in it is shown where it is used") {
    Desk desk;
    Node const& node = desk.node("a: &box {holds: 12}\nb: *box\nc: &n 3 g\nd: [*n, *n]\n");
    CHECK(desk.said().empty());
    CHECK(node.items[1].items[0].text == "12");
    CHECK(at(node.items[1].where) == at(2, 4, 4));
    CHECK(at(node.items[2].where) == at(3, 7, 3)); // behind the anchor
    CHECK(node.items[3].items[1].text == "3 g");
    CHECK(at(node.items[3].items[1].place_of(2, 1)) == at(4, 9, 2));
}

TEST_CASE("a key that stands twice is an error, and the first is pointed out") {
    Desk desk;
    Node const& node = desk.node("butter: 1 lb\nsugar: 2 cup\nbutter: 2 lb\n");
    CHECK(desk.said() == "x.yaml:3:1: error: 'butter' stands twice [duplicate-key]\n"
                         "  3 | butter: 2 lb\n"
                         "    | ^^^^^^\n"
                         "  note: first written here (x.yaml:1:1)\n"
                         "  help: remove one; where a name may stand twice, write a list\n");
    REQUIRE(node.keys.size() == 2);
    CHECK(node.items[0].text == "1 lb");
    CHECK(node.items[1].text == "2 cup");
    CHECK(tree_marks("{a: 1, b: 2, a: 3, 'a': 4}") == "1:14+1 duplicate-key 1:20+3 duplicate-key");
}

TEST_CASE("what is no YAML is explained where it goes wrong") {
    CHECK(tree_marks("a: b: c\n") == "1:5+1 bad-yaml");
    CHECK(tree_marks("a:1\nb: 2\n") == "2:2+1 bad-yaml");
    CHECK(tree_marks("lines:\n   flour: 1 g\n  butter: 2 g\n") == "3:3+1 bad-yaml");
    CHECK(tree_marks("a: 1\n- b\n") == "2:1+1 bad-yaml");
    CHECK(tree_marks("]\n") == "1:1+1 bad-yaml");
    CHECK(tree_marks("a: @x\n") == "1:4+1 bad-yaml");
    CHECK(tree_marks("é: é: @x\n") == "1:5+1 bad-yaml");
    CHECK(tree_marks("a: \"\\q\"\n") == "1:5+1 bad-yaml");
    CHECK(tree_marks("a: - b\n") == "1:4+1 bad-yaml");
    CHECK(tree_marks(": x\n") == "1:1+1 bad-yaml");
    Desk desk;
    (void)desk.node("note: 50% off: today\n");
    CHECK(
        desk.said() ==
        "x.yaml:1:14: error: a ':' does not fit here [bad-yaml]\n"
        "  1 | note: 50% off: today\n"
        "    |              ^\n"
        "  help: a key begins in the column of the key above it; text that contains ': ' goes into quotation marks\n");
}

TEST_CASE("a tab that indents is called a tab") {
    for (auto const* text : {"a:\n\tb: 1\n", "a: 1\n\tb: 2\n", "\ta: 1\n", "a:\n  - b\n\t- c\n"}) {
        Desk desk;
        (void)desk.node(text);
        CHECK(desk.said().find("a tab indents this line") != std::string::npos);
    }
}

TEST_CASE("a bracket that is not closed is shown where it opens") {
    Desk desk;
    (void)desk.node("offers:\n  - {item: flour, price: 3\n  - {item: sugar, price: 4}\n");
    CHECK(desk.said() ==
          "x.yaml:2:5: error: this '{' is not closed, or a ',' is missing behind it [bad-yaml]\n"
          "  2 |   - {item: flour, price: 3\n"
          "    |     ^\n"
          "  note: reading could not go on here (x.yaml:3:5)\n"
          "  help: write {key: value, key: value}\n");
    CHECK(tree_marks("a: [1, 2\nb: 3\n") == "1:4+1 bad-yaml");
}

TEST_CASE("a quotation mark that is not closed does not swallow the rest of the file") {
    CHECK(tree_marks("a: \"x\nb: 2\n") == "1:4+1 bad-yaml");
    CHECK(tree_marks("b: 'it''s'\na: 'it''s\n") == "2:4+1 bad-yaml");
    CHECK(tree_marks("a: \"x\\\"\n") == "1:4+1 bad-yaml");
    CHECK(tree_marks("a: 'it''s'\nb: \"\\\"\"\nc: ''\nd: \"\"\ne: ''''\n").empty());
}

TEST_CASE("nothing behind the end is dropped in silence") {
    CHECK(tree_marks("{a: 1} junk\n") == "1:8+1 bad-yaml");
    CHECK(tree_marks("[],[]") == "1:3+1 bad-yaml");
    CHECK(tree_marks("a: 1\n...\nb: 2\n") == "3:1+1 bad-yaml");
    CHECK(tree_marks("%note\na: 1\n") == "1:1+1 bad-yaml");
    CHECK(tree_marks("a: 1\n---\n%X\n---\nb: 1\n") == "3:1+1 bad-yaml");
    CHECK(tree_marks("a: 1\n---\n%X\n") == "3:1+1 bad-yaml");
    CHECK(tree_marks("%YAML 1.2\n---\na: 1\n").empty());
}

TEST_CASE("what a kitchen has no use for is refused by name") {
    CHECK(tree_marks("a: &x {b: 1}\nc: {<<: *x}\n") == "2:5+2 merge-key");
    CHECK(tree_marks("'<<': 1\n").empty());
    CHECK(tree_marks("a: !!binary aGk=\n") == "1:4+8 tag");
    CHECK(tree_marks("a: !money {b: 1}\n") == "1:4+6 tag");
    CHECK(tree_marks("? [a, b]\n: c\n") == "1:3+1 complex-key");
    CHECK(tree_marks("{{a: 1}: c}\n") == "1:2+1 complex-key");
    CHECK(tree_marks("a: &x [1]\n*x : 2\n") == "2:1+2 complex-key");
    CHECK(tree_marks("null: 1\n") == "1:1+1 bad-yaml");
    CHECK(tree_marks("a: *b\n") == "1:4+1 bad-yaml");
}

TEST_CASE("documents before the one that cannot be read are kept") {
    Desk desk;
    auto const& all = desk.documents("formula: a\n---\nformula: b: c\n");
    REQUIRE(all.size() == 1);
    CHECK(all[0].items[0].text == "a");
    CHECK(desk.marked() == "3:11+1 bad-yaml");
}

TEST_CASE("aliases that double and redouble are stopped") {
    std::string bomb = "a: &a [x,x,x,x,x,x,x,x,x,x]\n";
    for (char c = 'b'; c < 'k'; ++c)
        bomb += fmt::format("{0}: &{0} [*{1},*{1},*{1},*{1},*{1},*{1},*{1},*{1},*{1},*{1}]\n", c,
                            static_cast<char>(c - 1));
    CHECK(tree_marks(bomb).ends_with("too-many-aliases"));
    CHECK(tree_marks("a: &x [*x]\n") == "1:8+2 too-many-aliases");
    CHECK(tree_marks("- &a " + times(1'000'000, "x") + "\n" + times(10'000, "- *a\n"))
              .ends_with("too-many-aliases"));
    CHECK(tree_marks("[&a x" + times(2'000, ", *a") + "]").empty());
}

TEST_CASE("nesting is bounded, and ten thousand levels end quickly") {
    CHECK(tree_marks(times(64, "[") + times(64, "]")).empty());
    CHECK(tree_marks(times(65, "[") + times(65, "]")).ends_with("too-deep"));
    auto const begin = std::chrono::steady_clock::now();
    for (auto const* part : {"[", "{", "- ", "? ", "{a: ", "[\n", "&a ["})
        CHECK(tree_marks(times(10'000, part)).ends_with("too-deep"));
    std::string blocks;
    for (std::size_t i = 0; i < 2'000; ++i) blocks += std::string(i, ' ') + "a:\n";
    CHECK(tree_marks(blocks) == "65:65+1 too-deep");
    std::string anchors = "a: &a0 [x]\n"; // each ten levels deeper than the last
    for (int i = 1; i < 9; ++i)
        anchors += fmt::format("{}: &a{} {}*a{}{}\n", i, i, times(10, "["), i - 1, times(10, "]"));
    CHECK(tree_marks(anchors).ends_with("too-deep"));
    CHECK(std::chrono::steady_clock::now() - begin <
          std::chrono::seconds(20)); // some 0.2 s; sanitizers are slow
}

TEST_CASE("a number of a million digits is one value and takes no time") {
    Desk desk;
    CHECK(desk.value("a: " + times(1'000'000, "7"))->where.length == 1'000'000);
    CHECK(desk.said().empty());
}
