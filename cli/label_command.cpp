#include "session.hpp"

#include <groat/plan/label.hpp>
#include <groat/sheets/label_sheet.hpp>

namespace groat::cli {

int label(Options const& options) {
    Session session(options);
    auto const date = session.date_or(std::nullopt);
    if (!date) return command_line_wrong;
    auto const made = made_on(options);
    if (!made) return command_line_wrong;
    if (session.is_in_doubt()) return session.give_up();
    Book const& book = session.book();
    auto const item = session.item(options.subject, options.sale_unit);
    if (!item) return session.refusal();
    LabelRule rule = book.shop.label;
    if (!options.allergens.empty())
        rule.allergens = options.allergens == "eu" ? AllergenLaw::eu : AllergenLaw::us;
    if (options.grouped) rule.is_grouped = true;
    Costing const costing(session.linked(), *date);
    auto const result = label_of(costing, item->formula, item->unit, rule, *made, session.found());
    if (!result) return session.give_up();
    return session.hand_over(label_sheet(*result, book, rule, options.audience == "maker"));
}

} // namespace groat::cli
