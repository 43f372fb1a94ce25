#include "engine/geometry/turned_mesh.h"

#include "engine/geometry/mesh_writer.h"
#include "engine/geometry/unit_circle.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <vector>

namespace engine {
namespace {

static_assert(hole_chords % static_cast<std::size_t>(Roundness::coarse) == 0);
static_assert(hole_chords == static_cast<std::size_t>(Roundness::fine));

// Outward normal of the profile's part between two points, as (radius, z).
std::array<double, 2> outward(const TurnedPoint& from, const TurnedPoint& to) {
    const double dr = to.radius - from.radius;
    const double dz = to.z - from.z;
    const double size = std::sqrt(dr * dr + dz * dz);
    if (!(size > 0.0)) return {1.0, 0.0};
    return {dz / size, -dr / size};
}

std::array<double, 2> between(const std::array<double, 2>& a, const std::array<double, 2>& b) {
    const double r = a[0] + b[0];
    const double z = a[1] + b[1];
    const double size = std::sqrt(r * r + z * z);
    if (!(size > 0.0)) return a;
    return {r / size, z / size};
}

bool can_be_made(std::span<const TurnedPoint> profile) {
    if (profile.size() < 3 || profile.front().radius != 0.0 || profile.back().radius != 0.0)
        return false;
    return std::ranges::all_of(profile.subspan(1, profile.size() - 2),
                               [](const TurnedPoint& p) { return p.radius > 0.0; });
}

class Turner {
public:
    Turner(MeshWriter& writer, const Placement& place, Roundness roundness)
        : writer_{writer}, place_{place}, turns_{static_cast<std::uint32_t>(roundness)} {}

    // A ring of corners; one corner in the middle of an end.
    std::uint32_t ring(const TurnedPoint& at, const std::array<double, 2>& normal) {
        const auto first = writer_.next_vertex();
        const std::uint32_t corners = at.radius > 0.0 ? turns_ : 1U;
        for (std::uint32_t k = 0; k < corners; ++k) {
            const auto& [c, s] = unit_circle()[k * hole_chords / turns_];
            const bool on_axis = corners == 1U;
            const double across = on_axis ? 0.0 : normal[0];
            const double along = on_axis ? (normal[1] < 0.0 ? -1.0 : 1.0) : normal[1];
            writer_.vertex(position(at, k),
                           to_floats(direction_in(place_, {c * across, s * across, along})));
        }
        return first;
    }

    void band(std::uint32_t lower, bool lower_is_tip, std::uint32_t upper, bool upper_is_tip) {
        for (std::uint32_t k = 0; k < turns_; ++k) {
            const std::uint32_t next = (k + 1) % turns_;
            if (lower_is_tip) {
                writer_.triangle(lower, upper + next, upper + k);
            } else if (upper_is_tip) {
                writer_.triangle(lower + k, lower + next, upper);
            } else {
                writer_.quad(lower + k, lower + next, upper + next, upper + k);
            }
        }
    }

    void rim(const TurnedPoint& at) {
        for (std::uint32_t k = 0; k < turns_; ++k)
            writer_.edge(position(at, k), position(at, (k + 1) % turns_));
    }

private:
    MeshPoint position(const TurnedPoint& at, std::uint32_t k) const {
        const auto& [c, s] = unit_circle()[k * hole_chords / turns_];
        return to_floats(point_in(place_, {c * at.radius, s * at.radius, at.z}));
    }

    MeshWriter& writer_;
    const Placement& place_;
    std::uint32_t turns_;
};

}  // namespace

MeshCounts turned_counts(std::size_t profile_points, Roundness roundness) {
    const auto turns = static_cast<std::size_t>(roundness);
    return {.vertices = 2 * profile_points * turns,
            .triangles = 2 * profile_points * turns,
            .edges = profile_points * turns};
}

void append_turned(Mesh& mesh,
                   std::span<const TurnedPoint> profile,
                   const Placement& place,
                   Roundness roundness) {
    if (!can_be_made(profile)) return;
    const std::size_t bands = profile.size() - 1;
    MeshWriter writer{mesh, turned_counts(profile.size(), roundness), is_mirrored(place)};
    Turner turner{writer, place, roundness};
    for (std::size_t i = 0; i < bands; ++i) {
        const auto& from = profile[i];
        const auto& to = profile[i + 1];
        const auto normal = outward(from, to);
        auto first = normal;
        auto last = normal;
        if (i > 0 && !from.is_crisp) first = between(normal, outward(profile[i - 1], from));
        if (i + 1 < bands && !to.is_crisp) last = between(normal, outward(to, profile[i + 2]));
        const auto lower = turner.ring(from, first);
        const auto upper = turner.ring(to, last);
        turner.band(lower, from.radius == 0.0, upper, to.radius == 0.0);
        if (from.is_crisp && from.radius > 0.0) turner.rim(from);
    }
}

}  // namespace engine
