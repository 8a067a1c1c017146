/// Reads a folder of books from disk. Nothing else in the library touches a file.
///
///     shop.yaml                                 one document
///     ingredients.yaml    ingredients/*.yaml    names and facts
///     supplies.yaml       supplies/*.yaml
///     prices/*.yaml  purchases/*.yaml  formulas/*.yaml  orders/*.yaml  runs/*.yaml  menus/*.yaml
///     stock.yaml                                one document
///     scenarios.yaml
///     yields.yaml         yields/*.yaml         yield tests
///     words.yaml                                one document, read first
///     logo.svg                                  what shop.yaml names under `sheets: {logo: ...}`
///
/// The files of a folder are read in the order of their names. A file that looks as if it belonged to the
/// books but is not read is named in a warning: nothing is left out in silence.
#pragma once

#include <groat/model/book.hpp>

#include <filesystem>

namespace groat {

struct Loaded {
    Book book = {};
    Diagnostics diagnostics = {};
    bool unreadable = false; ///< something could not be read from disk, whatever it says
};

/// Reads and links the books of `folder`. All that is wrong is among the diagnostics, with names of files
/// relative to the folder; their texts are kept in `sources`. What is costed is a `LinkedBook`: of a book without
/// errors `link(std::move(loaded.book), loaded.diagnostics)`, of one with errors `sound_part(std::move(loaded.book))`.
[[nodiscard]] Loaded load(std::filesystem::path const& folder, Sources& sources);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/load.ipp>
#endif
