/// Words in a page: nothing that anybody wrote can become markup.
#pragma once

#include <string>
#include <string_view>

namespace groat::html_detail {

/// For the text of an element and for an attribute in quotation marks.
std::string escaped(std::string_view text);

/// For a string of a style sheet: all but letters, digits and blanks by its number.
std::string escaped_in_style(std::string_view text);

} // namespace groat::html_detail

#ifndef GROAT_COMPILED
#include <groat/paper/html_text.ipp>
#endif
