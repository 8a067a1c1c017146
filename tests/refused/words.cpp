// A word that is not in the table does not compile, nor does one that is only known when the program runs.
#include <groat/model/words.hpp>

#include <string>

groat::Words const words("de");
std::string const total = words("total");
std::string const deposit = words("deposit", {{"share", "30 %"}});
std::string const key = "total";

#if CASE == 1
// refused: not a constant expression
// refused: is not a constant expression
std::string const misspelt = words("totel");
#elif CASE == 2
// refused: no match for call
// refused: no matching function
std::string const at_run_time = words(key);
#endif
