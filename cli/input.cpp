#include "input.hpp"

#include "output.hpp"

#include <groat/base/text.hpp>

#include <fmt/format.h>

#include <filesystem>
#include <fstream>
#include <system_error>

namespace groat::cli {

std::optional<std::string> bytes_of(std::string const& name, std::size_t most) {
    namespace fs = std::filesystem;
    auto const fail = [&](std::string const& why) {
        complain(fmt::format("groat: cannot read '{}': {}\n", printable(name), why));
        return std::nullopt;
    };
    std::error_code error;
    fs::file_status const status = fs::status(name, error);
    if (status.type() == fs::file_type::not_found) return fail("there is no such file");
    if (fs::is_directory(status)) return fail("it is a folder");
    if (!fs::is_regular_file(status)) return fail(error ? error.message() : "it is not a file");
    std::uintmax_t const size = fs::file_size(name, error);
    if (error) return fail(error.message());
    if (size > most) return std::string(most + 1, ' ');
    std::ifstream stream(name, std::ios::binary);
    std::string text(static_cast<std::size_t>(size), '\0');
    if (stream) stream.read(text.data(), static_cast<std::streamsize>(text.size()));
    if (!stream) return fail("check who may read it");
    return text;
}

} // namespace groat::cli
