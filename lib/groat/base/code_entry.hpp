/// What is said of one code of the table of findings (codes.hpp).
#pragma once

#include <string_view>

namespace groat {

enum class Severity { error, warning };

struct CodeEntry {
    std::string_view code;
    Severity severity;     ///< that it mostly has
    std::string_view why;  ///< why it matters
    std::string_view mend; ///< how to mend it
};

} // namespace groat
