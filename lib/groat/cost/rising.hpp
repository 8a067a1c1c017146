/// What a formula hands on to those who use it, each in the share of its demand that they took.
#pragma once

#include <groat/measure/money.hpp>

namespace groat::cost_engine {

/// What runs up through the formulas.
struct Rising {
    Money ingredients;
    Money consumables;
    Money labour;
    Money energy;
    Number labour_minutes;
    Number oven_minutes;

    void add(Rising const& other, Number const& share) {
        ingredients += other.ingredients * share;
        consumables += other.consumables * share;
        labour += other.labour * share;
        energy += other.energy * share;
        labour_minutes += other.labour_minutes * share;
        oven_minutes += other.oven_minutes * share;
    }
};

} // namespace groat::cost_engine
