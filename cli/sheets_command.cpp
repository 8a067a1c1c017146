#include "session.hpp"

#include <groat/base/capital.hpp>
#include <groat/plan/buying.hpp>
#include <groat/plan/label.hpp>
#include <groat/price/quote.hpp>
#include <groat/sheets/buy_sheet.hpp>
#include <groat/sheets/label_sheet.hpp>
#include <groat/sheets/make_sheet.hpp>
#include <groat/sheets/quote_sheet.hpp>

#include <algorithm>

namespace groat::cli {

namespace {

/// The files of a folder, each sheet drawn as it is put in.
class Files {
public:
    explicit Files(Options const& options) : options_(options) {}

    void put(std::string_view folder, std::string const& name, Sheet const& sheet) {
        std::string const stem = fmt::format("{}/{}", folder, file_name(name));
        std::string path = stem + ending();
        for (int i = 2; has(path); ++i) path = fmt::format("{}-{}{}", stem, i, ending());
        files_.push_back({std::move(path), drawn(sheet, options_)});
    }
    [[nodiscard]] std::vector<File> const& all() const { return files_; }

private:
    /// Many systems take two names that differ in capitals only for one.
    [[nodiscard]] bool has(std::string const& path) const {
        return std::any_of(files_.begin(), files_.end(),
                           [&](File const& each) { return capitals(each.path) == capitals(path); });
    }
    [[nodiscard]] std::string ending() const {
        if (options_.as == "text") return ".txt";
        return options_.as == "markdown" ? ".md" : "." + options_.as;
    }

    Options const& options_;
    std::vector<File> files_;
};

/// One label for each item and way of selling it, however often it is ordered. What has no weight gets none, which is
/// a warning here: the other sheets need none.
bool put_labels(Files& files, Order const& order, Costing const& costing, std::optional<Date> made,
                Diagnostics& found) {
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

} // namespace

int sheets(Options const& said) {
    Options options = said;
    if (options.as.empty()) options.as = "html";
    Session session(options);
    auto const today = session.date_or(std::nullopt);
    if (!today) return command_line_wrong;
    auto const made = made_on(options);
    if (!made) return command_line_wrong;
    if (session.is_in_doubt({BookPart::orders, BookPart::stock})) return session.give_up();
    Book const& book = session.book();
    Order const* const order = session.order(options.subject);
    if (order == nullptr) return session.refusal();

    Files files(options);
    Costing const costing(session.linked(),
                          *session.date_or(pricing_date(*order, companions_of(*order, book))));
    Costing const costing_today(session.linked(), *today);
    auto const quote = groat::quote(costing, *order, session.found());
    auto const plan = produce(costing, {order}, session.found());
    auto const buying = groat::buy(costing_today, {order}, session.found());
    if (!quote || !plan || !buying) return session.give_up();
    files.put("client", "quote " + order->id, client_quote_sheet(*quote, book));
    if (!put_labels(files, *order, costing, *made, session.found())) return session.give_up();
    files.put("maker", "worksheet " + order->id, maker_quote_sheet(*quote, costing));
    files.put("maker", "to make", make_sheet(*plan, costing, &*buying));
    files.put("maker", "to buy",
              buy_sheet(*buying, book, buying_days(costing_today, *buying),
                        costed_and_paid(costing_today, *buying)));
    for (Basket const& basket : buying->baskets)
        files.put("suppliers", book.suppliers[basket.supplier].name,
                  supplier_order_sheet(basket, buying->date, book));
    return session.hand_over(files.all(), options.out.empty() ? file_name(order->id) : options.out,
                             "groat sheets " + printable(order->id));
}

} // namespace groat::cli
