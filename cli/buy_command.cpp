#include "session.hpp"

#include <groat/desk/buy.hpp>

namespace groat::cli {

int buy(Options const& options) {
    if (auto const dates = dates_said(options); dates && options.as_receipt && !options.as.empty())
        return refuse_words(
            {{}, "a draft of receipts is YAML, as purchases/ has it", "leave out --as"});
    desk::BuyWish const wish{options.subjects, options.supplier};
    std::vector<BookPart> const parts{BookPart::orders, BookPart::stock};
    auto const done_by = [&](auto const& work) {
        return with_books(options, parts, [&](desk::OpenBooks& books, desk::Dates const& dates) {
            return work(Costing(books.to_cost(), desk::day_of(dates)), wish, books.found);
        });
    };
    return options.as_receipt ? done_by(desk::receipt_drafts) : done_by(desk::buying_sheet);
}

} // namespace groat::cli
