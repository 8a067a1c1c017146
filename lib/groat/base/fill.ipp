#pragma once

#include <groat/base/fill.hpp>

#include <groat/base/linkage.hpp>

#include <cmath>
#include <cstddef>
#include <iterator>
#include <stdexcept>

namespace groat {

GROAT_INLINE std::vector<std::string_view> places_in(std::string_view text) {
    std::vector<std::string_view> places;
    while (!text.empty()) {
        std::size_t const open = text.find_first_of("{}");
        if (open == std::string_view::npos) break;
        std::size_t const close = text.find_first_of("{}", open + 1);
        bool const is_place =
            text[open] == '{' && close != std::string_view::npos && text[close] == '}';
        places.push_back(is_place ? text.substr(open + 1, close - open - 1) : std::string_view());
        text.remove_prefix(is_place ? close + 1 : open + 1);
    }
    return places;
}

GROAT_INLINE std::string filled(std::string_view text, Filling values) {
    std::string result;
    for (std::string_view const place : places_in(text)) {
        std::size_t const open = text.find('{');
        result += text.substr(0, open);
        bool is_found = false;
        for (auto const& [name, value] : values) {
            if (name != place) continue;
            result += value;
            is_found = true;
        }
        if (!is_found || place.empty())
            throw std::logic_error("a place without a value: '" + std::string(place) + "'");
        text.remove_prefix(open + place.size() + 2);
    }
    return result + std::string(text);
}

} // namespace groat
