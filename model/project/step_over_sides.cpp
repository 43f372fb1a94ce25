#include "model/project/step_over_sides.h"

#include "model/project/change.h"
#include "model/project/follow_room.h"
#include "model/project/named_list.h"

#include <cctype>
#include <optional>
#include <utility>

namespace model {

namespace {

using engine::Error;
using engine::ErrorCode;
using engine::Result;

constexpr const char* axis_letters[] = {"x", "y", "z"};

// Names of an obstacle's sides, least first.
constexpr const char* room_sides[3][2] = {
    {"least x", "most x"}, {"least y", "most y"}, {"bottom", "top"}};

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
        return Term{true, &obstacle.clearance, name_in_formulas(obstacle.name) + " clearance",
                    note};
    }
    if (obstacle.stays_clear) return std::nullopt;
    return Term{true, &project.shop.clearance, "clearance", note};
}

std::string name_of_heads(const Frame& frame) { return name_in_formulas(frame.name) + " heads"; }

std::optional<Term> standing_of(const Frame& frame, Formula& standing) {
    if (standing.empty() || standing == "0") return std::nullopt;
    return Term{true, &standing, name_of_heads(frame),
                "what heads and tails stand out towards an obstacle"};
}

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

}  // namespace

std::string name_in_formulas(const std::string& text) {
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

std::string sum_text(const Terms& terms) {
    std::string text;
    for (const bool is_added :
         {true, false}) {  // what is added first, so that no sum begins with -
        for (const Term& term : terms) {
            if (term.is_added != is_added) continue;
            const Formula& formula = *term.source;
            if (!text.empty()) text += is_added ? " + " : " - ";
            text += as_term(formula);
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

void give_name(Project& project, const Term& term) {
    const bool is_plain = engine::names_in(*term.source).empty();
    if (!is_plain && (!term.wants_name || engine::is_name(*term.source))) return;
    const std::string name = free_name_among(term.name, project.dimensions);
    project.dimensions.push_back({.name = name, .formula = *term.source, .note = term.note});
    *term.source = name;
}

Formula shared_standing(Project& project, const Frame& frame, const Formula& standing) {
    const std::string name = name_of_heads(frame);
    const auto known = find_named(project.dimensions, name);
    const auto stands_on_it = [&](const Plane& plane) { return has_term(plane.position, name); };
    if (known == project.dimensions.end() || !std::ranges::any_of(frame.planes, stands_on_it)) {
        return standing;
    }
    if (standing.empty()) return name;
    if (standing == "0" || !engine::names_in(standing).empty()) return standing;
    const DimensionValues values(project);
    const auto has = values.length(name, name);
    const auto wants = values.length(standing, name);
    if (!has || !wants || *wants < 0) return standing;
    if (*has < *wants) known->formula = standing;
    return name;
}

Result<Sides> sides_at(
    Project& project, Obstacle& obstacle, Frame& frame, const StepOver& edit, Formula& standing) {
    const std::string where = described(obstacle);
    Faces faces{.name = name_in_formulas(obstacle.name), .at = {}};
    if (!std::visit(FacesOf{faces}, obstacle.shape)) {
        return Error{ErrorCode::invalid_value, where,
                     "only a box, a wheel well or a cylinder has faces that a frame can be stepped "
                     "over; state a box round the part of it that is in the way"};
    }
    Surroundings around{.clearance = clearance_of(project, obstacle, edit),
                        .standing = standing_of(frame, standing),
                        .origin = {}};
    for (std::size_t k = 0; k < 3; ++k) {
        around.origin[k] = {false, &frame.origin[k],
                            name_in_formulas(frame.name) + " origin " + axis_letters[k],
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
    return sides;
}

}  // namespace model
