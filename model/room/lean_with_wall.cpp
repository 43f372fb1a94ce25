#include "model/room/lean_with_wall.h"

#include "model/resolve/named_values.h"
#include "model/room/obstacle_shape.h"
#include "model/room/wall_lean.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <utility>

namespace model {
namespace {

using engine::Error;
using engine::ErrorCode;
using engine::Result;

constexpr std::size_t up = 2;  // the axis of levels

template <class Thing>
const Thing* named(const std::vector<Thing>& things, std::string_view name) {
    const auto at = std::ranges::find(things, name, &Thing::name);
    return at == things.end() ? nullptr : &*at;
}

// ---- formulas -----------------------------------------------------------------------------------

bool is_zero(const Formula& formula) { return formula == "0"; }

std::string term(const Formula& formula) {
    return engine::is_name(formula) ? formula : "(" + formula + ")";
}

Formula less(const Formula& from, const Formula& taken) {
    return is_zero(taken) ? from : term(from) + " - " + term(taken);
}

// ---- the frame ----------------------------------------------------------------------------------

// Which of the frame's axes runs towards the wall, and which way.
struct Towards {
    std::size_t axis = 1;
    int sense = 1;
};

Towards towards(const ResolvedFrame& placed, const WallProfile& wall) {
    const int to_wall = wall.inside == Sense::plus ? -1 : 1;  // along X of the room
    for (std::size_t axis = 0; axis < 2; ++axis) {
        std::array<int, 3> along{};
        along[axis] = 1;
        const int x = direction_to_room(placed, along)[0];
        if (x != 0) return {axis, x * to_wall};
    }
    return {};
}

// The planes that a member lies on, by axis; none across its run.
const std::string& plane_across(const Member& member, std::size_t axis) {
    const auto axes = across(member.run);
    return member.on[index_of(axes[0]) == axis ? 0 : 1];
}

bool runs_along(const Member& member, std::size_t axis) { return index_of(member.run) == axis; }

class Leaner {
public:
    Leaner(const Project& project,
           const Catalogue& catalogue,
           const Resolved& resolved,
           const Frame& frame,
           const Obstacle& wall)
        : project_{project},
          catalogue_{catalogue},
          frame_{frame},
          wall_{wall},
          placed_{resolved.frames[static_cast<std::size_t>(&frame - project.frames.data())]},
          values_{project, resolved},
          to_{towards(placed_, std::get<WallProfile>(wall.shape))} {}

    Result<std::vector<Edit>> edits() {
        find_side();
        if (auto free = nothing_in_the_way(); !free) return free.error();
        if (auto found = find_posts(); !found) return found.error();
        if (auto lean = find_lean(); !lean) return lean.error();
        state_lean();
        if (auto added = add_planes(); !added) return added.error();
        for (const auto& member : frame_.members) move(member);
        for (const auto& bay : frame_.bays) move(bay);
        return std::move(edits_);
    }

private:
    Error refuse(const std::string& why) const {
        return {ErrorCode::invalid_value, "frame " + frame_.name, why};
    }

    std::optional<Nm> at(const std::string& plane) const {
        const auto* it = named(frame_.planes, plane);
        if (it == nullptr) return std::nullopt;
        return placed_.planes[static_cast<std::size_t>(it - frame_.planes.data())].position;
    }

    const Formula& formula_of(const std::string& plane) const {
        return named(frame_.planes, plane)->position;
    }

    // ---- what leans -----------------------------------------------------------------------------

    // The plane furthest towards the wall on which members lie or end.
    void find_side() {
        const auto look_at = [&](const std::string& plane) {
            const auto here = at(plane);
            const auto far = side_.empty() ? std::nullopt : at(side_);
            if (here && (!far || (*here - *far) * to_.sense > 0)) side_ = plane;
        };
        for (const auto& member : frame_.members) {
            if (runs_along(member, to_.axis)) {
                look_at(member.from);
                look_at(member.to);
            } else {
                look_at(plane_across(member, to_.axis));
            }
        }
    }

    Result<engine::Done> find_posts() {
        for (const auto& member : frame_.members) {
            const bool is_post = runs_along(member, up) && lies_on_side(member);
            if (is_post && !take_post(member)) {
                return refuse("what stands on the side at " + wall_.name +
                              " is no angle with its heel on the line, as far as it has places; "
                              "only that can lean");
            }
        }
        if (posts_.empty()) {
            return refuse("no post stands on the side at " + wall_.name +
                          " that could lean; put one there first");
        }
        return engine::Done{};
    }

    bool lies_on_side(const Member& member) const {
        return !runs_along(member, to_.axis) && plane_across(member, to_.axis) == side_;
    }

    bool take_post(const Member& member) {
        const auto* stock = named(project_.stock, member.stock);
        const auto* section = stock == nullptr ? nullptr : find_section(catalogue_, stock->section);
        if (section == nullptr || section->form != SectionForm::angle) return false;
        if (member.seat != Seat::heel || !at(member.from) || !at(member.to)) return false;
        posts_.push_back(&member);
        leg_ = std::max(leg_, section->a.nm());
        add_level(member.from);
        add_level(member.to);
        return true;
    }

    void add_level(const std::string& plane) {
        const auto z = at(plane);
        if (z) levels_.emplace(plane, Level{*z});
    }

    Result<engine::Done> nothing_in_the_way() {
        const auto axis = static_cast<Axis>(to_.axis);
        const auto side = to_.sense > 0 ? Sense::plus : Sense::minus;
        for (const auto& panel : frame_.panels) {
            const auto* bay = named(frame_.bays, panel.bay);
            if (bay == nullptr || end_of(*bay) != side_) continue;
            if (panel.face_axis != axis || panel.face_side != side) continue;
            return refuse("panel " + panel.name +
                          " closes that side, and sheet between level rails does not lean with "
                          "the posts; take it out first");
        }
        const auto uses_side = [&](const auto& bar) {
            return bar.face == side_ || bar.from[0] == side_ || bar.from[1] == side_ ||
                   bar.to[0] == side_ || bar.to[1] == side_;
        };
        for (const auto& brace : frame_.diagonals) {
            if (uses_side(brace))
                return refuse("brace " + brace.name + " ends on that side; take it out first");
        }
        for (const auto& leaning : frame_.leaning) {
            if (uses_side(leaning))
                return refuse(leaning.name + " leans on that side already; take it out first");
        }
        return engine::Done{};
    }

    // ---- how far --------------------------------------------------------------------------------

    Result<engine::Done> find_lean() {
        for (const auto& member : frame_.members) {
            if (!runs_along(member, up) && touches_side(member))
                add_level(plane_across(member, up));
        }
        for (const auto& bay : frame_.bays) {
            if (end_of(bay) == side_) add_level(bay.z[1]);
        }
        foot_ = top_ = posts_.front()->from;
        for (const auto& [plane, level] : levels_) {
            if (level.z < levels_.at(foot_).z) foot_ = plane;
            if (level.z > levels_.at(top_).z) top_ = plane;
        }
        const auto shape = obstacle_shape(wall_.shape, values_);
        if (shape.bodies.empty()) return refuse(wall_.name + " has no shape to lean with");
        const auto& profile = std::get<WallProfile>(wall_.shape);
        const double lean_mm = wall_lean(shape.bodies, profile.inside, stretch());
        const double height_mm = engine::Length::from_nm(height()).mm();
        if (lean_mm > height_mm) {
            return refuse(wall_.name + " leans in by more than 45 degrees over the posts' height");
        }
        const auto step = engine::tape_step(project_.shown).nm();
        lean_ = static_cast<Nm>(std::ceil(lean_mm * 1e6 / static_cast<double>(step) - 1e-6)) * step;
        if (lean_ > 0) return engine::Done{};
        return refuse(wall_.name +
                      " does not lean in over the height of the posts, or does not run along them");
    }

    Nm height() const { return levels_.at(top_).z - levels_.at(foot_).z; }

    // Of the posts in the room: along it and upward, mm.
    Stretch stretch() const {
        Stretch stretch{.up = {room_z(levels_.at(foot_).z), room_z(levels_.at(top_).z)}};
        bool is_first = true;
        for (const auto* post : posts_) {
            const auto beside = at(plane_across(*post, 1 - to_.axis));
            if (!beside) continue;
            Point point{};
            point[1 - to_.axis] = *beside;
            const double y = engine::Length::from_nm(to_room(placed_, point)[1]).mm();
            stretch.along = {is_first ? y : std::min(stretch.along[0], y),
                             is_first ? y : std::max(stretch.along[1], y)};
            is_first = false;
        }
        return stretch;
    }

    double room_z(Nm z) const {
        return engine::Length::from_nm(to_room(placed_, {0, 0, z})[2]).mm();
    }

    // ---- what is stated -------------------------------------------------------------------------

    Formula new_dimension(const std::string& wanted, Nm value, const std::string& note) {
        const auto is_taken = [&](const std::string& name) {
            return named(project_.dimensions, name) != nullptr;
        };
        std::string name = wanted;
        if (is_taken(name) && engine::is_name(frame_.name)) name = frame_.name + " " + wanted;
        for (int n = 2; is_taken(name); ++n) name = wanted + " " + std::to_string(n);
        edits_.emplace_back(PutDimension{
            {.name = name,
             .formula = engine::exact_text(engine::Length::from_nm(value), project_.shown),
             .note = note},
            {}});
        return name;
    }

    void state_lean() {
        leans_in_ = new_dimension("leans in", lean_,
                                  "how much further in the top of " + frame_.name +
                                      " stands than its foot, as " + wall_.name + " does");
        const bool has_inner = std::ranges::any_of(
            frame_.members, [&](const Member& member) { return is_inner_rail(member); });
        // Common practice: the posts pass outside of a shelf's rail with as much room again.
        if (has_inner) {
            behind_ = new_dimension("behind rail", 2 * leg_,
                                    "from the rail of a shelf to the line of the posts that pass "
                                    "outside of it");
        }
    }

    bool touches_side(const Member& member) const {
        if (runs_along(member, to_.axis)) return member.from == side_ || member.to == side_;
        return lies_on_side(member);
    }

    // Along the side, between foot and top.
    bool is_inner_rail(const Member& member) const {
        return !runs_along(member, up) && lies_on_side(member) &&
               is_inner(plane_across(member, up));
    }

    // By height: planes of two names may lie at one.
    bool is_inner(const std::string& level) const {
        return !is_at(level, foot_) && !is_at(level, top_);
    }

    bool is_at(const std::string& level, const std::string& other) const {
        return at(level) == at(other);
    }

    // Where the line of the posts lies at the level.
    Formula line_formula(const std::string& level) const {
        const auto& foot = formula_of(foot_);
        Formula in = leans_in_;
        if (!is_at(level, top_)) {
            in = "(" + leans_in_ + " * (" + term(less(formula_of(level), foot)) + " / " +
                 term(less(formula_of(top_), foot)) + "))";
        }
        const auto& side = formula_of(side_);
        if (to_.sense > 0) return term(side) + " - " + in;
        return is_zero(side) ? in : term(side) + " + " + in;
    }

    std::string new_plane(const std::string& wanted, const Formula& position) {
        std::string name = wanted;
        for (int n = 2; named(frame_.planes, name) != nullptr; ++n) {
            name = wanted + " " + std::to_string(n);
        }
        edits_.emplace_back(
            PutPlane{frame_.name, {name, static_cast<Axis>(to_.axis), position}, {}});
        return name;
    }

    Result<engine::Done> add_planes() {
        for (auto& entry : levels_) {
            const std::string& plane = entry.first;
            Level& level = entry.second;
            if (is_at(plane, foot_)) {
                level.line = level.rail = side_;
                continue;
            }
            const auto line = line_formula(plane);
            level.line = level.rail = new_plane(side_ + " at " + plane, line);
            level.has_inner = std::ranges::any_of(frame_.members, [&](const Member& member) {
                return is_inner_rail(member) && is_at(plane_across(member, up), plane);
            });
            if (!level.has_inner) continue;
            const auto sign = to_.sense > 0 ? " - " : " + ";
            level.rail = new_plane(side_ + " rail at " + plane, line + sign + behind_);
        }
        return leaves_room();
    }

    // What runs towards the side begins well in front of the posts' line at the top.
    Result<engine::Done> leaves_room() const {
        for (const auto& member : frame_.members) {
            if (!runs_along(member, to_.axis) || !touches_side(member)) continue;
            const auto begins = at(member.from == side_ ? member.to : member.from);
            const auto ends = at(side_);
            if (!begins || !ends) continue;
            if ((*ends - *begins) * to_.sense < lean_ + 5 * leg_) {
                return refuse("it is too shallow to lean in as far as " + wall_.name + " does");
            }
        }
        return engine::Done{};
    }

    // ---- what follows ---------------------------------------------------------------------------

    void move(const Member& member) {
        if (!touches_side(member)) return;
        if (runs_along(member, up)) return make_lean(member);
        const auto level = levels_.find(plane_across(member, up));
        if (level == levels_.end() || is_at(level->first, foot_)) return;
        Member moved = member;
        if (runs_along(member, to_.axis)) {
            (member.from == side_ ? moved.from : moved.to) = level->second.line;
            // Runs past the rail inside of it, which would part it otherwise.
            constexpr int before_rails = 15;
            if (level->second.has_inner && !moved.rank) moved.rank = before_rails;
        } else {
            const auto axes = across(member.run);
            moved.on[index_of(axes[0]) == to_.axis ? 0 : 1] = level->second.rail;
        }
        edits_.emplace_back(PutMember{frame_.name, moved, member.name});
    }

    void make_lean(const Member& post) {
        edits_.emplace_back(RemoveMember{frame_.name, post.name});
        edits_.emplace_back(PutLeaning{frame_.name,
                                       {.name = post.name,
                                        .stock = post.stock,
                                        .face = plane_across(post, 1 - to_.axis),
                                        .from = {levels_.at(post.from).line, post.from},
                                        .to = {levels_.at(post.to).line, post.to},
                                        .leg = to_.sense > 0 ? Sense::minus : Sense::plus,
                                        .note = post.note},
                                       {}});
    }

    const std::string& end_of(const Bay& bay) const {
        const auto& planes = to_.axis == 0 ? bay.x : bay.y;
        return planes[to_.sense > 0 ? 1 : 0];
    }

    // Ends where the rails of its upper level are.
    void move(const Bay& bay) {
        const auto level = levels_.find(bay.z[1]);
        if (end_of(bay) != side_ || level == levels_.end() || is_at(level->first, foot_)) return;
        Bay moved = bay;
        (to_.axis == 0 ? moved.x : moved.y)[to_.sense > 0 ? 1 : 0] = level->second.rail;
        edits_.emplace_back(PutBay{frame_.name, moved, bay.name});
    }

    struct Level {
        Nm z = 0;
        std::string line;        // plane on which the line of the posts lies there
        std::string rail;        // plane of what runs along the side
        bool has_inner = false;  // a rail runs inside of the posts there
    };

    const Project& project_;
    const Catalogue& catalogue_;
    const Frame& frame_;
    const Obstacle& wall_;
    const ResolvedFrame& placed_;
    NamedValues values_;
    Towards to_;
    std::string side_;  // the plane that the posts stand on
    std::vector<const Member*> posts_;
    Nm leg_ = 0;                           // the widest of the posts
    std::map<std::string, Level> levels_;  // by plane
    std::string foot_;
    std::string top_;
    Nm lean_ = 0;
    Formula leans_in_;
    Formula behind_;
    std::vector<Edit> edits_;
};

}  // namespace

Result<std::vector<Edit>> lean_with_wall(const Project& project,
                                         const Catalogue& catalogue,
                                         const Resolved& resolved,
                                         const std::string& frame,
                                         const std::string& wall) {
    const auto* leaning = named(project.frames, frame);
    if (leaning == nullptr) {
        return Error{ErrorCode::invalid_value, "frame " + frame, "there is no such frame"};
    }
    const auto* obstacle = named(project.room, wall);
    if (obstacle == nullptr || !std::holds_alternative<WallProfile>(obstacle->shape)) {
        return Error{ErrorCode::invalid_value, "obstacle " + wall,
                     "there is no such wall given by heights and insets"};
    }
    return Leaner(project, catalogue, resolved, *leaning, *obstacle).edits();
}

}  // namespace model
