#include "reading.hpp"

#include <groat/books/read_oven.hpp>

#include <doctest/doctest.h>

#include <string>

using groat::OvenUse;
using groat_test::Desk;

namespace {

struct Reader : Desk {
    groat::Reading reading{found, *groat::Currency::find("USD"), groat::Measures::us};

    /// The oven of a formula that makes pieces, or is made by mass.
    OvenUse oven(std::string const& fields, bool is_pieces = true) {
        groat::read_formulas_detail::Making making;
        making.may_be_pieces = is_pieces;
        making.may_be_mass = !is_pieces;
        return groat::read_formulas_detail::read_oven_use(
            node("{use: deck, minutes: 11, " + fields + "}"), making, reading);
    }
};

groat::Number load(std::string const& fields) {
    Reader desk;
    OvenUse const use = desk.oven(fields);
    CHECK_MESSAGE(desk.said().empty(), desk.said());
    return use.holds.amount;
}

std::string marks(std::string const& fields, bool is_pieces = true) {
    Reader desk;
    (void)desk.oven(fields, is_pieces);
    return desk.marked();
}

} // namespace

TEST_CASE("a load is stated as a whole, or by the tray") {
    CHECK(load("holds: 80") == 80);
    CHECK(load("trays: 4, per tray: 20") == 80);
    Reader desk;
    CHECK(desk.oven("trays: 4, per tray: 20").trays == 4);
    CHECK(!desk.oven("holds: 80").trays);
}

TEST_CASE("or worked out from tray and piece, as measure/tray.hpp does by hand") {
    CHECK(load("trays: 4, tray: 40 x 60 cm, spread: 7 cm, gap: 2 cm") == 4 * 24);
    CHECK(load("trays: 4, tray: 40 x 60 cm, spread: 7 cm, gap: 2 cm, layout: square") == 4 * 24);
    CHECK(load("trays: 2, tray: 40 x 60 cm, spread: 7 cm, gap: 2 cm, layout: staggered") == 2 * 30);
    CHECK(load("trays: 1, tray: 13 x 18 in, spread: 3 in, gap: 1 in, layout: staggered") == 15);
    CHECK(load("trays: 1, tray: 40 x 40 cm, spread: 10 cm") == 16); // no gap: they touch
}

TEST_CASE("one way of telling a load is enough") {
    CHECK(marks("holds: 80, trays: 4, per tray: 20") == "1:37+5 not-both");
    CHECK(marks("trays: 4, per tray: 20, tray: 40 x 60 cm, spread: 7 cm") == "1:50+4 not-both");
}

TEST_CASE("trays need to know what lies on them") {
    CHECK(marks("trays: 4") == "1:26+5 missing-key");
    CHECK(marks("trays: 4, tray: 40 x 60 cm") == "1:36+4 key-alone");
    CHECK(marks("per tray: 20") == "1:1+1 missing-key 1:26+8 key-alone");
    CHECK(marks("trays: 4, tray: 40 x 60 cm, spread: 61 cm") == "1:62+5 tray-too-small");
    CHECK(marks("trays: 4, per tray: 20", false) == "1:33+1 made-by-mass");
}

TEST_CASE("sizes are lengths, counts are whole, words are known") {
    CHECK(marks("trays: 4, tray: big, spread: 7 cm") == "1:42+3 bad-tray");
    CHECK(marks("trays: 4, tray: 40 x 60 cm, spread: 7 g") == "1:62+3 wrong-dimension");
    CHECK(marks("trays: 4, tray: 40 x 60 cm, spread: 7 cm, gap: -1 cm") == "1:73+5 not-positive");
    CHECK(marks("trays: 4, tray: 40 x 60 cm, spread: 0 cm") == "1:62+4 not-positive");
    CHECK(marks("trays: 0, per tray: 20") == "1:33+1 not-positive");
    CHECK(marks("trays: 4, per tray: 2.5") == "1:46+3 not-whole");
    CHECK(marks("trays: 4, tray: 40 x 60 cm, spread: 7 cm, layout: hexagonal") ==
          "1:76+9 unknown-word");
    CHECK(marks("trays: 4, per trya: 20") == "1:36+8 unknown-key");
}
