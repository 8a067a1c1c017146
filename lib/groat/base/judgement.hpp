/// What a shop says of findings by their codes: which warnings it has looked into and accepts, for a reason, and
/// which it holds to be errors. No error is ever accepted.
#pragma once

#include <groat/base/codes.hpp>

#include <algorithm>
#include <cstddef>
#include <string>
#include <vector>

namespace groat {

struct Judgement {
    struct Accepted {
        Code code;
        std::string reason;
    };
    std::vector<Accepted> accepted = {};
    std::vector<Code> held_as_errors = {};

    [[nodiscard]] bool accepts(Code code) const {
        return std::any_of(accepted.begin(), accepted.end(),
                           [&](Accepted const& each) { return each.code == code; });
    }
    [[nodiscard]] bool holds_as_error(Code code) const {
        return std::find(held_as_errors.begin(), held_as_errors.end(), code) !=
               held_as_errors.end();
    }
};

/// How many findings of one code were accepted, and why.
struct AcceptedFindings {
    Code code;
    std::string reason;
    std::size_t count = 0;
};

} // namespace groat
