#include "reading.hpp"

#include <groat/books/import_cells.hpp>
#include <groat/books/import_prices.hpp>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <string>

using groat::ImportedPrices;
using groat::ImportMap;
using groat::Number;
using groat::NumberMarks;
using groat_test::Desk;
using Thousands = groat::NumberMarks::Thousands;

namespace {

std::string const plain_map = R"(supplier: Mill
columns: {code: Code, name: Name, pack: Pack, price: Price}
items: {P1: plum, F1: flour, Great Figs: fig}
)";
std::string const header = "Code,Name,Pack,Price\n";

struct Counter : Desk {
    groat::Reading reading{found, *groat::Currency::find("USD"), groat::Measures::us};

    ImportedPrices take(std::string csv, std::string const& map_text = plain_map) {
        ImportMap const map = read_import_map(node(map_text), reading);
        REQUIRE_MESSAGE(found.empty(), said());
        auto const file = add_csv(sources, "x.csv", std::move(csv), map.encoding, found);
        return file ? import_prices(map, sources, *file, reading) : ImportedPrices{};
    }
};

/// What is wrong with the row `P1,Plums,PACK,PRICE`, which begins in column 1 of line 2.
std::string cell_marks(std::string const& pack, std::string const& price,
                       std::string const& more = "") {
    Counter desk;
    (void)desk.take(header + "P1,Plums," + pack + "," + price + "\n", plain_map + more);
    // The two items that are not in this file are found missing in the map, which is not looked for.
    groat::Diagnostics in_file;
    for (groat::Diagnostic const& each : desk.found.sorted())
        if (desk.sources.name(each.where.file) == "x.csv") in_file.add(each);
    return groat_test::marks(in_file);
}

std::string plain(std::string_view text, NumberMarks const& marks) {
    auto const result = groat::plain_numbers(text, marks);
    return result ? *result : result.error().code;
}

} // namespace

TEST_CASE("a row becomes an offer by its code, else by its exact name") {
    Counter desk;
    auto const result = desk.take(header + "P1,Plums,30 lb,49.80\n"
                                           ",Great Figs,12 x 500 g,18\n"
                                           "F1,Flour,\"50 LB\",22.9\n");
    CHECK(desk.said().empty());
    REQUIRE(result.list.offers.size() == 3);
    CHECK(result.list.supplier.name == "Mill");
    CHECK(result.list.offers[0].item.name == "plum");
    CHECK(result.list.offers[0].code == "P1");
    CHECK(result.list.offers[0].price.amount() == Number(498, 10));
    CHECK(result.list.offers[1].item.name == "fig");
    CHECK(result.list.offers[1].pack.amount == 6000);
    CHECK(result.list.offers[2].pack_text == "50 LB");
    CHECK(result.rows == 3);
}

TEST_CASE("two hundred errors are enough: the rows behind them are not read") {
    Counter desk;
    std::string csv = header;
    for (int i = 0; i < 250; ++i) csv += "P1,Plums,30 lb,cheap\n";
    (void)desk.take(csv);
    CHECK(desk.found.errors() == 201); // the last of them says that there are so many
    auto const found = desk.found.sorted();
    CHECK(std::count_if(found.begin(), found.end(), [](auto const& each) {
              return each.code == groat::Code("too-many-errors");
          }) == 1);
}

TEST_CASE("the rows that nothing stands for are listed with their lines") {
    Counter desk;
    auto const result = desk.take(header + "P1,Plums,30 lb,49.80\n\n"
                                           "Z9,\"Two\nlines\",1 kg,3\n"
                                           "F1,Flour,50 lb,22\nY8,=cmd|' /C calc'!A0,1 kg,x\n"
                                           "HEADING\n,Great Figs,1 kg,3\n");
    CHECK(desk.said().empty());
    REQUIRE(result.unmatched.size() == 3);
    CHECK(result.unmatched[0].where.line == 4);
    CHECK(result.unmatched[0].name == "Two\nlines");
    CHECK(result.unmatched[1].where.line == 7);
    CHECK(result.unmatched[1].name == "=cmd|' /C calc'!A0"); // data, whatever it looks like
    CHECK(result.unmatched[1].price == "x");
    CHECK(result.unmatched[2].code == "HEADING");
}

TEST_CASE("what is declared as one to ignore is passed over, by code or name") {
    Counter desk;
    auto const result =
        desk.take(header + "P1,Plums,30 lb,4\nZ9,a,,\n,Pallet,,\nF1,f,1 lb,1\n,Great Figs,1 lb,1\n",
                  plain_map + "ignore: [Z9, Pallet]\n");
    CHECK(desk.said().empty());
    CHECK(result.ignored == 2);
    CHECK(result.unmatched.empty());
}

TEST_CASE("an item of the map that no row has is a warning at its place in the map") {
    Counter desk;
    (void)desk.take(header + "P1,Plums,30 lb,4\nF1,f,1 lb,1\n");
    CHECK(desk.marked() == "3:30+10 not-in-file");
    CHECK_FALSE(desk.found.has_errors());
}

TEST_CASE("columns are found by name over line ends and blanks, or by number") {
    Counter desk;
    auto const result =
        desk.take("x;\" Net\nprice \";y\nP1;3.50;1 lb\n",
                  "supplier: s\ndelimiter: ';'\n"
                  "columns: {code: 1, price: Net price, pack: 3}\nitems: {P1: plum}\n");
    CHECK(desk.said().empty());
    CHECK(result.list.offers.at(0).price.amount() == Number(7, 2));
    Counter bare;
    auto const rows = bare.take("P1,3.50,1 lb\n", "supplier: s\nheader: no\n"
                                                  "columns: {code: 1, price: 2, pack: 3}\n"
                                                  "items: {P1: plum}\n");
    CHECK(bare.said().empty());
    CHECK(rows.list.offers.size() == 1);
}

TEST_CASE("a column that is not there is reported at the map, with the nearest") {
    Counter desk;
    (void)desk.take("Code,Name,Pack,Prices\nP1,Plums,1 lb,4\n");
    CHECK(desk.marked() == "2:54+5 unknown-column");
    CHECK(desk.said().find("did you mean 'Prices'?") != std::string::npos);
    Counter twice;
    (void)twice.take("Code,Name,Pack,Price,Price\nP1,Plums,1 lb,4,5\n");
    CHECK(twice.said().find("2 columns called 'Price'") != std::string::npos);
    Counter number;
    (void)number.take("a,b\n", "supplier: s\ncolumns: {code: 1, price: 3}\nitems: {P1: plum}\n");
    CHECK(number.marked() == "2:27+1 unknown-column");
}

TEST_CASE("a row of ours with too many or too few cells is an error, blanks at its end are none") {
    CHECK(cell_marks("1 lb", "4,,") == "");
    CHECK(cell_marks("1 lb", "4,50") == "2:1+18 ragged-row");
    CHECK(cell_marks("1 lb", "12,50,x") == "2:1+21 ragged-row");
    Counter desk;
    (void)desk.take(header + "P1,Plums\nF1,f,1 lb,1\n,Great Figs,1 lb,1\n");
    CHECK(desk.marked() == "2:1+8 ragged-row");
}

TEST_CASE("a price is digits and declared marks, and nothing else") {
    CHECK(cell_marks("1 lb", "1234.5678") == "");
    for (char const* price : {"=1+1", "+3", "-3", "@A1", "3 USD", "$3", "1 234", "1'234", "1/3",
                              "2 1/4", "3½", "1e3", "n/a", "0x10", "3.", "1.2.3", "--"}) {
        CAPTURE(price);
        std::string const expected =
            fmt::format("2:15+{} bad-price", groat::character_count(price));
        CHECK(cell_marks("1 lb", price) == expected);
    }
    CHECK(cell_marks("1 lb", "\"1,234\"") == "2:15+7 bad-price");
    CHECK(cell_marks("1 lb", "") == "2:15+1 missing-price");
    CHECK(cell_marks("1 lb", "0.00") == "2:15+4 free-price"); // a warning
}

TEST_CASE("the cell is shown with the error, made harmless") {
    Counter desk;
    (void)desk.take(header +
                    "P1,Plums,1 lb,=HYPERLINK(\x1B[31m)\n,Great Figs,1 lb,1\nF1,f,1 lb,1\n");
    std::string const said = desk.said();
    CHECK(said.find("x.csv:2:15: error: the price '=HYPERLINK(\uFFFD[31m)' cannot be read") == 0);
    CHECK(said.find('\x1B') == std::string::npos);
}

TEST_CASE("a currency beside a price is taken off where it is declared") {
    CHECK(cell_marks("1 lb", "$3.50", "currency sign: $\n") == "");
    CHECK(cell_marks("1 lb", "3.50 $", "currency sign: $\n") == "");
    CHECK(cell_marks("1 lb", "USD 3.50", "currency: USD\n") == "");
    CHECK(cell_marks("1 lb", "$ 3.50 USD", "currency: USD\ncurrency sign: $\n") == "");
    CHECK(cell_marks("1 lb", "$$3.50", "currency sign: $\n") == "2:15+6 bad-price");
    CHECK(cell_marks("1 lb",
                     "\u20AC"
                     "3.50",
                     "currency sign: $\n") == "2:15+5 bad-price");
    CHECK(cell_marks("1 lb", "EUR 3.50", "currency: USD\n") == "2:15+8 bad-price");
}

TEST_CASE("numbers are read by the marks that are declared, and by no others") {
    NumberMarks const points{false, Thousands::none};
    NumberMarks const english{false, Thousands::comma};
    NumberMarks const german{true, Thousands::point};
    NumberMarks const french{true, Thousands::space};
    NumberMarks const swiss{false, Thousands::apostrophe};
    NumberMarks const commas{true, Thousands::none};
    CHECK(plain("12 x 0.5 kg", points) == "12 x 0.5 kg");
    CHECK(plain("1,234.50", points) == "bad-number");
    CHECK(plain("1,234,567.50", english) == "1234567.50");
    CHECK(plain("12,50", english) == "bad-number");
    CHECK(plain("1,2345", english) == "bad-number");
    CHECK(plain("1234,567", english) == "bad-number");
    CHECK(plain("1.234,50 kg", german) == "1234.50 kg");
    CHECK(plain("1.234", german) == "1234");
    CHECK(plain("12.50", german) == "bad-number");
    CHECK(plain("1,234,50", german) == "bad-number");
    CHECK(plain("12.50", commas) == "bad-number");
    CHECK(plain("12,50", commas) == "12.50");
    CHECK(plain(",5", commas) == ".5");
    CHECK(plain(".5", commas) == "bad-number");
    CHECK(plain(".5", points) == ".5");
    CHECK(plain("1\u00A0234\u202F567,8", french) == "1234567.8");
    CHECK(plain("12 500 g", french) == "12500 g");
    CHECK(plain("12 x 500 g", french) == "12 x 500 g");
    CHECK(plain("1'234.5", swiss) == "1234.5");
    CHECK(plain("a.b, c", german) == "a.b, c");
}

TEST_CASE("packs are read as people write them") {
    auto const pack = [](std::string const& text, std::string const& more = "") {
        Counter desk;
        auto const result =
            desk.take(header + "P1,Plums," + text + ",1\n",
                      "supplier: s\ncolumns: {code: Code, pack: Pack, price: Price}\n"
                      "items: {P1: plum}\n" +
                          more);
        CHECK(desk.said() == "");
        REQUIRE(result.list.offers.size() == 1);
        return result.list.offers[0].pack.amount;
    };
    CHECK(pack("25KG") == 25000);
    CHECK(pack("12X500g") == 6000);
    CHECK(pack("12 * 500 g") == 6000);
    CHECK(pack("15 dozen") == 180);
    CHECK(pack("\"2,5 kg\"", "decimal: comma\n") == 2500);
    CHECK(pack("6/2 kg", "slash: packs\n") == 12000);
    CHECK(pack("1/2 kg", "slash: fraction\n") == 500);
    CHECK(pack("4 CS", "units: {CS: 12 each}\n") == 48);
    CHECK(pack("CS", "units: {CS: 12 each}\n") == 12);
    CHECK(pack("50#", "units: {'#': kg}\n") == 50000);
    CHECK(pack("6/5#", "slash: packs\nunits: {'#': kg}\n") == 30000);
    CHECK(pack("4CS", "units: {CS: 12 each}\n") == 48);
    CHECK(pack("per sack", "units: {per sack: 20 kg}\n") == 20000);
    CHECK(pack("100 Stk.", "units: {Stk.: each}\n") == 100);
}

TEST_CASE("a pack of ours that is not plainly one is an error at its cell") {
    CHECK(cell_marks("box", "1") == "2:10+3 bad-pack");
    CHECK(cell_marks("12 cs", "1") == "2:10+5 bad-pack");
    CHECK(cell_marks("6/5 lb", "1") == "2:10+6 bad-pack"); // six fives, or 1.2?
    CHECK(cell_marks("0 kg", "1") == "2:10+4 bad-pack");
    CHECK(cell_marks("-1 kg", "1") == "2:10+5 bad-pack");
    CHECK(cell_marks("=1 kg", "1") == "2:10+5 bad-pack");
    CHECK(cell_marks("2 h", "1") == "2:10+3 bad-pack");
    CHECK(cell_marks("", "1") == "2:10+1 missing-pack");
    CHECK(cell_marks("2.5 kg", "1", "decimal: comma\n") == "2:10+6 bad-pack");
    std::string const nested = groat_test::times(60, "9 x ") + "1 kg";
    CHECK(cell_marks(nested, "1").ends_with("bad-pack"));
}

TEST_CASE("a pack may stand in two columns or in the map, and freight in a column of its own") {
    Counter desk;
    auto const result =
        desk.take("c;n;u;p;f\nA;25;kg;10,00;1,10\nB;;;5;\n",
                  "supplier: s\ndelimiter: ';'\ndecimal: comma\n"
                  "columns: {code: c, pack number: n, pack unit: u, price: p, freight: f}\n"
                  "items: {A: plum, B: {item: box, pack: 4 x 25, yield: 50 %}}\nfrom: 2026-12-01\n"
                  "tax included: 7 %\n");
    CHECK(desk.said() == "");
    REQUIRE(result.list.offers.size() == 2);
    CHECK(result.list.offers[0].pack_text == "25 kg");
    CHECK(result.list.offers[0].freight.amount() == Number(11, 10));
    CHECK(result.list.offers[0].tax_included.value() == Number(7, 100));
    CHECK(groat::iso_date(*result.list.offers[0].from) == "2026-12-01");
    CHECK(result.list.offers[1].pack.amount == 100);
    CHECK(result.list.offers[1].yield->value() == Number(1, 2));
    Counter none;
    (void)none.take("c,p\nA,1\n", "supplier: s\ncolumns: {code: c, price: p}\nitems: {A: plum}\n");
    CHECK(none.marked() == "2:1+3 missing-pack");
}

TEST_CASE("two rows of one pack are an error at different prices, a warning at the same") {
    Counter desk;
    (void)desk.take(header + "P1,a,1 kg,4\nP1,a,1000 g,5\nF1,f,1 lb,1\n,Great Figs,1 lb,1\n");
    CHECK(desk.marked() == "3:1+13 given-twice");
    CHECK(desk.found.has_errors());
    Counter same;
    auto const result =
        same.take(header + "P1,a,1 kg,4\nP1,a,1 kg,4.0\nF1,f,1 lb,1\n,Great Figs,1 lb,1\n");
    CHECK_FALSE(same.found.has_errors());
    CHECK(result.list.offers.size() == 3);
}

TEST_CASE("a file without rows is an error, and one with errors everywhere ends early") {
    Counter desk;
    (void)desk.take(header);
    CHECK(desk.marked() == "empty-file");
    Counter many;
    (void)many.take(header + groat_test::times(5000, "P1,Plums,1 kg,x\n"));
    CHECK(many.found.errors() == 201);
}
