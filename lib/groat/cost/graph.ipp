#pragma once

#include <groat/cost/graph.hpp>

#include <groat/base/linkage.hpp>

#include <algorithm>
#include <string>

namespace groat {

GROAT_INLINE FormulaOrder formula_order(Book const& book) {
    enum class State : unsigned char { unseen, open, done, on_cycle };
    struct Visit {
        std::size_t formula;
        std::size_t next_line;
    };
    FormulaOrder result;
    result.position.assign(book.formulas.size(), unresolved);
    std::vector<State> states(book.formulas.size(), State::unseen);
    for (std::size_t root = 0; root < book.formulas.size(); ++root) {
        if (states[root] != State::unseen) continue;
        std::vector<Visit> path{{root, 0}};
        states[root] = State::open;
        bool on_cycle = false; // of what was left last
        while (!path.empty()) {
            Visit& visit = path.back();
            Formula const& formula = book.formulas[visit.formula];
            if (on_cycle) states[visit.formula] = State::on_cycle;
            on_cycle = false;
            if (visit.next_line == formula.lines.size()) {
                on_cycle = states[visit.formula] == State::on_cycle;
                if (!on_cycle) {
                    states[visit.formula] = State::done;
                    result.position[visit.formula] = result.sequence.size();
                    result.sequence.push_back(visit.formula);
                }
                path.pop_back();
                continue;
            }
            Line const& line = formula.lines[visit.next_line++];
            if (line.of != Line::Of::formula) continue;
            std::size_t const used = line.item.index;
            bool const may_stand = states[used] == State::open || states[used] == State::on_cycle;
            auto const standing =
                std::find_if(may_stand ? path.begin() : path.end(), path.end(),
                             [&](Visit const& each) { return each.formula == used; });
            if (standing != path.end()) {
                std::string way;
                for (auto each = standing; each != path.end(); ++each)
                    way += fmt::format("'{}' uses ", book.formulas[each->formula].name);
                way += fmt::format("'{}'", book.formulas[used].name);
                Diagnostics& found = result.cycles_of[used];
                found.error(line.item.origin, "formula-cycle",
                            fmt::format("formulas go round in a circle: {}", way),
                            "take one of these lines out");
                result.cycles.add(found);
                for (auto each = standing; each != path.end(); ++each)
                    states[each->formula] = State::on_cycle;
            } else if (states[used] == State::on_cycle) {
                states[visit.formula] = State::on_cycle;
            } else if (states[used] == State::unseen) {
                states[used] = State::open;
                path.push_back({used, 0});
            }
        }
    }
    return result;
}

} // namespace groat
