/// Bytes as letters, for putting a picture into a page.
#pragma once

#include <string>
#include <string_view>

namespace groat {

/// Base 64 with its padding, on one line.
/// Example  `base64("foob")`  ->  "Zm9vYg=="
/// Source   RFC 4648, section 4
[[nodiscard]] std::string base64(std::string_view bytes);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/base/base64.ipp>
#endif
