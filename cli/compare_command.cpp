#include "session.hpp"

#include <groat/price/compare.hpp>
#include <groat/price/quote.hpp>
#include <groat/sheets/compare_sheet.hpp>

namespace groat::cli {

namespace {

/// What all orders of the book take of each ingredient, usable, each order at its own prices.
std::optional<std::vector<Number>> taken_by_orders(Session& session, Date date) {
    Book const& book = session.book();
    std::vector<Number> taken(book.ingredients.size());
    for (Order const& order : book.orders) {
        Costing const costing(session.linked(), order.date.value_or(date));
        auto const result = groat::quote(costing, order, session.found());
        if (!result) return std::nullopt;
        for (IngredientUse const& use : result->cost.ingredients)
            taken[use.ingredient] += use.usable;
        for (IngredientUse const& use : result->cost.supplies) taken[use.ingredient] += use.bought;
    }
    return taken;
}

} // namespace

int compare(Options const& options) {
    Session session(options);
    auto const date = session.date_or(std::nullopt);
    if (!date) return command_line_wrong;
    if (session.is_in_doubt() ||
        (options.all && session.is_in_doubt({BookPart::ingredients, BookPart::prices})) ||
        (options.by_orders && session.is_in_doubt({BookPart::orders})))
        return session.give_up();
    Book const& book = session.book();
    auto const named = session.ingredients(options.subjects);
    if (!named) return session.refusal();
    std::vector<std::size_t> wanted = *named;
    if (options.all)
        for (std::size_t i = 0; i < book.ingredients.size(); ++i)
            if (!book.offers_of[i].empty()) wanted.push_back(i);
    std::optional<std::vector<Number>> taken;
    if (options.by_orders && !(taken = taken_by_orders(session, *date))) return session.give_up();
    if (taken && options.subjects.empty() && !options.all)
        for (std::size_t i = 0; i < book.ingredients.size(); ++i)
            if ((*taken)[i].is_positive()) wanted.push_back(i);
    if (wanted.empty()) {
        complain("groat: nothing to compare\n  help: name ingredients, or say --all or --orders\n");
        return command_line_wrong;
    }
    std::vector<Comparison> comparisons;
    for (std::size_t const index : wanted) {
        Ingredient const& ingredient = book.ingredients[index];
        std::optional<Number> amount;
        if (taken && (*taken)[index].is_positive()) amount = (*taken)[index];
        if (!options.amount.empty()) {
            auto const quantity = parse_quantity(options.amount, book.shop.measures);
            auto const units = quantity ? amount_in(*quantity, ingredient)
                                        : Result<Number>(Refused(quantity.error()));
            if (!units || !units->is_positive()) {
                complain(fmt::format("groat: --amount: {}\n",
                                     units ? "it must be above 0" : units.error().what));
                return command_line_wrong;
            }
            amount = *units;
        }
        auto comparison = compare_offers(book, index, *date, amount);
        if (comparison)
            comparisons.push_back(std::move(*comparison));
        else if (options.all && comparison.error().code == "future-price")
            continue;
        else
            session.found().error(ingredient.origin, comparison.error());
    }
    if (session.has_new_errors()) return session.give_up();
    return session.hand_over(compare_sheet(comparisons, book, *date));
}

} // namespace groat::cli
