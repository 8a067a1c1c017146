#pragma once

#include <groat/desk/order_sheets.hpp>

#include <groat/base/capital.hpp>
#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>
#include <groat/plan/shelf.hpp>
#include <groat/price/quote.hpp>
#include <groat/price/quote_for_client.hpp>
#include <groat/sheets/buy_sheet.hpp>
#include <groat/sheets/client_quote_sheet.hpp>
#include <groat/sheets/label_sheet.hpp>
#include <groat/sheets/make_sheet.hpp>
#include <groat/sheets/quote_sheet.hpp>

#include <algorithm>
#include <utility>

namespace groat::desk {

namespace order_sheets_detail {

/// The files as they are put in.
class Files {
public:
    void put(std::string_view folder, std::string const& name, Sheet sheet) {
        std::string const stem = fmt::format("{}/{}", folder, file_name(name));
        std::string path = stem;
        for (int i = 2; has(path); ++i) path = fmt::format("{}-{}", stem, i);
        all_.push_back({std::move(path), std::move(sheet)});
    }
    [[nodiscard]] std::vector<SheetFile> take() && { return std::move(all_); }

private:
    /// Many systems take two names that differ in capitals only for one.
    [[nodiscard]] bool has(std::string const& path) const {
        return std::any_of(all_.begin(), all_.end(), [&](SheetFile const& each) {
            return capitals(each.path) == capitals(path);
        });
    }

    std::vector<SheetFile> all_;
};

/// One label for each item and way of selling it, however often it is ordered. What has no weight gets none, which is
/// a warning here: the other sheets need none. Returns whether all others are there.
inline bool put_labels(Files& files, Order const& order, Costing const& costing,
                       std::optional<Date> made, Diagnostics& found) {
    Book const& book = costing.book();
    bool is_whole = true;
    std::vector<std::pair<std::size_t, SaleUnit const*>> seen;
    for (OrderLine const& line : order.lines) {
        Formula const& formula = book.formulas[line.item.index];
        SaleUnit const* const unit =
            line.sale_unit.is_resolved() ? &formula.sold_as[line.sale_unit.index] : nullptr;
        if (unit == nullptr && !formula.makes_pieces()) continue;
        if (std::find(seen.begin(), seen.end(), std::pair(line.item.index, unit)) != seen.end())
            continue;
        seen.emplace_back(line.item.index, unit);
        if (auto const& lacks = costing.formulary().with_losses[line.item.index].unweighed) {
            found.warn(formula.origin, lacks->code,
                       fmt::format("'{}' gets no label: {}", formula.name, lacks->what),
                       lacks->help);
            continue;
        }
        auto const label = label_of(costing, line.item.index, unit, book.shop.label, made, found);
        if (!label) {
            is_whole = false;
            continue;
        }
        std::string const name = unit == nullptr ? formula.name : formula.name + ' ' + unit->name;
        files.put("labels", name, label_sheet(*label, book, book.shop.label, false));
    }
    return is_whole;
}

} // namespace order_sheets_detail

GROAT_INLINE std::optional<std::vector<SheetFile>> order_sheets(LinkedBook const& linked,
                                                                Order const& order,
                                                                Dates const& dates,
                                                                Diagnostics& found) {
    Book const& book = linked.book();
    Costing const costing(linked, day_of_order(dates, order, book));
    Costing const costing_today(linked, day_of(dates));
    auto const quoted = quote(costing, order, found);
    auto const plan = produce(costing, {&order}, found);
    auto const buying = buy(costing_today, {&order}, found);
    if (!quoted || !plan || !buying) return std::nullopt;
    order_sheets_detail::Files files;
    files.put("client", "quote " + order.id,
              client_quote_sheet(quote_for_client(*quoted, book), book.shop));
    if (!order_sheets_detail::put_labels(files, order, costing, dates.made, found))
        return std::nullopt;
    files.put("maker", "worksheet " + order.id, maker_quote_sheet(*quoted, costing));
    files.put("maker", "to make", make_sheet(*plan, costing, &*buying));
    files.put("maker", "to buy",
              buy_sheet(*buying, book, buying_days(costing_today, *buying),
                        costed_and_paid(costing_today, *buying)));
    for (Basket const& basket : buying->baskets)
        files.put("suppliers", book.suppliers[basket.supplier].name,
                  supplier_order_sheet(basket, buying->date, book));
    return std::move(files).take();
}

GROAT_INLINE std::string file_name(std::string_view named) {
    std::string const words = printable(named);
    constexpr std::size_t longest = 100; // bytes: room for an ending below the 255 of most systems
    std::string name;
    for (std::size_t at = 0; at < words.size();) {
        std::size_t const length = character_at(words, at).length;
        char const first = words[at];
        bool const is_letter = (first >= 'a' && first <= 'z') || (first >= '0' && first <= '9') ||
                               (static_cast<unsigned char>(first) & 0x80U) != 0;
        if (first >= 'A' && first <= 'Z')
            name += static_cast<char>(first - 'A' + 'a');
        else if (is_letter && name.size() + length <= longest)
            name.append(words, at, length);
        else if (!is_letter && !name.empty() && name.back() != '-')
            name += '-';
        at += length;
    }
    name.resize(std::min(name.size(), longest));
    while (!name.empty() && name.back() == '-') name.pop_back();
    return name.empty() ? "sheet" : name;
}

} // namespace groat::desk
