#include <groat/sheets/label_sheet.hpp>

#include "sheets.hpp"

#include <groat/paper/csv.hpp>
#include <groat/paper/text.hpp>

#include <fmt/format.h>

using namespace groat;
using namespace groat::test;

namespace {

AllergenSet holding(std::initializer_list<std::string_view> wanted) {
    AllergenSet set;
    for (std::string_view const name : wanted) set.insert(find_allergen(name));
    return set;
}

LabelPart part(std::string_view name, int grams, std::initializer_list<std::string_view> holds = {},
               std::vector<std::string> made_of = {}) {
    return {std::string(name), Number(grams), std::move(made_of), holding(holds), {}};
}

Label of(std::vector<LabelPart> parts) {
    Label label;
    label.parts = std::move(parts);
    label.small_from = label.parts.size();
    return label;
}

LabelRule const eu{AllergenLaw::eu, {}, false};

} // namespace

TEST_CASE("small amounts follow their phrase") {
    // 21 CFR 101.4(a)(2): "contains 2 percent or less of"
    Label label = of({part("flour", 90), part("sugar", 8), part("salt", 1), part("yeast", 1)});
    label.small_from = 2;
    CHECK(ingredient_statement(label, {AllergenLaw::us, share_of<Share>("2 %"), false}) ==
          "flour, sugar, contains 2 % or less of: salt, yeast");
    CHECK(ingredient_statement(label, {AllergenLaw::us, share_of<Share>("0.5 %"), false}) ==
          "flour, sugar, contains 0.5 % or less of: salt, yeast");
}

TEST_CASE("what was bought composed names its own ingredients in parentheses") {
    // 21 CFR 101.4(b)(2)
    Label const label =
        of({part("dark chocolate", 50, {"soy"}, {"cocoa mass", "sugar", "soy lecithin"})});
    CHECK(ingredient_statement(label, {}) == "dark chocolate (cocoa mass, sugar, soy lecithin)");
    CHECK(ingredient_statement(label, eu) == "dark chocolate (cocoa mass, sugar, SOY lecithin)");
}

TEST_CASE("a formula that is grouped stands with its ingredients") {
    LabelPart dough;
    dough.name = "dough";
    dough.parts = {part("flour", 60, {"wheat"}), part("egg", 20, {"egg"})};
    CHECK(ingredient_statement(of({dough, part("sugar", 5)}), {}) == "dough (flour, egg), sugar");
    CHECK(ingredient_statement(of({dough, part("sugar", 5)}), eu) ==
          "dough (flour (WHEAT), EGG), sugar");
}

TEST_CASE("allergens stand out in the list where European law rules") {
    // Regulation (EU) 1169/2011, Art. 21(1)(b) (from memory): emphasised by a typeset
    CHECK(ingredient_statement(of({part("wheat flour", 9, {"wheat"})}), eu) == "WHEAT flour");
    CHECK(ingredient_statement(of({part("butter", 9, {"milk"})}), eu) == "butter (MILK)");
    CHECK(ingredient_statement(of({part("eggs", 9, {"egg"})}), eu) == "EGGS");
    CHECK(ingredient_statement(of({part("eggplant", 9, {})}), eu) == "eggplant");
    CHECK(ingredient_statement(of({part("Almonds, sliced", 9, {"almond"})}), eu) ==
          "ALMONDS, sliced");
    CHECK(ingredient_statement(of({part("buttermilk", 9, {"milk"})}), eu) == "buttermilk (MILK)");
}

TEST_CASE("only a whole word names an allergen, alone or as its plural") {
    auto const statement = [](LabelPart const& part) {
        return ingredient_statement(of({part}), eu);
    };
    CHECK(statement(part("eggplant paste", 9, {"egg"})) == "eggplant paste (EGG)");
    CHECK(statement(part("egg white of eggplant, Eggs", 9, {"egg"})) ==
          "EGG white of eggplant, EGGS");
    CHECK(statement(part("milkweed", 9, {"milk"})) == "milkweed (MILK)");
    CHECK(statement(part("fishes", 9, {"fish"})) == "FISHES");
    CHECK(statement(part("brazil nuts, chopped", 9, {"brazil nut"})) == "BRAZIL NUTS, chopped");
    CHECK(statement(part("brazil sugar", 9, {"brazil nut"})) == "brazil sugar (BRAZIL NUT)");
    Words french("fr");
    CHECK_FALSE(french.put(find_word("milk"), "lait"));
    CHECK(ingredient_statement(of({part("laitue", 9, {"milk"})}), eu, french) == "laitue (LAIT)");
    CHECK(ingredient_statement(of({part("Lait entier", 9, {"milk"})}), eu, french) ==
          "LAIT entier");
}

TEST_CASE("a long list of parts is looked through once for each allergen") {
    // to make capitals of all that follows at each of its 50,000 words would take minutes
    std::vector<std::string> const inner(50'000, "ab");
    std::string const text = ingredient_statement(of({part("mixture", 9, {"egg"}, inner)}), eu);
    CHECK(text.ends_with("ab) (EGG)"));
}

TEST_CASE("words of the shop's own stand on the label, in English too") {
    Words own;
    CHECK_FALSE(own.put(find_word("milk"), "dairy"));
    CHECK_FALSE(own.put(find_word("tree nuts"), "nuts"));
    CHECK_FALSE(own.put(find_word("net wt"), "NET WT {weight}"));
    CHECK_FALSE(own.put(find_word("net weight"), "Weight {weight} e"));
    CHECK(contains_statement(holding({"milk", "soy", "tree nuts"}), own) ==
          "Contains: dairy, nuts, soybeans");
    CHECK(ingredient_statement(of({part("butter", 9, {"milk"})}), eu, own) == "butter (DAIRY)");
    CHECK(net_weight_words(144, AllergenLaw::us, own) == "NET WT 5.07 oz (144 g)");
    CHECK(net_weight_words(1000, AllergenLaw::us, own) == "NET WT 35.27 oz (2 lb 3.27 oz) 1 kg");
    CHECK(net_weight_words(144, AllergenLaw::eu, own) == "Weight 144 g (5.07 oz) e");
    Words french("fr");
    CHECK_FALSE(french.put(find_word("net weight"), "Poids net {weight}"));
    CHECK(net_weight_words(144, AllergenLaw::eu, french) == "Poids net 144 g");
}

TEST_CASE("the sentence of allergens names the nine, and nuts by their kind") {
    // 21 USC 321(qq)(1) and 343(w)(1)(A); rye is none of the nine
    CHECK(contains_statement(holding({"rye"})) == "");
    CHECK(contains_statement(holding({"wheat", "milk", "egg", "rye"})) ==
          "Contains: milk, egg, wheat");
    CHECK(contains_statement(holding({"almond", "peanut", "soy", "sesame"})) ==
          "Contains: almond, peanuts, soybeans, sesame");
}

TEST_CASE("kinds of fish are named by their kind, kinds of wheat as wheat, each once") {
    // 21 USC 343(w)(2): the type of tree nut, the species of fish or Crustacean shellfish; molluscs are none of the nine
    CHECK(contains_statement(holding({"spelt", "wheat", "khorasan wheat"})) == "Contains: wheat");
    CHECK(contains_statement(holding({"pine nut", "cod", "salmon", "shrimp", "oyster"})) ==
          "Contains: pine nut, cod, salmon, shrimp");
    CHECK(contains_statement(holding({"crustaceans", "fish"})) ==
          "Contains: fish, Crustacean shellfish");
    CHECK(contains_statement(holding({"spelt"}), Words("de")) == "Enthält: Weizen");
}

TEST_CASE("where European law rules a kind stands beside the word of the law") {
    // Annex II has wheat ("such as spelt and khorasan wheat"), fish and crustaceans, and no pine nuts
    Label const label =
        of({part("spelt flour", 50, {"spelt"}), part("cod fillet", 40, {"cod", "salmon"}),
            part("fish sauce", 30, {"anchovy"}), part("pine nuts", 20, {"pine nut"})});
    CHECK(ingredient_statement(label, eu) ==
          "spelt flour (WHEAT), cod fillet (FISH), FISH sauce, pine nuts");
}

TEST_CASE("sulphites that are declared are named at their ingredient on a US label too") {
    // 21 CFR 101.100(a)(4), from memory: from 10 ppm on they are to be declared
    LabelRule const us;
    Label const label = of({part("dried apricots", 50, {"sulphites"}),
                            part("wine", 20, {"sulphites"}, {"grapes", "potassium metabisulfite"}),
                            part("sultanas with sulphur dioxide", 10, {"sulphites"})});
    CHECK(
        ingredient_statement(label, us) ==
        "dried apricots (sulfites), wine (grapes, potassium metabisulfite), sultanas with sulphur "
        "dioxide");
    CHECK(contains_statement(holding({"sulphites"})) == "");
    Words own;
    CHECK_FALSE(own.put(find_word("sulphites"), "sulphur dioxide"));
    CHECK(ingredient_statement(of({part("plums", 5, {"sulphites"})}), us, own) ==
          "plums (sulphur dioxide)");
    CHECK(ingredient_statement(of({part("plums", 5, {"sulphites"})}), eu) == "plums (SULPHITES)");
}

TEST_CASE("the sheet says why sulphites stand where they do, and what is not named by its kind") {
    Book book = a_book();
    food(book, "wine").allergens = holding({"sulphites"});
    food(book, "stock").allergens = holding({"fish"});
    formula(book, "soup", {{"wine", "10 g"}, {"stock", "90 g"}}).makes = quantity("1");
    link_well(book);
    Costing const costing(linked(book), today);
    Diagnostics found;
    auto const label = label_of(costing, 0, nullptr, {}, {}, found);
    REQUIRE(label.has_value());
    std::string const us = to_text(label_sheet(*label, book, {}, false));
    CHECK(says(us, "wine (sulfites)"));
    CHECK(says(us, "Sulphites are none of the nine"));
    CHECK(says(us, "write cod, shrimp or another"));
    std::string const european = to_text(label_sheet(*label, book, eu, false));
    CHECK(!says(european, "none of the nine"));
}

TEST_CASE("the maker of a European label is told how far a pack may fall short") {
    // 76/211/EEC, Annex I: 3 % of 453 g
    Book book = a_book();
    food(book, "bread");
    formula(book, "loaf", {{"bread", "453.9 g"}}).makes = quantity("1");
    link_well(book);
    Costing const costing(linked(book), today);
    Diagnostics found;
    auto const label = label_of(costing, 0, nullptr, {}, {}, found);
    REQUIRE(label.has_value());
    auto const cautions = [&](LabelRule const& rule, bool is_maker) {
        return fmt::format(
            "{}",
            fmt::join(
                section<Remarks>(label_sheet(*label, book, rule, is_maker), "cautions")->lines,
                " "));
    };
    CHECK(says(cautions(eu, true), "fall short of 453 g by 13.6 g and no more"));
    CHECK(!says(cautions(eu, false), "fall short"));
    CHECK(!says(cautions({}, true), "fall short"));
}

TEST_CASE("what holds a cold part unbaked and is not kept cold is told on its label") {
    Book book = a_book();
    food(book, "cream").keeping.at = KeepAt::cold;
    formula(book, "fool", {{"cream", "90 g"}}).makes = quantity("1");
    link_well(book);
    Costing const costing(linked(book), today);
    Diagnostics found;
    auto const label = label_of(costing, 0, nullptr, {}, {}, found);
    REQUIRE(label.has_value());
    CHECK(says(section<Remarks>(label_sheet(*label, book, {}, false), "cautions")->lines.back(),
               "It holds 'cream', which is kept cold"));
}

TEST_CASE("the net weight stands in both systems and never says more than there is") {
    // USDA SR28 18166: three pieces 36 g, so twelve 144 g = 5.0795 oz (derived)
    CHECK(net_weight_words(144, AllergenLaw::us) == "Net wt 5.07 oz (144 g)");
    CHECK(net_weight_words(144, AllergenLaw::eu) == "Net weight 144 g (5.07 oz)");
    CHECK(net_weight_words(number("143.99"), AllergenLaw::us) == "Net wt 5.07 oz (143 g)");
    // 1 lb = 453.59237 g exactly
    CHECK(net_weight_words(number("453.59237"), AllergenLaw::us) ==
          "Net wt 16 oz (1 lb 0 oz) 453 g");
    CHECK(net_weight_words(1000, AllergenLaw::us) == "Net wt 35.27 oz (2 lb 3.27 oz) 1 kg");
    // 21 CFR 101.7(m), from memory: 1 1/2 lb is "Net Wt. 24 oz. (1 lb. 8 oz.)", 3/4 lb "Net Wt. 12 oz."
    Number const pound = number("453.59237");
    CHECK(net_weight_words(pound * number("1.5"), AllergenLaw::us) ==
          "Net wt 24 oz (1 lb 8 oz) 680 g");
    CHECK(net_weight_words(pound * number("0.75"), AllergenLaw::us) == "Net wt 12 oz (340 g)");
}

TEST_CASE("the weights of the ingredients are for the maker only") {
    Book book = a_book();
    food(book, "flour", "1 kg", "1.00");
    formula(book, "wafer", {{"flour", "123 g"}}).makes = quantity("1");
    link_well(book);
    Costing const costing(linked(book), today);
    Diagnostics found;
    auto const label = label_of(costing, 0, nullptr, {}, {}, found);
    REQUIRE(label);
    Sheet const sheet = label_sheet(*label, book, {}, false);
    CHECK(section<Table>(sheet, "weights") == nullptr);
    CHECK(sheet.audience == "client");
    Sheet const makers = label_sheet(*label, book, {}, true);
    CHECK(shown(table(makers, "weights"), "1", "share") == "100.0");
    CHECK_FALSE(says(to_csv(makers), "Unit")); // which no words of the shop put right
}

TEST_CASE("more than seven days in the cold bring the rule that limits them") {
    Book book = a_book();
    food(book, "cream", "1 kg", "1.00");
    formula(book, "mousse", {{"cream", "100 g"}}).makes = quantity("1");
    book.formulas.front().keeping = {KeepAt::cold, 9};
    link_well(book);
    Costing const costing(linked(book), today);
    Diagnostics found;
    auto const label = label_of(costing, 0, nullptr, {}, {}, found);
    REQUIRE(label);
    CHECK(says(to_text(label_sheet(*label, book, {}, false)), "3-501.17"));
    book.formulas.front().keeping.days = 7;
    Costing const shorter(linked(book), today);
    auto const other = label_of(shorter, 0, nullptr, {}, {}, found);
    CHECK_FALSE(says(to_text(label_sheet(*other, book, {}, false)), "3-501.17"));
}

TEST_CASE("in German the allergens of a statement have their German names") {
    // Regulation (EU) 1169/2011, Article 21: emphasised where the name of the ingredient says it, else named
    Words const german("de");
    auto const statement = [&](LabelPart part) {
        return ingredient_statement(of({std::move(part)}), eu, german);
    };
    CHECK(statement(part("Weizenmehl", 9, {"wheat"})) == "WEIZENMEHL");
    CHECK(statement(part("Dinkelmehl", 9, {"wheat"})) == "Dinkelmehl (WEIZEN)");
    CHECK(statement(part("Vollmilch", 9, {"milk"})) == "Vollmilch (MILCH)");
    CHECK(statement(part("gemahlene Haselnüsse", 9, {"hazelnut"})) == "gemahlene HASELNÜSSE");
    CHECK(statement(part("Buchweizen", 9, {"wheat"})) ==
          "Buchweizen (WEIZEN)"); // a trace of the other
    CHECK(statement(part("Reismehl", 9)) == "Reismehl");
    Label label = of({part("Weizenmehl", 98, {"wheat"}), part("Salz", 2)});
    label.small_from = 1;
    Style const comma = parse_money_style("1.234,56 €", currency("EUR"), {}).value();
    CHECK(ingredient_statement(label, {AllergenLaw::us, share_of<Share>("1.5 %"), false}, german,
                               comma) == "Weizenmehl, enthält höchstens 1,5 %: Salz");
}

TEST_CASE("in another language than English the net quantity is named by its label alone") {
    Words const german("de");
    CHECK(net_weight_words(144, AllergenLaw::eu, german) == "144 g");
    CHECK(net_weight_words(1250, AllergenLaw::eu, german) == "1.25 kg");
    CHECK(net_weight_words(144, AllergenLaw::us, german) == "5.07 oz (144 g)");
    CHECK(contains_statement(holding({"wheat", "soy", "almond"}), german) ==
          "Enthält: Weizen, Mandeln, Sojabohnen");
}

TEST_CASE("under EU law only what needs the cold is used by a day, all else is best before it") {
    // Regulation (EU) 1169/2011, Articles 9(1)(f) and 24
    Book book = a_book("EUR");
    formula(book, "bun", {});
    Label label = of({part("flour", 9)});
    label.use_by = today;
    auto const says_of = [&](AllergenLaw law, KeepAt at) {
        label.contents.keeping = {at, 3};
        Sheet const sheet = label_sheet(label, book, {law, {}, false}, false);
        for (Fact const& fact : std::get<Facts>(sheet.sections.front()).facts)
            if (fact.key == "use_by") return fact.label;
        return std::string();
    };
    CHECK(says_of(AllergenLaw::eu, KeepAt::cool) == "Best before");
    CHECK(says_of(AllergenLaw::eu, KeepAt::cold) == "Use by");
    CHECK(says_of(AllergenLaw::us, KeepAt::cool) == "Use by");
    book.shop.sheets.words = Words("de");
    CHECK(says_of(AllergenLaw::eu, KeepAt::cool) == "Mindestens haltbar bis");
    CHECK(says_of(AllergenLaw::eu, KeepAt::cold) == "Zu verbrauchen bis");
}
