// Which prices do we have to raise for the counter to leave 42 % of its sales, if none may rise by more than a tenth?
//
// Costs a menu as it sells, and looks for the fewest prices that do it.
#include <groat.hpp>
#include <groat/books/load.hpp>

#include <iostream>
#include <utility>

int main() {
    groat::Sources sources;
    groat::Loaded loaded = groat::load("samples/bakery", sources);
    groat::Diagnostics found = loaded.diagnostics;
    auto const book = groat::link(std::move(loaded.book), found);
    if (!book) {
        std::cerr << groat::render(found, sources);
        return 1;
    }
    groat::Costing const costing(*book, groat::parse_date("2026-11-25").value());
    auto const menu = groat::menu(costing, "winter counter", found);
    if (!menu) {
        std::cerr << groat::render(found, sources);
        return 1;
    }
    auto const percent = [](groat::Number const& part) {
        return groat::decimal(part * groat::Number(100), 1) + " %";
    };
    std::cout << "margin now       " << percent(menu->total.margin().value()) << '\n';

    // Percentages of different meaning are different types: a margin is no markup, and none is a bare number.
    groat::Margin const wanted = groat::Margin::of(groat::Number(42, 100)).value();
    groat::RepriceLimits limits;
    limits.move = groat::Share::of(groat::Number(1, 10)).value();
    auto const repricing = groat::reprice(*menu, wanted, limits);
    if (!repricing) {
        std::cout << repricing.error().what << '\n' << repricing.error().help << '\n';
        return 1;
    }
    std::cout << "with new prices  " << percent(repricing->after.value()) << '\n';
    for (groat::PriceRise const& rise : repricing->rises) {
        groat::MenuLine const& line = menu->lines[rise.line];
        std::cout << "  " << line.title << ": " << groat::decimal(line.price.money().amount(), 2)
                  << " -> " << groat::decimal(rise.price.money().amount(), 2) << '\n';
    }
}
