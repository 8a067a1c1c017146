/// Capital letters of the scripts that have them in pairs: Latin with its accents, Greek and Cyrillic.
#pragma once

#include <string>
#include <string_view>

namespace groat {

/// The capital of a letter; anything else is its own.
/// Source  Unicode, UnicodeData.txt, simple upper-case mappings of the blocks named here
[[nodiscard]] constexpr char32_t capital(char32_t code);

/// `text` in capitals, ß as SS.
/// Example  "Nüsse"  ->  "NÜSSE"
[[nodiscard]] std::string capitals(std::string_view text);

/// The bytes of a character in UTF-8.
[[nodiscard]] std::string utf8(char32_t code);

constexpr char32_t capital(char32_t code) {
    auto const is_in = [&](char32_t first, char32_t last) { return code >= first && code <= last; };
    if (is_in('a', 'z')) return code - 32;
    if (code < 0xE0) return code;
    // Latin-1: à to þ, without the sign of division
    if (is_in(0xE0, 0xFE)) return code == 0xF7 ? code : code - 32;
    if (code == 0xFF) return 0x178;
    // Latin Extended-A: pairs, the capital first, which is even in two stretches and odd in the others
    if (is_in(0x100, 0x12F) || is_in(0x132, 0x137) || is_in(0x14A, 0x177)) return code & ~1U;
    if (is_in(0x139, 0x148) || is_in(0x179, 0x17E)) return code % 2 == 0 ? code - 1 : code;
    if (code == 0x131) return 'I';
    // Greek and Cyrillic
    if (code == 0x3C2) return 0x3A3;
    if (is_in(0x3B1, 0x3CB) || is_in(0x430, 0x44F)) return code - 32;
    if (is_in(0x450, 0x45F)) return code - 80;
    if (code == 0x3AC) return 0x386;
    if (is_in(0x3AD, 0x3AF)) return code - 37;
    if (code == 0x3CC) return 0x38C;
    if (is_in(0x3CD, 0x3CE)) return code - 63;
    return code;
}

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/base/capital.ipp>
#endif
