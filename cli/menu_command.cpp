#include "session.hpp"

#include <groat/price/menu.hpp>
#include <groat/price/reprice.hpp>
#include <groat/sheets/menu_sheet.hpp>
#include <groat/sheets/reprice_sheet.hpp>

namespace groat::cli {

namespace {

/// "margin 35 %" or "food cost 30 %".
Result<MenuAim> parse_aim(std::string_view text) {
    auto const rest_of = [&](std::string_view word) {
        return trimmed(trimmed(text).substr(word.size()));
    };
    auto const rate = [](auto kind, std::string_view percent) -> Result<MenuAim> {
        using Kind = decltype(kind);
        auto value = parse_percent(percent);
        if (!value) return Refused(value.error());
        auto share = Kind::of(*std::move(value));
        if (!share) return Refused(share.error());
        return MenuAim(*std::move(share));
    };
    if (trimmed(text).starts_with("margin")) return rate(Margin(), rest_of("margin"));
    if (trimmed(text).starts_with("food cost")) return rate(FoodCostShare(), rest_of("food cost"));
    return refuse("bad-aim", fmt::format("'{}' is nothing a menu can reach", shortened(text, 32)),
                  "write 'margin 35 %' or 'food cost 30 %'");
}

/// A whole number of prices, from 1 on.
Result<std::size_t> parse_count(std::string_view text) {
    auto const number = parse_number(text);
    if (number && number->is_whole() && number->is_positive() && *number <= 10'000)
        return number->numerator().convert_to<std::size_t>();
    return refuse("bad-count", fmt::format("'{}' is no number of prices", shortened(text, 32)),
                  "write a whole number, as 3");
}

Result<Share> parse_move(std::string_view text) {
    if (text.empty())
        return refuse("bad-aim", "it is not said how far a price may move", "add --move '10 %'");
    auto percent = parse_percent(text);
    if (!percent) return Refused(percent.error());
    return Share::of(*std::move(percent));
}

int wrong_option(std::string_view option, Flaw const& flaw) {
    complain(fmt::format("groat: {}: {}\n", option, flaw.what));
    if (!flaw.help.empty()) complain(fmt::format("  help: {}\n", flaw.help));
    return command_line_wrong;
}

} // namespace

int menu(Options const& options) {
    Session session(options);
    auto const date = session.date_or(std::nullopt);
    if (!date) return command_line_wrong;
    if (session.is_in_doubt()) return session.give_up();
    Book const& book = session.book();
    Menu const* const menu = book.find_menu(options.subject);
    if (menu == nullptr)
        return session.unknown("menu", {BookPart::menus}, options.subject, names_of(book.menus));
    Costing const costing(session.linked(), *date);
    if (options.reach.empty()) {
        auto const cost = cost_menu(costing, *menu, session.found());
        if (!cost) return session.give_up();
        return session.hand_over(
            menu_sheet(*cost, costing, options.mix == "all" ? MixOver::menu : MixOver::categories));
    }
    auto const aim = parse_aim(options.reach);
    if (!aim) return wrong_option("--reach", aim.error());
    auto const move = parse_move(options.move);
    if (!move) return wrong_option("--move", move.error());
    RepriceLimits limits{*move, {}, {}, options.below_first};
    if (!options.at_most.empty()) {
        auto const count = parse_count(options.at_most);
        if (!count) return wrong_option("--at-most", count.error());
        limits.at_most = *count;
    }
    auto const cost = cost_menu(costing, *menu, session.found());
    if (!cost) return session.give_up();
    auto const left_alone = lines_named(*cost, options.left_alone);
    if (!left_alone) return wrong_option("--leave", left_alone.error());
    limits.left_alone = *left_alone;
    auto const repricing = reprice(*cost, *aim, limits);
    if (!repricing) {
        session.found().error(menu->origin, repricing.error());
        return session.give_up();
    }
    return session.hand_over(reprice_sheet(*repricing, *cost, book));
}

} // namespace groat::cli
