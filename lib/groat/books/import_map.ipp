#pragma once

#include <groat/books/import_map.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/name.hpp>
#include <groat/base/text.hpp>

#include <string_view>

namespace groat {

namespace import_map_detail {

inline std::string read_delimiter(Node const* node, Reading const& reading) {
    if (node == nullptr) return ",";
    // Not trimmed: a blank or a tab in quotation marks is meant.
    std::string const text = !node->is_scalar()                          ? std::string()
                             : node->is_quoted && node->text == " "      ? " "
                             : node->text == "tab" || node->text == "\t" ? "\t"
                             : node->text == "space"                     ? " "
                                                     : std::string(trimmed(node->text));
    if (character_count(text) == 1 && text != "\"" && text != "\n" && text != "\r") return text;
    if (node->is_scalar())
        reading.found.error(node->where, "bad-delimiter",
                            fmt::format("'{}' is no delimiter", shortened(node->text, 32)),
                            "write the one character that stands between two cells, as ';', or "
                            "the word tab");
    else
        expected("a delimiter", *node, reading.found, "write it in quotation marks, as ';'");
    return ",";
}

inline void read_currency(Fields<shapes::import_map>& fields, ImportMap& map,
                          Reading const& reading) {
    auto const code = read_scalar(
        fields.at("currency"), "a currency", reading,
        [&](std::string_view text) -> Result<std::string> {
            if (!Currency::find(text))
                return refuse("unknown-currency",
                              fmt::format("'{}' is not a currency", shortened(text, 32)),
                              "write the three letters of ISO 4217; a sign that stands beside the "
                              "prices goes into 'currency sign'");
            if (!reading.currency.is_none() && text != reading.currency.code())
                return refuse("wrong-currency",
                              fmt::format("this list is in {}, but the books are kept in {}", text,
                                          reading.currency.code()),
                              "the prices have to be turned into the currency of the books first");
            return std::string(text);
        });
    assign(map.currency_code, code);
    auto const sign = read_scalar(
        fields.at("currency sign"), "a currency sign", reading,
        [](std::string_view text) -> Result<std::string> {
            if (text.empty() || text.size() > 16 ||
                text.find_first_of("0123456789.,-+") != std::string_view::npos)
                return refuse("bad-currency-sign",
                              fmt::format("'{}' is no currency sign", shortened(text, 32)),
                              "write what stands beside the prices, as '$', without digits and "
                              "points");
            return std::string(text);
        });
    assign(map.currency_sign, sign);
}

inline void read_marks(Fields<shapes::import_map>& fields, NumberMarks& marks,
                       Reading const& reading) {
    marks.has_decimal_comma = read_word(fields.at("decimal"), shapes::decimal_marks, reading) == 1U;
    auto const word =
        read_word(fields.at("thousands"), shapes::thousands_marks, reading).value_or(0);
    marks.thousands = static_cast<NumberMarks::Thousands>(word);
    if (marks.thousands ==
        (marks.has_decimal_comma ? NumberMarks::Thousands::comma : NumberMarks::Thousands::point))
        reading.found.error(fields.place_of("thousands"), "same-mark",
                            fmt::format("a {} cannot mark both decimals and thousands",
                                        shapes::decimal_marks[marks.has_decimal_comma ? 1 : 0]),
                            marks.has_decimal_comma ? "write 'thousands: point'"
                                                    : "write 'decimal: comma' with it");
}

inline std::optional<ImportColumn> read_column(Node const* node, bool has_header,
                                               Reading const& reading) {
    auto const name = read_text(node, reading);
    if (!name) return std::nullopt;
    ImportColumn column{*name, 0, node->where};
    bool const is_number = !node->is_quoted && name->size() <= 4 &&
                           name->find_first_not_of("0123456789") == std::string::npos;
    if (is_number)
        for (char const c : *name)
            column.number = column.number * 10 + static_cast<std::size_t>(c - '0');
    if (is_number && (column.number == 0 || column.number > most_csv_cells))
        reading.found.error(
            node->where, "bad-column", fmt::format("there is no column number {}", *name),
            "columns are counted from 1; put a name of digits into quotation marks");
    else if (!is_number && !has_header)
        reading.found.error(
            node->where, "bad-column",
            fmt::format("the column '{}' cannot be found without a header", shortened(*name, 32)),
            "count the columns from 1, as {price: 4}, or take out 'header: no'");
    return column;
}

/// What columns of price lists and of receipts have alike; `columns` is closed here.
inline void read_columns_alike(auto& columns, ImportMap& map, Reading const& reading) {
    auto const read = [&](Node const* node) { return read_column(node, map.has_header, reading); };
    map.code = read(columns.at("code"));
    map.name = read(columns.at("name"));
    map.pack = read(columns.at("pack"));
    map.pack_number = read(columns.at("pack number"));
    map.pack_unit = read(columns.at("pack unit"));
    columns.close();
}

inline void read_columns(Fields<shapes::import_map>& fields, ImportMap& map,
                         Reading const& reading) {
    Node const* const node =
        fields.needed("columns", map.is_receipt ? "{code: Art. No., packs: Quantity, paid: Amount}"
                                                : "{code: Art. No., price: Net price}");
    if (node == nullptr) return;
    auto const read = [&](Node const* each) { return read_column(each, map.has_header, reading); };
    if (map.is_receipt) {
        Fields<shapes::receipt_columns> columns(*node, reading.found);
        map.packs = read(columns.at("packs"));
        map.paid = read(columns.at("paid"));
        map.deposit = read(columns.at("deposit"));
        read_columns_alike(columns, map, reading);
    } else {
        Fields<shapes::columns> columns(*node, reading.found);
        map.price = read(columns.at("price"));
        map.freight = read(columns.at("freight"));
        read_columns_alike(columns, map, reading);
    }
}

inline void read_units(Node const* node, ImportMap& map, Reading const& reading) {
    if (node == nullptr) return;
    if (!node->is_mapping())
        return expected("a mapping of the supplier's words", *node, reading.found,
                        "write it as {Stk: each, CS: 12 each}");
    for (std::size_t i = 0; i < node->items.size(); ++i) {
        if (!is_name(node->keys[i], reading)) continue;
        auto const meaning = read_scalar(
            &node->items[i], "a unit", reading, [&](std::string_view text) -> Result<std::string> {
                bool const is_unit = find_unit(text, reading.measures) != nullptr;
                auto const quantity = parse_wanted(
                    is_unit ? fmt::format("1 {}", text) : std::string(text), a_pack, reading);
                if (!quantity) {
                    Flaw flaw = quantity.error();
                    flaw.length = 0; // its place may be in a text that nobody wrote
                    return Refused(std::move(flaw));
                }
                return std::string(text);
            });
        if (meaning) map.units.emplace(trimmed(node->keys[i].text), *meaning);
    }
}

inline ImportItem read_item(Node const& node, Reading const& reading) {
    ImportItem item;
    if (!node.is_mapping()) {
        item.item = read_reference(&node, reading);
        return item;
    }
    Fields<shapes::import_item> fields(node, reading.found);
    fields.read_into(item, reading);
    if (item.pack) item.pack_text = trimmed(fields.at("pack")->text);
    fields.close();
    return item;
}

inline void read_items(Node const* node, ImportMap& map, Reading const& reading) {
    if (node == nullptr) return;
    if (!node->is_mapping())
        return expected("a mapping of the supplier's codes", *node, reading.found,
                        "write a line 'PL-22: plum' for each");
    for (std::size_t i = 0; i < node->items.size(); ++i) {
        Key const& key = node->keys[i];
        if (!is_name(key, reading)) continue;
        ImportItem item = read_item(node->items[i], reading);
        item.where = key.where;
        auto const [first, is_new] = map.items.emplace(trimmed(key.text), std::move(item));
        if (!is_new)
            reading.found.add({Severity::error,
                               "given-twice",
                               fmt::format("'{}' is given twice", shortened(first->first, 48)),
                               key.where,
                               {{"first given here", first->second.where}},
                               "keep one of them"});
    }
}

inline void read_ignored(Node const* node, ImportMap& map, Reading const& reading) {
    if (node == nullptr) return;
    if (node->is_scalar() && !node->is_quoted && trimmed(node->text) == "the rest") {
        map.ignores_the_rest = true;
        return;
    }
    auto const add = [&](Node const& each) {
        auto const text = read_text(&each, reading);
        if (!text) return;
        map.ignored.emplace(*text, each.where);
        if (auto const item = map.items.find(*text); item != map.items.end())
            reading.found.add({Severity::error,
                               "given-twice",
                               fmt::format("'{}' is to be ignored, and read", shortened(*text, 48)),
                               each.where,
                               {{"it stands among the items here", item->second.where}},
                               "keep one of them"});
    };
    for (Node const& each : read_list(node, "what to ignore", reading)) add(each);
}

} // namespace import_map_detail

GROAT_INLINE ImportMap read_import_map(Node const& node, Reading const& reading) {
    namespace parts = import_map_detail;
    Fields<shapes::import_map> fields(node, reading.found);
    ImportMap map;
    fields.read_into(map, reading);
    map.delimiter = parts::read_delimiter(fields.at("delimiter"), reading);
    if (auto const skip = fields.read<Integer>("skip", reading))
        map.skip = static_cast<std::size_t>(std::min(*skip, Integer(most_csv_lines)));
    parts::read_marks(fields, map.marks, reading);
    if (auto const slash = read_word(fields.at("slash"), shapes::slash_ways, reading))
        map.slash = *slash == 0 ? Slash::packs : Slash::fraction;
    parts::read_currency(fields, map, reading);
    parts::read_columns(fields, map, reading);
    parts::read_units(fields.at("units"), map, reading);
    parts::read_items(fields.at("items"), map, reading);
    parts::read_ignored(fields.at("ignore"), map, reading);
    fields.close();
    return map;
}

GROAT_INLINE void link_import_map(ImportMap& map, Book const& book, Diagnostics& found) {
    for (auto& [key, entry] : map.items) {
        Reference& item = entry.item;
        if (!item.is_given()) continue;
        auto const index = book.ingredient_index.find(item.name);
        if (index != book.ingredient_index.end()) {
            item.index = index->second;
            if (entry.pack && book.ingredients[item.index].is_supply() &&
                !entry.pack->is(Dimension::count))
                found.error(item.origin, "wrong-dimension",
                            fmt::format("'{}' is a supply and is counted, but its pack is a {}",
                                        item.name, to_text(entry.pack->dimension)),
                            "write how many there are, as 'pack: 200' or 'pack: 4 x 50'");
            continue;
        }
        bool const is_made = book.find_formula(item.name) != nullptr;
        found.error(item.origin, "unknown-ingredient",
                    is_made ? fmt::format("'{}' is made here, not bought", item.name)
                            : fmt::format("no ingredient or supply is called '{}'", item.name),
                    is_made ? "name an ingredient or a supply"
                            : did_you_mean(item.name, names_of(book.ingredients),
                                           "add it to ingredients.yaml or supplies.yaml"));
    }
}

} // namespace groat
