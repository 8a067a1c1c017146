#pragma once

#include <groat/books/read_look.hpp>

#include <groat/base/base64.hpp>
#include <groat/base/linkage.hpp>
#include <groat/base/rounding.hpp>

#include <algorithm>
#include <utility>

namespace groat {

namespace read_look_detail {

inline constexpr std::string_view png_signature = "\x89PNG\r\n\x1A\n";

/// A way within the folder: no root, no drive, no step up.
inline bool leads_outside(std::string_view file) {
    if (file.starts_with('/') || file.find('\\') != std::string_view::npos ||
        file.find(':') != std::string_view::npos)
        return true;
    for (std::size_t at = 0; at <= file.size();) {
        std::size_t const end = std::min(file.find('/', at), file.size());
        if (file.substr(at, end - at) == "..") return true;
        at = end + 1;
    }
    return false;
}

GROAT_INLINE Flaw outside(std::string_view file) {
    return {"logo-outside", fmt::format("'{}' leads out of the folder of books", file),
            "put the picture into the folder, and write 'logo: logo.svg'"};
}

inline Colour read_colour(Node const* node, Colour usual, Reading const& reading) {
    auto const colour = read_scalar(node, "a colour", reading, [](std::string_view text) {
        auto read = parse_colour(text);
        if (!read) return read;
        Number const contrast = contrast_with_white(*read);
        if (contrast >= least_contrast()) return read;
        // never shown as what it falls short of
        Number const shown =
            std::min(round_to(contrast, decimal_step(2), Tie::half_even), Number(449) / 100);
        return Result<Colour>(
            refuse("pale-colour",
                   fmt::format("'{}' is too pale to read on white: its contrast is {} : 1", text,
                               decimal(shown, 2)),
                   "text needs 4.5 : 1 (WCAG 2.2); choose a darker one"));
    });
    return colour.value_or(usual);
}

/// Where the first element of a document begins, behind its declaration, comments and document type.
inline std::size_t first_element(std::string_view text) {
    std::size_t at = text.starts_with("\xEF\xBB\xBF") ? 3 : 0;
    auto const skip = [&](std::string_view begin, std::string_view end) {
        if (!text.substr(at).starts_with(begin)) return false;
        std::size_t const last = text.find(end, at + begin.size());
        at = last == std::string_view::npos ? text.size() : last + end.size();
        return true;
    };
    for (;;) {
        at = std::min(text.find_first_not_of(" \t\r\n", at), text.size());
        if (skip("<?", "?>") || skip("<!--", "-->")) continue;
        std::size_t const subset = text.find_first_of("[>", at);
        bool const has_subset = subset != std::string_view::npos && text[subset] == '[';
        if (!skip("<!DOCTYPE", has_subset ? "]>" : ">")) return at;
    }
}

} // namespace read_look_detail

GROAT_INLINE void read_look(Fields<shapes::sheets>& fields, SheetRule& rule,
                            Reading const& reading) {
    Node const* const logo = fields.at("logo");
    auto const file = read_scalar(
        logo, "the name of a file", reading, [](std::string_view text) -> Result<std::string> {
            if (text.empty() || text.size() > longest_name ||
                text.find_first_of("\r\n") != std::string_view::npos)
                return refuse("bad-logo", "this is not the name of a file",
                              "write one as 'logo: logo.svg'");
            if (read_look_detail::leads_outside(text))
                return Refused(read_look_detail::outside(text));
            return std::string(text);
        });
    if (file) rule.look.logo = {*file, logo->where, {}, {}};
    if (Node const* const colours = fields.at("colours")) {
        Fields<shapes::colours> inner(*colours, reading.found);
        rule.look.mark = read_look_detail::read_colour(inner.at("mark"), rule.look.mark, reading);
        rule.look.ink = read_look_detail::read_colour(inner.at("ink"), rule.look.ink, reading);
        inner.close();
    }
}

GROAT_INLINE std::string told_beside(std::string_view bytes) {
    std::string told;
    auto const add = [&](std::string_view what) {
        if (told.find(what) == std::string::npos) (told += told.empty() ? "" : ", ") += what;
    };
    if (!bytes.starts_with(read_look_detail::png_signature)) {
        constexpr std::pair<std::string_view, std::string_view> marks[] = {
            {"<!--", "a comment"},
            {"<metadata", "<metadata>"},
            {"inkscape:", "inkscape:"},
            {"sodipodi:", "sodipodi:"}};
        for (auto const& [mark, what] : marks)
            if (bytes.find(mark) != std::string_view::npos) add(what);
        return told;
    }
    // chunks: the length of the data in four bytes, four letters, the data, four bytes to check it
    for (std::size_t at = read_look_detail::png_signature.size(); at + 12 <= bytes.size();) {
        std::size_t length = 0;
        for (std::size_t i = 0; i < 4; ++i)
            length = length * 256 + static_cast<unsigned char>(bytes[at + i]);
        std::string_view const kind = bytes.substr(at + 4, 4);
        if (kind == "tEXt" || kind == "zTXt" || kind == "iTXt" || kind == "eXIf") add(kind);
        at += 12 + length;
    }
    return told;
}

GROAT_INLINE bool is_cut_off(std::string_view bytes) {
    if (bytes.starts_with(read_look_detail::png_signature))
        return bytes.size() < 12 || bytes.substr(bytes.size() - 8, 4) != "IEND";
    std::size_t last = bytes.find_last_not_of(" \t\r\n");
    while (last != std::string_view::npos && bytes.substr(0, last + 1).ends_with("-->")) {
        std::size_t const comment = bytes.rfind("<!--", last);
        if (comment == std::string_view::npos || comment == 0) break;
        last = bytes.find_last_not_of(" \t\r\n", comment - 1);
    }
    std::string_view const text = bytes.substr(0, last + 1);
    return !text.ends_with("</svg>") && !text.ends_with("/>");
}

GROAT_INLINE Result<Logo> with_picture(Logo logo, std::string_view bytes) {
    if (bytes.size() > most_logo_bytes)
        return refuse("large-logo", fmt::format("'{}' is larger than 512 KiB", logo.file),
                      "it goes into every page: save a smaller one, an SVG if you can");
    if (bytes.starts_with(read_look_detail::png_signature)) {
        logo.media_type = "image/png";
    } else {
        std::size_t const at = read_look_detail::first_element(bytes);
        std::string_view const element =
            bytes.substr(at, std::min(bytes.find('>', at), bytes.size()) - at);
        bool const is_svg = element.starts_with("<svg") && element.size() > 4 &&
                            std::string_view(" \t\r\n").find(element[4]) != std::string_view::npos;
        if (!is_svg && element != "<svg")
            return refuse("bad-logo",
                          fmt::format("'{}' is neither an SVG nor a PNG picture", logo.file),
                          "save it as one of these");
        if (element.find("\"http://www.w3.org/2000/svg\"") == std::string_view::npos &&
            element.find("'http://www.w3.org/2000/svg'") == std::string_view::npos)
            return refuse(
                "bad-logo",
                fmt::format("the <svg> of '{}' must name its namespace in full", logo.file),
                "begin it with <svg xmlns=\"http://www.w3.org/2000/svg\" …>");
        logo.media_type = "image/svg+xml";
    }
    logo.base64 = base64(bytes);
    return logo;
}

} // namespace groat
