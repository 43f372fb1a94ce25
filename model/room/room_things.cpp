#include "model/room/room_things.h"

#include "engine/geometry/face_triangles.h"
#include "model/resolve/fastener_body.h"
#include "model/resolve/piece_place.h"
#include "model/resolve/piece_prisms.h"
#include "model/room/obstacle_shape.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

namespace model {
namespace {

engine::Bounds bounds_of(const Box& box) {
    engine::Bounds bounds;
    for (std::size_t k = 0; k < 3; ++k) {
        bounds.lo[k] = in_mm(box.lo[k]);
        bounds.hi[k] = in_mm(box.hi[k]);
    }
    return bounds;
}

BodyShape shape_of(const Catalogue& catalogue, const Fastener& fastener) {
    const auto& spec = fastener.spec;
    const bool is_rivet = spec.kind == FastenerSpec::Kind::blind_rivet;
    const std::size_t known = is_rivet ? catalogue.rivets.size() : catalogue.screws.size();
    if (spec.index >= known || fastener.stack_count == 0) return {};
    return body_shape(catalogue, spec, fastener.grip,
                      fastener.stack[fastener.stack_count - 1U].thickness);
}

// What stands out from the stack on one side, along the fastener's axis, in the frame.
struct Standing {
    Nm from = 0;
    Nm to = 0;
    Nm radius = 0;
};

Standing standing(const Catalogue& catalogue, const Fastener& fastener, bool is_tail) {
    const auto shape = shape_of(catalogue, fastener);
    const Nm at = fastener.at[fastener.axis];
    if (!is_tail) return {at, at - fastener.drive * shape.head_height, shape.head_radius};
    const Nm end = at + fastener.drive * fastener.grip;
    return {end, end + fastener.drive * shape.tail_length, shape.tail_radius};
}

std::optional<Box> box_of(const Fastener& fastener, const Standing& part) {
    if (part.from == part.to || part.radius <= 0) return std::nullopt;
    Box box;
    for (std::size_t k = 0; k < 3; ++k) {
        const bool along = k == fastener.axis;
        box.lo[k] = along ? std::min(part.from, part.to) : fastener.at[k] - part.radius;
        box.hi[k] = along ? std::max(part.from, part.to) : fastener.at[k] + part.radius;
    }
    return box;
}

void add_standing(std::vector<RoomThing>& things,
                  const Resolved& resolved,
                  const Catalogue& catalogue,
                  Index index) {
    const auto& fastener = resolved.fasteners[index];
    if (fastener.stack_count == 0) return;
    for (const bool is_tail : {false, true}) {
        const auto box = box_of(fastener, standing(catalogue, fastener, is_tail));
        if (!box) continue;
        const auto& plate = fastener.stack[is_tail ? fastener.stack_count - 1U : 0U];
        const auto& frame = resolved.frames[resolved.pieces[plate.piece].frame];
        things.push_back({plate.piece, index, is_tail, bounds_of(box_in_room(frame, *box))});
    }
}

// A prism of the right number of sides that holds a round part.
engine::ConvexBody round_body(const ResolvedFrame& frame,
                              const Fastener& fastener,
                              const Standing& part) {
    const double radius = in_mm(part.radius);
    const std::size_t faces = std::max<std::size_t>(8, faces_round(radius, 2.0 * std::numbers::pi));
    const double step = 2.0 * std::numbers::pi / static_cast<double>(faces);
    const double out = radius / std::cos(step / 2.0);
    engine::Prism prism;
    for (std::size_t i = 0; i < faces; ++i) {
        const double angle = step * static_cast<double>(i);
        engine::Vector at{};
        for (std::size_t k = 0; k < 3; ++k) at[k] = in_mm(fastener.at[k]);
        at[(fastener.axis + 1U) % 3U] += out * std::cos(angle);
        at[(fastener.axis + 2U) % 3U] += out * std::sin(angle);
        at[fastener.axis] = in_mm(part.from);
        prism.near.push_back(at);
        at[fastener.axis] = in_mm(part.to);
        prism.far.push_back(at);
    }
    return engine::convex_body(prism_in_room(frame, std::move(prism)));
}

void add_loop(const Corners& corners,
              std::vector<engine::FacePoint>& points,
              std::vector<std::uint32_t>& ends) {
    for (const auto& corner : corners) points.push_back({in_mm(corner[0]), in_mm(corner[1])});
    ends.push_back(static_cast<std::uint32_t>(points.size()));
}

std::vector<engine::FacePoint> points_of(const Outline& outline, std::vector<std::uint32_t>& ends) {
    std::vector<engine::FacePoint> points;
    ends.clear();
    add_loop(outline.corners, points, ends);
    for (const auto& cut_out : outline.cut_outs) add_loop(cut_out, points, ends);
    return points;
}

// What an outline leaves of a plate, cut into prisms over triangles. False where it cannot be cut.
bool add_outlined(std::vector<engine::ConvexBody>& bodies,
                  const Resolved& resolved,
                  const Piece& piece,
                  const Plate& plate,
                  std::span<const SectionPlate> walls) {
    if (plate.outline >= resolved.outlines.size()) return false;
    std::vector<std::uint32_t> ends;
    const auto near = points_of(resolved.outlines[plate.outline], ends);
    auto far = near;
    if (plate.outline_far < resolved.outlines.size()) {
        std::vector<std::uint32_t> far_ends;
        far = points_of(resolved.outlines[plate.outline_far], far_ends);
        if (far_ends != ends) return false;
    }
    engine::FaceTriangles triangles;
    const auto cut = triangles.of(near, ends);
    if (cut.empty()) return false;
    const auto wall = wall_placement(resolved, piece, plate, walls);
    const double depth = in_mm(wall.thickness);
    for (std::size_t i = 0; i + 2 < cut.size(); i += 3) {
        engine::Prism prism;
        for (std::size_t k = 0; k < 3; ++k) {
            const auto& p = near[cut[i + k]];
            const auto& q = far[cut[i + k]];
            prism.near.push_back(engine::point_in(wall.place, {p[0], p[1], 0.0}));
            prism.far.push_back(engine::point_in(wall.place, {q[0], q[1], depth}));
        }
        bodies.push_back(engine::convex_body(prism));
    }
    return true;
}

}  // namespace

std::vector<RoomThing> room_things(const Resolved& resolved, const Catalogue& catalogue) {
    std::vector<RoomThing> things;
    things.reserve(resolved.pieces.size() + 2 * resolved.fasteners.size());
    for (Index i = 0; i < resolved.pieces.size(); ++i) {
        const auto& piece = resolved.pieces[i];
        things.push_back(
            {.piece = i,
             .bounds = bounds_of(box_in_room(resolved.frames[piece.frame], piece.extents))});
    }
    for (Index i = 0; i < resolved.fasteners.size(); ++i)
        add_standing(things, resolved, catalogue, i);
    return things;
}

std::vector<engine::ConvexBody> ThingBodies::of(const RoomThing& thing) const {
    const auto& piece = resolved_.pieces[thing.piece];
    const auto& frame = resolved_.frames[piece.frame];
    if (thing.fastener != no_index) {
        const auto& fastener = resolved_.fasteners[thing.fastener];
        return {round_body(frame, fastener, standing(catalogue_, fastener, thing.is_tail))};
    }
    std::vector<engine::ConvexBody> bodies;
    const Slants slants{resolved_.outlines, resolved_.leans};
    if (is_oblique(piece, slants)) {
        for (const auto& prism : prisms_in_room(frame, piece, slants))
            bodies.push_back(engine::convex_body(prism));
        return bodies;
    }
    for (const auto& plate : piece.walls()) {
        if (plate.is_root_fillet) continue;
        if (is_of_sheet(piece.kind) && add_outlined(bodies, resolved_, piece, plate, {})) continue;
        const auto box = bounds_of(box_in_room(frame, plate.box));
        bodies.push_back(engine::convex_body(box.lo, box.hi));
    }
    return bodies;
}

}  // namespace model
