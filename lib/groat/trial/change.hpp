/// A change to try on the books: a dearer ingredient, another wage, a better yield, one ingredient for another.
/// It is read from a few plain words and applied to a copy of the books; nothing else knows that it is a
/// trial.
///
///     butter +20 %                   the prices of all offers of it
///     butter 9.00 / kg               so that a kilogram as purchased costs this at the offer in use
///     wage of baker 24.00            an hour; or +5 %
///     yield of lemon 40 %            whoever sells it
///     baking loss of rye shell 12 %
///     tariff of electricity +30 %
///     vanilla extract -> vanilla sugar           everywhere
///     vanilla extract -> vanilla sugar in rye shell
#pragma once

#include <groat/cost/engine.hpp>

#include <optional>
#include <string>
#include <string_view>
#include <variant>

namespace groat {

/// The prices of all offers of an ingredient or supply times a factor; freight, deposit and delivery stay. The trial
/// holds on to `offer`, so that every cost is a straight line in the factor.
struct PriceScaled {
    std::size_t ingredient = 0;
    Number factor;
    std::optional<std::size_t> offer = {}; ///< that costs go by; absent: chosen anew
};
struct WageScaled {
    std::size_t role = 0;
    Number factor;
};
struct TariffScaled {
    std::size_t tariff = 0;
    Number factor;
};
struct YieldSet {
    std::size_t ingredient = 0;
    Yield yield;
};
struct LossSet {
    std::size_t formula = 0;
    std::size_t loss = 0;
    Loss share;
};
/// One ingredient instead of another, in the same amount as written.
struct Exchanged {
    std::size_t from = 0;
    std::size_t to = 0;
    std::optional<std::size_t> formula = {}; ///< absent: everywhere
};

struct Change {
    std::string words; ///< as it was written
    std::variant<PriceScaled, WageScaled, TariffScaled, YieldSet, LossSet, Exchanged> what;
};

/// Reads a change as listed above. Names are those of the book; prices per amount are taken on the date of
/// `costing`.
/// Fails    on a name that the book does not know, with the nearest one; on a value that is none; where an
///          ingredient that is to have a price has none; where nothing would change
[[nodiscard]] Result<Change> parse_change(std::string_view text, Costing const& costing);

/// All prices of an ingredient times a factor, at the offer that `costing` goes by.
[[nodiscard]] PriceScaled scaled_price(Costing const& costing, std::size_t ingredient,
                                       Number factor);

/// Puts a change into a book, which stays linked.
void apply(Change const& change, Book& book);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/trial/change.ipp>
#endif
