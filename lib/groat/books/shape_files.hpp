/// Every kind of file of the books, and every shape in it with the places where it stands.
#pragma once

#include <groat/books/shape_formulas.hpp>
#include <groat/books/shape_goods.hpp>
#include <groat/books/shape_import.hpp>
#include <groat/books/shape_orders.hpp>
#include <groat/books/shape_shop.hpp>

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace groat {

struct BookFile {
    std::string_view name;  ///< "formulas"
    std::string_view place; ///< "formulas/*.yaml"
    std::string_view meaning;
    Value value; ///< what one document of it is
};

inline constexpr BookFile book_files[] = {
    {"shop", "shop.yaml",
     "The business: wages, ovens, energy, overhead, fees, tax, and how it quotes.", shapes::a_shop},
    {"ingredients", "ingredients.yaml", "What is bought to eat, by name.",
     shapes::some_ingredients},
    {"supplies", "supplies.yaml", "What is bought and not eaten, by name.", shapes::some_supplies},
    {"prices", "prices/*.yaml", "A price list of a supplier.", shapes::a_price_list},
    {"purchases", "purchases/*.yaml", "A receipt: what was bought and paid.", shapes::a_receipt},
    {"formulas", "formulas/*.yaml", "What goes in, what is lost, what it takes, how it is sold.",
     shapes::a_formula},
    {"orders", "orders/*.yaml", "What a client asks for, and on what terms.", shapes::an_order},
    {"menus", "menus/*.yaml", "What is offered at set prices, and what was sold.", shapes::a_menu},
    {"stock", "stock.yaml", "What is on the shelf.", shapes::a_stock},
    {"yields", "yields.yaml", "A yield test.", shapes::a_yield_test},
    {"runs", "runs/*.yaml", "What was made: as it was weighed, counted and paid.", shapes::a_run},
    {"scenarios", "scenarios.yaml", "Changes of the books to try together.", shapes::a_scenario},
    {"words", "words.yaml", "The shop's own words for sheets that leave the house.",
     shapes::some_words},
    {"import", "import/*.yaml", "How a supplier writes a price list as CSV.",
     shapes::an_import_map},
};

/// Where a shape stands: a file, and the keys that lead to it, as "sold as > (one of the sale units) > price".
struct ShapePlace {
    BookFile const* file;
    std::string path;
};

struct ShapeUse {
    Shape const* shape;
    std::vector<ShapePlace> places;
};

/// Every shape of the files in [first, last), in the order in which they are met.
[[nodiscard]] std::vector<ShapeUse> shape_uses(BookFile const* first = std::begin(book_files),
                                               BookFile const* last = std::end(book_files));

// ---------------------------------------------------------------------------------------------------

namespace shape_files_detail {

/// Whether each key stands once, and what synonyms and conditions speak of is declared, all the way down.
constexpr bool is_sound(Value const& value);

constexpr bool is_sound(Shape const& shape) {
    for (std::size_t i = 0; i < shape.keys.size(); ++i) {
        KeyShape const& key = shape.keys[i];
        if (shape.find(key.name) != i || key.example.empty() || key.meaning.empty()) return false;
        for (Condition const& condition : key.conditions) {
            bool const names_a_key = condition.kind != Condition::Kind::none &&
                                     condition.kind != Condition::Kind::one_of;
            if (names_a_key && shape.find(condition.other) == Shape::none) return false;
        }
        if (!is_sound(key.value)) return false;
    }
    for (Synonym const& synonym : shape.synonyms) {
        bool const is_known = synonym.key.empty() || shape.find(synonym.key) != Shape::none;
        if (!is_known || shape.find(synonym.word) != Shape::none) return false;
        if (synonym.key.empty() && synonym.advice.empty()) return false;
    }
    return true;
}

constexpr bool is_sound(Value const& value) {
    for (Form const& form : value.all()) {
        if (form.shape != nullptr && !is_sound(*form.shape)) return false;
        if (form.of != nullptr && !is_sound(*form.of)) return false;
    }
    return value.count > 0;
}

static_assert(std::all_of(std::begin(book_files), std::end(book_files),
                          [](BookFile const& file) { return is_sound(file.value); }));

inline void walk(BookFile const& file, Value const& value, std::string const& path,
                 std::vector<ShapeUse>& uses) {
    auto const below = [&](std::string_view step) {
        return path.empty() ? std::string(step) : path + " > " + std::string(step);
    };
    for (Form const& form : value.all()) {
        if (form.kind == ValueKind::names)
            walk(file, *form.of, below("(one of the " + std::string(form.says) + ")"), uses);
        if (form.kind == ValueKind::list) walk(file, *form.of, path, uses);
        if (form.kind != ValueKind::mapping) continue;
        auto use = std::find_if(uses.begin(), uses.end(),
                                [&](ShapeUse const& each) { return each.shape == form.shape; });
        if (use == uses.end()) use = uses.insert(use, ShapeUse{form.shape, {}});
        bool const is_there =
            std::any_of(use->places.begin(), use->places.end(), [&](ShapePlace const& each) {
                return each.file == &file && each.path == path;
            });
        if (is_there) continue; // one of a list that one may stand for
        use->places.push_back({&file, path});
        for (KeyShape const& key : form.shape->keys) walk(file, key.value, below(key.name), uses);
    }
}

} // namespace shape_files_detail

inline std::vector<ShapeUse> shape_uses(BookFile const* first, BookFile const* last) {
    std::vector<ShapeUse> uses;
    for (; first != last; ++first) shape_files_detail::walk(*first, first->value, {}, uses);
    return uses;
}

} // namespace groat
