/// What groat tells a user about what they wrote: where, what is wrong, and how to mend it. All findings
/// of a run are collected and shown together, in the order of the places they speak of.
#pragma once

#include <groat/base/judgement.hpp>
#include <groat/base/result.hpp>
#include <groat/base/source.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

namespace groat {

struct Diagnostic {
    struct Note {
        std::string text;
        Span where;
    };
    Severity severity = Severity::error;
    Code code = {};
    std::string what;
    Span where;
    std::vector<Note> notes = {};
    std::string help = {};

    friend bool operator==(Diagnostic const& a, Diagnostic const& b) {
        return a.severity == b.severity && a.code == b.code && a.what == b.what &&
               a.where == b.where;
    }
};

/// The findings of a run. One that was found shortly before (same place, same words) is not
/// kept twice, but it is met again: whether something stands in the way is told by `errors_met`.
class Diagnostics {
public:
    void add(Diagnostic diagnostic);
    void error(Span where, Code code, std::string what, std::string help = {});
    void warn(Span where, Code code, std::string what, std::string help = {});
    void error(Span where, Flaw const& flaw);
    void add(Diagnostics const& others);
    /// Takes back those errors that `follows` says follow from another, of all findings but the first `before`.
    /// They have been met.
    template <class Follows> void take_back(std::size_t before, Follows follows);

    /// Takes the shop's word on warnings, on those found so far and on those that follow: one that it accepts is
    /// counted and not kept, one that it holds to be an error becomes one.
    void judge(Judgement judgement);
    /// What was accepted, in the order in which the shop names it.
    [[nodiscard]] std::vector<AcceptedFindings> accepted() const;

    [[nodiscard]] bool has_errors() const { return errors_ > 0; }
    [[nodiscard]] std::size_t errors() const { return errors_; }
    /// Errors, those included that were found before: what has risen since, was met since.
    [[nodiscard]] std::size_t errors_met() const { return errors_met_; }
    /// Those of the errors that are warnings, held to be errors.
    [[nodiscard]] std::size_t raised() const { return raised_; }
    [[nodiscard]] std::size_t warnings() const { return all_.size() - errors_; }
    [[nodiscard]] bool empty() const { return all_.empty(); }
    /// Sorted by place; of one place, in the order found.
    [[nodiscard]] std::vector<Diagnostic> sorted() const;

private:
    /// Whether it was found shortly before.
    [[nodiscard]] static bool is_known(Diagnostic const& diagnostic,
                                       std::vector<Diagnostic> const& among);

    std::vector<Diagnostic> all_;
    std::vector<Diagnostic> accepted_;
    Judgement judgement_;
    std::size_t errors_ = 0;
    std::size_t errors_met_ = 0;
    std::size_t raised_ = 0;
};

/// A diagnostic as text for a terminal:
///
///     prices/mill.yaml:4:25: error: unknown key 'prise' [unknown-key]
///       4 |   - {item: plain flour, prise: 13.80}
///         |                         ^^^^^
///       help: did you mean 'price'?
///
/// Columns count characters; text from files is made harmless; a long line is shown around the caret.
[[nodiscard]] std::string render(Diagnostic const& diagnostic, Sources const& sources);

/// All of them, a blank line between two.
[[nodiscard]] std::string render(Diagnostics const& diagnostics, Sources const& sources);

// ---------------------------------------------------------------------------------------------------

inline bool Diagnostics::is_known(Diagnostic const& diagnostic,
                                  std::vector<Diagnostic> const& among) {
    // Neighbours repeat (one price missing in four worlds), far ones hardly do: a short look back is enough
    // to keep this linear for a file with a hundred thousand findings.
    std::size_t const back = std::min<std::size_t>(among.size(), 64);
    return std::find(among.end() - static_cast<std::ptrdiff_t>(back), among.end(), diagnostic) !=
           among.end();
}

inline void Diagnostics::add(Diagnostic diagnostic) {
    bool is_raised = false;
    if (diagnostic.severity == Severity::warning) {
        if (judgement_.accepts(diagnostic.code)) {
            if (!is_known(diagnostic, accepted_)) accepted_.push_back(std::move(diagnostic));
            return;
        }
        is_raised = judgement_.holds_as_error(diagnostic.code);
        if (is_raised) diagnostic.severity = Severity::error;
    }
    if (diagnostic.severity == Severity::error) ++errors_met_;
    if (is_known(diagnostic, all_)) return;
    if (diagnostic.severity == Severity::error) ++errors_;
    if (is_raised) ++raised_;
    all_.push_back(std::move(diagnostic));
}

inline void Diagnostics::judge(Judgement judgement) {
    Diagnostics judged;
    judged.judgement_ = std::move(judgement);
    judged.add(*this);
    judged.errors_met_ = std::max(judged.errors_met_, errors_met_);
    *this = std::move(judged);
}

inline std::vector<AcceptedFindings> Diagnostics::accepted() const {
    std::vector<AcceptedFindings> result;
    for (Judgement::Accepted const& each : judgement_.accepted) {
        auto const count =
            std::count_if(accepted_.begin(), accepted_.end(),
                          [&](Diagnostic const& one) { return one.code == each.code; });
        if (count > 0) result.push_back({each.code, each.reason, static_cast<std::size_t>(count)});
    }
    return result;
}

inline void Diagnostics::error(Span where, Code code, std::string what, std::string help) {
    add(Diagnostic{Severity::error, code, std::move(what), where, {}, std::move(help)});
}

inline void Diagnostics::warn(Span where, Code code, std::string what, std::string help) {
    add(Diagnostic{Severity::warning, code, std::move(what), where, {}, std::move(help)});
}

inline void Diagnostics::error(Span where, Flaw const& flaw) {
    error(where, flaw.code, flaw.what, flaw.help);
}

inline void Diagnostics::add(Diagnostics const& others) {
    for (Diagnostic const& diagnostic : others.all_) add(diagnostic);
    for (Diagnostic const& diagnostic : others.accepted_) add(diagnostic);
}

template <class Follows> void Diagnostics::take_back(std::size_t before, Follows follows) {
    auto const first = all_.begin() + static_cast<std::ptrdiff_t>(std::min(before, all_.size()));
    auto const last = std::remove_if(first, all_.end(), [&](Diagnostic const& each) {
        return each.severity == Severity::error && follows(each);
    });
    errors_ -= static_cast<std::size_t>(all_.end() - last);
    all_.erase(last, all_.end());
}

inline std::vector<Diagnostic> Diagnostics::sorted() const {
    std::vector<Diagnostic> result = all_;
    std::stable_sort(result.begin(), result.end(), [](Diagnostic const& a, Diagnostic const& b) {
        return std::pair(!a.where.is_known(), a.where) < std::pair(!b.where.is_known(), b.where);
    });
    return result;
}

namespace diagnostic_detail {

inline std::string place(Span const& where, Sources const& sources) {
    if (!where.is_known()) return "groat";
    std::string result = printable(sources.name(where.file));
    if (where.line > 0) result += fmt::format(":{}:{}", where.line, where.column);
    return result;
}

/// The source line with carets under the span; at most `room` characters of it.
inline std::string excerpt(Span const& where, Sources const& sources) {
    constexpr std::size_t room = 96;
    std::string_view const line = sources.line(where.file, where.line);
    if (where.line == 0 || line.empty()) return {};
    std::vector<std::string> characters;
    std::size_t const column = where.column > 0 ? where.column - 1 : 0;
    std::size_t const first = column > room / 2 ? column - room / 2 : 0;
    std::size_t index = 0;
    bool more = false;
    for (std::size_t at = 0; at < line.size(); ++index) {
        std::size_t const length = character_at(line, at).length;
        if (index >= first) {
            if (characters.size() == room) {
                more = true;
                break;
            }
            characters.push_back(printable(line.substr(at, length)));
        }
        at += length;
    }
    if (first >= index) return {};
    std::string text;
    std::string carets;
    std::size_t const begin = column - first;
    std::size_t const end = begin + std::max<std::size_t>(where.length, 1);
    for (std::size_t i = 0; i < characters.size(); ++i) {
        text += characters[i];
        if (i < end) carets.append(display_width(characters[i]), i >= begin ? '^' : ' ');
    }
    if (begin >= characters.size()) carets.append(begin - characters.size(), ' ').append("^");
    std::string const number = fmt::format("{}", where.line);
    return fmt::format("  {} | {}{}{}\n  {} | {}{}\n", number, first > 0 ? "…" : "", text,
                       more ? "…" : "", std::string(number.size(), ' '), first > 0 ? " " : "",
                       carets);
}

} // namespace diagnostic_detail

inline std::string render(Diagnostic const& diagnostic, Sources const& sources) {
    std::string text = fmt::format(
        "{}: {}: {}", diagnostic_detail::place(diagnostic.where, sources),
        diagnostic.severity == Severity::error ? "error" : "warning", printable(diagnostic.what));
    if (!diagnostic.code.empty()) text += fmt::format(" [{}]", diagnostic.code.text());
    text += '\n';
    text += diagnostic_detail::excerpt(diagnostic.where, sources);
    for (Diagnostic::Note const& note : diagnostic.notes) {
        text += fmt::format("  note: {}", printable(note.text));
        if (note.where.is_known())
            text += fmt::format(" ({})", diagnostic_detail::place(note.where, sources));
        text += '\n';
    }
    if (!diagnostic.help.empty()) text += fmt::format("  help: {}\n", printable(diagnostic.help));
    return text;
}

inline std::string render(Diagnostics const& diagnostics, Sources const& sources) {
    std::string text;
    for (Diagnostic const& diagnostic : diagnostics.sorted()) {
        if (!text.empty()) text += '\n';
        text += render(diagnostic, sources);
    }
    return text;
}

} // namespace groat
