#pragma once

#include <groat/paper/html_text.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>

#include <fmt/format.h>

namespace groat::html_detail {

GROAT_INLINE std::string escaped(std::string_view text) {
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

GROAT_INLINE std::string escaped_in_style(std::string_view text) {
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
