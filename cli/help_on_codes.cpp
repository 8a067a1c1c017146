#include "help.hpp"

#include <groat/base/codes.hpp>

#include <fmt/format.h>

namespace groat::cli {

namespace {

/// As it stands in the table, or in brackets behind a finding.
std::optional<std::string> explained(std::string_view word) {
    if (word.starts_with('[') && word.ends_with(']')) word = word.substr(1, word.size() - 2);
    auto const code = Code::find(word);
    if (!code) return std::nullopt;
    CodeEntry const& entry = code->entry();
    bool const is_error = entry.severity == Severity::error;
    std::string text =
        fmt::format("{}: {}\n\n  why it matters   {}\n  how to mend it   {}\n", entry.code,
                    is_error ? "an error" : "a warning", entry.why, entry.mend);
    if (!is_error)
        text += fmt::format("\nIf all is well as it is, say why in shop.yaml: accept: {{{}: 'the "
                            "reason'}}\n",
                            entry.code);
    return text;
}

} // namespace

HelpSource help_on_codes() {
    return {"a finding", explained, [] { return Code::all(); }};
}

} // namespace groat::cli
