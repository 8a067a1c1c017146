#include "folder.hpp"
#include "reading.hpp"

#include <groat/base/base64.hpp>
#include <groat/books/load.hpp>
#include <groat/yaml/text_check.hpp>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <filesystem>
#include <string>
#include <string_view>

using groat_test::Folder;

namespace fs = std::filesystem;

namespace {

struct Loaded {
    groat::Sources sources = {};
    groat::Loaded books;

    explicit Loaded(fs::path const& folder) : books(groat::load(folder, sources)) {}
    [[nodiscard]] std::string said() const { return render(books.diagnostics, sources); }
};

constexpr std::string_view shop = "shop: Quillon Street\ncurrency: USD\n";

std::string yield_test(std::string const& name) {
    return "test: " + name + "\nitem: flour\ndate: 2026-11-12\nas purchased: 1 kg\nusable: 1 kg\n";
}

} // namespace

TEST_CASE("a folder of books is read, the files of a folder in the order of their names") {
    Folder folder;
    folder.file("shop.yaml", shop)
        .file("ingredients.yaml", "flour: {}\n")
        .file("ingredients/b.yaml", "butter: {}\n")
        .file("ingredients/a.yaml", "almond: {}\n")
        .file("supplies.yaml", "box: {}\n")
        .file("prices/10.yaml", "supplier: ten\noffers: [{item: flour, pack: 1 kg, price: 1}]\n")
        .file("prices/09.yaml", "supplier: nine\noffers: [{item: box, pack: 1, price: 1}]\n")
        .file("formulas/a.yaml", "formula: dough\nlines: {flour: 1 kg}\n")
        .file("orders/1.yaml", "order: 1\nlines: [{item: dough, count: 1}]\n")
        .file("yields/b.yaml", yield_test("second"))
        .file("yields.yaml", yield_test("first"))
        .file("menus/1.yaml", "menu: counter\nitems: [{item: dough}]\n")
        .file("notes.txt", "not ours")
        .file("formulas/a.yaml~", "not ours either")
        .file("prices/.hidden.yaml", "nor this");
    Loaded const read(folder.path());
    CHECK(read.said().empty());
    CHECK_FALSE(read.books.unreadable);
    REQUIRE(read.books.book.ingredients.size() == 4);
    CHECK(read.books.book.ingredients[1].name == "almond");
    CHECK(read.books.book.suppliers[0].name == "nine");
    CHECK(read.books.book.find_order("1") != nullptr);
    REQUIRE(read.books.book.yield_tests.size() == 2);
    CHECK(read.books.book.yield_tests[0].name == "first");
    CHECK(read.books.book.find_menu("counter") != nullptr);
}

TEST_CASE("a folder that is not there cannot be read") {
    Folder folder;
    Loaded const read(folder.path() / "nowhere");
    CHECK(read.books.unreadable);
    CHECK(read.said() == fmt::format("{}: error: there is no such folder [unreadable]\n"
                                     "  help: name a folder of books with --books\n",
                                     (folder.path() / "nowhere").string()));
    folder.file("shop.yaml", shop);
    CHECK(Loaded(folder.path() / "shop.yaml").said().find("this is not a folder") !=
          std::string::npos);
}

TEST_CASE("a folder without a shop says what is missing, and nothing of what follows from it") {
    Folder folder;
    folder
        .file("formulas/a.yaml",
              "formula: a\nlines: {flour: 1 g}\noven: {use: deck, minutes: 1, holds: 1 kg}\n")
        .file("ingredients.yaml", "flour: {}\n")
        .file("compose.yaml", "x: y\n");
    Loaded const read(folder.path());
    CHECK(read.books.unreadable);
    CHECK(
        read.said() ==
        "shop.yaml: error: there is no shop.yaml in this folder [unreadable]\n"
        "  help: name a folder of books with --books, or write one that begins with 'shop: a name' "
        "and 'currency: USD'\n");
}

TEST_CASE("names of files are relative to the folder") {
    Folder folder;
    folder.file("shop.yaml", shop).file("prices/mill.yaml", "supplier: Mill Road\nofers: []\n");
    CHECK(Loaded(folder.path()).said() ==
          "prices/mill.yaml:2:1: error: unknown key 'ofers' [unknown-key]\n"
          "  2 | ofers: []\n"
          "    | ^^^^^\n"
          "  help: did you mean 'offers'?\n");
}

TEST_CASE("what has the name of a file but is none cannot be read") {
    Folder folder;
    folder.file("shop.yaml", shop)
        .file("formulas/a.yaml/x", "")
        .file("prices", "a file, not a folder");
    fs::create_symlink("nowhere.yaml", folder.path() / "formulas" / "b.yaml");
    fs::create_symlink("c.yaml", folder.path() / "formulas" / "c.yaml");
    Loaded const read(folder.path());
    CHECK(read.books.unreadable);
    CHECK(read.books.diagnostics.errors() == 4);
    CHECK(read.said().find("formulas/a.yaml: error: this is a folder, not a file [unreadable]") !=
          std::string::npos);
    CHECK(read.said().find(
              "formulas/b.yaml: error: this is a link to a file that is not there [unreadable]") !=
          std::string::npos);
    CHECK(read.said().find("formulas/c.yaml: error: ") != std::string::npos);
    CHECK(read.said().find("prices: error: this is not a folder [unreadable]") !=
          std::string::npos);
}

TEST_CASE("links to files and folders are followed") {
    Folder folder;
    folder.file("shop.yaml", shop)
        .file("kept/list.yaml", "formula: a\nlines: {flour: 1 g}\n")
        .file("real.txt", "flour: {}\n");
    fs::create_symlink("real.txt", folder.path() / "ingredients.yaml");
    fs::create_directory_symlink("kept", folder.path() / "formulas");
    Loaded const read(folder.path());
    CHECK(read.said().empty());
    CHECK(read.books.book.formulas.size() == 1);
}

TEST_CASE("a file that looks like one of the books but is not read is named") {
    Folder folder;
    folder.file("shop.yaml", shop)
        .file("ingredients.yml", "flour: {}\n")
        .file("formula.yaml", "x")
        .file("supply.yaml", "x")
        .file("prices/mill.YAML", "x")
        .file("prices/old/mill.yaml", "x");
    Loaded const read(folder.path());
    CHECK_FALSE(read.books.diagnostics.has_errors());
    CHECK_FALSE(read.books.unreadable);
    CHECK(read.said() == "prices/mill.YAML: warning: this is not read [not-read]\n"
                         "  help: rename it so that it ends in .yaml\n"
                         "\n"
                         "prices/old: warning: this is not read [not-read]\n"
                         "  help: only files in prices itself are read\n"
                         "\n"
                         "formula.yaml: warning: this is not read [not-read]\n"
                         "  help: did you mean to put it into the folder formulas?\n"
                         "\n"
                         "ingredients.yml: warning: this is not read [not-read]\n"
                         "  help: rename it so that it ends in .yaml\n"
                         "\n"
                         "supply.yaml: warning: this is not read [not-read]\n"
                         "  help: did you mean 'supplies.yaml'?\n");
}

TEST_CASE("a file that is too large or no text is refused, but it was read") {
    Folder folder;
    folder.file("shop.yaml", shop)
        .file("formulas/big.yaml", std::string(groat::most_bytes + 10, ' '))
        .file("formulas/picture.yaml", std::string_view("\x89PNG\r\n\x1a\n\0\0", 10))
        .file("orders/1.yaml", "order: 1\nlines: [{item: dough, count: 1}]\n");
    Loaded const read(folder.path());
    CHECK_FALSE(read.books.unreadable);
    CHECK(groat_test::marks(read.books.diagnostics) == "file-too-large not-text");
}

TEST_CASE("an empty folder of formulas is no error") {
    Folder folder;
    folder.file("shop.yaml", shop);
    fs::create_directory(folder.path() / "formulas");
    CHECK(Loaded(folder.path()).said().empty());
}

TEST_CASE("a logo is read from the folder of books and put into the shop's look") {
    std::string const svg = "<svg xmlns=\"http://www.w3.org/2000/svg\"/>";
    Folder folder;
    folder.file("shop.yaml", std::string(shop) + "sheets: {logo: art/gate.svg}\n")
        .file("art/gate.svg", svg);
    Loaded const read(folder.path());
    CHECK(read.said().empty());
    groat::Logo const& logo = read.books.book.shop.sheets.look.logo;
    CHECK(logo.media_type == "image/svg+xml");
    CHECK(logo.base64 == groat::base64(svg));
    CHECK(logo.origin.line == 3);
}

TEST_CASE("a logo that cannot be had is told at its place, and the books are read") {
    Folder folder;
    folder.file("shop.yaml", std::string(shop) + "sheets:\n  logo: gate.svg\n")
        .file("ingredients.yaml", "flour: {}\n");
    auto const said = [&] {
        Loaded const read(folder.path());
        CHECK_FALSE(read.books.unreadable);
        CHECK(read.books.diagnostics.errors() == 1);
        CHECK(read.books.book.ingredients.size() == 1);
        CHECK_FALSE(read.books.book.shop.sheets.look.logo.is_there());
        return read.said();
    };
    CHECK(said() ==
          "shop.yaml:4:9: error: there is no 'gate.svg' in the folder of books [bad-logo]\n"
          "  4 |   logo: gate.svg\n"
          "    |         ^^^^^^^^\n"
          "  help: put the picture there, or take 'logo' out\n");
    folder.file("gates.svg", "<svg/>");
    CHECK(said().find("did you mean 'gates.svg'?") != std::string::npos);
    folder.file("gate.svg/x", "");
    CHECK(said().find("'gate.svg' is a folder") != std::string::npos);
    fs::remove_all(folder.path() / "gate.svg");
    folder.file("gate.svg", "a letter");
    CHECK(said().find("'gate.svg' is neither an SVG nor a PNG picture [bad-logo]") !=
          std::string::npos);
    folder.file("gate.svg", std::string(2'000'000, 'x'));
    CHECK(said().find("'gate.svg' is larger than 512 KiB [large-logo]") != std::string::npos);
    fs::remove(folder.path() / "gate.svg");
    fs::create_symlink("nowhere.svg", folder.path() / "gate.svg");
    CHECK(said().find("there is no 'gate.svg'") != std::string::npos);
    fs::remove(folder.path() / "gate.svg");
    fs::create_symlink("/dev/zero", folder.path() / "gate.svg");
    CHECK(said().find("'gate.svg' leads out of the folder of books") != std::string::npos);
}

TEST_CASE("a logo that is a link is followed within the folder of books, and no further") {
    std::string const svg = "<svg xmlns=\"http://www.w3.org/2000/svg\"/>";
    Folder elsewhere;
    elsewhere.file("secret.svg", svg);
    Folder folder;
    folder.file("shop.yaml", std::string(shop) + "sheets: {logo: art/gate.svg}\n")
        .file("art/real.svg", svg);
    fs::create_symlink("real.svg", folder.path() / "art/gate.svg");
    CHECK(Loaded(folder.path()).said() == "");
    fs::remove(folder.path() / "art/gate.svg");
    fs::create_symlink(elsewhere.path() / "secret.svg", folder.path() / "art/gate.svg");
    Loaded const linked(folder.path());
    CHECK(groat_test::marks(linked.books.diagnostics) == "3:16+12 logo-outside");
    CHECK_FALSE(linked.books.book.shop.sheets.look.logo.is_there());
    // by way of a folder that is a link
    fs::remove_all(folder.path() / "art");
    elsewhere.file("gate.svg", svg);
    fs::create_directory_symlink(elsewhere.path(), folder.path() / "art");
    CHECK(groat_test::marks(Loaded(folder.path()).books.diagnostics) == "3:16+12 logo-outside");
    // books that are themselves reached by a link hold what they hold
    fs::remove(folder.path() / "art");
    folder.file("art/gate.svg", svg);
    Folder other;
    fs::create_directory_symlink(folder.path(), other.path() / "books");
    CHECK(Loaded(other.path() / "books").said() == "");
}

TEST_CASE("a logo that tells more than it shows is shown, and warned of") {
    Folder folder;
    folder.file("shop.yaml", std::string(shop) + "sheets: {logo: gate.svg}\n")
        .file("gate.svg", "<svg xmlns=\"http://www.w3.org/2000/svg\"><!-- mine --></svg>");
    Loaded const read(folder.path());
    CHECK(read.books.diagnostics.errors() == 0);
    CHECK(groat_test::marks(read.books.diagnostics) == "3:16+8 logo-tells");
    CHECK(read.said().find("'gate.svg' says more than it shows (a comment)") != std::string::npos);
    CHECK(read.books.book.shop.sheets.look.logo.is_there());
}
