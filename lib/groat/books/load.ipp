#pragma once

#include <groat/books/load.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/name.hpp>
#include <groat/books/file_text.hpp>
#include <groat/books/read_books.hpp>
#include <groat/books/read_look.hpp>
#include <groat/yaml/text_check.hpp>

#include <algorithm>
#include <fstream>
#include <optional>
#include <string>
#include <string_view>
#include <system_error>
#include <utility>
#include <vector>

namespace groat {

namespace load_detail {

namespace fs = std::filesystem;

struct Place {
    Shelf shelf;
    std::string_view name; ///< of the folder, and with `.yaml` of the file
    bool has_file;
    bool has_folder;
};
inline constexpr Place places[] = {
    {Shelf::words, "words", true, false},
    {Shelf::shop, "shop", true, false},
    {Shelf::ingredients, "ingredients", true, true},
    {Shelf::supplies, "supplies", true, true},
    {Shelf::prices, "prices", false, true},
    {Shelf::purchases, "purchases", false, true},
    {Shelf::formulas, "formulas", false, true},
    {Shelf::orders, "orders", false, true},
    {Shelf::stock, "stock", true, false},
    {Shelf::scenarios, "scenarios", true, false},
    {Shelf::yields, "yields", true, true},
    {Shelf::runs, "runs", false, true},
    {Shelf::menus, "menus", false, true},
};

class Loader {
public:
    Loader(fs::path const& folder, Sources& sources)
        : folder_(folder), sources_(sources), reader_(sources) {}

    Loaded run() {
        std::error_code error;
        if (!fs::is_directory(folder_, error)) {
            unreadable(folder_.string(),
                       fs::exists(folder_, error) ? "this is not a folder"
                                                  : "there is no such folder",
                       "name a folder of books with --books");
            reader_.has_gap(Shelf::shop);
            return finish();
        }
        bool const has_shop = fs::exists(fs::symlink_status(folder_ / "shop.yaml", error));
        for (Place const& place : places) {
            std::string const name(place.name);
            if (place.has_file && is_there(name + ".yaml")) read_file(place.shelf, name + ".yaml");
            if (place.has_folder && is_there(name)) read_folder(place.shelf, name);
        }
        std::size_t const errors = reader_.found().errors_met();
        read_logo();
        if (reader_.found().errors_met() > errors) reader_.doubt(Shelf::shop);
        if (!has_shop) {
            reader_.has_gap(Shelf::shop);
            unreadable(
                "shop.yaml", "there is no shop.yaml in this folder",
                "name a folder of books with --books, or write one that begins with 'shop: a name' "
                "and 'currency: USD'");
        } else {
            warn_of_strays();
        }
        return finish();
    }

private:
    [[nodiscard]] bool is_there(std::string const& name) const {
        std::error_code error;
        return fs::exists(fs::symlink_status(folder_ / name, error));
    }

    /// A finding about a file or folder as a whole.
    Span whole(std::string const& name) { return Span{sources_.add(name, {})}; }

    void unreadable(std::string const& name, std::string what, std::string help = {}) {
        is_unreadable_ = true;
        reader_.found().error(whole(name), "unreadable", std::move(what), std::move(help));
    }

    void read_file(Shelf shelf, std::string const& name) {
        auto const fail = [&](std::string what, std::string help = {}) {
            reader_.has_gap(shelf);
            unreadable(name, std::move(what), std::move(help));
        };
        std::error_code error;
        fs::file_status const status = fs::status(folder_ / name, error);
        if (status.type() == fs::file_type::not_found)
            return fail("this is a link to a file that is not there");
        if (fs::is_directory(status))
            return fail("this is a folder, not a file", "rename it, or take it out of the books");
        if (!fs::is_regular_file(status))
            return fail(error ? fmt::format("the file cannot be read ({})", error.message())
                              : "this is not a file");
        auto text = bytes_of(folder_ / name, most_bytes);
        if (!text) return fail("the file cannot be read", "check who may read it");
        reader_.read(shelf, name, std::move(*text));
    }

    void read_logo() {
        Logo& logo = reader_.logo();
        if (logo.file.empty()) return;
        auto const fail = [&](std::string what, std::string help) {
            reader_.found().error(logo.origin, "bad-logo", std::move(what), std::move(help));
        };
        fs::path const file = folder_ / logo.file;
        std::error_code error;
        fs::file_status const status = fs::status(file, error);
        if (!fs::exists(status)) {
            auto const near = name_near(logo.file);
            return fail(fmt::format("there is no '{}' in the folder of books", logo.file),
                        near ? fmt::format("did you mean '{}'?", *near)
                             : "put the picture there, or take 'logo' out");
        }
        if (!is_within(file))
            return reader_.found().error(logo.origin, read_look_detail::outside(logo.file));
        if (!fs::is_regular_file(status))
            return fail(fmt::format("'{}' is {}", logo.file,
                                    fs::is_directory(status) ? "a folder" : "not a file"),
                        "name a picture, SVG or PNG");
        auto const bytes = bytes_of(file, most_logo_bytes);
        if (!bytes)
            return fail(fmt::format("'{}' cannot be read", logo.file), "check who may read it");
        auto read = with_picture(logo, *bytes);
        if (!read) return reader_.found().error(logo.origin, read.error());
        logo = std::move(*read);
        if (is_cut_off(*bytes))
            reader_.found().warn(
                logo.origin, "logo-broken",
                fmt::format("the end of '{}' is missing, so it may not show", logo.file),
                "save or copy it once more, and look at it in a browser");
        if (std::string const told = told_beside(*bytes); !told.empty())
            reader_.found().warn(
                logo.origin, "logo-tells",
                fmt::format("'{}' says more than it shows ({}), and goes to every client",
                            logo.file, told),
                "save it as plain SVG or as PNG without metadata: an editor's own fields may name "
                "folders of your disk");
    }

    /// Whether a file lies in the folder of books once all links are followed.
    [[nodiscard]] bool is_within(fs::path const& file) const {
        std::error_code error;
        fs::path const within =
            fs::canonical(file, error).lexically_relative(fs::canonical(folder_, error));
        return !error && !within.empty() && *within.begin() != "..";
    }

    /// A picture beside the one that was looked for, with a name like it.
    [[nodiscard]] std::optional<std::string> name_near(std::string const& file) const {
        fs::path const beside = fs::path(file).parent_path();
        std::vector<std::string> names;
        std::error_code error;
        for (fs::directory_iterator each(folder_ / beside, error), end; !error && each != end;
             each.increment(error)) {
            std::string const ending = each->path().extension().string();
            if (ending == ".svg" || ending == ".png")
                names.push_back((beside / each->path().filename()).string());
        }
        std::sort(names.begin(), names.end());
        return nearest_name(file, names);
    }

    void read_folder(Shelf shelf, std::string const& name) {
        std::error_code error;
        if (!fs::is_directory(folder_ / name, error)) {
            reader_.has_gap(shelf);
            return unreadable(
                name, "this is not a folder",
                fmt::format("make it one, and put files into it as {}/any name.yaml", name));
        }
        std::vector<std::string> const entries = entries_of(folder_ / name, name, shelf);
        for (std::string const& entry : entries) {
            if (is_yaml(entry))
                read_file(shelf, name + '/' + entry);
            else if (is_nearly_yaml(entry))
                warn_unread(name + '/' + entry, "rename it so that it ends in .yaml");
            else if (fs::is_directory(folder_ / name / entry, error))
                warn_unread(name + '/' + entry,
                            fmt::format("only files in {} itself are read", name));
        }
    }

    /// The names in a folder in order, hidden ones left out.
    std::vector<std::string> entries_of(fs::path const& folder, std::string const& name,
                                        Shelf shelf) {
        std::vector<std::string> entries;
        std::error_code error;
        for (fs::directory_iterator each(folder, error), end; !error && each != end;
             each.increment(error)) {
            std::string entry = each->path().filename().string();
            if (!entry.starts_with('.')) entries.push_back(std::move(entry));
        }
        if (error) {
            reader_.has_gap(shelf);
            unreadable(name, fmt::format("the folder cannot be read ({})", error.message()));
        }
        std::sort(entries.begin(), entries.end());
        return entries;
    }

    static bool is_yaml(std::string_view name) { return name.ends_with(".yaml"); }
    /// `x.yml`, `x.YAML`: meant to be read, in all likelihood.
    static bool is_nearly_yaml(std::string_view name) {
        std::string ending(name.substr(std::min(name.rfind('.'), name.size())));
        for (char& c : ending)
            if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
        return !is_yaml(name) && (ending == ".yml" || ending == ".yaml");
    }

    void warn_unread(std::string const& name, std::string help) {
        reader_.found().warn(whole(name), "not-read", "this is not read", std::move(help));
    }

    void warn_of_strays() {
        std::vector<std::string> files;
        std::vector<std::string> folders;
        for (Place const& place : places) {
            if (place.has_file) files.push_back(std::string(place.name) + ".yaml");
            if (place.has_folder) folders.push_back(std::string(place.name));
        }
        for (std::string const& entry : entries_of(folder_, folder_.string(), Shelf::shop)) {
            if (is_nearly_yaml(entry)) {
                warn_unread(entry, "rename it so that it ends in .yaml");
            } else if (is_yaml(entry) &&
                       std::find(files.begin(), files.end(), entry) == files.end()) {
                std::string const stem = entry.substr(0, entry.size() - 5);
                auto const folder = nearest_name(stem, folders);
                auto const file = nearest_name(entry, files);
                warn_unread(
                    entry,
                    file ? fmt::format("did you mean '{}'?", *file)
                    : folder
                        ? fmt::format("did you mean to put it into the folder {}?", *folder)
                        : "price lists, receipts, formulas, orders and menus go into the folders "
                          "prices, purchases, formulas, orders and menus");
            }
        }
    }

    Loaded finish() {
        Loaded loaded;
        loaded.book = reader_.finish();
        loaded.diagnostics = std::move(reader_.found());
        loaded.unreadable = is_unreadable_;
        return loaded;
    }

    fs::path folder_;
    Sources& sources_;
    BookReader reader_;
    bool is_unreadable_ = false;
};

} // namespace load_detail

GROAT_INLINE Loaded load(std::filesystem::path const& folder, Sources& sources) {
    return load_detail::Loader(folder, sources).run();
}

} // namespace groat
