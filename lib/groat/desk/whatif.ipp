#pragma once

#include <groat/desk/whatif.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>
#include <groat/desk/answer.hpp>
#include <groat/desk/lookup.hpp>
#include <groat/price/quote.hpp>
#include <groat/sheets/whatif_sheet.hpp>

#include <algorithm>
#include <utility>

namespace groat::desk {

namespace whatif_detail {

/// Adds the changes of a scenario; what of them cannot be made is among `found` then.
inline Result<bool> add_scenario(std::vector<Change>& changes, std::string const& name,
                                 Costing const& costing, Diagnostics& found) {
    auto const& all = costing.book().scenarios;
    auto const scenario = std::find_if(all.begin(), all.end(),
                                       [&](Scenario const& each) { return each.name == name; });
    if (scenario == all.end())
        return nothing_called("scenario", name, names_of(all), costing.book(),
                              {BookPart::scenarios});
    bool is_well = true;
    for (Scenario::Change const& each : scenario->changes) {
        auto change = parse_change(each.text, costing);
        if (change)
            changes.push_back(*std::move(change));
        else
            found.error(each.where, change.error());
        is_well = is_well && change.has_value();
    }
    if (!is_well) return as_found();
    return true;
}

} // namespace whatif_detail

GROAT_INLINE Result<Subject> subject_called(Book const& book, std::string const& name,
                                            std::string const& sale_unit) {
    // An order goes before a menu, and that before an item: also one that was taken out.
    if (book.doubts.names(BookPart::orders, name) || book.doubts.names(BookPart::menus, name))
        return as_found();
    if (Order const* const order = book.find_order(name))
        return Subject{calculation_of_order(order->id), "order " + order->id,
                       pricing_date(*order, companions_of(*order, book)), order->lines.size() > 1};
    if (Menu const* const menu = book.find_menu(name))
        return Subject{calculation_of_menu(menu->name), "menu " + menu->name};
    if (book.find_formula(name) != nullptr) {
        auto const item = find_item(book, name, sale_unit);
        if (!item) return Refused(item.error());
        std::string const unit = item->unit == nullptr ? std::string() : item->unit->name;
        return Subject{calculation_of_item(name, unit), name + (unit.empty() ? "" : ", " + unit)};
    }
    std::vector<std::string> names = names_of(book.formulas);
    for (Order const& order : book.orders) names.push_back(order.id);
    for (Menu const& menu : book.menus) names.push_back(menu.name);
    return nothing_called("order, menu or formula", name, names, book,
                          {BookPart::orders, BookPart::menus, BookPart::formulas});
}

GROAT_INLINE std::vector<Change> changes_said(std::vector<std::string> const& texts,
                                              Costing const& costing, std::vector<Flaw>& flaws) {
    std::vector<Change> changes;
    for (std::string const& text : texts) {
        auto change = parse_change(text, costing);
        if (change) {
            changes.push_back(*std::move(change));
            continue;
        }
        Flaw flaw = change.error();
        flaw.what = fmt::format("--change '{}': {}", shortened(text, 60), flaw.what);
        flaws.push_back(std::move(flaw));
    }
    return changes;
}

GROAT_INLINE Result<Sheet> changed_sheet(Costing const& costing, Subject const& subject,
                                         std::vector<Change> changes, std::string const& scenario,
                                         Diagnostics& found) {
    if (!scenario.empty())
        if (auto const added = whatif_detail::add_scenario(changes, scenario, costing, found);
            !added)
            return Refused(added.error());
    auto const trial = what_if(costing, std::move(changes), subject.calculation, found);
    if (!trial) return as_found();
    return whatif_sheet(*trial, subject.words, costing.book());
}

GROAT_INLINE Result<Sheet> limit_sheet(Costing const& costing, Subject const& subject,
                                       std::string const& ingredient, Diagnostics& found) {
    Book const& book = costing.book();
    if (subject.is_of_many_lines)
        return refuse({},
                      "--limit is for an item or a menu: the lines of an order share what is done "
                      "once",
                      "name one of its items");
    auto const named = find_ingredients(book, {ingredient});
    if (!named) return Refused(named.error());
    std::size_t const index = named->front();
    UnitCosts const& costs = costing.formulary().costs;
    if (!costs.purchases[index]) {
        found.error(book.ingredients[index].origin, costs.problems[index]);
        return as_found();
    }
    auto const limits = price_limits(costing, index, subject.calculation, found);
    if (!limits) return as_found();
    return price_limit_sheet(*limits, index, costing.date(), subject.words, book);
}

GROAT_INLINE Result<Sheet> between_sheet(LinkedBook const& linked, Subject const& subject, Date one,
                                         Date another, Diagnostics& found) {
    if (another < one) std::swap(one, another);
    auto const costs = costs_between(linked, one, another, subject.calculation, found);
    if (!costs) return as_found();
    return costs_between_sheet(*costs, another, subject.words, linked.book());
}

GROAT_INLINE Result<Sheet> movers_sheet(Costing const& costing, Subject const& subject,
                                        Diagnostics& found) {
    auto const all = sensitivities(costing, subject.calculation, found);
    if (!all) return as_found();
    return sensitivity_sheet(*all, costing.date(), subject.words, costing.book());
}

} // namespace groat::desk
