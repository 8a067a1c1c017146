// A finding whose code is not in the table does not compile, nor one whose code is only known when the program runs.
#include <groat/base/diagnostic.hpp>

#include <string>

inline void find(groat::Diagnostics& found, [[maybe_unused]] std::string const& code) {
    found.error({}, "unknown-key", "unknown key");
#if CASE == 1
    // refused: not a constant expression
    // refused: is not a constant expression
    found.error({}, "unknown-kee", "unknown key");
#elif CASE == 2
    // refused: no matching function
    // refused: no viable conversion
    found.error({}, code, "unknown key");
#endif
}
