#pragma once

#include <groat/sheets/letterhead.hpp>

#include <groat/base/linkage.hpp>

#include <utility>

namespace groat {

GROAT_INLINE Sheet sheet_for(Sender const& shop, std::string kind, std::string audience,
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

GROAT_INLINE Sheet sheet_in_words(Sender const& shop, std::string kind, std::string audience,
                                  std::string title) {
    Sheet sheet = sheet_for(shop, std::move(kind), std::move(audience), std::move(title));
    sheet.style = shop.sheets.style_in_words();
    sheet.language = shop.sheets.words.language();
    return sheet;
}

} // namespace groat
