// Whoever rounds names the way, and the step is an exact figure.
#include <groat/base/apportion.hpp>

#include <vector>

using groat::Number;
using groat::Tie;

Number const price = Number(365125) / 1000;
Number const step = Number(1) / 100;
Number const paid = groat::round_to(price, step, Tie::half_up);
std::vector<groat::Integer> const parts = groat::apportion(100, std::vector<Number>{1, 2});

#if CASE == 1
// refused: too few arguments
// refused: no matching function
Number const rounded_somehow = groat::round_to(price, step);
#elif CASE == 2
// refused: deleted
Number const rounded_to_double = groat::round_to(price, 0.01, Tie::half_up);
#elif CASE == 3
// refused: cannot initialize
// refused: cannot convert
// refused: no matching function
Number const rounded_by_flag = groat::round_to(price, step, true);
#elif CASE == 4
// a part of a cent is not divided: the total is whole
// refused: no viable conversion
// refused: could not convert
// refused: cannot convert
// refused: invalid initialization
// refused: no matching function
std::vector<groat::Integer> const parts_of_fraction =
    groat::apportion(price, std::vector<Number>{1, 2});
#elif CASE == 5
// refused: 'half_upp' is not a member
// refused: no member named 'half_upp'
Tie const misspelt = Tie::half_upp;
#endif
