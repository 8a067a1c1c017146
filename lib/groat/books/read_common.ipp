#pragma once

#include <groat/books/read_common.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>

#include <algorithm>

namespace groat {

namespace read_common_detail {

inline std::optional<GivenPrice> read_given(Node const* node, Reading const& reading) {
    auto amount = read_coins(node, "a given price", false, reading);
    if (!amount) return std::nullopt;
    return GivenPrice{*std::move(amount)};
}

inline Result<Number> parse_ending(std::string_view text, Currency currency) {
    auto ending = parse_number(text);
    if (!ending) return ending;
    if (ending->is_negative() || *ending >= 1)
        return refuse("bad-ending",
                      fmt::format("'{}' is no ending of a price", shortened(text, 32)),
                      "an ending is 0 or above and below 1, as .50 or .99");
    if (!currency.is_none() && !(*ending / currency.minor_unit()).is_whole())
        return refuse("not-payable", fmt::format("a price that ends in '{}' cannot be paid in {}",
                                                 shortened(text, 32), currency.code()));
    return ending;
}

inline std::optional<PricePoint> read_price_point(Fields<shapes::price>& fields,
                                                  Reading const& reading) {
    Node const* const to = fields.at("to");
    Node const* const endings = fields.at("endings");
    Node const* const toward = fields.at("toward");
    if (to == nullptr && endings == nullptr && toward == nullptr) return std::nullopt;
    PricePoint point;
    fields.read_into(point, reading);
    for (Node const& each : read_list(endings, "the ending of a price", reading)) {
        auto ending =
            read_scalar(&each, "the ending of a price", reading, [&](std::string_view text) {
                return parse_ending(text, reading.currency);
            });
        if (ending) point.endings.push_back(*std::move(ending));
    }
    if (endings != nullptr && endings->is_sequence() && endings->items.empty())
        expected("the ending of a price", *endings, reading.found, "write some, as [.50, .99]");
    if (point.to_nearest && endings != nullptr)
        reading.found.error(fields.place_of("toward"), "two-price-points",
                            "endings are always reached upward",
                            "leave 'toward' out, or write 'to' in place of 'endings'");
    return point;
}

GROAT_INLINE Per read_driver(Node const* node, std::span<std::string_view const> words,
                             Countable countable, Reading const& reading) {
    auto const word = words[read_word(node, words, reading).value_or(0)];
    Per const driver =
        static_cast<Per>(std::find(std::begin(per_words), std::end(per_words), word) - per_words);
    if (driver == Per::load && !countable.loads)
        reading.found.error(node->where, "load-without-oven",
                            "there are no loads: this formula names no oven",
                            "add 'oven: {use: deck, minutes: 11, holds: 36}', or count by batch");
    if (driver == Per::piece && !countable.pieces)
        reading.found.error(node->where, "made-by-mass",
                            "there are no pieces: this formula is made by mass",
                            "give it a portion, as 'portion: 24 g', or count by batch");
    return driver;
}

GROAT_INLINE void check_scales(bool scales, Per per, Span where, Reading const& reading) {
    if (scales && per != Per::batch)
        reading.found.error(where, "scales-by-what",
                            fmt::format("what goes by the {} does not scale with a part of a batch",
                                        per_words[static_cast<std::size_t>(per)]),
                            "write 'per: batch', or take 'scales' out");
}

} // namespace read_common_detail

GROAT_INLINE std::string counted_in(Node const* node, Reading const& reading) {
    if (node == nullptr || !node->is_scalar()) return {};
    auto const count = parse_bounded(trimmed(node->text), reading, parse_quantity);
    bool const is_several =
        count && count->is(Dimension::count) && count->unit != nullptr && count->unit->factor != 1;
    return is_several ? std::string(trimmed(node->text)) : std::string();
}

GROAT_INLINE PricePolicy read_price_policy(Node const* node, Reading const& reading) {
    PricePolicy policy;
    if (node == nullptr) return policy;
    bool const is_of_something = node->text.find('%') != std::string::npos; // it says not of what
    if (node->is_scalar() && !is_of_something) {
        policy.origin = node->where;
        if (auto given = read_common_detail::read_given(node, reading))
            policy.target = *std::move(given);
        return policy;
    }
    Fields<shapes::price> fields(*node, reading.found);
    policy.origin = fields.where();
    fields.read_into(policy, reading);
    policy.point = read_common_detail::read_price_point(fields, reading);
    if (node->is_mapping() && node->items.empty())
        reading.found.error(fields.where(), "missing-value", "nothing is said of this price",
                            "write a target, as {margin: 40 %}, or take the key out");
    fields.close();
    return policy;
}

GROAT_INLINE std::vector<Consumption> read_consumables(Node const* node, Countable countable,
                                                       Reading const& reading) {
    std::vector<Consumption> uses;
    for (Node const& each : read_list(node, "a list of supplies", reading)) {
        Fields<shapes::consumable> fields(each, reading.found);
        Consumption use;
        use.origin = fields.where();
        fields.read_into(use, reading);
        use.per = read_common_detail::read_driver(
            fields.at("per"), words_of<shapes::consumable>("per"), countable, reading);
        read_common_detail::check_scales(use.scales, use.per, fields.place_of("scales"), reading);
        fields.close();
        if (use.supply.is_given()) uses.push_back(std::move(use));
    }
    return uses;
}

GROAT_INLINE bool read_value(PricePolicy& policy, Node const& node, KeyShape const&,
                             Reading const& reading) {
    policy = read_price_policy(&node, reading);
    return true;
}

GROAT_INLINE bool read_value(Contribution& contribution, Node const& node, KeyShape const& key,
                             Reading const& reading) {
    return read_value(contribution.amount, node, key, reading);
}

GROAT_INLINE bool read_value(GivenPrice& price, Node const& node, KeyShape const& key,
                             Reading const& reading) {
    return read_value(price.amount, node, key, reading);
}

GROAT_INLINE bool read_value(Consumption& use, Node const& node, KeyShape const& key,
                             Reading const& reading) {
    use.per = Per::sale_unit;
    return read_value(use.amount, node, key, reading);
}

} // namespace groat
