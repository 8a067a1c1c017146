/// Percentages that mean different things are different types and do not convert into one another: a
/// margin of 40 % is no markup of 40 %, and a loss is no yield. Each knows what values make sense for it.
#pragma once

#include <groat/base/number.hpp>
#include <groat/base/result.hpp>

#include <string_view>
#include <utility>

namespace groat {

namespace rate_detail {

/// What is said of a value that a kind does not admit.
[[nodiscard]] Refused out_of_range(std::string_view kind, Number const& value, std::string_view why,
                                   std::string_view help);

} // namespace rate_detail

/// A share of something, 1 being the whole; `Kind` says of what, and which values it admits.
template <class Kind> class Rate {
public:
    Rate() = default;

    /// Fails when the value makes no sense for this kind; the message says what would.
    [[nodiscard]] static Result<Rate> of(Number value) {
        if (!Kind::admits(value))
            return rate_detail::out_of_range(Kind::name, value, Kind::why, Kind::help);
        return Rate(std::move(value));
    }

    [[nodiscard]] Number const& value() const { return value_; }
    /// What is left of 1 after this share.
    [[nodiscard]] Number rest() const { return 1 - value_; }

    friend bool operator==(Rate const&, Rate const&) = default;
    friend auto operator<=>(Rate const& a, Rate const& b) { return a.value_ <=> b.value_; }

private:
    explicit Rate(Number value) : value_(std::move(value)) {}
    Number value_ = Kind::start;
};

namespace rate_detail {

struct Yield {
    static constexpr int start = 1;
    static constexpr auto name = "yield";
    static constexpr auto why = "leaves nothing to use";
    static constexpr auto help =
        "a yield is above 0 %; it may be above 100 % for what swells, such as rice";
    static bool admits(Number const& v) { return v.is_positive(); }
};
struct Loss {
    static constexpr int start = 0;
    static constexpr auto name = "loss";
    static constexpr auto why = "cannot be: a loss is at least 0 % and below 100 %";
    static constexpr auto help = "write the share that is lost, such as 3 %";
    static bool admits(Number const& v) { return !v.is_negative() && v < 1; }
};
struct Margin {
    static constexpr int start = 0;
    static constexpr auto name = "margin";
    static constexpr auto why =
        "is out of reach at any price: a margin is at least 0 % and below 100 %";
    static constexpr auto help = "a margin is a share of the price; for a share of the cost write "
                                 "a markup, such as 'markup: 100 %'";
    static bool admits(Number const& v) { return !v.is_negative() && v < 1; }
};
struct Markup {
    static constexpr int start = 0;
    static constexpr auto name = "markup";
    static constexpr auto why = "would sell below cost";
    static constexpr auto help = "a markup is a share of the cost, at least 0 %";
    static bool admits(Number const& v) { return !v.is_negative(); }
};
struct FoodCostShare {
    static constexpr int start = 1;
    static constexpr auto name = "food cost";
    static constexpr auto why =
        "cannot be a target: it is above 0 % and at most 100 % of the price";
    static constexpr auto help =
        "write the share of the price that ingredients may take, such as 30 %";
    static bool admits(Number const& v) { return v.is_positive() && v <= 1; }
};
struct PrimeCostShare {
    static constexpr int start = 1;
    static constexpr auto name = "prime cost";
    static constexpr auto why =
        "cannot be a target: it is above 0 % and at most 100 % of the price";
    static constexpr auto help =
        "write the share of the price that ingredients and labour may take, such as 60 %";
    static bool admits(Number const& v) { return v.is_positive() && v <= 1; }
};
struct TaxRate {
    static constexpr int start = 0;
    static constexpr auto name = "tax rate";
    static constexpr auto why = "cannot be: a tax rate is at least 0 % and at most 100 %";
    static constexpr auto help = "write it as 8.25 %";
    static bool admits(Number const& v) { return !v.is_negative() && v <= 1; }
};
struct FeeRate {
    static constexpr int start = 0;
    static constexpr auto name = "fee";
    static constexpr auto why = "cannot be: a fee is at least 0 % and below 100 % of what is paid";
    static constexpr auto help = "write it as 2.9 %";
    static bool admits(Number const& v) { return !v.is_negative() && v < 1; }
};
struct Share {
    static constexpr int start = 0;
    static constexpr auto name = "share";
    static constexpr auto why = "cannot be: it is at least 0 % and at most 100 %";
    static constexpr auto help = "write it as 30 %";
    static bool admits(Number const& v) { return !v.is_negative() && v <= 1; }
};
struct Surcharge {
    static constexpr int start = 0;
    static constexpr auto name = "rate";
    static constexpr auto why = "cannot be negative";
    static constexpr auto help = "write what comes on top, such as 12 %";
    static bool admits(Number const& v) { return !v.is_negative(); }
};

} // namespace rate_detail

using Yield = Rate<rate_detail::Yield>;   ///< usable part of what was bought
using Loss = Rate<rate_detail::Loss>;     ///< part lost in making
using Margin = Rate<rate_detail::Margin>; ///< profit as part of the net price
using Markup = Rate<rate_detail::Markup>; ///< profit as part of cost and fee
using FoodCostShare =
    Rate<rate_detail::FoodCostShare>; ///< ingredient cost as part of the net price
using PrimeCostShare =
    Rate<rate_detail::PrimeCostShare>;          ///< ingredients and labour as part of the net price
using TaxRate = Rate<rate_detail::TaxRate>;     ///< tax as part of the net price
using FeeRate = Rate<rate_detail::FeeRate>;     ///< fee as part of what the client pays
using Share = Rate<rate_detail::Share>;         ///< a part of a whole: duty, deposit, discount
using Surcharge = Rate<rate_detail::Surcharge>; ///< what comes on top: on-cost, rush, overhead

/// The markup that is the same profit as this margin: `m / (1 - m)`.
/// Example  margin 20 %  ->  markup 25 %
[[nodiscard]] Markup to_markup(Margin const& margin);

/// The margin that is the same profit as this markup: `k / (1 + k)`.
/// Example  markup 60 %  ->  margin 37.5 %
[[nodiscard]] Margin to_margin(Markup const& markup);

/// The yield that `loss` leaves: `1 - loss`.
[[nodiscard]] Yield to_yield(Loss const& loss);

/// Reads a percentage as a part of 1: `2.9 %`, `40%`, `33 1/3 %`.
/// Fails    without the sign, since a bare `40` could be meant either way
[[nodiscard]] Result<Number> parse_percent(std::string_view text);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/measure/rate.ipp>
#endif
