#pragma once

#include <groat/sheets/make_sheet.hpp>

#include <groat/base/apportion.hpp>
#include <groat/base/linkage.hpp>
#include <groat/plan/shelf.hpp>
#include <groat/price/contents.hpp>
#include <groat/price/line_price.hpp>
#include <groat/sheets/cautions.hpp>
#include <groat/sheets/letterhead.hpp>
#include <groat/sheets/measure_words.hpp>
#include <groat/sheets/shape_make.hpp>
#include <groat/sheets/told.hpp>
#include <groat/sheets/work_sections.hpp>
#include <groat/solve/purchase_to_market.hpp>

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

namespace groat {

namespace make_sheet_detail {

class Bench {
public:
    Bench(Production const& plan, Costing const& costing, Buying const* buying)
        : plan_(plan), book_(costing.book()), shop_(book_.shop), figures_(shop_), buying_(buying) {}

    Sheet draw() {
        Sheet sheet = sheet_for(shop_, "make", "maker", title());
        sheet.letterhead = {shop_.name};
        sheet.sections.emplace_back(orders());
        if (!plan_.taken.empty()) sheet.sections.emplace_back(from_stock());
        if (plan_.works.empty())
            sheet.sections.emplace_back(remarks_of<sheet_shapes::make::nothing>(
                "", {"Nothing is to be made: all of it is there."}));
        else
            sheet.sections.emplace_back(works());
        for (std::size_t i = 0; i < plan_.works.size(); ++i) {
            sheet.sections.emplace_back(work_facts(plan_.works[i], i + 1, book_));
            sheet.sections.emplace_back(work_lines(plan_.works[i], book_));
        }
        if (!plan_.ovens.empty()) sheet.sections.emplace_back(ovens());
        if (!plan_.tasks.empty()) sheet.sections.emplace_back(tasks());
        if (!plan_.roles.empty()) sheet.sections.emplace_back(roles());
        if (!plan_.ingredients.empty()) sheet.sections.emplace_back(store());
        if (!plan_.supplies.empty()) sheet.sections.emplace_back(supplies());
        sheet.sections.emplace_back(packing());
        add_cautions(sheet);
        return sheet;
    }

private:
    [[nodiscard]] std::string title() const {
        std::string ids;
        for (Order const* const order : plan_.orders) {
            if (!ids.empty()) ids += order == plan_.orders.back() ? " and " : ", ";
            ids += order->id;
        }
        return "To make for " + ids;
    }

    [[nodiscard]] Table orders() const {
        bool const has_notes =
            std::any_of(plan_.orders.begin(), plan_.orders.end(),
                        [](Order const* order) { return !order->notes.empty(); });
        Table table = table_of<sheet_shapes::make::orders>(
            "", {{"order", "Order"}, {"client", "For"}, {"due", "Wanted for"}});
        if (has_notes) add_column<sheet_shapes::make::orders>(table, {"notes", "Notes"});
        for (Order const* const order : plan_.orders) {
            std::vector<Cell> row{order->id, order->client,
                                  order->due ? Figures::day(*order->due) : Cell()};
            if (has_notes) row.emplace_back(order->notes);
            table.rows.push_back({order->id, std::move(row)});
        }
        return table;
    }

    /// A column whose printed figures add up to the printed sum, which comes last.
    static std::vector<Cell> with_total(std::vector<Number> const& figures, unsigned places,
                                        std::string const& unit) {
        std::vector<Number> const rounded = round_together(figures, decimal_step(places));
        std::vector<Cell> cells;
        Number sum;
        Number rounded_sum;
        for (std::size_t i = 0; i < figures.size(); ++i) {
            cells.push_back(Figure{decimal(rounded[i], places), figures[i], unit});
            sum += figures[i];
            rounded_sum += rounded[i];
        }
        cells.push_back(Figure{decimal(rounded_sum, places), sum, unit});
        return cells;
    }

    [[nodiscard]] Formula const& formula_of(Work const& work) const {
        return book_.formulas[work.run.formula];
    }

    /// Pieces, or grams of what is made by mass.
    [[nodiscard]] Cell amount(Work const& work, Number const& number) const {
        return formula_of(work).makes_pieces() ? Figures::count(number, 1) : Figures::grams(number);
    }

    /// What is there already, packed or loose.
    [[nodiscard]] Table from_stock() const {
        Table table = table_of<sheet_shapes::make::from_stock>("From stock first",
                                                               {{"item"},
                                                                {"wanted", "Wanted"},
                                                                {"taken", "Taken from stock"},
                                                                {"to_make", "Still to make"}});
        for (TakenFromStock const& each : plan_.taken) {
            Formula const& formula = book_.formulas[each.formula];
            bool const is_counted = each.unit != nullptr || formula.makes_pieces();
            auto const cell = [&](Number const& number) {
                return is_counted ? Figures::count(number) : Figures::grams(number);
            };
            std::string item = formula.name;
            if (each.unit != nullptr) item += ", " + each.unit->name;
            table.rows.push_back(
                {item,
                 {in_sentence(item), cell(each.wanted), cell(each.taken), cell(each.to_make())}});
        }
        return table;
    }

    [[nodiscard]] Table works() const {
        Table table =
            table_of<sheet_shapes::make::works>("In this order", {{"formula"},
                                                                  {"wanted", "Wanted"},
                                                                  {"start", "Pieces to start"},
                                                                  {"batches", "Batches"},
                                                                  {"mixes", "Mixes"},
                                                                  {"left", "Left over"}});
        for (std::size_t i = 0; i < plan_.works.size(); ++i) {
            Work const& work = plan_.works[i];
            std::string const& name = formula_of(work).name;
            table.rows.push_back(
                {name,
                 {fmt::format("{}. {}", i + 1, in_sentence(name)), amount(work, work.run.to_make()),
                  formula_of(work).makes_pieces() ? Figures::count(work.run.started, 1) : Cell(),
                  Figures::count(work.run.made, 3),
                  work.mixes.empty() ? Cell() : Figures::count(work.run.mixes, 1),
                  work.leftover().is_zero() ? Cell() : amount(work, work.leftover())}});
        }
        return table;
    }

    [[nodiscard]] Table ovens() const {
        Table table = table_of<sheet_shapes::make::ovens>("Ovens", {{"for"},
                                                                    {"holds", "A load holds"},
                                                                    {"loads", "Loads"},
                                                                    {"each", "Minutes a load"},
                                                                    {"minutes", "Minutes"}});
        table.columns.push_back(bar_column());
        for (OvenTime const& time : plan_.ovens) {
            std::string const name = in_sentence(shop_.ovens[time.oven].name);
            std::vector<Row> rows;
            std::vector<Number> minutes;
            if (!time.preheat.is_zero()) {
                rows.push_back({"preheat " + name, {name + ": preheat", {}, {}, {}}});
                minutes.push_back(time.preheat);
            }
            for (Work const& work : plan_.works) {
                Formula const& formula = formula_of(work);
                if (!formula.oven || formula.oven->oven.index != time.oven || !work.run.loads)
                    continue;
                rows.push_back(
                    {formula.name,
                     {name + ": " + formula.name, amount(work, formula.oven->holds.amount),
                      Figures::count(*work.run.loads), Figures::minutes(formula.oven->minutes)}});
                minutes.push_back(work.baking(formula));
            }
            rows.push_back(
                {shop_.ovens[time.oven].name,
                 {fmt::format("{}, in all {} hours", name, figures_.fixed(time.minutes() / 60, 1)),
                  {},
                  Figures::count(time.loads),
                  {}},
                 Row::Kind::total});
            std::vector<Cell> const column = with_total(minutes, 1, "min");
            for (std::size_t i = 0; i < rows.size(); ++i) {
                rows[i].cells.push_back(column[i]);
                rows[i].cells.push_back(i < minutes.size() ? column[i] : Cell());
                table.rows.push_back(std::move(rows[i]));
            }
        }
        return table;
    }

    [[nodiscard]] Table tasks() const {
        Table table = table_of<sheet_shapes::make::labour>("Labour", {{"task", "Task"},
                                                                      {"where", "For"},
                                                                      {"role", "Who"},
                                                                      {"count", "Times"},
                                                                      {"minutes", "Minutes"}});
        table.columns.push_back(bar_column());
        bool has_waiting = false;
        for (WorkTask const& task : plan_.tasks) {
            has_waiting = has_waiting || task.task->is_unattended;
            table.rows.push_back(
                {{},
                 {in_sentence(task.task->name), task.where,
                  task.task->is_unattended ? std::string("nobody") : task.task->role.name,
                  Figures::count(task.count), Figures::minutes(task.minutes()),
                  task.task->is_unattended ? Cell() : Figures::minutes(task.minutes())}});
        }
        if (has_waiting)
            table.remark = "What needs nobody passes by itself; it is in no one's hours.";
        return table;
    }

    [[nodiscard]] Table roles() const {
        Table table = table_of<sheet_shapes::make::hours>(
            "Hours by role", {{"role"}, {"minutes", "Minutes"}, {"hours", "Hours"}});
        table.columns.push_back(bar_column());
        std::vector<Number> minutes;
        std::vector<Number> hours;
        for (RoleTime const& time : plan_.roles) {
            minutes.push_back(time.minutes);
            hours.push_back(time.minutes / 60);
        }
        std::vector<Cell> const in_minutes = with_total(minutes, 1, "min");
        std::vector<Cell> const in_hours = with_total(hours, 2, "h");
        for (std::size_t i = 0; i < plan_.roles.size(); ++i) {
            std::string const& name = shop_.roles[plan_.roles[i].role].name;
            table.rows.push_back(
                {name, {in_sentence(name), in_minutes[i], in_hours[i], in_hours[i]}});
        }
        table.rows.push_back({"total",
                              {std::string("All roles"), in_minutes.back(), in_hours.back(), {}},
                              Row::Kind::total});
        return table;
    }

    /// "600 g from the shelf, 2 × 5 lb", as the list of what to buy has it.
    [[nodiscard]] std::string bought_packs(IngredientUse const& use) const {
        std::string words;
        auto const add = [&](std::string const& more) {
            words += (words.empty() ? "" : ", ") + more;
        };
        for (Need const& need : buying_->needs) {
            if (need.ingredient() != use.ingredient) continue;
            if (need.taken().is_positive())
                add(figures_.words_of(need.taken(), book_.ingredients[use.ingredient].costed_by()) +
                    " from the shelf");
        }
        for (Basket const& basket : buying_->baskets)
            for (PackLine const& line : basket.lines)
                if (book_.offers[line.offer].item.index == use.ingredient)
                    add(fmt::format("{} × {}", figures_.number(Number(line.packs)),
                                    book_.offers[line.offer].pack_text));
        return words;
    }

    [[nodiscard]] std::string pack_count(IngredientUse const& use) const {
        if (buying_ != nullptr) return bought_packs(use);
        return fmt::format("{} of {}", whole_words(use.bought / use.purchase->content, figures_),
                           book_.offers[use.purchase->offer].pack_text);
    }

    [[nodiscard]] Table store() const {
        Table table =
            table_of<sheet_shapes::make::store>("From the store", {{"ingredient"},
                                                                   {"usable", "Goes in, g"},
                                                                   {"bought", "Take, g"},
                                                                   {"count", "Count"},
                                                                   {"packs", "Packs"}});
        for (IngredientUse const& use : plan_.ingredients) {
            Ingredient const& ingredient = book_.ingredients[use.ingredient];
            table.rows.push_back(
                {ingredient.name,
                 {in_sentence(ingredient.name), scale_amount(use.usable, ingredient.costed_by()),
                  scale_amount(use.bought, ingredient.costed_by()),
                  ingredient.grams_each
                      ? Cell(whole_words(use.bought / *ingredient.grams_each, figures_))
                      : Cell(),
                  ingredient.is_metered ? "metered" : pack_count(use)}});
        }
        return table;
    }

    [[nodiscard]] Table supplies() const {
        Table table = table_of<sheet_shapes::make::supplies>(
            "Supplies", {{"supply"}, {"count", "Count"}, {"packs", "Packs"}});
        for (IngredientUse const& use : plan_.supplies) {
            std::string const& name = book_.ingredients[use.ingredient].name;
            table.rows.push_back(
                {name, {in_sentence(name), Figures::count(use.bought), pack_count(use)}});
        }
        return table;
    }

    [[nodiscard]] Table packing() const {
        bool const has_ready =
            std::any_of(plan_.packed.begin(), plan_.packed.end(),
                        [](Packed const& each) { return each.ready.is_positive(); });
        Table table = table_of<sheet_shapes::make::packing>(
            "To pack", {{"item"},
                        {"count", has_ready ? "To pack" : "Count"},
                        {"with", "With"},
                        {"order", "For order"}});
        if (has_ready) add_column<sheet_shapes::make::packing>(table, {"ready", "Packed already"});
        for (Packed const& packed : plan_.packed) {
            std::string item = in_sentence(book_.formulas[packed.sale.formula].name);
            if (packed.sale.unit != nullptr) item += ", " + packed.sale.unit->name;
            std::string with;
            for (auto const& [supply, count] : packed.packing)
                with += fmt::format("{}{} × {}", with.empty() ? "" : ", ", figures_.number(count),
                                    book_.ingredients[supply].name);
            table.rows.push_back({packed.order->id + ' ' + item,
                                  {item, Figures::count(packed.to_pack()),
                                   with.empty() ? Cell() : Cell(with), packed.order->id}});
            if (has_ready) table.rows.back().cells.push_back(Figures::count(packed.ready));
            tell_sale<sheet_shapes::make::packing>(table.rows.back(), packed.sale.formula,
                                                   packed.sale.unit, book_);
        }
        return table;
    }

    void add_cautions(Sheet& sheet) const {
        AllergenSet allergens;
        bool has_cold = false;
        for (Packed const& packed : plan_.packed) {
            Contents const contents = contents_of(book_, packed.sale.formula);
            allergens.insert(contents.allergens.begin(), contents.allergens.end());
            has_cold = has_cold || is_kept_cold(contents.keeping);
        }
        Remarks cautions = remarks_of<sheet_shapes::shared::cautions>("Mind", {});
        if (!allergens.empty())
            cautions.lines.push_back(
                fmt::format("What is made here {}.", allergen_words(allergens)));
        cautions.lines.emplace_back(maker_allergen_caution);
        if (has_cold) cautions.lines.emplace_back(maker_cold_caution);
        sheet.sections.emplace_back(std::move(cautions));
    }

    Production const& plan_;
    Book const& book_;
    Shop const& shop_;
    Figures figures_;
    Buying const* buying_;
};

} // namespace make_sheet_detail

GROAT_INLINE Sheet make_sheet(Production const& plan, Costing const& costing,
                              Buying const* buying) {
    return make_sheet_detail::Bench(plan, costing, buying).draw();
}

} // namespace groat
