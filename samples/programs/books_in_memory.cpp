// What does a roll cost, when the prices come out of our own program and not out of files?
//
// Fills the books by hand, without YAML, and shows that a misspelt name is found before anything is costed.
#include <groat.hpp>

#include <iostream>
#include <string>
#include <string_view>

namespace {

groat::Quantity amount(std::string_view text) {
    return groat::parse_quantity(text, groat::Measures::metric).value();
}

// What we buy, from whom, and what we make of it. `flour` is how the formula calls its flour.
groat::Book books(std::string const& flour) {
    groat::Book book;
    book.shop.name = "Corner Oven";
    book.shop.currency = groat::Currency::find("EUR").value();
    book.suppliers.push_back({"Upper Mill"});
    book.ingredients.push_back({"wheat flour"});

    groat::Offer offer;
    offer.item.name = "wheat flour";
    offer.pack = amount("25 kg");
    offer.price = groat::Money(groat::parse_number("21.50").value(), book.shop.currency);
    offer.supplier = 0; // the first of the suppliers
    book.offers.push_back(offer);

    groat::Formula roll;
    roll.name = "roll";
    roll.lines.push_back({{flour, {}}, groat::Line::Of::unknown, amount("1.2 kg")});
    roll.makes = amount("20");
    roll.price.target = groat::Margin::of(groat::Number(60, 100)).value();
    book.formulas.push_back(roll);
    return book;
}

} // namespace

int main() {
    groat::Diagnostics wrong;
    if (!groat::link(books("weat flour"), wrong)) std::cout << groat::render(wrong, {}) << '\n';

    groat::Diagnostics found;
    auto const book = groat::link(books("wheat flour"), found);
    if (!book) return 1;
    groat::Costing const costing(*book, groat::parse_date("2026-11-25").value());
    auto const roll = groat::cost(costing, "roll", "", found);
    if (!roll) return 1;
    groat::Money const each = roll->cost.total.total() / roll->line.count;
    std::cout << "a roll costs  " << groat::decimal(each.amount(), 3) << " EUR\n"
              << "ask for it    " << groat::decimal(roll->line.price.money().amount(), 2)
              << " EUR\n";
}
