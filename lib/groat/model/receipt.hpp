/// What was bought and paid, as a receipt says it. From this come the offers that costs go by (see
/// receipt_links.hpp).
#pragma once

#include <groat/measure/calendar.hpp>
#include <groat/measure/money.hpp>
#include <groat/measure/quantity.hpp>
#include <groat/measure/rate.hpp>
#include <groat/model/reference.hpp>

#include <string>
#include <vector>

namespace groat {

/// So many packs of something, and what was paid for all of them together.
struct BoughtPacks {
    Reference item;
    Quantity pack; ///< what is in one pack
    Integer packs = 1;
    Money paid;                 ///< as on the receipt: with the deposit, and the tax it contains
    Money deposit = {};         ///< of that, for all packs: it comes back
    TaxRate tax_included = {};  ///< recoverable tax contained in both
    bool is_stopgap = false;    ///< from elsewhere, once: no price to go by
    std::string pack_text = {}; ///< the pack as written, for people
    Span origin = {};
    bool is_in_doubt = false; ///< an error stands in it (see sound_part.hpp)

    /// What it took out of the till, net of recoverable tax.
    [[nodiscard]] Money outlay() const { return paid / (1 + tax_included.value()); }
    /// What it cost: that without the deposit.
    [[nodiscard]] Money cost() const { return (paid - deposit) / (1 + tax_included.value()); }
};

struct Receipt {
    Date bought;
    Reference supplier = {};
    std::vector<BoughtPacks> items = {};
    Span origin = {};
    bool is_in_doubt = false; ///< an error stands outside its items, or in one that names nothing
};

} // namespace groat
