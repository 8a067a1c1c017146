#pragma once

#include <groat/books/shape_text.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>
#include <groat/books/shape_files.hpp>

namespace groat {

namespace shape_text_detail {

inline std::string words_listed(std::span<std::string_view const> words) {
    std::string text = words.size() == 1 ? "the word " : "one of ";
    for (std::string_view const word : words) {
        if (word.data() != words.front().data()) text += ", ";
        text += word;
    }
    return text;
}

/// `name_shape` says what to write for another mapping.
template <class NameShape> std::string value(Value const& its_value, NameShape name_shape) {
    std::string text;
    for (Form const& form : its_value.all()) {
        if (!text.empty()) text += ", or ";
        switch (form.kind) {
        case ValueKind::word: text += words_listed(form.words); break;
        case ValueKind::list: {
            std::string const each = value(*form.of, name_shape);
            text += text.ends_with(each + ", or ") ? "a list of them" : "a list: each " + each;
            break;
        }
        case ValueKind::names:
            text += "a line for each of the " + std::string(form.says) + ": " +
                    value(*form.of, name_shape);
            break;
        case ValueKind::mapping: text += "a mapping (" + name_shape(*form.shape) + ")"; break;
        default: text += form.says;
        }
    }
    return text;
}

inline std::string places(ShapeUse const& use) {
    std::string text;
    for (ShapePlace const& place : use.places) {
        if (!text.empty()) text += "; ";
        text += place.file->place;
        if (!place.path.empty()) text += ", " + place.path;
    }
    return text;
}

/// In a cell of a table.
inline std::string cell(std::string_view text) {
    std::string result;
    for (char const c : text) result += c == '|' ? std::string("\\|") : std::string(1, c);
    return result;
}

inline std::string anchor(Shape const& shape) {
    std::string name(shape.name);
    std::replace(name.begin(), name.end(), ' ', '-');
    name.erase(std::remove(name.begin(), name.end(), ','), name.end());
    return "[" + std::string(shape.name) + "](#" + name + ")";
}

inline void add_key(KeyShape const& key, ShapeUse const& use, std::string& text) {
    text += std::string(key.name) + ", in: " + std::string(use.shape->name) + "\n";
    text += "  " + std::string(key.meaning) + "\n";
    text += "  example   " + std::string(key.name) + ": " + std::string(key.example) + "\n";
    text += "  value     " + value_in_words(key.value) + "\n";
    text += "  need      " + need_in_words(key) + "\n";
    for (ShapePlace const& place : use.places) {
        text += &place == use.places.data() ? "  place     " : "            ";
        text += place.file->place;
        if (!place.path.empty()) text += ", " + place.path;
        text += '\n';
    }
}

inline void add_synonym(Synonym const& synonym, ShapeUse const& use, std::string& text) {
    text += std::string(synonym.word) + ", in: " + std::string(use.shape->name) + "\n  ";
    if (!synonym.key.empty()) text += "here it is called '" + std::string(synonym.key) + "'";
    if (!synonym.key.empty() && !synonym.advice.empty()) text += "; ";
    text += std::string(synonym.advice) + "\n";
}

/// Text in lines of 80 columns.
inline std::string paragraph(std::string_view text) {
    std::string lines;
    for (std::string const& line : wrapped(text, 80)) lines += line + "\n";
    return lines;
}

} // namespace shape_text_detail

GROAT_INLINE std::string value_in_words(Value const& value) {
    return shape_text_detail::value(value,
                                    [](Shape const& shape) { return std::string(shape.name); });
}

GROAT_INLINE std::string need_in_words(KeyShape const& key) {
    std::string must = key.need == KeyNeed::must ? "must stand" : "may stand";
    std::string more;
    for (Condition const& condition : key.conditions) {
        std::string const other = "'" + std::string(condition.other) + "'";
        switch (condition.kind) {
        case Condition::Kind::none: break;
        case Condition::Kind::with: more += "; only with " + other; break;
        case Condition::Kind::without: more += "; not with " + other; break;
        case Condition::Kind::unless: must = "must stand unless " + other + " does"; break;
        case Condition::Kind::one_of:
            more += "; only one of the " + std::string(condition.other);
            break;
        }
    }
    return must + more;
}

GROAT_INLINE std::optional<std::string> help_on_key(std::string_view key) {
    std::string text;
    for (ShapeUse const& use : shape_uses()) {
        std::size_t const index = use.shape->find(key);
        Synonym const* const synonym = use.shape->find_synonym(key);
        if (index == Shape::none && synonym == nullptr) continue;
        if (!text.empty()) text += '\n';
        if (synonym != nullptr)
            shape_text_detail::add_synonym(*synonym, use, text);
        else
            shape_text_detail::add_key(use.shape->keys[index], use, text);
    }
    if (text.empty()) return std::nullopt;
    return text;
}

GROAT_INLINE std::vector<std::string> known_keys() {
    std::vector<std::string> all;
    for (ShapeUse const& use : shape_uses()) {
        for (KeyShape const& key : use.shape->keys) all.emplace_back(key.name);
        for (Synonym const& synonym : use.shape->synonyms) all.emplace_back(synonym.word);
    }
    std::sort(all.begin(), all.end());
    all.erase(std::unique(all.begin(), all.end()), all.end());
    return all;
}

GROAT_INLINE std::string manual_of_books() {
    std::string text =
        "# The keys of the books\n\n"
        "Which keys may stand in each file of the books, and with what values?\n\n"
        "`groat help KEY` says the same of one key. Where a table says \"a mapping\",\n"
        "the table of that name has its keys.\n";
    std::vector<ShapeUse> const uses = shape_uses();
    for (BookFile const& file : book_files) {
        text +=
            "\n## " + std::string(file.place) + "\n\n" + shape_text_detail::paragraph(file.meaning);
        if (file.value.forms[0].kind == ValueKind::names)
            text +=
                "\n" + shape_text_detail::paragraph(
                           "It has " +
                           shape_text_detail::value(file.value, shape_text_detail::anchor) + ".");
        for (ShapeUse const& use : uses) {
            if (use.places.front().file != &file) continue;
            text += "\n### " + std::string(use.shape->name) + "\n\n" +
                    shape_text_detail::paragraph("Stands in: " + shape_text_detail::places(use)) +
                    "\n";
            text += "| key | value | need | example | meaning |\n|---|---|---|---|---|\n";
            for (KeyShape const& key : use.shape->keys)
                text += "| `" + std::string(key.name) + "` | " +
                        shape_text_detail::cell(
                            shape_text_detail::value(key.value, shape_text_detail::anchor)) +
                        " | " + need_in_words(key) + " | `" + shape_text_detail::cell(key.example) +
                        "` | " + shape_text_detail::cell(key.meaning) + " |\n";
            std::string words;
            for (Synonym const& synonym : use.shape->synonyms) {
                if (synonym.key.empty()) continue;
                words += words.empty() ? "Other words: " : ", ";
                words +=
                    "`" + std::string(synonym.word) + "` is `" + std::string(synonym.key) + "`";
            }
            if (!words.empty()) text += "\n" + shape_text_detail::paragraph(words + ".");
        }
    }
    return text;
}

} // namespace groat
