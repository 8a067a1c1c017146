/// What the yield tests of an ingredient say, one by one and together, and what the books say beside it.
#pragma once

#include <groat/model/book.hpp>

#include <optional>
#include <vector>

namespace groat {

/// One test calculated. Money is per gram, net of recoverable tax; none where the test has no price.
struct TestedYield {
    std::size_t test = 0; ///< index in the book
    Yield yield;
    Money by_product;               ///< what the trim is worth, all of it
    std::optional<Money> unit_cost; ///< AP cost: `price / as purchased`
    /// `(price - by-product) / usable mass`. Without by-product it is the AP cost over the yield.
    std::optional<Money> usable_cost;

    /// What is bought for one usable unit: `1 / yield`.
    [[nodiscard]] Number yield_factor() const { return 1 / yield.value(); }
    /// The trade's cost factor: what a usable unit costs after by-products, as a multiple of the price as
    /// purchased. The yield factor where no by-product is worth anything. None without a price, or for what
    /// cost nothing.
    [[nodiscard]] std::optional<Number> cost_factor() const {
        if (!unit_cost || unit_cost->is_zero()) return std::nullopt;
        return *usable_cost / *unit_cost;
    }
};

/// The yields of some tests, at least one.
struct YieldRange {
    std::size_t tests = 0;
    Yield pooled;   ///< all usable mass over all that was purchased
    Number mean;    ///< of the yields, each test counting the same
    Number lowest;  ///< yield
    Number highest; ///< yield
    Number
        deviation; ///< how far a test is from the mean, on average; a standard deviation takes roots

    [[nodiscard]] Number spread() const { return highest - lowest; }
    /// Whether a yield lies outside what several tests gave. One test is no range.
    [[nodiscard]] bool excludes(Yield const& yield) const {
        return tests > 1 && (yield.value() < lowest || yield.value() > highest);
    }
};

/// The yield that the books say, beside the tests that speak for it.
struct YieldInBooks {
    std::optional<std::size_t> offer; ///< none where nothing is in force
    bool is_bought_by = false;        ///< costs go by this offer
    bool is_own = false;              ///< the offer's own yield, not the ingredient's
    bool is_said = false;             ///< else 100 % is used
    YieldSource source;
    Yield yield;
    std::optional<YieldRange> tested;   ///< none where no test speaks for it
    std::optional<Money> usable_cost;   ///< per gram, at the yield in the books
    std::optional<Money> usable_tested; ///< per gram, at the tests' yield taken together

    /// What the tests gave more than the books say, as a share of what was purchased; below 0: less.
    [[nodiscard]] std::optional<Number> difference() const {
        if (!tested) return std::nullopt;
        return tested->pooled.value() - yield.value();
    }
    /// What a usable gram costs more as tested than by the books.
    [[nodiscard]] std::optional<Money> dearer() const {
        if (!usable_tested) return std::nullopt;
        return *usable_tested - *usable_cost;
    }
    /// Whether it is a yield that somebody stated (or nobody did) and that the tests exclude.
    [[nodiscard]] bool is_outside_tests() const {
        return !source.is_cited() && tested && tested->excludes(yield);
    }
};

struct YieldReview {
    std::size_t ingredient = 0;
    std::vector<TestedYield> tests; ///< the oldest first
    YieldRange range;
    std::vector<YieldInBooks> books; ///< for each offer in force; else one, for the ingredient
};

/// Fails never for a test that `link` let pass.
/// Example  10 kg for 33.00, 0.3 kg of trim worth 1.20 a kg, 8.8 kg usable  ->  (33.00 - 0.36) / 8.8 a kg
[[nodiscard]] TestedYield calculate_test(Book const& book, std::size_t test);

/// Of at least one test that has a yield.
/// Example  88 %, 90 % and 92 %  ->  mean 90 %, spread 4 points, deviation 4/3 points
[[nodiscard]] YieldRange yield_range(std::vector<YieldTest> const& tests,
                                     std::vector<std::size_t> const& which);

/// The tests of an ingredient beside its yield in the books, with the offers in force on `date`. A yield of
/// the ingredient is judged by all its tests; an offer's own by those that name its supplier or none.
/// Fails    where there is no test, and where a pack cannot be turned into the ingredient's unit
[[nodiscard]] Result<YieldReview> review_yields(Book const& book, std::size_t ingredient,
                                                Date date);

/// A warning for each yield in the books that lies outside what at least two tests gave.
[[nodiscard]] Diagnostics yields_outside_tests(Book const& book, Date date);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/review/yield_review.ipp>
#endif
