#pragma once

#include <groat/sheets/cost_sections.hpp>

#include <groat/base/apportion.hpp>
#include <groat/base/linkage.hpp>
#include <groat/sheets/offer_words.hpp>
#include <groat/sheets/shape_quote.hpp>
#include <groat/sheets/told.hpp>

#include <fmt/ranges.h>

#include <algorithm>
#include <array>
#include <string_view>

namespace groat {

GROAT_INLINE void add_cost_tables(Sheet& sheet, OrderCost const& cost, ShownCosts const& shown,
                                  Costing const& costing, Figures const& figures) {
    sheet.sections.emplace_back(formula_table(cost, costing.book(), costing.formulary()));
    add_use_tables(sheet, cost, shown, costing, figures);
}

GROAT_INLINE void add_use_tables(Sheet& sheet, OrderCost const& cost, ShownCosts const& shown,
                                 Costing const& costing, Figures const& figures) {
    Book const& book = costing.book();
    sheet.sections.emplace_back(
        ingredient_table(cost, book, figures, shown.of(Category::ingredients)));
    sheet.sections.emplace_back(supply_table(cost, book, figures, shown.supplies()));
    sheet.sections.emplace_back(labour_table(cost, figures, shown.of(Category::labour)));
    sheet.sections.emplace_back(oven_table(cost, book, figures, shown.of(Category::energy)));
    sheet.sections.emplace_back(overhead_table(cost, figures, shown.of(Category::overhead)));
    sheet.sections.emplace_back(formula_cost_table(cost, book, figures));
    if (Remarks left = leftover_remarks(cost, costing, figures); !left.lines.empty())
        sheet.sections.emplace_back(std::move(left));
    sheet.sections.emplace_back(purchase_table(cost, book, figures));
}

GROAT_INLINE Table yield_loss_table(YieldLoss const& loss, Figures const& figures,
                                    Total const& whole) {
    Table table = table_of<sheet_shapes::shared::yield_loss>(
        "Ingredients: what is eaten and what is lost",
        {{"part"}, {"cost", "Cost"}, {"share", "Of ingredients"}});
    constexpr std::string_view keys[] = {"in_the_piece", "trim", "process", "rounding"};
    constexpr std::string_view words[] = {"In the piece", "Trim (peel, stones, shells)",
                                          "Process loss (bowl, oven, breakage)",
                                          "Rounding up (whole pieces, batches, packs)"};
    std::vector<Cell> const costs = figures.column(loss.parts(), whole);
    std::array<Number, 4> const shares = loss.shares();
    std::vector<Number> const shown = round_together(shares, decimal_step(3));
    for (std::size_t i = 0; i < shares.size(); ++i)
        table.rows.push_back({std::string(keys[i]),
                              {std::string(words[i]), costs[i],
                               Figure{decimal(shown[i] * 100, 1), shares[i], "%"}}});
    table.rows.push_back({"total",
                          {std::string("Ingredient cost"), costs.back(),
                           Figures::percent(loss.total().is_zero() ? Number() : Number(1))},
                          Row::Kind::total});
    return table;
}

GROAT_INLINE Table ingredient_table(OrderCost const& cost, Book const& book, Figures const& figures,
                                    Total const& total) {
    Table table = table_of<sheet_shapes::shared::ingredients>(
        "Ingredients", {{"ingredient"},
                        {"usable", "Goes in"},
                        {"bought", "As bought"},
                        {"unit_cost", "AP price per kg"},
                        {"usable_cost", "Usable cost per kg"},
                        {"cost", "Cost"}});
    bool const is_all_by_mass = std::all_of(
        cost.ingredients.begin(), cost.ingredients.end(), [&](IngredientUse const& use) {
            return book.ingredients[use.ingredient].costed_by() == Dimension::mass;
        });
    if (!is_all_by_mass) {
        table.columns[3].title = "AP price";
        table.columns[4].title = "Usable cost";
        table.columns.insert(table.columns.begin() + 5, {"per", "Per", true});
    }
    std::vector<Money> costs;
    for (IngredientUse const& use : cost.ingredients) costs.push_back(use.cost);
    std::vector<Cell> const column = figures.column(costs, total);
    std::size_t at = 0;
    for (IngredientUse const& use : cost.ingredients) {
        std::string name = book.ingredients[use.ingredient].name;
        bool const is_by_packs =
            book.ingredients[use.ingredient].buys_whole_packs && use.is_charged_by_packs();
        if (is_by_packs) table.remark = "* charged by whole packs";
        Dimension const by = book.ingredients[use.ingredient].costed_by();
        PriceUnit const unit = price_unit(by);
        table.rows.push_back({name,
                              {name + (is_by_packs ? " *" : ""), Figures::amount_of(use.usable, by),
                               Figures::amount_of(use.bought, by),
                               figures.money(use.purchase->unit_cost * unit.size, unit.more),
                               figures.money(use.purchase->usable_cost() * unit.size, unit.more)}});
        if (!is_all_by_mass) table.rows.back().cells.emplace_back(std::string(unit.word));
        table.rows.back().cells.push_back(column[at++]);
    }
    table.rows.push_back(
        {"total", {std::string("All ingredients"), {}, {}, {}, {}}, Row::Kind::total});
    if (!is_all_by_mass) table.rows.back().cells.emplace_back();
    table.rows.back().cells.push_back(column.back());
    return table;
}

GROAT_INLINE Table supply_table(OrderCost const& cost, Book const& book, Figures const& figures,
                                Total const& total) {
    Table table = table_of<sheet_shapes::shared::supplies>(
        "Packaging and consumables",
        {{"supply"}, {"used", "Used"}, {"unit_cost", "Unit cost"}, {"cost", "Cost"}});
    std::vector<Money> costs;
    for (IngredientUse const& use : cost.supplies) costs.push_back(use.cost);
    std::vector<Cell> const column = figures.column(costs, total);
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

GROAT_INLINE Table formula_table(OrderCost const& cost, Book const& book,
                                 Formulary const& formulary) {
    Table table = table_of<sheet_shapes::shared::formulas>(
        "Formulas, from what is sold down to what is mixed first", {{"formula"},
                                                                    {"demand", "Wanted"},
                                                                    {"started", "Started"},
                                                                    {"takes", "Takes batches"},
                                                                    {"made", "Made batches"},
                                                                    {"mixes", "Mixes"},
                                                                    {"loads", "Oven loads"},
                                                                    {"leftover", "Left over"}});
    for (FormulaUse const& use : cost.formulas) {
        Formula const& formula = book.formulas[use.run.formula];
        Batch const& batch = formulary.with_losses[use.run.formula];
        bool const in_pieces = formula.makes_pieces();
        auto const amount = [&](Number const& number) {
            return in_pieces ? Figures::count(number, 1) : Figures::grams(number);
        };
        if (use.run.is_taken) {
            table.remark = "* taken from what is kept, at what it costs in a run of its own";
            table.rows.push_back(
                {formula.name,
                 {formula.name + " *", amount(use.run.demand), {}, {}, {}, {}, {}, {}}});
            continue;
        }
        table.rows.push_back(
            {formula.name,
             {formula.name, amount(use.run.demand),
              in_pieces ? Figures::count(use.run.started, 1) : Cell(),
              Figures::count(use.run.batches, 3), Figures::count(use.run.made, 3),
              formula.counts_mixes() ? Figures::count(use.run.mixes, 1) : Cell(),
              use.run.loads ? Figures::count(*use.run.loads, 1) : Cell(),
              use.run.leftover().is_zero() ? Cell() : amount(use.run.left_over(batch))}});
    }
    return table;
}

GROAT_INLINE Table formula_cost_table(OrderCost const& cost, Book const& book,
                                      Figures const& figures) {
    Table table = table_of<sheet_shapes::shared::formula_costs>(
        "What each formula costs, with all that goes into it", {{"formula"},
                                                                {"ingredients", "Ingredients"},
                                                                {"consumables", "Consumables"},
                                                                {"labour", "Labour"},
                                                                {"energy", "Energy"},
                                                                {"total", "Total"}});
    for (FormulaUse const& use : cost.formulas) {
        std::string const& name = book.formulas[use.run.formula].name;
        std::array<Money, 4> const parts{use.ingredients, use.consumables, use.labour, use.energy};
        std::vector<Cell> row = figures.column(parts);
        row.insert(row.begin(), name);
        table.rows.push_back({name, std::move(row)});
    }
    return table;
}

GROAT_INLINE Table labour_table(OrderCost const& cost, Figures const& figures, Total const& total) {
    Table table = table_of<sheet_shapes::shared::labour>("Labour", {{"task", "Task"},
                                                                    {"where", "For"},
                                                                    {"role", "Who"},
                                                                    {"count", "Times"},
                                                                    {"minutes", "Minutes"},
                                                                    {"cost", "Cost"}});
    std::vector<Money> costs;
    std::vector<Number> paid; // 0 for time that needs nobody
    for (TaskUse const& use : cost.tasks) {
        costs.push_back(use.cost);
        paid.push_back(use.paid_minutes());
    }
    std::vector<Number> const times = round_together(paid, decimal_step(1));
    std::vector<Cell> const column = figures.column(costs, total);
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
    table.rows.push_back({"total",
                          {std::string("All tasks"),
                           {},
                           {},
                           {},
                           Figures::minutes(cost.paid_minutes()),
                           column.back()},
                          Row::Kind::total});
    return table;
}

GROAT_INLINE Table oven_table(OrderCost const& cost, Book const& book, Figures const& figures,
                              Total const& total) {
    Table table =
        table_of<sheet_shapes::shared::ovens>("Ovens and energy", {{"oven"},
                                                                   {"loads", "Loads"},
                                                                   {"minutes", "Baking minutes"},
                                                                   {"preheat", "Preheating"},
                                                                   {"energy", "kWh"},
                                                                   {"cost", "Cost"}});
    std::vector<Money> costs;
    for (OvenUsed const& used : cost.ovens) costs.push_back(used.cost);
    std::vector<Cell> const column = figures.column(costs, total);
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

GROAT_INLINE Table overhead_table(OrderCost const& cost, Figures const& figures,
                                  Total const& total) {
    Table table = table_of<sheet_shapes::shared::overhead>("Overhead", {{"overhead"},
                                                                        {"driver", "Charged by"},
                                                                        {"rate", "Rate"},
                                                                        {"quantity", "Of"},
                                                                        {"cost", "Cost"}});
    constexpr std::string_view drivers[] = {"labour hour", "oven hour",   "order",
                                            "piece",       "ingredients", "prime cost"};
    std::vector<Money> costs;
    for (OverheadUse const& use : cost.overheads) costs.push_back(use.cost);
    std::vector<Cell> const column = figures.column(costs, total);
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

GROAT_INLINE std::string deliveries_apart(std::vector<IngredientUse const*> const& uses,
                                          Book const& book, Figures const& figures) {
    std::vector<std::string> names;
    for (std::size_t i = 0; i < book.suppliers.size(); ++i) {
        Supplier const& supplier = book.suppliers[i];
        bool const is_used = std::any_of(uses.begin(), uses.end(), [&](IngredientUse const* use) {
            return book.offers[use->purchase->offer].supplier == i;
        });
        if (is_used && supplier.has_delivery_apart())
            names.push_back(
                fmt::format("{} ({})", supplier.name, figures.amount(*supplier.delivery)));
    }
    if (names.empty()) return {};
    return fmt::format("In no cost: the delivery of {}. Their terms state no 'usual order'.",
                       fmt::join(names, ", "));
}

GROAT_INLINE Remarks leftover_remarks(OrderCost const& cost, Costing const& costing,
                                      Figures const& figures) {
    Remarks remarks =
        remarks_of<sheet_shapes::maker_quote::leftover>("Left over, and charged here", {});
    for (FormulaUse const& use : cost.formulas) {
        FormulaRun const& run = use.run;
        if (!run.leaves()) continue;
        Formula const& formula = costing.book().formulas[run.formula];
        Batch const& batch = costing.formulary().with_losses[run.formula];
        Number const left = run.left_over(batch);
        remarks.lines.push_back(fmt::format("{}: {} left over, {}.", in_sentence(formula.name),
                                            formula.makes_pieces()
                                                ? figures.number(left, 1) + " pieces' worth"
                                                : figures.mass(left),
                                            figures.amount(use.left_over())));
    }
    Money const total = cost.total.total();
    if (!remarks.lines.empty() && total.amount().is_positive())
        remarks.lines.push_back(fmt::format(
            "That is {} of the cost. If it is kept for others, write 'leftover: kept' into "
            "the formula, and whoever takes it pays for it.",
            figures.share(cost.left_over() / total)));
    return remarks;
}

GROAT_INLINE Table purchase_table(OrderCost const& cost, Book const& book, Figures const& figures) {
    Table table = table_of<sheet_shapes::shared::purchases>(
        "Bought from, and what whole packs would cost",
        {{"item"}, {"offer", "Offer in use"}, {"packs", "Packs"}, {"outlay", "Outlay"}});
    std::vector<Money> outlays;
    std::vector<IngredientUse const*> uses;
    for (auto const* list : {&cost.ingredients, &cost.supplies})
        for (IngredientUse const& use : *list) {
            uses.push_back(&use);
            outlays.push_back(use.outlay);
        }
    std::vector<Cell> const column = figures.column(outlays);
    for (std::size_t i = 0; i < uses.size(); ++i) {
        Ingredient const& ingredient = book.ingredients[uses[i]->ingredient];
        std::string const& name = ingredient.name;
        std::string words = purchase_words(*uses[i]->purchase, ingredient, book, figures);
        table.rows.push_back(
            {name, {name, std::move(words), Figures::count(Number(uses[i]->packs)), column[i]}});
        tell_offer<sheet_shapes::shared::purchases>(table.rows.back(),
                                                    book.offers[uses[i]->purchase->offer], book);
    }
    table.rows.push_back(
        {"total", {std::string("Outlay"), {}, {}, column.back()}, Row::Kind::total});
    table.remark = deliveries_apart(uses, book, figures);
    return table;
}

} // namespace groat
