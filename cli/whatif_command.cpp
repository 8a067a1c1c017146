#include "session.hpp"

#include <groat/sheets/whatif_sheet.hpp>
#include <groat/trial/whatif.hpp>

#include <algorithm>

namespace groat::cli {

namespace {

/// What is to be looked at.
struct Subject {
    Calculation calculation;
    std::string words; ///< for a title
    std::optional<Date> date = {};
    bool is_order = false;
};

/// An order by its id, a menu or an item by its name; nothing when it is neither, which has been said then.
std::optional<Subject> subject_of(Session& session, Options const& options) {
    Book const& book = session.book();
    // An order goes before a menu, and that before an item: also one that was taken out.
    bool const is_order = book.doubts.names(BookPart::orders, options.subject);
    if (is_order || book.doubts.names(BookPart::menus, options.subject)) {
        (void)session.unknown("order, menu or formula", {BookPart::orders, BookPart::menus},
                              options.subject, {});
        return std::nullopt;
    }
    if (Order const* const order = book.find_order(options.subject))
        return Subject{calculation_of_order(order->id), "order " + order->id,
                       pricing_date(*order, companions_of(*order, session.book())), true};
    if (Menu const* const menu = book.find_menu(options.subject))
        return Subject{calculation_of_menu(menu->name), "menu " + menu->name};
    if (book.find_formula(options.subject) != nullptr) {
        auto const item = session.item(options.subject, options.sale_unit);
        if (!item) return std::nullopt;
        std::string const unit = item->unit == nullptr ? std::string() : item->unit->name;
        return Subject{calculation_of_item(options.subject, unit),
                       options.subject + (unit.empty() ? "" : ", " + unit)};
    }
    std::vector<std::string> names = names_of(book.formulas);
    for (Order const& order : book.orders) names.push_back(order.id);
    for (Menu const& menu : book.menus) names.push_back(menu.name);
    (void)session.unknown("order, menu or formula",
                          {BookPart::orders, BookPart::menus, BookPart::formulas}, options.subject,
                          names);
    return std::nullopt;
}

int try_changes(Session& session, Options const& options, Subject const& subject,
                Costing const& costing) {
    std::vector<Change> changes;
    bool is_well = true;
    for (std::string const& text : options.changes) {
        auto change = parse_change(text, costing);
        if (change) {
            changes.push_back(*std::move(change));
            continue;
        }
        complain(fmt::format("groat: --change '{}': {}\n  help: {}\n", shortened(text, 60),
                             change.error().what, change.error().help));
        is_well = false;
    }
    if (!is_well) return session.has_errors() ? session.give_up() : command_line_wrong;
    if (!options.scenario.empty()) {
        auto const& all = session.book().scenarios;
        auto const found = std::find_if(all.begin(), all.end(), [&](Scenario const& each) {
            return each.name == options.scenario;
        });
        if (found == all.end())
            return session.unknown("scenario", {BookPart::scenarios}, options.scenario,
                                   names_of(all));
        for (Scenario::Change const& each : found->changes) {
            auto change = parse_change(each.text, costing);
            if (change)
                changes.push_back(*std::move(change));
            else
                session.found().error(each.where, change.error());
        }
        if (session.has_new_errors()) return session.give_up();
    }
    auto const trial = what_if(costing, std::move(changes), subject.calculation, session.found());
    if (!trial) return session.give_up();
    return session.hand_over(whatif_sheet(*trial, subject.words, session.book()));
}

int find_limit(Session& session, Options const& options, Subject const& subject,
               Costing const& costing) {
    Book const& book = session.book();
    if (subject.is_order && book.find_order(options.subject)->lines.size() > 1) {
        complain(
            "groat: --limit is for an item or a menu: the lines of an order share what is done "
            "once\n  help: name one of its items\n");
        return command_line_wrong;
    }
    auto const named = session.ingredients({options.limit});
    if (!named) return session.refusal();
    std::size_t const index = named->front();
    if (!costing.formulary().costs.purchases[index]) {
        session.found().error(book.ingredients[index].origin,
                              costing.formulary().costs.problems[index]);
        return session.give_up();
    }
    auto const limits = price_limits(costing, index, subject.calculation, session.found());
    if (!limits) return session.give_up();
    return session.hand_over(
        price_limit_sheet(*limits, index, costing.date(), subject.words, book));
}

int look_between(Session& session, Options const& options, Subject const& subject) {
    std::vector<Date> days;
    for (std::string const& text : options.between) {
        auto const day = parse_date(text);
        if (!day) {
            complain(fmt::format("groat: --between: {}: {}\n", day.error().what, day.error().help));
            return command_line_wrong;
        }
        days.push_back(*day);
    }
    if (days[1] < days[0]) std::swap(days[0], days[1]);
    auto const costs =
        costs_between(session.linked(), days[0], days[1], subject.calculation, session.found());
    if (!costs) return session.give_up();
    return session.hand_over(costs_between_sheet(*costs, days[1], subject.words, session.book()));
}

} // namespace

int whatif(Options const& options) {
    Session session(options);
    if (!session.date_or(std::nullopt)) return command_line_wrong;
    if (session.is_in_doubt() || (!options.between.empty() &&
                                  session.is_in_doubt({BookPart::ingredients, BookPart::prices})))
        return session.give_up();
    auto const subject = subject_of(session, options);
    if (!subject) return session.refusal();
    Costing const costing(session.linked(), *session.date_or(subject->date));
    if (!options.between.empty()) return look_between(session, options, *subject);
    if (!options.limit.empty()) return find_limit(session, options, *subject, costing);
    if (!options.changes.empty() || !options.scenario.empty())
        return try_changes(session, options, *subject, costing);
    auto const all = sensitivities(costing, subject->calculation, session.found());
    if (!all) return session.give_up();
    return session.hand_over(
        sensitivity_sheet(*all, costing.date(), subject->words, session.book()));
}

} // namespace groat::cli
