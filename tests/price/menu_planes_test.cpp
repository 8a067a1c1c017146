#include "random_book.hpp"

#include <groat/price/menu_planes.hpp>

#include <fmt/format.h>

using namespace groat;
using namespace groat::test;

namespace {

/// Plates that cost 1.00 and sell at 3.00: `sold` of each, in the categories given.
Book plates(std::vector<std::pair<std::string, int>> const& items) {
    Book book = a_book();
    food(book, "all of it", "1 kg", "1.00");
    Menu menu;
    menu.name = "counter";
    for (auto const& [category, sold] : items) {
        std::string const name = fmt::format("plate {}", menu.items.size() + 1);
        formula(book, name, {{"all of it", "1 kg"}}).makes = quantity("1");
        MenuItem item;
        item.item = named(name);
        item.price = money("3.00");
        item.sold = sold;
        item.category = named(category);
        menu.items.push_back(std::move(item));
    }
    menu.categories = {{"sweet", {}, {}}, {"drinks", {}, {}}};
    book.menus.push_back(std::move(menu));
    return book;
}

std::string in_planes(Book& book, MixOver over = MixOver::categories) {
    link_well(book);
    Costing const costing(linked(book), today);
    Diagnostics found;
    auto const cost = cost_menu(costing, book.menus.front(), found);
    REQUIRE_MESSAGE(cost.has_value(), in_words(found));
    std::string text;
    for (MenuPlane const& plane : menu_planes(*cost, over)) {
        text += fmt::format("{}{}:", text.empty() ? "" : "; ", plane.name);
        for (std::size_t const i : plane.lines) text += fmt::format(" {}", i + 1);
        text += plane.is_placed() ? " placed" : plane.mix ? " listed" : " unsold";
    }
    return text;
}

} // namespace

TEST_CASE("each item stands in the plane of its category, and what has none in the last") {
    Book book =
        plates({{"drinks", 5}, {"sweet", 5}, {"", 5}, {"sweet", 5}, {"sweet", 5}, {"sweet", 1}});
    CHECK(in_planes(book) == "sweet: 2 4 5 6 placed; drinks: 1 listed; in no category: 3 listed");
    CHECK(in_planes(book, MixOver::menu) == "the whole menu: 1 2 3 4 5 6 placed");
}

TEST_CASE("a category of which nothing was sold has no mix, however many items it has") {
    Book book = plates({{"sweet", 0}, {"sweet", 0}, {"sweet", 0}, {"sweet", 0}, {"drinks", 3}});
    CHECK(in_planes(book) == "sweet: 1 2 3 4 unsold; drinks: 5 listed");
}

TEST_CASE("a menu without categories is one plane") {
    Book book = plates({{"", 4}, {"", 3}, {"", 2}, {"", 1}});
    book.menus.front().categories.clear();
    CHECK(in_planes(book) == "the whole menu: 1 2 3 4 placed");
}
