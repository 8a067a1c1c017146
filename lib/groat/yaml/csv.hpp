/// Comma-separated text as RFC 4180 describes it, a row at a time. A row ends in LF or CR LF; a cell in
/// quotation marks may hold delimiters, line ends and doubled quotation marks, all kept as they are. A
/// quotation mark within a cell that does not begin with one is plain text, so that a 12" box can be sold.
///
/// What would leave it open where a cell ends is refused at its place: a quotation mark that is never
/// closed, text behind a closing one, a CR alone. A file has 64 MiB at most, a million lines, and a thousand
/// cells in a row, so that no file of whatever content can exhaust the memory.
#pragma once

#include <groat/yaml/text_check.hpp>

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace groat {

inline constexpr std::size_t most_csv_bytes = std::size_t{64} * 1024 * 1024;
inline constexpr std::size_t most_csv_lines = 1'000'000;
inline constexpr std::size_t most_csv_cells = 1'000; ///< in a row

/// How the bytes of a file stand for characters. Nothing is guessed: what is not said is UTF-8.
enum class Encoding { utf_8, latin_1, windows_1252 };
inline constexpr std::string_view encoding_words[] = {"utf-8", "latin-1", "windows-1252"};

/// Keeps a file's bytes as text among `sources` and gives its number; a byte order mark is left out.
///
/// Fails    (nothing is given, the reason is among `found`) on what is too large, on NUL bytes, on UTF-16,
///          and on a byte that has no meaning in `encoding`, with its place
[[nodiscard]] std::optional<std::uint32_t> add_csv(Sources& sources, std::string name,
                                                   std::string bytes, Encoding encoding,
                                                   Diagnostics& found);

struct CsvCell {
    std::string text;    ///< without the quotation marks around it, doubled ones as one
    std::size_t at = 0;  ///< its first byte in the file, a quotation mark where it has one
    std::size_t end = 0; ///< the byte behind it
};

/// An empty line is a row without cells.
struct CsvRow {
    std::size_t at = 0;
    std::vector<CsvCell> cells = {};
};

/// Reads the rows of a file of `sources`, which must stay as they are meanwhile. `delimiter` is one
/// character, neither a quotation mark nor a line end; the first `skip` lines are passed over unread.
///
///     CsvReader reader(sources, file, ";", 0, found);
///     for (CsvRow row; reader.next(row);) ...
class CsvReader {
public:
    CsvReader(Sources const& sources, std::uint32_t file, std::string delimiter, std::size_t skip,
              Diagnostics& found);

    /// The next row, or false at the end and at an error behind which nothing can be told any more.
    [[nodiscard]] bool next(CsvRow& row);

    [[nodiscard]] Span place_of(CsvCell const& cell) const;
    [[nodiscard]] Span place_of(CsvRow const& row) const;

private:
    [[nodiscard]] bool take_quoted(CsvCell& cell);
    [[nodiscard]] bool take_plain(CsvCell& cell);
    [[nodiscard]] bool is_delimiter_next() const {
        return text_.substr(at_).starts_with(delimiter_);
    }
    [[nodiscard]] std::size_t line_end() const;
    [[nodiscard]] Span span(std::size_t at, std::size_t end) const;
    [[nodiscard]] bool stop_at_old_line_end();
    [[nodiscard]] bool stop(std::size_t at, Code code, std::string what, char const* help);

    std::string_view text_;
    std::uint32_t file_;
    std::string delimiter_;
    Places places_;
    Diagnostics& found_;
    std::size_t at_ = 0;
    bool has_stopped_ = false;
};

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/yaml/csv.ipp>
#endif
