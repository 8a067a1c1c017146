/// A shop's own look on its sheets.
#pragma once

namespace groat {

struct Look {};

} // namespace groat
