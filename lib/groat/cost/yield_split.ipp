#pragma once

#include <groat/cost/yield_split.hpp>

#include <groat/base/linkage.hpp>

namespace groat {

namespace yield_split_detail {

class Splitter {
public:
    Splitter(Book const& book, Formulary const& formulary, std::vector<CostLine> const& lines)
        : book_(book), formulary_(formulary), lines_(lines) {}

    /// Each line's ingredient cost at prices as purchased, of what is eaten or of what is bought, in a
    /// world without whole pieces and batches.
    [[nodiscard]] std::vector<Money> cost(Explosion const& world, Losses losses,
                                          bool of_eaten) const {
        std::vector<Money> upward(world.runs.size(), Money(0, book_.shop.currency));
        for (std::size_t i = world.runs.size(); i-- > 0;) {
            FormulaRun const& run = world.runs[i];
            for (BatchLine const& line : formulary_.batches(losses)[run.formula].lines) {
                if (line.is_formula) {
                    std::size_t const used = world.run_of[line.index];
                    upward[i] += upward[used] * part_of(world.runs[used], line.amount * run.made);
                } else {
                    upward[i] += formulary_.costs.purchases[line.index]->unit_cost *
                                 ((of_eaten ? line.eaten() : line.bought) * run.made);
                }
            }
        }
        std::vector<Money> result;
        for (CostLine const& line : lines_) {
            std::size_t const used = world.run_of[line.sale.formula];
            result.push_back(upward[used] *
                             part_of(world.runs[used], line.sale.count * line.sale.holds()));
        }
        return result;
    }

    void name_what_is_eaten(Explosion const& lossless,
                            std::map<std::size_t, IngredientUse>& uses) const {
        std::map<std::size_t, Number> grams;
        for (FormulaRun const& run : lossless.runs)
            for (BatchLine const& line : formulary_.without_losses[run.formula].lines)
                if (!line.is_formula) grams[line.index] += line.eaten() * run.made;
        for (auto& [index, use] : uses)
            use.eaten = formulary_.costs.purchases[index]->unit_cost * grams[index];
    }

private:
    static Number part_of(FormulaRun const& run, Number const& amount) {
        return run.demand.is_zero() ? Number() : amount / run.demand;
    }

    Book const& book_;
    Formulary const& formulary_;
    std::vector<CostLine> const& lines_;
};

} // namespace yield_split_detail

GROAT_INLINE YieldLoss split_yield(Book const& book, Formulary const& formulary,
                                   std::vector<Sale> const& sales, std::vector<CostLine>& lines,
                                   std::map<std::size_t, IngredientUse>& uses) {
    yield_split_detail::Splitter const splitter(book, formulary, lines);
    Explosion const lossless = explode(book, formulary, Losses::none, Wholes::none, sales);
    Explosion const lossy = explode(book, formulary, Losses::all, Wholes::none, sales);
    splitter.name_what_is_eaten(lossless, uses);
    auto const eaten = splitter.cost(lossless, Losses::none, true);
    auto const bought = splitter.cost(lossless, Losses::none, false);
    auto const made = splitter.cost(lossy, Losses::all, false);
    YieldLoss total;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        lines[i].loss = {eaten[i], bought[i] - eaten[i], made[i] - bought[i],
                         lines[i].direct[Category::ingredients] - made[i]};
        total.in_the_piece += lines[i].loss.in_the_piece;
        total.trim += lines[i].loss.trim;
        total.process += lines[i].loss.process;
        total.rounding += lines[i].loss.rounding;
    }
    return total;
}

} // namespace groat
