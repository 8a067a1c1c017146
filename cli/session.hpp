/// What every verb starts and ends with: a folder of books read, what was found in it said, a sheet handed over.
#pragma once

#include "commands.hpp"
#include "output.hpp"

#include <groat/model/sound_part.hpp>
#include <groat/paper/sheet.hpp>

#include <fmt/format.h>

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace groat::cli {

/// Which part of the books is looked at: all that could be read, or what no error touches.
enum class Looks { at_all, at_sound_part };

/// A run over one folder of books. Errors in them are told, and hold up only what stands on what they are in.
class Session {
public:
    /// Reads the books.
    explicit Session(Options const& options, Looks looks = Looks::at_sound_part);

    [[nodiscard]] Book const& book() const { return linked_ ? linked_->book() : book_; }
    /// The books to cost by: all of them where no error was met, else their sound part. Not to be asked for
    /// where the shop is in doubt.
    [[nodiscard]] LinkedBook const& linked() const { return linked_.value(); }
    [[nodiscard]] Sources const& sources() const { return sources_; }
    [[nodiscard]] Diagnostics& found() { return found_; }
    [[nodiscard]] bool is_unreadable() const { return is_unreadable_; }
    [[nodiscard]] bool has_errors() const { return found_.has_errors(); }
    /// Whether any was met since the books were read.
    [[nodiscard]] bool has_new_errors() const { return found_.errors_met() > errors_read_; }

    /// Whether an error stands in the shop, or anywhere in these parts, of which all is looked at.
    [[nodiscard]] bool is_in_doubt(std::initializer_list<BookPart> parts = {}) const;

    /// The date asked for, else `otherwise`, else today; nothing when it is none, which has been said.
    [[nodiscard]] std::optional<Date> date_or(std::optional<Date> otherwise) const;

    /// Says what was found and which exit code that means.
    int give_up();
    /// The exit code of what was said last to be missing.
    [[nodiscard]] int refusal() const { return refusal_; }
    /// Everything found to standard error, without the last word.
    void tell() const;

    /// What was found to standard error, the sheet to where it is wanted.
    int hand_over(Sheet const& sheet);
    /// Several sheets one below the other, as text or Markdown; one of the other forms is one sheet.
    int hand_over(std::vector<Sheet> const& sheets);
    int hand_over(std::string const& text) const;
    /// What was found, then the files as that folder under a heading, and their paths to standard output.
    int hand_over(std::vector<File> const& files, std::string const& folder,
                  std::string const& heading);

    /// Ingredients and supplies by their names; nothing where one is not there, which has been said then.
    [[nodiscard]] std::optional<std::vector<std::size_t>> ingredients(
        std::vector<std::string> const& names);

    /// A formula, and how it is sold: in the way named, else the first one listed; null where there is none.
    struct Item {
        std::size_t formula = 0;
        SaleUnit const* unit = nullptr;
    };
    /// Nothing where there is no such formula or way, which has been said then.
    [[nodiscard]] std::optional<Item> item(std::string const& name, std::string const& sale_unit);

    /// The order called `id`; null when there is none, which has been said then.
    [[nodiscard]] Order const* order(std::string const& id);
    /// The orders called so, each named once; nothing where one is not there or named again, which has been
    /// said then.
    [[nodiscard]] std::optional<std::vector<Order const*>> orders(
        std::vector<std::string> const& ids);

    /// "no ITEM is called 'x'", with what it may have been; where it may be one of those in doubt in these parts,
    /// what is wrong there.
    int unknown(std::string_view what, std::initializer_list<BookPart> parts,
                std::string const& subject, std::vector<std::string> const& names);

private:
    Options const& options_;
    Sources sources_;
    Book book_; ///< where nothing may be costed
    std::optional<LinkedBook> linked_;
    Diagnostics found_;
    std::size_t errors_read_ = 0; ///< met in reading the books
    bool is_unreadable_ = false;
    int refusal_ = command_line_wrong;
};

/// A sheet in the form asked for.
[[nodiscard]] std::string drawn(Sheet const& sheet, Options const& options);

/// "1 offer", "2 offers".
[[nodiscard]] inline std::string counted(std::size_t count, std::string_view one,
                                         std::string_view many) {
    return fmt::format("{} {}", count, count == 1 ? one : many);
}

} // namespace groat::cli
