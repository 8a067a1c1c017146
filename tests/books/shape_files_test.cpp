#include "reading.hpp"

#include <groat/books/import_map.hpp>
#include <groat/books/read_books.hpp>
#include <groat/books/read_formulas.hpp>
#include <groat/books/read_ingredients.hpp>
#include <groat/books/read_menus.hpp>
#include <groat/books/read_orders.hpp>
#include <groat/books/read_receipts.hpp>
#include <groat/books/read_runs.hpp>
#include <groat/books/read_scenarios.hpp>
#include <groat/books/read_shop.hpp>
#include <groat/books/read_stock.hpp>
#include <groat/books/read_words.hpp>
#include <groat/books/read_yields.hpp>
#include <groat/books/shape_files.hpp>

#include <doctest/doctest.h>

#include <set>
#include <string>

using namespace groat;
using groat_test::Desk;

namespace {

KeyShape const& key_of(Shape const& shape, std::string_view name) {
    return shape.keys[shape.find(name)];
}

/// Takes up a key with what must stand beside it, each once.
void take(Shape const& shape, KeyShape const& key, std::vector<KeyShape const*>& keys) {
    for (KeyShape const* each : keys)
        if (each->name == key.name) return;
    keys.push_back(&key);
    for (Condition const& condition : key.conditions)
        if (condition.kind == Condition::Kind::with)
            take(shape, key_of(shape, condition.other), keys);
}

/// A mapping of examples: what must stand, and one more key.
std::string example_of(Shape const& shape, KeyShape const* more) {
    std::vector<KeyShape const*> keys;
    if (more != nullptr) take(shape, *more, keys);
    auto const stands = [&](std::string_view name) {
        for (KeyShape const* each : keys)
            if (each->name == name) return true;
        return false;
    };
    for (KeyShape const& key : shape.keys) {
        bool is_needed = key.need == KeyNeed::must;
        for (Condition const& condition : key.conditions)
            if (condition.kind == Condition::Kind::unless) is_needed = !stands(condition.other);
        if (is_needed) take(shape, key, keys);
    }
    std::string text;
    for (KeyShape const* key : keys)
        text +=
            (text.empty() ? "{" : ", ") + std::string(key->name) + ": " + std::string(key->example);
    return text.empty() ? "{}" : text + "}";
}

/// A document of a file that holds `inner` at each place of `shape`, found by going down from `value`; empty
/// where the shape is not below.
std::string document_with(Value const& value, Shape const& wanted, std::string const& inner) {
    for (Form const& form : value.all()) {
        if (form.kind == ValueKind::mapping && form.shape == &wanted) return inner;
        if (form.kind == ValueKind::list)
            if (auto const text = document_with(*form.of, wanted, inner); !text.empty())
                return "[" + text + "]";
        if (form.kind == ValueKind::names) {
            std::string const name = form.words.empty() ? "baking" : std::string(form.words[0]);
            if (auto const text = document_with(*form.of, wanted, inner); !text.empty())
                return "{" + name + ": " + text + "}";
        }
        if (form.kind != ValueKind::mapping) continue;
        for (KeyShape const& key : form.shape->keys) {
            std::string const text = document_with(key.value, wanted, inner);
            if (text.empty()) continue;
            std::string const all = example_of(*form.shape, &key);
            std::string const start = std::string(key.name) + ": " + std::string(key.example);
            std::string result = all;
            return result.replace(all.find(start), start.size(),
                                  std::string(key.name) + ": " + text);
        }
    }
    return {};
}

void replace(std::string& text, std::string_view old, std::string_view with) {
    if (auto const at = text.find(old); at != std::string::npos) text.replace(at, old.size(), with);
}

/// A document with what an example needs that no condition of its key says.
std::string completed(std::string text, BookFile const& file, Shape const& shape) {
    auto const has = [&](std::string_view part) { return text.find(part) != std::string::npos; };
    if (file.name == "formulas" && !has("portion:")) text = "{portion: 24 g, " + text.substr(1);
    if (has("trays: 2") && !has("tray: ")) replace(text, "trays: 2", "trays: 2, per tray: 18");
    if (&shape == &shapes::free_line) replace(text, "lines: [", "lines: [{item: tart, count: 1}, ");
    if (&shape == &shapes::receipt_columns) text = "{receipt: yes, " + text.substr(1);
    if (&shape == &shapes::import_map && has("receipt: yes"))
        replace(text, "price: Net price", "packs: Quantity, paid: Amount");
    if (has("header: no"))
        replace(text, "{code: Art. No., price: Net price}", "{code: 1, price: 2}");
    return text;
}

/// What reading one document of a file finds, linked with nothing, beside what is said of a key that is asked
/// for and has no use at its place.
std::string errors_of(BookFile const& file, std::string const& text) {
    Desk desk;
    Reading reading{desk.found, *Currency::find("USD")};
    Node const& node = desk.node(text);
    if (file.name == "shop") (void)read_shop(node, reading);
    if (file.name == "ingredients") (void)read_ingredients(node, Ingredient::Kind::food, reading);
    if (file.name == "supplies") (void)read_ingredients(node, Ingredient::Kind::supply, reading);
    if (file.name == "prices") (void)read_price_list(node, reading);
    if (file.name == "purchases") (void)read_receipt(node, reading);
    if (file.name == "formulas") (void)read_formula(node, reading);
    if (file.name == "orders") (void)read_order(node, reading);
    if (file.name == "menus") (void)read_menu(node, reading);
    if (file.name == "stock") (void)read_stock(node, reading);
    if (file.name == "yields") (void)read_yield_test(node, reading);
    if (file.name == "runs") (void)read_run(node, reading);
    if (file.name == "scenarios") (void)read_scenario(node, reading);
    if (file.name == "words") (void)read_words(node, reading);
    if (file.name == "import") (void)read_import_map(node, reading);
    desk.found.take_back(0, [](Diagnostic const& each) {
        return each.code == "scales-by-what" || each.code == "given-as-target";
    });
    if (desk.found.errors() == 0) return {};
    return text + "\n" + desk.said();
}

} // namespace

TEST_CASE("every example that is declared can be typed, and its key is asked for by a reader") {
    std::size_t tried = 0;
    for (BookFile const& file : book_files)
        for (ShapeUse const& use : shape_uses(&file, &file + 1))
            for (KeyShape const& key : use.shape->keys) {
                std::string const inner = example_of(*use.shape, &key);
                std::string const text = document_with(file.value, *use.shape, inner);
                CHECK_MESSAGE(!text.empty(), use.shape->name);
                CHECK(errors_of(file, completed(text, file, *use.shape)) == "");
                ++tried;
            }
    CHECK(tried > 250);
}

TEST_CASE("each shape has a name of its own, and each file a place") {
    std::set<std::string_view> names;
    for (ShapeUse const& use : shape_uses()) {
        CHECK_MESSAGE(names.insert(use.shape->name).second, use.shape->name);
        CHECK_FALSE(use.places.empty());
    }
    CHECK(names.size() > 40);
}

TEST_CASE("a shape that stands in several places names them all, once each") {
    for (ShapeUse const& use : shape_uses())
        if (use.shape == &shapes::keeping) {
            REQUIRE(use.places.size() == 1);
            CHECK(use.places[0].file->place == "formulas/*.yaml");
            CHECK(use.places[0].path == "keep");
        }
}

namespace {

/// Whether all forms of one value are among those of another.
bool holds_all(Value const& value, Value const& others) {
    for (Form const& other : others.all()) {
        bool is_there = false;
        for (Form const& form : value.all())
            is_there = is_there || (form.kind == other.kind && form.says == other.says &&
                                    form.shape == other.shape && form.of == other.of);
        if (!is_there) return false;
    }
    return true;
}

} // namespace

TEST_CASE("what a list may hold may stand alone for a list of one") {
    // A mapping in place of the lines of a formula has the names of its lines as keys.
    std::set<std::string> const only_lists = {"lines of formula"};
    std::set<std::string> found;
    for (ShapeUse const& use : shape_uses())
        for (KeyShape const& key : use.shape->keys)
            for (Form const& form : key.value.all())
                if (form.kind == ValueKind::list && !holds_all(key.value, *form.of))
                    found.insert(std::string(key.name) + " of " + std::string(use.shape->name));
    CHECK(found == only_lists);
}
