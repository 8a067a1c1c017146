#pragma once

#include <groat/books/read_formulas.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/name.hpp>
#include <groat/base/text.hpp>
#include <groat/books/read_oven.hpp>

#include <fmt/ranges.h>

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace groat {

namespace read_formulas_detail {

struct KnownLoss {
    std::string_view name;
    LossStage stage;
};
inline constexpr KnownLoss known_losses[] = {
    {"mixing", LossStage::before_portioning}, {"bowl", LossStage::before_portioning},
    {"bag", LossStage::before_portioning},    {"sifting", LossStage::before_portioning},
    {"baking", LossStage::after_portioning},  {"cooling", LossStage::after_portioning},
    {"drying", LossStage::after_portioning},  {"breakage", LossStage::pieces},
    {"rejects", LossStage::pieces},
};

/// `620 g`, `3 as bought` or `72 %`.
inline void read_amount(Node const* node, Making const& making, Line& line,
                        Reading const& reading) {
    if (node == nullptr) return;
    if (!node->is_scalar())
        return expected("an amount", *node, reading.found, "write it as 620 g, 3 or 72 %");
    std::string_view text = trimmed(node->text);
    constexpr std::string_view as_bought = "as bought";
    if (text.ends_with(as_bought)) {
        line.is_as_bought = true;
        text = trimmed(text.substr(0, text.size() - as_bought.size()));
    }
    if (!text.ends_with('%')) {
        assign(
            line.amount,
            read_quantity(*node, text, {"the amount", shapes::what_is_bought, "620 g"}, reading));
        return;
    }
    auto share = parse_percent(text);
    if (!share) return report(*node, text, share.error(), reading);
    if (!share->is_positive())
        return reading.found.error(
            node->where, "not-positive",
            fmt::format("the percentage must be above 0, not '{}'", shortened(text, 32)));
    if (!making.has_base)
        reading.found.error(
            node->where, "percentage-of-what",
            fmt::format("'{}' is a percentage, but of what is not said", line.item.name),
            "add 'percent of:' with the name of the base, such as the flour");
    line.amount = *std::move(share);
}

inline void read_line_fields(auto& fields, Making const& making, Line& line,
                             Reading const& reading) {
    Node const* const amount = fields.at("amount");
    read_amount(amount, making, line, reading);
    bool const is_as_bought = line.is_as_bought;
    fields.read_into(line, reading);
    line.is_as_bought = line.is_as_bought || is_as_bought;
    fields.close();
}

inline void check_line(Line const& line, Node const& node, Reading const& reading) {
    if (line.is_percentage() && line.is_as_bought)
        reading.found.error(
            node.where, "percentage-as-bought",
            fmt::format("the percentage of '{}' cannot be as bought", line.item.name),
            "percentages are of what is ready to use; take 'as bought' out");
}

inline std::vector<Line> read_lines(Node const* node, Making const& making,
                                    Reading const& reading) {
    std::vector<Line> lines;
    if (node == nullptr) return lines;
    if (node->is_sequence()) {
        for (Node const& each : node->items) {
            Fields<shapes::listed_line> fields(each, reading.found);
            Line line;
            line.origin = fields.where();
            read_line_fields(fields, making, line, reading);
            check_line(line, each, reading);
            if (line.item.is_given()) lines.push_back(std::move(line));
        }
    } else {
        each_named(node, "a mapping or a list of lines", reading,
                   [&](Key const& key, Node const& each) {
                       Line line;
                       line.origin = key.where;
                       line.item = {key.text, key.where};
                       if (each.is_mapping()) {
                           Fields<shapes::named_line> fields(each, reading.found);
                           read_line_fields(fields, making, line, reading);
                       } else {
                           read_amount(&each, making, line, reading);
                       }
                       check_line(line, each, reading);
                       lines.push_back(std::move(line));
                   });
    }
    if (node->items.empty() && !node->is_scalar() && !node->is_null())
        reading.found.error(node->where, "missing-value", "nothing goes into this formula",
                            "write a line 'plain flour: 620 g' for each ingredient");
    return lines;
}

inline std::vector<NamedLoss> read_losses(Node const* node, Making const& making,
                                          Reading const& reading) {
    std::vector<NamedLoss> losses;
    each_named(node, "a mapping of losses", reading, [&](Key const& key, Node const& each) {
        NamedLoss loss{key.text, {}, LossStage::before_portioning};
        if (each.is_mapping()) {
            Fields<shapes::loss> fields(each, reading.found);
            fields.read_into(loss, reading);
            fields.close();
        } else {
            assign(loss.share, read_rate<Loss>(&each, reading));
            KnownLoss const* known = nullptr;
            std::vector<std::string_view> names;
            for (KnownLoss const& candidate : known_losses) {
                names.push_back(candidate.name);
                if (candidate.name == key.text) known = &candidate;
            }
            if (known != nullptr) {
                loss.stage = known->stage;
            } else {
                auto const near = nearest_name(key.text, names);
                std::string const other =
                    "say when it happens: {share: 2 %, when: before portioning}";
                reading.found.error(
                    key.where, "unknown-loss",
                    fmt::format("when '{}' happens is not known", shortened(key.text, 48)),
                    near ? fmt::format("did you mean '{}'? else {}", *near, other)
                         : fmt::format("known are: {}; else {}", fmt::join(names, ", "), other));
            }
        }
        if (loss.stage == LossStage::pieces && !making.may_be_pieces)
            reading.found.error(
                key.where, "made-by-mass",
                fmt::format("'{}' is a loss of pieces, but this formula is made by mass",
                            shortened(key.text, 48)),
                "give it a portion, as 'portion: 24 g', or say {share: 2 %, when: after portioning}");
        losses.push_back(std::move(loss));
    });
    return losses;
}

inline SaleUnit read_sale_unit(Key const& key, Node const& node, Making const& making,
                               Reading const& reading) {
    Fields<shapes::sale_unit> fields(node, reading.found);
    SaleUnit unit;
    unit.name = key.text;
    unit.origin = key.where;
    assign(unit.holds, read_output(fields.needed("holds", making.may_be_pieces ? "12" : "250 g"),
                                   "what a sale unit holds", making, reading));
    fields.read_into(unit, reading);
    unit.labour = read_tasks<shapes::sale_unit_task>(fields.at("labour"), {}, reading);
    fields.close();
    return unit;
}

/// What it makes, which the reading of most other fields depends on.
inline Making read_making(Fields<shapes::formula>& fields, Formula& formula,
                          Reading const& reading) {
    Node const* const base = fields.at("percent of");
    Node const* const portion = fields.at("portion");
    Node const* const makes = fields.at("makes");
    if (base != nullptr && base->is_sequence() && base->items.empty())
        expected("the name of the base", *base, reading.found,
                 "name the line that is 100 %, such as the flour");
    formula.makes = fields.read<Quantity>("makes", reading);
    if (formula.makes && !is_whole_count(*makes, *formula.makes, "'makes'", reading))
        formula.makes.reset();
    if (portion != nullptr && formula.makes && formula.makes->is(Dimension::mass))
        reading.found.error(makes->where, "wrong-dimension",
                            "a formula with a portion makes pieces, so 'makes' cannot be a mass",
                            "write how many pieces it makes, or leave 'makes' out");
    Making making;
    bool const is_unclear = portion == nullptr && makes != nullptr && !formula.makes;
    bool const is_pieces = portion != nullptr || formula.makes_pieces();
    making.may_be_pieces = is_unclear || is_pieces;
    making.may_be_mass = is_unclear || !is_pieces;
    making.has_base = base != nullptr;
    making.has_oven = fields.at("oven") != nullptr;
    return making;
}

} // namespace read_formulas_detail

GROAT_INLINE bool read_value(Keeping& keeping, Node const& node, KeyShape const& key,
                             Reading const& reading) {
    if (node.is_scalar()) return read_value(keeping.at, node, key, reading);
    Fields<shapes::keeping> fields(node, reading.found);
    fields.read_into(keeping, reading);
    if (keeping.days && *keeping.days < 1)
        reading.found.error(fields.place_of("for"), "not-positive",
                            "what is kept for less than a day cannot be sold",
                            "the day of making is day one: 'for: 1 day'");
    fields.close();
    return true;
}

GROAT_INLINE Formula read_formula(Node const& node, Reading const& reading) {
    namespace parts = read_formulas_detail;
    Number const steps[] = {0, Number(1, 2), 1, Number(1, 4)};

    Fields<shapes::formula> fields(node, reading.found);
    Formula formula;
    formula.origin = fields.origin("formula");
    fields.read_into(formula, reading);
    parts::Making const making = parts::read_making(fields, formula, reading);

    Node const* const lines = fields.at("lines");
    formula.lines = parts::read_lines(lines, making, reading);
    formula.losses = parts::read_losses(fields.at("losses"), making, reading);
    if (Node const* const oven = fields.at("oven"))
        formula.oven = parts::read_oven_use(*oven, making, reading);
    formula.labour =
        read_tasks<shapes::formula_task>(fields.at("labour"), making.countable(), reading);
    formula.consumables = read_consumables(fields.at("consumables"), making.countable(), reading);
    formula.batch_step =
        steps[read_word(fields.at("batches"), shapes::batch_steps, reading).value_or(0)];
    if (auto const run =
            parts::read_output(fields.at("standard run"), "a standard run", making, reading))
        formula.standard_run = run->amount;
    each_named(fields.at("sold as"), "a mapping of sale units", reading,
               [&](Key const& key, Node const& each) {
                   formula.sold_as.push_back(parts::read_sale_unit(key, each, making, reading));
               });
    fields.close();
    return formula;
}

} // namespace groat
