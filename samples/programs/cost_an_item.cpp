// What does a slice of lemon tart cost us, and what should we ask for it?
//
// Reads a folder of books, costs one item for itself in its standard run, and prints a few figures and the worksheet.
#include <groat.hpp>
#include <groat/books/load.hpp>

#include <iostream>
#include <utility>

int main() {
    // All files of the folder. Whatever is wrong with them is found at once, each with its place.
    groat::Sources sources;
    groat::Loaded loaded = groat::load("samples/bakery", sources);
    groat::Diagnostics found = loaded.diagnostics;

    // Only books without errors can be costed: a book becomes a linked one here, or not at all.
    auto const book = groat::link(std::move(loaded.book), found);
    if (!book) {
        std::cerr << groat::render(found, sources);
        return 1;
    }

    // Everything in the books at the prices of a day. Make it once, and ask it as often as you like.
    groat::Costing const costing(*book, groat::parse_date("2026-11-25").value());

    auto const tart = groat::cost(costing, "lemon tart", "slice", found);
    if (!tart) {
        std::cerr << groat::render(found, sources);
        return 1;
    }

    // Figures are exact: you say where to round. The cost of the run is that of all its slices.
    groat::Money const each = tart->cost.total.total() / tart->line.count;
    std::cout << "a run gives  " << groat::decimal(tart->line.count, 0) << " slices\n"
              << "each costs   " << groat::decimal(each.amount(), 4) << '\n'
              << "ask for it   " << groat::decimal(tart->line.price.money().amount(), 2) << "\n\n";

    // Where the money goes, line by line, as a sheet. `to_html` draws the same as a page.
    std::cout << groat::to_text(groat::sheet_of(*tart, costing));
}
