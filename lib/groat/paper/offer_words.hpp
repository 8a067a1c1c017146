/// How an offer is named on a sheet.
#pragma once

#include <groat/model/book.hpp>
#include <groat/paper/figures.hpp>

#include <string>

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

} // namespace groat
