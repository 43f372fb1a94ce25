// One value of a dimension looked at: what then keeps it from fitting, and where everything stands.
// Only files of this folder use it.
#pragma once

#include "engine/geometry/bounds.h"
#include "engine/geometry/convex_body.h"
#include "model/room/clearance.h"

#include <array>
#include <map>
#include <set>
#include <string>
#include <tuple>
#include <vector>

namespace model {

// What is said of which two, without its numbers; of one where the second is empty.
using Complaint = std::tuple<std::string, std::string, std::string>;

struct BandLook {
    // A frame's planes along each of its own axes, mm from its origin.
    using Planes = std::array<std::vector<double>, 3>;

    bool is_whole = true;  // otherwise `findings` are not all, and of the rest only `planes`
    std::vector<Finding> findings;  // those that keep from fitting
    std::set<Complaint> complaints;
    std::vector<Finding> not_measured;  // obstacles of which nothing is known: scans not read

    std::vector<RoomObstacle> obstacles;
    std::vector<engine::Bounds> things;  // by number, see number_of; of some there is none
    std::vector<Index> frame_of;         // by number
    std::vector<engine::Bounds> frames;  // with the heads and tails of its fasteners
    std::vector<Planes> planes;          // by frame
    double frame_gap = 0.0;              // mm, as the shop has it

    // By obstacle (its place in `obstacles`) and thing, what is left above the clearance wanted,
    // mm, or less than that; below 0 where it is too near. What is not there has more than the
    // reach.
    std::map<std::array<Index, 2>, double> margins;
    std::map<Index, std::vector<engine::ConvexBody>> bodies;  // of things in `margins`
};

BandLook look_at(const Project& project,
                 const Catalogue& catalogue,
                 const ScanLibrary& scans,
                 double reach_mm);

// For values of which many do not fit: as above, but where an error shows early no more than that
// is told, with the planes, as `is_whole` says.
BandLook glance_at(const Project& project,
                   const Catalogue& catalogue,
                   const ScanLibrary& scans,
                   double reach_mm);

std::vector<Complaint> complaints_of(const Finding& finding);

}  // namespace model
