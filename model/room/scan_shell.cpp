#include "model/room/scan_shell.h"

#include <algorithm>
#include <cstdint>

namespace model {
namespace {

// The further corners of all edges, by their nearer one (nearer the beginning of the list).
class Edges {
public:
    Edges(const std::vector<engine::ScanTriangle>& triangles, std::size_t points)
        : first_(points + 1) {
        for_each(triangles, [&](std::uint32_t low, std::uint32_t) { ++first_[low + 1]; });
        for (std::size_t i = 0; i < points; ++i) first_[i + 1] += first_[i];
        far_.resize(first_.back());
        auto next = first_;
        for_each(triangles,
                 [&](std::uint32_t low, std::uint32_t high) { far_[next[low]++] = high; });
    }

    // Whether each edge from that corner lies between two triangles.
    bool are_closed_at(std::size_t corner) {
        const auto begin = far_.begin() + first_[corner];
        const auto end = far_.begin() + first_[corner + 1];
        std::sort(begin, end);
        for (auto it = begin; it != end;) {
            const auto behind = std::find_if(it, end, [&](auto other) { return other != *it; });
            if (behind - it != 2) return false;
            it = behind;
        }
        return true;
    }

private:
    template <class Visit>
    static void for_each(const std::vector<engine::ScanTriangle>& triangles, Visit visit) {
        for (const auto& corners : triangles) {
            for (std::size_t i = 0; i < 3; ++i) {
                const auto [low, high] = std::minmax(corners[i], corners[(i + 1) % 3]);
                visit(low, high);
            }
        }
    }

    std::vector<std::uint32_t> first_;
    std::vector<std::uint32_t> far_;
};

}  // namespace

std::optional<bool> is_closed(const std::vector<engine::ScanTriangle>& triangles,
                              std::size_t points,
                              const std::function<bool(double done)>& go_on) {
    constexpr std::size_t between_calls = 16'384;
    if (!go_on(0.0)) return std::nullopt;
    Edges edges{triangles, points};
    for (std::size_t i = 0; i < points; ++i) {
        if (i % between_calls == 0 &&
            !go_on(0.5 + 0.5 * static_cast<double>(i) / static_cast<double>(points)))
            return std::nullopt;
        if (!edges.are_closed_at(i)) return false;
    }
    return !triangles.empty();
}

bool is_seen_from_within(std::span<const engine::ScanPoint> points,
                         const std::vector<engine::ScanTriangle>& triangles) {
    const auto& from = points[triangles.front()[0]];
    const auto side = [&](std::uint32_t corner, std::size_t k) {
        return static_cast<double>(points[corner][k]) - static_cast<double>(from[k]);
    };
    double six_volumes = 0.0;
    for (const auto& [a, b, c] : triangles) {
        for (std::size_t k = 0; k < 3; ++k) {
            const std::size_t l = (k + 1) % 3;
            const std::size_t m = (k + 2) % 3;
            six_volumes += side(a, k) * (side(b, l) * side(c, m) - side(b, m) * side(c, l));
        }
    }
    return six_volumes < 0.0;
}

}  // namespace model
