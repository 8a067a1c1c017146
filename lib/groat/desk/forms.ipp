#pragma once

#include <groat/desk/forms.hpp>

#include <groat/base/linkage.hpp>
#include <groat/paper/csv.hpp>
#include <groat/paper/html.hpp>
#include <groat/paper/json.hpp>
#include <groat/paper/markdown.hpp>
#include <groat/paper/text.hpp>

#include <fmt/format.h>

namespace groat::desk {

GROAT_INLINE std::string drawn(Sheet const& sheet, std::string_view form) {
    if (form == "json") return to_json(sheet);
    if (form == "html") return to_html(sheet);
    if (form == "markdown") return to_markdown(sheet);
    if (form == "csv") return to_csv(sheet);
    return to_text(sheet);
}

GROAT_INLINE Result<std::string> drawn(std::vector<Sheet> const& sheets, std::string_view form) {
    if (sheets.size() > 1 && !form.empty() && form != "text" && form != "markdown")
        return Refused(Flaw{{},
                            fmt::format("several sheets at once come as text or markdown: ask for "
                                        "one at a time with '--as {}'",
                                        form),
                            ""});
    std::string text;
    for (Sheet const& sheet : sheets) text += (text.empty() ? "" : "\n\n") + drawn(sheet, form);
    return text;
}

GROAT_INLINE std::vector<File> files_of(std::vector<SheetFile> const& sheets,
                                        std::string_view form) {
    std::string const ending(form == "text" ? "txt" : form == "markdown" ? "md" : form);
    std::vector<File> files;
    for (SheetFile const& each : sheets)
        files.push_back({each.path + '.' + ending, drawn(each.sheet, form)});
    return files;
}

} // namespace groat::desk
