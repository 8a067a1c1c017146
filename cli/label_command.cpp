#include "session.hpp"

#include <groat/desk/lookup.hpp>
#include <groat/plan/label.hpp>
#include <groat/sheets/label_sheet.hpp>

namespace groat::cli {

int label(Options const& options) {
    auto const work = [&](desk::OpenBooks& books, desk::Dates const& dates) -> Result<Sheet> {
        auto const item = desk::find_item(books.book(), options.subject, options.sale_unit);
        if (!item) return Refused(item.error());
        LabelRule rule = books.book().shop.label;
        if (!options.allergens.empty())
            rule.allergens = options.allergens == "eu" ? AllergenLaw::eu : AllergenLaw::us;
        if (options.grouped) rule.is_grouped = true;
        Costing const costing(books.to_cost(), desk::day_of(dates));
        auto const label =
            label_of(costing, item->formula, item->unit, rule, dates.made, books.found);
        if (!label) return desk::as_found();
        return label_sheet(*label, books.book(), rule, options.audience == "maker");
    };
    return with_books(options, {}, work);
}

} // namespace groat::cli
