#include "help.hpp"

#include <groat/paper/sheet_text.hpp>
#include <groat/sheets/shape_sheets.hpp>

namespace groat::cli {

HelpSource help_on_members() {
    return {"a figure of a sheet",
            [](std::string_view word) -> std::optional<std::string> {
                std::string text = help_on_member(sheet_shape_list, word);
                if (text.empty()) return std::nullopt;
                return text;
            },
            [] { return known_members(sheet_shape_list); }};
}

} // namespace groat::cli
