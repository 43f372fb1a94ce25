// How a piece's length becomes a length of paper: to scale, but for blank lengths that are broken
// out where it would be too long.
#pragma once

#include <vector>

namespace model {

class MarkLengthwise {
public:
    // Where something is along the piece, mm, in any order, its two ends among them; paper that
    // there is for it.
    MarkLengthwise(std::vector<double> features, double scale, double room);

    double height() const { return places_.back(); }
    // Paper from the datum end.
    double at(double mm) const;
    // Where the middle of each break lies.
    const std::vector<double>& breaks() const { return breaks_; }

private:
    std::vector<double> features_;  // mm, rising
    std::vector<double> places_;    // mm of paper
    std::vector<double> breaks_;
};

}  // namespace model
