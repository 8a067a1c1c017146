// What do we ask the reading circle for their order, and what do we earn by it?
//
// Quotes an order of the books, prints the page that the client gets, and says what only the maker should know.
#include <groat.hpp>
#include <groat/books/load.hpp>

#include <iostream>
#include <optional>
#include <utility>

namespace {

// The quote outlives the costing and the books here: it keeps what it points to.
std::optional<groat::Quote> quoted(groat::LinkedBook const& book, groat::Diagnostics& found) {
    groat::Costing const costing(book, groat::parse_date("2026-11-23").value());
    return groat::quote(costing, "2026-041", found);
}

} // namespace

int main() {
    groat::Sources sources;
    groat::Loaded loaded = groat::load("samples/bakery", sources);
    groat::Diagnostics found = loaded.diagnostics;

    // One slip in one file should not keep a client waiting: what an error touches is left out, and the rest stands.
    auto const book = groat::sound_part(std::move(loaded.book));
    if (!book) {
        std::cerr << groat::render(found, sources);
        return 1;
    }
    auto const quote = quoted(*book, found);
    if (!quote) {
        std::cerr << groat::render(found, sources);
        return 1;
    }

    // The client's page holds no cost: it may be sent as it is.
    std::cout << groat::to_text(groat::client_quote_sheet(
        groat::quote_for_client(*quote, book->book()), book->book().shop));

    // Ours alone. What is asked has its tax in it; the profit is what is left after everything.
    std::cout << "\nFor " << quote->order->client << " we ask "
              << groat::decimal(quote->totals.total.money().amount(), 2) << " and earn "
              << groat::decimal(quote->totals.profit.amount(), 2) << ".\n";
}
