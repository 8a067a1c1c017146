/// Words in a page: nothing that anybody wrote can become markup.
#pragma once

#include <groat/base/text.hpp>

#include <fmt/format.h>

#include <string>
#include <string_view>

namespace groat::html_detail {

/// For the text of an element and for an attribute in quotation marks.
inline std::string escaped(std::string_view text) {
    std::string result;
    for (char const c : printable(text)) {
        switch (c) {
        case '<': result += "&lt;"; break;
        case '>': result += "&gt;"; break;
        case '&': result += "&amp;"; break;
        case '"': result += "&quot;"; break;
        case '\'': result += "&#39;"; break;
        default: result += c;
        }
    }
    return result;
}

/// For a string of a style sheet: all but letters, digits and blanks by its number.
inline std::string escaped_in_style(std::string_view text) {
    std::string result;
    for (char const c : printable(text)) {
        bool const is_plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
                              (c >= '0' && c <= '9') || c == ' ' || (c & 0x80) != 0;
        result +=
            is_plain ? std::string(1, c) : fmt::format("\\{:x} ", static_cast<unsigned char>(c));
    }
    return result;
}

} // namespace groat::html_detail
