#include "session.hpp"

#include <groat/desk/whatif.hpp>

namespace groat::cli {

int whatif(Options const& options) {
    auto const dates = dates_said(options);
    if (!dates) return refuse_words(dates.error());
    Session session(options);
    std::vector<BookPart> parts;
    if (!options.between.empty()) parts = {BookPart::ingredients, BookPart::prices};
    if (desk::is_in_doubt(session.book(), parts)) return session.give_up();
    auto const subject = desk::subject_called(session.book(), options.subject, options.sale_unit);
    if (!subject) return session.refuse(subject.error());
    if (!options.between.empty()) {
        auto const one = date_behind("--between", options.between.front());
        if (!one) return refuse_words(one.error());
        auto const other = date_behind("--between", options.between.back());
        if (!other) return refuse_words(other.error());
        return session.hand_over(desk::between_sheet(session.books().to_cost(), *subject, *one,
                                                     *other, session.found()));
    }
    Costing const costing(session.books().to_cost(), desk::day_of(*dates, subject->date));
    if (!options.limit.empty())
        return session.hand_over(
            desk::limit_sheet(costing, *subject, options.limit, session.found()));
    if (options.changes.empty() && options.scenario.empty())
        return session.hand_over(desk::movers_sheet(costing, *subject, session.found()));
    std::vector<Flaw> flaws;
    std::vector<Change> changes = desk::changes_said(options.changes, costing, flaws);
    for (Flaw const& each : flaws) (void)refuse_words(each);
    if (!flaws.empty())
        return session.found().has_errors() ? session.give_up() : command_line_wrong;
    return session.hand_over(desk::changed_sheet(costing, *subject, std::move(changes),
                                                 options.scenario, session.found()));
}

} // namespace groat::cli
