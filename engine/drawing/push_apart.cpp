#include "engine/drawing/push_apart.h"

#include <algorithm>
#include <cstddef>

namespace engine {
namespace {

// Places that crowd each other share a run around their middle (pool adjacent violators).
struct Run {
    double sum = 0.0;  // of the places less the gaps before them
    std::size_t count = 0;

    double middle() const { return sum / static_cast<double>(count); }
};

std::vector<Run> runs_of(const std::vector<double>& places, double gap) {
    std::vector<Run> runs;
    for (std::size_t i = 0; i < places.size(); ++i) {
        runs.push_back({places[i] - gap * static_cast<double>(i), 1});
        while (runs.size() > 1 && runs[runs.size() - 2].middle() > runs.back().middle()) {
            const Run last = runs.back();
            runs.pop_back();
            runs.back().sum += last.sum;
            runs.back().count += last.count;
        }
    }
    return runs;
}

}  // namespace

void push_apart(std::vector<double>& places, double gap, double least, double most) {
    if (places.empty()) return;
    const auto count = static_cast<double>(places.size());
    if (count > 1.0) gap = std::min(gap, std::max(most - least, 0.0) / (count - 1.0));
    const double end = std::max(least, most - gap * (count - 1.0));
    std::size_t i = 0;
    for (const auto& run : runs_of(places, gap)) {
        const double first = std::clamp(run.middle(), least, end);
        for (std::size_t n = 0; n < run.count; ++n, ++i)
            places[i] = first + gap * static_cast<double>(i);
    }
}

}  // namespace engine
