// Money has a currency and no bare number has one; money times money is nothing.
#include <groat/measure/money.hpp>

using groat::Currency;
using groat::Money;
using groat::Number;

Currency const euro = *Currency::find("EUR");
Money const price(Number(499) / 100, euro);
Money const dozen = price * 12;
Money const shared = (price + dozen) / 7;
Number const ratio = dozen / price;
bool const is_free = price.is_zero();

#if CASE == 1
// refused: no match for 'operator+'
// refused: invalid operands
Money const plus_number = price + Number(3);
#elif CASE == 2
// refused: no match for 'operator-'
// refused: invalid operands
Money const minus_number = price - 3;
#elif CASE == 3
// refused: could not convert
// refused: conversion from
// refused: no viable conversion
Money const without_currency = Number(3);
#elif CASE == 4
// refused: no matching function
// refused: no matching constructor
Money const alone(Number(3));
#elif CASE == 5
// refused: no match for 'operator*'
// refused: invalid operands
auto const squared = price * dozen;
#elif CASE == 6
// refused: no match for 'operator<'
// refused: invalid operands
bool const is_cheap = price < Number(5);
#elif CASE == 7
// refused: no match for 'operator/'
// refused: invalid operands
auto const upside_down = Number(1) / price;
#elif CASE == 8
// refused: deleted
Money const taxed = price * 1.07;
#elif CASE == 9
// refused: deleted
Money const from_double(4.99, euro);
#elif CASE == 10
// refused: cannot convert
// refused: no viable conversion
bool const is_truthy = price;
#elif CASE == 11
// refused: conversion from
// refused: no viable conversion
Number const stripped = price;
#elif CASE == 12
// a currency is one that exists
// refused: private
Currency const invented("XYZ", 2);
#elif CASE == 13
// refused: no matching function
// refused: no matching constructor
// refused: could not convert
// refused: cannot convert
Money const by_word(Number(5), "EUR");
#endif
