// What must hold of every skeleton, recomputed from the files alone: from the coordinates in
// pieces.json and the rows of the tables, without asking the code that made them.
#pragma once

#include "tests/support/skeleton.h"

#include <cstddef>
#include <string>
#include <vector>

namespace tests {

// One sentence each, naming the pieces; empty when all is well.
using Complaints = std::vector<std::string>;

// The rules that the shop asked for.
struct LayoutRules {
    double edge_distance = 2.0;  // hole centre to edge, in fastener diameters
    double pitch = 3.0;          // centre to centre, in fastener diameters
    int per_lap = 0;             // fasteners wanted in every lap; 0: not asked
    Nm nose_radius = 0;          // of the rivet tool
    Nm nose_reach = 0;           // how far its nose stands out of the housing
    Nm panel_pitch = 0;          // greatest between a panel's fasteners; 0: not asked
};

// No two pieces enter each other, or a finding `interference` names both.
Complaints interference_complaints(const Skeleton& skeleton);

// Every fastener passes through a hole of each plate in its stack at one point; every hole has its
// fastener; consecutive plates touch; the total lies within the grip.
Complaints stack_complaints(const Skeleton& skeleton);

// Edge distance and pitch of every hole; the nose of the rivet tool reaches every head, unless a
// finding says that it does so only before other pieces are on, or not at all; the head and the
// formed tail stand clear of all metal and of one another, unless a finding `fasteners_meet` names
// the members. Fasteners of two pieces that are known to interfere are let pass.
Complaints layout_complaints(const Skeleton& skeleton, const LayoutRules& rules);

// Every end of every member is fastened, and every lap as often as asked, or a finding `loose_end`
// or `too_few_fasteners` names the member.
Complaints fastening_complaints(const Skeleton& skeleton, const LayoutRules& rules);

// Every hole of drill.csv is where pieces.json has it, measured from the datum of every piece of
// that mark, and no hole is missing.
Complaints drill_complaints(const Skeleton& skeleton);

// Pieces of one mark are congruent, those of the opposite hand mirrored, and congruent pieces share
// a mark.
Complaints mark_complaints(const Skeleton& skeleton);

// Every foot has one hole for fixing, in a leg that lies in the plane in which its member ends,
// with no metal and no fastener above it where a driver must reach.
Complaints foot_complaints(const Skeleton& skeleton);

// Pieces are what they say: length, datum, unit axes; cut.csv, fasteners.csv and bars.csv count
// and measure the same pieces.
Complaints table_complaints(const Skeleton& skeleton);

// Every panel is in sheet.csv with its size and cut-outs; its holes lie in its sheet; a fixed one
// is fastened, at the pitch, or a finding names it; a hung one is not.
Complaints panel_complaints(const Skeleton& skeleton, const LayoutRules& rules);

// All of the above.
Complaints skeleton_complaints(const Skeleton& skeleton, const LayoutRules& rules);

// The same of files; what cannot be read is a complaint too.
Complaints skeleton_complaints(const SkeletonFiles& files, const LayoutRules& rules);

// The nominal diameter of a fastener from its name: "blind rivet 1/8, grip 4-4", "machine screw
// 8-32", "machine screw M4"; none when the name says none.
std::optional<Nm> diameter_of_spec(std::string_view spec);

// The length of a screw from its name: "machine screw 8-32 x 1/2 in", "machine screw M4 x 12 mm".
std::optional<Nm> length_of_screw(std::string_view spec);

// Whether the place of a finding names that member of that frame.
bool names_member(std::string_view where, std::string_view frame, std::string_view member);

// How many findings of that code name all the members of that frame.
std::size_t findings_naming(const Skeleton& skeleton,
                            std::string_view code,
                            std::string_view frame,
                            const std::vector<std::string>& members);

// Whether a finding `interference` names both pieces.
bool is_found_clash(const Skeleton& skeleton, const SkeletonPiece& a, const SkeletonPiece& b);

// How much of a skeleton the checks had to look at, so that a test can tell that it was not empty.
struct SkeletonCount {
    std::size_t pieces = 0;
    std::size_t fasteners = 0;
    std::size_t ends = 0;
    std::size_t fastened_ends = 0;
};

SkeletonCount count_of(const Skeleton& skeleton);

}  // namespace tests
