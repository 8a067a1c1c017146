#include <groat/desk/deliver.hpp>

#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

using groat::desk::deliver;
using groat::desk::deliver_folder;

namespace fs = std::filesystem;

namespace {

/// A folder of its own for a test, which goes with it.
struct Place {
    fs::path path = fs::temp_directory_path() / "groat_deliver_test";
    Place() {
        fs::remove_all(path);
        fs::create_directory(path);
    }
    ~Place() {
        std::error_code error;
        fs::remove_all(path, error);
    }
    Place(Place const&) = delete;
    Place& operator=(Place const&) = delete;
    [[nodiscard]] std::string of(std::string const& name) const { return (path / name).string(); }
    [[nodiscard]] std::string text(std::string const& name) const {
        std::ifstream stream(path / name, std::ios::binary);
        return {std::istreambuf_iterator<char>(stream), {}};
    }
};

} // namespace

TEST_CASE("a file that exists is written over only where that was said") {
    Place const place;
    CHECK(deliver("one", place.of("a.txt"), false).empty());
    CHECK(!deliver("two", place.of("a.txt"), false).empty());
    CHECK(place.text("a.txt") == "one");
    CHECK(deliver("two", place.of("a.txt"), true).empty());
    CHECK(place.text("a.txt") == "two");
    CHECK(!fs::exists(place.of("a.txt.part")));
}

TEST_CASE("a folder is written anew while nobody has changed it") {
    Place const place;
    std::string const folder = place.of("sheets");
    CHECK(deliver_folder({{"client/quote.txt", "one"}}, folder, "sheets 7", false).empty());
    CHECK(place.text("sheets/client/quote.txt") == "one");
    CHECK(deliver_folder({{"client/quote.txt", "two"}}, folder, "sheets 7", true).empty());
    CHECK(place.text("sheets/client/quote.txt") == "two");
    CHECK(!deliver_folder({{"client/quote.txt", "three"}}, folder, "sheets 8", true).empty());
    std::ofstream(place.path / "sheets/client/quote.txt") << "my own";
    CHECK(!deliver_folder({{"client/quote.txt", "three"}}, folder, "sheets 7", true).empty());
    CHECK(place.text("sheets/client/quote.txt") == "my own");
}
