#include "reading.hpp"

#include <groat/books/import_map.hpp>

#include <doctest/doctest.h>

#include <string>

using groat::ImportMap;
using groat_test::Desk;

namespace {

struct Reader : Desk {
    groat::Reading reading{found, *groat::Currency::find("EUR"), groat::Measures::us};

    ImportMap map(std::string const& text) { return read_import_map(node(text), reading); }
};

/// A map that is right, and further lines from line 4 on.
std::string with(std::string const& text) {
    return "supplier: s\ncolumns: {code: A, price: B}\nitems: {X: plum}\n" + text;
}
std::string marks(std::string const& text) {
    Reader desk;
    (void)desk.map(text);
    return desk.marked();
}

} // namespace

TEST_CASE("a map says how a supplier writes and what the things are called in the books") {
    Reader desk;
    ImportMap const map = desk.map(R"(
supplier: Mill & Sons
from: 2026-12-01
tax included: 7 %
encoding: windows-1252
delimiter: ';'
skip: 2
decimal: comma
thousands: point
currency: EUR
currency sign: €
slash: packs
columns: {code: Art. No., name: "Item: long", price: 4, pack number: "2", pack unit: Unit, freight: Cartage}
units: {Stk: each, KT: 12 each}
items:
  PL-22: plum
  "0010": {item: box for 12, pack: 4 x 25, yield: 98 %}
ignore: [Pallet, ZZ]
)");
    CHECK(desk.said().empty());
    CHECK(map.supplier.name == "Mill & Sons");
    CHECK(groat::iso_date(*map.from) == "2026-12-01");
    CHECK(map.tax_included.value() == groat::Number(7, 100));
    CHECK(map.encoding == groat::Encoding::windows_1252);
    CHECK(map.delimiter == ";");
    CHECK(map.skip == 2);
    CHECK(map.has_header);
    CHECK(map.marks.has_decimal_comma);
    CHECK(map.marks.thousands == groat::NumberMarks::Thousands::point);
    CHECK(map.currency_code == "EUR");
    CHECK(map.currency_sign == "\u20AC");
    CHECK(map.slash == groat::Slash::packs);
    CHECK(map.code->name == "Art. No.");
    CHECK(map.price->number == 4);
    CHECK(map.pack_number->number == 0); // in quotation marks digits are a name
    CHECK(map.pack_number->name == "2");
    CHECK(map.units.at("KT") == "12 each");
    CHECK(map.items.at("PL-22").item.name == "plum");
    CHECK(map.items.at("0010").pack->amount == 100);
    CHECK(map.items.at("0010").yield->value() == groat::Number(49, 50));
    CHECK(map.ignored.contains("Pallet"));
    CHECK_FALSE(map.ignores_the_rest);
}

TEST_CASE("what a map does not say is the plainest") {
    Reader desk;
    ImportMap const map = desk.map(with(""));
    CHECK(desk.said().empty());
    CHECK(map.delimiter == ",");
    CHECK(map.encoding == groat::Encoding::utf_8);
    CHECK_FALSE(map.marks.has_decimal_comma);
    CHECK(map.marks.thousands == groat::NumberMarks::Thousands::none);
    CHECK(map.currency_sign.empty());
    CHECK_FALSE(map.from);
}

TEST_CASE("delimiters may be named or quoted") {
    for (auto const& [written, meant] : {std::pair{"tab", "\t"},
                                         {"\"\\t\"", "\t"},
                                         {"' '", " "},
                                         {"space", " "},
                                         {"'|'", "|"},
                                         {"'\u00A7'", "\u00A7"}}) {
        Reader desk;
        CHECK(desk.map(with(std::string("delimiter: ") + written)).delimiter == meant);
        CHECK(desk.said().empty());
    }
    CHECK(marks(with("delimiter: ';;'")) == "4:12+4 bad-delimiter");
    CHECK(marks(with("delimiter: '\"'")) == "4:12+3 bad-delimiter");
    CHECK(marks(with("delimiter: ''")) == "4:12+2 bad-delimiter");
    CHECK(marks(with("delimiter: [a]")) == "4:12+1 wrong-kind");
}

TEST_CASE("all the rest can be ignored at once") {
    Reader desk;
    CHECK(desk.map(with("ignore: the rest")).ignores_the_rest);
    CHECK_FALSE(desk.map(with("ignore: 'the rest'")).ignores_the_rest);
}

TEST_CASE("every slip in a map is reported at its place") {
    CHECK(marks(with("decimals: comma")) == "4:1+8 unknown-key");
    CHECK(marks(with("decimal: coma")) == "4:10+4 unknown-word");
    CHECK(marks(with("thousands: point")) == "4:1+9 same-mark");
    CHECK(marks(with("decimal: comma\nthousands: comma")) == "5:1+9 same-mark");
    CHECK(marks(with("encoding: utf-16")) == "4:11+6 unknown-word");
    CHECK(marks(with("currency: USD")) == "4:11+3 wrong-currency");
    CHECK(marks(with("currency: $")) == "4:11+1 unknown-currency");
    CHECK(marks(with("currency sign: 5")) == "4:16+1 bad-currency-sign");
    CHECK(marks(with("units: {CS: 12 boxen}")).ends_with("unknown-unit"));
    CHECK(marks(with("units: {CS: 2 h}")).ends_with("wrong-dimension"));
    CHECK(marks(with("ignore: [X]")) == "4:10+1 given-twice");
    CHECK(marks("columns: {code: A, price: B}\nitems: {X: plum}\n") == "1:1+1 missing-key");
    CHECK(marks("supplier: s\nitems: {X: plum}\n") == "1:1+1 missing-key");
    CHECK(marks("supplier: s\ncolumns: {code: A, price: B}\n") == "1:1+1 missing-key");
}

TEST_CASE("every slip in the columns is reported at its place") {
    auto const columns = [](std::string const& text) {
        return marks("supplier: s\nitems: {X: plum}\ncolumns: {" + text + "}\n");
    };
    CHECK(columns("price: B") == "3:10+1 missing-key");
    CHECK(columns("code: A") == "3:10+1 missing-key");
    CHECK(columns("code: A, prise: B") == "3:20+5 unknown-key");
    CHECK(columns("code: 0, price: B") == "3:17+1 bad-column");
    CHECK(columns("code: A, price: B, pack: C, pack number: D") == "3:39+11 not-both");
    CHECK(columns("code: A, price: B, pack unit: D") == "3:30+9 key-alone");
    CHECK(marks("supplier: s\nheader: no\nitems: {X: plum}\ncolumns: {code: 1, price: B}\n") ==
          "4:27+1 bad-column");
}

TEST_CASE("an item stands once, with or without blanks around it") {
    CHECK(marks("supplier: s\ncolumns: {code: A, price: B}\nitems:\n  X: plum\n  ' X': fig\n") ==
          "5:3+4 given-twice");
}

TEST_CASE("the things named must be bought ones, and the nearest is suggested") {
    Reader desk;
    ImportMap map = desk.map("supplier: s\ncolumns: {code: A, price: B}\n"
                             "items: {X: plumm, Y: shell, Z: plum, W: {item: box, pack: 2 kg}}\n");
    groat::Book book;
    groat::Ingredient plum;
    plum.name = "plum";
    groat::Ingredient box;
    box.name = "box";
    box.kind = groat::Ingredient::Kind::supply;
    book.ingredients = {plum, box};
    groat::Formula shell;
    shell.name = "shell";
    book.formulas.push_back(shell);
    book.ingredient_index = {{"plum", 0}, {"box", 1}};
    book.formula_index = {{"shell", 0}};
    link_import_map(map, book, desk.found);
    CHECK(desk.marked() ==
          "3:12+5 unknown-ingredient 3:22+5 unknown-ingredient 3:48+3 wrong-dimension");
    CHECK(desk.said().find("did you mean 'plum'?") != std::string::npos);
    CHECK(desk.said().find("'shell' is made here, not bought") != std::string::npos);
    CHECK(map.items.at("Z").item.index == 0);
}
