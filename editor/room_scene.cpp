#include "editor/room_scene.h"

#include "engine/geometry/extrusion.h"
#include "engine/geometry/mesh_writer.h"
#include "engine/geometry/turned_mesh.h"
#include "engine/measure/formula.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <string_view>
#include <variant>
#include <vector>

namespace editor {
namespace {

using engine::FacePoint;
using engine::Mesh;
using engine::Placement;
using engine::Vector;
using model::Axis;

constexpr engine::ItemLook sand{.colour = {0xD6, 0xBE, 0x8A, 0x98},
                                .line = {0x8F, 0x74, 0x3C, 0xFF}};
// Walls are large: they must not drown what stands before them.
constexpr engine::ItemLook pale_sand{.colour = {0xDE, 0xCF, 0xAC, 0x4C},
                                     .line = {0xA8, 0x8C, 0x50, 0xC0}};
constexpr double farthest = 1.0e6;  // mm; nothing beyond is drawn

Vector unit(std::size_t axis, double sense = 1.0) {
    Vector v{};
    v[axis] = sense;
    return v;
}

// A rounded corner that is worn down to nothing where its sides are too short for it.
void add_rounded(engine::Profile& profile,
                 const FacePoint& before,
                 const FacePoint& at,
                 const FacePoint& after,
                 double radius) {
    constexpr int chords = 8;
    const double in_length = std::hypot(before[0] - at[0], before[1] - at[1]);
    const double out_length = std::hypot(after[0] - at[0], after[1] - at[1]);
    const FacePoint in{(at[0] - before[0]) / in_length, (at[1] - before[1]) / in_length};
    const FacePoint out{(after[0] - at[0]) / out_length, (after[1] - at[1]) / out_length};
    const double turn =
        std::atan2(in[0] * out[1] - in[1] * out[0], in[0] * out[0] + in[1] * out[1]);
    const double back = radius * std::tan(turn / 2.0);
    if (!(back > 0.0) || back > 0.49 * std::min(in_length, out_length)) {
        profile.points.push_back(at);
        profile.corners.push_back(engine::Corner::crisp);
        return;
    }
    // The centre lies to the left of the way in.
    const FacePoint centre{at[0] - back * in[0] - radius * in[1],
                           at[1] - back * in[1] + radius * in[0]};
    for (int i = 0; i <= chords; ++i) {
        const double angle = turn * i / chords;
        const double c = radius * std::cos(angle);
        const double s = radius * std::sin(angle);
        profile.points.push_back(
            {centre[0] + s * in[0] + c * in[1], centre[1] + s * in[1] - c * in[0]});
        const bool is_end = i == 0 || i == chords;
        profile.corners.push_back(is_end ? engine::Corner::tangent : engine::Corner::round);
    }
}

// A rectangle with one side; its corners run clockwise seen from that side, or the other way round.
void append_strip(Mesh& mesh, const std::array<engine::MeshPoint, 4>& corners, bool clockwise) {
    const auto first = static_cast<std::uint32_t>(mesh.vertices.size());
    Vector along{};
    Vector up{};
    for (std::size_t i = 0; i < 3; ++i) {
        along[i] = static_cast<double>(corners[1][i]) - static_cast<double>(corners[0][i]);
        up[i] = static_cast<double>(corners[3][i]) - static_cast<double>(corners[0][i]);
    }
    Vector normal = clockwise ? engine::cross(up, along) : engine::cross(along, up);
    const double size = std::sqrt(engine::dot(normal, normal));
    if (!(size > 0.0)) return;
    for (auto& value : normal) value /= size;
    for (const auto& corner : corners) mesh.vertices.push_back({corner, engine::to_floats(normal)});
    const std::array<std::uint32_t, 6> order = clockwise
                                                   ? std::array<std::uint32_t, 6>{0, 2, 1, 0, 3, 2}
                                                   : std::array<std::uint32_t, 6>{0, 1, 2, 0, 2, 3};
    for (const auto i : order) mesh.triangles.push_back(first + i);
}

// Reads the formulas of one room; a shape that lacks a value is not drawn.
class RoomShapes {
public:
    RoomShapes(const model::Project& project, const model::Resolved& resolved)
        : bare_{engine::bare_unit(project.shown)} {
        for (std::size_t i = 0; i < resolved.dimensions.size(); ++i) {
            const auto& value = resolved.dimensions[i];
            if (value) named_.emplace(project.dimensions[i].name, *value);
        }
    }

    void append(Mesh& mesh, const model::BoxObstacle& box) {
        if (const auto bounds = bounds_of(box.least, box.most)) engine::append_box(mesh, *bounds);
    }

    void append(Mesh& mesh, const model::WheelWell& well) {
        const auto box = bounds_of(well.least, well.most);
        const auto radius = mm(well.top_radius);
        if (!box || !radius || well.inner_side == Axis::z) return;
        const auto inner = model::index_of(well.inner_side);
        const auto axis = static_cast<int>(inner);
        const double width = box->hi[axis] - box->lo[axis];
        const double height = box->hi.z - box->lo.z;
        const double inset = std::min(height * std::tan(lean_of(well)), 0.9 * width);
        // Seen along the well with the inner side to the right, z up.
        const FacePoint foot{0.0, 0.0};
        const FacePoint inner_foot{width, 0.0};
        const FacePoint inner_top{width - inset, height};
        const FacePoint top{0.0, height};
        engine::Profile profile;
        profile.points = {foot, inner_foot};
        profile.corners = {engine::Corner::crisp, engine::Corner::crisp};
        add_rounded(profile, inner_foot, inner_top, top, *radius);
        add_rounded(profile, inner_top, top, foot, *radius);
        profile.loop_ends = {static_cast<std::uint32_t>(profile.points.size())};

        const double sense = model::sign_of(well.inner_sense);
        const int along = 1 - axis;
        Placement place{.x = unit(inner, sense), .y = unit(2), .z = unit(1 - inner)};
        place.origin[inner] = sense > 0.0 ? box->lo[axis] : box->hi[axis];
        place.origin[1 - inner] = box->lo[along];
        place.origin[2] = box->lo.z;
        mesher_.append(mesh, profile, box->hi[along] - box->lo[along], {}, place);
    }

    // Only its face towards the room, so that the room can be looked into from outside.
    void append(Mesh& mesh, const model::WallProfile& wall) {
        const auto at = mm(wall.at);
        const auto from = mm(wall.from);
        const auto to = mm(wall.to);
        if (!at || !from || !to || wall.offsets.size() < 2) return;
        std::vector<FacePoint> inside;
        for (const auto& offset : wall.offsets) {
            const auto height = mm(offset.height);
            const auto inset = mm(offset.inset);
            if (!height || !inset) return;
            inside.push_back({*inset, *height});
        }
        std::ranges::sort(inside, {}, [](const FacePoint& p) { return p[1]; });
        const double sense = model::sign_of(wall.inside);
        const auto at_end = [&](const FacePoint& p, double y) {
            return engine::to_floats({*at + sense * p[0], y, p[1]});
        };
        const auto [near, far] = std::minmax(*from, *to);
        for (std::size_t i = 0; i < inside.size(); ++i) {
            mesh.edges.insert(mesh.edges.end(), {at_end(inside[i], near), at_end(inside[i], far)});
            if (i + 1 == inside.size()) break;
            for (const double y : {near, far})
                mesh.edges.insert(mesh.edges.end(),
                                  {at_end(inside[i], y), at_end(inside[i + 1], y)});
            append_strip(mesh,
                         {at_end(inside[i], near), at_end(inside[i], far),
                          at_end(inside[i + 1], far), at_end(inside[i + 1], near)},
                         sense < 0.0);
        }
    }

    void append(Mesh& mesh, const model::CylinderObstacle& cylinder) {
        const auto foot = point(cylinder.foot);
        const auto radius = mm(cylinder.radius);
        const auto length = mm(cylinder.length);
        if (!foot || !radius || !length || !(*radius > 0.0)) return;
        const auto axis = model::index_of(cylinder.along);
        const std::array<engine::TurnedPoint, 4> pin{
            {{.radius = 0.0, .z = 0.0},
             {.radius = *radius, .z = 0.0, .is_crisp = true},
             {.radius = *radius, .z = *length, .is_crisp = true},
             {.radius = 0.0, .z = *length}}};
        engine::append_turned(mesh, pin,
                              {.origin = {foot->x, foot->y, foot->z},
                               .x = unit((axis + 1) % 3),
                               .y = unit((axis + 2) % 3),
                               .z = unit(axis)});
    }

    void append(Mesh&, const model::CeilingProfile&) {}
    void append(Mesh&, const model::DoorSwing&) {}
    void append(Mesh&, const model::ScannedObstacle&) {}

private:
    std::optional<engine::Quantity> value(const model::Formula& formula,
                                          engine::QuantityKind kind) const {
        const auto found = engine::evaluate(
            formula, kind, bare_, [this](std::string_view name) -> std::optional<engine::Quantity> {
                const auto named = named_.find(name);
                if (named == named_.end()) return std::nullopt;
                return named->second;
            });
        if (!found) return std::nullopt;
        return *found;
    }

    std::optional<double> mm(const model::Formula& formula) const {
        const auto length = value(formula, engine::QuantityKind::length);
        if (!length || std::abs(length->length.mm()) > farthest) return std::nullopt;
        return length->length.mm();
    }

    // Radians from the vertical; 0 where the formula gives none that can stand.
    double lean_of(const model::WheelWell& well) const {
        const auto lean = value(well.lean, engine::QuantityKind::angle);
        if (!lean || !(lean->value > 0.0) || !(lean->value < 80.0)) return 0.0;
        return lean->value * std::acos(-1.0) / 180.0;
    }

    std::optional<glm::dvec3> point(const model::Place& place) const {
        glm::dvec3 at{0.0};
        for (int i = 0; i < 3; ++i) {
            const auto value = mm(place[static_cast<std::size_t>(i)]);
            if (!value) return std::nullopt;
            at[i] = *value;
        }
        return at;
    }

    std::optional<engine::SceneBounds> bounds_of(const model::Place& least,
                                                 const model::Place& most) const {
        const auto lo = point(least);
        const auto hi = point(most);
        if (!lo || !hi) return std::nullopt;
        const engine::SceneBounds box{.lo = *lo, .hi = *hi};
        const auto size = box.hi - box.lo;
        if (!(size.x > 0.0 && size.y > 0.0 && size.z > 0.0)) return std::nullopt;
        return box;
    }

    engine::LengthUnit bare_;
    std::map<std::string_view, engine::Quantity> named_;
    engine::ExtrusionMesher mesher_;
};

}  // namespace

void add_room(engine::SceneBatch& batch,
              const model::Project& project,
              const model::Resolved& resolved) {
    RoomShapes shapes{project, resolved};
    for (const auto& obstacle : project.room) {
        std::visit([&](const auto& shape) { shapes.append(batch.mesh, shape); }, obstacle.shape);
        const bool is_wall = std::holds_alternative<model::WallProfile>(obstacle.shape);
        engine::close_item(batch, is_wall ? pale_sand : sand);
    }
}

}  // namespace editor
