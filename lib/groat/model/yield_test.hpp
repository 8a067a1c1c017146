/// A yield test: something bought was weighed, trimmed and weighed again. Its parts (usable, each trim, what
/// nobody can explain) add up to what was bought, exactly. A test whose parts are heavier than what was
/// bought is refused, unless it states no trim: rice and pulses take up water.
#pragma once

#include <groat/base/diagnostic.hpp>
#include <groat/measure/calendar.hpp>
#include <groat/measure/money_rate.hpp>
#include <groat/model/ingredient.hpp>

#include <optional>
#include <string>
#include <vector>

namespace groat {

/// Something that was cut off, and what it is worth where it is used.
struct TrimPart {
    std::string name;
    Number grams;
    std::optional<MoneyRate> worth = {}; ///< money per mass; none where it is thrown away

    [[nodiscard]] Money value() const {
        return worth ? worth->of({grams, Dimension::mass, nullptr}) : Money();
    }
};

struct YieldTest {
    std::string name; ///< by which it is cited
    Reference item = {};
    std::optional<Date> date = {};
    Quantity as_purchased = {};
    Number bought_grams = {}; ///< the same weighed, by the item's facts; filled by `link`
    std::vector<TrimPart> trim = {};
    std::optional<Number> stated_usable = {}; ///< grams; else what the trim leaves
    std::optional<Money> price = {};          ///< of what was purchased, net of recoverable tax
    Reference supplier = {};
    Span origin = {};
    bool is_in_doubt = false; ///< an error stands in it (see sound_part.hpp)
    Span origin_of_purchase = {};
    Span origin_of_parts = {}; ///< of the trim, else of the usable mass

    [[nodiscard]] Number trim_grams() const;
    [[nodiscard]] Number usable_grams() const {
        return stated_usable ? *stated_usable : bought_grams - trim_grams();
    }
    /// What was bought less all that was weighed afterwards: evaporation, crumbs, the scale. Below 0 for what
    /// takes up water.
    [[nodiscard]] Number unexplained_grams() const {
        return bought_grams - usable_grams() - trim_grams();
    }
    /// What the trim is worth where it is used.
    [[nodiscard]] Money by_product_value() const;
    /// Whether it was read whole, so that it has a yield.
    [[nodiscard]] bool has_yield() const {
        return bought_grams.is_positive() && usable_grams().is_positive();
    }
};

/// `usable / as purchased` by mass. For tests that have one.
/// Example  1 kg of carrots of which 800 g are left  ->  80 %
/// Source   BC Cook Articulation Committee, Basic Kitchen and Food Service Management, "Yield Testing"
[[nodiscard]] Yield yield_of(YieldTest const& test);

/// The tests of an ingredient, in reading order. Of a supplier's goods: those that name the supplier, and
/// those that name none.
[[nodiscard]] std::vector<std::size_t> yield_tests_of(std::vector<YieldTest> const& tests,
                                                      std::size_t ingredient,
                                                      std::optional<std::size_t> supplier = {});

/// That of several tests together: the sum of what was usable over the sum of what was bought, so that a
/// large test counts for more than a small one. At least one of them must have a yield.
/// Example  8.8 of 10 kg and 0.8 of 1 kg  ->  9.6 / 11 = 87.27 %
[[nodiscard]] Yield pooled_yield(std::vector<YieldTest> const& tests,
                                 std::vector<std::size_t> const& which);

/// Weighs what was bought, and reports what cannot be weighed or does not add up. The item is resolved.
void weigh(YieldTest& test, Ingredient const& item, Diagnostics& found);

/// Reports by-products that are used though neither the ingredient nor any offer of it cites a test, which alone
/// says what they are worth.
void check_by_products(Ingredient const& item, bool is_cited_by_offer, Diagnostics& found);

/// The yield that is cited for an ingredient, or for a supplier's offer of it. A test that is named is
/// resolved.
/// Fails    for a test of something else, and where there is no test
[[nodiscard]] Result<Yield> cited_yield(YieldSource const& source,
                                        std::vector<YieldTest> const& tests, Ingredient const& item,
                                        std::size_t ingredient,
                                        std::optional<std::size_t> supplier);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/model/yield_test.ipp>
#endif
