/// Nodes to values: each function takes the node of a field, or null where the field is absent, and gives
/// the value, or nothing. Absence is not reported here (see fields.hpp); everything else that is wrong is,
/// at the very characters it concerns where these can be told apart.
#pragma once

#include <groat/books/fields.hpp>
#include <groat/books/scalar_text.hpp>

#include <groat/measure/currency.hpp>
#include <groat/measure/quantity.hpp>
#include <groat/measure/rate.hpp>
#include <groat/model/reference.hpp>
#include <groat/model/words.hpp>

#include <fmt/format.h>

#include <initializer_list>
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
/// One text or a list of texts.
[[nodiscard]] std::vector<std::string> read_texts(Node const* node, Reading const& reading);

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
    std::initializer_list<Dimension> kinds;
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
/// One density or a list of them.
[[nodiscard]] std::vector<Density> read_densities(Node const* node, Reading const& reading);

/// The items of a list, or the one that stands for a list of one; none where it is absent, or nothing stands there,
/// which is reported.
[[nodiscard]] std::span<Node const> read_list(Node const* node, std::string_view what,
                                              Reading const& reading);

// ---------------------------------------------------------------------------------------------------

/// Reports a flaw that was found in `text`, a view into the text of `node`.
inline void report(Node const& node, std::string_view text, Flaw const& flaw,
                   Reading const& reading) {
    std::size_t const at = scalar_text_detail::begin_of(text, node.text) + flaw.at;
    std::size_t const length =
        std::min(flaw.length, node.text.size() - std::min(at, node.text.size()));
    reading.found.error(node.place_of(at, length), flaw);
}

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

inline std::optional<std::string> read_text(Node const* node, Reading const& reading) {
    return read_scalar(node, "text", reading, [](std::string_view text) -> Result<std::string> {
        if (text.empty())
            return refuse("missing-value", "the text is empty", "write it, or take the key out");
        return std::string(text);
    });
}

inline Result<std::string> parse_name(std::string_view text) {
    if (text.empty()) return refuse("bad-name", "a name is missing here", "write one");
    if (character_count(text) > longest_name)
        return refuse("bad-name", fmt::format("a name of {} characters", character_count(text)),
                      fmt::format("a name has {} at most", longest_name));
    if (text.find('\n') != std::string_view::npos)
        return refuse("bad-name",
                      fmt::format("the name '{}' goes over several lines", shortened(text, 32)),
                      "write it on one line");
    return std::string(text);
}

inline std::optional<std::string> read_name(Node const* node, Reading const& reading) {
    return read_scalar(node, "a name", reading, parse_name);
}

inline bool is_name(Key const& key, Reading const& reading) {
    auto const name = parse_name(key.text);
    if (!name) reading.found.error(key.where, name.error());
    return name.has_value();
}

inline Reference read_reference(Node const* node, Reading const& reading) {
    auto name = read_name(node, reading);
    return name ? Reference{*std::move(name), node->where} : Reference{};
}

inline std::vector<std::string> read_texts(Node const* node, Reading const& reading) {
    std::vector<std::string> texts;
    for (Node const& each : read_list(node, "text", reading))
        if (auto text = read_text(&each, reading)) texts.push_back(*std::move(text));
    return texts;
}

inline std::optional<std::size_t> read_word(Node const* node,
                                            std::span<std::string_view const> words,
                                            Reading const& reading) {
    auto const list = fmt::format("{}", fmt::join(words, ", "));
    return read_scalar(
        node, fmt::format("one of the words {}", list), reading,
        [&](std::string_view text) -> Result<std::size_t> {
            for (std::size_t i = 0; i < words.size(); ++i)
                if (words[i] == text) return i;
            auto const near = nearest_name(text, words);
            return refuse("unknown-word",
                          fmt::format("'{}' means nothing here", shortened(text, 32)),
                          near ? fmt::format("did you mean '{}'? possible are: {}", *near, list)
                               : fmt::format("possible are: {}", list));
        });
}

inline std::optional<bool> read_yes_no(Node const* node, Reading const& reading) {
    return read_scalar(node, "yes or no", reading, parse_yes_no);
}

inline std::optional<Date> read_date(Node const* node, Reading const& reading) {
    return read_scalar(node, "a date", reading, parse_date);
}

inline std::optional<Days> read_days(Node const* node, Reading const& reading) {
    return read_scalar(node, "a number of days", reading, parse_days);
}

inline std::optional<Number> read_positive(Node const* node, std::string_view what,
                                           Reading const& reading) {
    return read_scalar(node, "a number", reading, [&](std::string_view text) -> Result<Number> {
        auto number = parse_number(text);
        if (number && !number->is_positive())
            return refuse("not-positive",
                          fmt::format("{} must be above 0, not '{}'", what, shortened(text, 32)));
        return number;
    });
}

inline std::optional<Number> read_not_negative(Node const* node, std::string_view what,
                                               Reading const& reading) {
    return read_scalar(node, "a number", reading, [&](std::string_view text) -> Result<Number> {
        auto number = parse_number(text);
        if (number && number->is_negative())
            return refuse("negative", fmt::format("{} cannot be below 0, as '{}' is", what,
                                                  shortened(text, 32)));
        return number;
    });
}

template <class R> std::optional<R> read_rate(Node const* node, Reading const& reading) {
    return read_scalar(node, "a percentage", reading, [](std::string_view text) -> Result<R> {
        auto percent = parse_percent(text);
        if (!percent) return Refused(percent.error());
        return R::of(*std::move(percent));
    });
}

inline std::optional<Money> read_money(Node const* node, Reading const& reading) {
    return read_scalar(node, "an amount of money", reading,
                       [&](std::string_view text) { return parse_money(text, reading.currency); });
}

inline std::optional<Money> read_coins(Node const* node, std::string_view what, bool is_step,
                                       Reading const& reading) {
    return read_scalar(
        node, "an amount of money", reading, [&](std::string_view text) -> Result<Money> {
            auto money = parse_money(text, reading.currency);
            if (!money) return money;
            if (is_step && money->is_zero())
                return refuse("not-positive", fmt::format("{} must be above 0, not '{}'", what,
                                                          shortened(text, 32)));
            Currency const currency = reading.currency;
            if (!currency.is_none() && !(money->amount() / currency.minor_unit()).is_whole())
                return refuse("not-payable",
                              fmt::format("{} must be payable, and '{}' is not a multiple of {} {}",
                                          what, shortened(text, 32),
                                          decimal(currency.minor_unit(), currency.minor_digits()),
                                          currency.code()));
            return money;
        });
}

inline std::optional<MoneyRate> read_money_rate(Node const* node, Dimension dimension,
                                                Reading const& reading) {
    return read_scalar(
        node, "an amount of money and what it is for", reading, [&](std::string_view text) {
            return parse_money_rate(text, dimension, reading.currency, reading.measures);
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

inline Result<Quantity> parse_wanted(std::string_view text, Wanted const& wanted,
                                     Reading const& reading) {
    auto quantity = parse_bounded(text, reading, parse_quantity);
    if (!quantity) return quantity;
    auto const& kinds = wanted.kinds;
    if (std::find(kinds.begin(), kinds.end(), quantity->dimension) == kinds.end()) {
        std::string list;
        for (Dimension const& kind : kinds) {
            if (!list.empty()) list += &kind + 1 == kinds.end() ? " or " : ", ";
            list += fmt::format("a {}", to_text(kind));
        }
        return refuse("wrong-dimension",
                      fmt::format("{} must be {}, and '{}' is a {}", wanted.what, list,
                                  shortened(text, 32), to_text(quantity->dimension)),
                      fmt::format("write it as {}", wanted.example));
    }
    if (quantity->amount.is_negative() || (quantity->amount.is_zero() && !wanted.may_be_zero))
        return refuse("not-positive", fmt::format("{} must be {}, not '{}'", wanted.what,
                                                  wanted.may_be_zero ? "0 or above" : "above 0",
                                                  shortened(text, 32)));
    return quantity;
}

inline std::optional<Quantity> read_quantity(Node const* node, Wanted const& wanted,
                                             Reading const& reading) {
    return read_scalar(node, "a quantity", reading,
                       [&](std::string_view text) { return parse_wanted(text, wanted, reading); });
}

inline std::optional<Quantity> read_quantity(Node const& node, std::string_view text,
                                             Wanted const& wanted, Reading const& reading) {
    auto quantity = parse_wanted(text, wanted, reading);
    if (quantity) return *std::move(quantity);
    report(node, text, quantity.error(), reading);
    return std::nullopt;
}

inline bool is_whole_count(Node const& node, Quantity const& quantity, std::string_view what,
                           Reading const& reading) {
    if (!quantity.is(Dimension::count) || quantity.amount.is_whole()) return true;
    reading.found.error(
        node.where, "not-whole",
        fmt::format("{} must be a whole number, not '{}'", what, shortened(node.text, 32)));
    return false;
}

inline std::optional<Integer> read_count(Node const* node, std::string_view what,
                                         Reading const& reading) {
    auto const count = read_quantity(node, {what, {Dimension::count}, "12"}, reading);
    if (!count || !is_whole_count(*node, *count, what, reading)) return std::nullopt;
    return count->amount.numerator();
}

inline std::vector<Density> read_densities(Node const* node, Reading const& reading) {
    std::vector<Density> densities;
    for (Node const& each : read_list(node, "a density", reading)) {
        auto density = read_scalar(&each, "a density", reading, [&](std::string_view text) {
            return parse_bounded(text, reading, parse_density);
        });
        if (!density) continue;
        density->origin = each.where;
        densities.push_back(*std::move(density));
    }
    return densities;
}

inline std::span<Node const> read_list(Node const* node, std::string_view what,
                                       Reading const& reading) {
    if (node == nullptr) return {};
    if (node->is_sequence()) return node->items;
    if (!node->is_null()) return {node, 1};
    expected(what, *node, reading.found,
             "write a list: [one, two], or a line beginning with - for each");
    return {};
}

} // namespace groat
