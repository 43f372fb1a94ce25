#include "model/assembly/square_at.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <optional>
#include <string_view>
#include <utility>

namespace model {
namespace {

class RowPlaces {
public:
    explicit RowPlaces(const FrameParts& parts) : parts_{parts} {}

    std::optional<RectangleAt> corners_of(const SquareRow& row) const {
        const auto face = number(row.face);
        if (!face) return std::nullopt;
        RectangleAt corners{.axis = index_of(parts_.stated().planes[*face].axis)};
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

// Where a corner of a face is looked for: across the face, and how far from it bars may end.
struct CornerAt {
    std::size_t axis = 0;
    Point at{};
    Nm hair = 0;
};

bool is_upright_at(const Piece& piece, const CornerAt& corner) {
    const Nm hair = corner.hair;
    for (std::size_t k = 0; k < 3; ++k) {
        const Nm at = corner.at[k];
        const bool is_along = k == index_of(piece.run);
        // Behind two walls that lie outside of it, each with its end gap.
        const Nm lo = piece.extents.lo[k] - 2 * hair;
        const Nm hi = piece.extents.hi[k] + 2 * hair;
        const bool is_at_edge = std::abs(piece.extents.lo[k] - at) <= hair ||
                                std::abs(piece.extents.hi[k] - at) <= hair;
        if (!(is_along && k != corner.axis ? lo <= at && at <= hi : is_at_edge)) return false;
    }
    return true;
}

bool is_leaning_at(const std::vector<PieceBody>& bodies, const CornerAt& corner) {
    Box near{corner.at, corner.at};
    for (std::size_t k = 0; k < 3; ++k) {
        near.lo[k] -= 2 * corner.hair;
        near.hi[k] += 2 * corner.hair;
    }
    return reaches_into(near, bodies);
}

// Bars and leaning members that run along both sides of the corner; where there are no two, those
// too that end there.
void add_bars(const FrameParts& parts,
              const PartWays& ways,
              const CornerAt& corner,
              PieceSet& bars) {
    PieceSet in_face(parts.size());
    PieceSet ending(parts.size());
    for (Index i = 0; i < parts.size(); ++i) {
        const Piece& piece = parts.piece(i);
        if (piece.kind != PieceKind::bar && piece.kind != PieceKind::leaning) continue;
        const bool leans = piece.lean < parts.resolved().leans.size();
        if (!(leans ? is_leaning_at(ways.bodies(i), corner) : is_upright_at(piece, corner)))
            continue;
        const bool is_across =
            leans ? std::abs(parts.resolved().leans[piece.lean].run[corner.axis]) > 1e-9
                  : index_of(piece.run) == corner.axis;
        (is_across ? ending : in_face).insert(i);
    }
    bars |= in_face;
    if (in_face.size() < 2) bars |= ending;
}

}  // namespace

std::vector<SquareAt> squares_at(const FrameParts& parts,
                                 const PartWays& ways,
                                 std::span<const SquareRow> rows) {
    const RowPlaces places(parts);
    const Nm hair = hair_of(parts);
    std::vector<SquareAt> squares;
    for (Index r = 0; r < rows.size(); ++r) {
        if (rows[r].frame != parts.frame()) continue;
        const auto corners = places.corners_of(rows[r]);
        if (!corners) continue;
        SquareAt square{r, *corners, PieceSet(parts.size())};
        const auto others = across(static_cast<Axis>(corners->axis));
        for (const Nm u : corners->along[0]) {
            for (const Nm v : corners->along[1]) {
                Point at{};
                at[corners->axis] = corners->at;
                at[index_of(others[0])] = u;
                at[index_of(others[1])] = v;
                add_bars(parts, ways, {corners->axis, at, hair}, square.bars);
            }
        }
        squares.push_back(std::move(square));
    }
    return squares;
}

std::vector<Index> SquaresLeft::taken(const PieceSet& present) {
    std::vector<Index> rows;
    for (std::size_t s = 0; s < squares_.size(); ++s) {
        if (is_measured_[s] || !squares_[s].bars.is_within(present)) continue;
        is_measured_[s] = true;
        measured_.push_back(squares_[s].place);
        rows.push_back(squares_[s].row);
    }
    return rows;
}

void SquaresLeft::prove(std::span<const Index> joints,
                        const PieceSet& present,
                        std::vector<Index>& told) {
    while (auto best = best_of(joints, present)) {
        measured_.push_back(best->place);
        told.push_back(static_cast<Index>(rows_.size()));
        rows_.push_back(std::move(best->row));
    }
}

std::optional<ClosedRectangle> SquaresLeft::best_of(std::span<const Index> joints,
                                                    const PieceSet& present) const {
    std::optional<ClosedRectangle> best;
    std::pair<std::size_t, Length> most;
    for (const Index j : joints) {
        if (!is_unproven(j)) continue;
        for (auto& closed : rectangles_.at(j, present)) {
            const std::pair own{count_proven(joints, closed.place), closed.row.diagonal};
            if (!(most < own)) continue;
            most = own;
            best = std::move(closed);
        }
    }
    return best;
}

std::size_t SquaresLeft::count_proven(std::span<const Index> joints, const RectangleAt& by) const {
    return static_cast<std::size_t>(std::ranges::count_if(
        joints, [&](Index j) { return is_unproven(j) && rectangles_.corner_of(j)->is_in(by); }));
}

bool SquaresLeft::wait_for(const PieceSet& joint) const {
    for (std::size_t s = 0; s < squares_.size(); ++s) {
        if (!is_measured_[s] && joint.is_within(squares_[s].bars)) return true;
    }
    return false;
}

bool SquaresLeft::is_unproven(Index joint) const {
    const auto& corner = rectangles_.corner_of(joint);
    return corner && std::ranges::none_of(measured_, [&](const RectangleAt& rectangle) {
               return corner->is_in(rectangle);
           });
}

bool SquaresLeft::is_proven_later(Index joint) const {
    const auto& corner = rectangles_.corner_of(joint);
    if (!is_unproven(joint)) return false;
    const bool is_in_face = std::ranges::any_of(
        squares_, [&](const SquareAt& square) { return corner->is_in(square.place); });
    return is_in_face || !rectangles_.at(joint, parts_.all()).empty();
}

}  // namespace model
