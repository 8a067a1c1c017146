#pragma once

#include <groat/cost/by_products.hpp>

#include <groat/base/linkage.hpp>

#include <vector>

namespace groat {

GROAT_INLINE Money by_product_worth(Book const& book, std::size_t index, Offer const& offer) {
    Ingredient const& ingredient = book.ingredients[index];
    YieldSource const& source = offer.yield ? offer.yield_source : ingredient.yield_source;
    if (!ingredient.uses_by_products || !source.is_cited()) return {};
    std::vector<std::size_t> tests;
    if (source.kind == YieldSource::Kind::one_test)
        tests.push_back(source.test.index);
    else if (offer.yield)
        tests = yield_tests_of(book.yield_tests, index, offer.supplier);
    else
        tests = yield_tests_of(book.yield_tests, index);
    Money worth;
    Number grams;
    for (std::size_t const each : tests) {
        worth += book.yield_tests[each].by_product_value();
        grams += book.yield_tests[each].bought_grams;
    }
    return grams.is_zero() ? Money() : worth / grams;
}

} // namespace groat
