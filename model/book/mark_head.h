// What stands over the drawing of a mark: its name, how many, which hand, from what, how long, and
// how its ends are cut.
#pragma once

#include "engine/drawing/page.h"
#include "model/book/mark_facts.h"

#include <string>
#include <vector>

namespace model {

class MarkHead {
public:
    MarkHead(const Project& project,
             const Resolved& resolved,
             const MarkFacts& facts,
             double width);

    double height() const;
    void draw(engine::Page& page, engine::PagePoint at) const;

private:
    std::string name_;
    std::string count_;  // "4 pieces, opposite hand"
    std::string size_;   // "36 in"
    double width_ = 0.0;
    std::vector<std::string> stock_;  // "angle 1 x 1 x 1/8, 6063-T52; 914.4 mm long"
    std::vector<std::string> ends_;
    std::vector<std::string> places_;  // frames and members
};

}  // namespace model
