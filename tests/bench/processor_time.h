// Processor time, which other work on the machine disturbs less than the clock on the wall.
#pragma once

#include <algorithm>
#include <ctime>
#include <vector>

namespace tests {

inline double processor_ms() {
    timespec now{};
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return static_cast<double>(now.tv_sec) * 1e3 + static_cast<double>(now.tv_nsec) / 1e6;
}

// Median of several runs.
template <class Work>
double median_ms(int runs, const Work& work) {
    std::vector<double> times;
    for (int i = 0; i < runs; ++i) {
        const double start = processor_ms();
        work();
        times.push_back(processor_ms() - start);
    }
    std::sort(times.begin(), times.end());
    return times[times.size() / 2];
}

}  // namespace tests
