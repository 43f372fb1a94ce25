// One value of a dimension looked at: what then keeps it from fitting, and how much room is left.
// Only files of this folder use it.
#pragma once

#include "model/room/clearance.h"

#include <map>
#include <set>
#include <string>
#include <tuple>
#include <vector>

namespace model {

// What is said of what, without its numbers.
using Complaint = std::tuple<std::string, SubjectKind, std::string, std::string>;

struct BandLook {
    std::vector<Finding> findings;  // those that keep from fitting
    std::set<Complaint> complaints;
    // By obstacle and thing (number in room_things), what is left above the clearance wanted, mm;
    // what is not there has more than the reach.
    std::map<std::array<Index, 2>, double> margins;
    std::size_t things = 0;
    // Along each axis: where planes, frames and obstacles lie, mm; the same place in each look.
    std::vector<double> places;
    std::size_t first_obstacle = 0;  // in places: those before belong to frames
};

BandLook look_at(const Project& project,
                 const Catalogue& catalogue,
                 const ScanLibrary& scans,
                 double reach_mm);

std::vector<Complaint> complaints_of(const Finding& finding);

// How far anything of a frame and any obstacle moved between two looks, together, mm; none where
// they cannot be compared.
std::optional<double> way_moved(const BandLook& a, const BandLook& b);

}  // namespace model
