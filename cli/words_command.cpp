#include "session.hpp"

#include <groat/sheets/words_sheet.hpp>

namespace groat::cli {

int words(Options const& options) {
    std::string const text = drawn(words_sheet(Words(options.language)), options);
    std::string const trouble = deliver(text, options.out, options.may_replace);
    if (trouble.empty()) return done;
    complain(fmt::format("groat: {}\n", trouble));
    return file_trouble;
}

} // namespace groat::cli
