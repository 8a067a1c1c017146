#pragma once

#include <groat/desk/review.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>
#include <groat/desk/answer.hpp>
#include <groat/desk/lookup.hpp>
#include <groat/sheets/variance_sheet.hpp>

#include <utility>

namespace groat::desk {

GROAT_INLINE Result<std::vector<YieldReview>> yields_wished(Book const& book, Date date,
                                                            std::vector<std::string> const& names,
                                                            Diagnostics& found) {
    auto named = find_ingredients(book, names);
    if (!named) return Refused(named.error());
    std::vector<std::size_t> wanted = *std::move(named);
    if (names.empty())
        for (std::size_t i = 0; i < book.ingredients.size(); ++i)
            if (!yield_tests_of(book.yield_tests, i).empty()) wanted.push_back(i);
    if (wanted.empty())
        return refuse({}, "there is no yield test in the books",
                      "weigh what you buy and what is left of it, and write it in yields.yaml");
    std::vector<YieldReview> reviews;
    bool is_well = true;
    for (std::size_t const index : wanted) {
        auto review = review_yields(book, index, date);
        if (review) {
            reviews.push_back(std::move(*review));
        } else if (review.error().code == Code("unknown-yield")) {
            return refuse(review.error().code, printable(review.error().what), review.error().help);
        } else {
            found.error(book.ingredients[index].origin, review.error());
            is_well = false;
        }
    }
    if (!is_well) return as_found();
    return reviews;
}

GROAT_INLINE Result<std::vector<RunLosses>> losses_wished(Costing const& costing,
                                                          std::vector<std::string> const& names,
                                                          Diagnostics& found) {
    auto named = find_formulas(costing.book(), names);
    if (!named) return Refused(named.error());
    std::vector<std::size_t> const wanted =
        named->empty() ? formulas_with_runs(costing.book()) : *std::move(named);
    if (wanted.empty())
        return refuse("no-runs", "there are no runs in these books",
                      "write what happened into runs/any name.yaml, as 'run: shells', "
                      "'formula: rye shell', 'pieces: {portioned: 84, good: 80}'");
    std::size_t const errors = found.errors_met();
    for (std::size_t const formula : wanted) found.add(costing.findings(formula));
    if (found.errors_met() > errors) return as_found();
    std::vector<RunLosses> all;
    for (std::size_t const formula : wanted) all.push_back(run_losses(costing, formula));
    return all;
}

GROAT_INLINE Result<Sheet> variance_sheet(LinkedBook const& linked, Dates const& dates,
                                          std::string const& id, Diagnostics& found) {
    Book const& book = linked.book();
    auto const order = find_order(book, id);
    if (!order) return Refused(order.error());
    Costing const costing(linked, day_of(dates, (*order)->date));
    auto const index = static_cast<std::size_t>(*order - book.orders.data());
    auto const variance = order_variance(costing, index, found);
    if (!variance) return as_found();
    return order_variance_sheet(*variance, costing);
}

} // namespace groat::desk
