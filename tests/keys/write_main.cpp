// Writes what is made from the shapes of books and sheets: the schemas into lib/schema, the manual's tables into
// cli/manual. `write_keys TOP --check` only says what differs.
#include <groat/books/shape_schema.hpp>
#include <groat/books/shape_text.hpp>
#include <groat/paper/sheet_schema.hpp>
#include <groat/paper/sheet_text.hpp>
#include <groat/sheets/shape_sheets.hpp>

#include <fstream>
#include <iostream>
#include <sstream>
#include <string>

namespace {

std::string text_of(std::string const& path) {
    std::ifstream file(path, std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

} // namespace

int main(int count, char** words) {
    if (count < 2) return 2;
    std::string const top = words[1];
    bool const only_checks = count > 2;
    int different = 0;
    auto const put = [&](std::string const& name, std::string const& text) {
        std::string const path = top + "/" + name;
        if (text_of(path) == text) return;
        ++different;
        if (only_checks)
            std::cout << name << " is not what the shapes say: run write_keys\n";
        else
            std::ofstream(path, std::ios::binary) << text;
    };
    for (groat::BookFile const& file : groat::book_files)
        put("lib/schema/" + std::string(file.name) + ".schema.json", groat::schema_of(file));
    put("lib/schema/sheet.schema.json", groat::schema_of(groat::sheet_shape_list));
    put("cli/manual/figures.md", groat::manual_of_sheets(groat::sheet_shape_list));
    put("cli/manual/books.md", groat::manual_of_books());
    return only_checks && different > 0 ? 1 : 0;
}
