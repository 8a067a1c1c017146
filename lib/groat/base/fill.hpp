/// Texts with places to fill: "Valid until {date}".
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace groat {

/// The places of a text in their order, each as often as it stands there. A brace that opens or closes none is
/// a place with an empty name.
/// Example  "{day}. {month} {year}"  ->  day, month, year
[[nodiscard]] std::vector<std::string_view> places_in(std::string_view text);

using Filling = std::initializer_list<std::pair<std::string_view, std::string>>;

/// `text` with each place replaced by the value of its name; values stand as they are.
/// Throws `std::logic_error` where a place has no value.
[[nodiscard]] std::string filled(std::string_view text, Filling values);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/base/fill.ipp>
#endif
