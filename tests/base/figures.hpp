/// What the tests of all layers share about figures: how one is shown when a check fails, a short way to
/// write one as its source prints it, and a way to draw some that is the same on every machine.
#pragma once

#include <groat/base/number.hpp>

#include <doctest/doctest.h>

#include <cstdint>
#include <random>
#include <string_view>

template <> struct doctest::StringMaker<groat::Number> {
    static doctest::String convert(groat::Number const& number) {
        return groat::exact(number).c_str();
    }
};

/// `figure("0.175")`, `figure("2 1/4")`; a text that is no number fails the test that holds it.
[[nodiscard]] inline groat::Number figure(std::string_view text) {
    return groat::parse_number(text).value();
}

/// Figures drawn from a seed. The standard's distributions differ between libraries, so none is used.
class Draw {
public:
    explicit Draw(std::uint64_t seed) : engine_(seed) {}

    [[nodiscard]] std::int64_t whole(std::int64_t least, std::int64_t most) {
        return least +
               static_cast<std::int64_t>(engine_() % static_cast<std::uint64_t>(most - least + 1));
    }
    [[nodiscard]] groat::Number number(std::int64_t least, std::int64_t most,
                                       std::int64_t most_below = 1000) {
        return groat::Number(whole(least * most_below, most * most_below)) / whole(1, most_below);
    }

private:
    std::mt19937_64 engine_;
};
