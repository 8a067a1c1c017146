// A number is exact: floating point and truth never become one, and one never becomes them.
#include <groat/base/rounding.hpp>

#include <string_view>

using groat::Number;

Number const third = Number(1) / 3;
bool const is_there = !third.is_zero();
Number const price = *groat::parse_number("4.99");
groat::Integer const pieces = groat::steps(price, third, groat::Tie::down);

#if CASE == 1
// refused: deleted
Number const from_double = 4.99;
#elif CASE == 2
// refused: deleted
Number const from_float(4.99F);
#elif CASE == 3
// refused: deleted
Number const from_long_double{4.99L};
#elif CASE == 4
// refused: deleted
Number const scaled = third * 0.5;
#elif CASE == 5
// refused: deleted
bool const is_small = third < 0.5;
#elif CASE == 6
// refused: cannot convert
// refused: no viable conversion
bool const is_truthy = third;
#elif CASE == 7
// refused: cannot convert
// refused: no viable conversion
bool const is_quotient = third / price;
#elif CASE == 8
// refused: could not convert
// refused: not contextually convertible
int count() {
    if (third) return 1;
    return 0;
}
#elif CASE == 9
// refused: cannot convert
// refused: no viable conversion
double const rounded_in_silence = third;
#elif CASE == 10
// refused: cannot convert
// refused: no viable conversion
int const cut_in_silence = third;
#elif CASE == 11
// refused: conversion from
// refused: no viable conversion
Number const from_text = "4.99";
#elif CASE == 12
// a comparison is no figure
// refused: conversion from
// refused: no viable conversion
Number const from_truth = third < 1;
#elif CASE == 13
// there is no remainder of a fraction
// refused: no match for 'operator%'
// refused: invalid operands
Number const remainder_of = price % third;
#endif
