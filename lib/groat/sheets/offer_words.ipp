#pragma once

#include <groat/sheets/offer_words.hpp>

#include <groat/base/linkage.hpp>

#include <fmt/ranges.h>

#include <vector>

namespace groat {

GROAT_INLINE std::string pack_words(Offer const& offer, Figures const& figures,
                                    Words const& words) {
    bool const is_bare = offer.pack_text.find_first_not_of("0123456789") == std::string::npos;
    return is_bare ? words("pack of", {{"count", figures.style().number(offer.pack_text)}})
                   : offer.pack_text;
}

GROAT_INLINE std::string offer_words(Offer const& offer, Book const& book) {
    return fmt::format("{}, {}", book.suppliers[offer.supplier].name,
                       pack_words(offer, Figures(book.shop)));
}

GROAT_INLINE std::string reason_words(Purchase const& purchase, Ingredient const& ingredient,
                                      Book const& book, Figures const& figures) {
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

GROAT_INLINE std::string purchase_words(Purchase const& purchase, Ingredient const& ingredient,
                                        Book const& book, Figures const& figures) {
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
