#include "session.hpp"

#include <groat/sheets/words_sheet.hpp>

namespace groat::cli {

int words(Options const& options) {
    return put_out(desk::drawn(words_sheet(Words(options.language)), options.as), options.out,
                   options.may_replace);
}

} // namespace groat::cli
