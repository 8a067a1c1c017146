#include "plain_orders.hpp"

namespace groat::test {

Book without_what_belongs_to_orders(Book book) {
    book.shop.order_work.clear();
    std::erase_if(book.shop.overheads,
                  [](Overhead const& each) { return each.driver == Overhead::Driver::order; });
    auto const is_by_order = [](auto const& effort) { return effort.per == Per::order; };
    for (Formula& formula : book.formulas) {
        std::erase_if(formula.labour, is_by_order);
        std::erase_if(formula.consumables, is_by_order);
    }
    for (Ingredient& ingredient : book.ingredients) ingredient.buys_whole_packs = false;
    return book;
}

} // namespace groat::test
