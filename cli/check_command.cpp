#include "session.hpp"

#include <groat/trade/change.hpp>
#include <groat/trade/menu.hpp>
#include <groat/trade/needs.hpp>
#include <groat/trade/quote.hpp>
#include <groat/trade/run_findings.hpp>
#include <groat/trade/yield_review.hpp>

#include <map>

namespace groat::cli {

namespace {

/// The findings of `check` as a sheet, for programs.
Sheet findings_sheet(Session& session) {
    Book const& book = session.book();
    Sheet sheet{"check", "maker", {book.shop.name}, "Check of the books", {}};
    auto const number = [](std::size_t count) {
        return Figure{fmt::format("{}", count), Number(count), "each"};
    };
    sheet.sections.emplace_back(
        Facts{"books",
              "",
              {{"ingredients", "Ingredients and supplies", number(book.ingredients.size())},
               {"suppliers", "Suppliers", number(book.suppliers.size())},
               {"offers", "Offers", number(book.offers.size())},
               {"formulas", "Formulas", number(book.formulas.size())},
               {"orders", "Orders", number(book.orders.size())},
               {"errors", "Errors", number(session.found().errors())},
               {"warnings", "Warnings", number(session.found().warnings())}}});
    auto& facts = std::get<Facts>(sheet.sections.back()).facts;
    if (!book.menus.empty())
        facts.insert(facts.end() - 2, {"menus", "Menus", number(book.menus.size())});
    if (!book.yield_tests.empty())
        facts.insert(facts.end() - 2,
                     {"yield_tests", "Yield tests", number(book.yield_tests.size())});
    if (!book.runs.empty())
        facts.insert(facts.end() - 2, {"runs", "Runs", number(book.runs.size())});
    Table findings{"findings",
                   "",
                   {{"severity", "", true},
                    {"code", "", true},
                    {"file", "", true},
                    {"line", "", false},
                    {"column", "", false},
                    {"what", "", true},
                    {"help", "", true}},
                   {},
                   {}};
    for (Diagnostic const& each : session.found().sorted())
        findings.rows.push_back(
            {{},
             {std::string(each.severity == Severity::error ? "error" : "warning"), each.code,
              std::string(session.sources().name(each.where.file)), number(each.where.line),
              number(each.where.column), each.what, each.help}});
    sheet.sections.emplace_back(std::move(findings));
    return sheet;
}

} // namespace

int check(Options const& options) {
    Session session(options);
    auto const now = session.date_or(std::nullopt);
    if (!now) return command_line_wrong;
    Book const& book = session.book();
    if (!session.has_errors()) {
        std::map<Date, Costing> costings;
        auto const costing_on = [&](Date date) -> Costing const& {
            return costings.try_emplace(date, book, date).first->second;
        };
        session.found().add(costing_on(*now).findings());
        for (StockItem const& item : book.stock.items)
            if (auto const amount = amount_of(item, book); !amount)
                session.found().error(item.origin, amount.error());
        session.found().add(yields_outside_tests(book, *now));
        session.found().add(run_findings(costing_on(*now)));
        for (Order const& order : book.orders)
            (void)groat::quote(costing_on(options.on.empty() ? order.date.value_or(*now) : *now),
                               order, session.found());
        for (Scenario const& scenario : book.scenarios)
            for (Scenario::Change const& each : scenario.changes)
                if (auto const change = parse_change(each.text, costing_on(*now)); !change)
                    session.found().error(each.where, change.error());
        for (Menu const& menu : book.menus)
            (void)cost_menu(costing_on(*now), menu, session.found());
    }
    int result = session.has_errors() ? books_have_errors : done;
    if (session.is_unreadable()) result = file_trouble;
    if (options.as != "text") {
        int const handed = session.hand_over(drawn(findings_sheet(session), options));
        return handed == done ? result : handed;
    }
    std::string text = render(session.found(), session.sources());
    if (!text.empty()) text += '\n';
    if (session.is_unreadable()) return session.hand_over(text) == done ? result : file_trouble;
    text += fmt::format(
        "{}: {}, {}, {}, {}, {}{}{}{}: {}, {}\n", printable(options.books),
        counted(book.ingredients.size(), "ingredient or supply", "ingredients and supplies"),
        counted(book.suppliers.size(), "supplier", "suppliers"),
        counted(book.offers.size(), "offer", "offers"),
        counted(book.formulas.size(), "formula", "formulas"),
        counted(book.orders.size(), "order", "orders"),
        book.menus.empty() ? std::string() : ", " + counted(book.menus.size(), "menu", "menus"),
        book.yield_tests.empty()
            ? std::string()
            : ", " + counted(book.yield_tests.size(), "yield test", "yield tests"),
        book.runs.empty() ? std::string() : ", " + counted(book.runs.size(), "run", "runs"),
        session.has_errors() ? counted(session.found().errors(), "error", "errors") : "no errors",
        session.found().warnings() > 0 ? counted(session.found().warnings(), "warning", "warnings")
                                       : "no warnings");
    int const handed = session.hand_over(text);
    return handed == done ? result : handed;
}

} // namespace groat::cli
