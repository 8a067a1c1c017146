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
};

} // namespace groat
