// Misspells every key of every sample, one at a time, and reads the books anew: there is one error, at the key,
// and its near miss is what stood there. Then writes nonsense for every value: there is one error at most.
// `misspell_keys TOP [N]` tries each key of each kind of file, and of the other places every Nth.
#include <groat/books/import_map.hpp>
#include <groat/books/read_books.hpp>
#include <groat/books/shape_files.hpp>
#include <groat/yaml/tree.hpp>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <set>
#include <sstream>
#include <string>
#include <vector>

namespace {

using namespace groat;
namespace fs = std::filesystem;

struct File {
    std::string name;
    BookFile const* kind;
    std::string text;
};

std::string text_of(fs::path const& path) {
    std::ifstream file(path, std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

/// By its folder, else by its own name.
BookFile const* kind_of(fs::path const& name) {
    std::string const word = name.has_parent_path() ? name.begin()->string() : name.stem().string();
    for (BookFile const& kind : book_files)
        if (kind.name == word) return &kind;
    return nullptr;
}

std::vector<File> files_of(fs::path const& folder) {
    std::vector<File> files;
    for (auto const& each : fs::recursive_directory_iterator(folder)) {
        fs::path const name = fs::relative(each.path(), folder);
        if (each.path().extension() != ".yaml") continue;
        BookFile const* const kind = kind_of(name);
        if (kind == nullptr) {
            std::cout << "no kind of file: " << name << '\n';
            std::exit(1);
        }
        files.push_back({name.string(), kind, text_of(each.path())});
    }
    std::sort(files.begin(), files.end(), [](File const& a, File const& b) {
        bool const a_is_first = a.kind == book_files;
        bool const b_is_first = b.kind == book_files;
        if (a_is_first != b_is_first) return a_is_first;
        return a.name < b.name;
    });
    return files;
}

Shelf shelf_of(BookFile const& kind) {
    constexpr std::string_view names[shelf_count] = {
        "shop",  "ingredients", "supplies", "prices", "purchases", "formulas", "orders",
        "stock", "scenarios",   "yields",   "runs",   "menus",     "words"};
    for (std::size_t i = 0; i < shelf_count; ++i)
        if (names[i] == kind.name) return static_cast<Shelf>(i);
    std::cout << "no shelf for " << kind.name << '\n';
    std::exit(1);
}

/// What is found in a folder where one file says `text` in place of its own.
std::vector<Diagnostic> errors_in(std::vector<File> const& files, File const* changed,
                                  std::string const& text) {
    Sources sources;
    BookReader reader(sources);
    for (bool const is_words : {true, false})
        for (File const& file : files)
            if (file.kind->name != "import" && (file.kind->name == "words") == is_words)
                reader.read(shelf_of(*file.kind), file.name, &file == changed ? text : file.text);
    Book const book = reader.finish();
    Diagnostics found = reader.found();
    for (File const& file : files) {
        if (file.kind->name != "import") continue;
        std::uint32_t const index = sources.add(file.name, &file == changed ? text : file.text);
        Tree const tree = read_tree(sources, index, found);
        Reading const reading{found, book.shop.currency, book.shop.measures};
        ImportMap map = read_import_map(tree.documents.front(), reading);
        link_import_map(map, book, found);
    }
    std::vector<Diagnostic> errors;
    for (Diagnostic const& each : found.sorted())
        if (each.severity == Severity::error) errors.push_back(each);
    return errors;
}

/// A key of a shape, where it stands, and its value.
struct Place {
    std::string key;
    Span where;
    Node const* value;
};

/// The mapping's shape among the forms of its value; nothing where its keys are names.
Shape const* shape_of(Node const& node, Value const& value) {
    Shape const* best = nullptr;
    for (Form const& form : value.all()) {
        if (form.shape == nullptr) continue;
        bool const has_all = std::all_of(node.keys.begin(), node.keys.end(), [&](Key const& key) {
            return form.shape->find(key.text) != Shape::none;
        });
        if (has_all && best == nullptr) best = form.shape;
    }
    return best;
}

void collect(Node const& node, Value const& value, std::vector<Place>& places, std::size_t& names) {
    if (node.is_sequence())
        for (Form const& form : value.all())
            if (form.kind == ValueKind::list)
                for (Node const& each : node.items) collect(each, *form.of, places, names);
    if (!node.is_mapping()) return;
    if (Shape const* const shape = shape_of(node, value)) {
        for (std::size_t i = 0; i < node.keys.size(); ++i) {
            places.push_back({node.keys[i].text, node.keys[i].where, &node.items[i]});
            collect(node.items[i], shape->keys[shape->find(node.keys[i].text)].value, places,
                    names);
        }
        return;
    }
    for (Form const& form : value.all())
        if (form.kind == ValueKind::names) {
            names += node.keys.size();
            for (Node const& each : node.items) collect(each, *form.of, places, names);
        }
}

/// The word with two letters swapped, as near its middle as they differ; a word of one letter doubled.
std::string misspelt(std::string word) {
    for (std::size_t i = word.size() / 2; i > 0; --i)
        if (word[i] != word[i - 1] && word[i] != ' ' && word[i - 1] != ' ') {
            std::swap(word[i], word[i - 1]);
            return word;
        }
    return word + word;
}

/// `text` with another word at a place.
std::string with_word(std::string const& text, Span where, std::string const& old,
                      std::string const& word) {
    std::size_t line_begin = 0;
    for (std::uint32_t line = 1; line < where.line; ++line)
        line_begin = text.find('\n', line_begin) + 1;
    std::size_t at = line_begin;
    for (std::uint32_t column = 1; column < where.column; ++column)
        at += character_at(text, at).length;
    std::string result = text;
    if (result.compare(at, old.size(), old) != 0) return {};
    return result.replace(at, old.size(), word);
}

void tell(std::string_view sample, File const& file, Place const& place, std::string_view slip,
          std::vector<Diagnostic> const& errors) {
    std::cout << sample << '/' << file.name << ':' << place.where.line << ':' << place.where.column
              << ": '" << place.key << "' with '" << slip << "'\n";
    for (Diagnostic const& each : errors)
        std::cout << "    " << each.where.line << ':' << each.where.column << ' ' << each.what
                  << " [" << each.code.text() << "] " << each.help << '\n';
}

/// Whether a slip makes another key of the books, which may stand there.
bool becomes_another(std::string const& word) {
    return std::any_of(std::begin(book_files), std::end(book_files), [&](BookFile const& file) {
        auto const uses = shape_uses(&file, &file + 1);
        return std::any_of(uses.begin(), uses.end(), [&](ShapeUse const& use) {
            return use.shape->find(word) != Shape::none;
        });
    });
}

} // namespace

int main(int count, char** words) {
    if (count < 2) return 2;
    std::size_t every = count > 2 ? std::stoul(words[2]) : 1;
    std::size_t tried = 0;
    std::size_t names = 0;
    std::size_t wrong = 0;
    std::size_t seen = 0;
    std::set<std::string> met;
    for (auto const* sample : {"samples/starter", "samples/backstube", "samples/bakery"}) {
        std::vector<File> const files = files_of(fs::path(words[1]) / sample);
        if (auto const errors = errors_in(files, nullptr, {}); !errors.empty()) {
            std::cout << sample << " has errors: " << errors.front().what << '\n';
            return 1;
        }
        for (File const& file : files) {
            Sources sources;
            Diagnostics found;
            std::vector<Place> places;
            Tree const tree = read_tree(sources, sources.add(file.name, file.text), found);
            for (Node const& document : tree.documents)
                collect(document, file.kind->value, places, names);
            for (Place const& place : places) {
                // each key of each kind of file once, and of the rest every so many
                bool const is_new = met.insert(std::string(file.kind->name) + place.key).second;
                if (!is_new && ++seen % every != 0) continue;
                std::string const slip = misspelt(place.key);
                std::string const text = with_word(file.text, place.where, place.key, slip);
                if (text.empty() || becomes_another(slip)) {
                    std::cout << "not tried: " << file.name << ' ' << place.key << " as " << slip
                              << '\n';
                    continue;
                }
                ++tried;
                auto const errors = errors_in(files, &file, text);
                bool const is_right = errors.size() == 1 && errors[0].code == "unknown-key" &&
                                      errors[0].where.line == place.where.line &&
                                      errors[0].where.column == place.where.column &&
                                      errors[0].help == "did you mean '" + place.key + "'?";
                if (!is_right) {
                    ++wrong;
                    tell(sample, file, place, slip, errors);
                }
                Node const& value = *place.value;
                if (!value.is_scalar() || !value.is_verbatim || value.is_quoted) continue;
                auto others =
                    errors_in(files, &file, with_word(file.text, value.where, value.text, "'?!'"));
                // where it was the name of a thing, all that ask for the thing by it are told, and rightly
                std::erase_if(others, [&](Diagnostic const& each) {
                    return each.what.find("'" + value.text + "'") != std::string::npos;
                });
                if (others.size() <= 1) continue;
                ++wrong;
                tell(sample, file, place, "?!", others);
            }
        }
    }
    std::cout << tried << " keys misspelt, " << wrong
              << " not answered by one error and its near miss; " << names << " names are free\n";
    return wrong == 0 ? 0 : 1;
}
