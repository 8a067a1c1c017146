#include "folder.hpp"

#include <groat/desk/deliver.hpp>

#include <doctest/doctest.h>

#include <filesystem>
#include <string>

using groat::desk::deliver;
using groat::desk::deliver_folder;
using groat_test::Folder;

namespace fs = std::filesystem;

TEST_CASE("a file that exists is written over only where that was said") {
    Folder place;
    CHECK(deliver("one", place.of("a.txt"), false).empty());
    CHECK(!deliver("two", place.of("a.txt"), false).empty());
    CHECK(place.text("a.txt") == "one");
    CHECK(deliver("two", place.of("a.txt"), true).empty());
    CHECK(place.text("a.txt") == "two");
    CHECK(!fs::exists(place.of("a.txt.part")));
}

TEST_CASE("a folder is written anew while nobody has changed it") {
    Folder place;
    std::string const folder = place.of("sheets");
    CHECK(deliver_folder({{"client/quote.txt", "one"}}, folder, "sheets 7", false).empty());
    CHECK(place.text("sheets/client/quote.txt") == "one");
    CHECK(deliver_folder({{"client/quote.txt", "two"}}, folder, "sheets 7", true).empty());
    CHECK(place.text("sheets/client/quote.txt") == "two");
    CHECK(!deliver_folder({{"client/quote.txt", "three"}}, folder, "sheets 8", true).empty());
    place.file("sheets/client/quote.txt", "my own");
    CHECK(!deliver_folder({{"client/quote.txt", "three"}}, folder, "sheets 7", true).empty());
    CHECK(place.text("sheets/client/quote.txt") == "my own");
}
