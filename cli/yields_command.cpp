#include "session.hpp"

#include <groat/review/yield_review.hpp>
#include <groat/sheets/yield_sheet.hpp>

namespace groat::cli {

int yields(Options const& options) {
    Session session(options);
    auto const date = session.date_or(std::nullopt);
    if (!date) return command_line_wrong;
    if (session.is_in_doubt({BookPart::yields})) return session.give_up();
    Book const& book = session.book();
    auto const named = session.ingredients(options.subjects);
    if (!named) return session.refusal();
    std::vector<std::size_t> wanted = *named;
    if (options.subjects.empty())
        for (std::size_t i = 0; i < book.ingredients.size(); ++i)
            if (!yield_tests_of(book.yield_tests, i).empty()) wanted.push_back(i);
    if (wanted.empty()) {
        complain(
            "groat: there is no yield test in the books\n"
            "  help: weigh what you buy and what is left of it, and write it in yields.yaml\n");
        return command_line_wrong;
    }
    std::vector<YieldReview> reviews;
    for (std::size_t const index : wanted) {
        auto review = review_yields(book, index, *date);
        if (review) {
            reviews.push_back(std::move(*review));
        } else if (review.error().code == Code("unknown-yield")) {
            complain(fmt::format("groat: {}\n  help: {}\n", printable(review.error().what),
                                 review.error().help));
            return command_line_wrong;
        } else {
            session.found().error(book.ingredients[index].origin, review.error());
        }
    }
    if (session.has_new_errors()) return session.give_up();
    return session.hand_over(yield_sheet(reviews, book, *date));
}

} // namespace groat::cli
