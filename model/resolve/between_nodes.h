// Puts what runs from node to node of a face against the members of a frame: leaning members of
// angle, one leg along the face, and braces of flat bar; both are held where they lap the members.
#pragma once

#include "model/resolve/lap.h"
#include "model/resolve/part_maker.h"
#include "model/resolve/skeleton.h"

#include <vector>

namespace model {

// Each puts its pieces behind those of the skeleton, outlines and leans behind those of `out`; the
// laps that they cover say so, and their own come last: those in which they touch a member, then
// those that need a shim between. What cannot be laid out becomes a finding.

// Level members that are in the way of a leaning one are notched.
void add_leaning(const PartRoom& room,
                 FrameSkeleton& skeleton,
                 const Frame& frame,
                 const ResolvedFrame& placed,
                 Resolved& out,
                 std::vector<Lap>& laps);

void add_braces(const PartRoom& room,
                FrameSkeleton& skeleton,
                const Frame& frame,
                const ResolvedFrame& placed,
                Resolved& out,
                std::vector<Lap>& laps);

// Braces and leaning members that panels run into, once those are placed.
void report_panels_on_braces(const Project& project, Resolved& resolved);

}  // namespace model
