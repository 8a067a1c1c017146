#pragma once

#include <groat/model/yield_test.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/rounding.hpp>
#include <groat/model/convert.hpp>

#include <fmt/format.h>

#include <utility>

namespace groat {

GROAT_INLINE Number YieldTest::trim_grams() const {
    Number sum;
    for (TrimPart const& part : trim) sum += part.grams;
    return sum;
}

GROAT_INLINE Money YieldTest::by_product_value() const {
    Money sum;
    for (TrimPart const& part : trim) sum += part.value();
    return sum;
}

GROAT_INLINE Yield yield_of(YieldTest const& test) {
    return *Yield::of(test.usable_grams() / test.bought_grams);
}

GROAT_INLINE std::vector<std::size_t> yield_tests_of(std::vector<YieldTest> const& tests,
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

GROAT_INLINE Yield pooled_yield(std::vector<YieldTest> const& tests,
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

GROAT_INLINE void weigh(YieldTest& test, Ingredient const& item, Diagnostics& found) {
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

GROAT_INLINE void check_by_products(Ingredient const& item, bool is_cited_by_offer,
                                    Diagnostics& found) {
    if (!item.uses_by_products || item.yield_source.is_cited() || is_cited_by_offer) return;
    found.error(item.origin, "by-products-untested",
                fmt::format("the by-products of '{}' are said to be used, and no yield test says "
                            "what they are worth",
                            item.name),
                "write 'yield: tested', and a test with 'trim: {name: {mass: 0.3 kg, worth: 1.20 / "
                "kg}}' in yields.yaml");
}

GROAT_INLINE Result<Yield> cited_yield(YieldSource const& source,
                                       std::vector<YieldTest> const& tests, Ingredient const& item,
                                       std::size_t ingredient,
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
