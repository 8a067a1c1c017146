/// From the texts of a folder of books to one linked book. This knows no file system: whoever has the
/// texts, from a folder (see load.hpp) or elsewhere, hands them in one by one.
#pragma once

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
#include <groat/books/read_words.hpp>
#include <groat/books/read_yields.hpp>
#include <groat/model/link.hpp>
#include <groat/yaml/tree.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <iterator>
#include <map>
#include <set>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace groat {

/// What a file is about, which follows from where it stands in the folder.
enum class Shelf {
    shop,
    ingredients,
    supplies,
    prices,
    purchases,
    formulas,
    orders,
    stock,
    scenarios,
    yields,
    runs,
    menus,
    words
};
inline constexpr std::size_t shelf_count = 13;

/// Reads texts into a book, the shop first; own words, if there are any, even before: the shop is read with
/// them, so `read` throws `std::logic_error` where they come behind it.
///
///     BookReader reader(sources);
///     reader.read(Shelf::shop, "shop.yaml", text);
///     reader.read(Shelf::formulas, "formulas/rye.yaml", other);
///     Book book = reader.finish();
///
/// Every error of every text is among `found()`; while there is one, only a part of the book is fit for use, and
/// `keep_sound_part` finds it. Texts are kept in `sources`, which has to outlive the reader.
class BookReader {
public:
    explicit BookReader(Sources& sources) : sources_(sources), reading_{found_} {}
    BookReader(BookReader const&) = delete;
    BookReader& operator=(BookReader const&) = delete;

    void read(Shelf shelf, std::string name, std::string text);

    /// Says that something on a shelf could not be had at all, so that what is missed later is not held
    /// against those who refer to it.
    void has_gap(Shelf shelf) {
        is_incomplete_[static_cast<std::size_t>(shelf)] = true;
        doubt(shelf);
    }
    /// Says that something on a shelf is wrong, and nobody can name it.
    void doubt(Shelf shelf);

    /// The book, linked. To be called once, at the end. Names that are not found are reported unless they
    /// may stand on a shelf that could not be read whole.
    [[nodiscard]] Book finish();

    [[nodiscard]] Diagnostics& found() { return found_; }

    /// The logo that shop.yaml names, for whoever can read its picture.
    [[nodiscard]] Logo& logo() { return book_.shop.sheets.look.logo; }

private:
    void read_document(Shelf shelf, Node const& node);
    /// The supplier of a name, who may be met here for the first time.
    std::size_t supplier_of(Reference const& named);
    void add_price_list(PriceList list);
    void add_receipt(Receipt receipt);
    template <class Thing>
    void keep(Node const& node, Shelf shelf, Thing thing, std::string Thing::*name,
              std::vector<Thing>& all);
    /// Whether the document that is being read has an error.
    [[nodiscard]] bool has_erred(Node const& document) const {
        return document.is_in_doubt || found_.errors_met() > errors_before_;
    }
    template <class Do> void with_things(Shelf shelf, Do const& act);
    void doubt_last(Shelf shelf);
    [[nodiscard]] bool may_be_in_a_gap(Diagnostic const& diagnostic) const;

    Sources& sources_;
    Diagnostics found_;
    Reading reading_;
    Book book_;
    bool has_shop_ = false;
    std::size_t first_of_file_ = 0; ///< among the things of its shelf
    std::size_t errors_before_ = 0; ///< that had been met before the document
    std::map<std::string, std::size_t, std::less<>> suppliers_;
    std::map<std::size_t, Span> terms_of_; ///< by supplier, where they were first stated
    std::array<bool, shelf_count> is_incomplete_ = {};
};

// ---------------------------------------------------------------------------------------------------

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

inline void BookReader::doubt(Shelf shelf) {
    book_.doubts.add(read_books_detail::part_of[static_cast<std::size_t>(shelf)]);
}

/// The list that the things of a shelf go to, where they have one of their own.
template <class Do> void BookReader::with_things(Shelf shelf, Do const& act) {
    switch (shelf) {
    case Shelf::ingredients:
    case Shelf::supplies: return act(book_.ingredients);
    case Shelf::formulas: return act(book_.formulas);
    case Shelf::orders: return act(book_.orders);
    case Shelf::scenarios: return act(book_.scenarios);
    case Shelf::yields: return act(book_.yield_tests);
    case Shelf::runs: return act(book_.runs);
    case Shelf::menus: return act(book_.menus);
    case Shelf::shop:
    case Shelf::prices:
    case Shelf::purchases:
    case Shelf::stock:
    case Shelf::words: return;
    }
}

/// What begins without a name may be the rest of what stands before it in the file.
inline void BookReader::doubt_last(Shelf shelf) {
    with_things(shelf, [this](auto& things) {
        if (things.size() > first_of_file_) things.back().is_in_doubt = true;
    });
}

inline void BookReader::read(Shelf shelf, std::string name, std::string text) {
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

inline void BookReader::read_document(Shelf shelf, Node const& node) {
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

/// A thing without a name is left out, and may be the one that others name.
template <class Thing>
void BookReader::keep(Node const& node, Shelf shelf, Thing thing, std::string Thing::*name,
                      std::vector<Thing>& all) {
    thing.is_in_doubt = has_erred(node);
    if (!(thing.*name).empty()) return all.push_back(std::move(thing));
    has_gap(shelf);
    doubt_last(shelf);
}

inline std::size_t BookReader::supplier_of(Reference const& named) {
    auto const [place, is_new] = suppliers_.emplace(named.name, book_.suppliers.size());
    if (is_new) {
        Supplier supplier;
        supplier.name = named.name;
        supplier.origin = named.origin;
        book_.suppliers.push_back(std::move(supplier));
    }
    return place->second;
}

inline void BookReader::add_receipt(Receipt receipt) {
    if (receipt.supplier.is_given())
        (void)supplier_of(receipt.supplier);
    else
        has_gap(Shelf::purchases);
    if (receipt.is_in_doubt) doubt(Shelf::purchases);
    book_.receipts.push_back(std::move(receipt));
}

inline void BookReader::add_price_list(PriceList list) {
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

inline bool BookReader::may_be_in_a_gap(Diagnostic const& diagnostic) const {
    namespace parts = read_books_detail;
    return std::any_of(std::begin(parts::places_of_missed), std::end(parts::places_of_missed),
                       [&](parts::PlaceOfMissed const& each) {
                           return each.code == diagnostic.code &&
                                  is_incomplete_[static_cast<std::size_t>(each.shelf)];
                       });
}

inline Book BookReader::finish() {
    for (Diagnostic const& diagnostic : link(book_).sorted())
        if (!may_be_in_a_gap(diagnostic)) found_.add(diagnostic);
    return std::move(book_);
}

} // namespace groat
