#include "session.hpp"

#include <groat/desk/check.hpp>

#include <fmt/format.h>

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <utility>

namespace groat::cli {

namespace {

desk::OpenBooks read(std::string const& folder, desk::Looks looks) {
    Sources sources;
    Loaded loaded = load(std::filesystem::path(folder), sources);
    return desk::open_books(std::move(loaded), std::move(sources), looks);
}

/// To standard output; whether all of it got there.
bool print(std::string const& text) {
    return std::fwrite(text.data(), 1, text.size(), stdout) == text.size() &&
           std::fflush(stdout) == 0;
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

int Session::hand_over(Sheet const& sheet) const {
    return hand_over(desk::drawn(sheet, options_.as));
}

int Session::hand_over(std::vector<Sheet> const& sheets) const {
    return hand_over(desk::drawn(sheets, options_.as));
}

int Session::hand_over(std::string const& text) const {
    tell();
    return put_out(text, options_.out, options_.may_replace);
}

int Session::hand_over(std::vector<desk::File> const& files, std::string const& folder,
                       std::string const& heading) const {
    tell();
    std::string const trouble = desk::deliver_folder(files, folder, heading, options_.may_replace);
    if (!trouble.empty()) {
        complain(fmt::format("groat: {}\n", trouble));
        return file_trouble;
    }
    std::string list;
    for (desk::File const& each : files)
        list += (std::filesystem::path(folder) / each.path).string() + '\n';
    if (print(list)) return done;
    complain(fmt::format("groat: the sheets are in '{}', but: cannot write: {}\n", folder,
                         std::strerror(errno)));
    return file_trouble;
}

int refuse_words(Flaw const& flaw, Exit code) {
    complain(fmt::format("groat: {}\n", flaw.what));
    if (!flaw.help.empty()) complain(fmt::format("  help: {}\n", flaw.help));
    return code;
}

int put_out(std::string const& text, std::string const& file, bool may_replace) {
    std::string trouble;
    if (!file.empty())
        trouble = desk::deliver(text, file, may_replace);
    else if (!print(text))
        trouble = fmt::format("cannot write: {}", std::strerror(errno));
    if (trouble.empty()) return done;
    complain(fmt::format("groat: {}\n", trouble));
    return file_trouble;
}

void complain(std::string const& text) { std::fputs(text.c_str(), stderr); }

} // namespace groat::cli
