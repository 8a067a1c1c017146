/// How every sheet of a shop begins.
#pragma once

#include <groat/model/sender.hpp>
#include <groat/paper/sheet.hpp>

#include <string>
#include <utility>

namespace groat {

/// An empty sheet under the shop's name, address and contact, in the shop's style and in English.
[[nodiscard]] inline Sheet sheet_for(Sender const& shop, std::string kind, std::string audience,
                                     std::string title) {
    Sheet sheet{std::move(kind), std::move(audience), {shop.name}, std::move(title), {}};
    sheet.style = shop.sheets.style;
    sheet.look = shop.sheets.look;
    std::string address;
    for (std::string const& line : shop.address) {
        if (!address.empty()) address += ", ";
        address += line;
    }
    if (!address.empty()) sheet.letterhead.push_back(address);
    if (!shop.contact.empty()) sheet.letterhead.push_back(shop.contact);
    return sheet;
}

/// The same in the shop's words, for whoever is outside the house.
[[nodiscard]] inline Sheet sheet_in_words(Sender const& shop, std::string kind,
                                          std::string audience, std::string title) {
    Sheet sheet = sheet_for(shop, std::move(kind), std::move(audience), std::move(title));
    sheet.style = shop.sheets.style_in_words();
    sheet.language = shop.sheets.words.language();
    return sheet;
}

} // namespace groat
