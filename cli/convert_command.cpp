#include "session.hpp"

#include <groat/sheets/convert_sheet.hpp>

#include <filesystem>
#include <optional>

namespace groat::cli {

namespace {

/// A word of the command line that is wrong.
int refuse_word(Flaw const& flaw) {
    complain(fmt::format("groat: {}\n", flaw.what));
    if (!flaw.help.empty()) complain(fmt::format("  help: {}\n", flaw.help));
    return command_line_wrong;
}

int hand_out(Sheet const& sheet, Options const& options) {
    std::string const trouble = deliver(drawn(sheet, options), options.out, options.may_replace);
    if (trouble.empty()) return done;
    complain(fmt::format("groat: {}\n", trouble));
    return file_trouble;
}

int convert_temperature(Options const& options, Asked const& asked) {
    auto const scale = find_scale(asked.unit);
    if (!asked.item.empty())
        return refuse_word({"bad-temperature",
                            fmt::format("a temperature is the same for '{}' as for anything else",
                                        shortened(asked.item, 40)),
                            "write only the temperature and the scale, as in: groat convert "
                            "'350 F' C"});
    if (!is_temperature(asked.amount))
        return refuse_word({"wrong-dimension",
                            fmt::format("'{}' is no temperature and cannot become {}",
                                        shortened(asked.amount, 40), symbol(*scale)),
                            "write a number and its scale, as 350 F or 175 C"});
    auto const temperature = parse_temperature(asked.amount);
    if (!temperature) return refuse_word(temperature.error());
    if (!scale)
        return refuse_word(
            {"wrong-dimension",
             fmt::format("a temperature cannot become '{}'", shortened(asked.unit, 40)),
             "the scales are F, C and K"});
    return hand_out(convert_sheet(*temperature, *scale, asked), options);
}

Measures measures_called(std::string_view name) {
    for (std::size_t i = 0; i < std::size(unit_table::measures_names); ++i)
        if (unit_table::measures_names[i] == name) return static_cast<Measures>(i);
    return Measures::us;
}

} // namespace

int convert(Options const& options) {
    std::vector<std::string> const& words = options.subjects;
    if (words.size() < 2 || words.size() > 3)
        return refuse_word({"words",
                            "an amount and a unit are needed, and between them what it is of",
                            "words that belong together go into quotation marks, as in: groat "
                            "convert '2 3/4 cup' 'plain flour' g"});
    Asked const asked{words.front(),
                      words.size() == 3 ? std::string_view(words[1]) : std::string_view(),
                      words.back()};
    if (is_temperature(asked.amount) || find_scale(asked.unit))
        return convert_temperature(options, asked);
    // Without a thing only the meaning of a bare cup is the shop's, and there may be no shop.
    std::error_code error;
    bool const has_shop =
        std::filesystem::exists(std::filesystem::path(options.books) / "shop.yaml", error);
    std::optional<Session> session;
    if (!asked.item.empty() || (has_shop && options.measures.empty())) {
        session.emplace(options);
        if (session->is_in_doubt()) return session->give_up();
    }
    Measures const measures = !options.measures.empty() ? measures_called(options.measures)
                              : session                 ? session->book().shop.measures
                                                        : Measures::us;
    Convertible thing;
    if (!asked.item.empty()) {
        Book const& book = session->book();
        std::string const name(asked.item);
        if (auto const found = book.ingredient_index.find(name);
            found != book.ingredient_index.end()) {
            thing = convertible(book.ingredients[found->second]);
        } else if (Formula const* const formula = book.find_formula(name)) {
            thing = convertible(*formula);
        } else {
            std::vector<std::string> names = names_of(book.ingredients);
            for (Formula const& each : book.formulas) names.push_back(each.name);
            return session->unknown("ingredient or formula",
                                    {BookPart::ingredients, BookPart::formulas}, name, names);
        }
    }
    auto const from = parse_quantity(asked.amount, measures);
    if (!from) return refuse_word(from.error());
    auto const unit = parse_unit(asked.unit, measures);
    if (!unit) return refuse_word(unit.error());
    auto const conversion = convert(*from, *unit, thing);
    if (!conversion) return refuse_word(conversion.error());
    if (session && session->has_errors()) session->tell();
    return hand_out(convert_sheet(*conversion, asked, thing, measures,
                                  session ? session->sources() : Sources()),
                    options);
}

} // namespace groat::cli
