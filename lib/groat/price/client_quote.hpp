/// What a client is told of an order: what is sold, for how much, on what terms. No cost, margin, supplier or loss is in
/// it, nor anything that leads to one, so that a sheet made of it cannot tell any.
#pragma once

#include <groat/model/keeping.hpp>
#include <groat/price/payable.hpp>

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace groat {

struct ClientQuote {
    /// One line as it was ordered.
    struct Line {
        std::size_t number = 0; ///< from 1 on
        std::string title;
        std::string formula; ///< the name of what is sold; empty for what is no item
        std::string sold_as; ///< empty by the piece
        Number count;
        Coins price; ///< each, as shown
        Coins amount;
    };
    /// A price that holds from a count to another.
    struct Tier {
        std::size_t line = 0; ///< of `lines`
        Integer from;
        Integer to;
        Coins price;
        bool is_ordered_apart = false; ///< so many are ordered, at another price
        /// No more is asked for counts from here to `to` than for a larger count.
        struct Cap {
            Integer from;
            Integer more;
            Coins total;
        };
        std::optional<Cap> cap = {};
    };
    /// What is in an item and how to keep it, each once.
    struct Item {
        std::string name;
        AllergenSet allergens;
        Keeping keeping;
    };

    std::string id;
    std::string client; ///< may be empty, as `notes`
    std::string notes;
    Date date;
    std::optional<Date> due;
    std::optional<Date> valid_until;
    bool is_validity_cut = false; ///< at the day on which it is wanted
    std::vector<Line> lines;      ///< in the order of the order
    std::vector<Tier> tiers;
    Payable totals;
    Share deposit; ///< of the total
    std::vector<Item> items;
};

} // namespace groat
