/// What a verb comes to where it gives nothing. Either what was asked is wrong: that is a flaw in words, to be told to
/// whoever asked. Or something in the books stands in the way: then it is among what was found in them, and the
/// flaw has no words of its own.
#pragma once

#include <groat/base/result.hpp>

namespace groat::desk {

/// A refusal whose reason is among what was found in the books.
/// Example  `if (!cost) return as_found();`
[[nodiscard]] Refused as_found();

/// Whether the reason is to be looked up among what was found.
[[nodiscard]] bool is_as_found(Flaw const& flaw);

// ---------------------------------------------------------------------------------------------------

inline Refused as_found() { return Refused(Flaw{}); }

inline bool is_as_found(Flaw const& flaw) { return flaw.what.empty(); }

} // namespace groat::desk
