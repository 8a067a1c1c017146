/// Every kind of file of the books, and every shape in it with the places where it stands.
#pragma once

#include <groat/books/import_map.hpp>
#include <groat/books/read_formulas.hpp>
#include <groat/books/read_ingredients.hpp>
#include <groat/books/read_menus.hpp>
#include <groat/books/read_orders.hpp>
#include <groat/books/read_prices.hpp>
#include <groat/books/read_receipts.hpp>
#include <groat/books/read_runs.hpp>
#include <groat/books/read_scenarios.hpp>
#include <groat/books/read_shop.hpp>
#include <groat/books/read_stock.hpp>
#include <groat/books/read_yields.hpp>

#include <string>
#include <string_view>
#include <vector>

namespace groat {

struct BookFile {
    std::string_view name;  ///< "formulas"
    std::string_view place; ///< "formulas/*.yaml"
    std::string_view meaning;
    Value value; ///< what one document of it is
};

inline constexpr BookFile book_files[] = {
    {"shop", "shop.yaml",
     "The business: wages, ovens, energy, overhead, fees, tax, and how it quotes.", shapes::a_shop},
    {"ingredients", "ingredients.yaml", "What is bought to eat, by name.",
     shapes::some_ingredients},
    {"supplies", "supplies.yaml", "What is bought and not eaten, by name.", shapes::some_supplies},
    {"prices", "prices/*.yaml", "A price list of a supplier.", shapes::a_price_list},
    {"purchases", "purchases/*.yaml", "A receipt: what was bought and paid.", shapes::a_receipt},
    {"formulas", "formulas/*.yaml", "What goes in, what is lost, what it takes, how it is sold.",
     shapes::a_formula},
    {"orders", "orders/*.yaml", "What a client asks for, and on what terms.", shapes::an_order},
    {"menus", "menus/*.yaml", "What is offered at set prices, and what was sold.", shapes::a_menu},
    {"stock", "stock.yaml", "What is on the shelf.", shapes::a_stock},
    {"yields", "yields.yaml", "A yield test.", shapes::a_yield_test},
    {"runs", "runs/*.yaml", "What was made: as it was weighed, counted and paid.", shapes::a_run},
    {"scenarios", "scenarios.yaml", "Changes of the books to try together.", shapes::a_scenario},
    {"words", "words.yaml", "The shop's own words for sheets that leave the house.",
     shapes::some_words},
    {"import", "import/*.yaml", "How a supplier writes a price list as CSV.",
     shapes::an_import_map},
};

/// Where a shape stands: a file, and the keys that lead to it, as "sold as > (one of the sale units) > price".
struct ShapePlace {
    BookFile const* file;
    std::string path;
};

struct ShapeUse {
    Shape const* shape;
    std::vector<ShapePlace> places;
};

/// Every shape of the files in [first, last), in the order in which they are met.
[[nodiscard]] std::vector<ShapeUse> shape_uses(BookFile const* first = std::begin(book_files),
                                               BookFile const* last = std::end(book_files));

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/shape_files.ipp>
#endif
