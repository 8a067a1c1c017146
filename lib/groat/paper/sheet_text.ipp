#pragma once

#include <groat/paper/sheet_text.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>

#include <algorithm>

namespace groat {

namespace sheet_text_detail {

struct KindWords {
    MemberValue::Kind kind;
    std::string_view words;
};
inline constexpr KindWords kind_words[] = {
    {MemberValue::Kind::words, "words"},
    {MemberValue::Kind::day, "a day"},
    {MemberValue::Kind::currency, "a currency"},
    {MemberValue::Kind::money, "money"},
    {MemberValue::Kind::percent, "a share of one"},
    {MemberValue::Kind::count, "a count"},
    {MemberValue::Kind::grams, "grams"},
    {MemberValue::Kind::minutes, "minutes"},
    {MemberValue::Kind::hours, "hours"},
    {MemberValue::Kind::kilowatt_hours, "kilowatt-hours"},
    {MemberValue::Kind::points, "points between percentages"},
    {MemberValue::Kind::amount, "pieces, grams or millilitres"},
    {MemberValue::Kind::mass, "a mass"},
    {MemberValue::Kind::number, "a number"},
    {MemberValue::Kind::figure, "a figure in any unit"},
    {MemberValue::Kind::names, "a list of words"},
    {MemberValue::Kind::none, "null"}};

inline std::string value_of(MemberValue const& value) {
    std::vector<std::string> all;
    for (KindWords const& each : kind_words) {
        if (!value.may_be(each.kind)) continue;
        if (each.kind == MemberValue::Kind::words && !value.only.empty())
            for (std::string_view const word : value.only)
                all.push_back("`" + std::string(word) + "`");
        else
            all.emplace_back(each.words);
    }
    std::string text;
    for (std::size_t i = 0; i < all.size(); ++i)
        text += (i == 0 ? "" : i + 1 == all.size() ? " or " : ", ") + all[i];
    return text;
}

/// "cost", or "quote for the client" where others read another.
inline std::string name_of(SheetShape const& sheet, std::span<SheetShape const* const> sheets) {
    bool const has_others = std::any_of(sheets.begin(), sheets.end(), [&](SheetShape const* other) {
        return other->kind == sheet.kind && other->audience != sheet.audience;
    });
    return std::string(sheet.kind) + (has_others ? " for the " + std::string(sheet.audience) : "");
}

inline std::string form_of(SectionShape const& section) {
    std::string text = section.kind == SectionShape::Kind::facts   ? "Facts"
                       : section.kind == SectionShape::Kind::table ? "Rows"
                                                                   : "Sentences";
    if (!section.of.empty()) text += ", for each `of`: " + std::string(section.of);
    return text + ".";
}

inline std::string paragraph(std::string_view text) {
    std::string lines;
    for (std::string const& line : wrapped(text, 80)) lines += line + "\n";
    return lines;
}

} // namespace sheet_text_detail

GROAT_INLINE std::string manual_of_sheets(std::span<SheetShape const* const> sheets) {
    std::string text =
        "# What programs read\n\n"
        "Which members has each sheet of `--as json`, in which unit, and what do they\n"
        "mean?\n\n"
        "`groat help MEMBER` says the same of one member. A section that is not always\n"
        "there is marked so, and so is a member; the others always are. [Paper](paper.md)\n"
        "tells how facts, rows and sentences are written.\n";
    for (SheetShape const* sheet : sheets) {
        text += "\n## " + sheet_text_detail::name_of(*sheet, sheets) + "\n\n" +
                sheet_text_detail::paragraph(sheet->meaning);
        for (SheetShape::Section const& each : sheet->sections) {
            SectionShape const& section = *each.shape;
            text +=
                "\n### " + std::string(section.key) + "\n\n" +
                sheet_text_detail::paragraph(
                    std::string(section.meaning) + " " + sheet_text_detail::form_of(section) +
                    (each.presence == Presence::sometimes ? " Not on each of these sheets." : ""));
            if (section.members.empty()) continue;
            text += "\n| member | value | meaning |\n|---|---|---|\n";
            for (MemberShape const& member : section.members)
                text += "| `" + std::string(member.key) + "` | " +
                        sheet_text_detail::value_of(member.value) +
                        (member.presence == Presence::sometimes ? "; not always there" : "") +
                        " | " + std::string(member.meaning) + " |\n";
        }
    }
    return text;
}

GROAT_INLINE std::string help_on_member(std::span<SheetShape const* const> sheets,
                                        std::string_view name) {
    struct Said {
        std::string meaning;
        std::string places;
    };
    std::vector<Said> all;
    auto const say = [&](std::string meaning, std::string const& place) {
        for (Said& said : all)
            if (said.meaning == meaning) {
                said.places += "; " + place;
                return;
            }
        all.push_back({std::move(meaning), place});
    };
    for (SheetShape const* sheet : sheets)
        for (SheetShape::Section const& each : sheet->sections) {
            SectionShape const& section = *each.shape;
            std::string const place = sheet_text_detail::name_of(*sheet, sheets);
            if (section.key == name) say(std::string(section.meaning), place);
            for (MemberShape const& member : section.members)
                if (member.key == name)
                    say(std::string(member.meaning) + " (" +
                            sheet_text_detail::value_of(member.value) + ")",
                        place + ", " + std::string(section.key));
        }
    if (all.empty()) return {};
    std::string text = "'" + std::string(name) + "' on the sheets of --as json:\n";
    for (Said const& said : all) {
        text += '\n';
        for (std::string const& line : wrapped(said.meaning, 78)) text += "  " + line + '\n';
        for (std::string const& line : wrapped("in " + said.places, 74))
            text += "      " + line + '\n';
    }
    return text;
}

GROAT_INLINE std::vector<std::string> known_members(std::span<SheetShape const* const> sheets) {
    std::vector<std::string> all;
    for (SheetShape const* sheet : sheets)
        for (SheetShape::Section const& each : sheet->sections) {
            all.emplace_back(each.shape->key);
            for (MemberShape const& member : each.shape->members) all.emplace_back(member.key);
        }
    std::sort(all.begin(), all.end());
    all.erase(std::unique(all.begin(), all.end()), all.end());
    return all;
}

} // namespace groat
