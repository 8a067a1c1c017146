/// Files that are named on the command line, read whole.
#pragma once

#include <cstddef>
#include <optional>
#include <string>

namespace groat::cli {

/// The bytes of a file, unless it cannot be read, which is said then. One that is larger than `most` is
/// not read at all: a byte more than that stands for it.
[[nodiscard]] std::optional<std::string> bytes_of(std::string const& name, std::size_t most);

} // namespace groat::cli
