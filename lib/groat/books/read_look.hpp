/// `logo` and the colours of `sheets:` in shop.yaml. The picture itself is read by whoever knows the folder
/// (see load.hpp); what may be one is told here.
#pragma once

#include <groat/books/read_common.hpp>
#include <groat/books/read_style.hpp>
#include <string>
#include <string_view>

namespace groat {

/// Reads its fields from those of `sheets:`.
void read_look(Fields<shapes::sheets>& fields, SheetRule& rule, Reading const& reading);

/// The largest picture, in bytes: it is in every page that is sent.
inline constexpr std::size_t most_logo_bytes = 512 * 1024;

/// Puts a picture into `logo`: a PNG by its signature, an SVG by its first element.
/// Fails    on one that is too large, empty, neither of both, or an SVG that does not name its namespace in full
/// Source   PNG (W3C), section 5.2; SVG 2 (W3C), section 5.1
[[nodiscard]] Result<Logo> with_picture(Logo logo, std::string_view bytes);

/// What a picture says beside what it shows, and so tells everyone it is sent to: comments and fields of an
/// editor, which may name folders of the maker's disk; texts and camera data. Empty where there is nothing.
/// Source   PNG (W3C), section 5.3 (chunks) and 11.3 (tEXt, zTXt, iTXt, eXIf)
/// Example  "a comment, <metadata>"
[[nodiscard]] std::string told_beside(std::string_view bytes);

/// Whether the end of a picture is missing, as after a copy that broke off: browsers show it broken.
/// Source  PNG (W3C), section 5.6 (IEND is the last chunk)
[[nodiscard]] bool is_cut_off(std::string_view bytes);

namespace read_look_detail {

Flaw outside(std::string_view file);

} // namespace read_look_detail

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/read_look.ipp>
#endif
