#include "engine/geometry/vectors.h"
#include "model/room/clearance.h"
#include "model/room/obstacle_shape.h"
#include "model/room/shapes.h"

#include <cmath>
#include <numbers>
#include <optional>
#include <utility>
#include <variant>

namespace model {
namespace {

enum Way : std::size_t { x_minus, x_plus, y_minus, y_plus, z_minus, z_plus };

// Which ways lead out of an obstacle: not through a van's wall, and not down through the floor.
std::array<bool, 6> ways_out(const ObstacleShape& shape) {
    std::array<bool, 6> ways{true, true, true, true, false, true};
    if (const auto* well = std::get_if<WheelWell>(&shape)) {
        const std::size_t axis = index_of(well->inner_side);
        if (axis < 2) ways[2 * axis + (well->inner_sense == Sense::plus ? 0U : 1U)] = false;
    } else if (const auto* wall = std::get_if<WallProfile>(&shape)) {
        ways = {};
        ways[wall->inside == Sense::plus ? x_plus : x_minus] = true;
    } else if (std::holds_alternative<CeilingProfile>(shape)) {
        ways = {};
        ways[z_minus] = true;
    }
    return ways;
}

// Turned about X, then about Y, then about Z, and shifted.
std::optional<engine::Placement> placement_of(const ScannedObstacle& scan,
                                              const NamedValues& values) {
    const auto at = values.point(scan.at);
    if (!at) return std::nullopt;
    engine::Placement place;
    std::array<engine::Vector*, 3> own{&place.x, &place.y, &place.z};
    for (std::size_t axis = 0; axis < 3; ++axis) {
        const auto degrees = values.angle(scan.turn[axis]);
        if (!degrees) return std::nullopt;
        const double angle = *degrees * std::numbers::pi / 180.0;
        const std::size_t a = (axis + 1) % 3;
        const std::size_t b = (axis + 2) % 3;
        for (auto* direction : own) {
            const double from_a = (*direction)[a];
            const double from_b = (*direction)[b];
            (*direction)[a] = std::cos(angle) * from_a - std::sin(angle) * from_b;
            (*direction)[b] = std::sin(angle) * from_a + std::cos(angle) * from_b;
        }
    }
    for (std::size_t k = 0; k < 3; ++k) place.origin[k] = mm_of((*at)[k]);
    return place;
}

class Reader {
public:
    Reader(const Project& project,
           const Resolved& resolved,
           const ScanLibrary& scans,
           std::vector<Finding>& findings)
        : project_{project},
          shop_{resolved.shop},
          scans_{scans},
          values_{project, resolved},
          findings_{findings} {}

    std::optional<RoomObstacle> obstacle(Index index) {
        const auto& stated = project_.room[index];
        RoomObstacle obstacle{.obstacle = index,
                              .wanted = stated.stays_clear ? 0 : shop_.clearance,
                              .stays_clear = stated.stays_clear,
                              .ways = ways_out(stated.shape)};
        if (!stated.clearance.empty()) {
            obstacle.wanted = values_.length(stated.clearance).value_or(obstacle.wanted);
            if (obstacle.wanted < 0) fault(stated, "its clearance is below 0");
        }
        if (const auto* scan = std::get_if<ScannedObstacle>(&stated.shape)) {
            return with_scan(std::move(obstacle), stated, *scan);
        }
        return with_bodies(std::move(obstacle), stated);
    }

private:
    void fault(const Obstacle& stated, std::string what) {
        findings_.push_back({.code = "bad_obstacle",
                             .severity = Severity::error,
                             .concerns = {{SubjectKind::obstacle, {}, stated.name}},
                             .what = std::move(what),
                             .mend = "mend its measures; until then nothing keeps clear of it"});
    }

    std::optional<RoomObstacle> with_bodies(RoomObstacle obstacle, const Obstacle& stated) {
        const auto solid = obstacle_shape(stated.shape, values_);
        if (!solid.fault.empty()) fault(stated, solid.fault);
        bool has_flat = false;
        for (const auto& prism : solid.bodies) {
            auto body = engine::solid_body(prism);
            has_flat = has_flat || !body;
            if (!body) continue;
            engine::put_in(obstacle.bounds, body->bounds);
            obstacle.bodies.push_back(std::move(*body));
        }
        if (has_flat) fault(stated, "a part of it has no thickness");
        if (obstacle.bodies.empty()) return std::nullopt;
        return obstacle;
    }

    void not_read(const Obstacle& stated, const ScannedObstacle& scan, const engine::Error* why) {
        findings_.push_back(
            {.code = "scan_not_read",
             .severity = Severity::warning,
             .concerns = {{SubjectKind::obstacle, {}, stated.name}},
             .what = "the scan " + scan.file + " is not read" + (why == nullptr ? " yet" : "") +
                     ", so nothing keeps clear of it" +
                     (why == nullptr ? std::string() : ": " + engine::to_text(*why)),
             .mend = why == nullptr
                         ? "wait until it is; if it stays so, put the file where the project looks "
                           "for it, or import it again"
                         : "see to that, or import another scan in its place"});
    }

    std::optional<RoomObstacle> with_scan(RoomObstacle obstacle,
                                          const Obstacle& stated,
                                          const ScannedObstacle& scan) {
        const auto place = placement_of(scan, values_);
        if (!place) return std::nullopt;
        const auto found = scans_.find(scan_key(scan));
        if (found == scans_.end() || !found->second || !*found->second) {
            const bool has_reason = found != scans_.end() && !found->second;
            not_read(stated, scan, has_reason ? &found->second.error() : nullptr);
            return std::nullopt;
        }
        obstacle.scan = *found->second;
        obstacle.scan_place = *place;
        const auto& own = obstacle.scan->tree.bounds();
        for (int corner = 0; corner < 8; ++corner) {
            engine::Vector at{};
            for (std::size_t k = 0; k < 3; ++k)
                at[k] = ((corner >> k) & 1) != 0 ? own.hi[k] : own.lo[k];
            engine::put_in(obstacle.bounds, engine::point_in(*place, at));
        }
        return obstacle;
    }

    const Project& project_;
    const ResolvedShop& shop_;
    const ScanLibrary& scans_;
    NamedValues values_;
    std::vector<Finding>& findings_;
};

}  // namespace

std::string scan_key(const ScannedObstacle& scan) {
    return std::to_string(static_cast<int>(scan.unit)) + " " + scan.file;
}

std::vector<RoomObstacle> room_obstacles(const Project& project,
                                         const Resolved& resolved,
                                         const ScanLibrary& scans,
                                         std::vector<Finding>& findings) {
    std::vector<RoomObstacle> obstacles;
    Reader reader{project, resolved, scans, findings};
    for (Index i = 0; i < project.room.size(); ++i) {
        if (auto obstacle = reader.obstacle(i)) obstacles.push_back(std::move(*obstacle));
    }
    return obstacles;
}

}  // namespace model
