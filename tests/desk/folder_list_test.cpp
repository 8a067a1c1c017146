#include <groat/desk/folder_list.hpp>

#include <doctest/doctest.h>

using namespace groat::desk;

namespace {

std::string const heading = "groat sheets 7";

std::string written() {
    return heading + '\n' + list_entry("client/quote-7.html", "a quote") + '\n' +
           list_entry("maker/to buy.html", "a list") + '\n';
}

} // namespace

// printed by cksum of GNU coreutils 9.1
TEST_CASE("a checksum is that of cksum") {
    CHECK(checksum("") == 4294967295U);
    CHECK(checksum("123456789") == 930766865U);
    CHECK(checksum(std::string(300, 'x')) == 3786917833U); // its length takes two bytes
    CHECK(list_entry("client/quote.txt", "123456789") == "930766865 9 client/quote.txt");
}

TEST_CASE("a list knows its files, their folders and itself") {
    auto const list = FolderList::read(written(), heading);
    REQUIRE(list.has_value());
    for (char const* path :
         {"contents.txt", "client", "client/quote-7.html", "maker", "maker/to buy.html"})
        CHECK(list->names(path));
    CHECK(!list->names("client/notes.txt"));
}

TEST_CASE("a file that was changed is no longer as it was written") {
    auto const list = FolderList::read(written(), heading);
    REQUIRE(list.has_value());
    CHECK(list->holds("client/quote-7.html", "a quote"));
    CHECK(!list->holds("client/quote-7.html", "a quota"));
    CHECK(!list->holds("maker/to buy.html", "a quote"));
}

TEST_CASE("the list of another order, or none, knows nothing") {
    for (std::string const& text : {written(), std::string()}) {
        auto const list = FolderList::read(text, "groat sheets 8");
        REQUIRE(list.has_value());
        CHECK(!list->names("contents.txt"));
        CHECK(!list->names("client/quote-7.html"));
    }
}

TEST_CASE("a list that somebody has written into is none") {
    CHECK(!FolderList::read(written() + "my own notes\n", heading));
    CHECK(!FolderList::read(written() + "\n", heading));
}
