/// The words on the sheets that leave the house, in the shop's language.
#pragma once

namespace groat {

struct Words {};

} // namespace groat
