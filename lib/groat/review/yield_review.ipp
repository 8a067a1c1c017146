#pragma once

#include <groat/review/yield_review.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/rounding.hpp>
#include <groat/cost/by_products.hpp>
#include <groat/cost/offers_in_force.hpp>
#include <groat/cost/unit_cost.hpp>

#include <algorithm>

namespace groat {

GROAT_INLINE TestedYield calculate_test(Book const& book, std::size_t index) {
    YieldTest const& test = book.yield_tests[index];
    TestedYield result{index, yield_of(test), test.by_product_value(), {}, {}};
    if (test.price) {
        result.unit_cost = *test.price / test.bought_grams;
        result.usable_cost = (*test.price - result.by_product) / test.usable_grams();
    }
    return result;
}

GROAT_INLINE YieldRange yield_range(std::vector<YieldTest> const& tests,
                                    std::vector<std::size_t> const& which) {
    YieldRange range;
    range.tests = which.size();
    range.pooled = pooled_yield(tests, which);
    std::vector<Number> yields;
    for (std::size_t const index : which) yields.push_back(yield_of(tests[index]).value());
    range.lowest = *std::min_element(yields.begin(), yields.end());
    range.highest = *std::max_element(yields.begin(), yields.end());
    Number const count(yields.size());
    for (Number const& each : yields) range.mean += each / count;
    for (Number const& each : yields)
        range.deviation += (each < range.mean ? range.mean - each : each - range.mean) / count;
    return range;
}

namespace yield_review_detail {

inline YieldInBooks of(Book const& book, std::size_t index, std::optional<std::size_t> offer) {
    Ingredient const& ingredient = book.ingredients[index];
    YieldInBooks result;
    result.offer = offer;
    std::optional<std::size_t> supplier; // whose goods were tested
    std::optional<Yield> said = ingredient.yield;
    result.source = ingredient.yield_source;
    if (offer) {
        Offer const& bought = book.offers[*offer];
        result.is_own = bought.yield.has_value();
        if (result.is_own) {
            supplier = bought.supplier;
            said = bought.yield;
            result.source = bought.yield_source;
        }
    }
    result.is_said = said.has_value();
    result.yield = said.value_or(Yield());
    auto const speaking = yield_tests_of(book.yield_tests, index, supplier);
    if (!speaking.empty()) result.tested = yield_range(book.yield_tests, speaking);
    if (offer) {
        Offer const& bought = book.offers[*offer];
        Money const as_bought = landed_pack_cost(bought, book) / *content_of(bought, ingredient);
        Money const unit_cost =
            as_bought - std::min(by_product_worth(book, index, bought), as_bought);
        result.usable_cost = unit_cost / result.yield.value();
        if (result.tested) result.usable_tested = unit_cost / result.tested->pooled.value();
    }
    return result;
}

} // namespace yield_review_detail

GROAT_INLINE Result<YieldReview> review_yields(Book const& book, std::size_t ingredient,
                                               Date date) {
    auto which = yield_tests_of(book.yield_tests, ingredient);
    if (which.empty())
        return refuse(
            "unknown-yield",
            fmt::format("there is no yield test of '{}'", book.ingredients[ingredient].name),
            "write one in yields.yaml");
    auto const in_force = offers_in_force(book, ingredient, date);
    if (!in_force) return Refused(in_force.error());
    std::stable_sort(which.begin(), which.end(), [&](std::size_t a, std::size_t b) {
        return book.yield_tests[a].date < book.yield_tests[b].date;
    });
    YieldReview review{ingredient, {}, yield_range(book.yield_tests, which), {}};
    for (std::size_t const index : which) review.tests.push_back(calculate_test(book, index));
    auto const bought_by = unit_cost_detail::choose(book, ingredient, date);
    for (std::size_t const offer : *in_force) {
        review.books.push_back(yield_review_detail::of(book, ingredient, offer));
        review.books.back().is_bought_by = bought_by && bought_by->offer == offer;
    }
    if (in_force->empty()) review.books.push_back(yield_review_detail::of(book, ingredient, {}));
    return review;
}

GROAT_INLINE Diagnostics yields_outside_tests(Book const& book, Date date) {
    Diagnostics found;
    for (std::size_t i = 0; i < book.ingredients.size(); ++i) {
        auto const review = review_yields(book, i, date);
        if (!review) continue;
        Ingredient const& ingredient = book.ingredients[i];
        for (YieldInBooks const& each : review->books) {
            if (!each.is_outside_tests()) continue;
            auto const percent = [](Number const& share) {
                return fmt::format("{} %", decimal_at_most(share * 100, 2));
            };
            found.warn(
                each.is_said ? each.source.origin : ingredient.origin, "yield-outside-tests",
                fmt::format("'{}' is costed at a yield of {}, but its {} tests gave {} to {}",
                            ingredient.name, percent(each.yield.value()), each.tested->tests,
                            percent(each.tested->lowest), percent(each.tested->highest)),
                fmt::format("write 'yield: tested', which is {}, or see what differs with "
                            "groat yields '{}'",
                            percent(each.tested->pooled.value()), ingredient.name));
        }
    }
    return found;
}

} // namespace groat
