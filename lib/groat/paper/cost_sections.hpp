/// The maker's tables of what an order or an item costs. Every column of money adds up as printed.
#pragma once

#include <groat/paper/figures.hpp>
#include <groat/paper/offer_words.hpp>
#include <groat/trade/line_price.hpp>

#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace groat {

/// The ingredient cost as what is eaten and what is lost on the way.
[[nodiscard]] Table yield_loss_table(YieldLoss const& loss, Figures const& figures);

[[nodiscard]] Table ingredient_table(OrderCost const& cost, Book const& book,
                                     Figures const& figures);
[[nodiscard]] Table supply_table(OrderCost const& cost, Book const& book, Figures const& figures);
[[nodiscard]] Table formula_table(OrderCost const& cost, Book const& book,
                                  Formulary const& formulary);
[[nodiscard]] Table formula_cost_table(OrderCost const& cost, Book const& book,
                                       Figures const& figures);
[[nodiscard]] Table labour_table(OrderCost const& cost, Figures const& figures);
[[nodiscard]] Table oven_table(OrderCost const& cost, Book const& book, Figures const& figures);
[[nodiscard]] Table overhead_table(OrderCost const& cost, Figures const& figures);
/// From whom each thing is reckoned to be bought, and why.
[[nodiscard]] Table purchase_table(OrderCost const& cost, Book const& book, Figures const& figures);

/// All of these below one another: formulas, ingredients, supplies, hands, ovens, overhead, what each formula
/// costs, and whom from. The yield loss stands before them where the sheet wants it.
inline void add_cost_tables(Sheet& sheet, OrderCost const& cost, Costing const& costing,
                            Figures const& figures);

// ---------------------------------------------------------------------------------------------------

inline void add_cost_tables(Sheet& sheet, OrderCost const& cost, Costing const& costing,
                            Figures const& figures) {
    Book const& book = costing.book();
    sheet.sections.emplace_back(formula_table(cost, book, costing.formulary()));
    sheet.sections.emplace_back(ingredient_table(cost, book, figures));
    sheet.sections.emplace_back(supply_table(cost, book, figures));
    sheet.sections.emplace_back(labour_table(cost, figures));
    sheet.sections.emplace_back(oven_table(cost, book, figures));
    sheet.sections.emplace_back(overhead_table(cost, figures));
    sheet.sections.emplace_back(formula_cost_table(cost, book, figures));
    sheet.sections.emplace_back(purchase_table(cost, book, figures));
}

inline Table yield_loss_table(YieldLoss const& loss, Figures const& figures) {
    Table table{"yield_loss",
                "Ingredients: what is eaten and what is lost",
                {{"part", "", true}, {"cost", "Cost"}, {"share", "Of ingredients"}},
                {},
                {}};
    std::array<Money, 4> const parts{loss.in_the_piece, loss.trim, loss.process, loss.rounding};
    constexpr std::string_view keys[] = {"in_the_piece", "trim", "process", "rounding"};
    constexpr std::string_view words[] = {"In the piece", "Trim (peel, stones, shells)",
                                          "Process loss (bowl, oven, breakage)",
                                          "Rounding up (whole pieces, batches, packs)"};
    std::vector<Cell> const costs = figures.column(parts);
    Money const total = loss.total();
    std::vector<Number> shares;
    for (Money const& part : parts) shares.push_back(total.is_zero() ? Number() : part / total);
    std::vector<Number> const shown = round_together(shares, decimal_step(3));
    for (std::size_t i = 0; i < parts.size(); ++i)
        table.rows.push_back({std::string(keys[i]),
                              {std::string(words[i]), costs[i],
                               Figure{decimal(shown[i] * 100, 1), shares[i], "%"}}});
    table.rows.push_back({"total",
                          {std::string("Ingredient cost"), costs.back(),
                           Figures::percent(total.is_zero() ? Number() : Number(1))},
                          Row::Kind::total});
    return table;
}

inline Table ingredient_table(OrderCost const& cost, Book const& book, Figures const& figures) {
    Table table{"ingredients",
                "Ingredients",
                {{"ingredient", "", true},
                 {"usable", "Goes in"},
                 {"bought", "As bought"},
                 {"unit_cost", "Price per kg"},
                 {"usable_cost", "Usable per kg"},
                 {"cost", "Cost"}},
                {},
                {}};
    std::vector<Money> costs;
    for (IngredientUse const& use : cost.ingredients) costs.push_back(use.cost);
    for (FormulaUse const& use : cost.formulas)
        if (!use.credit.is_zero()) costs.push_back(-use.credit);
    std::vector<Cell> const column = figures.column(costs);
    std::size_t at = 0;
    for (IngredientUse const& use : cost.ingredients) {
        std::string name = book.ingredients[use.ingredient].name;
        if (book.ingredients[use.ingredient].buys_whole_packs)
            table.remark = "* charged by whole packs";
        table.rows.push_back(
            {name,
             {name + (book.ingredients[use.ingredient].buys_whole_packs ? " *" : ""),
              Figures::grams(use.usable), Figures::grams(use.bought),
              figures.money(use.purchase->unit_cost * 1000),
              figures.money(use.purchase->usable_cost() * 1000), column[at++]}});
    }
    for (FormulaUse const& use : cost.formulas)
        if (!use.credit.is_zero())
            table.rows.push_back({"kept " + book.formulas[use.run.formula].name,
                                  {"Kept for later: " + book.formulas[use.run.formula].name,
                                   {},
                                   {},
                                   {},
                                   {},
                                   column[at++]}});
    table.rows.push_back({"total",
                          {std::string("All ingredients"), {}, {}, {}, {}, column.back()},
                          Row::Kind::total});
    return table;
}

inline Table supply_table(OrderCost const& cost, Book const& book, Figures const& figures) {
    Table table{
        "supplies",
        "Packaging and consumables",
        {{"supply", "", true}, {"used", "Used"}, {"unit_cost", "Price each"}, {"cost", "Cost"}},
        {},
        {}};
    std::vector<Money> costs;
    for (IngredientUse const& use : cost.supplies) costs.push_back(use.cost);
    std::vector<Cell> const column = figures.column(costs);
    for (std::size_t i = 0; i < cost.supplies.size(); ++i) {
        IngredientUse const& use = cost.supplies[i];
        std::string const& name = book.ingredients[use.ingredient].name;
        table.rows.push_back({name,
                              {name, Figures::count(use.bought),
                               figures.money(use.purchase->unit_cost, 2), column[i]}});
    }
    table.rows.push_back(
        {"total", {std::string("All supplies"), {}, {}, column.back()}, Row::Kind::total});
    return table;
}

inline Table formula_table(OrderCost const& cost, Book const& book, Formulary const& formulary) {
    Table table{"formulas",
                "Formulas, from what is sold down to what is mixed first",
                {{"formula", "", true},
                 {"demand", "Wanted"},
                 {"started", "Started"},
                 {"takes", "Takes batches"},
                 {"made", "Made batches"},
                 {"mixes", "Mixes"},
                 {"loads", "Oven loads"},
                 {"leftover", "Left over"}},
                {},
                {}};
    for (FormulaUse const& use : cost.formulas) {
        Formula const& formula = book.formulas[use.run.formula];
        Batch const& batch = formulary.with_losses[use.run.formula];
        bool const in_pieces = formula.makes_pieces();
        auto const amount = [&](Number const& number) {
            return in_pieces ? Figures::count(number, 1) : Figures::grams(number);
        };
        table.rows.push_back(
            {formula.name,
             {formula.name, amount(use.run.demand),
              in_pieces ? Figures::count(use.run.started, 1) : Cell(),
              Figures::count(use.run.batches, 3), Figures::count(use.run.made, 3),
              formula.counts_mixes() ? Figures::count(use.run.mixes, 1) : Cell(),
              use.run.loads ? Figures::count(*use.run.loads, 1) : Cell(),
              use.run.leftover().is_zero()
                  ? Cell()
                  : amount(use.run.leftover() * (in_pieces ? batch.pieces : batch.mass_out))}});
    }
    return table;
}

inline Table formula_cost_table(OrderCost const& cost, Book const& book, Figures const& figures) {
    Table table{"formula_costs",
                "What each formula costs, with all that goes into it",
                {{"formula", "", true},
                 {"ingredients", "Ingredients"},
                 {"consumables", "Consumables"},
                 {"labour", "Labour"},
                 {"energy", "Energy"},
                 {"total", "Together"}},
                {},
                {}};
    for (FormulaUse const& use : cost.formulas) {
        std::string const& name = book.formulas[use.run.formula].name;
        std::array<Money, 4> const parts{use.ingredients, use.consumables, use.labour, use.energy};
        std::vector<Cell> row = figures.column(parts);
        row.insert(row.begin(), name);
        table.rows.push_back({name, std::move(row)});
    }
    return table;
}

inline Table labour_table(OrderCost const& cost, Figures const& figures) {
    Table table{"labour",
                "Hands",
                {{"task", "Task", true},
                 {"where", "For", true},
                 {"role", "Who", true},
                 {"count", "Times"},
                 {"minutes", "Minutes"},
                 {"cost", "Cost"}},
                {},
                {}};
    std::vector<Money> costs;
    Number minutes;
    std::vector<Number> paid; // 0 for time that needs nobody
    for (TaskUse const& use : cost.tasks) {
        costs.push_back(use.cost);
        paid.push_back(use.task->is_unattended ? Number() : use.minutes);
        minutes += paid.back();
    }
    std::vector<Number> const times = round_together(paid, decimal_step(1));
    std::vector<Cell> const column = figures.column(costs);
    for (std::size_t i = 0; i < cost.tasks.size(); ++i) {
        TaskUse const& use = cost.tasks[i];
        table.rows.push_back(
            {{},
             {use.task->name, use.where,
              use.task->is_unattended ? std::string("nobody") : use.task->role.name,
              Figures::count(use.count, 2),
              use.task->is_unattended ? Figures::minutes(use.minutes)
                                      : Figure{decimal(times[i], 1), use.minutes, "min"},
              column[i]}});
    }
    table.rows.push_back(
        {"total",
         {std::string("All hands"), {}, {}, {}, Figures::minutes(minutes), column.back()},
         Row::Kind::total});
    return table;
}

inline Table oven_table(OrderCost const& cost, Book const& book, Figures const& figures) {
    Table table{"ovens",
                "Ovens and energy",
                {{"oven", "", true},
                 {"loads", "Loads"},
                 {"minutes", "Baking minutes"},
                 {"preheat", "Preheating"},
                 {"energy", "kWh"},
                 {"cost", "Cost"}},
                {},
                {}};
    std::vector<Money> costs;
    for (OvenUsed const& used : cost.ovens) costs.push_back(used.cost);
    std::vector<Cell> const column = figures.column(costs);
    for (std::size_t i = 0; i < cost.ovens.size(); ++i) {
        OvenUsed const& used = cost.ovens[i];
        std::string const& name = book.shop.ovens[used.oven].name;
        table.rows.push_back(
            {name,
             {name, Figures::count(used.loads, 1), Figures::minutes(used.minutes),
              Figures::minutes(used.preheat),
              Figure{decimal(used.kilowatt_hours, 2), used.kilowatt_hours, "kWh"}, column[i]}});
    }
    table.rows.push_back(
        {"total", {std::string("All energy"), {}, {}, {}, {}, column.back()}, Row::Kind::total});
    return table;
}

inline Table overhead_table(OrderCost const& cost, Figures const& figures) {
    Table table{"overhead",
                "Overhead",
                {{"overhead", "", true},
                 {"driver", "Reckoned by", true},
                 {"rate", "Rate"},
                 {"quantity", "Of"},
                 {"cost", "Cost"}},
                {},
                {}};
    constexpr std::string_view drivers[] = {"labour hour", "oven hour",   "order",
                                            "piece",       "ingredients", "prime cost"};
    std::vector<Money> costs;
    for (OverheadUse const& use : cost.overheads) costs.push_back(use.cost);
    std::vector<Cell> const column = figures.column(costs);
    for (std::size_t i = 0; i < cost.overheads.size(); ++i) {
        OverheadUse const& use = cost.overheads[i];
        auto const driver = use.overhead->driver;
        bool const is_share =
            driver == Overhead::Driver::ingredients || driver == Overhead::Driver::prime_cost;
        table.rows.push_back(
            {use.overhead->name,
             {use.overhead->name, std::string(drivers[static_cast<std::size_t>(driver)]),
              is_share ? Figures::percent(use.overhead->share.value(), 2)
                       : figures.money(use.overhead->amount),
              is_share ? figures.money(use.base) : Figures::count(use.quantity, 2), column[i]}});
    }
    table.rows.push_back(
        {"total", {std::string("All overhead"), {}, {}, {}, column.back()}, Row::Kind::total});
    return table;
}

inline Table purchase_table(OrderCost const& cost, Book const& book, Figures const& figures) {
    Table table{"purchases",
                "Bought from, and what whole packs would cost",
                {{"item", "", true},
                 {"offer", "Offer reckoned with", true},
                 {"packs", "Packs"},
                 {"outlay", "Outlay"}},
                {},
                {}};
    std::vector<Money> outlays;
    std::vector<IngredientUse const*> uses;
    for (auto const* list : {&cost.ingredients, &cost.supplies})
        for (IngredientUse const& use : *list) {
            uses.push_back(&use);
            outlays.push_back(use.outlay);
        }
    std::vector<Cell> const column = figures.column(outlays);
    for (std::size_t i = 0; i < uses.size(); ++i) {
        Purchase const& purchase = *uses[i]->purchase;
        Offer const& offer = book.offers[purchase.offer];
        std::string const& name = book.ingredients[uses[i]->ingredient].name;
        std::string words =
            fmt::format("{} at {}", offer_words(offer, book), figures.amount(purchase.pack_cost));
        if (offer.from) words += fmt::format(" since {}", figures.short_date(*offer.from));
        if (purchase.reason == Purchase::Reason::cheapest)
            words += fmt::format(" (cheapest of {})", purchase.considered);
        if (purchase.reason == Purchase::Reason::preferred) words += " (preferred)";
        table.rows.push_back(
            {name, {name, std::move(words), Figures::count(Number(uses[i]->packs)), column[i]}});
    }
    table.rows.push_back(
        {"total", {std::string("Outlay"), {}, {}, column.back()}, Row::Kind::total});
    return table;
}

} // namespace groat
