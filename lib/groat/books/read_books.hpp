/// From the texts of a folder of books to one linked book. This knows no file system: whoever has the
/// texts, from a folder (see load.hpp) or elsewhere, hands them in one by one.
#pragma once

#include <groat/books/read_prices.hpp>
#include <groat/model/book.hpp>

#include <array>
#include <iterator>
#include <map>
#include <string>
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

/// A thing without a name is left out, and may be the one that others name.
template <class Thing>
void BookReader::keep(Node const& node, Shelf shelf, Thing thing, std::string Thing::*name,
                      std::vector<Thing>& all) {
    thing.is_in_doubt = has_erred(node);
    if (!(thing.*name).empty()) return all.push_back(std::move(thing));
    has_gap(shelf);
    doubt_last(shelf);
}

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/read_books.ipp>
#endif
