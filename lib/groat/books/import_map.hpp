/// How a supplier writes a price list as CSV, and what the things in it are called in the books: a small
/// file that is written once for each supplier.
///
///     supplier: Mill Road Provisions
///     delimiter: ';'
///     decimal: comma
///     columns: {code: Art. No., price: Net price, pack: Unit}
///     items: {PL-22: plum, FL-01: {item: plain flour, pack: 25 kg}}
///     ignore: [Pallet]
///
/// Whatever is not said is the plainest: UTF-8, commas between cells, a point for shapes::decimal_marks, no marks for
/// shapes::thousands_marks, no currency beside a price, the names of the columns in the first row. Nothing is guessed.
#pragma once

#include <groat/books/scalars.hpp>
#include <groat/model/book.hpp>
#include <groat/yaml/csv.hpp>

#include <map>
#include <optional>
#include <string>

namespace groat {

/// How a supplier writes numbers.
struct NumberMarks {
    enum class Thousands { none, comma, point, space, apostrophe };
    bool has_decimal_comma = false;
    Thousands thousands = Thousands::none;
};

/// What a `/` between two numbers of a pack means: `6/5 lb` is six fives to some, and 1.2 to others.
enum class Slash { refused, packs, fraction };

/// A column by the name in its header or, where `number` is not 0, counted from 1.
struct ImportColumn {
    std::string name;
    std::size_t number = 0;
    Span where = {};
};

/// What stands behind an item code or name of the supplier.
struct ImportItem {
    Reference item;
    std::optional<Quantity> pack = {}; ///< where no column says it
    std::string pack_text = {};
    std::optional<Yield> yield = {};
    Span where = {};
};

struct ImportMap {
    Reference supplier = {};
    std::optional<Date> from = {}; ///< since when the prices hold; of a receipt, when it was bought
    bool is_receipt = false;       ///< what was paid, and not what is asked
    TaxRate tax_included = {};
    Encoding encoding = Encoding::utf_8;
    std::string delimiter = ",";
    std::size_t skip = 0; ///< lines in front of the table
    bool has_header = true;
    NumberMarks marks = {};
    Slash slash = Slash::refused;
    std::string currency_code = {}; ///< may stand beside an amount
    std::string currency_sign = {};
    std::optional<ImportColumn> code = {};
    std::optional<ImportColumn> name = {};
    std::optional<ImportColumn> price = {};
    std::optional<ImportColumn> pack = {};
    std::optional<ImportColumn> pack_number = {};
    std::optional<ImportColumn> pack_unit = {};
    std::optional<ImportColumn> freight = {};
    std::optional<ImportColumn> packs = {};                     ///< of a receipt: how many
    std::optional<ImportColumn> paid = {};                      ///< of a receipt: for all of them
    std::optional<ImportColumn> deposit = {};                   ///< of a receipt: contained in that
    std::map<std::string, std::string, std::less<>> units = {}; ///< the supplier's word: ours
    std::map<std::string, ImportItem, std::less<>> items = {};  ///< by code or name
    std::map<std::string, Span, std::less<>> ignored = {};      ///< codes or names
    bool ignores_the_rest = false;
};

/// The map of a document. It is fit for use only if nothing was found.
[[nodiscard]] ImportMap read_import_map(Node const& node, Reading const& reading);

/// Finds every thing that the map names among the ingredients and supplies of a linked book, and reports
/// those that are not there.
void link_import_map(ImportMap& map, Book const& book, Diagnostics& found);

namespace import_map_detail {

inline constexpr Wanted a_pack{
    "the pack", {Dimension::mass, Dimension::volume, Dimension::count}, "25 lb"};

} // namespace import_map_detail

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/import_map.ipp>
#endif
