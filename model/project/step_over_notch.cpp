#include "model/project/step_over_notch.h"

#include "model/project/follow_room.h"
#include "model/project/named_list.h"
#include "model/project/references.h"
#include "model/project/step_over_sides.h"

#include <algorithm>
#include <cstdlib>
#include <utility>

namespace model {

namespace {

using engine::Error;
using engine::ErrorCode;
using engine::Result;

// Two legs of 1 1/2 in side by side and what they are set in by.
constexpr const char* usual_apart = "3 1/2 in";

// ---- which sides cut the frame ------------------------------------------------------------------

// Open sides are moved far out.
Result<Box> box_within(const Sides& sides,
                       const FrameLayout& layout,
                       const DimensionValues& values,
                       const std::string& obstacle) {
    Box box;
    for (std::size_t k = 0; k < 3; ++k) {
        const auto least = value_of(sides[k][0], values, obstacle);
        const auto most = value_of(sides[k][1], values, obstacle);
        if (!least) return least.error();
        if (!most) return most.error();
        if (*least >= *most) {
            return Error{ErrorCode::invalid_value, obstacle,
                         "nothing is left of it between its faces; mend its measurements first"};
        }
        box.lo[k] = *least <= layout.hull.lo[k] ? -far_out : *least;
        box.hi[k] = *most >= layout.hull.hi[k] ? far_out : *most;
        if (*most <= layout.hull.lo[k] || *least >= layout.hull.hi[k]) {
            return Error{ErrorCode::invalid_value, obstacle,
                         "it and its clearance do not reach into the frame: there is nothing to "
                         "step over"};
        }
    }
    return box;
}

bool is_open(Nm at) { return std::abs(at) == far_out; }

// Refuses a notch whose sides are so near to planes of the frame, or to one another, that the
// members of both would be in one another's way.
class SidesApart {
public:
    SidesApart(const Box& box,
               const Frame& frame,
               const FrameLayout& layout,
               Nm apart,
               const engine::TapeStyle& shown)
        : box_{box}, frame_{frame}, layout_{layout}, apart_{apart}, shown_{shown} {}

    Changed check(const std::string& obstacle) const {
        for (std::size_t k = 0; k < 3; ++k) {
            if (!is_open(box_.lo[k]) && !is_open(box_.hi[k]) && box_.hi[k] - box_.lo[k] < apart_) {
                return Error{ErrorCode::invalid_value, obstacle,
                             "the step over it would be only " + text(box_.hi[k] - box_.lo[k]) +
                                 " from " + frame_sides[k][0] + " to " + frame_sides[k][1] +
                                 ", too little for the members round it; give it more clearance"};
            }
            for (const Plane& plane : frame_.planes) {
                if (index_of(plane.axis) != k) continue;
                if (users_of(frame_, {Target::plane, plane.name}).empty()) continue;
                for (std::size_t side = 0; side < 2; ++side) {
                    if (auto apart = check(plane, side); !apart) return apart;
                }
            }
        }
        return engine::Done{};
    }

private:
    Changed check(const Plane& plane, std::size_t side) const {
        const std::size_t axis = index_of(plane.axis);
        const Nm at = side == 0 ? box_.lo[axis] : box_.hi[axis];
        const Nm gap = std::abs(layout_.at(plane.name) - at);
        if (is_open(at) || gap >= apart_ || (gap == 0 && has_only_ties(axis, at))) {
            return engine::Done{};
        }
        return Error{ErrorCode::invalid_value, inside(described(frame_), described(plane)),
                     std::string("the ") + frame_sides[axis][side] + " of the step would lie " +
                         text(gap) + " from this plane, too near for members on both; move the " +
                         "plane until they are " + text(apart_) +
                         " apart, or change the clearance"};
    }

    // Whether what lies along that side of the notch are ties of another step, which may end at it:
    // two wells are often of one height.
    bool has_only_ties(std::size_t axis, Nm at) const {
        for (std::size_t m = 0; m < layout_.lines.size(); ++m) {
            if (frame_.members[m].rank == rank_of_ties) continue;
            const Box line = box_of(layout_.lines[m]);
            if (line.lo[axis] != at || line.hi[axis] != at) continue;
            if (engine::touches(line, box_)) return false;
        }
        return true;
    }

    std::string text(Nm length) const {
        return engine::exact_text(engine::Length::from_nm(length), shown_);
    }

    const Box& box_;
    const Frame& frame_;
    const FrameLayout& layout_;
    Nm apart_;
    const engine::TapeStyle& shown_;
};

void add_planes(Project& project, Frame& frame, const Sides& sides, Notch& notch) {
    for (std::size_t k = 0; k < 3; ++k) {
        for (std::size_t side = 0; side < 2; ++side) {
            if (is_open(notch.at(k, side))) continue;
            for (const Term& term : sides[k][side]) give_name(project, term);
            std::string& name = notch.plane[k][side];
            name = free_name_among(notch.name + " " + frame_sides[k][side], frame.planes);
            frame.planes.push_back({name, static_cast<Axis>(k), sum_text(sides[k][side])});
        }
    }
}

}  // namespace

Result<Notch> add_notch(Project& project,
                        Frame& frame,
                        const FrameLayout& layout,
                        const StepOver& edit) {
    const auto found = find_named(project.room, edit.obstacle);
    if (found == project.room.end()) return no_such<Obstacle>("", edit.obstacle);
    Obstacle& obstacle = *found;
    const std::string where = described(obstacle);
    Formula standing = edit.standing;
    const auto sides = sides_at(project, obstacle, frame, edit, standing);
    if (!sides) return sides.error();
    const DimensionValues values(project);
    const auto box = box_within(*sides, layout, values, where);
    if (!box) return box.error();
    const auto apart = values.length(edit.apart.empty() ? usual_apart : edit.apart, where);
    if (!apart) return apart.error();
    Notch notch{.name = obstacle.name, .box = *box, .plane = {}};
    const SidesApart sides_apart(*box, frame, layout, *apart, project.shown);
    if (auto fits = sides_apart.check(where); !fits) return fits.error();
    add_planes(project, frame, *sides, notch);
    return notch;
}

}  // namespace model
