#pragma once

#include <groat/yaml/tree.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>
#include <groat/yaml/repeated_keys.hpp>
#include <groat/yaml/text_check.hpp>
#include <groat/yaml/yaml_mishap.hpp>

#include <fmt/format.h>
#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/exceptions.h>
#include <yaml-cpp/parser.h>

#include <algorithm>
#include <istream>
#include <map>
#include <streambuf>
#include <string>
#include <string_view>
#include <utility>

namespace groat {

namespace tree_detail {

/// Thrown to leave the parser once a finding has been reported that makes the rest of a file unreadable.
struct Stop {};

/// A text as a stream, without a copy of it.
class ViewBuffer : public std::streambuf {
public:
    explicit ViewBuffer(std::string_view text) {
        char* const begin = const_cast<char*>(text.data()); // a get area is never written to
        setg(begin, begin, begin + text.size());
    }
};

/// How much of the bound on repetition a node takes, or more than `left` as soon as it is above that; and
/// how many levels there are in it.
struct Extent {
    std::size_t weight = 0;
    std::size_t levels = 0;
};
inline Extent extent(Node const& node, std::size_t left) {
    Extent all{1 + node.text.size() / 64, 0};
    for (Key const& key : node.keys) all.weight += key.text.size() / 64;
    for (Node const& item : node.items) {
        if (all.weight > left) break;
        Extent const part = extent(item, left - all.weight);
        all.weight += part.weight;
        all.levels = std::max(all.levels, part.levels);
    }
    if (!node.is_scalar() && !node.is_null()) ++all.levels;
    return all;
}

class Builder final : public YAML::EventHandler {
public:
    Builder(Sources const& sources, std::uint32_t file, std::size_t from, Diagnostics& found)
        : text_(sources.text(file)),
          from_(from),
          seen_(from),
          file_(file),
          places_(text_),
          found_(found) {}

    std::vector<Node> documents() { return std::move(documents_); }

    void OnDocumentStart(YAML::Mark const& mark) override {
        std::size_t const at = offset(mark);
        refuse_directives(at);
        if (begun_++ > 0 && !text_.substr(at).starts_with("---"))
            stop(
                span(at, 1), "bad-yaml", "this stands behind the end of what belongs together",
                "a further document begins with a line of ---; else check brackets and indentation above");
        seen_ = at;
        anchored_.clear();
        repeated_ = 0;
    }
    void OnDocumentEnd() override {}

    void OnNull(YAML::Mark const& mark, YAML::anchor_t anchor) override {
        Node node;
        std::size_t at = offset(mark);
        bool const is_written =
            at < text_.size() && (text_[at] == '~' || text_[at] == 'n' || text_[at] == 'N');
        if (is_key_next())
            stop(span(at, 1), "bad-yaml",
                 is_written ? "'null' is no name" : "a key is missing in front of the ':'",
                 is_written ? "put it into quotation marks if it is one" : "write 'key: value'");
        if (is_value_next()) {
            node.where = open_.back().node.keys.back().where;
            node.text = note_in_place_of_value();
        } else {
            // An empty item of a list: the parser only tells where the next thing begins.
            if (!is_written && !open_.empty())
                while (at > seen_ &&
                       (at >= text_.size() || is_blank(text_[at]) || at == offset(mark)))
                    --at;
            node.where = span(at, 1);
        }
        put(std::move(node), anchor);
    }

    void OnAlias(YAML::Mark const& mark, YAML::anchor_t anchor) override {
        std::size_t const at = offset(mark);
        std::size_t const end = std::min(text_.find_first_of(" \t\r\n,]}", at), text_.size());
        Span const where = span(at, end - at);
        auto const target = anchored_.find(anchor);
        if (target == anchored_.end())
            stop(where, "too-many-aliases", "an anchor holds a reference to itself",
                 "write the value out");
        Node copy = target->second;
        spend(copy, where);
        copy.where = where;
        copy.is_verbatim = false;
        put(std::move(copy), 0);
    }

    void OnScalar(YAML::Mark const& mark, std::string const& tag, YAML::anchor_t anchor,
                  std::string const& value) override {
        std::size_t const at = behind_properties(offset(mark));
        refuse_tag(tag, offset(mark));
        Node node;
        node.kind = Node::Kind::scalar;
        node.text = value;
        locate(node, at);
        if (is_key_next() && !node.is_quoted && value == "<<")
            stop(node.where, "merge-key", "'<<' is not read: what it merges would be out of sight",
                 "write the keys out");
        put(std::move(node), anchor);
    }

    void OnSequenceStart(YAML::Mark const& mark, std::string const& tag, YAML::anchor_t anchor,
                         YAML::EmitterStyle::value style) override {
        begin(Node::Kind::sequence, mark, tag, anchor, style);
    }
    void OnSequenceEnd() override { end(); }
    void OnMapStart(YAML::Mark const& mark, std::string const& tag, YAML::anchor_t anchor,
                    YAML::EmitterStyle::value style) override {
        begin(Node::Kind::mapping, mark, tag, anchor, style);
    }
    void OnMapEnd() override {
        drop_repeated_keys(open_.back().node, found_);
        end();
    }

    /// What the parser itself complained about.
    void mishap(YAML::Exception const& exception) {
        std::size_t at = exception.mark.is_null() ? text_.size() : offset(exception.mark);
        while (at > from_ && (at >= text_.size() || text_[at] == '\n' || text_[at] == '\r')) --at;
        std::size_t const line = text_.rfind('\n', at) + 1; // 0 where there is none
        std::size_t const end = std::min(text_.find_first_not_of(" \t", line), text_.size());
        bool const is_tabbed = text_.substr(line, end - line).find('\t') != std::string_view::npos;
        YamlMishap const meaning = yaml_mishap(exception.msg, is_tabbed);
        if (std::size_t const slash = text_.rfind('\\', at);
            meaning.is_escape && slash != std::string_view::npos)
            at = slash;
        Span const where = span(at, 1);
        Diagnostic diagnostic{Severity::error, "bad-yaml", meaning.what, where, {}, meaning.help};
        if (meaning.is_unclosed && !open_.empty() && open_.back().is_flow) {
            diagnostic.where = open_.back().node.where;
            diagnostic.notes.push_back({"reading could not go on here", where});
        }
        found_.add(std::move(diagnostic));
    }

    /// To be called when there are no more documents.
    void finish() { refuse_directives(text_.size()); }

private:
    struct Open {
        Node node;
        YAML::anchor_t anchor;
        bool is_flow;
    };

    static bool is_blank(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; }
    [[nodiscard]] std::size_t offset(YAML::Mark const& mark) const {
        return std::min(from_ + static_cast<std::size_t>(std::max(mark.pos, 0)), text_.size());
    }
    [[nodiscard]] Span span(std::size_t at, std::size_t bytes) const {
        auto const [line, column] = places_.at(at);
        return {file_, line, column,
                static_cast<std::uint32_t>(character_count(text_.substr(at, bytes)))};
    }
    [[noreturn]] void stop(Span where, Code code, std::string what, std::string help) {
        found_.error(where, code, std::move(what), std::move(help));
        throw Stop{};
    }

    [[nodiscard]] bool is_key_next() const {
        return !open_.empty() && open_.back().node.is_mapping() &&
               open_.back().node.keys.size() == open_.back().node.items.size();
    }
    [[nodiscard]] bool is_value_next() const {
        return !open_.empty() && open_.back().node.keys.size() > open_.back().node.items.size();
    }

    /// `#60 scoop` behind a key that was just read: a note to YAML, but hardly to who wrote it.
    [[nodiscard]] std::string note_in_place_of_value() const {
        std::size_t at = text_.find_first_not_of(" \t", seen_);
        if (at == std::string_view::npos || text_[at] != ':') return {};
        at = text_.find_first_not_of(" \t", at + 1);
        if (at == std::string_view::npos || at + 1 >= text_.size() || text_[at] != '#') return {};
        if (text_[at + 1] < '0' || text_[at + 1] > '9') return {};
        std::string_view const note =
            text_.substr(at, std::min(text_.find_first_of("\r\n", at), text_.size()) - at);
        return shortened(trimmed(note), 60);
    }

    /// Finds the scalar's text from byte `at` on and says whether it stands there as it is. yaml-cpp takes
    /// the end of the file for a closing quotation mark; that is noticed here.
    void locate(Node& node, std::size_t at) {
        char const first = at < text_.size() ? text_[at] : ' ';
        node.is_quoted = first == '"' || first == '\'';
        std::size_t const begin = at + (node.is_quoted ? 1 : 0);
        std::string_view const rest = text_.substr(std::min(begin, text_.size()));
        auto const [differs, same] =
            std::mismatch(node.text.begin(), node.text.end(), rest.begin(), rest.end());
        auto const length = static_cast<std::size_t>(differs - node.text.begin());
        node.is_verbatim = differs == node.text.end();
        seen_ = begin + length;
        if (node.is_quoted) {
            std::size_t close = begin;
            while (close < text_.size() && text_[close] != first)
                close += first == '"' && text_[close] == '\\' ? 2 : 1;
            while (first == '\'' && text_.substr(close).starts_with("''"))
                close = std::min(text_.find('\'', close + 2), text_.size());
            if (close >= text_.size())
                stop(span(at, 1), "bad-yaml", "this quotation mark is not closed",
                     fmt::format("write another {} behind the text", first));
            node.is_verbatim = node.is_verbatim && close == begin + length;
            seen_ = close + 1;
        }
        bool const is_block = !node.is_quoted && length == 0;
        node.where = span(
            at, is_block ? 1 : begin + length + (node.is_quoted && node.is_verbatim ? 1 : 0) - at);
    }

    /// Where a value begins, behind an anchor or a tag in front of it.
    [[nodiscard]] std::size_t behind_properties(std::size_t at) const {
        while (at < text_.size() && (text_[at] == '&' || text_[at] == '!')) {
            std::size_t const end = text_.find_first_of(" \t\r\n,]}", at);
            std::size_t const next =
                end == std::string_view::npos ? end : text_.find_first_not_of(" \t", end);
            if (next == std::string_view::npos || text_[next] == '\r' || text_[next] == '\n')
                return at;
            at = next;
        }
        return at;
    }

    void begin(Node::Kind kind, YAML::Mark const& mark, std::string const& tag,
               YAML::anchor_t anchor, YAML::EmitterStyle::value style) {
        std::size_t const at = offset(mark);
        refuse_tag(tag, at);
        seen_ = std::max(seen_, at);
        Span const where = span(behind_properties(at), 1);
        if (open_.size() >= most_levels) too_deep(where);
        Node node;
        node.kind = kind;
        node.where = where;
        open_.push_back({std::move(node), anchor, style == YAML::EmitterStyle::Flow});
    }

    void end() {
        Open closed = std::move(open_.back());
        open_.pop_back();
        put(std::move(closed.node), closed.anchor);
    }

    /// A finished node goes to where it belongs.
    void put(Node node, YAML::anchor_t anchor) {
        if (++values_ > most_values)
            stop(Span{file_}, "file-too-large",
                 fmt::format("the file has more than {} values", most_values),
                 "spread it over several files, or check whether it is the right one");
        if (anchor != 0) {
            spend(node, node.where);
            anchored_.insert_or_assign(anchor, node);
        }
        if (!open_.empty() && node.is_in_doubt) open_.back().node.is_in_doubt = true;
        if (open_.empty()) {
            if (!node.is_null()) documents_.push_back(std::move(node));
        } else if (is_key_next()) {
            // Not earlier: where a bracket is never closed, the parser takes all behind it for a key.
            if (!node.is_scalar())
                stop(
                    node.where, "complex-key",
                    "a list or a mapping stands where a name is expected",
                    "close the bracket before it, or put text that begins with [ or { into quotation marks");
            open_.back().node.keys.push_back({std::move(node.text), node.where});
        } else {
            open_.back().node.items.push_back(std::move(node));
        }
    }

    void spend(Node const& node, Span where) {
        Extent const size = extent(node, most_repeated - repeated_);
        repeated_ += size.weight;
        if (repeated_ > most_repeated)
            stop(where, "too-many-aliases",
                 fmt::format("references make this document grow beyond {} repeated values",
                             most_repeated),
                 "write the values out where they are needed");
        if (open_.size() + size.levels > most_levels) too_deep(where);
    }

    [[noreturn]] void too_deep(Span where) {
        stop(where, "too-deep",
             fmt::format("lists and mappings stand more than {} deep in one another", most_levels),
             "check the brackets and the indentation");
    }
    void refuse_tag(std::string const& tag, std::size_t at) {
        if (tag.empty() || tag == "?" || tag == "!") return;
        std::size_t const end = std::min(text_.find_first_of(" \t\r\n,]}", at), text_.size());
        stop(span(at, end - at), "tag",
             fmt::format("the tag '{}' is not read", text_.substr(at, end - at)),
             "leave it out; put text that begins with ! into quotation marks");
    }
    /// Lines of `%` between what was seen and `until` would be dropped without a word.
    void refuse_directives(std::size_t until) {
        for (std::size_t at = seen_; at < until; ++at) {
            bool const is_line_start = at == from_ || text_[at - 1] == '\n';
            if (is_line_start && text_[at] == '%' && !text_.substr(at).starts_with("%YAML "))
                stop(span(at, 1), "bad-yaml", "a line that begins with % is not read",
                     "begin a note with #");
            at = std::min(text_.find('\n', at), until - 1);
        }
    }

    std::string_view text_;
    std::size_t from_; ///< bytes in front of what the parser is given
    std::size_t seen_; ///< bytes up to here were part of something that was read
    std::uint32_t file_;
    Places places_;
    Diagnostics& found_;
    std::vector<Node> documents_;
    std::vector<Open> open_;
    std::map<YAML::anchor_t, Node> anchored_;
    std::size_t begun_ = 0;
    std::size_t repeated_ = 0;
    std::size_t values_ = 0;
};

} // namespace tree_detail

GROAT_INLINE Tree read_tree(Sources const& sources, std::uint32_t file, Diagnostics& found) {
    if (!is_readable_text(sources, file, found)) return {{}, true};
    Tree tree;
    std::string_view const text = sources.text(file);
    std::size_t const from = text.starts_with(byte_order_mark) ? byte_order_mark.size() : 0;
    tree_detail::ViewBuffer buffer(text.substr(from));
    std::istream stream(&buffer);
    tree_detail::Builder builder(sources, file, from, found);
    try {
        YAML::Parser parser(stream);
        while (parser.HandleNextDocument(builder)) {
        }
        builder.finish();
    } catch (tree_detail::Stop const&) {
        tree.is_cut_off = true; // reported where it was thrown
    } catch (YAML::Exception const& exception) {
        tree.is_cut_off = true;
        builder.mishap(exception);
    }
    tree.documents = builder.documents();
    return tree;
}

} // namespace groat
