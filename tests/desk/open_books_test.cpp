#include <groat/books/read_books.hpp>
#include <groat/desk/open_books.hpp>

#include "books.hpp"

using namespace groat;
using namespace groat::test;

namespace {

desk::OpenBooks opened(std::string const& price, desk::Looks looks) {
    Sources sources;
    BookReader reader(sources);
    reader.read(Shelf::shop, "shop.yaml", "shop: a bakery\ncurrency: USD\n");
    reader.read(Shelf::ingredients, "ingredients.yaml", "flour: {}\nsugar: {}\n");
    reader.read(Shelf::prices, "prices/mill.yaml",
                "supplier: the mill\noffers:\n  - {item: sugar, pack: 1 kg, price: 1.50}\n"
                "  - {item: flour, pack: 1 kg, price: " +
                    price + "}\n");
    Loaded loaded;
    loaded.book = reader.finish();
    loaded.diagnostics.add(reader.found());
    return desk::open_books(std::move(loaded), std::move(sources), looks);
}

} // namespace

TEST_CASE("of books with an error only what it touches is out of sight") {
    desk::OpenBooks const books = opened("cheap", desk::Looks::at_sound_part);
    CHECK(books.found.errors() == 1);
    CHECK(!books.has_new_errors());
    CHECK(names_of(books.book().ingredients) == std::vector<std::string>{"sugar"});
    CHECK(desk::is_in_doubt(books.book(), {BookPart::ingredients}));
    CHECK(!desk::is_in_doubt(books.book(), {BookPart::orders, BookPart::stock}));
    CHECK(!desk::is_in_doubt(books.book()));
}

TEST_CASE("whoever looks at all sees what an error stands in as well") {
    CHECK(opened("cheap", desk::Looks::at_all).unlinked.ingredients.size() == 2);
}

TEST_CASE("what is found after reading is new") {
    desk::OpenBooks books = opened("1.20", desk::Looks::at_sound_part);
    CHECK(books.found.empty());
    CHECK(books.book().ingredients.size() == 2);
    books.found.error(Span{}, "missing-price", "nobody offers salt");
    CHECK(books.has_new_errors());
}

TEST_CASE("a shop in doubt puts every part of the books in doubt") {
    Book book = a_book();
    book.doubts.add(BookPart::shop);
    CHECK(desk::is_in_doubt(book));
    CHECK(desk::is_in_doubt(book, {BookPart::stock}));
}
