#include "engine/cutting/triple_cut.h"

#include <algorithm>
#include <map>
#include <set>

namespace engine::cutting {

namespace {

constexpr double least_violation = 0.03;

// Which patterns of the relaxation hold an item, and beside which others.
class Neighbours {
public:
    Neighbours(const Task& task, const Relaxed& relaxed)
        : relaxed_{relaxed}, patterns_of_(task.items.size()), beside_(task.items.size()) {
        for (std::size_t p = 0; p < relaxed.patterns.size(); ++p) {
            if (relaxed.amounts[p] > 1e-4) note(p);
        }
    }

    const std::set<int>& beside(int item) const { return beside_[static_cast<std::size_t>(item)]; }

    double sum(const Triple& triple) const {
        std::set<std::size_t> patterns;
        for (const int item : triple) {
            const auto& of = patterns_of_[static_cast<std::size_t>(item)];
            patterns.insert(of.begin(), of.end());
        }
        double sum = 0;
        for (const std::size_t p : patterns)
            sum += relaxed_.amounts[p] * halves(triple, relaxed_.patterns[p]);
        return sum;
    }

private:
    void note(std::size_t place) {
        const Pattern& pattern = relaxed_.patterns[place];
        for (const Part& part : pattern.parts) {
            patterns_of_[static_cast<std::size_t>(part.item)].push_back(place);
            for (const Part& other : pattern.parts) {
                if (other.item != part.item)
                    beside_[static_cast<std::size_t>(part.item)].insert(other.item);
            }
        }
    }

    const Relaxed& relaxed_;
    std::vector<std::vector<std::size_t>> patterns_of_;
    std::vector<std::set<int>> beside_;
};

Triple in_order(int a, int b, int c) {
    Triple triple{a, b, c};
    std::sort(triple.begin(), triple.end());
    return triple;
}

}  // namespace

int halves(const Triple& triple, const Pattern& pattern) {
    int count = 0;
    for (const Part& part : pattern.parts) {
        if (std::find(triple.begin(), triple.end(), part.item) != triple.end()) count += part.count;
    }
    return count / 2;
}

int most_halves(const Task& task, const Triple& triple) {
    int demand = 0;
    for (const int item : triple) demand += task.items[static_cast<std::size_t>(item)].demand;
    return demand / 2;
}

// A cut that is violated has an item that meets both others.
std::vector<Triple> violated_triples(const Task& task,
                                     const Relaxed& relaxed,
                                     const std::vector<Triple>& known,
                                     std::size_t most) {
    const Neighbours neighbours(task, relaxed);
    std::set<Triple> seen(known.begin(), known.end());
    std::multimap<double, Triple, std::greater<>> found;
    for (int b = 0; b < static_cast<int>(task.items.size()); ++b) {
        for (const int a : neighbours.beside(b)) {
            for (const int c : neighbours.beside(b)) {
                if (a >= c || !seen.insert(in_order(a, b, c)).second) continue;
                const Triple triple = in_order(a, b, c);
                const double over = neighbours.sum(triple) - most_halves(task, triple);
                if (over > least_violation) found.emplace(over, triple);
            }
        }
    }
    std::vector<Triple> worst;
    for (const auto& [over, triple] : found) {
        if (worst.size() < most) worst.push_back(triple);
    }
    return worst;
}

}  // namespace engine::cutting
