#pragma once

#include <groat/desk/reprice.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>
#include <groat/cost/shares.hpp>
#include <groat/desk/answer.hpp>
#include <groat/sheets/reprice_sheet.hpp>

#include <utility>

namespace groat::desk {

namespace reprice_detail {

/// What is wrong with a word, said of the option that it stands behind.
inline Refused wrong(std::string_view option, Flaw flaw) {
    flaw.what = fmt::format("{}: {}", option, flaw.what);
    return Refused(std::move(flaw));
}

inline Result<Share> parse_move(std::string_view text) {
    if (text.empty())
        return refuse("bad-aim", "it is not said how far a price may move", "add --move '10 %'");
    auto percent = parse_percent(text);
    if (!percent) return Refused(percent.error());
    return Share::of(*std::move(percent));
}

template <class Kind> Result<MenuAim> aim_of(std::string_view percent) {
    auto value = parse_percent(percent);
    if (!value) return Refused(value.error());
    auto share = Kind::of(*std::move(value));
    if (!share) return Refused(share.error());
    return MenuAim(*std::move(share));
}

} // namespace reprice_detail

GROAT_INLINE Result<MenuAim> parse_aim(std::string_view text) {
    std::string_view const words = trimmed(text);
    auto const after = [&](std::string_view word) { return trimmed(words.substr(word.size())); };
    if (words.starts_with("margin")) return reprice_detail::aim_of<Margin>(after("margin"));
    if (words.starts_with("food cost"))
        return reprice_detail::aim_of<FoodCostShare>(after("food cost"));
    return refuse("bad-aim", fmt::format("'{}' is nothing a menu can reach", shortened(text, 32)),
                  "write 'margin 35 %' or 'food cost 30 %'");
}

GROAT_INLINE Result<std::size_t> parse_count(std::string_view text) {
    auto const number = parse_number(text);
    if (number && number->is_whole() && number->is_positive() && *number <= 10'000)
        return number->numerator().convert_to<std::size_t>();
    return refuse("bad-count", fmt::format("'{}' is no number of prices", shortened(text, 32)),
                  "write a whole number, as 3");
}

GROAT_INLINE Result<Sheet> repricing_sheet(Costing const& costing, Menu const& menu,
                                           RepriceWish const& wish, Diagnostics& found) {
    using reprice_detail::wrong;
    auto const aim = parse_aim(wish.reach);
    if (!aim) return wrong("--reach", aim.error());
    auto const move = reprice_detail::parse_move(wish.move);
    if (!move) return wrong("--move", move.error());
    RepriceLimits limits{*move, {}, {}, wish.below_first};
    if (!wish.at_most.empty()) {
        auto const count = parse_count(wish.at_most);
        if (!count) return wrong("--at-most", count.error());
        limits.at_most = *count;
    }
    auto const cost = cost_menu(costing, menu, found);
    if (!cost) return as_found();
    auto const left_alone = lines_named(*cost, wish.left_alone);
    if (!left_alone) return wrong("--leave", left_alone.error());
    limits.left_alone = *left_alone;
    auto const repricing = reprice(*cost, *aim, limits);
    if (!repricing) {
        found.error(menu.origin, repricing.error());
        return as_found();
    }
    return reprice_sheet(*repricing, *cost, costing.book());
}

} // namespace groat::desk
