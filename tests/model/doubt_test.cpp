#include <groat/model/doubt.hpp>

#include <doctest/doctest.h>

using groat::BookPart;
using groat::Doubts;

TEST_CASE("a thing in doubt is known by its name and its kind") {
    Doubts doubts;
    CHECK_FALSE(doubts.any(BookPart::orders));
    doubts.add(BookPart::orders, "2026-041");
    CHECK(doubts.any(BookPart::orders));
    CHECK(doubts.names(BookPart::orders, "2026-041"));
    CHECK_FALSE(doubts.names(BookPart::orders, "2026-042"));
    CHECK_FALSE(doubts.any(BookPart::menus));
    CHECK_FALSE(doubts.may_be(BookPart::orders, "2026-042"));
}

TEST_CASE("where something cannot be named, any that is missed may be it") {
    Doubts doubts;
    doubts.add(BookPart::formulas);
    CHECK(doubts.any(BookPart::formulas));
    CHECK(doubts.may_be(BookPart::formulas, "rye shell"));
    CHECK_FALSE(doubts.names(BookPart::formulas, "rye shell"));
    CHECK_FALSE(doubts.may_be(BookPart::orders, "2026-041"));
}
