// A key that is not declared does not compile, nor one that is only known when the program runs, nor reading a mapping
// into what none of its keys is bound to.
#include <groat/books/fields.hpp>
#include <groat/books/read_orders.hpp>
#include <groat/books/read_prices.hpp>

#include <string>

groat::Node const node;
groat::Diagnostics found;
groat::Fields<groat::shapes::offer> fields(node, found);
groat::Node const* const pack = fields.at("pack");
std::string const key = "pack";

#if CASE == 1
// refused: is not a constant expression
groat::Node const* const misspelt = fields.at("pakc");
#elif CASE == 2
// refused: cannot convert
// refused: no viable conversion
groat::Node const* const at_run_time = fields.at(key);
#elif CASE == 3
// refused: invalid initialization of reference
// refused: cannot bind to a value of unrelated type
groat::Fields<groat::shapes::terms>& other_mapping = fields;
#elif CASE == 4
// refused: is bound to a member
void read(groat::Order& order, groat::Reading const& reading) { fields.read_into(order, reading); }
#endif
