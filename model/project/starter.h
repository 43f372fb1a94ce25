// What the starters share: dimensions with free names, planes, rails round a level, posts, bays.
#pragma once

#include "model/project/change.h"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace model {

// A frame that is being started in a project. Rails' and posts' legs point inward, heels lie on the
// lines (design of the staggered lap: outside faces of a cabinet lie on its layout planes).
class Starter {
public:
    Starter(Project& project, std::string frame, std::string stock, const Place& origin);

    // A formula for use in another one. A plain value becomes a dimension, called `name` or, where
    // that is taken, after the frame too, so that it can be changed and dragged in one place.
    Formula value(const std::string& name, const Formula& formula, const std::string& note);

    void plane(const std::string& name, Axis axis, const Formula& position);
    void member(Member member);
    void bay(Bay bay);

    // Puts the frame into the project.
    Changed finish();

    const Frame& frame() const { return frame_; }

private:
    std::string free_dimension_name(const std::string& wanted) const;

    Project& project_;
    Frame frame_;
    std::string stock_;
};

// Which face of the cabinet a plane is: where a leg that points inward goes.
struct Side {
    std::string_view plane;
    Sense inward = Sense::plus;
};

// The planes that part the cabinet along x and z above its foot.
struct Partitions {
    std::vector<std::string> dividers;  // rising x
    std::vector<std::string> shelves;   // rising z
};

// Adds the planes "divider 1" .. and "shelf 1" .. with their dimensions.
Partitions add_partitions(Starter& start,
                          std::span<const Formula> dividers,
                          std::span<const Formula> shelf_levels);

// Refuses what no starter can begin with: a frame of that name, no such stock, unreadable formulas.
struct StarterFormula {
    std::string name;
    Formula formula;
};

Changed check_start(const Project& project,
                    const std::string& frame,
                    const std::string& stock,
                    std::span<const StarterFormula> formulas);

// A rail along x, a rail along y, a post; named as given.
void add_x_rail(
    Starter& start, const std::string& name, const Side& y, const Side& z, Seat seat = Seat::heel);
void add_y_rail(Starter& start,
                const std::string& name,
                const Side& x,
                const Side& z,
                const std::string& from,
                const std::string& to);
void add_post(Starter& start,
              const std::string& name,
              const Side& x,
              const Side& y,
              const std::string& from,
              const std::string& to);

// One bay for each cell between the dividers and the given levels (planes across z, rising).
void add_bays(Starter& start,
              const std::string& prefix,
              std::span<const std::string> dividers,
              const std::array<std::string, 2>& y,
              std::span<const std::string> levels);

}  // namespace model
