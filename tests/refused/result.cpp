// A result that may have failed is not thrown away, nor taken for its value.
#include <groat/base/number.hpp>

using groat::Number;

groat::Result<Number> const twelve = groat::parse_number("12");
Number const number = twelve ? *twelve : Number();

#if CASE == 1
// refused: unused-result
void forget() { groat::parse_number("12"); }
#elif CASE == 2
// refused: conversion from
// refused: no viable conversion
Number const taken_blindly = groat::parse_number("12");
#elif CASE == 3
// refused: no match for 'operator+'
// refused: invalid operands
Number const added_blindly = groat::parse_number("12") + Number(1);
#endif
