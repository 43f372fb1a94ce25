#include "editor/view/tape_typing.h"

#include "editor/by_name.h"
#include "editor/dimension_values.h"
#include "editor/error_words.h"
#include "editor/view/hole_places.h"
#include "editor/view/plane_hand.h"
#include "editor/view/tape_ends.h"
#include "model/resolve/resolve.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <memory>
#include <utility>
#include <vector>

namespace editor {
namespace {

constexpr std::string_view in_the_dimensions = ": change it in the dimensions";

model::Nm whole(double nm) { return static_cast<model::Nm>(std::llround(nm)); }

// The axis of the room that the measure runs along; none where it leans, or has no length.
std::optional<std::size_t> axis_measured(const TapeReading& reading) {
    std::optional<std::size_t> axis;
    for (int k = 0; k < 3; ++k) {
        if (reading.parts[k] < 0.5) continue;
        if (axis) return std::nullopt;
        axis = static_cast<std::size_t>(k);
    }
    return axis;
}

// An axis of a frame that lies along one of the room, and which way.
struct AxisInFrame {
    model::Axis axis = model::Axis::x;
    int sense = 1;
};

AxisInFrame axis_in_frame(const model::ResolvedFrame& frame, std::size_t of_room) {
    for (const auto axis : {model::Axis::x, model::Axis::y, model::Axis::z}) {
        std::array<int, 3> along{};
        along[model::index_of(axis)] = 1;
        const int sense = model::direction_to_room(frame, along)[of_room];
        if (sense != 0) return {axis, sense};
    }
    return {};
}

// A member of a frame, where the end is held to one.
struct HeldMember {
    model::Index frame_index = 0;
    const model::Frame* frame = nullptr;
    const model::Member* member = nullptr;
};

std::optional<HeldMember> member_held(const Derived& derived, const TapeEnd& end) {
    if (!end.piece || *end.piece >= derived.resolved.pieces.size()) return std::nullopt;
    const auto& piece = derived.resolved.pieces[*end.piece];
    if (piece.frame >= derived.project->frames.size()) return std::nullopt;
    const auto& frame = derived.project->frames[piece.frame];
    if (piece.member >= frame.members.size()) return std::nullopt;
    return HeldMember{piece.frame, &frame, &frame.members[piece.member]};
}

struct PlaneBehind {
    const model::Plane* plane = nullptr;
    model::Nm at = 0;
};

std::optional<PlaneBehind> plane_named(const Derived& derived,
                                       const HeldMember& held,
                                       std::string_view name) {
    const auto* plane = by_name(held.frame->planes, name);
    if (plane == nullptr) return std::nullopt;
    const auto index = static_cast<std::size_t>(plane - held.frame->planes.data());
    const auto& at = derived.resolved.frames[held.frame_index].planes[index].position;
    return at ? std::optional(PlaneBehind{plane, *at}) : std::nullopt;
}

// All of a member moves with a plane that it lies on; an end of it with the plane of its frame that
// it is flush with, else with the nearer one of those that it runs between.
std::optional<PlaneBehind> plane_behind(const Derived& derived,
                                        const HeldMember& held,
                                        model::Axis axis,
                                        model::Nm at) {
    const auto& member = *held.member;
    if (member.run != axis) {
        const bool is_first = model::across(member.run)[0] == axis;
        return plane_named(derived, held, member.on[is_first ? 0 : 1]);
    }
    for (const auto& plane : held.frame->planes) {
        if (plane.axis != axis) continue;
        const auto flush = plane_named(derived, held, plane.name);
        if (flush && flush->at == at) return flush;
    }
    const auto from = plane_named(derived, held, member.from);
    const auto to = plane_named(derived, held, member.to);
    if (!from || !to) return from ? from : to;
    return std::abs(from->at - at) <= std::abs(to->at - at) ? from : to;
}

// Why the plane is not moved by hand; empty where it stands on a plain value.
std::string formula_words(const model::Project& project, const model::Plane& plane) {
    const auto* dimension = by_name(project.dimensions, plane.position);
    const bool is_plain = dimension != nullptr ? is_plain_value(project, *dimension)
                                               : engine::names_in(plane.position).empty();
    if (is_plain) return {};
    return plane.name + " follows a formula, " + formula_behind(project, plane) +
           std::string(in_the_dimensions);
}

// Where along the axis the end's piece has its faces, or, where the end is a hole, its holes.
std::vector<double> places_along(const Derived& derived, const TapeEnd& end, std::size_t axis) {
    std::vector<double> places;
    const auto& piece = derived.resolved.pieces[*end.piece];
    if (end.on == TapeOn::hole) {
        for (model::Index i = 0; i < piece.hole_count; ++i) {
            const auto hole = hole_place(derived, piece.first_hole + i);
            places.push_back(hole ? hole->at[static_cast<int>(axis)] : 1.0e18);
        }
        return places;
    }
    const auto& frame = derived.resolved.frames[piece.frame];
    for (const auto& plate : piece.walls()) {
        for (const auto& corner : {plate.box.lo, plate.box.hi})
            places.push_back(static_cast<double>(model::to_room(frame, corner)[axis]));
    }
    return places;
}

// The end as it is afterwards, when what of its piece is at `from` is at `to` then.
std::optional<TapeEnd> moved(const Derived& before,
                             const Derived& after,
                             TapeEnd end,
                             std::size_t axis,
                             std::array<double, 2> from_to) {
    const auto& was = before.resolved.pieces[*end.piece];
    const auto& pieces = after.resolved.pieces;
    const auto is = std::ranges::find_if(pieces, [&](const model::Piece& piece) {
        return piece.frame == was.frame && piece.member == was.member && piece.part == was.part;
    });
    if (is == pieces.end()) return std::nullopt;
    const auto then = places_along(before, end, axis);
    end.piece = static_cast<model::Index>(is - pieces.begin());
    const auto now = places_along(after, end, axis);
    if (then.size() != now.size()) return std::nullopt;
    bool is_there = false;
    for (std::size_t i = 0; i < then.size(); ++i) {
        is_there |= std::abs(then[i] - from_to[0]) < 0.5 && std::abs(now[i] - from_to[1]) < 0.5;
    }
    if (!is_there) return std::nullopt;
    const int k = static_cast<int>(axis);
    const auto move = [&](glm::dvec3& place) {
        if (std::abs(place[k] - from_to[0]) < 0.5) place[k] = std::round(from_to[1]);
    };
    move(end.at);
    if (end.on == TapeOn::edge) {
        move(end.from);
        move(end.to);
    }
    return end;
}

// What the change makes of the measure, or why it does not make it that long.
struct Trial {
    std::optional<TapeFollowing> following;
    std::string reason;
};

Trial try_length(const Derived& derived,
                 const model::Catalogue& catalogue,
                 const TapeTaken& taken,
                 const TapeGrip& grip,
                 const Change& change,
                 model::Nm wanted) {
    auto project = project_after(*derived.project, change);
    if (!project) return {{}, engine::to_text(project.error())};
    Derived after;
    after.project = std::make_shared<const model::Project>(std::move(*project));
    after.resolved = model::resolve(*after.project, catalogue);
    const auto reading = tape_reading(taken);
    const int k = static_cast<int>(grip.axis);
    const double way = reading.to[k] > reading.from[k] ? 1.0 : -1.0;
    const double by = way * static_cast<double>(wanted - grip.length);
    const double from = reading.from[k];
    const double to = reading.to[k];
    const auto first = moved(derived, after, taken.first, grip.axis, {from, from});
    if (!first) return {{}, "the other end goes with " + grip.plane + " too"};
    const auto second = moved(derived, after, taken.second, grip.axis, {to, to + by});
    if (!second || whole(tape_reading({*first, *second}).length) != wanted)
        return {{}, "this end does not go with " + grip.plane + " alone"};
    return {TapeFollowing{after.project, {*first, *second}}, {}};
}

std::optional<Change> refuse(TapeHand& hand, std::string reason, bool keep_field) {
    hand.refused = TapeRefused{hand.typed->text, std::move(reason)};
    hand.typed->wants_focus = true;
    if (!keep_field) hand.typed.reset();
    return std::nullopt;
}

engine::Quantity as_length(model::Nm nm) {
    return {.kind = engine::QuantityKind::length, .length = engine::Length::from_nm(nm)};
}

}  // namespace

TapeHold tape_hold(const Derived& derived, const TapeTaken& taken) {
    const auto reading = tape_reading(taken);
    const auto axis = axis_measured(reading);
    if (!axis) return {{}, "only a measure along one axis of the room can be typed into"};
    const auto first = member_held(derived, taken.first);
    const auto second = member_held(derived, taken.second);
    if (!first || !second) return {{}, "only a measure between two bars can be typed into"};
    const auto& placed = derived.resolved.frames[second->frame_index];
    const auto along = axis_in_frame(placed, *axis);
    const int k = static_cast<int>(*axis);
    const auto in_frame = along.sense * (whole(reading.to[k]) - placed.origin[*axis]);
    const auto behind = plane_behind(derived, *second, along.axis, in_frame);
    if (!behind) return {{}, "no layout plane is behind the " + words_of(taken.second)};
    if (auto words = formula_words(*derived.project, *behind->plane); !words.empty())
        return {{}, std::move(words)};
    const int way = reading.to[k] > reading.from[k] ? 1 : -1;
    return {TapeGrip{second->frame->name, behind->plane->name, behind->at, along.sense * way, *axis,
                     whole(reading.length)},
            {}};
}

void begin_typing_length(TapeHand& hand, const Derived& derived) {
    if (!hand.taken) return;
    const auto hold = tape_hold(derived, *hand.taken);
    if (!hold.grip) {
        hand.refused = TapeRefused{{}, hold.reason};
        return;
    }
    const bool goes_on = hand.refused && !hand.refused->text.empty();
    hand.typed =
        TapeTyped{goes_on ? hand.refused->text
                          : formula_of(as_length(hold.grip->length), derived.project->shown)};
    if (!goes_on) hand.refused.reset();
}

std::optional<Change> take_typed_length(TapeHand& hand,
                                        const Derived& derived,
                                        const model::Catalogue& catalogue,
                                        bool keep_field) {
    if (!hand.typed) return std::nullopt;
    hand.refused.reset();
    // Of another project it says nothing.
    const bool is_here = hand.taken && hand.of == derived.revision;
    const auto hold = is_here ? tape_hold(derived, *hand.taken) : TapeHold{};
    if (!hold.grip) {
        hand.typed.reset();
        return std::nullopt;
    }
    const auto& grip = *hold.grip;
    const std::string text = hand.typed->text;
    const auto wanted = tried_length(derived, text);
    if (!wanted) return refuse(hand, error_words(wanted.error(), text), keep_field);
    const auto length = wanted->length.nm();
    if (length <= 0) return refuse(hand, "a length of more than 0 is needed", keep_field);
    if (length == grip.length) {
        hand.typed.reset();
        return std::nullopt;
    }
    // As it is typed into the plane's tag.
    PlaneHand tag;
    tag.typed = TypedPlane{grip.frame, grip.plane,
                           formula_of(as_length(grip.at + grip.sense * (length - grip.length)),
                                      derived.project->shown)};
    auto change = take_typed(tag, derived, false);
    if (!change) {
        return refuse(hand, tag.refused ? tag.refused->reason : "it cannot be that long",
                      keep_field);
    }
    auto trial = try_length(derived, catalogue, *hand.taken, grip, *change, length);
    if (!trial.following)
        return refuse(hand, trial.reason + std::string(in_the_dimensions), keep_field);
    hand.following = std::move(trial.following);
    hand.typed.reset();
    return change;
}

void follow_typed_length(TapeHand& hand, const Snapshot& project, Revision revision) {
    if (!hand.following) return;
    if (*hand.following->project == *project) {
        hand.taken = hand.following->taken;
        hand.of = revision;
        hand.under.reset();
    }
    hand.following.reset();
}

}  // namespace editor
