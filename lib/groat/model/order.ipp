#pragma once

#include <groat/model/order.hpp>

#include <groat/base/linkage.hpp>

namespace groat {

GROAT_INLINE std::size_t number_of_line(Order const& order, std::size_t line) {
    std::size_t number = line + 1;
    for (FreeLine const& extra : order.extras)
        if (extra.before <= line) ++number;
    return number;
}

GROAT_INLINE std::size_t number_of_extra(Order const& order, std::size_t extra) {
    return order.extras[extra].before + extra + 1;
}

} // namespace groat
