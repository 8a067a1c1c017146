#include "session.hpp"

#include <groat/paper/cost_sheet.hpp>
#include <groat/trade/item_cost.hpp>

namespace groat::cli {

int cost(Options const& options) {
    Session session(options);
    auto const date = session.date_or(std::nullopt);
    if (!date) return command_line_wrong;
    if (session.has_errors()) return session.give_up();
    Book const& book = session.book();
    auto const found = book.formula_index.find(options.subject);
    if (found == book.formula_index.end())
        return session.unknown("formula", options.subject, names_of(book.formulas));
    Formula const& formula = book.formulas[found->second];
    SaleUnit const* unit = nullptr;
    if (!options.sale_unit.empty()) {
        for (SaleUnit const& each : formula.sold_as)
            if (each.name == options.sale_unit) unit = &each;
        if (unit == nullptr) {
            complain(fmt::format("groat: '{}' is not sold as '{}'\n", formula.name,
                                 shortened(options.sale_unit, 60)));
            if (auto const near = nearest_name(options.sale_unit, names_of(formula.sold_as)))
                complain(fmt::format("  help: did you mean '{}'?\n", printable(*near)));
            return command_line_wrong;
        }
    }
    Costing const costing(book, *date);
    auto const item = cost_item(costing, found->second, unit, session.found());
    if (!item) return session.give_up();
    return session.hand_over(cost_sheet(*item, costing));
}

} // namespace groat::cli
