#include "reading.hpp"

#include <groat/books/read_formulas.hpp>

#include <doctest/doctest.h>

#include <string>
#include <variant>

using groat::Formula;
using groat::LossStage;
using groat::Number;
using groat::Per;
using groat::Quantity;
using groat_test::Desk;

namespace {

struct Reader : Desk {
    groat::Reading reading{found, *groat::Currency::find("USD"), groat::Measures::us};

    Formula formula(std::string const& text) { return read_formula(node(text), reading); }
};

/// What is found in a formula called `a` whose other fields, from line 2 on, are these.
std::string formula_marks(std::string const& text) {
    Reader desk;
    (void)desk.formula("formula: a\n" + text + "\n");
    return desk.marked();
}
/// The same for one that has a line already: what is added begins in line 3, or 4 where it has a portion.
std::string with_lines(std::string const& text) {
    return formula_marks("lines: {flour: 1 g}\n" + text);
}

std::string in_pieces(std::string const& text) { return with_lines("portion: 24 g\n" + text); }

Quantity const& amount(groat::Line const& line) { return std::get<Quantity>(line.amount); }

} // namespace

TEST_CASE("every field of a formula arrives") {
    Reader desk;
    Formula const formula = desk.formula(R"(
formula: ginger shell
lines:
  plain flour: 620 g
  butter: 1 1/2 cup
  lemon: 3 as bought
  plum: {amount: 300 g, yield: 80 %}
  orange: {amount: 2, as bought: yes}
portion: 24 g
makes: 40
density: 0.9 g / mL
losses: {bowl: 2 %, baking: 9 %, breakage: 3 %, tasting: {share: 1 %, when: pieces}}
oven: {use: deck, minutes: 11, holds: 36}
labour: [{task: mix, by: baker, minutes: 14, per: mix}, {task: scoop, by: baker, minutes: 4, per: load}]
consumables: [{item: tray liner, amount: 1, per: load}]
batches: half
largest mix: 2
leftover: kept
keep: {at: cold, for: 4 days}
standard run: 96
price: {margin: 45 %}
tax: reduced
label: ginger biscuit
sold as:
  box of 12: {holds: 12, packing: {window box: 1, liner: 1}, labour: [{task: box, by: baker, minutes: 2}]}
  single: {holds: 1, price: {to: 0.25}}
)");
    CHECK(desk.said().empty());
    CHECK(formula.name == "ginger shell");
    REQUIRE(formula.lines.size() == 5);
    CHECK(amount(formula.lines[0]).amount == 620);
    CHECK(formula.lines[2].is_as_bought);
    CHECK(amount(formula.lines[2]).amount == 3);
    CHECK(formula.lines[3].yield->value() == Number(4, 5));
    CHECK(formula.lines[4].is_as_bought);
    CHECK(formula.makes_pieces());
    CHECK(formula.densities.size() == 1);
    REQUIRE(formula.losses.size() == 4);
    CHECK(formula.losses[0].stage == LossStage::before_portioning);
    CHECK(formula.losses[1].stage == LossStage::after_portioning);
    CHECK(formula.losses[2].stage == LossStage::pieces);
    CHECK(formula.losses[3].stage == LossStage::pieces);
    CHECK(formula.oven->holds.amount == 36);
    CHECK(formula.labour[0].per == Per::mix);
    CHECK(formula.consumables[0].per == Per::load);
    CHECK(formula.batch_step == Number(1, 2));
    CHECK(*formula.largest_mix == 2);
    CHECK(formula.keeps_leftover);
    CHECK(formula.keeping.days == 4);
    CHECK(*formula.standard_run == 96);
    CHECK(formula.tax.name == "reduced");
    REQUIRE(formula.sold_as.size() == 2);
    CHECK(formula.sold_as[0].holds.amount == 12);
    CHECK(formula.sold_as[0].packing.size() == 2);
    CHECK(formula.sold_as[0].labour[0].per == Per::sale_unit);
}

TEST_CASE("the least of a formula is a name and a line, and it is made by mass") {
    Reader desk;
    Formula const formula = desk.formula("formula: icing\nlines: {powdered sugar: 2 cup}\n");
    CHECK(desk.said().empty());
    CHECK_FALSE(formula.makes_pieces());
    CHECK(formula.batch_step == 0);
    CHECK(formula_marks("") == "1:1+1 missing-key");
    CHECK(formula_marks("lines: {}") == "2:8+1 missing-value");
    CHECK(formula_marks("lines: []") == "2:8+1 missing-value");
    CHECK(formula_marks("lines:") == "2:1+5 missing-value");
    Reader nameless;
    CHECK(nameless.formula("lines: {flour: 1 g}\n").name.empty());
    CHECK(nameless.said() ==
          "x.yaml:1:1: error: 'formula' is missing from this formula [missing-key]\n"
          "  1 | lines: {flour: 1 g}\n"
          "    | ^\n"
          "  help: add 'formula: ginger shell'\n");
}

TEST_CASE("in a list a name may stand twice, in a mapping it may not") {
    Reader desk;
    CHECK(
        desk.formula(
                "formula: a\nlines:\n  - {item: flour, amount: 1 g}\n  - {item: flour, amount: 2 g}\n")
            .lines.size() == 2);
    CHECK(desk.said().empty());
    CHECK(formula_marks("lines: {flour: 1 g, flour: 2 g}") == "2:21+5 duplicate-key");
}

TEST_CASE("baker's percentages are shares of a base") {
    Reader desk;
    Formula const formula = desk.formula(
        "formula: loaf\npercent of: [bread flour, rye flour]\nlines: {bread flour: 70 %, rye flour: 30%, water: 72 1/2 %}\n"
        "total: 5 kg\n");
    CHECK(desk.said().empty());
    CHECK(formula.percentage_base.size() == 2);
    CHECK(std::get<Number>(formula.lines[2].amount) == Number(29, 40));
    CHECK(*formula.total_grams == 5000);
    CHECK(desk.formula("formula: a\npercent of: flour\nlines: {flour: 1 kg}\n")
              .percentage_base[0]
              .name == "flour");
}

TEST_CASE("a percentage says of what, and a total is of percentages") {
    Reader desk;
    (void)desk.formula("formula: loaf\nlines: {flour: 1 kg, water: 72 %}\n");
    CHECK(
        desk.said() ==
        "x.yaml:2:29: error: 'water' is a percentage, but of what is not said [percentage-of-what]\n"
        "  2 | lines: {flour: 1 kg, water: 72 %}\n"
        "    |                             ^^^^\n"
        "  help: add 'percent of:' with the name of the base, such as the flour\n");
    CHECK(with_lines("total: 5 kg") == "3:1+5 key-alone");
    CHECK(with_lines("percent of: flour\ntotal: 5") == "4:8+1 wrong-dimension");
    CHECK(with_lines("percent of: []") == "3:13+1 wrong-kind");
    CHECK(formula_marks("percent of: f\nlines: {f: 100 %, w: 0 %, x: -3 %, y: 1 %% }") ==
          "3:22+3 not-positive 3:30+4 not-positive 3:40+2 bad-number");
    CHECK(formula_marks("percent of: f\nlines: {f: 100 %, z: 1 % as bought}") ==
          "3:22+13 percentage-as-bought");
}

TEST_CASE("amounts of nothing, of less, or of the wrong kind are refused") {
    CHECK(formula_marks("lines: {flour: 0 g}") == "2:16+3 not-positive");
    CHECK(formula_marks("lines: {flour: -620 g}") == "2:16+6 not-positive");
    CHECK(formula_marks("lines: {flour: 0}") == "2:16+1 not-positive");
    CHECK(formula_marks("lines: {flour: 3 km}") == "2:16+4 wrong-dimension");
    CHECK(formula_marks("lines: {flour: 620 gr}") == "2:20+2 unknown-unit");
    CHECK(formula_marks("lines: {flour: some}") == "2:16+1 bad-quantity");
    CHECK(formula_marks("lines: {flour: 3 as  bought}") == "2:18+2 unknown-unit");
    CHECK(formula_marks("lines: {flour: }") == "2:9+5 missing-value");
    CHECK(formula_marks("lines: {flour: [1 g]}") == "2:16+1 wrong-kind");
    CHECK(formula_marks("lines: {flour: {yield: 80 %}}") == "2:16+1 missing-key");
    CHECK(formula_marks("lines: {flour: {amount: 1 g, yield: 0 %}}") == "2:37+3 rate-out-of-range");
    CHECK(formula_marks("lines: {flour: {amount: 1 g, yeild: 80 %}}") == "2:30+5 unknown-key");
    CHECK(formula_marks("lines: [{amount: 1 g}]") == "2:9+1 missing-key");
    CHECK(formula_marks("lines: flour") == "2:8+5 wrong-kind");
}

TEST_CASE("a scoop that turned into a note is missed") {
    // `#60 scoop` without quotation marks is a remark to YAML.
    Reader desk;
    (void)desk.formula("formula: a\nlines: {flour: 1 g}\nportion: #60 scoop\n");
    CHECK(desk.said() ==
          "x.yaml:3:1: error: nothing stands here, but a quantity is expected [missing-value]\n"
          "  3 | portion: #60 scoop\n"
          "    | ^^^^^^^\n"
          "  help: a # begins a note: write \"#60 scoop\" with its quotation marks\n");
    CHECK(with_lines("portion: # of dough\nmakes:") == "3:1+7 missing-value 4:1+5 missing-value");
}

TEST_CASE("portions are masses or volumes, and what is made are whole pieces or a mass") {
    CHECK(with_lines("portion: 24") == "3:10+2 wrong-dimension");
    CHECK(with_lines("portion: 0 g") == "3:10+3 not-positive");
    CHECK(with_lines("makes: 0") == "3:8+1 not-positive");
    CHECK(with_lines("makes: 2.5") == "3:8+3 not-whole");
    CHECK(with_lines("makes: 1 L") == "3:8+3 wrong-dimension");
    CHECK(with_lines("makes: 2 kg").empty());
    CHECK(in_pieces("makes: 2 kg") == "4:8+4 wrong-dimension");
}

TEST_CASE("losses have a time, which some names tell by themselves") {
    CHECK(in_pieces("losses: {baking: 100 %}") == "4:18+5 rate-out-of-range");
    CHECK(in_pieces("losses: {baking: 0 %}").empty());
    CHECK(in_pieces("losses: {baking: -1 %}") == "4:18+4 rate-out-of-range");
    CHECK(in_pieces("losses: {baking: 9}") == "4:18+1 bad-percent");
    CHECK(in_pieces("losses: {simmering: {share: 3 %}}") == "4:21+1 missing-key");
    CHECK(in_pieces("losses: {simmering: {share: 3 %, when: later}}") == "4:40+5 unknown-word");
    Reader desk;
    (void)desk.formula("formula: a\nlines: {x: 1 g}\nlosses: {bakign: 3 %}\n");
    CHECK(
        desk.said() ==
        "x.yaml:3:10: error: when 'bakign' happens is not known [unknown-loss]\n"
        "  3 | losses: {bakign: 3 %}\n"
        "    |          ^^^^^^\n"
        "  help: did you mean 'baking'? else say when it happens: {share: 2 %, when: before portioning}\n");
}

TEST_CASE("a formula made by mass has no pieces to lose, to count or to hold") {
    CHECK(with_lines("losses: {breakage: 3 %}") == "3:10+8 made-by-mass");
    CHECK(with_lines("losses: {x: {share: 3 %, when: pieces}}") == "3:10+1 made-by-mass");
    CHECK(with_lines("labour: [{task: a, by: b, minutes: 1, per: piece}]") ==
          "3:44+5 made-by-mass");
    CHECK(with_lines("consumables: [{item: a, amount: 1, per: piece}]") == "3:41+5 made-by-mass");
    CHECK(with_lines("oven: {use: deck, minutes: 1, holds: 36}") == "3:38+2 wrong-dimension");
    CHECK(with_lines("oven: {use: deck, minutes: 1, holds: 5 kg}").empty());
    CHECK(with_lines("sold as: {jar: {holds: 12}}") == "3:24+2 wrong-dimension");
    CHECK(with_lines("sold as: {jar: {holds: 250 g}}").empty());
    CHECK(with_lines("standard run: 12") == "3:15+2 wrong-dimension");
    CHECK(with_lines("standard run: 2 kg").empty());
}

TEST_CASE("a formula in pieces holds pieces, and whole ones") {
    CHECK(in_pieces("oven: {use: deck, minutes: 1, holds: 5 kg}") == "4:38+4 wrong-dimension");
    CHECK(in_pieces("oven: {use: deck, minutes: 1, holds: 2.5}") == "4:38+3 not-whole");
    CHECK(in_pieces("oven: {use: deck, minutes: 1, holds: 0}") == "4:38+1 not-positive");
    CHECK(in_pieces("oven: {use: deck, minutes: -1, holds: 3}") == "4:28+2 negative");
    CHECK(in_pieces("oven: {}") == "4:7+1 missing-key 4:7+1 missing-key 4:7+1 missing-key");
    CHECK(in_pieces("sold as: {box: {holds: 250 g}}") == "4:24+5 wrong-dimension");
    CHECK(in_pieces("sold as: {box: {}}") == "4:16+1 missing-key");
    CHECK(in_pieces(
              "sold as: {box: {holds: 2, labour: [{task: a, by: b, minutes: 1, per: batch}]}}") ==
          "4:70+5 unknown-word");
    CHECK(in_pieces("standard run: 2 kg") == "4:15+4 wrong-dimension");
    CHECK(in_pieces("losses: {breakage: 3 %}").empty());
}

TEST_CASE("where it cannot be read what a formula makes, nothing is held against the rest") {
    CHECK(with_lines("makes: many\nlosses: {breakage: 3 %}\noven: {use: d, minutes: 1, holds: 36}\n"
                     "sold as: {jar: {holds: 250 g}}") == "3:8+1 bad-quantity");
    CHECK(with_lines("portion: 24 gr\nsold as: {box: {holds: 12}}") == "3:13+2 unknown-unit");
}

TEST_CASE("words and keys of a formula are checked like all others") {
    CHECK(with_lines("batches: hole") == "3:10+4 unknown-word");
    CHECK(with_lines("leftover: sold") == "3:11+4 unknown-word");
    CHECK(with_lines("keep: cold").empty());
    CHECK(with_lines("keep: warm") == "3:7+4 unknown-word");
    CHECK(with_lines("keep: {at: warm}") == "3:12+4 unknown-word");
    CHECK(with_lines("keep: {at: cold, for: long}") == "3:23+4 bad-days");
    CHECK(with_lines("largest mix: 0") == "3:14+1 not-positive");
    CHECK(with_lines("labour: [{task: a, by: b, minutes: 1, per: load}]") ==
          "3:44+4 load-without-oven");
    CHECK(with_lines("consumables: [{item: a, amount: 1, per: load}]") ==
          "3:41+4 load-without-oven");
    CHECK(with_lines("price: {margin: 100 %}") == "3:17+5 rate-out-of-range");
    CHECK(with_lines("makse: 40") == "3:1+5 unknown-key");
    CHECK(with_lines("sold as: [box]") == "3:10+1 wrong-kind");
    CHECK(with_lines("density: 3") == "3:10+1 bad-density");
}
