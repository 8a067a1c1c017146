/// The verbs of the command line, one function each. They put what was said to lib/groat/desk/, where the work is done,
/// and hand what comes of it to `deliver`; whatever is wrong goes to standard error.
#pragma once

#include <string>
#include <vector>

namespace groat::cli {

/// What is said on the command line, the same for all verbs.
struct Options {
    std::string books = ".";
    std::string on = {};             ///< a date; empty: the order's, else today
    std::string as = {};             ///< text | html | markdown | csv | json; empty: as usual
    std::string out = {};            ///< a file, or a folder; empty: standard output
    bool may_replace = false;        ///< an existing file
    std::string audience = "client"; ///< client | maker
    std::string subject = {};        ///< an item, an order or a menu
    std::string sale_unit = {};      ///< how the item is sold
    std::string map = {};            ///< how a CSV is to be read: a file
    std::vector<std::string> subjects = {};   ///< ingredients
    bool all = false;                         ///< every ingredient that is offered
    std::string amount = {};                  ///< a month's usable amount
    std::string supplier = {};                ///< whose purchase list is wanted; empty: all of them
    std::vector<std::string> changes = {};    ///< of the books, to try
    std::string scenario = {};                ///< changes kept in the books under a name
    std::string limit = {};                   ///< an ingredient: how dear it may become
    std::vector<std::string> between = {};    ///< two dates
    std::string made = {};                    ///< the day of making, for a label
    std::string allergens = {};               ///< us | eu; empty: as the shop says
    bool grouped = false;                     ///< formulas in parentheses on a label
    std::string with = {};                    ///< packs: also on a worksheet; empty: no
    bool as_receipt = false;                  ///< a draft of what is bought, for purchases/
    std::string order = {};                   ///< an order beside the subjects
    bool by_orders = false;                   ///< a month's amount is what the orders take
    std::string measures = {};                ///< what a bare cup is; empty: the shop's
    std::string reach = {};                   ///< what a menu as a whole is to reach
    std::string move = {};                    ///< how far one of its prices may move
    std::string mix = "category";             ///< category | all: whose mix a menu is sorted by
    std::string at_most = {};                 ///< how many of its prices may change
    std::vector<std::string> left_alone = {}; ///< items whose price stays
    bool below_first = false;                 ///< items below target are the first to change
    std::string language = "en";              ///< whose words are to be listed
};

/// What a process returns.
enum Exit : int {
    done = 0,
    books_have_errors = 1,
    command_line_wrong = 2,
    file_trouble = 3,
};

/// Looks through the books and reports everything that is wrong or odd.
[[nodiscard]] int check(Options const& options);

/// What one item costs.
[[nodiscard]] int cost(Options const& options);

/// An order costed and priced, for the client or the maker.
[[nodiscard]] int quote(Options const& options);

/// All sheets of an order as a folder: quote, labels, worksheet, what to make and buy, orders to suppliers.
[[nodiscard]] int sheets(Options const& options);

/// A supplier's CSV as a price list of the books, and what it changes.
[[nodiscard]] int import_prices(Options const& options);

/// What to buy for orders, from whom, at the least outlay.
[[nodiscard]] int buy(Options const& options);

/// What stands on the label of an item.
[[nodiscard]] int label(Options const& options);

/// An order or an item with the books changed, or what moves its cost.
[[nodiscard]] int whatif(Options const& options);

/// Suppliers' offers of ingredients side by side.
[[nodiscard]] int compare(Options const& options);

/// Yield tests, and the yields in the books beside them.
[[nodiscard]] int yields(Options const& options);

/// An amount in another unit.
[[nodiscard]] int convert(Options const& options);

/// The production sheet for orders made together.
[[nodiscard]] int make(Options const& options);

/// What runs in the kitchen lost, against the books; or what an order really cost.
[[nodiscard]] int runs(Options const& options);

/// The words of the sheets that leave the house.
[[nodiscard]] int words(Options const& options);

/// What a word means: a topic of the manual, a key of the books, the code of a finding.
[[nodiscard]] int help(Options const& options);

/// A menu: its prices against their targets, and what its sales say.
[[nodiscard]] int menu(Options const& options);

} // namespace groat::cli
