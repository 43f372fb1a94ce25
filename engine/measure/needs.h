// Which of many things needs which others: an order that serves all, and the loops that allow none.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

namespace engine {

// Things are numbered from 0; what thing i needs is on[first[i]] .. on[first[i + 1] - 1].
struct Needs {
    std::vector<std::size_t> first{0};
    std::vector<std::size_t> on;

    std::size_t count() const { return first.size() - 1; }
    void close_thing() { first.push_back(on.size()); }
};

// All things, needed ones first; the things of one loop (or of loops that share things) stand side
// by side and have the same group, which nothing else has.
struct NeedOrder {
    std::vector<std::size_t> things;
    std::vector<std::size_t> group_of;  // by thing

    bool is_on_loop(const Needs& needs, std::size_t thing) const;
};

NeedOrder need_order(const Needs& needs);

// Finds the loops that things are on, the shortest through each, with bounded effort: where very
// many loops share things, some of them are given a loop of their group that they are not on.
class LoopFinder {
public:
    LoopFinder(const Needs& needs, const NeedOrder& order);

    // From a thing on a loop to what it needs and so on; the last one needs the first. Begins with
    // `thing` wherever it is on the loop. Of a longer loop only the first `most` things.
    // Requires is_on_loop.
    std::vector<std::size_t> loop_of(std::size_t thing, std::size_t most);

private:
    void keep_shortest_loop(std::size_t thing);
    std::vector<std::size_t> shortest_loop(std::size_t thing);
    std::vector<std::size_t> path_back(std::size_t from, std::size_t thing) const;

    const Needs& needs_;
    const NeedOrder& order_;
    std::vector<std::size_t> reached_from_;
    std::vector<std::size_t> reached_in_;     // the search in which a thing was reached last
    std::vector<std::size_t> loop_number_;    // by thing, in loops_
    std::vector<std::size_t> place_in_loop_;  // by thing
    std::vector<std::vector<std::size_t>> loops_;
    std::vector<std::size_t> first_loop_;  // by group, in loops_
    std::size_t search_ = 0;
    std::size_t effort_left_ = 1'000'000;
};

}  // namespace engine
