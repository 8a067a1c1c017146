/// What one item costs, for the maker.
#pragma once

#include <groat/paper/letterhead.hpp>
#include <groat/paper/named_makeup.hpp>
#include <groat/paper/quote_sheet.hpp>
#include <groat/trade/item_cost.hpp>

#include <string>

namespace groat {

/// Cost by category per piece, sale unit and standard run, yield loss, price and what it earns, and what
/// everything was reckoned from.
[[nodiscard]] Sheet cost_sheet(ItemCost const& item, Costing const& costing);

// ---------------------------------------------------------------------------------------------------

inline Sheet cost_sheet(ItemCost const& item, Costing const& costing) {
    Book const& book = costing.book();
    Figures const figures(book.shop);
    QuoteLine const& line = item.line;
    Batch const& batch = costing.formulary().with_losses[item.formula];
    Sheet sheet = sheet_for(book.shop, "cost", "maker", "Cost of " + line.title(book));
    Facts facts{"item", "", {}};
    auto const add = [&](std::string key, std::string label, Cell value) {
        if (!std::holds_alternative<std::monostate>(value))
            facts.facts.push_back({std::move(key), std::move(label), std::move(value)});
    };
    add("prices_on", "Prices of", Figures::day(costing.date()));
    add("run", item.has_run ? "Standard run" : "Run", Figures::count(line.pieces));
    if (book.formulas[item.formula].portion)
        add("portion", "Scaling weight of a piece", Figures::grams(batch.portion_grams));
    if (!batch.piece_grams.is_zero())
        add("piece", "Finished weight of a piece", Figures::grams(batch.piece_grams));
    if (line.has_price)
        for (Fact& fact : price_facts(line, book.shop)) facts.facts.push_back(std::move(fact));
    sheet.sections.emplace_back(std::move(facts));
    if (!item.has_run)
        sheet.sections.emplace_back(Remarks{"run_remark",
                                            "",
                                            {"No standard run is stated: this one alone bears what "
                                             "is done once. Add 'standard run: 96' to its "
                                             "formula, or to shop.yaml for all."}});
    sheet.sections.emplace_back(named_makeup(item, book));
    Table by_category = price_makeup(line, book.shop, "costs", "The run", false);
    by_category.title = "The same by category";
    sheet.sections.emplace_back(std::move(by_category));
    sheet.sections.emplace_back(yield_loss_table(item.cost.loss, figures));
    add_cost_tables(sheet, item.cost, costing, figures);
    sheet.sections.emplace_back(
        maker_cautions(is_kept_cold(contents_of(book, item.formula).keeping)));
    return sheet;
}

} // namespace groat
