#include "runs.hpp"

#include <fmt/format.h>

#include <utility>

namespace groat::test {

Run& a_run(Book& book, std::string_view name, std::string_view formula, std::string_view order) {
    if (book.runs.capacity() < 4 * room_for) book.runs.reserve(4 * room_for);
    Run entry;
    entry.name = name;
    entry.formula = named(formula);
    entry.order = named(order);
    book.runs.push_back(std::move(entry));
    return book.runs.back();
}

Run& by_the_book(Book& book, Costing const& costing, std::size_t formula, Number const& grams) {
    Formula const& made = book.formulas[formula];
    Batch const& batch = costing.formulary().with_losses[formula];
    Run& run = a_run(book, fmt::format("run {}", book.runs.size() + 1), made.name);
    run.formula.index = formula;
    run.in_grams = grams;
    Number const batches = grams / batch.mass_in;
    run.batches = batches;
    if (!made.makes_pieces()) {
        run.out_grams = batch.mass_out * batches;
        return run;
    }
    Number const pieces = batch.pieces * batches;
    Integer const portioned = ceiling(pieces).numerator();
    run.portioned = portioned;
    run.dough_grams = pieces * batch.portion_grams;
    run.good = (-ceiling(-(Number(portioned) * batch.survival))).numerator();
    if (*run.good == 0) run.good = 1;
    run.out_grams = *run.dough_grams / Number(portioned) * Number(*run.good) * batch.piece_grams /
                    batch.portion_grams;
    return run;
}

Money random_runs(Book& book, Draw& draw) {
    Costing const costing(linked(book), today);
    Money paid;
    std::string const order = book.orders.front().id;
    for (std::int64_t count = draw.whole(1, 4); count > 0; --count) {
        auto const formula = static_cast<std::size_t>(
            draw.whole(0, static_cast<std::int64_t>(book.formulas.size()) - 1));
        Run& run = by_the_book(book, costing, formula, Number(draw.whole(100, 9000)));
        run.order = named(order);
        Sale const one{formula, nullptr, 1};
        OrderCost const cost = costing.cost({{one}, Wholes::none, {}, false});
        for (IngredientUse const& each : cost.ingredients) {
            Money const price{Number(draw.whole(0, 5000), 100), book.shop.currency};
            run.used.push_back({named(book.ingredients[each.ingredient].name),
                                {draw.whole(1, 900), Dimension::mass, nullptr},
                                price});
            paid += price;
        }
        for (Role const& role : book.shop.roles) {
            MoneyRate const wage{{Number(draw.whole(0, 4000), 100), book.shop.currency},
                                 find_unit("h", Measures::us)};
            Number const minutes = draw.whole(0, 200);
            run.worked.push_back({named(role.name), minutes, wage});
            paid += wage.amount * (minutes / 60) * (1 + role.on_cost.value());
        }
    }
    return paid;
}

} // namespace groat::test
