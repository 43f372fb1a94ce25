#include "model/assembly/square_at.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <optional>
#include <string_view>

namespace model {
namespace {

// Where the row's corners are: across the face, then along its two axes.
struct Corners {
    std::size_t axis = 0;
    Nm at = 0;
    std::array<std::array<Nm, 2>, 2> along{};
};

class RowPlaces {
public:
    explicit RowPlaces(const FrameParts& parts) : parts_{parts} {}

    std::optional<Corners> corners_of(const SquareRow& row) const {
        const auto face = number(row.face);
        if (!face) return std::nullopt;
        Corners corners{.axis = index_of(parts_.stated().planes[*face].axis)};
        if (!place(row.face, corners.at)) return std::nullopt;
        for (std::size_t k = 0; k < 2; ++k) {
            for (std::size_t end = 0; end < 2; ++end) {
                if (!place(row.between[k][end], corners.along[k][end])) return std::nullopt;
            }
        }
        return corners;
    }

private:
    std::optional<std::size_t> number(std::string_view name) const {
        const auto& planes = parts_.stated().planes;
        const auto found = std::ranges::find(planes, name, &Plane::name);
        if (found == planes.end()) return std::nullopt;
        return static_cast<std::size_t>(found - planes.begin());
    }

    bool place(std::string_view name, Nm& at) const {
        const auto plane = number(name);
        const auto& placed = parts_.placed().planes;
        if (!plane || *plane >= placed.size() || !placed[*plane].position) return false;
        at = *placed[*plane].position;
        return true;
    }

    const FrameParts& parts_;
};

// How far laps shift bars, and bars end before a plane.
Nm hair_of(const FrameParts& parts) {
    Nm hair = 0;
    for (Index i = 0; i < parts.size(); ++i) {
        for (const auto& wall : parts.piece(i).walls()) {
            const std::size_t n = wall.normal_axis;
            if (!wall.is_root_fillet) hair = std::max(hair, wall.box.hi[n] - wall.box.lo[n]);
        }
    }
    return hair + parts.resolved().shop.end_gap;
}

// Bars that run along both sides of the corner; else one that ends there.
void add_bars(const FrameParts& parts, Nm hair, std::size_t axis, const Point& at, PieceSet& bars) {
    PieceSet in_face(parts.size());
    PieceSet ending(parts.size());
    for (Index i = 0; i < parts.size(); ++i) {
        const Piece& piece = parts.piece(i);
        if (piece.kind != PieceKind::bar || piece.lean != no_index) continue;
        bool is_here = true;
        for (std::size_t k = 0; k < 3; ++k) {
            const bool is_along = k == index_of(piece.run);
            // Behind two walls that lie outside of it, each with its end gap.
            const Nm lo = piece.extents.lo[k] - 2 * hair;
            const Nm hi = piece.extents.hi[k] + 2 * hair;
            const bool is_at_edge = std::abs(piece.extents.lo[k] - at[k]) <= hair ||
                                    std::abs(piece.extents.hi[k] - at[k]) <= hair;
            is_here = is_here && (is_along && k != axis ? lo <= at[k] && at[k] <= hi : is_at_edge);
        }
        if (is_here) (index_of(piece.run) == axis ? ending : in_face).insert(i);
    }
    bars |= in_face.size() >= 2 ? in_face : ending.size() > 0 ? ending : in_face;
}

}  // namespace

std::vector<SquareAt> squares_at(const FrameParts& parts, std::span<const SquareRow> rows) {
    const RowPlaces places(parts);
    const Nm hair = hair_of(parts);
    std::vector<SquareAt> squares;
    for (Index r = 0; r < rows.size(); ++r) {
        if (rows[r].frame != parts.frame()) continue;
        const auto corners = places.corners_of(rows[r]);
        if (!corners) continue;
        SquareAt square{r, PieceSet(parts.size())};
        const auto others = across(static_cast<Axis>(corners->axis));
        for (const Nm u : corners->along[0]) {
            for (const Nm v : corners->along[1]) {
                Point at{};
                at[corners->axis] = corners->at;
                at[index_of(others[0])] = u;
                at[index_of(others[1])] = v;
                add_bars(parts, hair, corners->axis, at, square.bars);
            }
        }
        squares.push_back(std::move(square));
    }
    return squares;
}

}  // namespace model
