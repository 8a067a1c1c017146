/// What a formula comes out in, and how much of it goes into the oven at once: stated as a whole, by the
/// tray, or worked out from the size of tray and piece.
#pragma once

#include <groat/books/read_common.hpp>
#include <groat/model/formula.hpp>

#include <optional>
#include <string_view>

namespace groat::read_formulas_detail {

/// How a formula is made, as far as its other fields depend on it.
struct Making {
    bool has_base = false;     ///< `percent of` is there
    bool may_be_pieces = true; ///< both are true while what it makes cannot be read
    bool may_be_mass = true;
    bool has_oven = false;

    [[nodiscard]] Countable countable() const { return {has_oven, may_be_pieces}; }
};

/// A number of pieces or a mass, whichever the formula comes out in.
[[nodiscard]] std::optional<Quantity> read_output(Node const* node, std::string_view what,
                                                  Making const& making, Reading const& reading);

/// `oven:` of a formula, with `holds`, or with `trays` and `per tray`, or with `trays`, `tray`, `spread`, `gap`
/// and `layout`. Whichever way, the load comes out as one quantity.
[[nodiscard]] OvenUse read_oven_use(Node const& node, Making const& making, Reading const& reading);

} // namespace groat::read_formulas_detail

#ifndef GROAT_COMPILED
#include <groat/books/read_oven.ipp>
#endif
