#pragma once

#include <groat/books/read_oven.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>
#include <groat/measure/tray.hpp>

namespace groat::read_formulas_detail {

GROAT_INLINE std::optional<Quantity> read_output(Node const* node, std::string_view what,
                                                 Making const& making, Reading const& reading) {
    std::optional<Quantity> output;
    if (!making.may_be_mass)
        output = read_quantity(
            node, {what, shapes::pieces_only, "12, since this formula makes pieces"}, reading);
    else if (!making.may_be_pieces)
        output = read_quantity(
            node, {what, shapes::mass, "250 g, since this formula is made by mass"}, reading);
    else
        output = read_quantity(node, {what, shapes::count_or_mass, "12 or 250 g"}, reading);
    if (output && !is_whole_count(*node, *output, what, reading)) return std::nullopt;
    return output;
}

/// The round pieces on a tray: as said under `per tray`, else from the sizes of tray and piece.
inline std::optional<Integer> read_per_tray(Fields<shapes::oven_use>& fields,
                                            Reading const& reading) {
    Node const* const stated = fields.at("per tray");
    Node const* const tray = fields.at("tray");
    Node const* const spread = fields.at("spread");
    Node const* const gap = fields.at("gap");
    auto const layout = fields.read<TrayLayout>("layout", reading).value_or(TrayLayout::square);
    if (stated == nullptr && tray == nullptr) {
        reading.found.error(fields.place_of("trays"), "missing-key",
                            "how many pieces lie on a tray is not said",
                            "add 'per tray: 20', or 'tray: 40 x 60 cm' and 'spread: 7 cm'");
        return std::nullopt;
    }
    if (stated != nullptr) return fields.read<Integer>("per tray", reading);
    auto const size = read_scalar(tray, "the size of a tray", reading, [&](std::string_view text) {
        return parse_tray_size(text, reading.measures);
    });
    auto const wide = fields.read<Number>("spread", reading);
    auto const apart = fields.read<Number>("gap", reading);
    if (!size || !wide || (gap != nullptr && !apart)) return std::nullopt;
    Integer pieces =
        pieces_on_tray({size->width, size->length, *wide, apart.value_or(Number()), layout});
    if (pieces.is_zero()) {
        reading.found.error(spread->where, "tray-too-small",
                            fmt::format("a piece of '{}' does not fit a tray of '{}'",
                                        shortened(spread->text, 24), shortened(tray->text, 24)),
                            "the spread is the diameter of one finished piece");
        return std::nullopt;
    }
    return pieces;
}

/// What a load holds: stated as a whole, or by the tray.
inline void read_load(Fields<shapes::oven_use>& fields, Making const& making, OvenUse& use,
                      Reading const& reading) {
    Node const* const trays = fields.at("trays");
    if (trays == nullptr) {
        assign(use.holds, read_output(fields.needed("holds", making.may_be_pieces ? "36" : "5 kg"),
                                      "what the oven holds", making, reading));
        return;
    }
    (void)fields.at("holds"); // beside trays it is an error
    if (!making.may_be_pieces)
        reading.found.error(trays->where, "made-by-mass",
                            "there are no pieces for trays: this formula is made by mass",
                            "give it a portion, as 'portion: 24 g', or say 'holds: 5 kg'");
    use.trays = fields.read<Integer>("trays", reading);
    auto const per_tray = read_per_tray(fields, reading);
    if (use.trays && per_tray)
        use.holds = {Number(*use.trays * *per_tray), Dimension::count, nullptr};
}

GROAT_INLINE OvenUse read_oven_use(Node const& node, Making const& making, Reading const& reading) {
    Fields<shapes::oven_use> fields(node, reading.found);
    OvenUse use;
    fields.read_into(use, reading);
    read_load(fields, making, use, reading);
    fields.close();
    return use;
}

} // namespace groat::read_formulas_detail
