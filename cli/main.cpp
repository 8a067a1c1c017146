/// groat: reads the command line, nothing else.
#include "commands.hpp"

#include <groat/base/name.hpp>
#include <groat/model/word_table.hpp>

#include <CLI/CLI.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <csignal>
#include <cstdio>
#include <exception>
#include <functional>
#include <string>
#include <utility>
#include <vector>

#ifndef GROAT_VERSION
#error "GROAT_VERSION comes from the build"
#endif

namespace {

using groat::cli::Options;

/// One of a few words; the words stand in the option's own type, not a second time behind it.
CLI::Validator one_of(std::vector<std::string> words) {
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
        ->check(one_of({"text", "html", "markdown", "csv", "json"}))
        ->type_name("text|html|markdown|csv|json")
        ->default_str("text");
    command.add_option("--out", options.out, "write to a file, whole or not at all")
        ->type_name("FILE");
    command.add_flag("--replace", options.may_replace, "let --out write over a file that exists");
}

/// The ways to call the program.
struct Verbs {
    CLI::App& app;
    Options& options;
    std::function<int(Options const&)>& chosen;

    /// Announces a verb: what it does, who does it, the options that others have not, and examples.
    CLI::App& add(char const* name, char const* what, int (*run)(Options const&),
                  void (*add_own)(CLI::App&, Options&), char const* examples) {
        CLI::App& command = *app.add_subcommand(name, what);
        add_own(command, options);
        add_common(command, options);
        command.footer(examples);
        command.callback([this, run] { chosen = run; });
        return command;
    }
};

void nothing_more(CLI::App&, Options&) {}

void add_item(CLI::App& command, Options& options) {
    command.add_option("item", options.subject, "the name of a formula")
        ->required()
        ->option_text("ITEM");
}

void add_way(CLI::App& command, Options& options) {
    command
        .add_option("--in", options.sale_unit,
                    "as an item is sold, such as 'box of 12'; else the first way listed")
        ->type_name("UNIT");
}

void add_audience(CLI::App& command, Options& options, char const* what) {
    command.add_option("--for", options.audience, what)
        ->check(one_of({"client", "maker"}))
        ->type_name("client|maker")
        ->capture_default_str();
}

void add_check(Verbs& verbs) {
    verbs.add(
        "check", "look through the books and say all that is wrong or odd", groat::cli::check,
        nothing_more,
        "Examples:\n"
        "  groat check                           the books in this folder, at today's prices\n"
        "  groat check --books samples/bakery    those in another\n"
        "  groat check --on 2026-12-01           with the prices in force on that day");
}

void add_cost(Verbs& verbs) {
    verbs.add(
        "cost", "what one item costs, by category, with every loss", groat::cli::cost,
        [](CLI::App& command, Options& options) {
            add_item(command, options);
            add_way(command, options);
        },
        "Examples:\n"
        "  groat cost 'rye plum sandwich'                  in the first way it is sold\n"
        "  groat cost 'rye plum sandwich' --in 'box of 6'  in another\n"
        "  groat cost 'rye shell'                          a part of it\n"
        "  groat cost 'rye shell' --as json                every figure rounded and exact");
}

void add_quote(Verbs& verbs) {
    verbs.add(
        "quote", "the quote for an order, or the worksheet behind it", groat::cli::quote,
        [](CLI::App& command, Options& options) {
            command
                .add_option("order", options.subjects,
                            "the id of an order; of several, each quoted as made together")
                ->required()
                ->option_text("ORDER...");
            add_audience(command, options, "for whom: the client sees no cost, the maker sees all");
            command
                .add_option(
                    "--with", options.with,
                    "for the maker: what the packs for it cost, and why that is another sum")
                ->check(one_of({"packs"}))
                ->type_name("packs");
        },
        "Examples:\n"
        "  groat quote 2026-041                            what the client gets\n"
        "  groat quote 2026-041 --for maker                every cost behind it\n"
        "  groat quote 2026-041 --for maker --with packs   and what its packs cost\n"
        "  groat quote 2026-041 2026-042 --for maker       both, made together\n"
        "  groat quote 2026-041 --on 2026-12-01            at the prices of another day\n"
        "  groat quote 2026-041 --out quote.txt            into a file");
}

void add_made(CLI::App& command, Options& options) {
    command.add_option("--made", options.made, "the day it is made, for the use-by day")
        ->type_name("DATE");
}

void add_sheets(Verbs& verbs) {
    CLI::App& command = verbs.add(
        "sheets", "all sheets of an order as a folder, each for whom it is", groat::cli::sheets,
        [](CLI::App& own, Options& options) {
            own.add_option("order", options.subject, "the id of an order")
                ->required()
                ->option_text("ORDER");
            add_made(own, options);
        },
        "In the folder:\n"
        "  client/       the quote\n"
        "  labels/       a label for each item and way it is sold\n"
        "  maker/        the worksheet, what to make, what to buy: not to be given away\n"
        "  suppliers/    an order to each supplier bought from\n"
        "Examples:\n"
        "  groat sheets 2026-041                          pages to look at, print and send\n"
        "  groat sheets 2026-041 --replace                again, when something has changed\n"
        "  groat sheets 2026-041 --made 2026-12-09        with the day of making on the labels\n"
        "  groat sheets 2026-041 --out books --as csv     for a spreadsheet");
    command.get_option("--as")->default_str("html");
    command.get_option("--out")->type_name("FOLDER")->description(
        "the folder, written whole or not at all; else one of the order's name, here");
    command.get_option("--replace")->description("write a folder of sheets anew");
}

void add_compare(Verbs& verbs) {
    verbs.add(
        "compare", "suppliers' offers side by side, per usable kilogram and at the door",
        groat::cli::compare,
        [](CLI::App& command, Options& options) {
            command.add_option("items", options.subjects, "ingredients or supplies")
                ->option_text("ITEM...");
            command.add_flag("--all", options.all, "everything that anybody offers");
            CLI::Option* amount = command
                                      .add_option("--amount", options.amount,
                                                  "a month's usable amount, such as '20 kg'")
                                      ->type_name("QUANTITY");
            command
                .add_flag("--orders", options.by_orders,
                          "a month's amount is what the orders in the books take")
                ->excludes(amount);
        },
        "Examples:\n"
        "  groat compare butter 'plain flour'        what is in force today\n"
        "  groat compare plum --amount '20 kg'       with what 20 kg cost at the door\n"
        "  groat compare --all --orders              everything, weighed by the orders in the books");
}

void add_yields(Verbs& verbs) {
    verbs.add(
        "yields", "what your yield tests say, and whether the books agree", groat::cli::yields,
        [](CLI::App& command, Options& options) {
            command.add_option("items", options.subjects, "ingredients; else all that were tested")
                ->option_text("ITEM...");
        },
        "Examples:\n"
        "  groat yields                      everything that was tested\n"
        "  groat yields plum lemon           these two\n"
        "  groat yields plum --as json       every figure rounded and exact");
}

void add_import(Verbs& verbs) {
    verbs.add(
        "import", "a supplier's CSV as a price list of the books, and what it changes",
        groat::cli::import_prices,
        [](CLI::App& command, Options& options) {
            command.add_option("file", options.subject, "a price list or a receipt as CSV")
                ->required()
                ->option_text("FILE.csv");
            command
                .add_option("--map", options.map, "how this supplier writes it, and what is what")
                ->required()
                ->type_name("MAP.yaml");
        },
        "Examples, inside a folder of books:\n"
        "  groat import december.csv --map import/mill.yaml    what would change, nothing written\n"
        "  groat import december.csv --map import/mill.yaml --out prices/mill-december.yaml\n"
        "  groat import receipt.csv --map import/dock.yaml --on 2026-11-20 --out purchases/dock.yaml");
}

void add_buy(Verbs& verbs) {
    verbs.add(
        "buy", "what to buy for orders, from whom, at the least outlay", groat::cli::buy,
        [](CLI::App& command, Options& options) {
            command.add_option("orders", options.subjects, "the ids of orders, made together")
                ->required()
                ->option_text("ORDER...");
            command
                .add_option("--from", options.supplier,
                            "only the list that goes to this supplier, at their listed prices")
                ->type_name("SUPPLIER");
            command.add_flag("--receipt", options.as_receipt,
                             "a draft of the receipts for purchases/, to be corrected");
        },
        "Examples:\n"
        "  groat buy 2026-041                              for one order, at today's prices\n"
        "  groat buy 2026-041 2026-042                     for two, made together\n"
        "  groat buy 2026-041 --from 'Fenwhistle Farm'     the list to send to one of them\n"
        "  groat buy 2026-041 --receipt --out purchases/2026-041.yaml     to put in what was paid\n"
        "What stands in stock.yaml is used first.");
}

void add_make(Verbs& verbs) {
    verbs.add(
        "make", "the production sheet for one order, or for several made together",
        groat::cli::make,
        [](CLI::App& command, Options& options) {
            command.add_option("orders", options.subjects, "the ids of orders")
                ->required()
                ->option_text("ORDER...");
        },
        "Examples:\n"
        "  groat make 2026-041                     what to weigh, bake and pack for it\n"
        "  groat make 2026-041 2026-043            what both share is made once\n"
        "  groat make 2026-041 --out bench.txt     into a file, for the printer");
}

void add_convert(Verbs& verbs) {
    verbs.add(
        "convert", "an amount in another unit, by the books' own densities and weights",
        groat::cli::convert,
        [](CLI::App& command, Options& options) {
            command
                .add_option("words", options.subjects,
                            "an amount, what it is of where that matters, and the unit wanted")
                ->required()
                ->option_text("QUANTITY [ITEM] UNIT");
            command
                .add_option(
                    "--measures", options.measures,
                    "what a bare cup or spoon means; else what the shop says, or us without books")
                ->check(one_of({"us", "label", "metric", "australian", "imperial"}))
                ->type_name("us|label|metric|australian|imperial");
        },
        "Examples:\n"
        "  groat convert '2 3/4 cup' 'plain flour' g     by the density in your books\n"
        "  groat convert '340 g' 'plain flour' cup       in cups and spoons\n"
        "  groat convert '350 F' C                       no books needed\n"
        "  groat convert '1 cup' mL --measures metric");
}

void add_label(Verbs& verbs) {
    verbs.add(
        "label", "what stands on the label of an item: ingredients, allergens, net weight",
        groat::cli::label,
        [](CLI::App& command, Options& options) {
            add_item(command, options);
            add_way(command, options);
            add_made(command, options);
            command
                .add_option("--allergens", options.allergens,
                            "whose list of allergens; else as shop.yaml says")
                ->check(one_of({"us", "eu"}))
                ->type_name("us|eu");
            command.add_flag("--grouped", options.grouped,
                             "formulas stand with their own ingredients in parentheses");
            add_audience(command, options,
                         "for whom: the maker also sees the weight of each ingredient");
        },
        "Examples:\n"
        "  groat label 'rye plum sandwich' --made 2026-12-09\n"
        "  groat label 'rye plum sandwich' --in 'box of 6' --grouped --allergens eu");
}

void add_runs(Verbs& verbs) {
    verbs.add(
        "runs", "what was really lost in making, and what an order really cost", groat::cli::runs,
        [](CLI::App& command, Options& options) {
            CLI::Option* formulas = command
                                        .add_option("formulas", options.subjects,
                                                    "formulas; all that have runs if none")
                                        ->option_text("[FORMULA...]");
            command
                .add_option("--order", options.order,
                            "the variance of this order: price, usage, labour rate and time")
                ->type_name("ORDER")
                ->excludes(formulas);
        },
        "Examples:\n"
        "  groat runs                      losses seen against the books, and what to write\n"
        "  groat runs 'rye shell'          of one formula\n"
        "  groat runs --order 2026-041     what the order cost, and where the difference comes from");
}

void add_menu(Verbs& verbs) {
    verbs.add(
        "menu", "a menu: prices against targets, what sells and earns, and break-even",
        groat::cli::menu,
        [](CLI::App& command, Options& options) {
            command.add_option("menu", options.subject, "the name of a menu")
                ->required()
                ->option_text("MENU");
            CLI::Option* reach =
                command
                    .add_option(
                        "--reach", options.reach,
                        "which prices to raise for this over the menu, such as 'margin 35 %'")
                    ->type_name("AIM");
            command
                .add_option("--move", options.move,
                            "how far one price may rise for that, such as '10 %'")
                ->type_name("PERCENT")
                ->needs(reach);
            command.add_option("--at-most", options.at_most, "how many prices may rise for that")
                ->type_name("COUNT")
                ->needs(reach);
            command
                .add_option("--leave", options.left_alone,
                            "an item whose price stays, such as 'coffee, cup'; as often as wanted")
                ->type_name("ITEM")
                ->allow_extra_args(false)
                ->needs(reach);
            command
                .add_flag("--below-first", options.below_first,
                          "raise items below their target before any other")
                ->needs(reach);
            command
                .add_option("--mix", options.mix,
                            "judge items within their category, or all against each other")
                ->check(one_of({"category", "all"}))
                ->type_name("category|all")
                ->capture_default_str()
                ->excludes(reach);
        },
        "Examples:\n"
        "  groat menu 'winter counter'                     every item, and the mix as sold\n"
        "  groat menu 'winter counter' --on 2026-12-01     at the prices of another day\n"
        "  groat menu 'winter counter' --mix all           coffee against cakes\n"
        "  groat menu 'winter counter' --reach 'margin 45 %' --move '10 %'    fewest prices to raise\n"
        "  groat menu 'winter counter' --reach 'margin 45 %' --move '10 %' --leave 'coffee, cup'\n"
        "  groat menu 'winter counter' --as json           every figure rounded and exact");
}

void add_words(Verbs& verbs) {
    verbs.add(
        "words", "the words of quotes, labels and supplier orders, to put your own in their place",
        groat::cli::words,
        [](CLI::App& command, Options& options) {
            command
                .add_option("--language", options.language,
                            "also in this language, of those that come with groat")
                ->check(one_of(
                    {std::begin(groat::shipped_languages), std::end(groat::shipped_languages)}))
                ->type_name(fmt::format("{}", fmt::join(groat::shipped_languages, "|")))
                ->capture_default_str();
        },
        "Examples:\n"
        "  groat words                             every key with its English text\n"
        "  groat words --language de --as csv      with the German one, for a spreadsheet");
}

/// It reads no books, so it takes none of what the others have in common.
void add_help(Verbs& verbs) {
    CLI::App& command = *verbs.app.add_subcommand(
        "help", "what a word means: a command, a topic, a key of the books, a finding");
    command.add_option("word", verbs.options.subject, "the word")->required()->option_text("WORD");
    command.callback([chosen = &verbs.chosen] { *chosen = groat::cli::help; });
}

void add_whatif(Verbs& verbs) {
    verbs.add(
        "whatif", "an order, a menu or an item if a price, a wage, a yield were another",
        groat::cli::whatif,
        [](CLI::App& command, Options& options) {
            command
                .add_option("subject", options.subject,
                            "the id of an order, or the name of a menu or formula")
                ->required()
                ->option_text("ORDER|MENU|ITEM");
            CLI::Option* const change =
                command
                    .add_option("--change", options.changes,
                                "what to change, as often as wanted; all together are tried")
                    ->type_name("CHANGE")
                    ->allow_extra_args(false);
            CLI::Option* const scenario =
                command
                    .add_option("--scenario", options.scenario,
                                "changes that scenarios.yaml keeps under this name")
                    ->type_name("NAME");
            CLI::Option* const limit =
                command
                    .add_option("--limit", options.limit,
                                "how dear this ingredient may become before the target is missed")
                    ->type_name("INGREDIENT")
                    ->excludes(change)
                    ->excludes(scenario);
            command
                .add_option("--between", options.between,
                            "what it cost from one day to another, at each change of a price list")
                ->type_name("DATE")
                ->expected(2)
                ->excludes(change)
                ->excludes(scenario)
                ->excludes(limit);
            add_way(command, options);
        },
        "Changes:\n"
        "  'butter +20 %'                       'butter 9.00 / kg'\n"
        "  'wage of baker 24.00'                'tariff of electricity +30 %'\n"
        "  'yield of lemon 40 %'                'baking loss of rye shell 12 %'\n"
        "  'vanilla extract -> vanilla sugar'   the same with ' in rye shell'\n"
        "Examples:\n"
        "  groat whatif 2026-041                what moves its cost most\n"
        "  groat whatif 2026-041 --change 'butter +20 %' --change 'wage of baker 24.00'\n"
        "  groat whatif 'rye plum sandwich' --limit butter\n"
        "  groat whatif 'rye plum sandwich' --between 2026-11-15 2026-12-15");
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
               "Exit code: 0 done, 1 the books have errors, 2 the command line has, 3 a file could "
               "not be\n"
               "read or written.");

    Verbs verbs{app, options, chosen};
    add_check(verbs);
    add_cost(verbs);
    add_quote(verbs);
    add_sheets(verbs);
    add_compare(verbs);
    add_yields(verbs);
    add_import(verbs);
    add_buy(verbs);
    add_make(verbs);
    add_convert(verbs);
    add_label(verbs);
    add_runs(verbs);
    add_menu(verbs);
    add_whatif(verbs);
    add_words(verbs);
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
        return groat::cli::done;
    }
    try {
        return chosen(options);
    } catch (std::exception const& error) {
        std::fprintf(stderr, "groat: this is a defect of groat, please report it: %s\n",
                     error.what());
        return 70;
    }
}
