#pragma once

#include <groat/paper/json.hpp>

#include <groat/base/linkage.hpp>
#include <groat/paper/sheet_shape.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>
#include <string_view>

namespace groat {

namespace json_detail {

GROAT_INLINE std::string of_one(std::string const& hundredths) {
    bool const has_sign = !hundredths.empty() && (hundredths[0] == '-' || hundredths[0] == '+');
    std::string digits = hundredths.substr(has_sign ? 1 : 0);
    std::size_t const point = std::min(digits.find('.'), digits.size());
    if (digits.empty() || digits.find_first_not_of("0123456789.") != std::string::npos)
        return hundredths;
    std::size_t whole = point;
    if (point < digits.size()) digits.erase(point, 1);
    while (whole < 3) {
        digits.insert(digits.begin(), '0');
        ++whole;
    }
    digits.insert(whole - 2, 1, '.');
    return (has_sign ? hundredths.substr(0, 1) : std::string()) + digits;
}

inline Json value_of(Cell const& cell) {
    if (auto const* words = std::get_if<std::string>(&cell)) return *words;
    if (auto const* figure = std::get_if<Figure>(&cell)) {
        bool const is_share = figure->unit == "%";
        return {{"rounded", is_share ? of_one(figure->shown) : figure->shown},
                {"exact", exact(figure->exact)},
                {"unit", is_share ? "share" : figure->unit}};
    }
    if (auto const* day = std::get_if<Day>(&cell)) return iso_date(day->date);
    return nullptr;
}

inline Json value_of(std::vector<std::string> const& names) { return names; }

inline void put(Json& object, std::string const& key, Json value) {
    if (!object.emplace(key, std::move(value)).second)
        throw std::logic_error(fmt::format("two things of a sheet are called '{}'", key));
}

inline void put_told(Json& object, std::vector<Told> const& told) {
    for (Told const& member : told)
        put(object, member.key,
            std::visit([](auto const& value) -> Json { return value_of(value); }, member.value));
}

inline Json value_of(Facts const& facts) {
    Json result = Json::object();
    for (Fact const& fact : facts.facts) put(result, fact.key, value_of(fact.value));
    put_told(result, facts.told);
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
            if (!table.columns[i].is_bar) put(entry, table.columns[i].key, value_of(row.cells[i]));
        put_told(entry, row.told);
        rows.push_back(std::move(entry));
    }
    return rows;
}

inline constexpr std::string_view word_for(Facts const&) { return "facts"; }
inline constexpr std::string_view word_for(Table const&) { return "rows"; }
inline constexpr std::string_view word_for(Remarks const&) { return "lines"; }

/// Puts one of several sections to the others of its key, which are of its kind.
template <class Kind> void add(Json& document, Kind const& section) {
    std::string const word(word_for(section));
    auto const [found, is_new] = document.emplace(section.key, Json::array());
    if (!is_new && !(found->is_array() && !found->empty() && found->front().contains(word)))
        throw std::logic_error(
            fmt::format("sections of more than one kind are called '{}'", section.key));
    found->push_back({{"of", section.of}, {word, value_of(section)}});
}

template <class Kind> void put_section(Json& document, Kind const& section) {
    if (section.of.empty())
        put(document, section.key, value_of(section));
    else
        add(document, section);
}
inline void put_section(Json&, Chart const&) {} // its figures stand in tables

} // namespace json_detail

GROAT_INLINE std::string to_json(Sheet const& sheet) {
    using json_detail::Json;
    Json document = Json::object();
    document["schema"] = sheet_schema;
    document["sheet"] = sheet.kind;
    document["for"] = sheet.audience;
    document["title"] = sheet.title;
    document["letterhead"] = sheet.letterhead;
    for (Section const& section : sheet.sections)
        std::visit([&](auto const& each) { json_detail::put_section(document, each); }, section);
    // Bytes that are not UTF-8 cannot come from the readers; from elsewhere they are replaced, not thrown at.
    return document.dump(2, ' ', false, Json::error_handler_t::replace) + '\n';
}

} // namespace groat
