#include "folder.hpp"

#include <groat/books/file_text.hpp>

#include <doctest/doctest.h>

#include <string>

using groat::bytes_of;
using groat::text_of_file;

namespace {

/// A folder with a file of five bytes.
struct Place : groat_test::Folder {
    Place() { file("five", "a\r\nbc"); }
};

} // namespace

TEST_CASE("a file is read whole, byte by byte") {
    Place const place;
    CHECK(bytes_of(place.path() / "five", 5) == "a\r\nbc");
    CHECK(text_of_file(place.of("five"), 100).value() == "a\r\nbc");
}

TEST_CASE("of a file that is too long a byte more than the most is read, which tells that it is") {
    Place const place;
    CHECK(bytes_of(place.path() / "five", 3) == "a\r\nb");
    CHECK(bytes_of(place.path() / "five", 0) == "a");
}

TEST_CASE("what cannot be read says why") {
    Place const place;
    auto const why = [&](std::string const& name) {
        return text_of_file(place.of(name), 10).error().what;
    };
    CHECK(why("six").ends_with("six': there is no such file"));
    CHECK(why(".").ends_with(": it is a folder"));
    CHECK(text_of_file("/dev/null", 10).error().what ==
          "cannot read '/dev/null': it is not a file");
}
