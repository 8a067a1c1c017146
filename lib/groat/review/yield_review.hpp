/// What the yield tests of an ingredient say, one by one and together, and what the books say beside it.
#pragma once

#include <groat/cost/unit_cost.hpp>

#include <algorithm>
#include <optional>
#include <string>
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

// ---------------------------------------------------------------------------------------------------

inline TestedYield calculate_test(Book const& book, std::size_t index) {
    YieldTest const& test = book.yield_tests[index];
    TestedYield result{index, yield_of(test), test.by_product_value(), {}, {}};
    if (test.price) {
        result.unit_cost = *test.price / test.bought_grams;
        result.usable_cost = (*test.price - result.by_product) / test.usable_grams();
    }
    return result;
}

inline YieldRange yield_range(std::vector<YieldTest> const& tests,
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

inline Result<YieldReview> review_yields(Book const& book, std::size_t ingredient, Date date) {
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

inline Diagnostics yields_outside_tests(Book const& book, Date date) {
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
