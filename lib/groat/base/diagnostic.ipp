#pragma once

#include <groat/base/diagnostic.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>

#include <fmt/format.h>

#include <utility>

namespace groat {

GROAT_INLINE bool Diagnostics::is_known(Diagnostic const& diagnostic,
                                        std::vector<Diagnostic> const& among) {
    // Neighbours repeat (one price missing in four worlds), far ones hardly do: a short look back is enough
    // to keep this linear for a file with a hundred thousand findings.
    std::size_t const back = std::min<std::size_t>(among.size(), 64);
    return std::find(among.end() - static_cast<std::ptrdiff_t>(back), among.end(), diagnostic) !=
           among.end();
}

GROAT_INLINE void Diagnostics::add(Diagnostic diagnostic) {
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

GROAT_INLINE void Diagnostics::judge(Judgement judgement) {
    Diagnostics judged;
    judged.judgement_ = std::move(judgement);
    judged.add(*this);
    judged.errors_met_ = std::max(judged.errors_met_, errors_met_);
    *this = std::move(judged);
}

GROAT_INLINE std::vector<AcceptedFindings> Diagnostics::accepted() const {
    std::vector<AcceptedFindings> result;
    for (Judgement::Accepted const& each : judgement_.accepted) {
        auto const count =
            std::count_if(accepted_.begin(), accepted_.end(),
                          [&](Diagnostic const& one) { return one.code == each.code; });
        if (count > 0) result.push_back({each.code, each.reason, static_cast<std::size_t>(count)});
    }
    return result;
}

GROAT_INLINE void Diagnostics::error(Span where, Code code, std::string what, std::string help) {
    add(Diagnostic{Severity::error, code, std::move(what), where, {}, std::move(help)});
}

GROAT_INLINE void Diagnostics::warn(Span where, Code code, std::string what, std::string help) {
    add(Diagnostic{Severity::warning, code, std::move(what), where, {}, std::move(help)});
}

GROAT_INLINE void Diagnostics::error(Span where, Flaw const& flaw) {
    error(where, flaw.code, flaw.what, flaw.help);
}

GROAT_INLINE void Diagnostics::add(Diagnostics const& others) {
    for (Diagnostic const& diagnostic : others.all_) add(diagnostic);
    for (Diagnostic const& diagnostic : others.accepted_) add(diagnostic);
}

GROAT_INLINE std::vector<Diagnostic> Diagnostics::sorted() const {
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

GROAT_INLINE std::string render(Diagnostic const& diagnostic, Sources const& sources) {
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

GROAT_INLINE std::string render(Diagnostics const& diagnostics, Sources const& sources) {
    std::string text;
    for (Diagnostic const& diagnostic : diagnostics.sorted()) {
        if (!text.empty()) text += '\n';
        text += render(diagnostic, sources);
    }
    return text;
}

} // namespace groat
