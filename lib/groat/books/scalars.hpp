/// Nodes to values: each function takes the node of a field, or null where the field is absent, and gives
/// the value, or nothing. Absence is not reported here (see fields.hpp); everything else that is wrong is,
/// at the very characters it concerns where these can be told apart.
#pragma once

#include <groat/base/text.hpp>
#include <groat/books/fields.hpp>
#include <groat/measure/money_rate.hpp>
#include <groat/measure/rate.hpp>
#include <groat/model/reference.hpp>
#include <groat/model/words.hpp>

#include <fmt/format.h>

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace groat {

/// What reading a value takes besides its node. The currency is none until shop.yaml has named it, and there are
/// no own words unless words.yaml was read before.
struct Reading {
    Diagnostics& found;
    Currency currency = {};
    Measures measures = Measures::us;
    std::optional<Words> own_words = {}; ///< without a language where none could be read
    bool is_of_later_form = false;       ///< the books are, so nothing in them is judged
};

/// Puts a value where it belongs, if there is one.
template <class T, class U> void assign(T& target, std::optional<U> value) {
    if (value) target = *std::move(value);
}

/// The longest name of anything, and the longest quantity, in bytes.
inline constexpr std::size_t longest_name = 200;
inline constexpr std::size_t longest_quantity = 200;

/// Text of any length, without blanks at its ends. Empty text is an error.
[[nodiscard]] std::optional<std::string> read_text(Node const* node, Reading const& reading);
/// A name: text of one line.
[[nodiscard]] std::optional<std::string> read_name(Node const* node, Reading const& reading);
/// The same for a key that is a name.
[[nodiscard]] bool is_name(Key const& key, Reading const& reading);
/// A name that stands for something else; not given where it is absent or wrong.
[[nodiscard]] Reference read_reference(Node const* node, Reading const& reading);

/// The index of a word among `words`.
[[nodiscard]] std::optional<std::size_t> read_word(Node const* node,
                                                   std::span<std::string_view const> words,
                                                   Reading const& reading);
[[nodiscard]] std::optional<bool> read_yes_no(Node const* node, Reading const& reading);
[[nodiscard]] std::optional<Date> read_date(Node const* node, Reading const& reading);
[[nodiscard]] std::optional<Days> read_days(Node const* node, Reading const& reading);

/// A number above 0; `what` names it: "the largest mix".
[[nodiscard]] std::optional<Number> read_positive(Node const* node, std::string_view what,
                                                  Reading const& reading);
/// A number that is 0 or above.
[[nodiscard]] std::optional<Number> read_not_negative(Node const* node, std::string_view what,
                                                      Reading const& reading);
/// A whole number of things from 1 on; `2 dozen` is one, too.
[[nodiscard]] std::optional<Integer> read_count(Node const* node, std::string_view what,
                                                Reading const& reading);

/// A percentage that means `R`, such as a `Loss`; the kind says which values make sense.
template <class R>
[[nodiscard]] std::optional<R> read_rate(Node const* node, Reading const& reading);

/// Money, 0 or above, in the currency of the books.
[[nodiscard]] std::optional<Money> read_money(Node const* node, Reading const& reading);
/// Money that can be paid: a whole number of minor units, above 0 where `is_step`.
[[nodiscard]] std::optional<Money> read_coins(Node const* node, std::string_view what, bool is_step,
                                              Reading const& reading);
[[nodiscard]] std::optional<MoneyRate> read_money_rate(Node const* node, Dimension dimension,
                                                       Reading const& reading);

/// What a quantity has to be at its place.
struct Wanted {
    std::string_view what; ///< "the pack"
    std::span<Dimension const> kinds;
    std::string_view example; ///< "25 lb"
    bool may_be_zero = false;
};
[[nodiscard]] std::optional<Quantity> read_quantity(Node const* node, Wanted const& wanted,
                                                    Reading const& reading);
/// The same for a part of a node's text.
[[nodiscard]] std::optional<Quantity> read_quantity(Node const& node, std::string_view text,
                                                    Wanted const& wanted, Reading const& reading);
/// Whether a count is a whole number; reports one that is not. Other quantities pass.
[[nodiscard]] bool is_whole_count(Node const& node, Quantity const& quantity, std::string_view what,
                                  Reading const& reading);
/// The items of a list, or the one that stands for a list of one; none where it is absent, or nothing stands there,
/// which is reported.
[[nodiscard]] std::span<Node const> read_list(Node const* node, std::string_view what,
                                              Reading const& reading);

/// Reports a flaw that was found in `text`, a view into the text of `node`.
void report(Node const& node, std::string_view text, Flaw const& flaw, Reading const& reading);

/// The value that `parse` makes of a scalar's text. `what` is what is expected, with an article.
template <class Parse>
auto read_scalar(Node const* node, std::string_view what, Reading const& reading, Parse parse)
    -> std::optional<typename decltype(parse(std::string_view{}))::value_type> {
    if (node == nullptr) return std::nullopt;
    if (!node->is_scalar()) {
        expected(what, *node, reading.found);
        return std::nullopt;
    }
    std::string_view const text = trimmed(node->text);
    auto value = parse(text);
    if (value) return *std::move(value);
    report(*node, text, value.error(), reading);
    return std::nullopt;
}

Result<std::string> parse_name(std::string_view text);

template <class R> std::optional<R> read_rate(Node const* node, Reading const& reading) {
    return read_scalar(node, "a percentage", reading, [](std::string_view text) -> Result<R> {
        auto percent = parse_percent(text);
        if (!percent) return Refused(percent.error());
        return R::of(*std::move(percent));
    });
}

/// Reads a quantity or a density unless it is so long that calculating with it would take its time: packs
/// within packs by the thousand.
template <class Parse>
auto parse_bounded(std::string_view text, Reading const& reading, Parse parse)
    -> decltype(parse(text, reading.measures)) {
    if (text.size() > longest_quantity)
        return refuse("quantity-too-long",
                      fmt::format("'{}' is too long for a quantity", shortened(text, 32)),
                      "write it shorter");
    return parse(text, reading.measures);
}

Result<Quantity> parse_wanted(std::string_view text, Wanted const& wanted, Reading const& reading);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/scalars.ipp>
#endif
