/// The codes of findings: one table of all that groat can find wrong. A code that is not in it does not compile, so
/// that each can be looked up (`groat help CODE`) and be accepted by name.
#pragma once

#include <groat/base/codes_of_books.hpp>
#include <groat/base/codes_of_text.hpp>
#include <groat/base/codes_of_work.hpp>

#include <cmath>
#include <concepts>
#include <cstddef>
#include <iterator>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace groat {

/// A code of the table, or none.
///
/// Example  `found.error(where, "unknown-key", "unknown key 'prise'", "did you mean 'price'?");`
///
/// Two codes may be compared. A code and a text may be, too, for tests; the library does nothing by the spelling
/// of a code (tests/codes/ looks for that).
class Code {
public:
    constexpr Code() = default;
    template <std::size_t N>
    consteval Code(char const (&code)[N]); // NOLINT: a literal reads as what it names

    /// The code of the table that is spelt so.
    [[nodiscard]] static constexpr std::optional<Code> find(std::string_view code);
    /// Every code, in the order of the alphabet.
    [[nodiscard]] static std::vector<std::string> all();

    [[nodiscard]] constexpr bool empty() const { return entry_ == nullptr; }
    [[nodiscard]] constexpr std::string_view text() const {
        return empty() ? std::string_view() : entry_->code;
    }
    operator std::string() const { return std::string(text()); } // NOLINT: it is a word
    /// What the table says of it. Not to be asked of no code.
    [[nodiscard]] constexpr CodeEntry const& entry() const { return *entry_; }

    friend constexpr bool operator==(Code a, Code b) { return a.entry_ == b.entry_; }
    template <std::convertible_to<std::string_view> Text>
    friend constexpr bool operator==(Code code, Text const& text) {
        return code.text() == std::string_view(text);
    }

private:
    explicit constexpr Code(CodeEntry const* entry) : entry_(entry) {}
    CodeEntry const* entry_ = nullptr;
};

namespace codes_detail {

/// Each table is in order, so a code is found by halves.
template <std::size_t N>
constexpr CodeEntry const* find(CodeEntry const (&table)[N], std::string_view code) {
    std::size_t first = 0;
    std::size_t last = N;
    while (first < last) {
        std::size_t const middle = (first + last) / 2;
        if (table[middle].code < code)
            first = middle + 1;
        else
            last = middle;
    }
    return first < N && table[first].code == code ? &table[first] : nullptr;
}

constexpr CodeEntry const* find(std::string_view code) {
    CodeEntry const* entry = find(codes_of_text, code);
    if (entry == nullptr) entry = find(codes_of_books, code);
    if (entry == nullptr) entry = find(codes_of_work, code);
    return entry;
}

} // namespace codes_detail

template <std::size_t N>
consteval Code::Code(char const (&code)[N])
    : entry_(codes_detail::find(std::string_view(code, N - 1))) {
    if (entry_ == nullptr) throw std::logic_error("no such code: add it to the table");
}

constexpr std::optional<Code> Code::find(std::string_view code) {
    CodeEntry const* const entry = codes_detail::find(code);
    if (entry == nullptr) return std::nullopt;
    return Code(entry);
}

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/base/codes.ipp>
#endif
