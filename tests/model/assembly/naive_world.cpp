#include "tests/model/assembly/naive_world.h"

#include "model/schedule/pieces_json.h"
#include "model/schedule/write_all.h"

#include "tests/support/skeleton_bodies.h"

#include <algorithm>
#include <cmath>

namespace tests {
namespace {

constexpr Nm from_afar = 20'000'000'000;

// All that a body passes through on its way to where it is.
ConvexBody swept(const ConvexBody& body, const Direction& travel) {
    ConvexBody all;
    Box bounds = body.bounds;
    for (std::size_t k = 0; k < 3; ++k) {
        const auto back = static_cast<Nm>(std::llround(-travel[k] * double(from_afar)));
        (back > 0 ? bounds.hi : bounds.lo)[k] += back;
    }
    const auto axis = world_axis(travel);
    if (body.box && axis) {
        all = body_of(bounds);
        return all;
    }
    all.bounds = bounds;
    all.corners = body.corners;
    for (auto corner : body.corners) {
        for (std::size_t k = 0; k < 3; ++k) corner[k] -= travel[k] * double(from_afar) / 1e6;
        all.corners.push_back(corner);
    }
    all.normals = body.normals;
    for (const auto& edge : body.edges) all.normals.push_back(cross(edge, travel));
    all.edges = body.edges;
    all.edges.push_back(travel);
    return all;
}

bool share(const std::vector<ConvexBody>& a, const std::vector<ConvexBody>& b) {
    return std::ranges::any_of(a, [&](const ConvexBody& p) {
        return std::ranges::any_of(b, [&](const ConvexBody& q) { return share_volume(p, q); });
    });
}

}  // namespace

NaiveWorld::NaiveWorld(const model::Project& project,
                       const model::Catalogue& catalogue,
                       const model::Resolved& resolved)
    : project_{&project}, catalogue_{catalogue}, resolved_{resolved} {
    SkeletonFiles files;
    for (auto& file : model::schedule_files(project, catalogue, resolved)) {
        files[file.name] = std::move(file.text);
    }
    const auto read = read_skeleton(files);
    if (!read || read->pieces.size() != resolved.pieces.size()) return;
    skeleton_ = *read;
    is_readable_ = true;
    for (const auto& piece : skeleton_.pieces) {
        bodies_.emplace_back();
        for (const auto& plate : piece.plates) {
            bodies_.back().insert(bodies_.back().end(), plate.bodies.begin(), plate.bodies.end());
        }
    }
}

NaiveWorld::NaiveWorld(const model::Catalogue& catalogue, const model::Resolved& resolved)
    : catalogue_{catalogue}, resolved_{resolved}, is_readable_{true} {
    for (const auto& piece : resolved.pieces) {
        bodies_.emplace_back();
        for (const auto& plate : piece.walls()) bodies_.back().push_back(body_of(plate.box));
    }
}

Direction NaiveWorld::in_world(model::Index frame, const Direction& direction) const {
    Direction turned = direction;
    for (int i = 0; i < resolved_.frames[frame].quarter_turns; ++i) {
        turned = {0.0 - turned[1], turned[0], turned[2]};
    }
    return turned;
}

bool NaiveWorld::is_stopped_by(model::Index piece,
                               const Direction& travel,
                               model::Index other) const {
    if (share(bodies_[piece], bodies_[other])) return false;
    std::vector<ConvexBody> way;
    for (const auto& body : bodies_[piece]) way.push_back(swept(body, travel));
    return share(way, bodies_[other]);
}

bool NaiveWorld::keeps_nose_off(model::Index joint, model::Index other) const {
    const auto& shop = resolved_.shop;
    return is_in_column(joint, other, 0, shop.nose_reach, shop.nose_radius);
}

// From memory of common hand tools: 6 in of it and of the hand behind.
bool NaiveWorld::keeps_housing_off(model::Index joint, bool long_nose, model::Index other) const {
    const auto& shop = resolved_.shop;
    return is_in_column(joint, other, shop.nose_reach, 152'400'000,
                        long_nose ? shop.nose_radius : shop.housing_radius);
}

bool NaiveWorld::is_in_column(
    model::Index joint, model::Index other, Nm from, Nm to, Nm rivet_radius) const {
    for (const auto& fastener : resolved_.fasteners_of(resolved_.joints[joint])) {
        Nm radius = rivet_radius;
        if (fastener.spec.kind != model::FastenerSpec::Kind::blind_rivet) {
            radius = catalogue_.screws[fastener.spec.index].head_diameter_most.nm() / 2 +
                     25'400'000 / 32;
        }
        Box column{fastener.at, fastener.at};
        for (std::size_t k = 0; k < 3; ++k) {
            if (k == fastener.axis) {
                const Nm near = fastener.at[k] - fastener.drive * from;
                const Nm far = fastener.at[k] - fastener.drive * to;
                column.lo[k] = std::min(near, far);
                column.hi[k] = std::max(near, far);
            } else {
                column.lo[k] -= radius;
                column.hi[k] += radius;
            }
        }
        const auto& frame = resolved_.frames[resolved_.joints[joint].frame];
        const Point p = to_room(frame, column.lo);
        const Point q = to_room(frame, column.hi);
        const std::vector<ConvexBody> room{body_of(hull(Box{p, p}, Box{q, q}))};
        if (share(room, bodies_[other])) return true;
    }
    return false;
}

std::vector<model::Point> NaiveWorld::corners_of(const model::SquareRow& row) const {
    const auto& planes = project_->frames[row.frame].planes;
    const auto place = [&](const std::string& name) {
        for (std::size_t i = 0; i < planes.size(); ++i) {
            if (planes[i].name == name)
                return resolved_.frames[row.frame].planes[i].position.value();
        }
        return Nm{0};
    };
    const auto axis_of = [&](const std::string& name) {
        for (const auto& plane : planes) {
            if (plane.name == name) return static_cast<std::size_t>(plane.axis);
        }
        return std::size_t{0};
    };
    std::vector<model::Point> corners;
    for (const auto& u : row.between[0]) {
        for (const auto& v : row.between[1]) {
            model::Point at{};
            for (const auto& name : {row.face, u, v}) at[axis_of(name)] = place(name);
            corners.push_back(at);
        }
    }
    return corners;
}

// Two walls may lie between the corner and the end of a bar, with the gap of each.
std::set<model::Index> NaiveWorld::bars_at(model::Index frame, const model::Point& corner) const {
    Nm reach = 0;
    for (const auto& piece : resolved_.pieces) {
        for (const auto& wall : piece.walls()) {
            if (wall.is_root_fillet || piece.frame != frame) continue;
            const auto& box = wall.box;
            reach = std::max(reach, box.hi[wall.normal_axis] - box.lo[wall.normal_axis]);
        }
    }
    reach = 2 * (reach + resolved_.shop.end_gap) + 1'000;  // a hair over: what just touches counts
    Point lo = corner;
    Point hi = corner;
    for (std::size_t k = 0; k < 3; ++k) lo[k] -= reach, hi[k] += reach;
    const auto& placed = resolved_.frames[frame];
    const Point p = to_room(placed, lo);
    const Point q = to_room(placed, hi);
    const std::vector<ConvexBody> near{body_of(hull(Box{p, p}, Box{q, q}))};
    std::set<model::Index> bars;
    for (model::Index i = 0; i < resolved_.pieces.size(); ++i) {
        const auto& piece = resolved_.pieces[i];
        const bool is_bar =
            piece.kind == model::PieceKind::bar || piece.kind == model::PieceKind::leaning;
        if (piece.frame == frame && is_bar && share(near, bodies_[i])) bars.insert(i);
    }
    return bars;
}

std::set<model::Index> NaiveWorld::pieces_of(model::Index number) const {
    const auto& joint = resolved_.joints[number];
    std::set<model::Index> pieces{joint.pieces[0], joint.pieces[1]};
    if (joint.shim != model::no_index) pieces.insert(joint.shim);
    if (joint.brace != model::no_index) pieces.insert(joint.brace);
    for (const auto& fastener : resolved_.fasteners_of(joint)) {
        for (std::size_t k = 0; k < fastener.stack_count; ++k) {
            pieces.insert(fastener.stack[k].piece);
        }
    }
    return pieces;
}

}  // namespace tests
