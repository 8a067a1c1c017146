#pragma once

#include <groat/books/shape_files.hpp>

#include <groat/base/linkage.hpp>

#include <algorithm>
#include <cstddef>

namespace groat {

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

GROAT_INLINE std::vector<ShapeUse> shape_uses(BookFile const* first, BookFile const* last) {
    std::vector<ShapeUse> uses;
    for (; first != last; ++first) shape_files_detail::walk(*first, first->value, {}, uses);
    return uses;
}

} // namespace groat
