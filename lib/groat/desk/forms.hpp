/// Sheets in the form that is asked for by its word: text, html, markdown, csv or json. Without a word it is text.
#pragma once

#include <groat/base/result.hpp>
#include <groat/desk/deliver.hpp>
#include <groat/desk/order_sheets.hpp>
#include <groat/paper/sheet.hpp>

#include <string>
#include <string_view>
#include <vector>

namespace groat::desk {

[[nodiscard]] std::string drawn(Sheet const& sheet, std::string_view form);

/// Several sheets one below the other.
/// Fails    in a form of which one document is one sheet: html, csv, json
[[nodiscard]] Result<std::string> drawn(std::vector<Sheet> const& sheets, std::string_view form);

/// The sheets of a folder as its files, each with the ending of the form.
/// Example  client/quote-2026-041 as markdown  ->  client/quote-2026-041.md
[[nodiscard]] std::vector<File> files_of(std::vector<SheetFile> const& sheets,
                                         std::string_view form);

} // namespace groat::desk

#ifndef GROAT_COMPILED
#include <groat/desk/forms.ipp>
#endif
