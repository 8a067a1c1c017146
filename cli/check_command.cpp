#include "session.hpp"

#include <groat/plan/buying_findings.hpp>
#include <groat/plan/needs.hpp>
#include <groat/price/contents.hpp>
#include <groat/price/kept_findings.hpp>
#include <groat/price/menu.hpp>
#include <groat/price/minimum_order.hpp>
#include <groat/price/quote.hpp>
#include <groat/review/run_findings.hpp>
#include <groat/review/yield_review.hpp>
#include <groat/sheets/letterhead.hpp>
#include <groat/trial/change.hpp>

#include <algorithm>
#include <map>
#include <string_view>
#include <vector>

namespace groat::cli {

namespace {

/// What the books hold so many of. What most books are without is counted only where there is any.
struct Count {
    std::string_view key;
    std::string_view label;
    std::size_t count;
    std::string_view one;
    std::string_view many;
};

std::vector<Count> counts_of(Book const& book) {
    auto const listed =
        static_cast<std::size_t>(std::count_if(book.offers.begin(), book.offers.end(),
                                               [](Offer const& each) { return each.is_listed(); }));
    std::vector<Count> all{
        {"ingredients", "Ingredients and supplies", book.ingredients.size(), "ingredient or supply",
         "ingredients and supplies"},
        {"suppliers", "Suppliers", book.suppliers.size(), "supplier", "suppliers"},
        {"offers", "Offers", listed, "offer", "offers"},
        {"formulas", "Formulas", book.formulas.size(), "formula", "formulas"},
        {"orders", "Orders", book.orders.size(), "order", "orders"}};
    for (Count const& each :
         {Count{"receipts", "Receipts", book.receipts.size(), "receipt", "receipts"},
          Count{"menus", "Menus", book.menus.size(), "menu", "menus"},
          Count{"yield_tests", "Yield tests", book.yield_tests.size(), "yield test", "yield tests"},
          Count{"runs", "Runs", book.runs.size(), "run", "runs"}})
        if (each.count > 0) all.push_back(each);
    return all;
}

/// The findings of `check` as a sheet, for programs.
Sheet findings_sheet(Session& session) {
    Book const& book = session.book();
    Sheet sheet = sheet_for(book.shop, "check", "maker", "Check of the books");
    sheet.letterhead = {book.shop.name};
    auto const number = [](std::size_t count) {
        return Figure{fmt::format("{}", count), Number(count), "each"};
    };
    Facts facts{"books", "", {}};
    for (Count const& each : counts_of(book))
        facts.facts.push_back({std::string(each.key), std::string(each.label), number(each.count)});
    facts.facts.push_back({"errors", "Errors", number(session.found().errors())});
    facts.facts.push_back({"warnings", "Warnings", number(session.found().warnings())});
    sheet.sections.emplace_back(std::move(facts));
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
    Session session(options, Looks::at_all);
    auto const now = session.date_or(std::nullopt);
    if (!now) return command_line_wrong;
    Book const& book = session.book();
    if (!session.has_errors()) {
        std::map<Date, Costing> costings;
        auto const costing_on = [&](Date date) -> Costing const& {
            return costings.try_emplace(date, session.linked(), date).first->second;
        };
        session.found().add(costing_on(*now).findings());
        session.found().add(minimum_order_findings(costing_on(*now)));
        for (StockItem const& item : book.stock.items)
            for (auto const& amount : {amount_of(item, book), par_of(item, book)})
                if (!amount) session.found().error(item.origin, amount.error());
        session.found().add(yields_outside_tests(book, *now));
        session.found().add(cold_findings(book));
        session.found().add(run_findings(costing_on(*now)));
        session.found().add(kept_findings(costing_on(*now)));
        session.found().add(buying_findings(costing_on(*now)));
        for (Order const& order : book.orders)
            (void)groat::quote(
                costing_on(options.on.empty()
                               ? pricing_date(order, companions_of(order, book)).value_or(*now)
                               : *now),
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
    if (!options.as.empty() && options.as != "text") {
        int const handed = session.hand_over(drawn(findings_sheet(session), options));
        return handed == done ? result : handed;
    }
    std::string text = render(session.found(), session.sources());
    if (!text.empty()) text += '\n';
    if (session.is_unreadable()) return session.hand_over(text) == done ? result : file_trouble;
    std::string counts;
    for (Count const& each : counts_of(book))
        counts += (counts.empty() ? "" : ", ") + counted(each.count, each.one, each.many);
    text += fmt::format(
        "{}: {}: {}, {}\n", printable(options.books), counts,
        session.has_errors() ? counted(session.found().errors(), "error", "errors") : "no errors",
        session.found().warnings() > 0 ? counted(session.found().warnings(), "warning", "warnings")
                                       : "no warnings");
    int const handed = session.hand_over(text);
    return handed == done ? result : handed;
}

} // namespace groat::cli
