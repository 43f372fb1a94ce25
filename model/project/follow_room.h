// Planes that are measured from the room, as those of a step over an obstacle, go along when what
// they are measured from is stated anew.
#pragma once

#include "model/project/project.h"

#include <string>
#include <vector>

namespace model {

// The sides of a frame, by axis, least first: the planes of a step are called after the obstacle
// and the side of it on which they lie.
inline constexpr const char* frame_sides[3][2] = {
    {"left", "right"}, {"front", "back"}, {"bottom", "top"}};

// Whether the plane is one of a step over the obstacle: "wheel well top", "wheel well top 2".
bool is_of_step_over(const std::string& plane, const std::string& obstacle);

// The planes of its steps go by an obstacle's new name.
void rename_planes_of_steps(Project& project, const std::string& before, const std::string& after);

// What lies between two signs of a sum, from one character to another.
struct TermStretch {
    std::size_t from = 0;
    std::size_t to = 0;
};

// Position of a plane as a sum: what stands between the " + " and " - " outside of brackets.
std::vector<TermStretch> terms_of(const Formula& sum);
bool has_term(const Formula& position, const Formula& term);
Formula with_term_replaced(const Formula& position, const Formula& term, const Formula& by);

// It names nothing.
bool is_plain(const Formula& formula);

// In a sum a formula that is more than a name stands in brackets.
Formula as_term(const Formula& formula);

// The obstacle as it is to be put in place of the one before, whose planes are moved on. A plain
// value that takes the place of a dimension becomes that dimension's, or one of its own where the
// dimension serves other things too.
Obstacle followed_by_planes(Project& project, const Obstacle& before, Obstacle now);

// The same of the shop's clearance.
Formula clearance_followed_by_planes(Project& project, const Formula& now);

// The planes across x and y that are measured from an obstacle and from where the frame stands.
std::vector<std::string> planes_measured_from_room(const Project& project, const Frame& frame);

}  // namespace model
