#include "help.hpp"

namespace groat::cli {

HelpSource help_on_keys() {
    return {"a key of the books", [](std::string_view) { return std::optional<std::string>(); },
            [] { return std::vector<std::string>(); }};
}

} // namespace groat::cli
