/// From the texts of a folder of books to one linked book. This knows no file system: whoever has the
/// texts, from a folder (see load.hpp) or elsewhere, hands them in one by one.
#pragma once

#include <groat/model/link.hpp>
#include <groat/yaml/read_formulas.hpp>
#include <groat/yaml/read_ingredients.hpp>
#include <groat/yaml/read_menus.hpp>
#include <groat/yaml/read_orders.hpp>
#include <groat/yaml/read_prices.hpp>
#include <groat/yaml/read_runs.hpp>
#include <groat/yaml/read_scenarios.hpp>
#include <groat/yaml/read_shop.hpp>
#include <groat/yaml/read_stock.hpp>
#include <groat/yaml/read_words.hpp>
#include <groat/yaml/read_yields.hpp>
#include <groat/yaml/tree.hpp>

#include <fmt/format.h>

#include <array>
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
    formulas,
    orders,
    stock,
    scenarios,
    yields,
    runs,
    menus,
    words
};
inline constexpr std::size_t shelf_count = 12;

/// Reads texts into a book, the shop first; own words, if there are any, even before: the shop is read with
/// them, so `read` throws `std::logic_error` where they come behind it.
///
///     BookReader reader(sources);
///     reader.read(Shelf::shop, "shop.yaml", text);
///     reader.read(Shelf::formulas, "formulas/rye.yaml", other);
///     Book book = reader.finish();
///
/// Every error of every text is among `found()`; the book is fit for use only if there is none. Texts are
/// kept in `sources`, which has to outlive the reader.
class BookReader {
public:
    explicit BookReader(Sources& sources) : sources_(sources), reading_{found_} {}
    BookReader(BookReader const&) = delete;
    BookReader& operator=(BookReader const&) = delete;

    void read(Shelf shelf, std::string name, std::string text);

    /// Says that something on a shelf could not be had at all, so that what is missed later is not held
    /// against those who refer to it.
    void has_gap(Shelf shelf) { is_incomplete_[static_cast<std::size_t>(shelf)] = true; }

    /// The book, linked. To be called once, at the end. Names that are not found are reported unless they
    /// may stand on a shelf that could not be read whole.
    [[nodiscard]] Book finish();

    [[nodiscard]] Diagnostics& found() { return found_; }

    /// The logo that shop.yaml names, for whoever can read its picture.
    [[nodiscard]] Logo& logo() { return book_.shop.sheets.look.logo; }

private:
    void read_document(Shelf shelf, Node const& node);
    void add_price_list(PriceList list);
    template <class Thing>
    void keep(Shelf shelf, Thing thing, std::string Thing::*name, std::vector<Thing>& all);
    [[nodiscard]] bool may_be_in_a_gap(Diagnostic const& diagnostic) const;

    Sources& sources_;
    Diagnostics found_;
    Reading reading_;
    Book book_;
    bool has_shop_ = false;
    std::map<std::string, std::size_t, std::less<>> suppliers_;
    std::map<std::size_t, Span> terms_of_; ///< by supplier, where they were first stated
    std::array<bool, shelf_count> is_incomplete_ = {};
};

// ---------------------------------------------------------------------------------------------------

namespace read_books_parts {

inline constexpr std::string_view what_belongs[shelf_count] = {
    "it begins with 'shop: the name of the business' and 'currency: USD'",
    "it has a line 'plain flour: {density: 125 g / cup}' for each ingredient",
    "it has a line 'window box: {}' for each supply",
    "it begins with 'supplier: a name', and 'offers:' follow",
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

} // namespace read_books_parts

inline void BookReader::read(Shelf shelf, std::string name, std::string text) {
    if (shelf == Shelf::words && has_shop_)
        throw std::logic_error("the shop was read without its words: read them first");
    has_shop_ = has_shop_ || shelf == Shelf::shop;
    if (text.starts_with(byte_order_mark)) text.erase(0, byte_order_mark.size());
    std::uint32_t const file = sources_.add(std::move(name), std::move(text));
    std::size_t const errors = found_.errors();
    std::vector<Node> const documents = read_tree(sources_, file, found_);
    if (found_.errors() > errors) has_gap(shelf);
    if (documents.empty() && found_.errors() == errors) {
        has_gap(shelf);
        found_.error(Span{file}, "empty-file", "the file is empty",
                     std::string(read_books_parts::what_belongs[static_cast<std::size_t>(shelf)]));
    }
    if (shelf == Shelf::words && documents.empty()) reading_.own_words.emplace(std::string());
    for (Node const& document : documents) {
        if (read_books_parts::is_single(shelf) && &document != documents.data()) {
            found_.error(document.where, "second-document",
                         fmt::format("there is one {}, but a second document follows here",
                                     shelf == Shelf::shop    ? "shop"
                                     : shelf == Shelf::stock ? "stock"
                                                             : "set of words"),
                         "put all into one, without ---");
            break;
        }
        read_document(shelf, document);
    }
}

inline void BookReader::read_document(Shelf shelf, Node const& node) {
    switch (shelf) {
    case Shelf::shop: book_.shop = read_shop(node, reading_); break;
    case Shelf::ingredients:
    case Shelf::supplies: {
        auto const kind =
            shelf == Shelf::supplies ? Ingredient::Kind::supply : Ingredient::Kind::food;
        for (Ingredient& each : read_ingredients(node, kind, reading_))
            book_.ingredients.push_back(std::move(each));
        if (!node.is_mapping()) has_gap(shelf);
        break;
    }
    case Shelf::prices: add_price_list(read_price_list(node, reading_)); break;
    case Shelf::formulas:
        keep(shelf, read_formula(node, reading_), &Formula::name, book_.formulas);
        break;
    case Shelf::orders: keep(shelf, read_order(node, reading_), &Order::id, book_.orders); break;
    case Shelf::runs: keep(shelf, read_run(node, reading_), &Run::name, book_.runs); break;
    case Shelf::scenarios:
        keep(shelf, read_scenario(node, reading_), &Scenario::name, book_.scenarios);
        break;
    case Shelf::words: reading_.own_words = read_words(node, reading_); break;
    case Shelf::stock: book_.stock = read_stock(node, reading_); break;
    case Shelf::yields:
        keep(shelf, read_yield_test(node, reading_), &YieldTest::name, book_.yield_tests);
        break;
    case Shelf::menus: keep(shelf, read_menu(node, reading_), &Menu::name, book_.menus); break;
    }
}

/// A thing without a name is left out, and may be the one that others name.
template <class Thing>
void BookReader::keep(Shelf shelf, Thing thing, std::string Thing::*name, std::vector<Thing>& all) {
    if ((thing.*name).empty())
        has_gap(shelf);
    else
        all.push_back(std::move(thing));
}

inline void BookReader::add_price_list(PriceList list) {
    if (!list.supplier.is_given()) has_gap(Shelf::prices);
    auto const [place, is_new] = suppliers_.emplace(list.supplier.name, book_.suppliers.size());
    std::size_t const index = place->second;
    if (is_new) book_.suppliers.push_back({list.supplier.name, {}, {}, list.supplier.origin});
    if (list.terms.is_known()) {
        auto const [first, is_first] = terms_of_.emplace(index, list.terms);
        if (is_first) {
            book_.suppliers[index].minimum_order = std::move(list.minimum_order);
            book_.suppliers[index].delivery = std::move(list.delivery);
        } else {
            found_.add({Severity::error,
                        "given-twice",
                        fmt::format("the terms of '{}' are given twice", list.supplier.name),
                        list.terms,
                        {{"first given here", first->second}},
                        "state them in one of the lists"});
        }
    }
    for (Offer& offer : list.offers) {
        offer.supplier = index;
        book_.offers.push_back(std::move(offer));
    }
}

inline bool BookReader::may_be_in_a_gap(Diagnostic const& diagnostic) const {
    auto const is_incomplete = [&](Shelf shelf) {
        return is_incomplete_[static_cast<std::size_t>(shelf)];
    };
    std::string_view const code = diagnostic.code;
    if (code == "not-in-formula")
        return is_incomplete(Shelf::ingredients) || is_incomplete(Shelf::formulas);
    if (!code.starts_with("unknown-")) return false;
    if (code == "unknown-ingredient")
        return is_incomplete(Shelf::ingredients) || is_incomplete(Shelf::supplies) ||
               is_incomplete(Shelf::formulas);
    if (code == "unknown-supply") return is_incomplete(Shelf::supplies);
    if (code == "unknown-supplier") return is_incomplete(Shelf::prices);
    if (code.starts_with("unknown-yield")) return is_incomplete(Shelf::yields);
    if (code == "unknown-formula") return is_incomplete(Shelf::formulas);
    if (code == "unknown-order") return is_incomplete(Shelf::orders);
    if (code == "unknown-category") return false;
    return is_incomplete(Shelf::shop);
}

inline Book BookReader::finish() {
    for (Diagnostic const& diagnostic : link(book_).sorted())
        if (!may_be_in_a_gap(diagnostic)) found_.add(diagnostic);
    return std::move(book_);
}

} // namespace groat
