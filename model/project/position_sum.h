// Positions of planes as sums of the formulas of others, as short as they can be read.
#pragma once

#include "model/project/project.h"

#include <string>
#include <vector>

namespace model {

// What is added and taken away again falls out; plain values become one: "2 * width - 3 in".
class PositionSum {
public:
    explicit PositionSum(const engine::TapeStyle& shown) : shown_{shown} {}

    PositionSum& add(const Formula& length, int times = 1);

    // Each of its terms by itself.
    PositionSum& add_terms_of(const Formula& sum, int times = 1);

    Formula formula() const;

private:
    struct Term {
        Formula term;
        int times = 0;
    };

    engine::TapeStyle shown_;
    std::vector<Term> terms_;
    engine::Length plain_;
};

}  // namespace model
