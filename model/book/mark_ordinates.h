// The numbers that stand around the drawing of a mark: distances from its datum end at both sides,
// gauges from the heel below.
#pragma once

#include "model/book/mark_facts.h"

#include <string>
#include <vector>

namespace model {

struct Ordinate {
    double at = 0.0;       // mm along the piece, or across the drawing
    double nearest = 0.0;  // mm across, or along: where what it tells of lies nearest to the label
    double farthest = 0.0;
    std::string text;  // "35 23/32"
    std::vector<int> holes;
    std::string numbers;  // of these holes: "3, 4", "1-7"
    bool is_end = false;  // the far end of the piece
};

struct MarkOrdinates {
    std::vector<Ordinate> left;
    std::vector<Ordinate> right;
    std::vector<Ordinate> below;
    std::vector<double> heels;  // mm across: where gauges begin
};

MarkOrdinates mark_ordinates(const Project& project,
                             const Resolved& resolved,
                             const MarkFacts& facts);

}  // namespace model
