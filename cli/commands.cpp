#include "commands.hpp"

#include "output.hpp"

#include <groat.hpp>
#include <groat/paper/json.hpp>
#include <groat/yaml/load.hpp>

#include <chrono>
#include <cstdio>
#include <ctime>
#include <filesystem>
#include <map>
#include <optional>

namespace groat::cli {

Date today() {
    std::time_t const now = std::time(nullptr);
    std::tm local{};
    localtime_r(&now, &local);
    return std::chrono::sys_days{std::chrono::year(local.tm_year + 1900) / (local.tm_mon + 1) /
                                 local.tm_mday};
}

std::optional<std::optional<Date>> asked_date(Options const& options) {
    if (options.on.empty()) return std::optional<Date>();
    auto const date = parse_date(options.on);
    if (date) return std::optional<Date>(*date);
    complain(fmt::format("groat: --on: {}: {}\n", date.error().what, date.error().help));
    return std::nullopt;
}

namespace {

/// A run over one folder of books: what every verb starts and ends with.
class Session {
public:
    explicit Session(Options const& options)
        : options_(options), loaded_(load(std::filesystem::path(options.books), sources_)) {
        found_.add(loaded_.diagnostics);
    }

    [[nodiscard]] Book const& book() const { return loaded_.book; }
    [[nodiscard]] Sources const& sources() const { return sources_; }
    [[nodiscard]] Diagnostics& found() { return found_; }
    [[nodiscard]] bool is_unreadable() const { return loaded_.unreadable; }
    [[nodiscard]] bool has_errors() const { return found_.has_errors(); }

    /// The date asked for, else `otherwise`, else today; nothing when it is none, which has been said.
    [[nodiscard]] std::optional<Date> date_or(std::optional<Date> otherwise) const {
        auto const asked = asked_date(options_);
        if (!asked) return std::nullopt;
        return asked->value_or(otherwise.value_or(today()));
    }

    /// Says what was found and which exit code that means.
    int give_up() {
        complain(render(found_, sources_));
        std::string const count =
            fmt::format("{} error{}", found_.errors(), found_.errors() == 1 ? "" : "s");
        complain(fmt::format("\ngroat: {}; nothing was reckoned\n", count));
        return is_unreadable() ? file_trouble : books_have_errors;
    }

    /// The warnings to standard error, the sheet to where it is wanted.
    int hand_over(Sheet const& sheet) {
        if (!found_.empty()) complain(render(found_, sources_) + "\n");
        return hand_over(options_.as == "json" ? to_json(sheet) : to_text(sheet));
    }

    int hand_over(std::string const& text) const {
        std::string const trouble = deliver(text, options_.out, options_.may_replace);
        if (trouble.empty()) return done;
        complain(fmt::format("groat: {}\n", trouble));
        return file_trouble;
    }

    /// "no ITEM is called 'x'", with what it may have been.
    template <class Names>
    int unknown(std::string_view what, std::string const& subject, Names const& names) const {
        complain(fmt::format("groat: no {} is called '{}'\n", what, shortened(subject, 60)));
        if (auto const near = nearest_name(subject, names))
            complain(fmt::format("  help: did you mean '{}'?\n", printable(*near)));
        else if (!names.empty()) {
            complain(fmt::format("  help: there are:\n"));
            for (std::size_t i = 0; i < names.size() && i < 12; ++i)
                complain(fmt::format("    {}\n", printable(names[i])));
        }
        return command_line_wrong;
    }

private:
    Options const& options_;
    Sources sources_;
    Loaded loaded_;
    Diagnostics found_;
};

/// The findings of `check` as a sheet, for programs.
Sheet findings_sheet(Session& session) {
    Book const& book = session.book();
    Sheet sheet{"check", "maker", {book.shop.name}, "Check of the books", {}};
    auto const number = [](std::size_t count) {
        return Figure{fmt::format("{}", count), Number(count), "each"};
    };
    sheet.sections.emplace_back(
        Facts{"books",
              "",
              {{"ingredients", "Ingredients and supplies", number(book.ingredients.size())},
               {"suppliers", "Suppliers", number(book.suppliers.size())},
               {"offers", "Offers", number(book.offers.size())},
               {"formulas", "Formulas", number(book.formulas.size())},
               {"orders", "Orders", number(book.orders.size())},
               {"errors", "Errors", number(session.found().errors())},
               {"warnings", "Warnings", number(session.found().warnings())}}});
    Table findings{"findings",
                   "",
                   {{"severity", "", true},
                    {"code", "", true},
                    {"file", "", true},
                    {"line", "", false},
                    {"column", "", false},
                    {"what", "", true},
                    {"help", "", true}},
                   {},
                   {}};
    for (Diagnostic const& each : session.found().sorted())
        findings.rows.push_back(
            {{},
             {std::string(each.severity == Severity::error ? "error" : "warning"), each.code,
              std::string(session.sources().name(each.where.file)), number(each.where.line),
              number(each.where.column), each.what, each.help}});
    sheet.sections.emplace_back(std::move(findings));
    return sheet;
}

std::string counted(std::size_t count, std::string_view one, std::string_view many) {
    return fmt::format("{} {}", count, count == 1 ? one : many);
}

} // namespace

int check(Options const& options) {
    Session session(options);
    auto const now = session.date_or(std::nullopt);
    if (!now) return command_line_wrong;
    Book const& book = session.book();
    if (!session.has_errors()) {
        std::map<Date, Costing> costings;
        auto const costing_on = [&](Date date) -> Costing const& {
            return costings.try_emplace(date, book, date).first->second;
        };
        session.found().add(costing_on(*now).findings());
        for (Order const& order : book.orders)
            (void)groat::quote(costing_on(options.on.empty() ? order.date.value_or(*now) : *now),
                               order, session.found());
    }
    int result = session.has_errors() ? books_have_errors : done;
    if (session.is_unreadable()) result = file_trouble;
    if (options.as == "json") {
        int const handed = session.hand_over(to_json(findings_sheet(session)));
        return handed == done ? result : handed;
    }
    std::string text = render(session.found(), session.sources());
    if (!text.empty()) text += '\n';
    if (session.is_unreadable()) return session.hand_over(text) == done ? result : file_trouble;
    text += fmt::format(
        "{}: {}, {}, {}, {}, {}: {}, {}\n", printable(options.books),
        counted(book.ingredients.size(), "ingredient or supply", "ingredients and supplies"),
        counted(book.suppliers.size(), "supplier", "suppliers"),
        counted(book.offers.size(), "offer", "offers"),
        counted(book.formulas.size(), "formula", "formulas"),
        counted(book.orders.size(), "order", "orders"),
        session.has_errors() ? counted(session.found().errors(), "error", "errors") : "no errors",
        session.found().warnings() > 0 ? counted(session.found().warnings(), "warning", "warnings")
                                       : "no warnings");
    int const handed = session.hand_over(text);
    return handed == done ? result : handed;
}

int cost(Options const& options) {
    Session session(options);
    auto const date = session.date_or(std::nullopt);
    if (!date) return command_line_wrong;
    if (session.has_errors()) return session.give_up();
    Book const& book = session.book();
    auto const found = book.formula_index.find(options.subject);
    if (found == book.formula_index.end())
        return session.unknown("formula", options.subject, names_of(book.formulas));
    Formula const& formula = book.formulas[found->second];
    SaleUnit const* unit = nullptr;
    if (!options.sale_unit.empty()) {
        for (SaleUnit const& each : formula.sold_as)
            if (each.name == options.sale_unit) unit = &each;
        if (unit == nullptr) {
            complain(fmt::format("groat: '{}' is not sold as '{}'\n", formula.name,
                                 shortened(options.sale_unit, 60)));
            if (auto const near = nearest_name(options.sale_unit, names_of(formula.sold_as)))
                complain(fmt::format("  help: did you mean '{}'?\n", printable(*near)));
            return command_line_wrong;
        }
    }
    Costing const costing(book, *date);
    auto const item = cost_item(costing, found->second, unit, session.found());
    if (!item) return session.give_up();
    return session.hand_over(cost_sheet(*item, costing));
}

int quote(Options const& options) {
    Session session(options);
    if (!session.date_or(std::nullopt)) return command_line_wrong;
    if (session.has_errors()) return session.give_up();
    Book const& book = session.book();
    Order const* order = book.find_order(options.subject);
    if (order == nullptr) {
        std::vector<std::string> ids;
        for (Order const& each : book.orders) ids.push_back(each.id);
        return session.unknown("order", options.subject, ids);
    }
    Costing const costing(book, *session.date_or(order->date));
    auto const result = groat::quote(costing, *order, session.found());
    if (!result) return session.give_up();
    if (options.audience == "maker") return session.hand_over(maker_quote_sheet(*result, costing));
    return session.hand_over(client_quote_sheet(*result, book));
}

namespace {

/// What all orders of the book take of each ingredient, usable, each order at its own prices.
std::optional<std::vector<Number>> taken_by_orders(Session& session, Date date) {
    Book const& book = session.book();
    std::vector<Number> taken(book.ingredients.size());
    for (Order const& order : book.orders) {
        Costing const costing(book, order.date.value_or(date));
        auto const result = groat::quote(costing, order, session.found());
        if (!result) return std::nullopt;
        for (IngredientUse const& use : result->cost.ingredients)
            taken[use.ingredient] += use.usable;
        for (IngredientUse const& use : result->cost.supplies) taken[use.ingredient] += use.bought;
    }
    return taken;
}

} // namespace

int compare(Options const& options) {
    Session session(options);
    auto const date = session.date_or(std::nullopt);
    if (!date) return command_line_wrong;
    if (session.has_errors()) return session.give_up();
    Book const& book = session.book();
    std::vector<std::size_t> wanted;
    for (std::string const& subject : options.subjects) {
        auto const found = book.ingredient_index.find(subject);
        if (found == book.ingredient_index.end())
            return session.unknown("ingredient", subject, names_of(book.ingredients));
        wanted.push_back(found->second);
    }
    if (options.all)
        for (std::size_t i = 0; i < book.ingredients.size(); ++i)
            if (!book.offers_of[i].empty()) wanted.push_back(i);
    if (wanted.empty()) {
        complain("groat: nothing to compare\n  help: name ingredients, or say --all\n");
        return command_line_wrong;
    }
    std::optional<std::vector<Number>> taken;
    if (options.by_orders && !(taken = taken_by_orders(session, *date))) return session.give_up();
    std::vector<Comparison> comparisons;
    for (std::size_t const index : wanted) {
        Ingredient const& ingredient = book.ingredients[index];
        std::optional<Number> amount;
        if (taken && (*taken)[index].is_positive()) amount = (*taken)[index];
        if (!options.amount.empty()) {
            auto const quantity = parse_quantity(options.amount, book.shop.measures);
            auto const units = !quantity                ? Result<Number>(Refused(quantity.error()))
                               : ingredient.is_supply() ? pieces_of(*quantity, ingredient)
                                                        : grams_of(*quantity, ingredient);
            if (!units || !units->is_positive()) {
                complain(fmt::format("groat: --amount: {}\n",
                                     units ? "it must be above 0" : units.error().what));
                return command_line_wrong;
            }
            amount = *units;
        }
        auto comparison = compare_offers(book, index, *date, amount);
        if (comparison)
            comparisons.push_back(std::move(*comparison));
        else if (options.all && comparison.error().code == "future-price")
            continue;
        else
            session.found().error(ingredient.origin, comparison.error());
    }
    if (session.has_errors()) return session.give_up();
    return session.hand_over(compare_sheet(comparisons, book, *date));
}

} // namespace groat::cli
