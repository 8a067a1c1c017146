#pragma once

#include <groat/price/quoted.hpp>

#include <groat/base/linkage.hpp>

namespace groat {

GROAT_INLINE Quote::Quote() = default;
GROAT_INLINE Quote::Quote(Quote const&) = default;
GROAT_INLINE Quote::Quote(Quote&&) noexcept = default;
GROAT_INLINE Quote& Quote::operator=(Quote const&) = default;
GROAT_INLINE Quote& Quote::operator=(Quote&&) noexcept = default;
GROAT_INLINE Quote::~Quote() = default;

GROAT_INLINE Money Quote::cost_of_extras() const {
    Money sum;
    for (QuoteExtra const& extra : extras) sum += extra.burden.cost * Number(extra.line->count);
    return sum;
}

} // namespace groat
