/// How every sheet of a shop begins.
#pragma once

#include <groat/model/sender.hpp>
#include <groat/paper/sheet.hpp>

#include <string>

namespace groat {

/// An empty sheet under the shop's name, address and contact, in the shop's style and in English.
[[nodiscard]] Sheet sheet_for(Sender const& shop, std::string kind, std::string audience,
                              std::string title);

/// The same in the shop's words, for whoever is outside the house.
[[nodiscard]] Sheet sheet_in_words(Sender const& shop, std::string kind, std::string audience,
                                   std::string title);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/sheets/letterhead.ipp>
#endif
