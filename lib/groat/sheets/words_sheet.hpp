/// The words of the sheets, for whoever puts them into another language.
#pragma once

#include <groat/model/words.hpp>
#include <groat/paper/sheet.hpp>

namespace groat {

/// Every key with its English text, and beside it that of another language.
[[nodiscard]] Sheet words_sheet(Words const& words);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/sheets/words_sheet.ipp>
#endif
