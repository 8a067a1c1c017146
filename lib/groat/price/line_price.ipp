#pragma once

#include <groat/price/line_price.hpp>

#include <groat/base/linkage.hpp>

namespace groat {

GROAT_INLINE std::string QuoteLine::title(Book const& book) const {
    std::string const& name = book.formulas[formula].name;
    return unit == nullptr ? name : fmt::format("{}, {}", name, unit->name);
}

namespace quoting_detail {

/// Takes from `policy` what is still missing.
inline void fill_in(Policy& result, bool& has_point, PricePolicy const& policy) {
    if (result.target == nullptr && policy.target) {
        result.target = &*policy.target;
        result.origin = policy.origin;
    }
    if (!has_point && policy.point) {
        result.point = *policy.point;
        has_point = true;
    }
}

GROAT_INLINE Policy policy_of(Shop const& shop, Formula const& formula, SaleUnit const* unit,
                              std::span<PricePolicy const* const> nearer) {
    Policy result;
    bool has_point = false;
    for (PricePolicy const* policy : nearer) fill_in(result, has_point, *policy);
    if (unit != nullptr) fill_in(result, has_point, unit->price);
    fill_in(result, has_point, formula.price);
    fill_in(result, has_point, shop.price);
    return result;
}

GROAT_INLINE Policy policy_of(Shop const& shop, Formula const& formula, SaleUnit const* unit,
                              PricePolicy const* line) {
    return policy_of(shop, formula, unit,
                     std::span<PricePolicy const* const>(&line, line == nullptr ? 0 : 1));
}

} // namespace quoting_detail

} // namespace groat
