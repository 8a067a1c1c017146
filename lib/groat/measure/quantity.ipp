#pragma once

#include <groat/measure/quantity.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/name.hpp>
#include <groat/base/rounding.hpp>
#include <groat/base/text.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace groat {

namespace quantity_detail {

/// A place in the text, with what has been read so far in front of it.
struct Reader {
    std::string_view text;
    std::size_t at = 0;

    [[nodiscard]] std::string_view rest() const { return text.substr(at); }
    void skip_blanks() { at += number_detail::blanks_at(text, at); }
    bool take(std::string_view word) {
        if (!rest().starts_with(word)) return false;
        at += word.size();
        return true;
    }
};

inline bool is_word(char c) {
    return c != ' ' && c != '#' && c != '/' && c != '+' && c != ',' && !number_detail::is_digit(c);
}

/// The longest run of at most three words that is a unit.
inline Result<Unit const*> take_unit(Reader& reader, Measures measures) {
    std::string_view const rest = reader.rest();
    Unit const* best = nullptr;
    std::size_t best_length = 0;
    std::size_t end = 0;
    std::size_t first_word = 0;
    for (int word = 0; word < 3 && end < rest.size(); ++word) {
        std::size_t next = end + (word == 0 ? 0 : number_detail::blanks_at(rest, end));
        std::size_t const begin = next;
        while (next < rest.size() && is_word(rest[next])) ++next;
        if (next == begin) break;
        end = next;
        if (word == 0) first_word = end;
        if (Unit const* found = find_unit(rest.substr(0, end), measures)) {
            best = found;
            best_length = end;
        }
    }
    if (best == nullptr) {
        std::string_view const word =
            rest.substr(0, first_word > 0 ? first_word : character_at(rest, 0).length);
        auto const is_letter = [](char c) {
            return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z');
        };
        std::string help;
        bool const is_us =
            find_unit(std::string("US ") + std::string(word == "fl" ? "fl oz" : word), measures) !=
            nullptr;
        if (word == "metric")
            help = "a metric cup is 250 mL to some and 240 mL to others: write it in mL";
        else if (is_us)
            help = fmt::format("these measures have no such unit; say 'US {0}' or 'imperial {0}'",
                               word == "fl" ? "fl oz" : word);
        else if (auto const near = nearest_name(word, unit_words(measures));
                 near && std::any_of(word.begin(), word.end(), is_letter))
            help = fmt::format("did you mean '{}'?", *near);
        else
            help = "units are g, kg, oz, lb, mL, L, tsp, tbsp, cup, fl oz, pint, quart, gallon, "
                   "each, dozen";
        return refuse("unknown-unit", fmt::format("'{}' is not a unit", shortened(word, 32)), help,
                      reader.at, word.size());
    }
    reader.at += best_length;
    return best;
}

} // namespace quantity_detail

GROAT_INLINE Result<Quantity> parse_quantity(std::string_view text, Measures measures) {
    quantity_detail::Reader reader{trimmed(text)};
    if (reader.text.empty())
        return refuse("bad-quantity", "the quantity is empty", "write it as 620 g, 2 3/4 cup or 3");
    Number packs = 1;
    int nested = 0;
    std::optional<Quantity> sum;
    Unit const* last = nullptr;
    while (!reader.rest().empty()) {
        Number amount = 1;
        if (!reader.rest().starts_with('#')) {
            auto scanned = scan_number(reader.rest());
            if (!scanned) {
                Flaw flaw = scanned.error();
                flaw.at += reader.at;
                if (!sum && flaw.code == Code("bad-number") &&
                    !number_detail::is_digit(reader.text.front()))
                    return refuse("bad-quantity",
                                  fmt::format("'{}' is not a quantity", shortened(reader.text, 32)),
                                  "write a number and a unit, as 620 g, 2 3/4 cup or 3", flaw.at,
                                  1);
                return Refused(flaw);
            }
            if (sum && reader.rest().starts_with('-'))
                return refuse("bad-quantity",
                              fmt::format("'{}' has a minus in the middle", shortened(text, 32)),
                              "write the parts side by side, as 1 lb 4 oz", reader.at, 1);
            amount = scanned->number;
            reader.at += scanned->length;
            reader.skip_blanks();
            bool const x = reader.rest() == "x" || reader.rest().starts_with("x ") ||
                           reader.rest().starts_with("×") ||
                           (reader.rest().size() > 1 && reader.rest()[0] == 'x' &&
                            number_detail::is_digit(reader.rest()[1]));
            if (x) {
                if (sum)
                    return refuse("bad-quantity",
                                  fmt::format("'{}' multiplies in the middle", shortened(text, 32)),
                                  "write packs in front, as 12 x 500 g", reader.at, 1);
                if (!reader.take("×")) reader.take("x");
                reader.skip_blanks();
                constexpr int most_nested = 4; // `9 x 9 x 9 x ...` would grow without end
                if (++nested > most_nested)
                    return refuse("bad-quantity",
                                  fmt::format("'{}' nests too many packs", shortened(text, 32)),
                                  "multiply some of them out, as 48 x 500 g", reader.at, 1);
                packs *= amount;
                if (reader.rest().empty())
                    return refuse("bad-quantity", "nothing follows the 'x'",
                                  "write packs as 12 x 500 g", reader.at, 1);
                continue;
            }
        }
        Quantity term{amount, Dimension::count, nullptr};
        if (reader.take("#")) {
            auto number = scan_number(reader.rest());
            if (!number) {
                Flaw flaw = number.error();
                flaw.at += reader.at;
                return Refused(std::move(flaw));
            }
            reader.at += number->length;
            reader.skip_blanks();
            if (!reader.take("scoop"))
                return refuse("bad-quantity", "a number sign starts a scoop size",
                              "write '#60 scoop'", reader.at, 1);
            reader.take("s");
            auto volume = scoop_volume(number->number);
            if (!volume) {
                Flaw flaw = volume.error();
                flaw.at = reader.at;
                return Refused(std::move(flaw));
            }
            term = {amount * *volume, Dimension::volume, nullptr};
        } else if (reader.rest().empty()) {
            term.unit = find_unit("each", measures);
        } else {
            if (number_detail::is_digit(reader.rest().front()))
                return refuse("bad-quantity",
                              fmt::format("'{}' has two numbers in a row", shortened(text, 32)),
                              "write a mixed number as 2 1/4, packs as 12 x 500 g", reader.at, 1);
            auto unit = quantity_detail::take_unit(reader, measures);
            if (!unit) return Refused(unit.error());
            term = {amount * (*unit)->factor, (*unit)->dimension, *unit};
        }
        if (!sum) {
            sum = term;
        } else {
            if (term.dimension != sum->dimension)
                return refuse("bad-quantity",
                              fmt::format("'{}' adds a {} to a {}", shortened(text, 32),
                                          to_text(term.dimension), to_text(sum->dimension)),
                              "parts of one quantity measure the same thing, as 1 lb 4 oz", 0,
                              text.size());
            if (term.unit == nullptr || last == nullptr || term.unit->factor >= last->factor)
                return refuse("bad-quantity",
                              fmt::format("'{}' does not go from larger to smaller units",
                                          shortened(text, 32)),
                              "write the larger unit first, as 1 lb 4 oz", 0, text.size());
            sum->amount += sum->amount.is_negative() ? -term.amount : term.amount;
        }
        last = term.unit;
        reader.skip_blanks();
    }
    sum->amount *= packs;
    return *sum;
}

GROAT_INLINE Result<Density> parse_density(std::string_view text, Measures measures) {
    auto const bad = [&] {
        return refuse("bad-density", fmt::format("'{}' is not a density", shortened(text, 32)),
                      "write a mass per one unit of volume, as 125 g / cup", 0, text.size());
    };
    std::string_view const trim = trimmed(text);
    // The last `/` or `per`: the mass before it may hold a fraction of its own, as in `4 1/2 oz / cup`.
    std::size_t split = trim.rfind(" per ");
    std::size_t width = 5;
    if (split == std::string_view::npos) {
        split = trim.rfind('/');
        width = 1;
    }
    if (split == std::string_view::npos) return bad();
    auto mass = parse_quantity(trim.substr(0, split), measures);
    if (!mass) return Refused(mass.error());
    Unit const* per = find_unit(trimmed(trim.substr(split + width)), measures);
    if (per == nullptr) {
        quantity_detail::Reader reader{trimmed(trim.substr(split + width))};
        if (reader.text.empty()) return bad();
        auto unit = quantity_detail::take_unit(reader, measures);
        if (unit) return bad();
        Flaw flaw = unit.error();
        flaw.at += static_cast<std::size_t>(reader.text.data() - text.data());
        return Refused(std::move(flaw));
    }
    if (!mass->is(Dimension::mass) || per->dimension != Dimension::volume ||
        !mass->amount.is_positive())
        return bad();
    return Density{mass->amount / per->factor, per};
}

GROAT_INLINE Density const& density_for(Unit const* unit, std::vector<Density> const& densities) {
    for (Density const& density : densities)
        if (unit != nullptr && density.per == unit) return density;
    return densities.front();
}

GROAT_INLINE std::string mass_text(Number const& grams) {
    Number const size = grams.is_negative() ? -grams : grams;
    if (size >= 1000)
        return fmt::format("{} kg", decimal_at_most(grams / 1000, size >= 10000 ? 2 : 3));
    return fmt::format("{} g", decimal_at_most(grams, size >= 100 ? 0 : size >= 10 ? 1 : 2));
}

} // namespace groat
