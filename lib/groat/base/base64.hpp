/// Bytes as letters, for putting a picture into a page.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace groat {

/// Base 64 with its padding, on one line.
/// Example  `base64("foob")`  ->  "Zm9vYg=="
/// Source   RFC 4648, section 4
[[nodiscard]] std::string base64(std::string_view bytes);

// ---------------------------------------------------------------------------------------------------

inline std::string base64(std::string_view bytes) {
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
