#pragma once

#include <groat/books/shape_schema.hpp>

#include <groat/base/json_text.hpp>
#include <groat/base/linkage.hpp>

#include <string_view>
#include <vector>

namespace groat {

namespace shape_schema_detail {

using json_text::enumeration;
using json_text::in_quotes;
using json_text::joined;
using json_text::list_of;

inline std::string reference(Shape const& shape) {
    std::string name(shape.name);
    std::replace(name.begin(), name.end(), ' ', '-');
    name.erase(std::remove(name.begin(), name.end(), ','), name.end());
    return name;
}

/// The members of what a value may be, without braces around them.
inline std::string members(Value const& value);

inline std::string of_form(Form const& form) {
    switch (form.kind) {
    case ValueKind::text:
    case ValueKind::name: return R"({"type": ["string", "number", "boolean"]})";
    case ValueKind::number: return R"({"type": ["string", "number"]})";
    case ValueKind::measured: return R"({"type": "string"})";
    case ValueKind::percentage: return R"({"type": "string", "pattern": "%\\s*$"})";
    case ValueKind::date:
        return R"({"type": "string", "pattern": "^\\s*[0-9]{4}-[0-9]{2}-[0-9]{2}\\s*$"})";
    case ValueKind::yes_no: return R"({"enum": ["yes", "no", true, false]})";
    case ValueKind::word: return enumeration(form.words);
    case ValueKind::nothing: return R"({"type": "null"})";
    case ValueKind::list: return R"({"type": "array", "items": {)" + members(*form.of) + "}}";
    case ValueKind::names: {
        std::string const only =
            form.words.empty() ? "" : "\"propertyNames\": " + enumeration(form.words) + ", ";
        return R"({"type": "object", )" + only + R"("additionalProperties": {)" +
               members(*form.of) + "}}";
    }
    case ValueKind::mapping: return "{\"$ref\": \"#/$defs/" + reference(*form.shape) + "\"}";
    }
    return "{}";
}

inline std::string members(Value const& value) {
    std::vector<std::string> forms;
    for (Form const& form : value.all()) {
        std::string text = of_form(form);
        if (std::find(forms.begin(), forms.end(), text) == forms.end())
            forms.push_back(std::move(text));
    }
    if (forms.size() > 1) return "\"anyOf\": " + list_of(forms);
    return forms.front().substr(1, forms.front().size() - 2);
}

inline std::string not_both(std::string_view one, std::string_view other) {
    return "{\"not\": {\"required\": [" + in_quotes(one) + ", " + in_quotes(other) + "]}}";
}

/// What the conditions of a shape's keys say.
inline std::vector<std::string> conditions_of(Shape const& shape) {
    std::vector<std::string> all;
    for (KeyShape const& key : shape.keys)
        for (Condition const& condition : key.conditions) {
            if (condition.kind == Condition::Kind::with)
                all.push_back("{\"dependentRequired\": {" + in_quotes(key.name) + ": [" +
                              in_quotes(condition.other) + "]}}");
            if (condition.kind == Condition::Kind::without)
                all.push_back(not_both(key.name, condition.other));
            if (condition.kind == Condition::Kind::unless)
                all.push_back("{\"anyOf\": [{\"required\": [" + in_quotes(key.name) +
                              "]}, {\"required\": [" + in_quotes(condition.other) + "]}]}");
            if (condition.kind != Condition::Kind::one_of) continue;
            for (KeyShape const* other = &key + 1; other != shape.keys.data() + shape.keys.size();
                 ++other)
                for (Condition const& same : other->conditions)
                    if (same.kind == Condition::Kind::one_of && same.other == condition.other)
                        all.push_back(not_both(key.name, other->name));
        }
    return all;
}

inline std::string definition(Shape const& shape) {
    std::vector<std::string> properties;
    std::vector<std::string> required;
    for (KeyShape const& key : shape.keys) {
        properties.push_back("        " + in_quotes(key.name) + ": {\"description\": " +
                             in_quotes(std::string(key.meaning) + " Example: " +
                                       std::string(key.name) + ": " + std::string(key.example)) +
                             ", " + members(key.value) + "}");
        if (key.need == KeyNeed::must) required.push_back(in_quotes(key.name));
    }
    std::string text = "    " + in_quotes(reference(shape)) + ": {\n      \"type\": \"object\",\n";
    if (!required.empty()) text += "      \"required\": " + list_of(required) + ",\n";
    if (auto const conditions = conditions_of(shape); !conditions.empty())
        text += "      \"allOf\": [\n        " + joined(conditions, ",\n        ") + "\n      ],\n";
    return text + "      \"additionalProperties\": false,\n      \"properties\": {\n" +
           joined(properties, ",\n") + "\n      }\n    }";
}

} // namespace shape_schema_detail

GROAT_INLINE std::string schema_of(BookFile const& file) {
    std::vector<std::string> definitions;
    for (ShapeUse const& use : shape_uses(&file, &file + 1))
        definitions.push_back(shape_schema_detail::definition(*use.shape));
    return "{\n  \"$schema\": \"https://json-schema.org/draft/2020-12/schema\",\n  \"$id\": " +
           json_text::in_quotes("urn:groat:books:" + std::string(file.name)) +
           ",\n  \"title\": " + json_text::in_quotes(file.place) +
           ",\n  \"description\": " + json_text::in_quotes(file.meaning) + ",\n  " +
           shape_schema_detail::members(file.value) + ",\n  \"$defs\": {\n" +
           json_text::joined(definitions, ",\n") + "\n  }\n}\n";
}

} // namespace groat
