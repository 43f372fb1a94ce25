#include "editor/room_scene.h"

#include "editor/obstacle_mesh.h"
#include "model/resolve/named_values.h"
#include "model/room/obstacle_shape.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <variant>

namespace editor {
namespace {

constexpr engine::Colour sand{0xD6, 0xBE, 0x8A, 0x98};
constexpr engine::Colour sand_line{0x8F, 0x74, 0x3C, 0xFF};
// Walls are large: they must not drown what stands before them.
constexpr engine::Colour pale_sand{0xDE, 0xCF, 0xAC, 0x4C};
constexpr engine::Colour pale_line{0xA8, 0x8C, 0x50, 0xC0};
constexpr engine::Colour air{0xD6, 0xBE, 0x8A, 0x1C};
constexpr double farthest = 1.0e6;  // mm; nothing beyond is drawn

bool is_surface(const model::ObstacleShape& shape) {
    return std::holds_alternative<model::WallProfile>(shape) ||
           std::holds_alternative<model::CeilingProfile>(shape);
}

engine::ItemLook look_of(const model::Obstacle& obstacle, model::Index index) {
    engine::ItemLook look{pick_of_obstacle(index), sand, sand_line};
    if (is_surface(obstacle.shape)) look = {look.pick_id, pale_sand, pale_line};
    if (obstacle.stays_clear) look.colour = air;
    return look;
}

const model::Formula& place_of(const model::WallProfile::Offset& offset) { return offset.height; }
const model::Formula& place_of(const model::CeilingProfile::Offset& offset) {
    return offset.across;
}

class Measured {
public:
    Measured(std::size_t axis, const model::NamedValues& values)
        : values_{values},
          shown_{.axis = axis,
                 .least = std::numeric_limits<double>::max(),
                 .most = std::numeric_limits<double>::lowest()} {}

    template <class Offsets>
    void add(const Offsets& offsets) {
        for (const auto& offset : offsets) {
            const auto at = values_.length(place_of(offset));
            if (!at) continue;
            shown_.least = std::min(shown_.least, static_cast<double>(*at) / 1e6);
            shown_.most = std::max(shown_.most, static_cast<double>(*at) / 1e6);
        }
    }

    // What was measured at one place only is as good as unlimited there: some of it is shown.
    ShownAcross shown() const {
        auto shown = shown_;
        if (!(shown.least < shown.most)) shown.most = std::numeric_limits<double>::max();
        return shown;
    }

private:
    const model::NamedValues& values_;
    ShownAcross shown_;
};

template <class Profile>
ShownAcross measured_of(const Profile& profile,
                        std::size_t axis,
                        const model::NamedValues& values) {
    Measured measured(axis, values);
    measured.add(profile.offsets);
    for (const auto& station : profile.stations) measured.add(station.offsets);
    return measured.shown();
}

bool is_far_away(const std::vector<engine::Prism>& bodies) {
    const auto is_far = [](const engine::Vector& at) {
        return std::ranges::any_of(at, [](double v) { return !(std::abs(v) < farthest); });
    };
    return std::ranges::any_of(bodies, [&](const engine::Prism& body) {
        return std::ranges::any_of(body.near, is_far) || std::ranges::any_of(body.far, is_far);
    });
}

void append_obstacle(engine::Mesh& mesh,
                     const model::Obstacle& obstacle,
                     const model::NamedValues& values) {
    const auto solid = model::obstacle_shape(obstacle.shape, values);
    if (is_far_away(solid.bodies)) return;
    const std::size_t first_edge = mesh.edges.size();
    if (const auto* wall = std::get_if<model::WallProfile>(&obstacle.shape)) {
        append_near_faces(mesh, solid.bodies, measured_of(*wall, 2, values));
    } else if (const auto* ceiling = std::get_if<model::CeilingProfile>(&obstacle.shape)) {
        append_near_faces(mesh, solid.bodies, measured_of(*ceiling, 0, values));
    } else {
        append_bodies(mesh, solid.bodies);
    }
    if (obstacle.stays_clear) dash_edges(mesh, first_edge);
}

}  // namespace

void add_room(engine::SceneBatch& batch,
              const model::Project& project,
              const model::Resolved& resolved) {
    const model::NamedValues values{project, resolved};
    for (model::Index i = 0; i < project.room.size(); ++i) {
        append_obstacle(batch.mesh, project.room[i], values);
        engine::close_item(batch, look_of(project.room[i], i));
    }
}

}  // namespace editor
