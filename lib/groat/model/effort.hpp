/// What making takes besides ingredients: labour, and things that are used up on the way.
#pragma once

#include <groat/base/number.hpp>
#include <groat/model/reference.hpp>

#include <string>
#include <string_view>

namespace groat {

/// What an effort is multiplied by.
///
/// order      once, where the formula is needed at all
/// batch      batches begun, after the batch policy; a part of a batch counts as a whole one unless it scales
/// mix        whole turns of the mixer: batches over the largest mix, rounded up
/// load       oven loads, rounded up
/// piece      pieces started, those that will break included
/// sale_unit  boxes, bags, jars sold
enum class Per { order, batch, mix, load, piece, sale_unit };

inline constexpr std::string_view per_words[] = {"order", "batch", "mix",
                                                 "load",  "piece", "sale unit"};

/// Minutes of somebody's work; unattended time is kept for the bench but costs no labour.
struct Task {
    std::string name;
    Reference role;
    Number minutes;
    Per per = Per::batch;
    bool is_unattended = false;
    bool scales = false; ///< by the batch: a part of a batch takes that part
    Span origin = {};
};

/// A supply that is used up: tray liners by the load, piping bags by the batch, boxes by the sale unit.
struct Consumption {
    Reference supply;
    Number amount;
    Per per = Per::batch;
    bool scales = false; ///< by the batch: a part of a batch takes that part
    Span origin = {};
};

} // namespace groat
