/// What groat tells a user about what they wrote: where, what is wrong, and how to mend it. All findings
/// of a run are collected and shown together, in the order of the places they speak of.
#pragma once

#include <groat/base/judgement.hpp>
#include <groat/base/result.hpp>
#include <groat/base/source.hpp>

#include <algorithm>
#include <string>
#include <type_traits>
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

template <class Follows> void Diagnostics::take_back(std::size_t before, Follows follows) {
    auto const first = all_.begin() + static_cast<std::ptrdiff_t>(std::min(before, all_.size()));
    auto const last = std::remove_if(first, all_.end(), [&](Diagnostic const& each) {
        return each.severity == Severity::error && follows(each);
    });
    errors_ -= static_cast<std::size_t>(all_.end() - last);
    all_.erase(last, all_.end());
}

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/base/diagnostic.ipp>
#endif
