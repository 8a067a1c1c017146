#include "session.hpp"

#include <groat/desk/check.hpp>
#include <groat/paper/csv.hpp>
#include <groat/paper/html.hpp>
#include <groat/paper/json.hpp>
#include <groat/paper/markdown.hpp>
#include <groat/paper/text.hpp>

#include <fmt/format.h>

#include <filesystem>
#include <utility>

namespace groat::cli {

namespace {

desk::OpenBooks read(std::string const& folder, desk::Looks looks) {
    Sources sources;
    Loaded loaded = load(std::filesystem::path(folder), sources);
    return desk::open_books(std::move(loaded), std::move(sources), looks);
}

} // namespace

Session::Session(Options const& options, desk::Looks looks)
    : options_(options), books_(read(options.books, looks)) {}

int Session::give_up(std::string_view not_done) const {
    complain(render(books_.found, books_.sources));
    complain(fmt::format("\ngroat: {}; nothing was {}\n",
                         desk::counted(books_.found.errors(), "error", "errors"), not_done));
    return books_.is_unreadable ? file_trouble : books_have_errors;
}

int Session::refuse(Flaw const& flaw) const {
    return desk::is_as_found(flaw) ? give_up() : refuse_words(flaw);
}

void Session::tell() const {
    if (books_.found.empty()) return;
    complain(render(books_.found, books_.sources) + "\n");
    if (!books_.is_sound())
        complain(fmt::format(
            "groat: {}, in nothing that is used here\n\n",
            desk::counted(books_.found.errors() - books_.found.raised(), "error", "errors")));
}

int Session::hand_over(Sheet const& sheet) const { return hand_over(drawn(sheet, options_)); }

int Session::hand_over(std::vector<Sheet> const& sheets) const {
    if (sheets.size() == 1) return hand_over(sheets.front());
    if (!options_.as.empty() && options_.as != "text" && options_.as != "markdown")
        return refuse_words({{},
                             fmt::format("several sheets at once come as text or markdown: ask for "
                                         "one at a time with '--as {}'",
                                         options_.as),
                             ""});
    if (!books_.found.empty()) complain(render(books_.found, books_.sources) + "\n");
    std::string text;
    for (Sheet const& sheet : sheets) text += (text.empty() ? "" : "\n\n") + drawn(sheet, options_);
    return put_out(text, options_.out, options_.may_replace);
}

int Session::hand_over(std::string const& text) const {
    tell();
    return put_out(text, options_.out, options_.may_replace);
}

int Session::hand_over(std::vector<File> const& files, std::string const& folder,
                       std::string const& heading) const {
    tell();
    std::string const trouble = deliver_folder(files, folder, heading, options_.may_replace);
    if (!trouble.empty()) {
        complain(fmt::format("groat: {}\n", trouble));
        return file_trouble;
    }
    std::string list;
    for (File const& each : files)
        list += (std::filesystem::path(folder) / each.path).string() + '\n';
    std::string const silence = deliver(list, {}, false);
    if (silence.empty()) return done;
    complain(fmt::format("groat: the sheets are in '{}', but: {}\n", folder, silence));
    return file_trouble;
}

int refuse_words(Flaw const& flaw) {
    complain(fmt::format("groat: {}\n", flaw.what));
    if (!flaw.help.empty()) complain(fmt::format("  help: {}\n", flaw.help));
    return command_line_wrong;
}

int put_out(std::string const& text, std::string const& file, bool may_replace) {
    std::string const trouble = deliver(text, file, may_replace);
    if (trouble.empty()) return done;
    complain(fmt::format("groat: {}\n", trouble));
    return file_trouble;
}

std::string drawn(Sheet const& sheet, Options const& options) {
    if (options.as == "json") return to_json(sheet);
    if (options.as == "html") return to_html(sheet);
    if (options.as == "markdown") return to_markdown(sheet);
    if (options.as == "csv") return to_csv(sheet);
    return to_text(sheet);
}

} // namespace groat::cli
