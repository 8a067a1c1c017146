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

} // namespace groat
