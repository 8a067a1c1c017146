#pragma once

#include <groat/books/import_prices.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/name.hpp>
#include <groat/base/text.hpp>
#include <groat/books/import_cells.hpp>

#include <fmt/ranges.h>

#include <map>
#include <optional>
#include <set>
#include <string_view>
#include <tuple>
#include <utility>

namespace groat {

namespace import_prices_detail {

inline constexpr std::size_t most_errors = 200;

/// `Net  price` over two lines is `Net price`.
inline std::string one_line(std::string_view text) {
    std::string result;
    for (char const c : import_cells_detail::bare(text)) {
        bool const is_blank = c == ' ' || c == '\t' || c == '\r' || c == '\n';
        if (!is_blank) result += c;
        if (is_blank && !result.ends_with(' ')) result += ' ';
    }
    return result;
}

inline bool is_blank(CsvRow const& row) {
    return std::all_of(row.cells.begin(), row.cells.end(), [](CsvCell const& cell) {
        return import_cells_detail::bare(cell.text).empty();
    });
}

class Importer {
public:
    Importer(ImportMap const& map, Sources const& sources, std::uint32_t file,
             Reading const& reading)
        : map_(map),
          file_(file),
          reading_(reading),
          errors_before_(reading.found.errors()),
          csv_(sources, file, map.delimiter, map.skip, reading.found) {}

    ImportedPrices run() {
        result_.list.supplier = result_.receipt.supplier = map_.supplier;
        if (map_.from) result_.receipt.bought = *map_.from;
        CsvRow row;
        bool has_begun = false;
        while (csv_.next(row)) {
            if (is_blank(row)) continue;
            if (!has_begun) {
                has_begun = true;
                width_ = row.cells.size();
                if (!find_columns(row)) return std::move(result_);
                if (map_.has_header) continue;
            }
            read(row);
            if (reading_.found.errors() - errors_before_ < most_errors) continue;
            reading_.found.error(
                csv_.place_of(row), "too-many-errors",
                fmt::format("{} errors: the rows from here on were not read", most_errors),
                "check the map: columns, delimiter, decimal");
            return std::move(result_);
        }
        if (result_.rows == 0 && reading_.found.errors() == errors_before_)
            reading_.found.error(Span{file_}, "empty-file", "there are no rows in this file",
                                 "check whether it is the right one, and 'skip' in the map");
        if (reading_.found.errors() > errors_before_) return std::move(result_);
        for (auto const& [key, item] : map_.items)
            if (!seen_.contains(key))
                reading_.found.warn(item.where, "not-in-file",
                                    fmt::format("no row of the file is '{}'", shortened(key, 48)),
                                    "check its spelling; take it out of the map if the supplier "
                                    "has it no longer");
        return std::move(result_);
    }

private:
    /// The places of the columns, counted from 1; 0 for one that the map does not name.
    struct Columns {
        std::size_t code = 0, name = 0, price = 0, pack = 0, pack_number = 0, pack_unit = 0,
                    freight = 0, packs = 0, deposit = 0;
    };

    bool find_columns(CsvRow const& row) {
        std::vector<std::string> names;
        if (map_.has_header)
            for (CsvCell const& cell : row.cells) names.push_back(one_line(cell.text));
        bool is_found = true;
        auto const find = [&](std::optional<ImportColumn> const& column, std::size_t& place) {
            if (column) is_found = find_column(*column, names, row, place) && is_found;
        };
        find(map_.code, columns_.code);
        find(map_.name, columns_.name);
        find(map_.is_receipt ? map_.paid : map_.price, columns_.price);
        find(map_.packs, columns_.packs);
        find(map_.deposit, columns_.deposit);
        find(map_.pack, columns_.pack);
        find(map_.pack_number, columns_.pack_number);
        find(map_.pack_unit, columns_.pack_unit);
        find(map_.freight, columns_.freight);
        return is_found;
    }

    bool find_column(ImportColumn const& column, std::vector<std::string> const& names,
                     CsvRow const& row, std::size_t& place) {
        place = column.number;
        std::size_t count = place > 0 && place <= width_ ? 1 : 0;
        for (std::size_t i = 0; column.number == 0 && i < names.size(); ++i) {
            if (names[i] != one_line(column.name)) continue;
            if (++count == 1) place = i + 1;
        }
        if (count == 1) return true;
        std::string const what =
            column.number > 0 ? fmt::format("the file has no column {}: its first row has {}",
                                            column.number, width_)
            : count > 1
                ? fmt::format("the file has {} columns called '{}'", count,
                              shortened(column.name, 40))
                : fmt::format("the file has no column called '{}'", shortened(column.name, 40));
        std::string help = "count the columns from 1 and write the number in the map";
        if (column.number == 0 && count == 0) {
            auto const near = nearest_name(column.name, names);
            std::string const list = shortened(fmt::format("{}", fmt::join(names, ", ")), 120);
            help = near ? fmt::format("did you mean '{}'?", *near)
                        : fmt::format("it has: {}; check 'delimiter' and 'skip' as well", list);
        }
        reading_.found.add({Severity::error,
                            "unknown-column",
                            what,
                            column.where,
                            {{"the columns are looked for here", csv_.place_of(row)}},
                            help});
        return false;
    }

    /// The cell of a column, or null where the row has none.
    static CsvCell const* cell(CsvRow const& row, std::size_t column) {
        return column == 0 || column > row.cells.size() ? nullptr : &row.cells[column - 1];
    }
    static std::string text(CsvRow const& row, std::size_t column) {
        CsvCell const* const found = cell(row, column);
        return found == nullptr ? std::string()
                                : std::string(import_cells_detail::bare(found->text));
    }

    void read(CsvRow const& row) {
        ++result_.rows;
        std::string code = text(row, columns_.code);
        std::string name = text(row, columns_.name);
        auto const is_ignored = [&](std::string const& each) {
            return !each.empty() && map_.ignored.contains(each);
        };
        if (is_ignored(code) || is_ignored(name)) {
            ++result_.ignored;
            return;
        }
        auto item = code.empty() ? map_.items.end() : map_.items.find(code);
        if (item == map_.items.end() && !name.empty()) item = map_.items.find(name);
        if (item == map_.items.end()) {
            if (map_.ignores_the_rest)
                ++result_.ignored;
            else
                result_.unmatched.push_back({csv_.place_of(row), std::move(code), std::move(name),
                                             text(row, columns_.price)});
            return;
        }
        seen_.insert(item->first);
        if (is_ragged(row)) return;
        std::size_t const errors = reading_.found.errors();
        Offer offer = read_offer(row, item->second);
        if (map_.is_receipt) return keep_bought(row, std::move(offer), errors);
        offer.code = std::move(code);
        if (offer.code.size() > longest_name)
            error(*cell(row, columns_.code), "bad-code", "the code is too long",
                  fmt::format("a code has {} bytes at most", longest_name));
        if (reading_.found.errors() == errors) keep(std::move(offer));
    }

    bool is_ragged(CsvRow const& row) {
        std::size_t count = row.cells.size();
        while (count > width_ && import_cells_detail::bare(row.cells[count - 1].text).empty())
            --count;
        if (count == width_) return false;
        reading_.found.error(
            csv_.place_of(row), "ragged-row",
            fmt::format("this row has {} cell{}, the first one has {}", count,
                        count == 1 ? "" : "s", width_),
            count > width_ ? "a cell that holds the delimiter goes into quotation marks; check "
                             "'delimiter' in the map"
                           : "a cell with nothing in it keeps its delimiter");
        return true;
    }

    void error(CsvCell const& cell, Code code, std::string what, std::string help) {
        reading_.found.error(csv_.place_of(cell), code, std::move(what), std::move(help));
    }

    Offer read_offer(CsvRow const& row, ImportItem const& item) {
        Offer offer;
        offer.origin = csv_.place_of(row);
        offer.item = item.item;
        offer.tax_included = map_.tax_included;
        offer.from = map_.from;
        offer.yield = item.yield;
        offer.price = read_amount(row, columns_.price, false);
        offer.freight = read_amount(row, columns_.freight, true);
        if (item.pack) {
            offer.pack = *item.pack;
            offer.pack_text = item.pack_text;
        } else {
            read_pack(row, offer);
        }
        return offer;
    }

    Money read_amount(CsvRow const& row, std::size_t column, bool may_be_empty) {
        Money const nothing(0, reading_.currency);
        if (column == 0 || (may_be_empty && text(row, column).empty())) return nothing;
        CsvCell const& from = *cell(row, column);
        auto const amount = parse_price_cell(from.text, map_, reading_.currency);
        if (!amount) {
            error(from, amount.error().code, amount.error().what, amount.error().help);
            return nothing;
        }
        if (amount->is_zero() && !may_be_empty)
            reading_.found.warn(csv_.place_of(from), "free-price", "the price is 0",
                                "what costs nothing stays so until the next price list; check it");
        return *amount;
    }

    void read_pack(CsvRow const& row, Offer& offer) {
        std::size_t const column = columns_.pack > 0 ? columns_.pack : columns_.pack_number;
        if (column == 0)
            return reading_.found.error(
                csv_.place_of(row), "missing-pack", "nothing says how much is in this pack",
                fmt::format("write it into the map, as {{item: {}, pack: 25 lb}}, or name the "
                            "column: 'pack: ...'",
                            offer.item.name));
        CsvCell const& from = *cell(row, column);
        std::string written = text(row, column);
        if (written.empty())
            return error(from, "missing-pack", "the pack is missing",
                         "fill it in, or write it into the map beside the item, as 'pack: 25 lb'");
        bool const is_number = columns_.pack == 0;
        auto plain = plain_numbers(written, map_.marks);
        if (is_number && columns_.pack_unit > 0) {
            std::string const unit = text(row, columns_.pack_unit);
            written += ' ' + unit;
            if (plain && !unit.empty()) *plain += ' ' + unit;
            if (unit.empty())
                return error(*cell(row, columns_.pack_unit), "missing-pack",
                             "the unit of the pack is missing", "fill it in");
        }
        auto const bad = [&](Flaw const& flaw) {
            std::string const help = flaw.code == Code("unknown-unit")
                                         ? "say in the map what the word means: 'units: {CS: 12 "
                                           "each}'; " +
                                               flaw.help
                                         : flaw.help;
            error(
                from, "bad-pack",
                fmt::format("the pack '{}' cannot be read: {}", shortened(written, 40), flaw.what),
                help);
        };
        if (!plain) return bad(plain.error());
        if (map_.slash == Slash::refused && import_cells_detail::has_slash(*plain))
            return bad({"bad-pack", "its '/' can mean packs in a case, or a fraction",
                        "say in the map which: 'slash: packs' or 'slash: fraction'"});
        std::string ours = one_line(import_cells_detail::in_our_units(*plain, map_));
        auto const pack = parse_wanted(ours, import_map_detail::a_pack, reading_);
        if (!pack) return bad(pack.error());
        offer.pack = *pack;
        offer.pack_text = std::move(ours);
    }

    /// A row of a receipt; the price of `read` is what was paid for all packs.
    void keep_bought(CsvRow const& row, Offer read, std::size_t errors) {
        BoughtPacks bought;
        bought.item = std::move(read.item);
        bought.pack = read.pack;
        bought.pack_text = std::move(read.pack_text);
        bought.paid = std::move(read.price);
        bought.tax_included = read.tax_included;
        bought.origin = read.origin;
        bought.deposit = read_amount(row, columns_.deposit, true);
        CsvCell const& from = *cell(row, columns_.packs);
        auto const plain = plain_numbers(import_cells_detail::bare(from.text), map_.marks);
        auto const packs = plain ? parse_number(*plain) : Result<Number>(Refused(plain.error()));
        if (!packs || !packs->is_whole() || !packs->is_positive())
            return error(from, "bad-packs",
                         fmt::format("'{}' is not a number of packs",
                                     shortened(import_cells_detail::bare(from.text), 32)),
                         "it is a whole number above 0: what is weighed loose is one pack of its "
                         "weight; what was taken back is left out, by 'ignore' in the map");
        bought.packs = packs->numerator();
        if (bought.paid < bought.deposit)
            return error(*cell(row, columns_.deposit), "deposit-above-paid",
                         "the deposit is more than what was paid in all",
                         "what was paid contains the deposit: name the column that does");
        if (reading_.found.errors() == errors) result_.receipt.items.push_back(std::move(bought));
    }

    /// Two rows for one pack: the books would take the later one without a word.
    void keep(Offer offer) {
        auto key = std::tuple(offer.item.name, offer.pack.dimension, offer.pack.amount);
        auto const [first, is_new] = packs_.emplace(std::move(key), result_.list.offers.size());
        if (is_new) {
            result_.list.offers.push_back(std::move(offer));
            return;
        }
        Offer const& other = result_.list.offers[first->second];
        bool const is_same = other.price == offer.price && other.freight == offer.freight;
        reading_.found.add(
            {is_same ? Severity::warning : Severity::error,
             "given-twice",
             fmt::format("'{}' in packs of {} stands in two rows{}", offer.item.name,
                         shortened(offer.pack_text, 32), is_same ? "" : " at different prices"),
             offer.origin,
             {{"the other one is here", other.origin}},
             is_same ? "one of them is kept"
                     : "take one out, or put its code among those to ignore in the "
                       "map"});
    }

    ImportMap const& map_;
    std::uint32_t file_;
    Reading const& reading_;
    std::size_t errors_before_;
    CsvReader csv_;
    Columns columns_;
    std::size_t width_ = 0;
    std::set<std::string, std::less<>> seen_;
    std::map<std::tuple<std::string, Dimension, Number>, std::size_t> packs_;
    ImportedPrices result_;
};

} // namespace import_prices_detail

GROAT_INLINE ImportedPrices import_prices(ImportMap const& map, Sources const& sources,
                                          std::uint32_t file, Reading const& reading) {
    return import_prices_detail::Importer(map, sources, file, reading).run();
}

} // namespace groat
