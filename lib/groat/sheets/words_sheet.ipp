#pragma once

#include <groat/sheets/words_sheet.hpp>

#include <groat/base/linkage.hpp>
#include <groat/sheets/shape_books.hpp>

#include <string>

namespace groat {

GROAT_INLINE Sheet words_sheet(Words const& words) {
    Sheet sheet{"words", "maker", {}, "Words of the sheets that leave the house"};
    Table table =
        table_of<sheet_shapes::words::words>("", {{"word", "Key"}, {"english", "English"}});
    bool const is_other = !words.is_english();
    if (is_other) add_column<sheet_shapes::words::words>(table, {"text", "In " + words.language()});
    for (std::size_t i = 0; i < word_count; ++i) {
        std::string const key(word_table[i].key);
        table.rows.push_back({key, {key, std::string(word_table[i].english())}});
        if (is_other) table.rows.back().cells.emplace_back(std::string(words.at(i)));
    }
    sheet.sections.emplace_back(std::move(table));
    sheet.sections.emplace_back(remarks_of<sheet_shapes::words::how>(
        "Your own",
        {"Write what you want said otherwise into words.yaml: 'language: fr', and below "
         "'words:' a line for each key, as 'total: Total'. What stands in braces is filled "
         "in. Words that you leave out stay as they are shipped, else English."}));
    return sheet;
}

} // namespace groat
