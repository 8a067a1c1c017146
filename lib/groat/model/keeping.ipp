#pragma once

#include <groat/model/keeping.hpp>

#include <groat/base/linkage.hpp>

namespace groat {

GROAT_INLINE bool is_kept_cold(Keeping const& keeping) {
    return keeping.at && *keeping.at >= KeepAt::cold;
}

GROAT_INLINE Keeping strictest(Keeping const& a, Keeping const& b) {
    Keeping result = a;
    if (b.at && (!a.at || *b.at > *a.at)) result.at = b.at;
    if (b.days && (!a.days || *b.days < *a.days)) result.days = b.days;
    return result;
}

} // namespace groat
