#pragma once

#include <groat/model/policy.hpp>

#include <groat/base/linkage.hpp>

namespace groat {

GROAT_INLINE PricePolicy::PricePolicy() = default;
GROAT_INLINE PricePolicy::PricePolicy(PricePolicy const&) = default;
GROAT_INLINE PricePolicy::PricePolicy(PricePolicy&&) noexcept = default;
GROAT_INLINE PricePolicy& PricePolicy::operator=(PricePolicy const&) = default;
GROAT_INLINE PricePolicy& PricePolicy::operator=(PricePolicy&&) noexcept = default;
GROAT_INLINE PricePolicy::~PricePolicy() = default;

} // namespace groat
