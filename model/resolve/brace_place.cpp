#include "model/resolve/brace_place.h"

#include "model/resolve/brace_ends.h"
#include "model/resolve/face_laps.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace model {
namespace {

int sense_of(const BraceLine& line, std::size_t k) {
    return line.nodes[1][k] > line.nodes[0][k] ? 1 : -1;
}

// The run lies along the axis of the face along which the brace goes further.
Piece piece_of(const BraceLine& line, const BraceFace& face, const BraceCut& cut, Lean& lean) {
    const auto slope = slope_of(line);
    const std::size_t u = line.axes[0];
    const std::size_t v = line.axes[1];
    const int along_u = sense_of(line, 0);
    const int along_v = sense_of(line, 1);
    lean.run[u] = slope[0] * along_u;
    lean.run[v] = slope[1] * along_v;
    lean.a[u] = -slope[1] * along_u;
    lean.a[v] = slope[0] * along_v;
    lean.b[line.normal] = face.inward;
    const bool runs_along_u = slope[0] >= slope[1];
    Piece piece{.kind = PieceKind::brace, .stated = line.stated, .stock = line.stock};
    piece.run = static_cast<Axis>(runs_along_u ? u : v);
    piece.run_sense = runs_along_u ? along_u : along_v;
    piece.a_axis = static_cast<Axis>(runs_along_u ? v : u);
    piece.a_sense = runs_along_u ? along_v : -along_u;
    piece.b_sense = face.inward;
    piece.length = cut.length;
    for (std::size_t k = 0; k < 2; ++k) {
        const std::size_t axis = line.axes[k];
        const double off = lean.run[axis] * static_cast<double>(cut.from_node) -
                           lean.a[axis] * static_cast<double>(line.width) / 2.0;
        piece.datum[axis] = line.nodes[0][k] + std::llround(off);
    }
    piece.plates[0] = {.normal_axis = static_cast<std::uint8_t>(line.normal),
                       .inward = static_cast<std::int8_t>(face.inward)};
    piece.plate_count = 1;
    return piece;
}

class BracePlacing {
public:
    BracePlacing(const PartRoom& room,
                 const FrameSkeleton& skeleton,
                 const Slants& slants,
                 const engine::BoxTree& tree)
        : room_{room}, s_{skeleton}, slants_{slants}, tree_{tree} {}

    // False where nothing is left of it.
    bool place(const BraceLine& line, const BraceFace& face) {
        auto limits = outline_limits(line, face, s_);
        if (!shape(line, face, limits)) return false;
        lay_at(line, face, depth_for(line, face));
        // Drawing one end back may bring to light what stood behind; each round clears something.
        constexpr int most_rounds = 8;
        for (int i = 0; i < most_rounds; ++i) {
            if (!clear_ends(limits, line, s_, slants_, tree_, brace_.polygon, brace_.piece.extents,
                            room_.shop.end_gap)) {
                break;
            }
            if (!shape(line, face, limits)) return false;
            lay_at(line, face, depth_for(line, face));
        }
        return true;
    }

    PlacedBrace take() { return std::move(brace_); }

private:
    bool shape(const BraceLine& line,
               const BraceFace& face,
               const std::array<EndLimits, 2>& limits) {
        const auto cut = brace_cut(line, limits, room_.shop.graduation);
        if (!cut) return false;
        brace_.lean = Lean{};
        brace_.piece = piece_of(line, face, *cut, brace_.lean);
        brace_.piece.section = room_.shapes[line.stock].section;
        brace_.piece.frame = s_.frame;
        brace_.piece.lean = 0;
        brace_.piece.plates[0].outline = 0;
        brace_.outline = {.corners = cut->corners, .cut_outs = {}};
        brace_.polygon =
            leaning_wall({{&brace_.outline, 1}, {&brace_.lean, 1}}, brace_.piece, line.axes);
        return true;
    }

    bool lies_over(const FaceWall& wall) const {
        return area_of(lapped_part(brace_.polygon, s_, wall)) >= least_area;
    }

    // The surface that lies nearest to the brace of all that it lies over; the face where there is
    // none.
    Nm depth_for(const BraceLine& line, const BraceFace& face) const {
        const int away = line.side == FaceSide::outside ? -face.inward : face.inward;
        std::optional<Nm> nearest;
        for (const auto& wall : face.walls) {
            if (!lies_over(wall)) continue;
            if (!nearest || (wall.surface - *nearest) * away > 0) nearest = wall.surface;
        }
        return nearest.value_or(line.face);
    }

    void lay_at(const BraceLine& line, const BraceFace& face, Nm surface) {
        const std::size_t n = line.normal;
        brace_.surface = surface;
        const bool is_outside = line.side == FaceSide::outside;
        brace_.piece.datum[n] = is_outside ? surface - face.inward * line.thickness : surface;
        const Nm inner = brace_.piece.datum[n] + face.inward * line.thickness;
        Box box = box_round(brace_.polygon, line.axes, surface);
        box.lo[n] = std::min(brace_.piece.datum[n], inner);
        box.hi[n] = std::max(brace_.piece.datum[n], inner);
        brace_.piece.plates[0].box = box;
        brace_.piece.extents = box;
    }

    const PartRoom& room_;
    const FrameSkeleton& s_;
    const Slants& slants_;
    const engine::BoxTree& tree_;
    PlacedBrace brace_;
};

}  // namespace

std::optional<PlacedBrace> place_brace(const PartRoom& room,
                                       const FrameSkeleton& s,
                                       const Slants& slants,
                                       const engine::BoxTree& tree,
                                       const BraceLine& line,
                                       const BraceFace& face) {
    BracePlacing placing(room, s, slants, tree);
    if (!placing.place(line, face)) return std::nullopt;
    return placing.take();
}

}  // namespace model
