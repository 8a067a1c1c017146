// What is paid is whole, and only a named rounding makes coins out of money.
#include <groat/measure/coins.hpp>

using groat::Coins;
using groat::Currency;
using groat::Money;
using groat::Number;

Currency const euro = *Currency::find("EUR");
Money const owed(Number(365125) / 1000, euro);
Coins const paid = groat::to_coins(owed, groat::Rounding{groat::Tie::half_even});
Coins const twice = paid + paid;
Money const back = paid.money() + owed;
Coins const three = paid * 3;

#if CASE == 1
// refused: no match for 'operator+'
// refused: invalid operands
Coins const coins_plus_money = paid + owed;
#elif CASE == 2
// refused: no match for 'operator+'
// refused: invalid operands
Money const money_plus_coins = owed + paid;
#elif CASE == 3
// refused: conversion from
// refused: no viable conversion
Coins const rounded_in_silence = owed;
#elif CASE == 4
// refused: conversion from
// refused: no viable conversion
Money const exact_in_silence = paid;
#elif CASE == 5
// a third of a coin is no coin
// refused: no match for 'operator*'
// refused: invalid operands
Coins const third = paid * (Number(1) / 3);
#elif CASE == 6
// refused: no match for 'operator/'
// refused: invalid operands
Coins const divided = paid / 3;
#elif CASE == 7
// refused: no match for 'operator=='
// refused: invalid operands
bool const is_settled = paid == owed;
#elif CASE == 8
// refused: no matching function
// refused: no matching constructor
Coins const broken(Number(1) / 3, euro);
#elif CASE == 9
// refused: no matching function
// refused: no matching constructor
Coins const half_a_cent(0.5, euro);
#elif CASE == 10
// refused: no match for 'operator+'
// refused: invalid operands
Coins const plus_number = paid + 3;
#elif CASE == 11
// refused: deleted
Coins const stepped = groat::to_coins(owed, groat::Rounding{groat::Tie::half_up, 0.05});
#elif CASE == 12
// the way of rounding is named, not only its step
// refused: no viable conversion
// refused: invalid initialization of reference
// refused: no matching function
Coins const to_step = groat::to_coins(owed, Number(1) / 20);
#endif
