// A percentage says of what it is one, and none is taken for another.
#include <groat/measure/rate.hpp>

using groat::Loss;
using groat::Margin;
using groat::Markup;
using groat::Number;
using groat::Share;
using groat::TaxRate;
using groat::Yield;

Margin const margin = *Margin::of(Number(2) / 5);
Markup const markup = groat::to_markup(margin);
Loss const loss = *Loss::of(Number(12) / 100);
Yield const yield = groat::to_yield(loss);
bool const is_same = groat::to_margin(markup) == margin;
Number priced(Number const& cost, Margin const& wanted) { return cost / wanted.rest(); }
Number const price = priced(3, margin);

#if CASE == 1
// refused: conversion from
// refused: no viable conversion
Markup const margin_as_markup = margin;
#elif CASE == 2
// refused: conversion from
// refused: no viable conversion
Yield const loss_as_yield = loss;
#elif CASE == 3
// refused: invalid initialization of reference
// refused: no matching function
Number const priced_by_markup = priced(3, markup);
#elif CASE == 4
// refused: no match for 'operator=='
// refused: invalid operands
bool const is_equal_to_markup = margin == markup;
#elif CASE == 5
// refused: no match for 'operator<'
// refused: invalid operands
bool const is_less_than_yield = loss < yield;
#elif CASE == 6
// a bare number has not been asked whether it makes sense
// refused: conversion from
// refused: no viable conversion
TaxRate const from_number = Number(1) / 5;
#elif CASE == 7
// refused: is private
// refused: private constructor
TaxRate const unchecked(Number(825));
#elif CASE == 8
// what a rate is a part of is said by its name: value(), rest()
// refused: no match for 'operator*'
// refused: invalid operands
Number const multiplied = Number(3) * margin;
#elif CASE == 9
// two shares of different wholes have no sum
// refused: no match for 'operator+'
// refused: invalid operands
auto const added = margin + loss;
#elif CASE == 10
// refused: no viable conversion
// refused: invalid initialization of reference
// refused: no matching function
Yield const yield_of_share = groat::to_yield(*Share::of(Number(1) / 5));
#elif CASE == 11
// refused: deleted
auto const from_double = Margin::of(0.4);
#endif
