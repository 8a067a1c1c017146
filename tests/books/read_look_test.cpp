#include "reading.hpp"

#include <groat/base/base64.hpp>
#include <groat/books/read_look.hpp>

#include <doctest/doctest.h>

#include <string>

using groat::Logo;
using groat::Reading;
using groat::SheetRule;
using groat::with_picture;
using groat_test::Desk;

namespace {

struct LookReader : Desk {
    Reading reading{found};

    SheetRule rule(std::string const& text) {
        groat::Fields<groat::shapes::sheets> fields(node(text), found);
        SheetRule result;
        read_look(fields, result, reading);
        fields.close();
        return result;
    }
};

std::string look_marks(std::string const& text) {
    LookReader desk;
    (void)desk.rule(text + "\n");
    return desk.marked();
}

/// What a picture is, or the code of what is wrong with it.
std::string kind_of(std::string const& bytes) {
    auto const logo = with_picture(Logo{"logo.svg", {}, {}, {}}, bytes);
    return logo ? logo->media_type : logo.error().code;
}

std::string const svg = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 1 1\"/>";

} // namespace

TEST_CASE("a logo and colours arrive, and what is not said is the usual") {
    LookReader desk;
    SheetRule const rule =
        desk.rule("logo: art/gate.svg\ncolours: {mark: '#036', ink: '#101010'}\n");
    CHECK(desk.said().empty());
    CHECK(rule.look.logo.file == "art/gate.svg");
    CHECK(rule.look.logo.origin.column == 7);
    CHECK_FALSE(rule.look.logo.is_there()); // its bytes are read by whoever knows the folder
    CHECK(hex(rule.look.mark) == "#003366");
    CHECK(hex(rule.look.ink) == "#101010");
    SheetRule const plain = LookReader().rule("{}\n");
    CHECK(hex(plain.look.mark) == "#5a3a1b");
    CHECK(hex(plain.look.ink) == "#22242a");
    CHECK(plain.look.logo.file.empty());
}

TEST_CASE("the usual colours can be read") {
    groat::Look const look;
    CHECK(contrast_with_white(look.mark) >= groat::least_contrast());
    CHECK(contrast_with_white(look.ink) >= groat::least_contrast());
}

TEST_CASE("a colour that is none, or too pale, is refused where it stands") {
    CHECK(look_marks("colours: {mark: brown}") == "1:17+5 bad-colour");
    CHECK(look_marks("colours: {ink: '#12345'}") == "1:16+8 bad-colour");
    CHECK(look_marks("colours: {mark: '#767676'}") == "");
    CHECK(look_marks("colours: {mark: '#777777'}") == "1:17+9 pale-colour");
    CHECK(look_marks("colours: {mark: [1]}") == "1:17+1 wrong-kind");
    CHECK(look_marks("colours: {mark: #333}\n") != "");
    CHECK(look_marks("colours: brown") == "1:10+5 wrong-kind");
    CHECK(look_marks("colors: {mark: '#333'}") == "1:1+6 unknown-key");
}

TEST_CASE("a pale colour is told its contrast, never rounded up to what it misses") {
    LookReader desk;
    (void)desk.rule("colours: {mark: '#777777'}\n");
    CHECK(desk.said().find("its contrast is 4.48 : 1") != std::string::npos);
    CHECK(desk.said().find("choose a darker one") != std::string::npos);
    // #8369b7 has 4.4973 (by Python), which would be shown as 4.50
    LookReader close;
    (void)close.rule("colours: {mark: '#8369b7'}\n");
    CHECK(close.said().find("its contrast is 4.49 : 1") != std::string::npos);
}

TEST_CASE("a logo outside of the folder is refused") {
    for (std::string const file : {"../logo.svg", "art/../../logo.svg", "/etc/passwd", "..", "a/..",
                                   "C:/logo.svg", "art\\\\logo.svg", "file:///logo.svg"})
        CHECK_MESSAGE(
            look_marks("logo: \"" + file + "\"").find("logo-outside") != std::string::npos, file);
    CHECK(look_marks("logo: a..b.svg") == "");
    CHECK(look_marks("logo: ...svg") == "");
}

TEST_CASE("what is no name of a file is refused") {
    CHECK(look_marks("logo: ''") == "1:7+2 bad-logo");
    CHECK(look_marks("logo: [a.svg]") == "1:7+1 wrong-kind");
    CHECK(look_marks("logo:") == "1:1+4 missing-value");
    CHECK(look_marks("logo: \"a\\nb.svg\"").find("bad-logo") != std::string::npos);
    CHECK(look_marks("logo: " + groat_test::times(201, "a")).find("bad-logo") != std::string::npos);
}

TEST_CASE("a PNG is known by its first eight bytes") { // PNG (W3C), section 5.2
    CHECK(kind_of("\x89PNG\r\n\x1A\nand more") == "image/png");
    CHECK(kind_of("\x89PNG\n\x1A\n") == "bad-logo"); // what a text transfer leaves of it
    CHECK(kind_of("\xFF\xD8\xFF\xE0JFIF") == "bad-logo");
    CHECK(kind_of("GIF89a") == "bad-logo");
    CHECK(kind_of("") == "bad-logo");
}

TEST_CASE("an SVG is known by its first element") {
    CHECK(kind_of(svg) == "image/svg+xml");
    CHECK(kind_of("\xEF\xBB\xBF<?xml version=\"1.0\"?>\n<!-- <html> -->\n" + svg) ==
          "image/svg+xml");
    CHECK(kind_of("<!DOCTYPE svg PUBLIC \"-//W3C//DTD SVG 1.1//EN\" "
                  "\"http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd\">\n" +
                  svg) == "image/svg+xml");
    CHECK(kind_of("<!DOCTYPE svg [ <!ENTITY a \"b\"> ]>\n" + svg) == "image/svg+xml");
    CHECK(kind_of("<svg\n xmlns='http://www.w3.org/2000/svg'></svg>") == "image/svg+xml");
    CHECK(kind_of("<html>" + svg + "</html>") == "bad-logo");
    CHECK(kind_of("<svgx xmlns=\"http://www.w3.org/2000/svg\"/>") == "bad-logo");
    CHECK(kind_of("<!-- " + svg) == "bad-logo");
    CHECK(kind_of("<?xml version=\"1.0\"") == "bad-logo");
    CHECK(kind_of("<!DOCTYPE svg [") == "bad-logo");
    CHECK(kind_of("words") == "bad-logo");
    CHECK(kind_of("<svg>") == "bad-logo"); // no browser shows it
    CHECK(with_picture(Logo{"logo.svg", {}, {}, {}}, "<svg>").error().what ==
          "the <svg> of 'logo.svg' must name its namespace in full");
    CHECK(kind_of("<svg viewBox=\"0 0 1 1\"/> http://www.w3.org/2000/svg") == "bad-logo");
}

TEST_CASE("a picture is at most 512 KiB") {
    std::string const begin = "\x89PNG\r\n\x1A\n";
    CHECK(kind_of(begin + std::string(512 * 1024 - begin.size(), 'x')) == "image/png");
    CHECK(kind_of(begin + std::string(512 * 1024 - begin.size() + 1, 'x')) == "large-logo");
}

TEST_CASE("a picture is kept as its letters") {
    auto const logo = with_picture(Logo{"logo.svg", {}, {}, {}}, svg);
    REQUIRE(logo.has_value());
    CHECK(logo->is_there());
    CHECK(logo->file == "logo.svg");
    CHECK(logo->base64 == groat::base64(svg));
}

TEST_CASE("what an SVG says beside what it shows is told") {
    auto const within = [](std::string const& text) {
        return groat::told_beside("<svg xmlns=\"http://www.w3.org/2000/svg\">" + text + "</svg>");
    };
    CHECK(groat::told_beside(svg) == "");
    CHECK(within("<path d='M0 0'/><title>Mill</title>") == "");
    CHECK(within("<!-- by me -->") == "a comment");
    CHECK(within("<metadata id='m'/>") == "<metadata>");
    CHECK(within("<g inkscape:export-filename='/home/me/gate.png'/>") == "inkscape:");
    CHECK(within("<sodipodi:namedview/><!-- x --><!-- y -->") == "a comment, sodipodi:");
}

// PNG (W3C), 5.3: each chunk is four bytes of length, four letters, the data, and four bytes of CRC
TEST_CASE("what a PNG says beside what it shows is told") {
    auto const chunk = [](std::string const& kind, std::string const& data) {
        return std::string(2, '\0') + static_cast<char>(data.size() / 256) +
               static_cast<char>(data.size() % 256) + kind + data + "CRC.";
    };
    std::string const signature = "\x89PNG\r\n\x1A\n";
    std::string const begin = signature + chunk("IHDR", std::string(13, '\1'));
    std::string const end =
        chunk("IDAT", "tEXt <!-- eXIf" + std::string(500, 'x')) + chunk("IEND", "");
    CHECK(groat::told_beside(begin + end) == ""); // letters within the pixels are none
    CHECK(groat::told_beside(begin + end + chunk("tEXt", "Author")) == "tEXt");
    for (std::string const kind : {"tEXt", "zTXt", "iTXt", "eXIf"})
        CHECK(groat::told_beside(begin + chunk(kind, "x") + chunk(kind, "y") + end) == kind);
    CHECK(groat::told_beside(begin + chunk("eXIf", "x") + chunk("tEXt", "x")) == "eXIf, tEXt");
    CHECK(groat::told_beside(begin.substr(0, 20)) == "");
    CHECK(groat::told_beside(signature + "\xFF\xFF\xFF\xFFtEXt") == "");
    CHECK(groat::told_beside(signature + "\xFF\xFF\xFF\xFFIDATdata") == "");
}

TEST_CASE("a picture whose end is missing is known") { // PNG (W3C), section 5.6: IEND comes last
    std::string const end("\0\0\0\0IEND\xAE\x42\x60\x82", 12);
    CHECK_FALSE(groat::is_cut_off("\x89PNG\r\n\x1A\n" + end));
    CHECK(groat::is_cut_off("\x89PNG\r\n\x1A\n"));
    CHECK(groat::is_cut_off("\x89PNG\r\n\x1A\n" + end.substr(0, 9)));
    CHECK_FALSE(groat::is_cut_off("<svg><path/></svg>\n"));
    CHECK_FALSE(groat::is_cut_off("<svg/>"));
    CHECK_FALSE(groat::is_cut_off("<svg></svg> <!-- drawn by hand --> \n"));
    CHECK(groat::is_cut_off("<svg><path d='M1"));
    CHECK(groat::is_cut_off("<svg><g></g>"));
}
