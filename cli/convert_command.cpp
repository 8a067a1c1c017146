#include "session.hpp"

#include <groat/desk/convert.hpp>

#include <filesystem>
#include <optional>

namespace groat::cli {

int convert(Options const& options) {
    auto const asked = desk::asked_in(options.subjects);
    if (!asked) return refuse_words(asked.error());
    auto const hand_out = [&](Result<Sheet> const& sheet) {
        if (!sheet) return refuse_words(sheet.error());
        return put_out(desk::drawn(*sheet, options.as), options.out, options.may_replace);
    };
    std::error_code error;
    bool const has_shop =
        std::filesystem::exists(std::filesystem::path(options.books) / "shop.yaml", error);
    if (auto const sheet = desk::sheet_without_books(*asked, options.measures, has_shop))
        return hand_out(*sheet);
    Session session(options);
    if (desk::is_in_doubt(session.book())) return session.give_up();
    auto const thing = desk::thing_called(session.book(), std::string(asked->item));
    if (!thing) return session.refuse(thing.error());
    auto const sheet =
        desk::amount_sheet(*asked,
                           options.measures.empty() ? session.book().shop.measures
                                                    : desk::measures_called(options.measures),
                           *thing, session.books().sources);
    if (sheet && session.found().has_errors()) session.tell();
    return hand_out(sheet);
}

} // namespace groat::cli
