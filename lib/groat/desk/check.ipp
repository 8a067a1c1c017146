#pragma once

#include <groat/desk/check.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>
#include <groat/plan/buying_findings.hpp>
#include <groat/plan/shelf.hpp>
#include <groat/price/contents.hpp>
#include <groat/price/kept_findings.hpp>
#include <groat/price/menu.hpp>
#include <groat/price/minimum_order.hpp>
#include <groat/price/quote.hpp>
#include <groat/review/run_findings.hpp>
#include <groat/review/yield_review.hpp>
#include <groat/sheets/letterhead.hpp>
#include <groat/sheets/shape_books.hpp>
#include <groat/trial/change.hpp>

#include <algorithm>

namespace groat::desk {

namespace check_detail {

inline void look_at_stock(CheckedBook& books, Diagnostics& found) {
    for (StockItem const& item : books.book().stock.items)
        for (auto const& amount : {amount_of(item, books.book()), par_of(item, books.book())})
            if (!amount) found.error(item.origin, amount.error());
}

inline void look_at_orders(CheckedBook& books, Diagnostics& found) {
    for (Order const& order : books.book().orders)
        (void)quote(books.costing(day_of_order(books.dates(), order, books.book())), order, found);
}

inline void look_at_scenarios(CheckedBook& books, Diagnostics& found) {
    for (Scenario const& scenario : books.book().scenarios)
        for (Scenario::Change const& each : scenario.changes)
            if (auto const change = parse_change(each.text, books.costing()); !change)
                found.error(each.where, change.error());
}

inline void look_at_menus(CheckedBook& books, Diagnostics& found) {
    for (Menu const& menu : books.book().menus) (void)cost_menu(books.costing(), menu, found);
}

/// A figure that counts.
inline Figure number(std::size_t count) {
    return {fmt::format("{}", count), Number(count), "each"};
}

inline constexpr Look looks[] = {
    {"the formulas",
     [](CheckedBook& books, Diagnostics& found) { found.add(books.costing().findings()); }},
    {"the minimum order",
     [](CheckedBook& books, Diagnostics& found) {
         found.add(minimum_order_findings(books.costing()));
     }},
    {"the stock", look_at_stock},
    {"the yields",
     [](CheckedBook& books, Diagnostics& found) {
         found.add(yields_outside_tests(books.book(), day_of(books.dates())));
     }},
    {"the cold",
     [](CheckedBook& books, Diagnostics& found) { found.add(cold_findings(books.book())); }},
    {"the runs",
     [](CheckedBook& books, Diagnostics& found) { found.add(run_findings(books.costing())); }},
    {"what is kept",
     [](CheckedBook& books, Diagnostics& found) { found.add(kept_findings(books.costing())); }},
    {"the suppliers",
     [](CheckedBook& books, Diagnostics& found) { found.add(buying_findings(books.costing())); }},
    {"the orders", look_at_orders},
    {"the scenarios", look_at_scenarios},
    {"the menus", look_at_menus},
};

} // namespace check_detail

GROAT_INLINE std::span<Look const> looks() { return check_detail::looks; }

GROAT_INLINE void check(LinkedBook const& linked, Dates const& dates, Diagnostics& found) {
    CheckedBook books(linked, dates);
    for (Look const& each : looks()) each.look(books, found);
}

GROAT_INLINE void check(Costing const& costing, Diagnostics& found) {
    CheckedBook books(costing);
    for (Look const& each : looks()) each.look(books, found);
}

GROAT_INLINE std::vector<BookCount> counts_of(Book const& book) {
    auto const listed =
        static_cast<std::size_t>(std::count_if(book.offers.begin(), book.offers.end(),
                                               [](Offer const& each) { return each.is_listed(); }));
    std::vector<BookCount> all{
        {"ingredients", "Ingredients and supplies", book.ingredients.size(), "ingredient or supply",
         "ingredients and supplies"},
        {"suppliers", "Suppliers", book.suppliers.size(), "supplier", "suppliers"},
        {"offers", "Offers", listed, "offer", "offers"},
        {"formulas", "Formulas", book.formulas.size(), "formula", "formulas"},
        {"orders", "Orders", book.orders.size(), "order", "orders"}};
    for (BookCount const& each :
         {BookCount{"receipts", "Receipts", book.receipts.size(), "receipt", "receipts"},
          BookCount{"menus", "Menus", book.menus.size(), "menu", "menus"},
          BookCount{"yield_tests", "Yield tests", book.yield_tests.size(), "yield test",
                    "yield tests"},
          BookCount{"runs", "Runs", book.runs.size(), "run", "runs"}})
        if (each.count > 0) all.push_back(each);
    return all;
}

GROAT_INLINE std::string counted(std::size_t count, std::string_view one, std::string_view many) {
    return fmt::format("{} {}", count, count == 1 ? one : many);
}

GROAT_INLINE std::string counts_in_words(Book const& book) {
    std::string words;
    for (BookCount const& each : counts_of(book))
        words += (words.empty() ? "" : ", ") + counted(each.count, each.one, each.many);
    return words;
}

GROAT_INLINE std::string accepted_in_words(Diagnostics const& found) {
    std::string text;
    for (AcceptedFindings const& each : found.accepted())
        text += fmt::format("{} accepted: {} ({})\n", counted(each.count, "finding", "findings"),
                            each.code.text(), printable(each.reason));
    return text;
}

GROAT_INLINE std::string summary_in_words(Book const& book, Diagnostics const& found) {
    auto const all = [](std::size_t count, std::string_view one, std::string const& many) {
        return count > 0 ? counted(count, one, many) : "no " + many;
    };
    return fmt::format("{}: {}, {}", counts_in_words(book), all(found.errors(), "error", "errors"),
                       all(found.warnings(), "warning", "warnings"));
}

GROAT_INLINE Sheet check_sheet(Book const& book, Diagnostics const& found, Sources const& sources) {
    Sheet sheet = sheet_for(book.shop, "check", "maker", "Check of the books");
    sheet.letterhead = {book.shop.name};
    FactsOf<sheet_shapes::check::books> facts;
    for (BookCount const& each : counts_of(book))
        facts.add(MemberOf<sheet_shapes::check::books>::named(each.key), std::string(each.label),
                  check_detail::number(each.count));
    facts.add("errors", "Errors", check_detail::number(found.errors()));
    facts.add("warnings", "Warnings", check_detail::number(found.warnings()));
    sheet.sections.emplace_back(std::move(facts));
    Table findings = table_of<sheet_shapes::check::findings>(
        "", {{"severity"}, {"code"}, {"file"}, {"line"}, {"column"}, {"what"}, {"help"}});
    for (Diagnostic const& each : found.sorted())
        findings.rows.push_back(
            {{},
             {std::string(each.severity == Severity::error ? "error" : "warning"),
              std::string(each.code.text()), std::string(sources.name(each.where.file)),
              check_detail::number(each.where.line), check_detail::number(each.where.column),
              each.what, each.help}});
    sheet.sections.emplace_back(std::move(findings));
    Table accepted =
        table_of<sheet_shapes::check::accepted>("Accepted", {{"code"}, {"count"}, {"reason"}});
    for (AcceptedFindings const& each : found.accepted())
        accepted.rows.push_back(
            {{}, {std::string(each.code.text()), check_detail::number(each.count), each.reason}});
    if (!accepted.rows.empty()) sheet.sections.emplace_back(std::move(accepted));
    return sheet;
}

} // namespace groat::desk
