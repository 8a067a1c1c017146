// How long a quote takes against a bare read of the same files by yaml-cpp, in one run on one machine: quote the
// ratios, not the times.
//
//   cmake -S . -B build/bench -DGROAT_BENCH=ON -DGROAT_TESTS=OFF && cmake --build build/bench --target groat_bench
//   build/bench/tests/groat_bench samples/bakery 2026-041
#include <groat.hpp>
#include <groat/books/load.hpp>

#include <benchmark/benchmark.h>
#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/yaml.h>

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>
#include <string>
#include <vector>

namespace {

std::string folder = "samples/bakery";
std::string order_id = "2026-041";

std::vector<std::string> texts() {
    std::vector<std::string> result;
    for (auto const& entry : std::filesystem::recursive_directory_iterator(folder)) {
        if (entry.path().extension() != ".yaml") continue;
        std::ifstream file(entry.path());
        std::ostringstream text;
        text << file.rdbuf();
        result.push_back(text.str());
    }
    return result;
}

/// Takes every event and does nothing with it.
class Nothing : public YAML::EventHandler {
    void OnDocumentStart(YAML::Mark const&) override {}
    void OnDocumentEnd() override {}
    void OnNull(YAML::Mark const&, YAML::anchor_t) override {}
    void OnAlias(YAML::Mark const&, YAML::anchor_t) override {}
    void OnScalar(YAML::Mark const&, std::string const&, YAML::anchor_t,
                  std::string const&) override {}
    void OnSequenceStart(YAML::Mark const&, std::string const&, YAML::anchor_t,
                         YAML::EmitterStyle::value) override {}
    void OnSequenceEnd() override {}
    void OnMapStart(YAML::Mark const&, std::string const&, YAML::anchor_t,
                    YAML::EmitterStyle::value) override {}
    void OnMapEnd() override {}
};

void bare_yaml_events(benchmark::State& state) {
    for (auto _ : state) {
        for (std::string const& text : texts()) {
            std::istringstream stream(text);
            YAML::Parser parser(stream);
            Nothing nothing;
            while (parser.HandleNextDocument(nothing)) {
            }
        }
    }
}

void bare_yaml_nodes(benchmark::State& state) {
    for (auto _ : state)
        for (std::string const& text : texts()) benchmark::DoNotOptimize(YAML::LoadAll(text));
}

struct Read {
    groat::Sources sources;
    groat::Loaded loaded = groat::load(folder, sources);
};

void read_books(benchmark::State& state) {
    for (auto _ : state) benchmark::DoNotOptimize(Read());
}

groat::Order const& order_of(groat::Book const& book) {
    groat::Order const* order = book.find_order(order_id);
    if (order == nullptr) {
        std::fprintf(stderr, "no order %s in %s\n", order_id.c_str(), folder.c_str());
        std::exit(1);
    }
    return *order;
}

groat::LinkedBook linked(groat::Loaded const& loaded) {
    groat::Diagnostics found = loaded.diagnostics;
    return groat::link(loaded.book, found).value();
}

void calculate_book(benchmark::State& state) {
    Read const read;
    groat::Date const date = *order_of(read.loaded.book).date;
    groat::LinkedBook const book = linked(read.loaded);
    for (auto _ : state) benchmark::DoNotOptimize(groat::Costing(book, date));
}

void quote_order(benchmark::State& state) {
    Read const read;
    groat::Order const& order = order_of(read.loaded.book);
    groat::Costing const costing(linked(read.loaded), *order.date);
    for (auto _ : state) {
        groat::Diagnostics found;
        benchmark::DoNotOptimize(groat::quote(costing, order, found));
    }
}

void whole_quote(benchmark::State& state) {
    for (auto _ : state) {
        Read const read;
        groat::Order const& order = order_of(read.loaded.book);
        groat::Costing const costing(linked(read.loaded), *order.date);
        groat::Diagnostics found;
        auto const quote = groat::quote(costing, order, found);
        benchmark::DoNotOptimize(groat::to_text(groat::client_quote_sheet(
            groat::quote_for_client(*quote, read.loaded.book), read.loaded.book.shop)));
    }
}

/// Prints the usual table, then the medians as multiples of the bare read.
class Ratios : public benchmark::ConsoleReporter {
public:
    void ReportRuns(std::vector<Run> const& runs) override {
        ConsoleReporter::ReportRuns(runs);
        for (Run const& run : runs)
            if (run.aggregate_name == "median")
                medians_.emplace_back(run.run_name.function_name, run.GetAdjustedCPUTime());
    }
    void Finalize() override {
        ConsoleReporter::Finalize();
        for (auto const& [name, time] : medians_)
            std::printf("%-20s %8.3f ms  %6.2f x the bare read by events\n", name.c_str(),
                        time / 1e6, time / medians_.front().second);
    }

private:
    std::vector<std::pair<std::string, double>> medians_;
};

} // namespace

int main(int argc, char** argv) {
    benchmark::Initialize(&argc, argv);
    if (argc > 1) folder = argv[1];
    if (argc > 2) order_id = argv[2];
    for (auto* each : {benchmark::RegisterBenchmark("bare yaml, events", bare_yaml_events),
                       benchmark::RegisterBenchmark("bare yaml, nodes", bare_yaml_nodes),
                       benchmark::RegisterBenchmark("read books", read_books),
                       benchmark::RegisterBenchmark("calculate book", calculate_book),
                       benchmark::RegisterBenchmark("quote order", quote_order),
                       benchmark::RegisterBenchmark("whole quote", whole_quote)})
        each->Repetitions(9)->ReportAggregatesOnly(true);
    Ratios reporter;
    benchmark::RunSpecifiedBenchmarks(&reporter);
    return 0;
}
