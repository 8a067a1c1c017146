/// A yield test: something bought was weighed, trimmed and weighed again. Its parts (usable, each trim, what
/// nobody can explain) add up to what was bought, exactly. A test whose parts are heavier than what was
/// bought is refused, unless it states no trim: rice and pulses take up water.
#pragma once

#include <groat/base/diagnostic.hpp>
#include <groat/measure/calendar.hpp>
#include <groat/measure/money_rate.hpp>
#include <groat/model/convert.hpp>
#include <groat/model/yield_source.hpp>

#include <fmt/format.h>

#include <optional>
#include <string>
#include <utility>
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

// ---------------------------------------------------------------------------------------------------

inline Number YieldTest::trim_grams() const {
    Number sum;
    for (TrimPart const& part : trim) sum += part.grams;
    return sum;
}

inline Money YieldTest::by_product_value() const {
    Money sum;
    for (TrimPart const& part : trim) sum += part.value();
    return sum;
}

inline Yield yield_of(YieldTest const& test) {
    return *Yield::of(test.usable_grams() / test.bought_grams);
}

inline std::vector<std::size_t> yield_tests_of(std::vector<YieldTest> const& tests,
                                               std::size_t ingredient,
                                               std::optional<std::size_t> supplier) {
    std::vector<std::size_t> result;
    for (std::size_t i = 0; i < tests.size(); ++i) {
        Reference const& named = tests[i].supplier;
        if (tests[i].item.index == ingredient &&
            (!supplier || !named.is_given() || named.index == *supplier))
            result.push_back(i);
    }
    return result;
}

inline Yield pooled_yield(std::vector<YieldTest> const& tests,
                          std::vector<std::size_t> const& which) {
    Number usable;
    Number bought;
    for (std::size_t const index : which) {
        if (!tests[index].has_yield()) continue;
        usable += tests[index].usable_grams();
        bought += tests[index].bought_grams;
    }
    return *Yield::of(usable / bought);
}

inline void weigh(YieldTest& test, Ingredient const& item, Diagnostics& found) {
    if (!test.origin_of_purchase.is_known() && !test.as_purchased.amount.is_positive()) return;
    auto grams = grams_of(test.as_purchased, item);
    if (!grams) return found.error(test.origin_of_purchase, grams.error());
    test.bought_grams = *std::move(grams);
    Number const trimmed = test.trim_grams();
    if (!test.usable_grams().is_positive())
        return found.error(
            test.origin_of_parts, "nothing-usable",
            fmt::format("the trim weighs {} and {} was bought: nothing is left to use",
                        mass_text(trimmed), mass_text(test.bought_grams)),
            "weigh again, or mend 'as purchased'");
    if (!test.trim.empty() && test.unexplained_grams().is_negative())
        return found.error(
            test.origin_of_parts, "parts-exceed-whole",
            fmt::format("{} usable and {} of trim are more than the {} that was bought",
                        mass_text(test.usable_grams()), mass_text(trimmed),
                        mass_text(test.bought_grams)),
            "weigh again; for what takes up water, such as rice, state 'usable' without 'trim'");
    Money const value = test.by_product_value();
    if (test.price && value > *test.price) {
        auto const words = [](Money const& money) {
            return decimal(money.amount(), money.currency().minor_digits());
        };
        found.warn(test.origin_of_parts, "dear-by-product",
                   fmt::format("the trim is said to be worth {}, and {} was paid for all of it",
                               words(value), words(*test.price)),
                   "mend 'worth', which is money per mass, as 1.20 / kg");
    }
}

inline void check_by_products(Ingredient const& item, bool is_cited_by_offer, Diagnostics& found) {
    if (!item.uses_by_products || item.yield_source.is_cited() || is_cited_by_offer) return;
    found.error(item.origin, "by-products-untested",
                fmt::format("the by-products of '{}' are said to be used, and no yield test says "
                            "what they are worth",
                            item.name),
                "write 'yield: tested', and a test with 'trim: {name: {mass: 0.3 kg, worth: 1.20 / "
                "kg}}' in yields.yaml");
}

inline Result<Yield> cited_yield(YieldSource const& source, std::vector<YieldTest> const& tests,
                                 Ingredient const& item, std::size_t ingredient,
                                 std::optional<std::size_t> supplier) {
    auto const own = yield_tests_of(tests, ingredient, supplier);
    if (source.kind == YieldSource::Kind::one_test) {
        YieldTest const& test = tests[source.test.index];
        if (test.item.is_resolved() && test.item.index != ingredient)
            return refuse("test-of-another",
                          fmt::format("'{}' is a yield test of '{}', not of '{}'", test.name,
                                      test.item.name, item.name),
                          own.empty() ? "name another, or state a percentage, as 88 %"
                                      : fmt::format("one of this is '{}'", tests[own.back()].name));
        return test.has_yield() ? yield_of(test) : Yield();
    }
    if (own.empty())
        return refuse("unknown-yield",
                      fmt::format("there is no yield test of '{}'{}", item.name,
                                  supplier ? " from this supplier" : ""),
                      "write one in yields.yaml, or state a percentage, as 88 %");
    for (std::size_t const index : own)
        if (tests[index].has_yield()) return pooled_yield(tests, own);
    return Yield();
}

} // namespace groat
