#pragma once

#include <groat/desk/deliver.hpp>

#include <groat/base/linkage.hpp>
#include <groat/desk/folder_list.hpp>

#include <fmt/format.h>

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <memory>
#include <system_error>

namespace groat::desk {

namespace deliver_detail {

namespace fs = std::filesystem;

/// Empty, or why the file could not be written; then it is not there.
inline std::string write_file(std::string const& file, std::string_view text) {
    auto const failed = [&](int reason) {
        std::error_code error;
        fs::remove(file, error);
        return std::string(std::strerror(reason));
    };
    std::unique_ptr<std::FILE, int (*)(std::FILE*)> stream(std::fopen(file.c_str(), "wb"),
                                                           &std::fclose);
    if (!stream) return std::strerror(errno);
    if (std::fwrite(text.data(), 1, text.size(), stream.get()) != text.size()) return failed(errno);
    return std::fclose(stream.release()) == 0 ? std::string() : failed(errno);
}

inline std::string list_of(std::vector<File> const& files, std::string const& heading) {
    std::string list = heading + '\n';
    for (File const& each : files) list += list_entry(each.path, each.text) + '\n';
    return list;
}

inline std::string text_of(fs::path const& file) {
    std::ifstream stream(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(stream), {}};
}

/// Empty if everything in the folder is as `deliver_folder` has put it there, else what would be lost.
inline std::string loss_in(fs::path const& folder, std::string const& heading) {
    auto const list = FolderList::read(text_of(folder / list_name), heading);
    if (!list)
        return fmt::format("'{}' in it was changed since, and that would be lost", list_name);
    std::error_code error;
    for (fs::recursive_directory_iterator each(folder, error), end; !error && each != end;
         each.increment(error)) {
        std::string const path = each->path().lexically_relative(folder).generic_string();
        if (!list->names(path))
            return fmt::format("'{}' in it is not one of its sheets, and would be lost", path);
        fs::file_type const type = each->symlink_status(error).type();
        if (type == fs::file_type::directory || path == list_name) continue;
        bool const is_same =
            type == fs::file_type::regular && list->holds(path, text_of(each->path()));
        if (!is_same)
            return fmt::format("'{}' in it was changed since, and that would be lost", path);
    }
    return error ? fmt::format("it cannot be looked through: {}", error.message()) : std::string();
}

/// Empty, or why it was not written.
inline std::string write_folder(std::vector<File> const& files, std::string const& folder,
                                std::string const& heading) {
    std::error_code error;
    fs::create_directories(folder, error);
    for (File const& each : files) {
        if (!error)
            fs::create_directory(fs::path(folder) / fs::path(each.path).parent_path(), error);
        if (error) return error.message();
        std::string const reason = write_file(folder + '/' + each.path, each.text);
        if (!reason.empty()) return reason;
    }
    return write_file(fmt::format("{}/{}", folder, list_name), list_of(files, heading));
}

} // namespace deliver_detail

GROAT_INLINE std::string deliver(std::string_view text, std::string const& file, bool may_replace) {
    namespace fs = std::filesystem;
    std::error_code error;
    if (fs::is_directory(file, error))
        return fmt::format("cannot write '{}': it is a folder", file);
    fs::file_status const status = fs::symlink_status(file, error);
    if (fs::exists(status) && !fs::is_regular_file(status))
        return fmt::format("cannot write '{}': it is a {}, not a plain file", file,
                           fs::is_symlink(status) ? "link" : "device");
    if (!may_replace && fs::exists(status))
        return fmt::format("'{}' exists; say --replace to write over it", file);
    std::string const draft = file + ".part";
    std::string reason = deliver_detail::write_file(draft, text);
    if (reason.empty()) {
        fs::rename(draft, file, error);
        if (!error) return {};
        reason = error.message();
        fs::remove(draft, error);
    }
    return fmt::format("cannot write '{}': {}", file, reason);
}

GROAT_INLINE std::string deliver_folder(std::vector<File> const& files, std::string const& named,
                                        std::string const& heading, bool may_replace) {
    namespace fs = std::filesystem;
    std::string folder = named;
    while (folder.size() > 1 && folder.back() == '/') folder.pop_back();
    auto const failed = [&](std::string const& reason) {
        return fmt::format("cannot write '{}': {}", folder, reason);
    };
    std::string const last = fs::path(folder).filename().string();
    if (last.empty() || last == "." || last == "..")
        return failed("this names no folder that could be written anew\n"
                      "  help: name one, such as --out to-send");
    std::error_code error;
    fs::file_status const status = fs::symlink_status(folder, error);
    bool const is_there = fs::exists(status);
    if (is_there && !fs::is_directory(status))
        return failed(
            fmt::format("it is a {}, not a folder", fs::is_symlink(status) ? "link" : "file"));
    if (is_there && !fs::is_empty(folder, error)) {
        if (!may_replace) return fmt::format("'{}' exists; say --replace to write it anew", folder);
        std::string const loss = deliver_detail::loss_in(folder, heading);
        if (!loss.empty())
            return failed(loss + "\n  help: move it elsewhere, or name another folder");
    }
    std::string const draft = folder + ".part";
    std::string const old = folder + ".old";
    for (std::string const& each : {draft, old})
        if (fs::exists(fs::symlink_status(each, error)))
            return failed(
                fmt::format("'{}' is in the way\n  help: if it is none of yours, an earlier "
                            "run was broken off and left it: take it away",
                            each));
    std::string reason = deliver_detail::write_folder(files, draft, heading);
    if (reason.empty() && is_there) {
        fs::rename(folder, old, error);
        if (error) reason = error.message();
    }
    if (reason.empty()) {
        fs::rename(draft, folder, error);
        if (error) {
            reason = error.message();
            if (is_there) fs::rename(old, folder, error);
            if (is_there && error) reason += fmt::format("; what was there is in '{}'", old);
        }
    }
    if (!reason.empty()) {
        fs::remove_all(draft, error);
        return failed(reason);
    }
    if (is_there) fs::remove_all(old, error);
    if (is_there && error)
        return fmt::format("'{}' is written, but what was there before cannot be taken away ({})\n"
                           "  help: it is in '{}'; take that away yourself",
                           folder, error.message(), old);
    return {};
}

} // namespace groat::desk
