/// Files read whole.
#pragma once

#include <groat/base/result.hpp>

#include <cstddef>
#include <filesystem>
#include <optional>
#include <string>

namespace groat {

/// What stands in a file, but no more than one byte above `most`; nothing where it cannot be read.
[[nodiscard]] std::optional<std::string> bytes_of(std::filesystem::path const& file,
                                                  std::size_t most);

/// The same of a file that somebody has named.
/// Fails    where there is no such file, or it is none that could be read; the flaw says why
[[nodiscard]] Result<std::string> text_of_file(std::string const& name, std::size_t most);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/file_text.ipp>
#endif
