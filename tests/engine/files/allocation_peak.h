// How much memory operator new has given out at most, to check what a function takes.
#pragma once

#include <cstddef>

namespace tests {

// Counts from its making on; one at a time.
class AllocationPeak {
public:
    AllocationPeak();
    std::size_t bytes() const;  // the most that was held at once, beyond what was held at first

private:
    std::size_t first_;
};

}  // namespace tests
