#include "session.hpp"

#include <groat/desk/lookup.hpp>
#include <groat/desk/reprice.hpp>
#include <groat/sheets/menu_sheet.hpp>

namespace groat::cli {

int menu(Options const& options) {
    auto const work = [&](desk::OpenBooks& books, desk::Dates const& dates) -> Result<Sheet> {
        auto const menu = desk::find_menu(books.book(), options.subject);
        if (!menu) return Refused(menu.error());
        Costing const costing(books.to_cost(), desk::day_of(dates));
        if (!options.reach.empty())
            return desk::repricing_sheet(costing, **menu,
                                         {options.reach, options.move, options.at_most,
                                          options.left_alone, options.below_first},
                                         books.found);
        auto const cost = cost_menu(costing, **menu, books.found);
        if (!cost) return desk::as_found();
        return menu_sheet(*cost, costing,
                          options.mix == "all" ? MixOver::menu : MixOver::categories);
    };
    return with_books(options, {}, work);
}

} // namespace groat::cli
