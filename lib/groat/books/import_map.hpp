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

#include <groat/books/read_value.hpp>
#include <groat/model/book.hpp>
#include <groat/yaml/csv.hpp>
#include <map>
#include <optional>
#include <string>
#include <string_view>

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

} // namespace groat

namespace groat::shapes {

inline constexpr std::string_view decimal_marks[] = {"point", "comma"};
inline constexpr std::string_view thousands_marks[] = {"none", "comma", "point", "space",
                                                       "apostrophe"};
inline constexpr std::string_view slash_ways[] = {"packs", "fraction"};
inline constexpr std::string_view word_the_rest[] = {"the rest"};
inline constexpr Value a_column =
    written(ValueKind::text, "the name of a column, or its number, counted from 1");

inline constexpr KeyShape code_column{"code", may, a_column, "Art. No.", "The supplier's code."};
inline constexpr KeyShape name_column{
    "name", may, a_column, "Article", "The supplier's name of it.", {unless("code")}};
inline constexpr KeyShape pack_column{"pack", may, a_column, "Unit", "What a pack holds."};
inline constexpr KeyShape pack_number_column{
    "pack number",    may, a_column, "Content", "How much a pack holds, without its unit.",
    {without("pack")}};
inline constexpr KeyShape pack_unit_column{"pack unit",
                                           may,
                                           a_column,
                                           "Measure",
                                           "The unit of what a pack holds.",
                                           {with("pack number"), without("pack")}};

inline constexpr KeyShape columns_keys[] = {
    code_column,
    name_column,
    {"price", must, a_column, "Net price", "What a pack costs."},
    {"freight", may, a_column, "Freight", "What a pack costs to come."},
    pack_column,
    pack_number_column,
    pack_unit_column,
};
inline constexpr Shape columns{"columns of a price list", "'columns'", columns_keys};
inline constexpr KeyShape receipt_columns_keys[] = {
    code_column,
    name_column,
    {"packs", must, a_column, "Quantity", "How many packs were bought."},
    {"paid", must, a_column, "Amount", "What all of them took together."},
    {"deposit", may, a_column, "Deposit", "The part of it that comes back."},
    pack_column,
    pack_number_column,
    pack_unit_column,
};
inline constexpr Shape receipt_columns{"columns of a receipt", "'columns'", receipt_columns_keys};

inline constexpr KeyShape import_item_keys[] = {
    {"item", must, to<&ImportItem::item>(a_name), "plum", "What it is called in the books."},
    {"pack", may, to<&ImportItem::pack>(an_amount), "25 kg",
     "What a pack holds, where no column says it."},
    {"yield", may, to<&ImportItem::yield>(a_percentage), "88 %",
     "What is usable of it, where that differs."},
};
inline constexpr Synonym import_item_synonyms[] = {
    {"name", "item"}, {"ingredient", "item"}, {"size", "pack"}};
inline constexpr Shape import_item{"item of an import", "this item", import_item_keys,
                                   import_item_synonyms};
inline constexpr Value an_import_item = a_name | mapping(import_item);

inline constexpr Value a_unit_or_pack = written(ValueKind::text, "a unit or a pack");
inline constexpr KeyShape import_keys[] = {
    {"supplier", must, to<&ImportMap::supplier>(a_name), "Mill Road Provisions",
     "Whose lists these are."},
    {"from", may, to<&ImportMap::from>(a_date), "2026-11-02",
     "The first day on which the prices hold; of a receipt, the day it was bought."},
    {"receipt", may, to<&ImportMap::is_receipt>(yes_or_no), "yes",
     "Whether these are receipts, and not price lists."},
    {"tax included", may, to<&ImportMap::tax_included>(a_percentage), "7 %",
     "The tax that the amounts contain."},
    {"encoding", may, to<&ImportMap::encoding>(one_of(encoding_words)), "latin-1",
     "How the file is encoded."},
    {"delimiter", may, written(ValueKind::text, "a character, or the word tab"), "';'",
     "What stands between two cells."},
    {"skip", may, a_count, "2", "How many lines stand in front of the table."},
    {"header", may, to<&ImportMap::has_header>(yes_or_no), "no",
     "Whether the first row names the columns."},
    {"decimal", may, one_of(decimal_marks), "comma", "What stands before the decimals."},
    {"thousands", may, one_of(thousands_marks), "apostrophe", "What stands between thousands."},
    {"slash", may, one_of(slash_ways), "packs", "What a / between two numbers of a pack means."},
    {"currency", may, a_currency, "USD", "The currency that may stand beside an amount."},
    {"currency sign", may, a_text, "$", "The sign that may stand beside an amount."},
    {"columns", must, mapping(columns) | mapping(receipt_columns),
     "{code: Art. No., price: Net price}", "Which column holds what."},
    {"units", may, names_to("words of the supplier", a_unit_or_pack), "{Stk: each, CS: 12 each}",
     "What the supplier's units mean."},
    {"items", must, names_to("codes or names of the supplier", an_import_item), "{PL-22: plum}",
     "What the supplier's things are called in the books."},
    {"ignore", may, one_of(word_the_rest) | texts, "[Pallet]",
     "What is left out: codes or names, or 'the rest'."},
};
inline constexpr Synonym import_synonyms[] = {
    {"vendor", "supplier"},      {"separator", "delimiter"},      {"decimals", "decimal"},
    {"decimal mark", "decimal"}, {"thousands mark", "thousands"}, {"date", "from"}};
inline constexpr Shape import_map{"import map", "this map", import_keys, import_synonyms};
inline constexpr Value an_import_map = mapping(import_map);

} // namespace groat::shapes

namespace groat {

/// The map of a document. It is fit for use only if nothing was found.
[[nodiscard]] ImportMap read_import_map(Node const& node, Reading const& reading);

/// Finds every thing that the map names among the ingredients and supplies of a linked book, and reports
/// those that are not there.
void link_import_map(ImportMap& map, Book const& book, Diagnostics& found);

namespace import_map_detail {

inline constexpr Wanted a_pack{"the pack", shapes::what_is_bought, "25 lb"};

} // namespace import_map_detail

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/import_map.ipp>
#endif
