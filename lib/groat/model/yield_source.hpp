/// Where a yield in the books comes from: somebody stated it, or it is that of one yield test or of all.
#pragma once

#include <groat/model/reference.hpp>

namespace groat {

/// Stands beside a yield. What is cited is worked out once, by `link` (see book.hpp), and put into the
/// yield itself, so that whatever uses it sees a plain `Yield`.
struct YieldSource {
    enum class Kind {
        stated,    ///< a percentage
        one_test,  ///< that of `test`
        all_tests, ///< that of all tests that speak for it, taken together
    };

    Kind kind = Kind::stated;
    Reference test = {};
    Span origin = {}; ///< of the value; unknown where nothing is said

    [[nodiscard]] bool is_cited() const { return kind != Kind::stated; }
};

} // namespace groat
