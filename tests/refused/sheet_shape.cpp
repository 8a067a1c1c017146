// A sheet's columns and facts are taken from what is declared: another key is no column.
#include <groat/sheets/shape_menu.hpp>

namespace shapes = groat::sheet_shapes::menu;
groat::Table const table = groat::table_of<shapes::prices>("Prices", {{"item"}, {"price", "Now"}});
groat::FactsOf<shapes::menu> facts;
void add() { facts.add("items", "Items", groat::Figure{"3", groat::Number(3), "each"}); }

#if CASE == 1
// refused: is not a constant expression
// refused: not a constant expression
groat::Table const misspelt =
    groat::table_of<shapes::prices>("Prices", {{"item"}, {"prise", "Now"}});
#elif CASE == 2
// refused: is not a constant expression
// refused: not a constant expression
void misspell() { facts.add("itmes", "Items", groat::Figure{"3", groat::Number(3), "each"}); }
#elif CASE == 3
// facts are not a table
// refused: static assertion failed
// refused: static_assert failed
groat::Table const no_table = groat::table_of<shapes::menu>("Menu", {{"items"}});
#elif CASE == 4
// a member of one section is none of another
// refused: could not convert
// refused: to non-scalar type
// refused: cannot convert
// refused: no viable conversion
// refused: no matching
groat::MemberOf<shapes::earned> const other = groat::MemberOf<shapes::prices>("item");
#endif
