// The linear relaxation of a nest, one column for each pattern of a bar, generated as they are
// needed; and what it proves, in whole numbers.
//
// The simplex is our own, by measurement: on cabinets of 120 to 400 pieces it takes 2 to 8 % of the
// time and the knapsack nearly all the rest, so that a library could win next to nothing. Only on
// the hardest published files (Hard28: 200 rows) it takes two thirds. CLP, the one whose licence
// (EPL) would do, brings BLAS, LAPACK and a Fortran run time with it; GLPK's (GPL) would not do.
#pragma once

#include "engine/cutting/effort.h"
#include "engine/cutting/task.h"

#include <cstdint>
#include <functional>
#include <vector>

namespace engine::cutting {

// What every plan for all items of a task satisfies: the sum of worth[k] x (bars k taken) is at
// least `wanted`. It holds for any values of the items, if no contents of bar k are worth more than
// worth[k]; so it is proven by the knapsack alone, whatever the simplex said (duality; Farley 1990
// and Gilmore & Gomory 1961 scale it to a bound on the cost; from memory).
struct Need {
    std::vector<std::int64_t> worth;
    std::int64_t wanted = 0;
};

// The bars of the task cannot meet it.
bool is_short(const Task& task, const Need& need);

struct Relaxed {
    bool is_refuted = false;  // `is_enough` said so
    bool is_solved = false;   // no further column helps; otherwise cut off
    double objective = 0;     // of prices as given, in those units
    std::vector<Pattern> patterns;
    std::vector<double> amounts;  // of each pattern
};

// How far it goes where the knapsack on a coarse grid finds nothing more but cannot tell that there
// is nothing.
enum class Care {
    rough,           // leaves it at that
    until_feasible,  // looks finer as long as the items do not find room: then no more can be
    fine,            // looks finer until it can tell
                     // proven
};

struct Relaxing {
    std::vector<double> prices;     // of bars, at least 0
    std::vector<Pattern> patterns;  // to begin with
    // Called with each need that is proven on the way: true ends the work.
    std::function<bool(const Need&)> is_enough;
    Care care = Care::until_feasible;
    int cut_rounds = 0;  // how often cuts on three items may be added (triple_cut.h)
};

Relaxed relax(const Task& task, const Relaxing& relaxing, Effort& effort);

}  // namespace engine::cutting
