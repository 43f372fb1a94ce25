// One drawing for each mark and hand, to drill and cut from: the piece unrolled to scale, with its
// distances from the datum end, its gauges, its drill table and its ends.
#pragma once

#include "engine/drawing/page.h"
#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"

#include <cstddef>
#include <vector>

namespace model {

struct MarkPlace {
    Index mark = 0;
    Hand hand = Hand::none;
    std::size_t page = 0;  // the first one that has it, from 0

    bool operator==(const MarkPlace&) const = default;
};

struct MarkDrawings {
    std::vector<engine::Page> pages;  // portrait, not numbered yet: see number_pages
    std::vector<MarkPlace> places;    // in order of mark; as drawn before opposite
};

// Small pieces share a page; what has many holes goes on to the next one.
MarkDrawings mark_drawings(const Project& project,
                           const Catalogue& catalogue,
                           const Resolved& resolved,
                           engine::Paper paper);

// The pages alone.
std::vector<engine::Page> mark_pages(const Project& project,
                                     const Catalogue& catalogue,
                                     const Resolved& resolved,
                                     engine::Paper paper);

}  // namespace model
