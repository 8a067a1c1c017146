/// How an offer is named on a sheet, and why costs go by it.
#pragma once

#include <groat/cost/unit_cost.hpp>
#include <groat/sheets/figures.hpp>

#include <string>

namespace groat {

/// The pack as written in the books; a bare number says that it is one, in the style of `figures`.
/// Example  "25 lb", "pack of 100"
[[nodiscard]] std::string pack_words(Offer const& offer, Figures const& figures,
                                     Words const& words = Words::english());

/// Supplier and pack: "Mill Road Provisions, 25 lb".
[[nodiscard]] std::string offer_words(Offer const& offer, Book const& book);

/// Why costs go by this offer, in words; empty where there is no other.
/// Example  "cheapest of 3", "last bought on 20 Nov 2026"
[[nodiscard]] std::string reason_words(Purchase const& purchase, Ingredient const& ingredient,
                                       Book const& book, Figures const& figures);

/// What an ingredient is costed at: the offer, what a pack of it costs and since when, and why it is that one.
/// Example  "Corner Dock, 1 lb at 4.19 paid on 20 Nov 2026 (last bought)"
[[nodiscard]] std::string purchase_words(Purchase const& purchase, Ingredient const& ingredient,
                                         Book const& book, Figures const& figures);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/sheets/offer_words.ipp>
#endif
