/// A sheet for programs: JSON in which every figure stands twice, rounded as on paper and exact as `n/d` in
/// lowest terms. The only header that needs nlohmann-json; link `groat::json`.
#pragma once

#include <groat/paper/sheet.hpp>

#include <nlohmann/json.hpp>

#include <string>

namespace groat {

/// An object with `sheet`, `for`, `title`, `letterhead` and the sections under their keys in order: facts as an
/// object, a table as a list of row objects, remarks as a list of texts. A figure is
/// `{"rounded": "31.50", "exact": "63/2", "unit": "USD"}`; what is not there is null.
[[nodiscard]] std::string to_json(Sheet const& sheet);

// ---------------------------------------------------------------------------------------------------

namespace json_drawing {

using Json = nlohmann::ordered_json;

inline Json value_of(Cell const& cell) {
    if (auto const* words = std::get_if<std::string>(&cell)) return *words;
    if (auto const* figure = std::get_if<Figure>(&cell))
        return {
            {"rounded", figure->shown}, {"exact", exact(figure->exact)}, {"unit", figure->unit}};
    return nullptr;
}

inline Json value_of(Facts const& facts) {
    Json result = Json::object();
    for (Fact const& fact : facts.facts) result[fact.key] = value_of(fact.value);
    return result;
}

inline Json value_of(Remarks const& remarks) { return remarks.lines; }

inline Json value_of(Table const& table) {
    constexpr std::string_view kinds[] = {"line", "subtotal", "total"};
    Json rows = Json::array();
    for (Row const& row : table.rows) {
        Json entry = Json::object();
        entry["row"] = kinds[static_cast<std::size_t>(row.kind)];
        if (!row.key.empty()) entry["key"] = row.key;
        for (std::size_t i = 0; i < table.columns.size() && i < row.cells.size(); ++i)
            if (!table.columns[i].is_bar) entry[table.columns[i].key] = value_of(row.cells[i]);
        rows.push_back(std::move(entry));
    }
    return rows;
}

} // namespace json_drawing

inline std::string to_json(Sheet const& sheet) {
    using json_drawing::Json;
    Json document = Json::object();
    document["sheet"] = sheet.kind;
    document["for"] = sheet.audience;
    document["title"] = sheet.title;
    document["letterhead"] = sheet.letterhead;
    for (Section const& section : sheet.sections)
        std::visit(
            [&](auto const& each) {
                // some keys are names from the books: one that is taken already gets a number
                std::string key = each.key;
                for (int i = 2; document.contains(key); ++i)
                    key = each.key + " " + std::to_string(i);
                document[key] = json_drawing::value_of(each);
            },
            section);
    // Bytes that are not UTF-8 cannot come from the readers; from elsewhere they are replaced, not thrown at.
    return document.dump(2, ' ', false, Json::error_handler_t::replace) + '\n';
}

} // namespace groat
