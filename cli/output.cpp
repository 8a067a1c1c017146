#include "output.hpp"

#include <fmt/format.h>

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <memory>
#include <system_error>

namespace groat::cli {

namespace {

bool put(std::string const& text, std::FILE* stream) {
    return std::fwrite(text.data(), 1, text.size(), stream) == text.size() &&
           std::fflush(stream) == 0;
}

} // namespace

void complain(std::string const& text) { std::fputs(text.c_str(), stderr); }

std::string deliver(std::string const& text, std::string const& file, bool may_replace) {
    namespace fs = std::filesystem;
    if (file.empty())
        return put(text, stdout) ? std::string()
                                 : fmt::format("cannot write: {}", std::strerror(errno));
    std::error_code error;
    if (fs::is_directory(file, error))
        return fmt::format("cannot write '{}': it is a folder", file);
    fs::file_status const status = fs::symlink_status(file, error);
    if (fs::exists(status) && !fs::is_regular_file(status))
        return fmt::format("cannot write '{}': it is a {}, not a plain file", file,
                           fs::is_symlink(status) ? "link" : "device");
    if (!may_replace && fs::exists(status))
        return fmt::format("'{}' exists; say --replace to write over it", file);
    std::string const draft = file + ".part";
    auto const failed = [&](int reason) {
        fs::remove(draft, error);
        return fmt::format("cannot write '{}': {}", file, std::strerror(reason));
    };
    std::unique_ptr<std::FILE, int (*)(std::FILE*)> stream(std::fopen(draft.c_str(), "wb"),
                                                           &std::fclose);
    if (!stream) return fmt::format("cannot write '{}': {}", file, std::strerror(errno));
    if (!put(text, stream.get())) return failed(errno);
    if (std::fclose(stream.release()) != 0) return failed(errno);
    fs::rename(draft, file, error);
    if (error) {
        std::string const reason = error.message();
        fs::remove(draft, error);
        return fmt::format("cannot write '{}': {}", file, reason);
    }
    return {};
}

} // namespace groat::cli
