/// Two kinds of failure exist. What a user wrote can be wrong: that is a `Flaw` inside a `Result`, or a
/// `Diagnostic` in a list (see diagnostic.hpp). What a programmer did can be wrong: that throws a
/// `std::logic_error`. No other exception is thrown by this library.
#pragma once

#include <groat/base/codes.hpp>

#include <cstddef>
#include <string>
#include <utility>
#include <version>

#ifdef __cpp_lib_expected
#include <expected>
#else
#include <tl/expected.hpp>
#endif

namespace groat {

/// What is wrong with a piece of text or a request, before it is known where in which file it stands.
///
/// `what` is one lower-case sentence without a full stop that names the value; `help` is something a
/// person can type, or empty; `at` and `length` count bytes from the start of the text that was read.
struct Flaw {
    Code code = {};
    std::string what;
    std::string help;
    std::size_t at = 0;
    std::size_t length = 0;
};

#ifdef __cpp_lib_expected
template <class T> using Result = std::expected<T, Flaw>;
using Refused = std::unexpected<Flaw>;
#else
template <class T> using Result = tl::expected<T, Flaw>;
using Refused = tl::unexpected<Flaw>;
#endif

/// A failed `Result` in one line.
/// Example  `return refuse("bad-number", "'12a' is not a number", "write 12");`
[[nodiscard]] inline Refused refuse(Code code, std::string what, std::string help = {},
                                    std::size_t at = 0, std::size_t length = 0) {
    return Refused(Flaw{code, std::move(what), std::move(help), at, length});
}

} // namespace groat
