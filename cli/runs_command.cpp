#include "session.hpp"

#include <groat/review/run_losses.hpp>
#include <groat/review/variance.hpp>
#include <groat/sheets/runs_sheet.hpp>
#include <groat/sheets/variance_sheet.hpp>

namespace groat::cli {

namespace {

int variance_of_order(Session& session, Options const& options) {
    Book const& book = session.book();
    Order const* const order = session.order(options.order);
    if (order == nullptr) return session.refusal();
    Costing const costing(session.linked(), *session.date_or(order->date));
    auto const index = static_cast<std::size_t>(order - book.orders.data());
    auto const variance = order_variance(costing, index, session.found());
    if (!variance) return session.give_up();
    return session.hand_over(order_variance_sheet(*variance, costing));
}

} // namespace

int runs(Options const& options) {
    Session session(options);
    auto const date = session.date_or(std::nullopt);
    if (!date) return command_line_wrong;
    if (session.is_in_doubt({BookPart::runs})) return session.give_up();
    if (!options.order.empty()) return variance_of_order(session, options);
    Book const& book = session.book();
    std::vector<std::size_t> wanted;
    for (std::string const& subject : options.subjects) {
        auto const found = book.formula_index.find(subject);
        if (found == book.formula_index.end())
            return session.unknown("formula", {BookPart::formulas}, subject,
                                   names_of(book.formulas));
        wanted.push_back(found->second);
    }
    if (wanted.empty()) wanted = formulas_with_runs(book);
    if (wanted.empty()) {
        complain("groat: there are no runs in these books\n"
                 "  help: write what happened into runs/any name.yaml, as 'run: shells', "
                 "'formula: rye shell', 'pieces: {portioned: 84, good: 80}'\n");
        return command_line_wrong;
    }
    Costing const costing(session.linked(), *date);
    std::vector<RunLosses> all;
    for (std::size_t const formula : wanted) session.found().add(costing.findings(formula));
    if (session.has_new_errors()) return session.give_up();
    for (std::size_t const formula : wanted) all.push_back(run_losses(costing, formula));
    return session.hand_over(run_losses_sheet(all, costing));
}

} // namespace groat::cli
