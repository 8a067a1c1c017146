#include "session.hpp"

#include <groat/books/load.hpp>
#include <groat/paper/csv.hpp>
#include <groat/paper/html.hpp>
#include <groat/paper/json.hpp>
#include <groat/paper/markdown.hpp>
#include <groat/paper/text.hpp>

#include <algorithm>
#include <filesystem>
#include <utility>

namespace groat::cli {

Session::Session(Options const& options, Looks looks) : options_(options) {
    Loaded loaded = load(std::filesystem::path(options.books), sources_);
    found_ = std::move(loaded.diagnostics);
    errors_read_ = found_.errors_met();
    is_unreadable_ = loaded.unreadable;
    if (looks == Looks::at_sound_part || !has_errors())
        linked_ = sound_part(std::move(loaded.book));
    if (!linked_) book_ = std::move(loaded.book);
}

bool Session::is_in_doubt(std::initializer_list<BookPart> parts) const {
    return book().doubts.any(BookPart::shop) ||
           std::any_of(parts.begin(), parts.end(),
                       [this](BookPart part) { return book().doubts.any(part); });
}

std::optional<Date> Session::date_or(std::optional<Date> otherwise) const {
    auto const asked = asked_date(options_);
    if (!asked) return std::nullopt;
    return asked->value_or(otherwise.value_or(today()));
}

int Session::give_up() {
    complain(render(found_, sources_));
    complain(fmt::format("\ngroat: {}; nothing was calculated\n",
                         counted(found_.errors(), "error", "errors")));
    return is_unreadable() ? file_trouble : books_have_errors;
}

void Session::tell() const {
    if (found_.empty()) return;
    complain(render(found_, sources_) + "\n");
    if (has_errors())
        complain(fmt::format("groat: {}, in nothing that is used here\n\n",
                             counted(found_.errors(), "error", "errors")));
}

int Session::hand_over(Sheet const& sheet) {
    tell();
    return hand_over(drawn(sheet, options_));
}

int Session::hand_over(std::vector<Sheet> const& sheets) {
    if (sheets.size() == 1) return hand_over(sheets.front());
    if (!options_.as.empty() && options_.as != "text" && options_.as != "markdown") {
        complain(fmt::format("groat: several sheets at once come as text or markdown: ask for one "
                             "at a time with '--as {}'\n",
                             options_.as));
        return command_line_wrong;
    }
    if (!found_.empty()) complain(render(found_, sources_) + "\n");
    std::string text;
    for (Sheet const& sheet : sheets) text += (text.empty() ? "" : "\n\n") + drawn(sheet, options_);
    return hand_over(text);
}

int Session::hand_over(std::string const& text) const {
    std::string const trouble = deliver(text, options_.out, options_.may_replace);
    if (trouble.empty()) return done;
    complain(fmt::format("groat: {}\n", trouble));
    return file_trouble;
}

int Session::hand_over(std::vector<File> const& files, std::string const& folder,
                       std::string const& heading) {
    tell();
    std::string const trouble = deliver_folder(files, folder, heading, options_.may_replace);
    if (!trouble.empty()) {
        complain(fmt::format("groat: {}\n", trouble));
        return file_trouble;
    }
    std::string list;
    for (File const& each : files)
        list += (std::filesystem::path(folder) / each.path).string() + '\n';
    std::string const silence = deliver(list, {}, false);
    if (silence.empty()) return done;
    complain(fmt::format("groat: the sheets are in '{}', but: {}\n", folder, silence));
    return file_trouble;
}

std::optional<std::vector<std::size_t>> Session::ingredients(
    std::vector<std::string> const& names) {
    std::vector<std::size_t> found;
    for (std::string const& name : names) {
        auto const index = book().ingredient_index.find(name);
        if (index == book().ingredient_index.end()) {
            (void)unknown("ingredient", {BookPart::ingredients}, name,
                          names_of(book().ingredients));
            return std::nullopt;
        }
        found.push_back(index->second);
    }
    return found;
}

std::optional<Session::Item> Session::item(std::string const& name, std::string const& sale_unit) {
    auto const found = book().formula_index.find(name);
    if (found == book().formula_index.end()) {
        (void)unknown("formula", {BookPart::formulas}, name, names_of(book().formulas));
        return std::nullopt;
    }
    Formula const& formula = book().formulas[found->second];
    std::size_t const way = formula.usual_way();
    Item item{found->second, way == unresolved ? nullptr : &formula.sold_as[way]};
    if (sale_unit.empty()) return item;
    for (SaleUnit const& each : formula.sold_as) {
        item.unit = &each;
        if (each.name == sale_unit) return item;
    }
    refusal_ = command_line_wrong;
    complain(
        fmt::format("groat: '{}' is not sold as '{}'\n", formula.name, shortened(sale_unit, 60)));
    if (auto const near = nearest_name(sale_unit, names_of(formula.sold_as)))
        complain(fmt::format("  help: did you mean '{}'?\n", printable(*near)));
    else if (!formula.sold_as.empty())
        complain(
            fmt::format("  help: it is sold as: {}\n",
                        printable(fmt::format("{}", fmt::join(names_of(formula.sold_as), ", ")))));
    return std::nullopt;
}

Order const* Session::order(std::string const& id) {
    Order const* const found = book().find_order(id);
    if (found == nullptr) {
        std::vector<std::string> ids;
        for (Order const& each : book().orders) ids.push_back(each.id);
        (void)unknown("order", {BookPart::orders}, id, ids);
    }
    return found;
}

std::optional<std::vector<Order const*>> Session::orders(std::vector<std::string> const& ids) {
    std::vector<Order const*> orders;
    for (std::string const& id : ids) {
        Order const* const found = order(id);
        if (found == nullptr) return std::nullopt;
        if (std::find(orders.begin(), orders.end(), found) != orders.end()) {
            refusal_ = command_line_wrong;
            complain(fmt::format("groat: order '{}' is named twice\n  help: name each order once; "
                                 "more of an item is another 'count' in its file\n",
                                 printable(id)));
            return std::nullopt;
        }
        orders.push_back(found);
    }
    return orders;
}

int Session::unknown(std::string_view what, std::initializer_list<BookPart> parts,
                     std::string const& subject, std::vector<std::string> const& names) {
    if (std::any_of(parts.begin(), parts.end(),
                    [&](BookPart part) { return book().doubts.may_be(part, subject); }))
        return refusal_ = give_up();
    complain(fmt::format("groat: no {} is called '{}'\n", what, shortened(subject, 60)));
    if (auto const near = nearest_name(subject, names))
        complain(fmt::format("  help: did you mean '{}'?\n", printable(*near)));
    else if (!names.empty()) {
        complain(fmt::format("  help: there are:\n"));
        for (std::size_t i = 0; i < names.size() && i < 12; ++i)
            complain(fmt::format("    {}\n", printable(names[i])));
    }
    return refusal_ = command_line_wrong;
}

std::string drawn(Sheet const& sheet, Options const& options) {
    if (options.as == "json") return to_json(sheet);
    if (options.as == "html") return to_html(sheet);
    if (options.as == "markdown") return to_markdown(sheet);
    if (options.as == "csv") return to_csv(sheet);
    return to_text(sheet);
}

} // namespace groat::cli
