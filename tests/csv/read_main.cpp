// Reads a CSV file and prints its rows as JSON lines, for compare.py:  read_csv FILE DELIMITER
// What is wrong goes to standard error; the exit code is then 1.
#include <groat/yaml/csv.hpp>

#include <nlohmann/json.hpp>

#include <cstdio>
#include <fstream>
#include <iterator>

int main(int argc, char** argv) {
    if (argc != 3) return 2;
    std::ifstream stream(argv[1], std::ios::binary);
    std::string bytes{std::istreambuf_iterator<char>(stream), {}};
    groat::Sources sources;
    groat::Diagnostics found;
    auto const file =
        groat::add_csv(sources, argv[1], std::move(bytes), groat::Encoding::utf_8, found);
    if (file) {
        groat::CsvReader reader(sources, *file, argv[2], 0, found);
        for (groat::CsvRow row; reader.next(row);) {
            nlohmann::json line = nlohmann::json::array();
            for (groat::CsvCell const& cell : row.cells) line.push_back(cell.text);
            std::puts(line.dump().c_str());
        }
    }
    std::fputs(groat::render(found, sources).c_str(), stderr);
    return found.has_errors() ? 1 : 0;
}
