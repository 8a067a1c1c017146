#pragma once

#include <groat/sheets/cost_sheet.hpp>

#include <groat/base/linkage.hpp>
#include <groat/price/contents.hpp>
#include <groat/sheets/cautions.hpp>
#include <groat/sheets/cost_sections.hpp>
#include <groat/sheets/fit_remarks.hpp>
#include <groat/sheets/letterhead.hpp>
#include <groat/sheets/named_makeup.hpp>
#include <groat/sheets/price_makeup.hpp>
#include <groat/sheets/shape_cost.hpp>

#include <string>

namespace groat {

namespace cost_sheet_detail {

/// What is to be said of the run: that nobody states one, or that whole boxes are more than was stated.
inline std::string run_remark(ItemCost const& item, Book const& book) {
    Number const made = item.made();
    bool const in_pieces = book.formulas[item.formula].makes_pieces();
    if (item.run.said == StandardRun::Said::nobody)
        return fmt::format("No standard run is stated: it is costed as if {} were made at once. "
                           "Add '{}' to its formula{}.",
                           in_pieces ? decimal_at_most(made, 1) : mass_text(made),
                           in_pieces ? "standard run: 96" : "standard run: 2 kg",
                           in_pieces ? ", or to shop.yaml for all" : "");
    if (made == item.run.stated) return {};
    return fmt::format("The standard run of {} is rounded up to {}, as whole sale units are made.",
                       in_pieces ? decimal_at_most(item.run.stated, 1) : mass_text(item.run.stated),
                       in_pieces ? decimal_at_most(made, 1) : mass_text(made));
}

} // namespace cost_sheet_detail

GROAT_INLINE Sheet cost_sheet(ItemCost const& item, Costing const& costing) {
    Book const& book = costing.book();
    Figures const figures(book.shop);
    QuoteLine const& line = item.line;
    Batch const& batch = costing.formulary().with_losses[item.formula];
    Sheet sheet = sheet_for(book.shop, "cost", "maker", "Cost of " + line.title(book));
    FactsOf<sheet_shapes::cost::item> facts;
    facts.add("prices_on", "Prices of", Figures::day(costing.date()));
    bool const is_stated = item.run.said != StandardRun::Said::nobody;
    facts.add("run", is_stated ? "Standard run" : "Run", Figures::count(line.pieces));
    if (book.formulas[item.formula].portion)
        facts.add("portion", "Scaling weight of a piece", Figures::grams(batch.portion_grams));
    if (!batch.piece_grams.is_zero())
        facts.add("piece", "Finished weight of a piece", Figures::grams(batch.piece_grams));
    if (line.has_price) add_price_facts(facts, line, book.shop);
    sheet.sections.emplace_back(std::move(facts));
    if (std::string remark = cost_sheet_detail::run_remark(item, book); !remark.empty())
        sheet.sections.emplace_back(
            remarks_of<sheet_shapes::cost::run_remark>("", {std::move(remark)}));
    sheet.sections.emplace_back(named_makeup(item, book));
    ShownCosts const shown = shown_costs(item.cost, {}, decimal_step(figures.digits()));
    Table by_category = price_makeup<sheet_shapes::cost::costs>(line, book.shop, "The run", false);
    by_category.title = "The same by category";
    sheet.sections.emplace_back(std::move(by_category));
    sheet.sections.emplace_back(
        yield_loss_table(item.cost.loss, figures, shown.of(Category::ingredients)));
    Table made = formula_table(item.cost, book, costing.formulary());
    made.title = "How the run is made, from what is sold down to what is mixed first";
    sheet.sections.emplace_back(std::move(made));
    Remarks fit =
        fit_remarks(misfits_of(costing, item.cost.lines.front().sale), book, line.unit, figures);
    if (!fit.lines.empty()) sheet.sections.emplace_back(std::move(fit));
    add_use_tables(sheet, item.cost, shown, costing, figures);
    sheet.sections.emplace_back(
        maker_cautions(is_kept_cold(contents_of(book, item.formula).keeping)));
    return sheet;
}

} // namespace groat
