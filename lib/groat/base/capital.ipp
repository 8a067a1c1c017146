#pragma once

#include <groat/base/capital.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>

namespace groat {

GROAT_INLINE std::string utf8(char32_t code) {
    std::string bytes;
    auto const put = [&](char32_t byte) { bytes += static_cast<char>(byte); };
    auto const rest = [&](unsigned shift) { put(0x80U | ((code >> shift) & 0x3FU)); };
    if (code < 0x80) {
        put(code);
    } else if (code < 0x800) {
        put(0xC0U | (code >> 6U));
        rest(0);
    } else if (code < 0x10000) {
        put(0xE0U | (code >> 12U));
        rest(6);
        rest(0);
    } else {
        put(0xF0U | (code >> 18U));
        rest(12);
        rest(6);
        rest(0);
    }
    return bytes;
}

GROAT_INLINE std::string capitals(std::string_view text) {
    std::string result;
    for (std::size_t at = 0; at < text.size();) {
        Character const next = character_at(text, at);
        if (!next.is_valid)
            result += text[at];
        else if (next.code == 0xDF)
            result += "SS";
        else
            result += utf8(capital(next.code));
        at += next.length;
    }
    return result;
}

} // namespace groat
