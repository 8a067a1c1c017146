/// How figures and dates are written for people: marks, a currency's sign, the order of a date.
#pragma once

namespace groat {

/// What is not declared is written plainly: a point before the decimals, no groups, no sign.
struct Style {};

} // namespace groat
