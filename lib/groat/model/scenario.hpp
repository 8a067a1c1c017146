/// Changes to try together, kept under a name. What they mean is known only when they are tried.
#pragma once

#include <groat/base/source.hpp>

#include <string>
#include <vector>

namespace groat {

struct Scenario {
    struct Change {
        std::string text; ///< "butter +20 %"
        Span where = {};
    };
    std::string name;
    std::vector<Change> changes = {};
    Span origin = {};
    bool is_in_doubt = false; ///< an error stands in it (see sound_part.hpp)
};

} // namespace groat
