#pragma once

#include <groat/books/file_text.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <fstream>
#include <system_error>

namespace groat {

GROAT_INLINE std::optional<std::string> bytes_of(std::filesystem::path const& file,
                                                 std::size_t most) {
    std::error_code error;
    std::uintmax_t const size =
        std::min<std::uintmax_t>(std::filesystem::file_size(file, error), most);
    std::string text(static_cast<std::size_t>(size) + 1, '\0');
    std::ifstream stream(file, std::ios::binary);
    if (stream) stream.read(text.data(), static_cast<std::streamsize>(text.size()));
    if (!stream.eof() && !stream.good()) return std::nullopt;
    text.resize(static_cast<std::size_t>(stream.gcount()));
    return text;
}

GROAT_INLINE Result<std::string> text_of_file(std::string const& name, std::size_t most) {
    namespace fs = std::filesystem;
    auto const fail = [&](std::string const& why) {
        return Refused(Flaw{{}, fmt::format("cannot read '{}': {}", printable(name), why), ""});
    };
    std::error_code error;
    fs::file_status const status = fs::status(name, error);
    if (status.type() == fs::file_type::not_found) return fail("there is no such file");
    if (fs::is_directory(status)) return fail("it is a folder");
    if (!fs::is_regular_file(status)) return fail(error ? error.message() : "it is not a file");
    auto text = bytes_of(name, most);
    if (!text) return fail("check who may read it");
    return *std::move(text);
}

} // namespace groat
