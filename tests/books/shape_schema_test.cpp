#include <groat/books/shape_schema.hpp>

#include <doctest/doctest.h>

#include <string>

using namespace groat;

namespace {

std::string schema_named(std::string_view name) {
    for (BookFile const& file : book_files)
        if (file.name == name) return schema_of(file);
    return {};
}

bool says(std::string const& schema, std::string_view part) {
    return schema.find(part) != std::string::npos;
}

} // namespace

TEST_CASE("a schema has its keys, what must stand, and nothing beside them") {
    CHECK(schema_named("scenarios") == R"({
  "$schema": "https://json-schema.org/draft/2020-12/schema",
  "$id": "urn:groat:books:scenarios",
  "title": "scenarios.yaml",
  "description": "Changes of the books to try together.",
  "$ref": "#/$defs/scenario",
  "$defs": {
    "scenario": {
      "type": "object",
      "required": ["scenario", "changes"],
      "additionalProperties": false,
      "properties": {
        "scenario": {"description": "What it is called. Example: scenario: a dear winter", "type": ["string", "number", "boolean"]},
        "changes": {"description": "The changes that are tried together, as 'groat whatif' takes them. Example: changes: [butter +20 %]", "anyOf": [{"type": ["string", "number", "boolean"]}, {"type": "array", "items": {"type": ["string", "number", "boolean"]}}]}
      }
    }
  }
}
)");
}

TEST_CASE("conditions between keys are part of a schema") {
    std::string const formulas = schema_named("formulas");
    CHECK(says(formulas, R"({"anyOf": [{"required": ["by"]}, {"required": ["unattended"]}]})"));
    CHECK(says(formulas, R"({"dependentRequired": {"spread": ["tray"]}})"));
    CHECK(says(formulas, R"({"not": {"required": ["holds", "trays"]}})"));
    CHECK(says(formulas, R"({"not": {"required": ["margin", "given"]}})"));
}

TEST_CASE("names are free, but for words that are known") {
    CHECK(says(schema_named("supplies"), R"("type": "object", "additionalProperties": {"anyOf")"));
    CHECK(says(schema_named("words"), R"("propertyNames": {"enum": ["quote", "order")"));
}
