/// What `check` looks at once the books are read: everything that can be told of them without an order being asked for.
/// There is one list of it, `looks`, and nothing is looked at that does not stand there.
#pragma once

#include <groat/desk/day.hpp>
#include <groat/plan/buying_findings.hpp>
#include <groat/plan/needs.hpp>
#include <groat/price/contents.hpp>
#include <groat/price/kept_findings.hpp>
#include <groat/price/menu.hpp>
#include <groat/price/minimum_order.hpp>
#include <groat/review/run_findings.hpp>
#include <groat/review/yield_review.hpp>
#include <groat/sheets/letterhead.hpp>
#include <groat/sheets/shape_books.hpp>
#include <groat/trial/change.hpp>

#include <algorithm>
#include <map>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace groat::desk {

/// Looks through books that were read without errors, on the day said or today; orders on their own days where none is
/// said. What is wrong or odd is added to `found`, nothing is changed.
/// Example  an order with an item of which the flour has no price  ->  an error at the flour
void check(LinkedBook const& linked, Dates const& dates, Diagnostics& found);

/// The same at the prices of the day of `costing`, orders too.
void check(Costing const& costing, Diagnostics& found);

/// What the books hold so many of.
struct BookCount {
    std::string_view key;
    std::string_view label;
    std::size_t count;
    std::string_view one;
    std::string_view many;
};

/// Ingredients, suppliers, offers, formulas and orders always; what most books are without, where there is any.
[[nodiscard]] std::vector<BookCount> counts_of(Book const& book);

/// "3 suppliers, 1 offer", as many as there are.
/// Example  a book with nothing in it  ->  "0 ingredients and supplies, 0 suppliers, 0 offers, 0 formulas, 0 orders"
[[nodiscard]] std::string counts_in_words(Book const& book);

/// "1 offer", "2 offers".
[[nodiscard]] std::string counted(std::size_t count, std::string_view one, std::string_view many);

/// A line for each code whose findings the shop accepts, with how many there were and why.
/// Example  "1 finding accepted: loss-not-as-seen (new oven in January)"
[[nodiscard]] std::string accepted_in_words(Diagnostics const& found);

/// The counts, and each finding with its place, as a sheet for programs.
[[nodiscard]] Sheet check_sheet(Book const& book, Diagnostics const& found, Sources const& sources);

/// Books as `check` looks at them: costed once for each day.
class CheckedBook {
public:
    CheckedBook(LinkedBook linked, Dates const& dates)
        : linked_(std::move(linked)), dates_(dates) {}

    /// The same, on one day for all, of which they are costed already.
    explicit CheckedBook(Costing const& costing)
        : linked_(costing.linked()), dates_{costing.date(), costing.date()} {
        costings_.try_emplace(costing.date(), costing);
    }

    [[nodiscard]] Book const& book() const& { return linked_.book(); }
    [[nodiscard]] Dates const& dates() const { return dates_; }
    /// The books at the prices of a day; without one, of the day that counts for them.
    [[nodiscard]] Costing const& costing() { return costing(day_of(dates_)); }
    [[nodiscard]] Costing const& costing(Date date) {
        return costings_.try_emplace(date, linked_, date).first->second;
    }

private:
    LinkedBook linked_;
    Dates dates_;
    std::map<Date, Costing> costings_;
};

/// One thing that `check` looks at.
struct Look {
    std::string_view at;
    void (*look)(CheckedBook& books, Diagnostics& found);
};

/// All that `check` looks at, in its order.
[[nodiscard]] std::span<Look const> looks();

// ---------------------------------------------------------------------------------------------------

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

inline std::span<Look const> looks() { return check_detail::looks; }

inline void check(LinkedBook const& linked, Dates const& dates, Diagnostics& found) {
    CheckedBook books(linked, dates);
    for (Look const& each : looks()) each.look(books, found);
}

inline void check(Costing const& costing, Diagnostics& found) {
    CheckedBook books(costing);
    for (Look const& each : looks()) each.look(books, found);
}

inline std::vector<BookCount> counts_of(Book const& book) {
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

inline std::string counted(std::size_t count, std::string_view one, std::string_view many) {
    return fmt::format("{} {}", count, count == 1 ? one : many);
}

inline std::string counts_in_words(Book const& book) {
    std::string words;
    for (BookCount const& each : counts_of(book))
        words += (words.empty() ? "" : ", ") + counted(each.count, each.one, each.many);
    return words;
}

inline std::string accepted_in_words(Diagnostics const& found) {
    std::string text;
    for (AcceptedFindings const& each : found.accepted())
        text += fmt::format("{} accepted: {} ({})\n", counted(each.count, "finding", "findings"),
                            each.code.text(), printable(each.reason));
    return text;
}

inline Sheet check_sheet(Book const& book, Diagnostics const& found, Sources const& sources) {
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
