#include <groat/measure/tray.hpp>

#include "amounts.hpp"

#include <string>
#include <string_view>

using groat::Integer;
using groat::Measures;
using groat::Number;
using groat::parse_tray_size;
using groat::pieces_on_tray;
using groat::TrayFit;
using groat::TrayLayout;

namespace {

Integer square(int width, int length, std::string_view spread, std::string_view gap) {
    return pieces_on_tray({width, length, figure(spread), figure(gap), TrayLayout::square});
}
Integer staggered(int width, int length, std::string_view spread, std::string_view gap) {
    return pieces_on_tray({width, length, figure(spread), figure(gap), TrayLayout::staggered});
}

std::string read(std::string_view text) {
    auto const size = parse_tray_size(text, Measures::us);
    return size ? exact(size->width * 100) + " by " + exact(size->length * 100) : size.error().code;
}

} // namespace

TEST_CASE("straight rows hold as many as fit along each side") {
    // 40 x 60, spread 7, gap 2: (40 - 7) / 9 = 3.7 and one, (60 - 7) / 9 = 5.9 and one: 4 x 6
    CHECK(square(40, 60, "7", "2") == 24);
    // 13 x 18, spread 3, gap 1: (13 - 3) / 4 = 2.5 and one, (18 - 3) / 4 = 3.75 and one: 3 x 4
    CHECK(square(13, 18, "3", "1") == 12);
    // what fits to the last hair fits: 4 of 10 side by side in 40
    CHECK(square(40, 40, "10", "0") == 16);
    CHECK(square(39, 40, "10", "0") == 12);
}

TEST_CASE("staggered rows lie closer, the second one half a place along") {
    // 40 x 60, spread 7, gap 2, rows half the root of 3 times 9 = 7.794 apart. Rows along 60: 6 and
    // (53 - 4.5) / 9 = 5.4 and one, so 6; (40 - 7) / 7.794 = 4.23 and one, so 5 rows: 30.
    // Rows along 40: 4 and (33 - 4.5) / 9 = 3.2 and one, so 4; 53 / 7.794 = 6.8 and one, so 7 rows: 28
    CHECK(staggered(40, 60, "7", "2") == 30);
    CHECK(staggered(60, 40, "7", "2") == 30);
    // 13 x 18, spread 3, gap 1, rows 3.464 apart. Along 13: 3 and 3, 15 / 3.464 = 4.3: 5 rows, 15.
    // Along 18: 4 and 4, 10 / 3.464 = 2.9: 3 rows, 12
    CHECK(staggered(13, 18, "3", "1") == 15);
    // touching circles of 10 in 25 x 30: along 25, 2 and 2 (15 - 5 = 10); 20 / 8.66 = 2.3: 3 rows, 6;
    // along 30, 3 and 2; 15 / 8.66 = 1.7: 2 rows, 5
    CHECK(staggered(25, 30, "10", "0") == 6);
}

TEST_CASE("a tray that one piece does not fit holds none, one that it just fits holds one") {
    CHECK(square(6, 60, "7", "2") == 0);
    CHECK(staggered(6, 60, "7", "2") == 0);
    CHECK(square(7, 7, "7", "2") == 1);
    CHECK(staggered(7, 7, "7", "2") == 1);
}

TEST_CASE("any tray: pieces stay on it and apart, and one more row would not fit") {
    Draw draw(3);
    for (int i = 0; i < 500; ++i) {
        TrayFit fit{draw.number(20, 80, 8), draw.number(20, 80, 8), draw.number(3, 12, 8),
                    draw.number(0, 3, 8), TrayLayout::staggered};
        if (!fit.spread.is_positive()) continue;
        Number const pitch = fit.spread + fit.gap;
        Integer best = 0;
        // by counting: places one after another, rows one after another while they stay on the tray
        for (auto const& [w, h] : {std::pair(fit.width, fit.length), {fit.length, fit.width}}) {
            Integer pieces = 0;
            for (Integer row = 0; fit.spread <= h; ++row) {
                Number const rest = h - fit.spread;
                if (3 * Number(row) * Number(row) * pitch * pitch > 4 * rest * rest) break;
                Number at = row % 2 == 0 ? Number() : pitch / 2;
                for (; at + fit.spread <= w; at += pitch) ++pieces;
            }
            best = std::max(best, pieces);
        }
        CHECK(pieces_on_tray(fit) == best);
        // the unit does not matter, nor which side is called its width
        Number const inch = figure("2.54");
        CHECK(pieces_on_tray({fit.length * inch, fit.width * inch, fit.spread * inch,
                              fit.gap * inch, fit.layout}) == best);
        // more air, fewer pieces
        CHECK(pieces_on_tray({fit.width, fit.length, fit.spread, fit.gap + 1, fit.layout}) <= best);
    }
}

TEST_CASE("a size is two lengths") {
    CHECK(read("40 x 60 cm") == "40 by 60");
    CHECK(read("40x60 cm") == "40 by 60");
    CHECK(read("40 cm x 600 mm") == "40 by 60");
    CHECK(read("18 × 26 in") == "1143/25 by 1651/25");
    CHECK(read("40 cm") == "bad-tray");
    CHECK(read("40 x 60") == "bad-tray");
    CHECK(read("40 x 60 g") == "bad-tray");
    CHECK(read("0 x 60 cm") == "bad-tray");
    CHECK(read("40 x -60 cm") == "bad-tray");
    CHECK(read("-40 x 60 cm") == "bad-tray");
    CHECK(read("40 g x 60 cm") == "bad-tray");
    CHECK(read("x") == "bad-tray");
    CHECK(read("") == "bad-tray");
}

TEST_CASE("a tray or piece without a size is misuse") {
    CHECK_THROWS_AS((void)square(0, 60, "7", "2"), std::logic_error);
    CHECK_THROWS_AS((void)square(40, 60, "0", "2"), std::logic_error);
    CHECK_THROWS_AS((void)square(40, 60, "7", "-1"), std::logic_error);
}
