/// A supplier's CSV on its way into the books, as a price list or a receipt: the map that says how to read it, what is
/// then to be written, and what that changes. Texts come in and go out; no file is touched.
#pragma once

#include <groat/books/import_map.hpp>
#include <groat/desk/open_books.hpp>
#include <groat/paper/sheet.hpp>

#include <optional>
#include <string>

namespace groat::desk {

/// A file that was read: its name as it was given, and all that stands in it.
struct NamedText {
    std::string name;
    std::string text;
};

/// What an import comes to.
struct Imported {
    std::string document; ///< what belongs into the books: a file of prices/ or of purchases/
    Sheet changes;        ///< what it changes, against the prices of the supplier so far
};

/// The map in a text, with its names looked up in the books.
/// Fails    (the reasons are among what was found in the books) where the text is not one YAML document that is
///          a map, or names what the books do not have
[[nodiscard]] std::optional<ImportMap> import_map_of(NamedText map, OpenBooks& books);

/// A CSV under such a map, which says since when its prices hold (`map.from`). What it changes is told against the
/// prices in force on `date`. A supplier who is like a known one, but not the same, is a warning.
/// Fails    (the reasons are among what was found) where the CSV cannot be read whole, and where a pack cannot be turned
///          into what its item is costed by: then nothing is to be written
/// Example  a list where butter went from 9.00 to 9.60 the kilogram  ->  a document with the new price; the sheet
///          says "Dearer", + 6.7 %
[[nodiscard]] std::optional<Imported> import_csv(ImportMap const& map, NamedText csv, Date date,
                                                 OpenBooks& books);

} // namespace groat::desk

#ifndef GROAT_COMPILED
#include <groat/desk/import.ipp>
#endif
