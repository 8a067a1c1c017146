#pragma once

#include <groat/model/companion_links.hpp>

#include <groat/base/linkage.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <string>
#include <vector>

namespace groat {

namespace companion_links_detail {

/// Resolves the orders that one names; gives the indices of those there are.
inline std::vector<std::size_t> named_by(Book& book, std::size_t index,
                                         std::vector<std::string> const& ids,
                                         Suggest const& suggest, Diagnostics& found) {
    std::vector<std::size_t> others;
    Order& order = book.orders[index];
    for (Reference& other : order.made_with) {
        auto const named = std::find(ids.begin(), ids.end(), other.name);
        other.index =
            named == ids.end() ? unresolved : static_cast<std::size_t>(named - ids.begin());
        if (other.is_resolved() && other.index != index) {
            others.push_back(other.index);
            continue;
        }
        order.is_in_doubt = true;
        if (other.is_resolved())
            found.error(other.origin, "made-with-itself",
                        "an order is made with others, not with itself", "name the other orders");
        else
            found.error(other.origin, "unknown-order",
                        fmt::format("no order is called '{}'", other.name),
                        suggest(other.name, ids, "name orders of these books"));
    }
    return others;
}

} // namespace companion_links_detail

GROAT_INLINE void link_companions(Book& book, Suggest const& suggest, Diagnostics& found) {
    std::vector<std::string> ids;
    std::vector<std::size_t> set_of;
    for (Order const& order : book.orders) {
        set_of.push_back(ids.size());
        ids.push_back(order.id);
    }
    for (std::size_t i = 0; i < ids.size(); ++i)
        for (std::size_t const other :
             companion_links_detail::named_by(book, i, ids, suggest, found)) {
            std::size_t const from = set_of[i];
            for (std::size_t& set : set_of)
                if (set == from) set = set_of[other];
        }
    std::map<std::size_t, std::vector<std::size_t>> sets;
    for (std::size_t i = 0; i < ids.size(); ++i) sets[set_of[i]].push_back(i);
    for (std::size_t i = 0; i < ids.size(); ++i) {
        book.orders[i].companions = sets[set_of[i]];
        std::erase(book.orders[i].companions, i);
    }
}

} // namespace groat
