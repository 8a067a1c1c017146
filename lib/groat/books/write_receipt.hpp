/// A receipt as the YAML that the books are kept in. What is written reads back (see read_receipts.hpp) as the same
/// receipt.
#pragma once

#include <groat/model/receipt.hpp>

#include <string>
#include <string_view>

namespace groat {

/// The YAML of a receipt, `note` in front of it as a comment. Amounts are exact. The tax that all contain is said
/// once, else with each.
/// Example  `- {item: butter, pack: 1 lb, packs: 6, paid: 25.14}`
[[nodiscard]] std::string write_receipt(Receipt const& receipt, std::string_view note = {});

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/write_receipt.ipp>
#endif
