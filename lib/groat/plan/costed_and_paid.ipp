#pragma once

#include <groat/plan/costed_and_paid.hpp>

#include <groat/base/linkage.hpp>
#include <groat/plan/kitchen.hpp>
#include <groat/price/quote.hpp>

namespace groat {

namespace costed_and_paid_detail {

/// What is bought of an order, as its quote costs it.
struct Goods {
    Money cost;
    Money by_whole_packs; ///< of that, for packs beyond use
};

inline Goods goods_of(OrderCost const& cost, Money const& zero) {
    Goods goods{zero, zero};
    for (Category const each : {Category::ingredients, Category::consumables, Category::packaging})
        goods.cost += cost.total[each];
    for (auto const* uses : {&cost.ingredients, &cost.supplies})
        for (IngredientUse const& use : *uses)
            goods.by_whole_packs += use.cost - use.purchase->unit_cost * use.bought;
    return goods;
}

/// As the order costs by itself; nothing where it cannot be costed.
inline std::optional<Goods> goods_alone(Costing const& costing, Order const& order) {
    CostRequest request{sales_of(order, costing.book())};
    for (Sale const& sale : request.sales)
        if (costing.findings(sale.formula, sale.unit).has_errors()) return std::nullopt;
    request.divides_losses = false;
    return goods_of(costing.cost(request), Money(0, costing.book().shop.currency));
}

/// As its quote has it; by itself where no price can be made for it.
inline std::optional<Goods> goods_quoted(Costing const& costing, Order const& order) {
    Diagnostics unheard;
    if (auto const quoted = quote(costing, order, unheard))
        return goods_of(quoted->cost, Money(0, costing.book().shop.currency));
    return goods_alone(costing, order);
}

/// All that is used up, at the unit costs of the books.
inline Money worth(Kitchen const& kitchen, Money sum) {
    for (auto const* uses : {&kitchen.ingredients, &kitchen.supplies})
        for (IngredientUse const& use : *uses) sum += use.purchase->unit_cost * use.bought;
    return sum;
}

inline Money metered(Kitchen const& kitchen, Book const& book, Money sum) {
    for (IngredientUse const& use : kitchen.ingredients)
        if (book.ingredients[use.ingredient].is_metered)
            sum += use.purchase->unit_cost * use.bought;
    return sum;
}

/// The unit cost of a purchase without its share of a delivery.
inline Money unlanded(Purchase const& purchase, Book const& book) {
    return book.offers[purchase.offer].pack_cost() / purchase.content;
}

} // namespace costed_and_paid_detail

GROAT_INLINE std::optional<CostedAndPaid> costed_and_paid(Costing const& costing,
                                                          Buying const& buying,
                                                          Quote const* at_hand) {
    using Kind = CostStep::Kind;
    Book const& book = costing.book();
    Money const zero{0, book.shop.currency};
    CostedAndPaid result{zero, {}, buying.total};
    auto const step = [&](Kind kind, Money const& amount) {
        if (!amount.is_zero()) result.steps.push_back({kind, amount});
    };
    Money today = zero;
    Money by_itself = zero;
    Money by_whole_packs = zero;
    Money alone = zero;
    for (Order const* const order : buying.orders) {
        bool const is_at_hand = at_hand != nullptr && at_hand->order->id == order->id;
        auto const now = is_at_hand ? costed_and_paid_detail::goods_of(at_hand->cost, zero)
                                    : costed_and_paid_detail::goods_quoted(costing, *order);
        auto const itself = costed_and_paid_detail::goods_alone(costing, *order);
        if (!now || !itself) return std::nullopt;
        today += now->cost;
        by_itself += itself->cost;
        by_whole_packs += itself->by_whole_packs;
        OwnGoods none;
        alone += costed_and_paid_detail::worth(kitchen_of(costing, {order}, none), zero);
        if (is_at_hand || !order->date || *order->date == costing.date()) {
            result.costed += now->cost;
            continue;
        }
        auto const then =
            costed_and_paid_detail::goods_quoted(Costing(costing.linked(), *order->date), *order);
        if (!then) return std::nullopt;
        result.costed += then->cost;
    }
    OwnGoods none;
    Money const together =
        costed_and_paid_detail::worth(kitchen_of(costing, buying.orders, none), zero);
    Diagnostics unheard;
    OwnGoods goods(book, unheard);
    Kitchen const kitchen = kitchen_of(costing, buying.orders, goods);
    Money const made = costed_and_paid_detail::worth(kitchen, zero);
    step(Kind::prices, today - result.costed);
    step(Kind::run, by_itself - today);
    step(Kind::whole_packs, zero - by_whole_packs);
    step(Kind::kept, alone - (by_itself - by_whole_packs));
    step(Kind::together, together - alone);
    step(Kind::own_goods, made - together);
    step(Kind::metered, zero - costed_and_paid_detail::metered(kitchen, book, zero));
    Money shelf = zero;
    Money offers = zero;
    Money left_over = zero;
    Money delivery = zero;
    Money deposit = zero;
    for (Need const& need : buying.needs) {
        Money const& unit = need.use.purchase->unit_cost;
        shelf += unit * (need.needed() - need.to_buy());
        if (need.to_buy().is_zero()) continue;
        Money const average = need.cost / need.bought;
        Money const plain = costed_and_paid_detail::unlanded(*need.use.purchase, book);
        offers += (average - plain) * need.to_buy();
        left_over += average * need.leftover();
        delivery += (plain - unit) * need.to_buy();
    }
    for (Basket const& basket : buying.baskets) {
        delivery += basket.delivery;
        deposit += basket.deposit;
    }
    step(Kind::shelf, zero - shelf);
    step(Kind::offers, offers);
    step(Kind::left_over, left_over);
    step(Kind::delivery, delivery);
    step(Kind::deposit, deposit);
    return result;
}

} // namespace groat
