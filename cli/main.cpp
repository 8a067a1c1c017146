/// groat: reads the command line, nothing else.
#include "commands.hpp"
#include "manual.hpp"

#include <groat/base/name.hpp>
#include <groat/base/text.hpp>
#include <groat/model/word_table.hpp>

#include <CLI/CLI.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <csignal>
#include <cstdio>
#include <exception>
#include <functional>
#include <string>
#include <type_traits>
#include <utility>
#include <variant>
#include <vector>

#ifndef GROAT_VERSION
#error "GROAT_VERSION comes from the build"
#endif

namespace {

using groat::cli::Options;

/// One of a few words; the words stand in the option's own type, not a second time behind it.
CLI::Validator one_of(std::string const& type) {
    std::vector<std::string> words(1);
    for (char const c : type) {
        if (c == '|')
            words.emplace_back();
        else
            words.back() += c;
    }
    return CLI::Validator(CLI::IsMember(std::move(words))).description("");
}

/// CLI11 speaks of subcommands; a user has mistyped a command.
int unknown_command(std::vector<CLI::App*> const& commands, std::string const& word) {
    std::vector<std::string> names;
    for (CLI::App const* each : commands) names.push_back(each->get_name());
    std::string text = "groat: there is no command '" + groat::shortened(word, 40) + "'\n  help: ";
    if (auto const near = groat::nearest_name(word, names))
        text += "did you mean '" + *near + "'?\n";
    else
        text += "groat --help lists the commands\n";
    std::fputs(text.c_str(), stderr);
    return groat::cli::command_line_wrong;
}

void add_common(CLI::App& command, Options& options) {
    command.add_option("--books", options.books, "the folder of books")
        ->type_name("DIR")
        ->capture_default_str();
    command.add_option("--on", options.on, "with the prices in force on this day, as 2026-11-25")
        ->type_name("DATE");
    command.add_option("--as", options.as, "the form of the answer")
        ->check(one_of("text|html|markdown|csv|json"))
        ->type_name("text|html|markdown|csv|json")
        ->default_str("text");
    command.add_option("--out", options.out, "write to a file, whole or not at all")
        ->type_name("FILE");
    command.add_flag("--replace", options.may_replace, "let --out write over a file that exists");
}

/// How a word is said.
enum class How {
    may_be,
    must_be,
    one_of,       ///< its type names the words that there are
    one_of_usual, ///< likewise, and which it is where nothing is said
    twice,        ///< two words at once
};

/// What may be said to a verb: a word by its place, or an option, which begins with "--".
struct Word {
    std::string name;
    std::variant<std::string Options::*, std::vector<std::string> Options::*, bool Options::*> into;
    std::string what;
    std::string type = {};
    How how = How::may_be;
    std::vector<std::string> excludes = {};
    std::string needs = {};
};

/// A way to call the program.
struct Verb {
    std::string name;
    std::string what;
    int (*run)(Options const&);
    std::vector<Word> words; ///< those that other verbs have not
    std::string examples;
};

void add_word(CLI::App& command, Options& options, Word const& word) {
    CLI::Option& option = *std::visit(
        [&](auto into) -> CLI::Option* {
            if constexpr (std::is_same_v<decltype(into), bool Options::*>)
                return command.add_flag(word.name, options.*into, word.what);
            else
                return command.add_option(word.name, options.*into, word.what);
        },
        word.into);
    bool const is_option = word.name.starts_with("--");
    if (!is_option)
        option.option_text(word.type);
    else if (!word.type.empty())
        option.type_name(word.type);
    if (word.how == How::must_be) option.required();
    if (word.how == How::one_of || word.how == How::one_of_usual) option.check(one_of(word.type));
    if (word.how == How::one_of_usual) option.capture_default_str();
    if (word.how == How::twice)
        option.expected(2);
    else if (is_option && std::holds_alternative<std::vector<std::string> Options::*>(word.into))
        option.allow_extra_args(false); // each is said with its own option
    for (std::string const& other : word.excludes) option.excludes(command.get_option(other));
    if (!word.needs.empty()) option.needs(command.get_option(word.needs));
}

/// The ways to call the program, as they are announced.
struct Verbs {
    CLI::App& app;
    Options& options;
    std::function<int(Options const&)>& chosen;

    void add(Verb const& verb) {
        CLI::App& command = *app.add_subcommand(verb.name, verb.what);
        for (Word const& word : verb.words) add_word(command, options, word);
        add_common(command, options);
        command.footer(verb.examples);
        command.callback([this, run = verb.run] { chosen = run; });
    }
};

Word item() { return {"item", &Options::subject, "the name of a formula", "ITEM", How::must_be}; }

Word way() {
    return {"--in", &Options::sale_unit,
            "as an item is sold, such as 'box of 12'; else the first way listed", "UNIT"};
}

Word made() { return {"--made", &Options::made, "the day it is made, for the use-by day", "DATE"}; }

Word audience(std::string what) {
    return {"--for", &Options::audience, std::move(what), "client|maker", How::one_of_usual};
}

/// What each verb does, who does it, the words that others have not, and examples.
std::vector<Verb> all_verbs() {
    return {
        {"check",
         "look through the books and say all that is wrong or odd",
         groat::cli::check,
         {},
         "Examples:\n"
         "  groat check                           the books in this folder, at today's prices\n"
         "  groat check --books samples/bakery    those in another\n"
         "  groat check --on 2026-12-01           with the prices in force on that day"},
        {"cost",
         "what one item costs, by category, with every loss",
         groat::cli::cost,
         {item(), way()},
         "Examples:\n"
         "  groat cost 'rye plum sandwich'                  in the first way it is sold\n"
         "  groat cost 'rye plum sandwich' --in 'box of 6'  in another\n"
         "  groat cost 'rye shell'                          a part of it\n"
         "  groat cost 'rye shell' --as json                every figure rounded and exact"},
        {"quote",
         "the quote for an order, or the worksheet behind it",
         groat::cli::quote,
         {{"order", &Options::subjects,
           "the id of an order; of several, each quoted as made together", "ORDER...",
           How::must_be},
          audience("for whom: the client sees no cost, the maker sees all"),
          {"--with", &Options::with,
           "for the maker: what the packs for it cost, and why that is another sum", "packs",
           How::one_of}},
         "Examples:\n"
         "  groat quote 2026-041                            what the client gets\n"
         "  groat quote 2026-041 --for maker                every cost behind it\n"
         "  groat quote 2026-041 --for maker --with packs   and what its packs cost\n"
         "  groat quote 2026-041 2026-042 --for maker       both, made together\n"
         "  groat quote 2026-041 --on 2026-12-01            at the prices of another day\n"
         "  groat quote 2026-041 --out quote.txt            into a file"},
        {"sheets",
         "all sheets of an order as a folder, each for whom it is",
         groat::cli::sheets,
         {{"order", &Options::subject, "the id of an order", "ORDER", How::must_be}, made()},
         "In the folder:\n"
         "  client/       the quote\n"
         "  labels/       a label for each item and way it is sold\n"
         "  maker/        the worksheet, what to make, what to buy: not to be given away\n"
         "  suppliers/    an order to each supplier bought from\n"
         "Examples:\n"
         "  groat sheets 2026-041                          pages to look at, print and send\n"
         "  groat sheets 2026-041 --replace                again, when something has changed\n"
         "  groat sheets 2026-041 --made 2026-12-09        with the day of making on the labels\n"
         "  groat sheets 2026-041 --out books --as csv     for a spreadsheet"},
        {"compare",
         "suppliers' offers side by side, per usable kilogram and at the door",
         groat::cli::compare,
         {{"items", &Options::subjects, "ingredients or supplies", "ITEM..."},
          {"--all", &Options::all, "everything that anybody offers"},
          {"--amount", &Options::amount, "a month's usable amount, such as '20 kg'", "QUANTITY"},
          {"--orders",
           &Options::by_orders,
           "a month's amount is what the orders in the books take",
           "",
           How::may_be,
           {"--amount"}}},
         "Examples:\n"
         "  groat compare butter 'plain flour'        what is in force today\n"
         "  groat compare plum --amount '20 kg'       with what 20 kg cost at the door\n"
         "  groat compare --all --orders              everything, weighed by the orders in the books"},
        {"yields",
         "what your yield tests say, and whether the books agree",
         groat::cli::yields,
         {{"items", &Options::subjects, "ingredients; else all that were tested", "ITEM..."}},
         "Examples:\n"
         "  groat yields                      everything that was tested\n"
         "  groat yields plum lemon           these two\n"
         "  groat yields plum --as json       every figure rounded and exact"},
        {"import",
         "a supplier's CSV as a price list of the books, and what it changes",
         groat::cli::import_prices,
         {{"file", &Options::subject, "a price list or a receipt as CSV", "FILE.csv", How::must_be},
          {"--map", &Options::map, "how this supplier writes it, and what is what", "MAP.yaml",
           How::must_be}},
         "Examples, inside a folder of books:\n"
         "  groat import december.csv --map import/mill.yaml    what would change, nothing written\n"
         "  groat import december.csv --map import/mill.yaml --out prices/mill-december.yaml\n"
         "  groat import receipt.csv --map import/dock.yaml --on 2026-11-20 --out purchases/dock.yaml"},
        {"buy",
         "what to buy for orders, from whom, at the least outlay",
         groat::cli::buy,
         {{"orders", &Options::subjects, "the ids of orders, made together", "ORDER...",
           How::must_be},
          {"--from", &Options::supplier,
           "only the list that goes to this supplier, at their listed prices", "SUPPLIER"},
          {"--receipt", &Options::as_receipt,
           "a draft of the receipts for purchases/, to be corrected"}},
         "Examples:\n"
         "  groat buy 2026-041                              for one order, at today's prices\n"
         "  groat buy 2026-041 2026-042                     for two, made together\n"
         "  groat buy 2026-041 --from 'Fenwhistle Farm'     the list to send to one of them\n"
         "  groat buy 2026-041 --receipt --out purchases/2026-041.yaml     to put in what was paid\n"
         "What stands in stock.yaml is used first."},
        {"make",
         "the production sheet for one order, or for several made together",
         groat::cli::make,
         {{"orders", &Options::subjects, "the ids of orders", "ORDER...", How::must_be}},
         "Examples:\n"
         "  groat make 2026-041                     what to weigh, bake and pack for it\n"
         "  groat make 2026-041 2026-043            what both share is made once\n"
         "  groat make 2026-041 --out bench.txt     into a file, for the printer"},
        {"convert",
         "an amount in another unit, by the books' own densities and weights",
         groat::cli::convert,
         {{"words", &Options::subjects,
           "an amount, what it is of where that matters, and the unit wanted",
           "QUANTITY [ITEM] UNIT", How::must_be},
          {"--measures", &Options::measures,
           "what a bare cup or spoon means; else what the shop says, or us without books",
           "us|label|metric|australian|imperial", How::one_of}},
         "Examples:\n"
         "  groat convert '2 3/4 cup' 'plain flour' g     by the density in your books\n"
         "  groat convert '340 g' 'plain flour' cup       in cups and spoons\n"
         "  groat convert '350 F' C                       no books needed\n"
         "  groat convert '1 cup' mL --measures metric"},
        {"label",
         "what stands on the label of an item: ingredients, allergens, net weight",
         groat::cli::label,
         {item(),
          way(),
          made(),
          {"--allergens", &Options::allergens, "whose list of allergens; else as shop.yaml says",
           "us|eu", How::one_of},
          {"--grouped", &Options::grouped,
           "formulas stand with their own ingredients in parentheses"},
          audience("for whom: the maker also sees the weight of each ingredient")},
         "Examples:\n"
         "  groat label 'rye plum sandwich' --made 2026-12-09\n"
         "  groat label 'rye plum sandwich' --in 'box of 6' --grouped --allergens eu"},
        {"runs",
         "what was really lost in making, and what an order really cost",
         groat::cli::runs,
         {{"formulas", &Options::subjects, "formulas; all that have runs if none", "[FORMULA...]"},
          {"--order",
           &Options::order,
           "the variance of this order: price, usage, labour rate and time",
           "ORDER",
           How::may_be,
           {"formulas"}}},
         "Examples:\n"
         "  groat runs                      losses seen against the books, and what to write\n"
         "  groat runs 'rye shell'          of one formula\n"
         "  groat runs --order 2026-041     what the order cost, and where the difference comes from"},
        {"menu",
         "a menu: prices against targets, what sells and earns, and break-even",
         groat::cli::menu,
         {{"menu", &Options::subject, "the name of a menu", "MENU", How::must_be},
          {"--reach", &Options::reach,
           "which prices to raise for this over the menu, such as 'margin 35 %'", "AIM"},
          {"--move",
           &Options::move,
           "how far one price may rise for that, such as '10 %'",
           "PERCENT",
           How::may_be,
           {},
           "--reach"},
          {"--at-most",
           &Options::at_most,
           "how many prices may rise for that",
           "COUNT",
           How::may_be,
           {},
           "--reach"},
          {"--leave",
           &Options::left_alone,
           "an item whose price stays, such as 'coffee, cup'; as often as wanted",
           "ITEM",
           How::may_be,
           {},
           "--reach"},
          {"--below-first",
           &Options::below_first,
           "raise items below their target before any other",
           "",
           How::may_be,
           {},
           "--reach"},
          {"--mix",
           &Options::mix,
           "judge items within their category, or all against each other",
           "category|all",
           How::one_of_usual,
           {"--reach"}}},
         "Examples:\n"
         "  groat menu 'winter counter'                     every item, and the mix as sold\n"
         "  groat menu 'winter counter' --on 2026-12-01     at the prices of another day\n"
         "  groat menu 'winter counter' --mix all           coffee against cakes\n"
         "  groat menu 'winter counter' --reach 'margin 45 %' --move '10 %'    fewest prices to raise\n"
         "  groat menu 'winter counter' --reach 'margin 45 %' --move '10 %' --leave 'coffee, cup'\n"
         "  groat menu 'winter counter' --as json           every figure rounded and exact"},
        {"whatif",
         "an order, a menu or an item if a price, a wage, a yield were another",
         groat::cli::whatif,
         {{"subject", &Options::subject, "the id of an order, or the name of a menu or formula",
           "ORDER|MENU|ITEM", How::must_be},
          {"--change", &Options::changes,
           "what to change, as often as wanted; all together are tried", "CHANGE"},
          {"--scenario", &Options::scenario, "changes that scenarios.yaml keeps under this name",
           "NAME"},
          {"--limit",
           &Options::limit,
           "how dear this ingredient may become before the target is missed",
           "INGREDIENT",
           How::may_be,
           {"--change", "--scenario"}},
          {"--between",
           &Options::between,
           "what it cost from one day to another, at each change of a price list",
           "DATE",
           How::twice,
           {"--change", "--scenario", "--limit"}},
          way()},
         "Changes:\n"
         "  'butter +20 %'                       'butter 9.00 / kg'\n"
         "  'wage of baker 24.00'                'tariff of electricity +30 %'\n"
         "  'yield of lemon 40 %'                'baking loss of rye shell 12 %'\n"
         "  'vanilla extract -> vanilla sugar'   the same with ' in rye shell'\n"
         "Examples:\n"
         "  groat whatif 2026-041                what moves its cost most\n"
         "  groat whatif 2026-041 --change 'butter +20 %' --change 'wage of baker 24.00'\n"
         "  groat whatif 'rye plum sandwich' --limit butter\n"
         "  groat whatif 'rye plum sandwich' --between 2026-11-15 2026-12-15"},
        {"words",
         "the words of quotes, labels and supplier orders, to put your own in their place",
         groat::cli::words,
         {{"--language", &Options::language, "also in this language, of those that come with groat",
           fmt::format("{}", fmt::join(groat::shipped_languages, "|")), How::one_of_usual}},
         "Examples:\n"
         "  groat words                             every key with its English text\n"
         "  groat words --language de --as csv      with the German one, for a spreadsheet"},
    };
}

/// What is written is a folder here, not a file, and it is of pages where nothing is said.
void reword_sheets(CLI::App& command) {
    command.get_option("--as")->default_str("html");
    command.get_option("--out")->type_name("FOLDER")->description(
        "the folder, written whole or not at all; else one of the order's name, here");
    command.get_option("--replace")->description("write a folder of sheets anew");
}

/// It reads no books, so it takes none of what the others have in common.
void add_help(Verbs& verbs) {
    CLI::App& command = *verbs.app.add_subcommand(
        "help", "what a word means: a command, a topic, a key of the books, a finding");
    command
        .add_option("word", verbs.options.subject,
                    "the word; without it, the pages of the manual are listed")
        ->option_text("[WORD]");
    command.footer("Examples:\n"
                   "  groat help                      what can be asked\n"
                   "  groat help suppliers            a page of the manual\n"
                   "  groat help quote                a command");
    command.callback([chosen = &verbs.chosen] { *chosen = groat::cli::help; });
}

} // namespace

int main(int argc, char** argv) {
#ifdef SIGXFSZ
    std::signal(SIGXFSZ, SIG_IGN); // a file that may not grow is an error like any other
#endif
    Options options;
    std::function<int(Options const&)> chosen;

    CLI::App app(
        "groat: what your food costs, what to charge for it, and the sheet for the client.",
        "groat");
    app.set_version_flag("--version", "groat " GROAT_VERSION);
    app.require_subcommand(1);
    app.footer("Start with a copy of samples/starter, or look at samples/bakery:\n"
               "  groat check --books samples/bakery\n"
               "  groat quote 2026-041 --books samples/bakery\n"
               "  groat quote 2026-041 --books samples/bakery --for maker\n"
               "Each command explains itself: groat quote --help\n"
               "The manual: groat help lists its pages, groat help first-price prints one.\n"
               "Exit code: 0 done, 1 the books have errors, 2 the command line has, 3 a file could "
               "not be\n"
               "read or written.");

    Verbs verbs{app, options, chosen};
    for (Verb const& each : all_verbs()) verbs.add(each);
    reword_sheets(*app.get_subcommand("sheets"));
    add_help(verbs);

    if (argc <= 1) {
        std::fputs(app.help().c_str(), stderr);
        return groat::cli::command_line_wrong;
    }
    auto const commands = app.get_subcommands([](CLI::App*) { return true; });
    bool const is_known = std::any_of(commands.begin(), commands.end(), [&](CLI::App const* each) {
        return each->get_name() == argv[1];
    });
    if (argv[1][0] != '-' && !is_known) return unknown_command(commands, argv[1]);
    app.failure_message([](CLI::App const*, CLI::Error const& error) {
        return std::string("groat: ") + error.what() + "\n  help: --help explains\n";
    });
    try {
        app.parse(argc, argv);
    } catch (CLI::ParseError const& error) {
        int const code = app.exit(error);
        return code == 0 ? groat::cli::done : groat::cli::command_line_wrong;
    }
    auto const is_asked_for = [&](CLI::App const* each) {
        return each->get_name() == options.subject;
    };
    if (auto const command = std::find_if(commands.begin(), commands.end(), is_asked_for);
        app.got_subcommand("help") && command != commands.end()) {
        std::fputs((*command)->help("groat").c_str(), stdout);
        if (!groat::desk::help_on(options.subject, groat::cli::manual_pages()))
            return groat::cli::done;
        std::fputs("\n", stdout); // it is a key of the books as well, such as 'menu'
    }
    try {
        return chosen(options);
    } catch (std::exception const& error) {
        std::fprintf(stderr, "groat: this is a defect of groat, please report it: %s\n",
                     error.what());
        return 70;
    }
}
