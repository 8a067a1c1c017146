// Who sells the cheapest butter, when the freight is paid and the trim is thrown away?
//
// Compares all offers of some ingredients that are in force on a day, per usable kilogram.
#include <groat.hpp>
#include <groat/books/load.hpp>

#include <iostream>
#include <utility>

int main() {
    groat::Sources sources;
    groat::Loaded loaded = groat::load("samples/bakery", sources);
    groat::Diagnostics found = loaded.diagnostics;
    auto const linked = groat::link(std::move(loaded.book), found);
    if (!linked) {
        std::cerr << groat::render(found, sources);
        return 1;
    }
    groat::Book const& book = linked->book();
    groat::Costing const costing(*linked, groat::parse_date("2026-11-25").value());

    for (char const* const name : {"butter", "lemon"}) {
        auto const comparison = groat::compare(costing, name, found);
        if (!comparison) {
            std::cerr << groat::render(found, sources);
            return 1;
        }
        std::cout << name << '\n';
        for (groat::ComparedOffer const& each : comparison->offers) {
            // An offer is an index into the book; who makes it is another.
            groat::Offer const& offer = book.offers[each.offer];
            groat::Money const kilogram = each.usable * groat::Number(1000);
            std::cout << "  " << groat::decimal(kilogram.amount(), 2)
                      << " per usable kg: " << offer.pack_text << " of "
                      << book.suppliers[offer.supplier].name << ", +"
                      << groat::decimal(each.dearer * groat::Number(100), 1) << " %\n";
        }
    }
}
