#include <groat/model/keeping.hpp>

#include <doctest/doctest.h>

#include <optional>

using namespace groat;

TEST_CASE("of a shell kept at room temperature and a filling kept cold, the filling rules") {
    Keeping const shell{KeepAt::room, 14};
    Keeping const filling{KeepAt::cold, 4};
    Keeping const sandwich = strictest(shell, filling);
    CHECK(sandwich.at == KeepAt::cold);
    CHECK(sandwich.days == 4);
}

TEST_CASE("the coldest place and the shortest time rule even where they come from two things") {
    // combined food keeps the earliest date: FDA Food Code 3-501.17 as mirrored by Minn. Rules 4626.0400
    Keeping const result = strictest({KeepAt::frozen, 60}, {KeepAt::cool, 3});
    CHECK(result.at == KeepAt::frozen);
    CHECK(result.days == 3);
}

TEST_CASE("what is not stated gives way to what is") {
    CHECK(!Keeping{}.is_stated());
    CHECK(Keeping{std::nullopt, 3}.is_stated());
    Keeping const result = strictest({}, {KeepAt::cool, std::nullopt});
    CHECK(result.at == KeepAt::cool);
    CHECK(!result.days);
    CHECK(strictest({std::nullopt, 5}, {}).days == 5);
}

TEST_CASE("which of the two comes first makes no difference") {
    std::optional<KeepAt> const places[] = {std::nullopt, KeepAt::room, KeepAt::cool, KeepAt::cold,
                                            KeepAt::frozen};
    std::optional<int> const times[] = {std::nullopt, 1, 4, 90};
    for (auto const a : places)
        for (auto const b : places)
            for (auto const x : times)
                for (auto const y : times) {
                    Keeping const one = strictest({a, x}, {b, y});
                    Keeping const other = strictest({b, y}, {a, x});
                    CHECK(one.at == other.at);
                    CHECK(one.days == other.days);
                }
}
