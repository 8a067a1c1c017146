#pragma once

#include <groat/paper/sheet_schema.hpp>

#include <groat/base/json_text.hpp>
#include <groat/base/linkage.hpp>

#include <string_view>
#include <vector>

namespace groat {

namespace sheet_schema_detail {

using json_text::enumeration;
using json_text::in_quotes;
using json_text::joined;
using json_text::list_of;

/// A kind of member, how its definition is called, and what stands in it.
struct KindShape {
    MemberValue::Kind kind;
    std::string_view name;
    std::string_view definition;
};
inline constexpr KindShape kind_shapes[] = {
    {MemberValue::Kind::words, "words", R"("type": "string")"},
    {MemberValue::Kind::day, "day",
     R"("description": "A day, as 2026-11-25.", "type": "string", "format": "date", "pattern": "^[0-9]{4}-[0-9]{2}-[0-9]{2}$")"},
    {MemberValue::Kind::currency, "currency",
     R"("description": "The currency of the shop: USD.", "type": "string", "pattern": "^[A-Z]{3}$")"},
    {MemberValue::Kind::money, "money",
     R"("description": "An amount of money; its unit is the currency.", "$ref": "#/$defs/figure", "properties": {"unit": {"pattern": "^[A-Z]{3}$"}})"},
    {MemberValue::Kind::percent, "percent",
     R"("description": "A share of one, not of a hundred: on paper 40.0 %, here 0.400 and exactly 2/5.", "$ref": "#/$defs/figure", "properties": {"unit": {"const": "share"}})"},
    {MemberValue::Kind::count, "count",
     R"("description": "A number of pieces, units, lines or whatever is counted.", "$ref": "#/$defs/figure", "properties": {"unit": {"const": "each"}})"},
    {MemberValue::Kind::grams, "grams",
     R"("description": "A mass, exactly in grams.", "$ref": "#/$defs/figure", "properties": {"unit": {"const": "g"}})"},
    {MemberValue::Kind::minutes, "minutes",
     R"("description": "A time in minutes.", "$ref": "#/$defs/figure", "properties": {"unit": {"const": "min"}})"},
    {MemberValue::Kind::hours, "hours",
     R"("description": "A time in hours.", "$ref": "#/$defs/figure", "properties": {"unit": {"const": "h"}})"},
    {MemberValue::Kind::kilowatt_hours, "kilowatt_hours",
     R"("description": "Energy.", "$ref": "#/$defs/figure", "properties": {"unit": {"const": "kWh"}})"},
    {MemberValue::Kind::points, "points",
     R"("description": "A difference of percentages in hundredths: 1.5 is that of 40.0 % and 38.5 %.", "$ref": "#/$defs/figure", "properties": {"unit": {"const": "points"}})"},
    {MemberValue::Kind::amount, "amount",
     R"("description": "So many pieces, or so much by mass or by volume.", "$ref": "#/$defs/figure", "properties": {"unit": {"enum": ["each", "g", "mL"]}})"},
    {MemberValue::Kind::mass, "mass",
     R"("description": "A mass in the unit that its column is in.", "$ref": "#/$defs/figure", "properties": {"unit": {"enum": ["kg", "g"]}})"},
    {MemberValue::Kind::names, "names", R"("type": "array", "items": {"type": "string"})"},
    {MemberValue::Kind::number, "number",
     R"("description": "A number with no unit.", "$ref": "#/$defs/figure", "properties": {"unit": {"const": ""}})"}};

inline constexpr std::string_view what_a_figure_is =
    R"(    "exact": {
      "description": "A number as n or n/d in lowest terms, d above 1: 63/2. It is never rounded.",
      "type": "string",
      "pattern": "^-?[0-9]+(/[1-9][0-9]*)?$"
    },
    "figure": {
      "description": "A number twice: as it is shown on paper, and exactly.",
      "type": "object",
      "required": ["rounded", "exact", "unit"],
      "properties": {
        "rounded": {
          "description": "as on paper: 31.50. Some are words around a number, such as 2.5 kg",
          "type": "string",
          "minLength": 1
        },
        "exact": {"$ref": "#/$defs/exact"},
        "unit": {"description": "of the exact number", "type": "string"}
      },
      "additionalProperties": false
    },
    "lines": {
      "description": "Sentences, in order.",
      "type": "array",
      "items": {"type": "string"}
    })";

inline std::string reference(std::string_view name) {
    return "\"$ref\": \"#/$defs/" + std::string(name) + "\"";
}

/// What a member may be, without braces around it.
inline std::string value_of(MemberValue const& value) {
    std::vector<std::string> forms;
    for (KindShape const& each : kind_shapes) {
        if (!value.may_be(each.kind)) continue;
        bool const is_one_of = each.kind == MemberValue::Kind::words && !value.only.empty();
        forms.push_back(is_one_of ? enumeration(value.only) : "{" + reference(each.name) + "}");
    }
    if (value.may_be(MemberValue::Kind::figure)) forms.push_back("{" + reference("figure") + "}");
    if (value.may_be(MemberValue::Kind::none)) forms.push_back(R"({"type": "null"})");
    if (forms.size() > 1) return "\"anyOf\": " + list_of(forms);
    return forms.front().substr(1, forms.front().size() - 2);
}

inline std::string described(std::string_view meaning, std::string const& rest) {
    return "{\"description\": " + in_quotes(meaning) + ", " + rest + "}";
}

/// The key of a row, without braces around it.
inline std::string row_key(RowKeyShape const& key) {
    constexpr std::string_view number = "[1-9][0-9]*";
    if (!key.is_number && key.words.empty())
        return "\"description\": " + in_quotes(key.meaning) + ", " + reference("words");
    if (!key.is_number) {
        std::string const words = enumeration(key.words);
        return words.substr(1, words.size() - 2);
    }
    if (key.words.empty())
        return "\"type\": \"string\", \"pattern\": \"^" + std::string(number) + "$\"";
    std::string pattern(number);
    for (std::string_view const word : key.words) pattern += "|" + std::string(word);
    return "\"type\": \"string\", \"pattern\": \"^(" + pattern + ")$\"";
}

/// An object of members, without braces around it; `indent` stands before each of its lines.
inline std::string object_of(SectionShape const& section, std::string const& indent) {
    std::vector<std::string> required;
    std::vector<std::string> properties;
    auto const put = [&](std::string_view key, std::string const& value, Presence presence) {
        properties.push_back(indent + "    " + in_quotes(key) + ": " + value);
        if (presence == Presence::always) required.push_back(in_quotes(key));
    };
    if (section.kind == SectionShape::Kind::table) {
        put("row", enumeration(section.rows.kinds), Presence::always);
        if (RowKeyShape const& key = section.rows.key; key.is_there)
            put("key", "{" + row_key(key) + "}", key.presence);
    }
    for (MemberShape const& member : section.members)
        put(member.key, described(member.meaning, value_of(member.value)), member.presence);
    std::string const needed =
        required.empty() ? "" : indent + "  \"required\": " + list_of(required) + ",\n";
    return "\"type\": \"object\",\n" + needed + indent + "  \"additionalProperties\": false,\n" +
           indent + "  \"properties\": {\n" + joined(properties, ",\n") + "\n" + indent + "  }";
}

/// What stands in a section, without braces around it.
inline std::string contents_of(SectionShape const& section, std::string const& indent) {
    switch (section.kind) {
    case SectionShape::Kind::facts: return object_of(section, indent);
    case SectionShape::Kind::table:
        return "\"type\": \"array\",\n" + indent + "  \"items\": {\n" + indent + "    " +
               object_of(section, indent + "  ") + "\n" + indent + "  }";
    case SectionShape::Kind::remarks: return reference("lines");
    }
    return {};
}

inline constexpr std::string_view word_for(SectionShape::Kind kind) {
    switch (kind) {
    case SectionShape::Kind::facts: return "facts";
    case SectionShape::Kind::table: return "rows";
    case SectionShape::Kind::remarks: return "lines";
    }
    return {};
}

inline std::string section_text(SectionShape const& section) {
    std::string const indent(6, ' ');
    std::string const entries = section.has_entries ? "\"minItems\": 1, " : "";
    std::string text = "        " + in_quotes(section.key) + ": {\n" + indent +
                       "    \"description\": " + in_quotes(section.meaning) + ",\n" + indent +
                       "    ";
    if (section.of.empty())
        return text + entries + contents_of(section, indent + "  ") + "\n        }";
    std::string const word(word_for(section.kind));
    return text + "\"type\": \"array\", \"minItems\": 1,\n" + indent + "    \"items\": {\n" +
           indent + "      \"type\": \"object\", \"required\": [\"of\", " + in_quotes(word) +
           "], \"additionalProperties\": false,\n" + indent + "      \"properties\": {\n" + indent +
           "        \"of\": " + described(section.of, reference("words")) + ",\n" + indent +
           "        " + in_quotes(word) + ": {\n" + indent + "          " +
           contents_of(section, indent + "        ") + "\n" + indent + "        }\n" + indent +
           "      }\n" + indent + "    }\n        }";
}

inline std::string sheet_text(SheetShape const& sheet) {
    std::vector<std::string> required = {"\"schema\"", "\"sheet\"", "\"for\"", "\"title\"",
                                         "\"letterhead\""};
    std::vector<std::string> properties = {
        "        \"schema\": true", "        \"sheet\": {\"const\": " + in_quotes(sheet.kind) + "}",
        "        \"for\": {\"const\": " + in_quotes(sheet.audience) + "}",
        "        \"title\": true", "        \"letterhead\": true"};
    for (SheetShape::Section const& each : sheet.sections) {
        properties.push_back(section_text(*each.shape));
        if (each.presence == Presence::always) required.push_back(in_quotes(each.shape->key));
    }
    return "    " + in_quotes(sheet.name) + ": {\n      \"title\": " + in_quotes(sheet.title) +
           ",\n      \"description\": " + in_quotes(sheet.meaning) +
           ",\n      \"type\": \"object\",\n      \"required\": " + list_of(required) +
           ",\n      \"additionalProperties\": false,\n      \"properties\": {\n" +
           joined(properties, ",\n") + "\n      }\n    }";
}

/// Which definition holds for which kind and audience.
inline std::string choice_text(SheetShape const& sheet) {
    return "    {\n      \"if\": {\"required\": [\"sheet\", \"for\"], \"properties\": {\"sheet\": {\"const\": " +
           in_quotes(sheet.kind) + "}, \"for\": {\"const\": " + in_quotes(sheet.audience) +
           "}}},\n      \"then\": {" + reference(sheet.name) + "}\n    }";
}

/// One of the kinds and audiences that there are together.
inline std::string pair_text(SheetShape const& sheet) {
    return "    {\"properties\": {\"sheet\": {\"const\": " + in_quotes(sheet.kind) +
           "}, \"for\": {\"const\": " + in_quotes(sheet.audience) + "}}}";
}

} // namespace sheet_schema_detail

GROAT_INLINE std::string schema_of(std::span<SheetShape const* const> sheets) {
    namespace text = sheet_schema_detail;
    std::vector<std::string> pairs;
    std::vector<std::string> choices;
    std::vector<std::string> definitions = {std::string(text::what_a_figure_is)};
    for (text::KindShape const& kind : text::kind_shapes)
        definitions.push_back("    " + json_text::in_quotes(kind.name) + ": {" +
                              std::string(kind.definition) + "}");
    for (SheetShape const* sheet : sheets) {
        pairs.push_back(text::pair_text(*sheet));
        choices.push_back(text::choice_text(*sheet));
        definitions.push_back(text::sheet_text(*sheet));
    }
    return R"({
  "$schema": "https://json-schema.org/draft/2020-12/schema",
  "$id": )" +
           json_text::in_quotes(sheet_schema) + R"(,
  "title": "A sheet of groat",
  "description": "What `groat ... --as json` prints. A section of facts is an object, a table is a list of rows, remarks are a list of sentences. Where a sheet has several sections of a kind, they are a list of objects that say what they are `of`, each with its `facts`, `rows` or `lines`. Keys are fixed; names from the books stand in values. What is not there is null, or its section is left out. A row says what it is: a line, a subtotal or a total.",
  "type": "object",
  "required": ["schema", "sheet", "for", "title", "letterhead"],
  "properties": {
    "schema": {"description": "this schema", "const": )" +
           json_text::in_quotes(sheet_schema) + R"(},
    "sheet": {"description": "the kind of sheet", "type": "string"},
    "for": {"description": "who is to read it", "type": "string"},
    "title": {"description": "the title on paper", "type": "string"},
    "letterhead": {"description": "The shop's name, address and contact.", "type": "array", "items": {"type": "string"}}
  },
  "anyOf": [
)" + json_text::joined(pairs, ",\n") +
           "\n  ],\n  \"allOf\": [\n" + json_text::joined(choices, ",\n") +
           "\n  ],\n  \"$defs\": {\n" + json_text::joined(definitions, ",\n") + "\n  }\n}\n";
}

} // namespace groat
