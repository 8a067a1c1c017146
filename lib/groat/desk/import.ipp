#pragma once

#include <groat/desk/import.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/name.hpp>
#include <groat/books/import_prices.hpp>
#include <groat/books/write_prices.hpp>
#include <groat/books/write_receipt.hpp>
#include <groat/cost/offers_in_force.hpp>
#include <groat/model/base_links.hpp>
#include <groat/model/receipt_links.hpp>
#include <groat/sheets/import_sheet.hpp>
#include <groat/yaml/tree.hpp>

#include <algorithm>
#include <utility>
#include <vector>

namespace groat::desk {

namespace import_detail {

inline Reading reading_of(OpenBooks& books) {
    return {books.found, books.book().shop.currency, books.book().shop.measures};
}

/// The offers that a receipt makes, its supplier looked up.
inline std::vector<Offer> paid_offers(Receipt& receipt, Book const& book) {
    for (std::size_t i = 0; i < book.suppliers.size(); ++i)
        if (book.suppliers[i].name == receipt.supplier.name) receipt.supplier.index = i;
    return offers_of(receipt, book);
}

/// A pack that cannot be turned into what its item is then costed by would be of no use in the books.
inline void check_packs(std::vector<Offer> const& offers, Book book, Diagnostics& found) {
    book.offers.insert(book.offers.end(), offers.begin(), offers.end());
    link_bases(book);
    for (Offer const& offer : offers)
        if (auto const content = content_of(offer, book.ingredients[offer.item.index]); !content)
            found.error(offer.origin, content.error());
}

/// A supplier without offers may be a new one, or a known one misspelt.
inline void suggest_supplier(ImportMap const& map, Book const& book, Diagnostics& found) {
    auto const names = names_of(book.suppliers);
    if (std::find(names.begin(), names.end(), map.supplier.name) != names.end()) return;
    if (auto const near = nearest_name(map.supplier.name, names))
        found.warn(map.supplier.origin, "new-supplier",
                   fmt::format("the books have no offers of '{}' yet", map.supplier.name),
                   fmt::format("did you mean '{}'?", *near));
}

inline Sheet changes_sheet(ImportMap const& map, std::string const& file,
                           ImportedPrices const& imported, std::vector<Offer> const& offers,
                           Date date, OpenBooks const& books) {
    ImportReport report{file, map.supplier.name, map.from, date, offers};
    report.is_receipt = map.is_receipt;
    report.changes = map.is_receipt
                         ? paid_against_list(books.book(), map.supplier.name, offers, date)
                         : price_changes(books.book(), map.supplier.name, offers, date);
    for (UnmatchedRow const& row : imported.unmatched)
        report.unmatched.push_back({row.where.line, row.code, row.name, row.price});
    report.rows = imported.rows;
    report.ignored = imported.ignored;
    return import_sheet(report, books.book(), books.sources);
}

} // namespace import_detail

GROAT_INLINE std::optional<ImportMap> import_map_of(NamedText map, OpenBooks& books) {
    std::size_t const errors = books.found.errors_met();
    auto const is_wrong = [&] { return books.found.errors_met() > errors; };
    if (map.text.starts_with(byte_order_mark)) map.text.erase(0, byte_order_mark.size());
    std::uint32_t const file = books.sources.add(std::move(map.name), std::move(map.text));
    std::vector<Node> const documents = read_tree(books.sources, file, books.found).documents;
    if (is_wrong()) return std::nullopt;
    if (documents.empty())
        books.found.error(Span{file}, "empty-file", "the map is empty",
                          "it begins with 'supplier: a name'; 'columns:' and 'items:' follow");
    else if (documents.size() > 1)
        books.found.error(documents[1].where, "second-document",
                          "a map is one document, but a second one follows here",
                          "put all into one, without ---");
    if (is_wrong()) return std::nullopt;
    ImportMap result = read_import_map(documents.front(), import_detail::reading_of(books));
    if (!is_wrong()) link_import_map(result, books.book(), books.found);
    if (is_wrong()) return std::nullopt;
    return result;
}

GROAT_INLINE std::optional<Imported> import_csv(ImportMap const& map, NamedText csv, Date date,
                                                OpenBooks& books) {
    std::size_t const errors = books.found.errors_met();
    auto const is_wrong = [&] { return books.found.errors_met() > errors; };
    auto const file =
        add_csv(books.sources, csv.name, std::move(csv.text), map.encoding, books.found);
    if (!file) return std::nullopt;
    ImportedPrices imported =
        import_prices(map, books.sources, *file, import_detail::reading_of(books));
    if (is_wrong()) return std::nullopt;
    std::vector<Offer> const offers =
        map.is_receipt ? import_detail::paid_offers(imported.receipt, books.book())
                       : imported.list.offers;
    import_detail::check_packs(offers, books.book(), books.found);
    if (is_wrong()) return std::nullopt;
    import_detail::suggest_supplier(map, books.book(), books.found);
    std::string const note = fmt::format("From {}, by groat import.", csv.name);
    return Imported{map.is_receipt ? write_receipt(imported.receipt, note)
                                   : write_price_list(imported.list, note),
                    import_detail::changes_sheet(map, csv.name, imported, offers, date, books)};
}

} // namespace groat::desk
