#pragma once

#include <groat/sheets/buy_sheet.hpp>

#include <groat/base/linkage.hpp>
#include <groat/sheets/buy_sections.hpp>
#include <groat/sheets/cautions.hpp>
#include <groat/sheets/letterhead.hpp>
#include <groat/sheets/offer_words.hpp>
#include <groat/sheets/shape_buy.hpp>

#include <string>

namespace groat {

namespace buy_sheet_detail {

inline Facts head(Buying const& buying, Book const& book, Figures const& figures) {
    FactsOf<sheet_shapes::buy::purchase> facts;
    std::string orders;
    for (Order const* order : buying.orders) orders += (orders.empty() ? "" : ", ") + order->id;
    facts.add("orders", buying.orders.size() == 1 ? "For order" : "For orders", std::move(orders));
    facts.add("date", "Prices of", Figures::day(buying.date));
    if (book.stock.counted) facts.add("stock", "Shelf as of", Figures::day(*book.stock.counted));
    facts.add("currency", "Currency", std::string(book.shop.currency.code()));
    facts.add("total", "To be paid", figures.money(buying.total));
    if (buying.is_least()) {
        facts.add("least", "Could it be less", std::string("no, this is the least"));
    } else {
        Money const most = buying.most_to_save();
        facts.add("least", "Could it be less",
                  fmt::format("by at most {} ({} %)", figures.amount(most, 0, Tie::up),
                              figures.fixed(most / buying.total * 100, 2, Tie::up)));
    }
    if (!buying.is_least()) facts.add("bound", "Never less than", figures.money(buying.bound));
    return facts;
}

/// "Nobody has everything; X comes closest, without this, that and 3 more."
inline std::string closest_words(Buying const& buying, Book const& book) {
    constexpr std::size_t most = 6;
    std::size_t const count = buying.closest_lacks.size();
    if (count == 0) return "Nobody has everything within minimum orders and limits of packs.";
    std::string lacks;
    for (std::size_t i = 0; i < count && i < most; ++i) {
        if (i > 0) lacks += i + 1 == count ? " and " : ", ";
        lacks += book.ingredients[buying.closest_lacks[i]].name;
    }
    if (count > most) lacks += fmt::format(" and {} more", count - most);
    return fmt::format("Nobody has everything; {} comes closest, without {}.",
                       book.suppliers[*buying.closest].name, lacks);
}

inline Table other_ways(Buying const& buying, Book const& book, Figures const& figures) {
    Table table = table_of<sheet_shapes::buy::ways>(
        "Other ways to buy the same", {{"way"}, {"total", "Outlay"}, {"more", "Dearer by"}});
    auto const add = [&](std::string key, std::string words, Money const& total) {
        table.rows.push_back(
            {std::move(key),
             {std::move(words), figures.money(total), figures.money(buying.dearer_by(total))}});
    };
    add("plan", "As listed below", buying.total);
    if (buying.single)
        add("single", "All from " + book.suppliers[*buying.single].name, buying.single_total);
    bool const is_refused = buying.by_unit_price.misses_minimum;
    if (buying.ahead && buying.ahead->total != buying.total)
        add("ahead", "Ahead, for what leftovers will be used for: see below", buying.ahead->total);
    add("unit_price",
        fmt::format("Each thing at the offer that it is costed at{}", is_refused ? " *" : ""),
        buying.by_unit_price.total);
    if (is_refused)
        table.remark = "* It may be refused: below a minimum order, or more packs than may be had.";
    if (!buying.single && buying.closest)
        table.remark += (is_refused ? " " : "") + closest_words(buying, book);
    return table;
}

inline Table basket(Basket const& basket, Book const& book, Figures const& figures) {
    Supplier const& supplier = book.suppliers[basket.supplier];
    Table table = table_of<sheet_shapes::buy::baskets>(supplier.name, {{"item"},
                                                                       {"pack", "Pack"},
                                                                       {"packs", "Packs"},
                                                                       {"price", "Price each"},
                                                                       {"amount", "Amount"}});
    table.of = supplier.name;
    std::vector<Money> amounts;
    bool has_tax = false;
    for (PackLine const& line : basket.lines) {
        amounts.push_back(line.goods);
        has_tax = has_tax || !book.offers[line.offer].tax_included.value().is_zero();
    }
    if (!basket.freight.is_zero()) amounts.push_back(basket.freight);
    if (!basket.deposit.is_zero()) amounts.push_back(basket.deposit);
    if (!basket.delivery.is_zero()) amounts.push_back(basket.delivery);
    std::vector<Cell> const shown = figures.column(amounts);
    std::size_t next = 0;
    for (PackLine const& line : basket.lines) {
        Offer const& offer = book.offers[line.offer];
        table.rows.push_back(
            {fmt::format("{}", next + 1),
             {in_sentence(offer.item.name), pack_words(offer, figures),
              Figures::count(Number(line.packs)), figures.money(line.price), shown[next]}});
        ++next;
    }
    auto const add = [&](std::string key, std::string words, Row::Kind kind) {
        table.rows.push_back({std::move(key), {std::move(words), {}, {}, {}, shown[next]}, kind});
        ++next;
    };
    if (!basket.freight.is_zero()) add("freight", "Freight", Row::Kind::line);
    if (!basket.deposit.is_zero()) add("deposit", "Deposit, which comes back", Row::Kind::line);
    if (!basket.delivery.is_zero()) add("delivery", "Delivery", Row::Kind::line);
    add("total", "Total", Row::Kind::total);
    if (supplier.minimum_order && !supplier.minimum_order->is_zero())
        table.remark =
            fmt::format("Minimum order {}: the goods come to {}.",
                        figures.amount(*supplier.minimum_order), figures.amount(basket.listed));
    if (supplier.delivery && !supplier.delivery->is_zero() && basket.delivery.is_zero())
        table.remark += fmt::format("{}Delivered free from {}.", table.remark.empty() ? "" : " ",
                                    figures.amount(*supplier.free_delivery_from));
    if (has_tax)
        table.remark += std::string(table.remark.empty() ? "" : " ") +
                        "Amounts are without the tax that the listed prices contain.";
    return table;
}

inline Table left_over(Buying const& buying, Book const& book, Figures const& figures) {
    std::vector<Need const*> bought;
    std::vector<Money> worths;
    bool has_life = false;
    for (Need const& need : buying.needs) {
        if (need.bought.is_zero()) continue;
        bought.push_back(&need);
        worths.push_back(need.worth());
        has_life = has_life || need.good_until;
    }
    Table table = table_of<sheet_shapes::buy::left>("What is left over", {{"item"},
                                                                          {"to_buy", "Needed"},
                                                                          {"bought", "Bought"},
                                                                          {"left", "Left over"},
                                                                          {"worth", "Worth"}});
    if (has_life) {
        add_column<sheet_shapes::buy::left>(table, {"until", "Good until"});
        add_column<sheet_shapes::buy::left>(table, {"spoils", "May spoil"});
        table.remark = "May spoil: what no other order in the books takes while it is good.";
    }
    std::vector<Cell> const shown = figures.column(worths);
    for (std::size_t i = 0; i < bought.size(); ++i) {
        Need const& need = *bought[i];
        Ingredient const& ingredient = book.ingredients[need.ingredient()];
        std::vector<Cell> cells{in_sentence(ingredient.name), amount(need.to_buy(), ingredient),
                                amount(need.bought, ingredient),
                                amount(need.leftover(), ingredient), shown[i]};
        if (has_life) {
            cells.push_back(need.good_until ? Figures::short_day(*need.good_until) : Cell());
            cells.push_back(need.good_until ? amount(*need.may_spoil(), ingredient) : Cell());
        }
        table.rows.push_back({ingredient.name, std::move(cells)});
    }
    std::vector<Cell> sum(table.columns.size());
    sum[0] = std::string("Total");
    sum[4] = shown.back();
    table.rows.push_back({"total", std::move(sum), Row::Kind::total});
    return table;
}

inline Table from_shelf(Buying const& buying, Book const& book) {
    Table table = table_of<sheet_shapes::buy::shelf>("From the shelf", {{"item"},
                                                                        {"needed", "Needed"},
                                                                        {"shelf", "On the shelf"},
                                                                        {"taken", "Taken"},
                                                                        {"stays", "Stays"}});
    for (Need const& need : buying.needs) {
        if (need.on_shelf.is_zero()) continue;
        Ingredient const& ingredient = book.ingredients[need.ingredient()];
        table.rows.push_back({ingredient.name,
                              {in_sentence(ingredient.name), amount(need.needed(), ingredient),
                               amount(need.on_shelf, ingredient), amount(need.taken(), ingredient),
                               amount(need.stays(), ingredient)}});
    }
    return table;
}

/// What a person should know before sending the lists.
inline Remarks notes(Buying const& buying) {
    Remarks notes = remarks_of<sheet_shapes::buy::notes>("Mind", {});
    if (buying.is_mostly_left())
        notes.lines.emplace_back(
            "More than half of what is paid is for what is left over: see whether a minimum order "
            "or a large pack is worth it.");
    return notes;
}

} // namespace buy_sheet_detail

GROAT_INLINE Sheet buy_sheet(Buying const& buying, Book const& book,
                             std::vector<BuyingDay> const& days,
                             std::optional<CostedAndPaid> const& way) {
    Figures const figures(book.shop);
    Sheet sheet = sheet_for(book.shop, "buy", "maker", "What to buy");
    sheet.sections.emplace_back(buy_sheet_detail::head(buying, book, figures));
    bool has_cold = false;
    for (Need const& need : buying.needs)
        has_cold = has_cold || is_kept_cold(book.ingredients[need.ingredient()].keeping);
    if (buying.baskets.empty()) {
        sheet.sections.emplace_back(remarks_of<sheet_shapes::buy::nothing>(
            "", {"Nothing is to be bought: the shelf holds all of it."}));
    } else {
        sheet.sections.emplace_back(buy_sheet_detail::other_ways(buying, book, figures));
        for (Basket const& each : buying.baskets)
            sheet.sections.emplace_back(buy_sheet_detail::basket(each, book, figures));
        if (!days.empty())
            sheet.sections.emplace_back(buy_sheet_detail::by_day(days, buying, book));
        sheet.sections.emplace_back(buy_sheet_detail::left_over(buying, book, figures));
    }
    if (buying.ahead) buy_sheet_detail::add_ahead(sheet, buying, book, figures);
    Table shelf = buy_sheet_detail::from_shelf(buying, book);
    if (!shelf.rows.empty()) sheet.sections.emplace_back(std::move(shelf));
    if (way) sheet.sections.emplace_back(buy_sheet_detail::costed(*way, figures));
    Remarks notes = buy_sheet_detail::notes(buying);
    if (!notes.lines.empty()) sheet.sections.emplace_back(std::move(notes));
    sheet.sections.emplace_back(maker_cautions(has_cold));
    return sheet;
}

GROAT_INLINE Sheet supplier_order_sheet(Basket const& basket, Date date, Book const& book) {
    Words const& words = book.shop.sheets.words;
    Figures const figures = Figures::in_words(book.shop);
    Supplier const& supplier = book.suppliers[basket.supplier];
    Sheet sheet = sheet_in_words(book.shop, "order", "supplier",
                                 words("order to", {{"supplier", supplier.name}}));
    sheet.sections.emplace_back(facts_of<sheet_shapes::order::order>(
        "", {{"date", words("date"), Figures::day(date)},
             {"currency", words("currency"), std::string(book.shop.currency.code())}}));
    bool has_codes = false;
    for (PackLine const& line : basket.lines)
        has_codes = has_codes || !book.offers[line.offer].code.empty();
    constexpr SectionShape const& shape = sheet_shapes::order::lines;
    Table table = table_of<shape>("", {{"item"},
                                       {"pack", words("pack")},
                                       {"packs", words("packs")},
                                       {"price", words("price each")},
                                       {"amount", words("amount")}});
    if (has_codes)
        table.columns.insert(table.columns.begin(), ColumnOf<shape>{"code", words("code")});
    for (PackLine const& line : basket.lines) {
        Offer const& offer = book.offers[line.offer];
        std::vector<Cell> cells;
        if (has_codes) cells.emplace_back(offer.code);
        for (Cell& each :
             std::vector<Cell>{in_sentence(offer.item.name), pack_words(offer, figures, words),
                               Figures::count(Number(line.packs)), figures.money(line.price),
                               figures.money(line.price * Number(line.packs))})
            cells.push_back(std::move(each));
        table.rows.push_back({fmt::format("{}", table.rows.size() + 1), std::move(cells)});
    }
    std::vector<Cell> sum(table.columns.size());
    sum.front() = words("goods");
    sum.back() = figures.money(basket.listed);
    table.rows.push_back({"total", std::move(sum), Row::Kind::total});
    sheet.sections.emplace_back(std::move(table));
    sheet.sections.emplace_back(
        remarks_of<sheet_shapes::order::terms>("", {words("supplier terms")}));
    return sheet;
}

} // namespace groat
