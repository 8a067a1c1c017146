/// What a formula comes out in, and how much of it goes into the oven at once: stated as a whole, by the
/// tray, or worked out from the size of tray and piece.
#pragma once

#include <groat/books/read_common.hpp>
#include <groat/model/formula.hpp>

#include <optional>
#include <string_view>

namespace groat::shapes {

inline constexpr std::string_view tray_layouts[] = {"square", "staggered"};

inline constexpr KeyShape oven_use_keys[] = {
    {"use", must, to<&OvenUse::oven>(a_name), "deck", "The oven, as shop.yaml calls it."},
    {"minutes", must, to<&OvenUse::minutes>(some_minutes), "11",
     "How many minutes a load stays in."},
    {"trays", may, a_count, "2", "How many trays a load has, in place of 'holds'."},
    {"holds",
     may,
     a_count_or_mass,
     "36",
     "What a load is: so many pieces, or a mass.",
     {unless("trays"), without("trays")}},
    {"per tray",
     may,
     a_count,
     "18",
     "How many pieces lie on a tray.",
     {with("trays"), without("tray")}},
    {"tray",
     may,
     written(ValueKind::measured, "the size of a tray"),
     "40 x 60 cm",
     "The size of a tray, in place of 'per tray'.",
     {with("trays"), with("spread")}},
    {"spread", may, a_distance, "7 cm", "The diameter of one finished piece.", {with("tray")}},
    {"gap", may, a_distance_or_none, "2 cm", "What stays free between two pieces.", {with("tray")}},
    {"layout", may, one_of(tray_layouts), "staggered", "How the pieces lie.", {with("tray")}},
};
inline constexpr Synonym oven_use_synonyms[] = {
    {"oven", "use"},
    {"name", "use"},
    {"load", "holds"},
    {"capacity", "holds"},
    {"time", "minutes", "write the minutes alone, as 'minutes: 11'"},
    {"temperature", {}, "nothing is calculated from it: write it into a note behind #"},
};
inline constexpr Shape oven_use{"oven of a formula", "this oven", oven_use_keys, oven_use_synonyms};

} // namespace groat::shapes

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
