#include "manual.hpp"
#include "session.hpp"

namespace groat::cli {

int help(Options const& options) {
    if (options.subject.empty())
        return put_out(desk::help_overview(manual_pages()), options.out, options.may_replace);
    auto const text = desk::help_on(options.subject, manual_pages());
    return text ? put_out(*text, options.out, options.may_replace) : refuse_words(text.error());
}

} // namespace groat::cli
