/// A sheet for programs: JSON in which every figure stands twice, rounded as on paper and exact as `n/d` in
/// lowest terms; a share is one of one, whatever paper prints as a percentage. lib/schema/sheet.schema.json says what stands on each. The only header that needs
/// nlohmann-json; link `groat::json`.
#pragma once

#include <groat/paper/sheet.hpp>

#include <nlohmann/json.hpp>

#include <string>

namespace groat {

/// An object with `schema`, `sheet`, `for`, `title`, `letterhead` and the sections under their keys in order:
/// facts as an object, a table as a list of row objects, remarks as a list of texts. Sections that say `of` what
/// they are stand together under their key as a list of objects, each with `of` and its `facts`, `rows` or
/// `lines`. A figure is `{"rounded": "31.50", "exact": "63/2", "unit": "USD"}`; what is not there is null.
/// Throws   std::logic_error where two things of a sheet would stand in one place
[[nodiscard]] std::string to_json(Sheet const& sheet);

namespace json_detail {

using Json = nlohmann::ordered_json;

/// A number of hundredths as one of ones: "40.0" is 0.400. What is no plain number stays.
std::string of_one(std::string const& hundredths);

} // namespace json_detail

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/paper/json.ipp>
#endif
