#include "model/project/step_over_notch.h"

#include "model/project/named_list.h"
#include "model/project/references.h"

#include <algorithm>
#include <cctype>
#include <cstdlib>
#include <initializer_list>
#include <utility>

namespace model {

namespace {

using engine::Error;
using engine::ErrorCode;
using engine::Result;

constexpr const char* axis_letters[] = {"x", "y", "z"};

// Two legs of 1 1/2 in side by side and what they are set in by.
constexpr const char* usual_apart = "3 1/2 in";

// Names of a frame's sides, least first.
constexpr const char* frame_sides[3][2] = {{"left", "right"}, {"front", "back"}, {"bottom", "top"}};
constexpr const char* room_sides[3][2] = {
    {"least x", "most x"}, {"least y", "most y"}, {"bottom", "top"}};

// ---- what a formula is made of ------------------------------------------------------------------

// A formula added or taken away.
struct Term {
    bool is_added = true;
    Formula* source = nullptr;  // of the project; becomes a dimension where it is a plain value
    std::string name;           // of that dimension
    std::string note;
    bool wants_name = false;  // becomes one too where it is more than a name
};

using Terms = std::vector<Term>;

std::string sum_text(const Terms& terms) {
    std::string text;
    for (const bool is_added :
         {true, false}) {  // what is added first, so that no sum begins with -
        for (const Term& term : terms) {
            if (term.is_added != is_added) continue;
            const Formula& formula = *term.source;
            if (!text.empty()) text += is_added ? " + " : " - ";
            text += engine::is_name(formula) ? formula : "(" + formula + ")";
        }
    }
    return text;
}

Result<Nm> value_of(const Terms& terms, const DimensionValues& values, const std::string& where) {
    Nm sum = 0;
    for (const Term& term : terms) {
        const auto value = values.length(*term.source, where);
        if (!value) return value;
        sum += term.is_added ? *value : -*value;
    }
    return sum;
}

// A text that can begin the name of a dimension.
std::string as_name(const std::string& text) {
    std::string name;
    for (const char letter : text) {
        const bool fits = std::isalnum(static_cast<unsigned char>(letter)) != 0 || letter == '_';
        if (fits) {
            name += letter;
        } else if (!name.empty() && name.back() != ' ') {
            name += ' ';
        }
    }
    while (!name.empty() && name.back() == ' ') name.pop_back();
    return engine::is_name(name + " x") && !name.empty() ? name : "obstacle " + name;
}

std::string free_name(const std::string& wanted, const auto& things) {
    const auto is_taken = [&](const std::string& name) {
        return std::ranges::any_of(things, [&](const auto& it) { return it.name == name; });
    };
    std::string name = wanted;
    for (int n = 2; is_taken(name); ++n) name = wanted + " " + std::to_string(n);
    return name;
}

// A plain value becomes a dimension, so that it can be changed in one place and all follows.
void give_name(Project& project, const Term& term) {
    const bool is_plain = engine::names_in(*term.source).empty();
    if (!is_plain && (!term.wants_name || engine::is_name(*term.source))) return;
    const std::string name = free_name(term.name, project.dimensions);
    project.dimensions.push_back({.name = name, .formula = *term.source, .note = term.note});
    *term.source = name;
}

// ---- the obstacle -------------------------------------------------------------------------------

struct Faces {
    std::string name;                        // of the obstacle, as dimensions begin
    std::array<std::array<Terms, 2>, 3> at;  // in the room
};

Term face_term(const Faces& faces, bool is_added, Formula& source, const std::string& what) {
    return {is_added, &source, faces.name + " " + what, "where it is in the room"};
}

struct FacesOf {
    Faces& faces;

    bool operator()(BoxObstacle& box) const { return between(box.least, box.most); }
    bool operator()(WheelWell& well) const { return between(well.least, well.most); }

    bool operator()(CylinderObstacle& cylinder) const {
        for (std::size_t k = 0; k < 3; ++k) {
            const Term foot =
                face_term(faces, true, cylinder.foot[k], std::string("foot ") + axis_letters[k]);
            const Term radius = face_term(faces, true, cylinder.radius, "radius");
            if (k == index_of(cylinder.along)) {
                faces.at[k] = {{{foot}, {foot, face_term(faces, true, cylinder.length, "length")}}};
                continue;
            }
            Term inward = radius;
            inward.is_added = false;
            faces.at[k] = {{{foot, inward}, {foot, radius}}};
        }
        return true;
    }

    bool operator()(WallProfile&) const { return false; }
    bool operator()(CeilingProfile&) const { return false; }
    bool operator()(DoorSwing&) const { return false; }
    bool operator()(ScannedObstacle&) const { return false; }

    bool between(Place& least, Place& most) const {
        for (std::size_t k = 0; k < 3; ++k) {
            faces.at[k] = {{{face_term(faces, true, least[k], room_sides[k][0])},
                            {face_term(faces, true, most[k], room_sides[k][1])}}};
        }
        return true;
    }
};

// ---- from the room into the frame ---------------------------------------------------------------

// The axis of the room that an axis of the frame lies along, and whether it runs the same way.
struct RoomAxis {
    std::size_t axis;
    bool same_way;
};

// A quarter turn takes x to Y and y to -X.
RoomAxis room_axis(std::size_t axis, int quarter_turns) {
    const int turns = quarter_turns & 3;
    if (axis == 2) return {2, true};
    const std::size_t across = turns % 2 == 0 ? axis : 1 - axis;
    const bool same_way = axis == 0 ? turns == 0 || turns == 1 : turns == 0 || turns == 3;
    return {across, same_way};
}

// What the clearance, heads and tails, and the frame's place add to the faces.
struct Surroundings {
    std::optional<Term> clearance;
    std::optional<Term> standing;
    std::array<Term, 3> origin;
};

// The position in the frame of the notch's side.
Terms side_terms(const Faces& faces,
                 const Surroundings& around,
                 int quarter_turns,
                 std::size_t axis,
                 std::size_t side) {
    const auto [room, same_way] = room_axis(axis, quarter_turns);
    Terms terms = faces.at[room][same_way ? side : 1 - side];
    terms.push_back(around.origin[room]);
    terms.back().is_added = false;
    if (!same_way) {
        for (Term& term : terms) term.is_added = !term.is_added;
    }
    for (const auto& beyond : {around.clearance, around.standing}) {
        if (!beyond) continue;
        terms.push_back(*beyond);
        terms.back().is_added = side == 1;
    }
    return terms;
}

// The clearance that counts, where it is kept; what the edit states is put with the obstacle.
std::optional<Term> clearance_of(Project& project, Obstacle& obstacle, const StepOver& edit) {
    const std::string note = "kept free of metal";
    if (!edit.clearance.empty()) obstacle.clearance = edit.clearance;
    if (!obstacle.clearance.empty()) {
        return Term{true, &obstacle.clearance, as_name(obstacle.name) + " clearance", note};
    }
    if (obstacle.stays_clear) return std::nullopt;
    return Term{true, &project.shop.clearance, "clearance", note};
}

// What heads and tails want. A dimension that an earlier step of the frame stands on is taken again
// where it is enough.
std::optional<Term> standing_of(const Project& project, const Frame& frame, Formula& standing) {
    if (standing.empty() || standing == "0") return std::nullopt;
    const std::string name = as_name(frame.name) + " heads";
    const auto known = std::ranges::find(project.dimensions, name, &Dimension::name);
    const auto stands_on_it = [&](const Plane& plane) {
        return std::ranges::count(engine::names_in(plane.position), name) > 0;
    };
    if (known != project.dimensions.end() && std::ranges::any_of(frame.planes, stands_on_it)) {
        const DimensionValues values(project);
        const auto has = values.length(name, name);
        const auto wants = values.length(standing, name);
        if (has && wants && *has >= *wants) standing = name;
    }
    return Term{true, &standing, name, "what heads and tails stand out towards an obstacle"};
}

// ---- which sides cut the frame ------------------------------------------------------------------

using Sides = std::array<std::array<Terms, 2>, 3>;

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

Changed check_not_below_zero(const std::optional<Term>& term,
                             const std::string& what,
                             const DimensionValues& values,
                             const std::string& where) {
    if (!term) return engine::Done{};
    const auto value = values.length(*term->source, where);
    if (!value) return value.error();
    if (*value >= 0) return engine::Done{};
    return Error{ErrorCode::invalid_value, where, "its " + what + " is below zero"};
}

void add_planes(Project& project, Frame& frame, Sides& sides, Notch& notch) {
    for (std::size_t k = 0; k < 3; ++k) {
        for (std::size_t side = 0; side < 2; ++side) {
            if (is_open(notch.at(k, side))) continue;
            for (const Term& term : sides[k][side]) give_name(project, term);
            std::string& name = notch.plane[k][side];
            name = free_name(notch.name + " " + frame_sides[k][side], frame.planes);
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
    Faces faces{.name = as_name(obstacle.name), .at = {}};
    if (!std::visit(FacesOf{faces}, obstacle.shape)) {
        return Error{ErrorCode::invalid_value, where,
                     "only a box, a wheel well or a cylinder has faces that a frame can be stepped "
                     "over; state a box round the part of it that is in the way"};
    }
    Formula standing = edit.standing;
    Surroundings around{.clearance = clearance_of(project, obstacle, edit),
                        .standing = standing_of(project, frame, standing),
                        .origin = {}};
    for (std::size_t k = 0; k < 3; ++k) {
        around.origin[k] = {false, &frame.origin[k],
                            as_name(frame.name) + " origin " + axis_letters[k],
                            "where the frame stands in the room", true};
    }
    Sides sides;
    for (std::size_t k = 0; k < 3; ++k) {
        for (std::size_t side = 0; side < 2; ++side) {
            sides[k][side] = side_terms(faces, around, frame.quarter_turns, k, side);
        }
    }
    const DimensionValues values(project);
    if (auto sound = check_not_below_zero(around.clearance, "clearance", values, where); !sound) {
        return sound.error();
    }
    if (auto sound = check_not_below_zero(around.standing, "room for heads", values, where);
        !sound) {
        return sound.error();
    }
    const auto box = box_within(sides, layout, values, where);
    if (!box) return box.error();
    const auto apart = values.length(edit.apart.empty() ? usual_apart : edit.apart, where);
    if (!apart) return apart.error();
    Notch notch{.name = obstacle.name, .box = *box, .plane = {}};
    const SidesApart sides_apart(*box, frame, layout, *apart, project.shown);
    if (auto fits = sides_apart.check(where); !fits) return fits.error();
    add_planes(project, frame, sides, notch);
    return notch;
}

}  // namespace model
