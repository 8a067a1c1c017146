/// The maker's tables of what an order or an item costs. Every column of money adds up as printed.
#pragma once

#include <groat/cost/engine.hpp>
#include <groat/sheets/shown_costs.hpp>

#include <string>
#include <vector>

namespace groat {

/// The ingredient cost as what is eaten and what is lost on the way.
/// Its total, and likewise those below, is a figure that stands elsewhere on the sheet as well.
using Total = std::optional<ShownFigure>;
[[nodiscard]] Table yield_loss_table(YieldLoss const& loss, Figures const& figures,
                                     Total const& total = {});

[[nodiscard]] Table ingredient_table(OrderCost const& cost, Book const& book,
                                     Figures const& figures, Total const& total = {});
[[nodiscard]] Table supply_table(OrderCost const& cost, Book const& book, Figures const& figures,
                                 Total const& total = {});
[[nodiscard]] Table formula_table(OrderCost const& cost, Book const& book,
                                  Formulary const& formulary);
[[nodiscard]] Table formula_cost_table(OrderCost const& cost, Book const& book,
                                       Figures const& figures);
[[nodiscard]] Table labour_table(OrderCost const& cost, Figures const& figures,
                                 Total const& total = {});
[[nodiscard]] Table oven_table(OrderCost const& cost, Book const& book, Figures const& figures,
                               Total const& total = {});
[[nodiscard]] Table overhead_table(OrderCost const& cost, Figures const& figures,
                                   Total const& total = {});
/// What is left over of each formula and charged here, and what that is of the whole cost; no lines where nothing is.
[[nodiscard]] Remarks leftover_remarks(OrderCost const& cost, Costing const& costing,
                                       Figures const& figures);
/// From whom each thing is taken to be bought, and why.
[[nodiscard]] Table purchase_table(OrderCost const& cost, Book const& book, Figures const& figures);

/// All of these below one another: formulas, ingredients, supplies, labour, ovens, overhead, what each formula
/// costs, and whom from. The yield loss stands before them where the sheet wants it. Their totals are the
/// categories of `shown`.
void add_cost_tables(Sheet& sheet, OrderCost const& cost, ShownCosts const& shown,
                     Costing const& costing, Figures const& figures);
/// The same without the formulas.
void add_use_tables(Sheet& sheet, OrderCost const& cost, ShownCosts const& shown,
                    Costing const& costing, Figures const& figures);

/// Whose delivery is in no cost, as no usual order says how it is shared; empty where there is none.
std::string deliveries_apart(std::vector<IngredientUse const*> const& uses, Book const& book,
                             Figures const& figures);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/sheets/cost_sections.ipp>
#endif
