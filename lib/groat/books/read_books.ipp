#pragma once

#include <groat/books/read_books.hpp>

#include <groat/base/linkage.hpp>
#include <groat/books/read_formulas.hpp>
#include <groat/books/read_ingredients.hpp>
#include <groat/books/read_menus.hpp>
#include <groat/books/read_orders.hpp>
#include <groat/books/read_receipts.hpp>
#include <groat/books/read_runs.hpp>
#include <groat/books/read_scenarios.hpp>
#include <groat/books/read_shop.hpp>
#include <groat/books/read_stock.hpp>
#include <groat/books/read_words.hpp>
#include <groat/books/read_yields.hpp>
#include <groat/model/link.hpp>
#include <groat/yaml/text_check.hpp>
#include <groat/yaml/tree.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>
#include <string_view>

namespace groat {

namespace read_books_detail {

/// A shelf on which a name that is missed may stand.
struct PlaceOfMissed {
    Code code;
    Shelf shelf;
};
inline constexpr PlaceOfMissed places_of_missed[] = {
    {"not-in-formula", Shelf::ingredients},
    {"not-in-formula", Shelf::formulas},
    {"unknown-ingredient", Shelf::ingredients},
    {"unknown-ingredient", Shelf::supplies},
    {"unknown-ingredient", Shelf::formulas},
    {"unknown-supply", Shelf::supplies},
    {"unknown-supplier", Shelf::prices},
    {"unknown-supplier", Shelf::purchases},
    {"new-supplier", Shelf::prices},
    {"new-supplier", Shelf::purchases},
    {"unknown-yield", Shelf::yields},
    {"unknown-yield-test", Shelf::yields},
    {"unknown-formula", Shelf::formulas},
    {"unknown-order", Shelf::orders},
    {"unknown-role", Shelf::shop},
    {"unknown-tariff", Shelf::shop},
    {"unknown-fee", Shelf::shop},
    {"unknown-tax-rate", Shelf::shop},
    {"unknown-oven", Shelf::shop},
    {"unknown-sale-unit", Shelf::shop},
};

inline constexpr std::string_view what_belongs[shelf_count] = {
    "it begins with 'shop: the name of the business' and 'currency: USD'",
    "it has a line 'plain flour: {density: 125 g / cup}' for each ingredient",
    "it has a line 'window box: {}' for each supply",
    "it begins with 'supplier: a name', and 'offers:' follow",
    "it begins with 'bought: the day', and 'supplier:' and 'items:' follow",
    "it begins with 'formula: a name', and 'lines:' follow",
    "it begins with 'order: a number', and 'lines:' follow",
    "it begins with 'stock: the day it was counted', and 'items:' follow",
    "it begins with 'scenario: a name', and 'changes:' follow",
    "it begins with 'test: a name', and 'item:' and 'as purchased:' follow",
    "it begins with 'run: a name', and 'formula:' follows",
    "it begins with 'menu: a name', and 'items:' follow",
    "it begins with 'language: fr', and 'words:' follow",
};

/// Whether its file holds one document.
constexpr bool is_single(Shelf shelf) {
    return shelf == Shelf::shop || shelf == Shelf::stock || shelf == Shelf::words;
}

inline constexpr BookPart part_of[shelf_count] = {
    BookPart::shop,      BookPart::ingredients, BookPart::ingredients, BookPart::prices,
    BookPart::prices,    BookPart::formulas,    BookPart::orders,      BookPart::stock,
    BookPart::scenarios, BookPart::yields,      BookPart::runs,        BookPart::menus,
    BookPart::shop,
};

} // namespace read_books_detail

GROAT_INLINE void BookReader::doubt(Shelf shelf) {
    book_.doubts.add(read_books_detail::part_of[static_cast<std::size_t>(shelf)]);
}

/// What begins without a name may be the rest of what stands before it in the file.
GROAT_INLINE void BookReader::doubt_last(Shelf shelf) {
    with_things(shelf, [this](auto& things) {
        if (things.size() > first_of_file_) things.back().is_in_doubt = true;
    });
}

GROAT_INLINE void BookReader::read(Shelf shelf, std::string name, std::string text) {
    if (shelf == Shelf::words && has_shop_)
        throw std::logic_error("the shop was read without its words: read them first");
    if (reading_.is_of_later_form) return; // and said so
    has_shop_ = has_shop_ || shelf == Shelf::shop;
    if (text.starts_with(byte_order_mark)) text.erase(0, byte_order_mark.size());
    std::uint32_t const file = sources_.add(std::move(name), std::move(text));
    std::size_t const errors = found_.errors();
    Tree const tree = read_tree(sources_, file, found_);
    std::vector<Node> const& documents = tree.documents;
    with_things(shelf, [this](auto& things) { first_of_file_ = things.size(); });
    if (found_.errors() > errors) has_gap(shelf);
    if (documents.empty() && found_.errors() == errors) {
        has_gap(shelf);
        found_.error(Span{file}, "empty-file", "the file is empty",
                     std::string(read_books_detail::what_belongs[static_cast<std::size_t>(shelf)]));
    }
    if (shelf == Shelf::words && documents.empty()) reading_.own_words.emplace(std::string());
    for (Node const& document : documents) {
        if (read_books_detail::is_single(shelf) && &document != documents.data()) {
            found_.error(document.where, "second-document",
                         fmt::format("there is one {}, but a second document follows here",
                                     shelf == Shelf::shop    ? "shop"
                                     : shelf == Shelf::stock ? "stock"
                                                             : "set of words"),
                         "put all into one, without ---");
            doubt(shelf);
            break;
        }
        read_document(shelf, document);
    }
    if (tree.is_cut_off) doubt_last(shelf);
}

GROAT_INLINE void BookReader::read_document(Shelf shelf, Node const& node) {
    errors_before_ = found_.errors_met();
    switch (shelf) {
    case Shelf::shop:
        book_.shop = read_shop(node, reading_);
        book_.shop.is_in_doubt = has_erred(node);
        break;
    case Shelf::ingredients:
    case Shelf::supplies: {
        auto const kind =
            shelf == Shelf::supplies ? Ingredient::Kind::supply : Ingredient::Kind::food;
        std::vector<Ingredient> all = read_ingredients(node, kind, reading_);
        if (!node.is_mapping()) has_gap(shelf);
        if (has_erred(node)) {
            doubt(shelf);
            doubt_last(shelf);
        }
        for (Ingredient& each : all) book_.ingredients.push_back(std::move(each));
        break;
    }
    case Shelf::prices: add_price_list(read_price_list(node, reading_)); break;
    case Shelf::purchases: add_receipt(read_receipt(node, reading_)); break;
    case Shelf::formulas:
        keep(node, shelf, read_formula(node, reading_), &Formula::name, book_.formulas);
        break;
    case Shelf::orders:
        keep(node, shelf, read_order(node, reading_), &Order::id, book_.orders);
        break;
    case Shelf::runs: keep(node, shelf, read_run(node, reading_), &Run::name, book_.runs); break;
    case Shelf::scenarios:
        keep(node, shelf, read_scenario(node, reading_), &Scenario::name, book_.scenarios);
        break;
    case Shelf::words:
        reading_.own_words = read_words(node, reading_);
        if (has_erred(node)) doubt(shelf);
        break;
    case Shelf::stock:
        book_.stock = read_stock(node, reading_);
        book_.stock.is_in_doubt = has_erred(node);
        break;
    case Shelf::yields:
        keep(node, shelf, read_yield_test(node, reading_), &YieldTest::name, book_.yield_tests);
        break;
    case Shelf::menus:
        keep(node, shelf, read_menu(node, reading_), &Menu::name, book_.menus);
        break;
    }
}

GROAT_INLINE std::size_t BookReader::supplier_of(Reference const& named) {
    auto const [place, is_new] = suppliers_.emplace(named.name, book_.suppliers.size());
    if (is_new) {
        Supplier supplier;
        supplier.name = named.name;
        supplier.origin = named.origin;
        book_.suppliers.push_back(std::move(supplier));
    }
    return place->second;
}

GROAT_INLINE void BookReader::add_receipt(Receipt receipt) {
    if (receipt.supplier.is_given())
        (void)supplier_of(receipt.supplier);
    else
        has_gap(Shelf::purchases);
    if (receipt.is_in_doubt) doubt(Shelf::purchases);
    book_.receipts.push_back(std::move(receipt));
}

GROAT_INLINE void BookReader::add_price_list(PriceList list) {
    if (!list.supplier.is_given()) has_gap(Shelf::prices);
    if (list.is_in_doubt) doubt(Shelf::prices);
    std::size_t const index = supplier_of(list.supplier);
    if (list.terms_origin.is_known()) {
        auto const [first, is_first] = terms_of_.emplace(index, list.terms_origin);
        if (is_first) {
            Supplier& supplier = book_.suppliers[index];
            list.terms.name = std::move(supplier.name);
            list.terms.origin = supplier.origin;
            supplier = std::move(list.terms);
        } else {
            found_.add({Severity::error,
                        "given-twice",
                        fmt::format("the terms of '{}' are given twice", list.supplier.name),
                        list.terms_origin,
                        {{"first given here", first->second}},
                        "state them in one of the lists"});
            doubt(Shelf::prices);
        }
    }
    for (Offer& offer : list.offers) {
        offer.supplier = index;
        book_.offers.push_back(std::move(offer));
    }
}

GROAT_INLINE bool BookReader::may_be_in_a_gap(Diagnostic const& diagnostic) const {
    namespace parts = read_books_detail;
    return std::any_of(std::begin(parts::places_of_missed), std::end(parts::places_of_missed),
                       [&](parts::PlaceOfMissed const& each) {
                           return each.code == diagnostic.code &&
                                  is_incomplete_[static_cast<std::size_t>(each.shelf)];
                       });
}

GROAT_INLINE Book BookReader::finish() {
    for (Diagnostic const& diagnostic : link(book_).sorted())
        if (!may_be_in_a_gap(diagnostic)) found_.add(diagnostic);
    return std::move(book_);
}

} // namespace groat
