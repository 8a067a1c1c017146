#pragma once

#include <groat/base/base64.hpp>

#include <groat/base/linkage.hpp>

#include <cstddef>
#include <iterator>

namespace groat {

GROAT_INLINE std::string base64(std::string_view bytes) {
    constexpr std::string_view letters =
        "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    std::string text;
    text.reserve((bytes.size() + 2) / 3 * 4);
    for (std::size_t at = 0; at < bytes.size(); at += 3) {
        auto const byte = [&](std::size_t i) -> unsigned {
            return at + i < bytes.size() ? static_cast<unsigned char>(bytes[at + i]) : 0;
        };
        unsigned const three = byte(0) << 16 | byte(1) << 8 | byte(2);
        for (std::size_t i = 0; i < 4; ++i)
            text += at + i > bytes.size() ? '=' : letters[three >> (18 - 6 * i) & 63];
    }
    return text;
}

} // namespace groat
