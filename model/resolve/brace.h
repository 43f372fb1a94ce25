// Puts the braces of a frame against its members: flat bar across a face, held where it laps them.
#pragma once

#include "model/resolve/lap.h"
#include "model/resolve/part_maker.h"
#include "model/resolve/skeleton.h"

#include <vector>

namespace model {

// Braces go behind the pieces of the skeleton, outlines and leans behind those of `out`; the laps
// that they cover say so, and their own come last: those in which they touch a member, then those
// that need a shim between. What cannot be laid out becomes a finding.
void add_braces(const PartRoom& room,
                FrameSkeleton& skeleton,
                const Frame& frame,
                const ResolvedFrame& placed,
                Resolved& out,
                std::vector<Lap>& laps);

// Braces and leaning members that panels run into, once those are placed.
void report_panels_on_braces(const Project& project, Resolved& resolved);

}  // namespace model
