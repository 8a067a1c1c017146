#include "help.hpp"

#include <groat/books/shape_text.hpp>

namespace groat::cli {

HelpSource help_on_keys() { return {"a key of the books", help_on_key, known_keys}; }

} // namespace groat::cli
