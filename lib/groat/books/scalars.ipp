#pragma once

#include <groat/books/scalars.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/name.hpp>
#include <groat/base/rounding.hpp>
#include <groat/base/text.hpp>
#include <groat/books/scalar_text.hpp>

#include <fmt/ranges.h>

namespace groat {

GROAT_INLINE void report(Node const& node, std::string_view text, Flaw const& flaw,
                         Reading const& reading) {
    std::size_t const at = scalar_text_detail::begin_of(text, node.text) + flaw.at;
    std::size_t const length =
        std::min(flaw.length, node.text.size() - std::min(at, node.text.size()));
    reading.found.error(node.place_of(at, length), flaw);
}

GROAT_INLINE std::optional<std::string> read_text(Node const* node, Reading const& reading) {
    return read_scalar(node, "text", reading, [](std::string_view text) -> Result<std::string> {
        if (text.empty())
            return refuse("missing-value", "the text is empty", "write it, or take the key out");
        return std::string(text);
    });
}

GROAT_INLINE Result<std::string> parse_name(std::string_view text) {
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

GROAT_INLINE std::optional<std::string> read_name(Node const* node, Reading const& reading) {
    return read_scalar(node, "a name", reading, parse_name);
}

GROAT_INLINE bool is_name(Key const& key, Reading const& reading) {
    auto const name = parse_name(key.text);
    if (!name) reading.found.error(key.where, name.error());
    return name.has_value();
}

GROAT_INLINE Reference read_reference(Node const* node, Reading const& reading) {
    auto name = read_name(node, reading);
    return name ? Reference{*std::move(name), node->where} : Reference{};
}

GROAT_INLINE std::optional<std::size_t> read_word(Node const* node,
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

GROAT_INLINE std::optional<bool> read_yes_no(Node const* node, Reading const& reading) {
    return read_scalar(node, "yes or no", reading, parse_yes_no);
}

GROAT_INLINE std::optional<Date> read_date(Node const* node, Reading const& reading) {
    return read_scalar(node, "a date", reading, parse_date);
}

GROAT_INLINE std::optional<Days> read_days(Node const* node, Reading const& reading) {
    return read_scalar(node, "a number of days", reading, parse_days);
}

GROAT_INLINE std::optional<Number> read_positive(Node const* node, std::string_view what,
                                                 Reading const& reading) {
    return read_scalar(node, "a number", reading, [&](std::string_view text) -> Result<Number> {
        auto number = parse_number(text);
        if (number && !number->is_positive())
            return refuse("not-positive",
                          fmt::format("{} must be above 0, not '{}'", what, shortened(text, 32)));
        return number;
    });
}

GROAT_INLINE std::optional<Number> read_not_negative(Node const* node, std::string_view what,
                                                     Reading const& reading) {
    return read_scalar(node, "a number", reading, [&](std::string_view text) -> Result<Number> {
        auto number = parse_number(text);
        if (number && number->is_negative())
            return refuse("negative", fmt::format("{} cannot be below 0, as '{}' is", what,
                                                  shortened(text, 32)));
        return number;
    });
}

GROAT_INLINE std::optional<Money> read_money(Node const* node, Reading const& reading) {
    return read_scalar(node, "an amount of money", reading,
                       [&](std::string_view text) { return parse_money(text, reading.currency); });
}

GROAT_INLINE std::optional<Money> read_coins(Node const* node, std::string_view what, bool is_step,
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

GROAT_INLINE std::optional<MoneyRate> read_money_rate(Node const* node, Dimension dimension,
                                                      Reading const& reading) {
    return read_scalar(
        node, "an amount of money and what it is for", reading, [&](std::string_view text) {
            return parse_money_rate(text, dimension, reading.currency, reading.measures);
        });
}

GROAT_INLINE Result<Quantity> parse_wanted(std::string_view text, Wanted const& wanted,
                                           Reading const& reading) {
    auto quantity = parse_bounded(text, reading, parse_quantity);
    if (!quantity) return quantity;
    auto const& kinds = wanted.kinds;
    if (std::find(kinds.begin(), kinds.end(), quantity->dimension) == kinds.end()) {
        std::string list;
        for (Dimension const& kind : kinds) {
            if (!list.empty()) list += &kind == &kinds.back() ? " or " : ", ";
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

GROAT_INLINE std::optional<Quantity> read_quantity(Node const* node, Wanted const& wanted,
                                                   Reading const& reading) {
    return read_scalar(node, "a quantity", reading,
                       [&](std::string_view text) { return parse_wanted(text, wanted, reading); });
}

GROAT_INLINE std::optional<Quantity> read_quantity(Node const& node, std::string_view text,
                                                   Wanted const& wanted, Reading const& reading) {
    auto quantity = parse_wanted(text, wanted, reading);
    if (quantity) return *std::move(quantity);
    report(node, text, quantity.error(), reading);
    return std::nullopt;
}

GROAT_INLINE bool is_whole_count(Node const& node, Quantity const& quantity, std::string_view what,
                                 Reading const& reading) {
    if (!quantity.is(Dimension::count) || quantity.amount.is_whole()) return true;
    reading.found.error(
        node.where, "not-whole",
        fmt::format("{} must be a whole number, not '{}'", what, shortened(node.text, 32)));
    return false;
}

GROAT_INLINE std::optional<Integer> read_count(Node const* node, std::string_view what,
                                               Reading const& reading) {
    auto const count = read_quantity(node, {what, shapes::pieces_only, "12"}, reading);
    if (!count || !is_whole_count(*node, *count, what, reading)) return std::nullopt;
    return count->amount.numerator();
}

GROAT_INLINE std::span<Node const> read_list(Node const* node, std::string_view what,
                                             Reading const& reading) {
    if (node == nullptr) return {};
    if (node->is_sequence()) return node->items;
    if (!node->is_null()) return {node, 1};
    expected(what, *node, reading.found,
             "write a list: [one, two], or a line beginning with - for each");
    return {};
}

} // namespace groat
