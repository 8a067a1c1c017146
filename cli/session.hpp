/// What every verb starts and ends with: a folder of books read, what was found in it said, a sheet handed over.
#pragma once

#include "commands.hpp"

#include <groat/base/text.hpp>
#include <groat/desk/answer.hpp>
#include <groat/desk/day.hpp>
#include <groat/desk/forms.hpp>
#include <groat/desk/open_books.hpp>

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace groat::cli {

/// A run over one folder of books. Errors in them are told, and hold up only what stands on what they are in.
class Session {
public:
    /// Reads the books.
    explicit Session(Options const& options, desk::Looks looks = desk::Looks::at_sound_part);

    [[nodiscard]] Book const& book() const { return books_.book(); }
    [[nodiscard]] desk::OpenBooks& books() { return books_; }
    [[nodiscard]] Diagnostics& found() { return books_.found; }

    /// Says what was found and which exit code that means; what was not done to anything for it.
    int give_up(std::string_view not_done = "calculated") const;
    /// Says why there is nothing to hand over, and which exit code that means.
    int refuse(Flaw const& flaw) const;
    /// Everything found to standard error; and where there are errors, that nothing here uses what is in error.
    void tell() const;

    /// What was found to standard error, the sheet to where it is wanted.
    int hand_over(Sheet const& sheet) const;
    /// Several sheets one below the other, as text or Markdown; one of the other forms is one sheet.
    int hand_over(std::vector<Sheet> const& sheets) const;
    /// What was found, then a text as it is.
    int hand_over(std::string const& text) const;
    /// What was found, then the files as that folder under a heading, and their paths to standard output.
    int hand_over(std::vector<desk::File> const& files, std::string const& folder,
                  std::string const& heading) const;
    /// One of these, or why there is none.
    template <class T> int hand_over(Result<T> const& result) const {
        return result ? hand_over(*result) : refuse(result.error());
    }

private:
    Options const& options_;
    desk::OpenBooks books_;
};

/// Reads the books, has `work` done with them and the day that counts, and hands over what comes of it. With an error in
/// the shop or anywhere in `parts`, of which all is looked at, it is not begun.
template <class Work>
int with_books(Options const& options, std::vector<BookPart> const& parts, Work const& work);

/// The day it is where the command runs.
[[nodiscard]] Date today();

/// The date that stands behind an option.
/// Fails    on what is no date
[[nodiscard]] Result<Date> date_behind(std::string_view option, std::string_view words);

/// The same; empty where the option was not said.
[[nodiscard]] Result<std::optional<Date>> date_said(std::string_view option,
                                                    std::string_view words);

/// The days of `--on` and `--made`, and today.
/// Fails    on what is no date
[[nodiscard]] Result<desk::Dates> dates_said(Options const& options);

/// Says what is wrong with what was asked for, or with what it names.
int refuse_words(Flaw const& flaw, Exit code = command_line_wrong);

/// A text to that file, or to standard output where none is named; or why it could not be written.
int put_out(std::string const& text, std::string const& file, bool may_replace);

/// To standard error.
void complain(std::string const& text);

// ---------------------------------------------------------------------------------------------------

template <class Work>
int with_books(Options const& options, std::vector<BookPart> const& parts, Work const& work) {
    auto const dates = dates_said(options);
    if (!dates) return refuse_words(dates.error());
    Session session(options);
    if (desk::is_in_doubt(session.book(), parts)) return session.give_up();
    return session.hand_over(work(session.books(), *dates));
}

} // namespace groat::cli
