#pragma once

#include <groat/sheets/import_sheet.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>
#include <groat/sheets/letterhead.hpp>
#include <groat/sheets/offer_words.hpp>
#include <groat/sheets/shape_books.hpp>

#include <string_view>
#include <utility>

namespace groat {

namespace import_sheet_detail {

using Kind = PriceChange::Kind;

struct Group {
    Kind kind;
    SectionShape const* shape; ///< whose members are its columns
    std::string_view title;
    std::string_view title_of_receipt;
};
inline constexpr Group groups[] = {
    {Kind::up, &sheet_shapes::importing::up, "Dearer", "Dearer than listed"},
    {Kind::down, &sheet_shapes::importing::down, "Cheaper", "Cheaper than listed"},
    {Kind::repacked, &sheet_shapes::importing::repacked, "In another pack",
     "In another pack than listed"},
    {Kind::added, &sheet_shapes::importing::new_, "New", "Not on their list"},
    {Kind::gone, &sheet_shapes::importing::gone, "Gone", "Gone"},
    {Kind::unchanged, &sheet_shapes::importing::unchanged, "Unchanged", "As listed"},
};

inline std::string place_words(Span const& where, Sources const& sources) {
    return where.is_known() ? fmt::format("{}:{}", sources.name(where.file), where.line)
                            : std::string();
}

inline std::string head_of(std::string_view member, bool is_receipt) {
    if (member == "pack") return "Pack";
    if (member == "old_pack") return "Was in";
    if (member == "code") return "Code";
    if (member == "was") return is_receipt ? "Listed" : "Was";
    if (member == "now") return is_receipt ? "Price paid" : "Price now";
    if (member == "change") return "Change";
    if (member == "where") return "In the books at";
    return {};
}

inline Cell cell_of(std::string_view member, PriceChange const& change, ImportReport const& report,
                    Book const& book, Figures const& figures, Sources const& sources) {
    Offer const* const after = change.after ? &report.listed[*change.after] : nullptr;
    Offer const* const before = change.before ? &book.offers[*change.before] : nullptr;
    if (member == "item") return book.ingredients[change.ingredient].name;
    if (member == "pack") return pack_words(after != nullptr ? *after : *before, figures);
    if (member == "old_pack") return pack_words(*before, figures);
    if (member == "code") return after->code;
    if (member == "was") return figures.money(change.was);
    if (member == "now") return figures.money(change.now);
    if (member == "change") return Figures::percent(change.change);
    return place_words(before->origin, sources);
}

inline Table change_table(Group const& group, ImportReport const& report, Book const& book,
                          Figures const& figures, Sources const& sources) {
    Table table{std::string(group.shape->key),
                std::string(report.is_receipt ? group.title_of_receipt : group.title),
                {},
                {},
                {}};
    for (MemberShape const& member : group.shape->members)
        table.columns.push_back({std::string(member.key), head_of(member.key, report.is_receipt),
                                 member.value.is_read()});
    for (PriceChange const& each : report.changes) {
        if (each.kind != group.kind) continue;
        std::vector<Cell> cells;
        for (MemberShape const& member : group.shape->members)
            cells.push_back(cell_of(member.key, each, report, book, figures, sources));
        table.rows.push_back({fmt::format("{}", table.rows.size() + 1), std::move(cells)});
    }
    if (group.kind == Kind::repacked)
        table.remark = "The change is that of the cost of the same amount.";
    if (group.kind == Kind::gone)
        table.remark = "These stay in force until their offers are given an 'until'.";
    return table;
}

/// What the books say by hand and a list from a file would undo.
inline Table lost_table(ImportReport const& report, Book const& book, Sources const& sources) {
    Table table =
        table_of<sheet_shapes::importing::lost>("Said by the old offers, and not by the new ones",
                                                {{"item"}, {"what"}, {"where", "In the books at"}});
    for (PriceChange const& each : report.changes) {
        if (each.lost.empty()) continue;
        std::string words;
        for (std::string const& word : each.lost) words += (words.empty() ? "" : ", ") + word;
        table.rows.push_back({fmt::format("{}", table.rows.size() + 1),
                              {book.ingredients[each.ingredient].name, std::move(words),
                               place_words(book.offers[*each.before].origin, sources)}});
    }
    return table;
}

inline Table unmatched_table(ImportReport const& report) {
    Table table = table_of<sheet_shapes::importing::unmatched>(
        "Rows without an item in the map",
        {{"line", "Line"}, {"code", "Code"}, {"name", "Name"}, {"price", "Price"}});
    table.remark = "Put what you buy among 'items' in the map, the others among 'ignore'.";
    for (RowLeftOut const& row : report.unmatched)
        table.rows.push_back(
            {fmt::format("{}", table.rows.size() + 1),
             {Figure{fmt::format("{}", row.line), Number(row.line), ""}, shortened(row.code, 24),
              shortened(row.name, 48), shortened(row.price, 16)}});
    return table;
}

inline Facts head(ImportReport const& report, Shop const& shop) {
    auto const number = [](std::size_t count) { return Figures::count(Number(count)); };
    return facts_of<sheet_shapes::importing::report>(
        "",
        {{"supplier", "Supplier", report.supplier},
         {"file", "File", report.file},
         {"from", report.is_receipt ? "Bought on" : "In force from",
          report.from ? Figures::day(*report.from) : Cell(std::string("always"))},
         {"date", "Against the prices of", Figures::day(report.date)},
         {"currency", "Currency", std::string(shop.currency.code())},
         {"rows", "Rows", number(report.rows)},
         {"offers", report.is_receipt ? "Packs bought" : "Offers", number(report.listed.size())},
         {"unmatched", "Not in the map", number(report.unmatched.size())},
         {"ignored", "Ignored", number(report.ignored)}});
}

/// Whether what a pack costs is not simply the price that is listed.
inline bool has_more_than_prices(ImportReport const& report, Book const& book) {
    auto const is_more = [](Offer const& offer) { return offer.pack_cost() != offer.price; };
    return std::any_of(report.changes.begin(), report.changes.end(), [&](PriceChange const& each) {
        return (each.before && is_more(book.offers[*each.before])) ||
               (each.after && is_more(report.listed[*each.after]));
    });
}

} // namespace import_sheet_detail

GROAT_INLINE Sheet import_sheet(ImportReport const& report, Book const& book,
                                Sources const& sources) {
    Figures const figures(book.shop);
    Sheet sheet = sheet_for(book.shop, "import", "maker",
                            (report.is_receipt ? "Paid to " : "New prices of ") + report.supplier);
    sheet.sections.emplace_back(import_sheet_detail::head(report, book.shop));
    auto const add = [&](Table table) {
        if (!table.rows.empty()) sheet.sections.emplace_back(std::move(table));
    };
    for (import_sheet_detail::Group const& group : import_sheet_detail::groups)
        add(import_sheet_detail::change_table(group, report, book, figures, sources));
    add(import_sheet_detail::lost_table(report, book, sources));
    add(import_sheet_detail::unmatched_table(report));
    if (import_sheet_detail::has_more_than_prices(report, book))
        sheet.sections.emplace_back(remarks_of<sheet_shapes::importing::remark>(
            "",
            {"Prices are what a pack costs: with freight, without recoverable tax and deposit."}));
    return sheet;
}

} // namespace groat
