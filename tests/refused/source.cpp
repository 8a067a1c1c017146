// A place is made of four numbers that say what they are, and is not a yes or no.
#include <groat/base/diagnostic.hpp>

groat::Sources sources;
std::uint32_t const file = sources.add("shop.yaml", "currency: EUR\n");
groat::Span const place{file, 1, 11, 3};
bool const is_known = place.is_known();
groat::Diagnostics findings;
void find() { findings.error(place, "unknown-key", "unknown key 'monny'"); }

#if CASE == 1
// refused: cannot convert
// refused: no viable conversion
bool const is_truthy = place;
#elif CASE == 2
// refused: narrowing
// refused: cannot be narrowed
groat::Span const negative{file, -1, 1, 1};
#elif CASE == 3
// a finding says where it belongs, if only that it belongs nowhere
// refused: no matching member function
// refused: no matching function
void find_nowhere() { findings.error("unknown-key", "unknown key 'monny'"); }
#elif CASE == 4
// refused: no matching member function
// refused: no matching function
// refused: could not convert
// refused: cannot convert
// refused: no viable conversion
void find_by_line() { findings.error(1, "unknown-key", "unknown key 'monny'"); }
#endif
