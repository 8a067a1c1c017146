// A quantity measures one thing; kitchens and units are named, never numbers.
#include <groat/measure/money_rate.hpp>

using groat::Dimension;
using groat::find_unit;
using groat::Measures;
using groat::Number;
using groat::Quantity;

Quantity const flour = *groat::parse_quantity("620 g", Measures::us);
bool const is_mass = flour.is(Dimension::mass);
bool const is_same = flour == Quantity{620, Dimension::mass};
groat::MoneyRate const wage{{}, find_unit("h", Measures::us)};
groat::Money const paid = wage.of(groat::minutes(20));

#if CASE == 1
// what a bare cup holds depends on the kitchen: nobody may leave it out
// refused: too few arguments
// refused: no matching function
auto const without_kitchen = groat::parse_quantity("1 cup");
#elif CASE == 2
// refused: cannot initialize
// refused: cannot convert
// refused: no matching function
auto const kitchen_by_word = groat::parse_quantity("1 cup", "us");
#elif CASE == 3
// refused: cannot convert
// refused: no matching function
auto const kitchen_by_number = find_unit("cup", 0);
#elif CASE == 4
// grams and millilitres meet only through a density
// refused: no match for 'operator+'
// refused: invalid operands
auto const added = flour + flour;
#elif CASE == 5
// refused: no match for 'operator=='
// refused: invalid operands
bool const is_620 = flour == Number(620);
#elif CASE == 6
// refused: conversion from
// refused: no viable conversion
Number const stripped = flour;
#elif CASE == 7
// refused: deleted
Quantity const from_double{0.5, Dimension::mass};
#elif CASE == 8
// refused: could not convert
// refused: cannot convert
// refused: no viable conversion
groat::Money const paid_for_number = wage.of(Number(20));
#elif CASE == 9
// a dimension is no number
// refused: cannot convert
// refused: cannot initialize
int const ordinal = Dimension::volume;
#endif
