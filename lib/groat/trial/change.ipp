#pragma once

#include <groat/trial/change.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/name.hpp>
#include <groat/base/text.hpp>
#include <groat/model/convert.hpp>

#include <fmt/format.h>

#include <utility>

namespace groat {

namespace change_detail {

inline std::string shown(std::string_view text) { return shortened(text, 60); }

template <class Things>
Result<std::size_t> find(std::string_view name, Things const& things, Code unknown,
                         std::string_view what) {
    for (std::size_t i = 0; i < things.size(); ++i)
        if (things[i].name == name) return i;
    return refuse(unknown, fmt::format("no {} is called '{}'", what, shown(name)),
                  did_you_mean(name, names_of(things), "names are matched letter by letter"));
}

/// A text and the value at its end: `butter +20 %` is "butter" and "+20 %".
struct Split {
    std::string_view name;
    std::string_view value;
};

/// The value begins at the last word that begins with a digit, a sign and a digit, or a point.
inline std::optional<Split> split(std::string_view text) {
    auto const is_digit = [](char c) { return c >= '0' && c <= '9'; };
    std::optional<Split> result;
    for (std::size_t i = 1; i < text.size(); ++i) {
        if (text[i - 1] != ' ') continue;
        std::size_t at = i;
        if ((text[at] == '+' || text[at] == '-') && at + 1 < text.size()) ++at;
        if (at > i && text[at] == ' ' && at + 1 < text.size()) ++at;
        if (is_digit(text[at])) result = Split{trimmed(text.substr(0, i)), trimmed(text.substr(i))};
        if (is_digit(text[at]) && at > i) break; // "+2 1/2 %": the sign begins it
    }
    return result;
}

inline Refused no_value(std::string_view value, std::string help) {
    return refuse("bad-change", fmt::format("'{}' is no value for this", shown(value)),
                  std::move(help));
}

/// The factor of "+20 %" or "-5 %"; nothing where it has no sign.
inline std::optional<Result<Number>> factor(std::string_view value) {
    if (!value.starts_with('+') && !value.starts_with('-')) return std::nullopt;
    bool const is_less = value.starts_with('-');
    auto const share = parse_percent(trimmed(value.substr(1)));
    if (!share) return Result<Number>(Refused(share.error()));
    Number const result = is_less ? 1 - *share : 1 + *share;
    if (!result.is_positive())
        return Result<Number>(refuse("bad-change",
                                     fmt::format("'{}' would leave nothing", shown(value)),
                                     "write a change above -100 %"));
    return Result<Number>(result);
}

inline Result<Change> exchanged(std::string_view text, std::size_t arrow, Book const& book) {
    std::string_view const from = trimmed(text.substr(0, arrow));
    std::string_view to = trimmed(text.substr(arrow + 4));
    Exchanged change;
    auto const first = find(from, book.ingredients, "unknown-ingredient", "ingredient");
    if (!first) return Refused(first.error());
    change.from = *first;
    if (std::size_t const in = to.rfind(" in ");
        in != std::string_view::npos &&
        book.ingredient_index.find(to) == book.ingredient_index.end()) {
        auto const formula =
            find(trimmed(to.substr(in + 4)), book.formulas, "unknown-formula", "formula");
        if (!formula) return Refused(formula.error());
        change.formula = *formula;
        to = trimmed(to.substr(0, in));
    }
    auto const second = find(to, book.ingredients, "unknown-ingredient", "ingredient");
    if (!second) return Refused(second.error());
    change.to = *second;
    if (book.ingredients[change.from].is_supply() != book.ingredients[change.to].is_supply())
        return refuse("bad-change", "food cannot stand for a supply, nor a supply for food",
                      "name two ingredients, or two supplies");
    return Change{std::string(text), change};
}

inline Result<Change> new_price(std::string_view text, Split const& parts, Costing const& costing) {
    Book const& book = costing.book();
    auto const index = find(parts.name, book.ingredients, "unknown-ingredient", "ingredient");
    if (!index && parts.name.find(" of ") != std::string_view::npos)
        return refuse("bad-change", fmt::format("'{}' is nothing that can be changed", parts.name),
                      "write 'wage of baker', 'tariff of electricity', 'yield of lemon' or 'baking "
                      "loss of rye shell'");
    if (!index) return Refused(index.error());
    Ingredient const& ingredient = book.ingredients[*index];
    if (book.offers_of[*index].empty())
        return refuse("missing-price", fmt::format("'{}' has no price to change", ingredient.name),
                      "add an offer of it to a price list");
    if (auto const scale = factor(parts.value)) {
        if (!*scale) return Refused(scale->error());
        return Change{std::string(text), scaled_price(costing, *index, **scale)};
    }
    std::size_t const slash = parts.value.find('/');
    auto const help = "write '+20 %', or what an amount costs: '9.00 / kg'";
    if (slash == std::string_view::npos) return no_value(parts.value, help);
    auto const amount = parse_number(trimmed(parts.value.substr(0, slash)));
    auto const per = parse_quantity(fmt::format("1 {}", trimmed(parts.value.substr(slash + 1))),
                                    book.shop.measures);
    if (!amount || amount->is_negative() || !per) return no_value(parts.value, help);
    auto const content = amount_in(*per, ingredient);
    if (!content) return Refused(content.error());
    auto const& purchase = costing.formulary().costs.purchases[*index];
    if (!purchase) return Refused(costing.formulary().costs.problems[*index]);
    Offer const& offer = book.offers[purchase->offer];
    Money const freight = offer.untaxed(offer.freight);
    Money const goods = purchase->pack_cost - freight; // what moves with the price
    if (goods.is_zero())
        return refuse(
            "bad-change",
            fmt::format("'{}' costs nothing now, which no factor changes", ingredient.name),
            "write its price into a price list");
    Number const wanted = *amount / *content * purchase->content;
    Number const to = (wanted - freight.amount()) / goods.amount();
    if (to.is_negative())
        return refuse("bad-change",
                      fmt::format("the freight of '{}' alone is more than that", ingredient.name),
                      "write another amount, or change the offer in its price list");
    return Change{std::string(text), scaled_price(costing, *index, to)};
}

inline Result<Change> new_rate(std::string_view text, Split const& parts, Book const& book) {
    bool const is_wage = parts.name.starts_with("wage of ");
    std::string_view const name = trimmed(parts.name.substr(parts.name.find(" of ") + 4));
    auto const index = is_wage ? find(name, book.shop.roles, "unknown-role", "role")
                               : find(name, book.shop.tariffs, "unknown-tariff", "tariff");
    if (!index) return Refused(index.error());
    Money const& now =
        is_wage ? book.shop.roles[*index].wage.amount : book.shop.tariffs[*index].rate.amount;
    Number by;
    if (auto const scale = factor(parts.value)) {
        if (!*scale) return Refused(scale->error());
        by = **scale;
    } else {
        auto const amount = parse_number(parts.value);
        if (!amount || amount->is_negative() || now.is_zero())
            return no_value(parts.value, "write '+5 %', or the new amount: '24.00'");
        by = *amount / now.amount();
    }
    if (is_wage) return Change{std::string(text), WageScaled{*index, by}};
    return Change{std::string(text), TariffScaled{*index, by}};
}

inline Result<Change> new_loss(std::string_view text, Split const& parts, std::size_t of,
                               Book const& book) {
    auto const formula =
        find(trimmed(parts.name.substr(of + 9)), book.formulas, "unknown-formula", "formula");
    if (!formula) return Refused(formula.error());
    auto const loss = find(trimmed(parts.name.substr(0, of)), book.formulas[*formula].losses,
                           "unknown-loss", "loss");
    if (!loss) return Refused(loss.error());
    auto const value = parse_percent(parts.value);
    if (!value) return Refused(value.error());
    auto const share = Loss::of(*value);
    if (!share) return Refused(share.error());
    return Change{std::string(text), LossSet{*formula, *loss, *share}};
}

inline Result<Change> new_yield(std::string_view text, Split const& parts, Book const& book) {
    auto const index =
        find(trimmed(parts.name.substr(9)), book.ingredients, "unknown-ingredient", "ingredient");
    if (!index) return Refused(index.error());
    auto const value = parse_percent(parts.value);
    if (!value) return Refused(value.error());
    auto const yield = Yield::of(*value);
    if (!yield) return Refused(yield.error());
    return Change{std::string(text), YieldSet{*index, *yield}};
}

} // namespace change_detail

GROAT_INLINE Result<Change> parse_change(std::string_view text, Costing const& costing) {
    namespace parts = change_detail;
    Book const& book = costing.book();
    text = trimmed(text);
    if (std::size_t const arrow = text.find(" -> "); arrow != std::string_view::npos)
        return parts::exchanged(text, arrow, book);
    auto const split = parts::split(text);
    if (!split)
        return refuse("bad-change", fmt::format("'{}' is no change", parts::shown(text)),
                      "write it as 'butter +20 %', 'wage of baker 24.00', 'yield of lemon 40 %' or "
                      "'butter -> margarine'");
    if (split->name.starts_with("wage of ") || split->name.starts_with("tariff of "))
        return parts::new_rate(text, *split, book);
    if (split->name.starts_with("yield of ")) return parts::new_yield(text, *split, book);
    if (std::size_t const of = split->name.find(" loss of "); of != std::string_view::npos)
        return parts::new_loss(text, *split, of, book);
    return parts::new_price(text, *split, costing);
}

namespace change_detail {

struct Applier {
    Book& book;

    void operator()(PriceScaled const& change) const {
        for (std::size_t const index : book.offers_of[change.ingredient]) {
            Offer& offer = book.offers[index];
            offer.price *= change.factor;
            for (PriceBreak& each : offer.breaks) each.price *= change.factor;
        }
        if (change.offer) book.ingredients[change.ingredient].held_offer = change.offer;
    }
    void operator()(WageScaled const& change) const {
        book.shop.roles[change.role].wage.amount *= change.factor;
    }
    void operator()(TariffScaled const& change) const {
        book.shop.tariffs[change.tariff].rate.amount *= change.factor;
    }
    void operator()(YieldSet const& change) const {
        book.ingredients[change.ingredient].yield = change.yield;
        for (std::size_t const index : book.offers_of[change.ingredient])
            book.offers[index].yield.reset();
    }
    void operator()(LossSet const& change) const {
        book.formulas[change.formula].losses[change.loss].share = change.share;
    }
    void operator()(Exchanged const& change) const {
        for (std::size_t i = 0; i < book.formulas.size(); ++i) {
            if (change.formula && *change.formula != i) continue;
            Formula& formula = book.formulas[i];
            for (Line& line : formula.lines)
                if (line.of == Line::Of::ingredient) exchange(line.item, change);
            for (Consumption& use : formula.consumables) exchange(use.supply, change);
            for (SaleUnit& unit : formula.sold_as)
                for (Consumption& use : unit.packing) exchange(use.supply, change);
        }
    }

private:
    void exchange(Reference& reference, Exchanged const& change) const {
        if (reference.index != change.from) return;
        reference.index = change.to;
        reference.name = book.ingredients[change.to].name;
    }
};

} // namespace change_detail

GROAT_INLINE PriceScaled scaled_price(Costing const& costing, std::size_t ingredient,
                                      Number factor) {
    PriceScaled change{ingredient, std::move(factor), {}};
    if (auto const& purchase = costing.formulary().costs.purchases[ingredient])
        change.offer = purchase->offer;
    return change;
}

GROAT_INLINE void apply(Change const& change, Book& book) {
    std::visit(change_detail::Applier{book}, change.what);
}

} // namespace groat
