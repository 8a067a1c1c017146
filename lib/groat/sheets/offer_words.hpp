/// How an offer is named on a sheet, and why costs go by it.
#pragma once

#include <groat/cost/unit_cost.hpp>
#include <groat/sheets/figures.hpp>

#include <fmt/ranges.h>

#include <string>
#include <vector>

namespace groat {

/// The pack as written in the books; a bare number says that it is one, in the style of `figures`.
/// Example  "25 lb", "pack of 100"
[[nodiscard]] inline std::string pack_words(Offer const& offer, Figures const& figures,
                                            Words const& words = Words::english()) {
    bool const is_bare = offer.pack_text.find_first_not_of("0123456789") == std::string::npos;
    return is_bare ? words("pack of", {{"count", figures.style().number(offer.pack_text)}})
                   : offer.pack_text;
}

/// Supplier and pack: "Mill Road Provisions, 25 lb".
[[nodiscard]] inline std::string offer_words(Offer const& offer, Book const& book) {
    return fmt::format("{}, {}", book.suppliers[offer.supplier].name,
                       pack_words(offer, Figures(book.shop)));
}

/// Why costs go by this offer, in words; empty where there is no other.
/// Example  "cheapest of 3", "last bought on 20 Nov 2026"
[[nodiscard]] inline std::string reason_words(Purchase const& purchase,
                                              Ingredient const& ingredient, Book const& book,
                                              Figures const& figures) {
    std::vector<std::string> reasons;
    using Reason = Purchase::Reason;
    switch (purchase.reason) {
    case Reason::only:
    case Reason::held: break;
    case Reason::cheapest:
        reasons.push_back(fmt::format("cheapest of {}", purchase.considered));
        break;
    case Reason::preferred: reasons.emplace_back("preferred"); break;
    case Reason::last_bought:
    case Reason::nearest_pack: {
        Offer const& paid = book.offers[*purchase.last_bought];
        bool const is_that = *purchase.last_bought == purchase.offer;
        reasons.push_back(is_that ? std::string("last bought")
                          : purchase.reason == Reason::last_bought
                              ? fmt::format("last bought on {}", figures.short_date(*paid.from))
                              : fmt::format("last bought on {} as {}",
                                            figures.short_date(*paid.from),
                                            pack_words(paid, figures)));
        break;
    }
    }
    if (purchase.is_instead)
        reasons.push_back(fmt::format("instead of {}", ingredient.preferred_supplier.name));
    return fmt::format("{}", fmt::join(reasons, ", "));
}

/// What an ingredient is costed at: the offer, what a pack of it costs and since when, and why it is that one.
/// Example  "Corner Dock, 1 lb at 4.19 paid on 20 Nov 2026 (last bought)"
[[nodiscard]] inline std::string purchase_words(Purchase const& purchase,
                                                Ingredient const& ingredient, Book const& book,
                                                Figures const& figures) {
    Offer const& offer = book.offers[purchase.offer];
    std::string words =
        fmt::format("{} at {}", offer_words(offer, book), figures.amount(purchase.pack_cost));
    if (!book.suppliers[offer.supplier].delivery_share.is_zero()) words += " with delivery,";
    if (words.ends_with(',') && !offer.from) words.pop_back();
    if (offer.from)
        words += fmt::format(" {} {}", offer.is_listed() ? "since" : "paid on",
                             figures.short_date(*offer.from));
    std::string const why = reason_words(purchase, ingredient, book, figures);
    return why.empty() ? words : fmt::format("{} ({})", words, why);
}

} // namespace groat
