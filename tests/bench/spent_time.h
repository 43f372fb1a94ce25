// Time by the clock on the wall beside processor time: what a graphics card does takes no processor
// time, and what several threads do at once takes more of it than the user waits.
#pragma once

#include "tests/bench/processor_time.h"

#include <algorithm>
#include <chrono>
#include <vector>

namespace tests {

struct Spent {
    double wall_ms = 0;
    double processor_ms = 0;
};

inline double wall_ms() {
    const auto now = std::chrono::steady_clock::now().time_since_epoch();
    return std::chrono::duration<double, std::milli>(now).count();
}

inline double median(std::vector<double> values) {
    std::sort(values.begin(), values.end());
    return values[values.size() / 2];
}

// What several runs took.
struct Runs {
    std::vector<double> wall_ms;
    std::vector<double> processor_ms;

    template <class Work>
    void add(const Work& work) {
        const Spent start{tests::wall_ms(), tests::processor_ms()};
        work();
        processor_ms.push_back(tests::processor_ms() - start.processor_ms);
        wall_ms.push_back(tests::wall_ms() - start.wall_ms);
    }

    Spent median() const { return {tests::median(wall_ms), tests::median(processor_ms)}; }
};

// Calls `round` at least three times, and as often as it begins within the time, up to 61 times.
template <class Round>
void repeat(double for_ms, const Round& round) {
    const double begun = wall_ms();
    for (int i = 0; i < 3 || (i < 61 && wall_ms() - begun < for_ms); ++i) round();
}

template <class Work>
Spent median_spent(const Work& work) {
    Runs runs;
    repeat(1'500.0, [&] { runs.add(work); });
    return runs.median();
}

// Of two things that are done in turn, so that what else the machine does slows both alike.
struct SpentInTurn {
    Spent first;
    Spent second;
};

// `prepare` goes before each round and is not timed.
template <class Prepare, class First, class Second>
SpentInTurn spent_in_turn(const Prepare& prepare, const First& first, const Second& second) {
    Runs firsts;
    Runs seconds;
    repeat(3'000.0, [&] {
        prepare();
        firsts.add(first);
        seconds.add(second);
    });
    return {firsts.median(), seconds.median()};
}

}  // namespace tests
