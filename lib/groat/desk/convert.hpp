/// A conversion as it is asked for in words: an amount, what it is of where that matters, and the unit wanted. A
/// temperature takes no books, an amount of nothing in particular none but the shop's meaning of a cup.
#pragma once

#include <groat/model/book.hpp>
#include <groat/sheets/convert_sheet.hpp>

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace groat::desk {

/// Two or three words: AMOUNT [THING] UNIT. What is returned tells of these words, which must live as long.
/// Fails    on fewer and on more
/// Example  {"340 g", "plain flour", "cup"}  ->  340 g of plain flour, in cups
[[nodiscard]] Result<Asked> asked_in(std::vector<std::string> const& words);

/// Whether the amount is a temperature, or the unit a scale of one.
[[nodiscard]] bool is_about_temperature(Asked const& asked);

/// A temperature in another scale, as a sheet.
/// Fails    where it is one of a thing, the amount is no temperature, or the unit no scale
/// Example  350 F in C  ->  176.667 C
[[nodiscard]] Result<Sheet> temperature_sheet(Asked const& asked);

/// An ingredient, a supply or a formula as a thing to convert; the empty name is nothing in particular.
/// Fails    where the books have nothing of that name
[[nodiscard]] Result<Convertible> thing_called(Book const& book, std::string const& name);

/// The measures that bare cups and spoons are of, by their name.
/// Example  "metric"  ->  a cup of 250 mL
[[nodiscard]] Measures measures_called(std::string_view name);

/// What takes no books: a temperature, and an amount of nothing in particular where it is said whose `measures` count,
/// or no shop is there to say it. Nothing for all else.
[[nodiscard]] std::optional<Result<Sheet>> sheet_without_books(Asked const& asked,
                                                               std::string_view measures,
                                                               bool has_shop);

/// An amount of a thing in the unit asked for, as a sheet, with the places in `sources` of what it went by.
/// Fails    where the amount or the unit is none, or the books do not say what it takes
/// Example  2 L in mL  ->  2000 mL
[[nodiscard]] Result<Sheet> amount_sheet(Asked const& asked, Measures measures,
                                         Convertible const& thing, Sources const& sources);

} // namespace groat::desk

#ifndef GROAT_COMPILED
#include <groat/desk/convert.ipp>
#endif
