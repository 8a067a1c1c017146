/// From a purchase as it is stated to the one in whole numbers that the search works on (purchase_market.hpp): the
/// common units found, leftovers added to the demand, free delivery as a supplier of its own, and all of it in 64 bits
/// where every sum is sure to fit.
#pragma once

#include <groat/solve/purchase_market.hpp>
#include <groat/solve/purchase_problem.hpp>

#include <cstdint>
#include <optional>
#include <utility>
#include <vector>

namespace groat::purchasing {

/// The problem in whole numbers. Suppliers who cannot reach their own minimum offer nothing in it.
[[nodiscard]] Market<Integer> to_market(PurchaseProblem const& problem);

/// Whether 64 bits hold all sums that the search will form.
[[nodiscard]] bool fits_64_bits(Market<Integer> const& market);

/// The same market with a grid of its own; requires `fits_64_bits`.
[[nodiscard]] Market<std::int64_t> to_64_bits(Market<Integer> const& market);

/// The whole number not below `a / b`.
Integer divided_up(Integer const& a, Integer const& b);

/// The greatest number of which all given are whole multiples; 0 where all are 0.
class Measure {
public:
    void add(Number const& number) {
        if (number.is_zero()) return;
        numerator_ = gcd(Integer(numerator_ * number.denominator()),
                         Integer(number.numerator() * denominator_));
        denominator_ = denominator_ * number.denominator();
        Integer const common = gcd(numerator_, denominator_);
        numerator_ /= common;
        denominator_ /= common;
    }
    [[nodiscard]] Number value() const { return Number(numerator_, denominator_); }

private:
    Integer numerator_ = 0;
    Integer denominator_ = 1;
};

/// `number / unit`, which is whole.
Integer count(Number const& number, Number const& unit);

/// `number / unit` rounded up.
Integer count_up(Number const& number, Number const& unit);

/// The most that all packs of an offer can count towards a minimum; nothing where that has no end.
std::optional<Number> most_counted(PurchaseOffer const& offer);

/// Whether each supplier can reach its minimum at all.
std::vector<bool> reachable(PurchaseProblem const& problem);

Bid<Integer> to_bid(PurchaseOffer const& offer, Integer const& demand, Integer const& minimum,
                    Number const& content_unit, Number const& unit);

void add_worths(Market<Integer>& market);

bool is_of_use(LeftoverUse const& use);

/// The minimums at which delivery is free; of suppliers for whom that changes nothing, nothing.
std::vector<std::optional<Number>> free_minimums(PurchaseProblem const& problem);

/// The bits that the largest sum of money may take, and the largest sum of contents.
std::pair<unsigned, unsigned> bits(Market<Integer> const& market);

} // namespace groat::purchasing

#ifndef GROAT_COMPILED
#include <groat/solve/purchase_to_market.ipp>
#endif
