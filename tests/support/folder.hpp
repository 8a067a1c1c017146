/// A folder of a test's own, which is gone when the test ends.
#pragma once

#include <fmt/format.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <string_view>
#include <system_error>

namespace groat_test {

class Folder {
public:
    Folder() {
        static int number = 0;
        std::error_code error;
        do
            path_ =
                std::filesystem::temp_directory_path() /
                fmt::format("groat-test-{}-{}",
                            std::filesystem::hash_value(std::filesystem::current_path()), ++number);
        while (!std::filesystem::create_directory(path_, error));
    }
    ~Folder() {
        std::error_code error;
        std::filesystem::remove_all(path_, error);
    }
    Folder(Folder const&) = delete;
    Folder& operator=(Folder const&) = delete;

    /// Writes a file, with the folders that lead to it.
    Folder& file(std::string const& name, std::string_view text) {
        std::filesystem::create_directories((path_ / name).parent_path());
        std::ofstream(path_ / name, std::ios::binary) << text;
        return *this;
    }
    [[nodiscard]] std::filesystem::path const& path() const { return path_; }
    [[nodiscard]] std::string of(std::string const& name) const { return (path_ / name).string(); }
    [[nodiscard]] std::string text(std::string const& name) const {
        std::ifstream stream(path_ / name, std::ios::binary);
        return {std::istreambuf_iterator<char>(stream), {}};
    }

private:
    std::filesystem::path path_;
};

} // namespace groat_test
