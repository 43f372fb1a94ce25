#include "model/resolve/panel_edges.h"

#include "model/resolve/sheet_region.h"

#include <algorithm>
#include <string_view>
#include <vector>

namespace model {
namespace {

bool stands_on(const Frame& frame, const Piece& piece, std::string_view plane) {
    if (piece.member == no_index) return false;
    const auto& on = frame.members[piece.member].on;
    return on[0] == plane || on[1] == plane;
}

// The stretch along axis k that the members on one of the bay's planes give a panel to lie on.
struct Rest {
    Nm lo = 0;
    Nm hi = 0;
};

Rest rest_on(const Frame& frame,
             std::span<const Piece> pieces,
             const PanelFace& face,
             std::size_t k,
             std::size_t side,
             bool over_whole_frame) {
    const Nm line = side == 0 ? face.bay.lo[k] : face.bay.hi[k];
    const auto& plane = frame.planes[face.planes[k][side]].name;
    Rest rest{line, line};
    for (const auto& piece : pieces) {
        if (!stands_on(frame, piece, plane) || index_of(piece.run) == face.axis[k]) continue;
        for (const auto& plate : piece.walls()) {
            if (!is_flat_on(face, piece, plate) || outer_side(face, plate.box) != 0) continue;
            const Region region = seen_on(face, plate.box);
            const bool is_beside =
                region.lo[1 - k] < face.bay.hi[1 - k] && face.bay.lo[1 - k] < region.hi[1 - k];
            if (!is_beside && !over_whole_frame) continue;
            rest.lo = std::min(rest.lo, region.lo[k]);
            rest.hi = std::max(rest.hi, region.hi[k]);
        }
    }
    return rest;
}

// The gap to the panel that adjoins on that side; none: there is none.
std::optional<Nm> gap_to_next(const PanelFace& face,
                              std::size_t k,
                              std::size_t side,
                              std::span<const OverlayBeside> others) {
    std::optional<Nm> gap;
    for (const auto& other : others) {
        if (other.face.normal != face.normal || other.face.outward != face.outward ||
            other.face.plane != face.plane) {
            continue;
        }
        const Nm own = side == 0 ? face.bay.lo[k] : face.bay.hi[k];
        const Nm theirs = side == 0 ? other.face.bay.hi[k] : other.face.bay.lo[k];
        const bool is_beside = other.face.bay.lo[1 - k] < face.bay.hi[1 - k] &&
                               face.bay.lo[1 - k] < other.face.bay.hi[1 - k];
        if (own == theirs && is_beside) gap = std::max(gap.value_or(0), other.gap);
    }
    return gap;
}

// How much a panel at that depth would have to lie against.
double rest_area(
    std::span<const Piece> pieces, const PanelFace& face, Nm to, Nm thickness, bool inside) {
    double area = 0.0;
    for (const auto& piece : pieces) {
        for (const auto& plate : piece.walls()) {
            if (!is_flat_on(face, piece, plate)) continue;
            const bool touches = inside ? inner_side(face, plate.box) == to
                                        : outer_side(face, plate.box) == to - thickness;
            const Region region = seen_on(face, plate.box);
            if (!touches || !share_area(region, face.bay)) continue;
            double product = 1.0;
            for (std::size_t k = 0; k < 2; ++k) {
                const Nm lo = std::max(region.lo[k], face.bay.lo[k]);
                const Nm hi = std::min(region.hi[k], face.bay.hi[k]);
                product *= static_cast<double>(hi - lo);
            }
            area += product;
        }
    }
    return area;
}

// An inset panel lies no deeper than this: beyond it, it would close another face.
constexpr Nm deepest_inset = 3 * Length::nm_per_inch;

}  // namespace

Region overlay_region(const Frame& frame,
                      std::span<const Piece> pieces,
                      const PanelFace& face,
                      Nm gap,
                      std::span<const OverlayBeside> others) {
    Region region = face.bay;
    for (std::size_t k = 0; k < 2; ++k) {
        for (const std::size_t side : {std::size_t{0}, std::size_t{1}}) {
            const auto other = gap_to_next(face, k, side, others);
            // Both panels must find the same middle, whatever stretch of the edge is theirs.
            const Rest rest = rest_on(frame, pieces, face, k, side, other.has_value());
            Nm& edge = side == 0 ? region.lo[k] : region.hi[k];
            edge = side == 0 ? rest.lo : rest.hi;
            if (other) {
                const Nm half = std::max(gap, *other) / 2;
                edge = (rest.lo + rest.hi) / 2 + (side == 0 ? half : -half);
            }
        }
    }
    return region;
}

InsetDepth inset_depth(std::span<const Piece> pieces, const PanelFace& face, Nm thickness) {
    if (rest_area(pieces, face, 0, thickness, false) > 0) return {.has_rest = true};
    struct Candidate {
        Nm to = 0;
        bool inside = false;
    };
    std::vector<Candidate> candidates;
    for (const auto& piece : pieces) {
        for (const auto& plate : piece.walls()) {
            if (!is_flat_on(face, piece, plate) || !share_area(seen_on(face, plate.box), face.bay))
                continue;
            candidates.push_back({outer_side(face, plate.box) + thickness, false});
            candidates.push_back({inner_side(face, plate.box), true});
        }
    }
    InsetDepth best;
    double most = 0.0;
    for (const auto& [to, inside] : candidates) {
        if (to > 0 || to < -deepest_inset) continue;
        const double area = rest_area(pieces, face, to, thickness, inside);
        if (area < most || (area == most && to <= best.to)) continue;
        most = area;
        best = {.to = to, .rests_inside = inside, .has_rest = true};
    }
    return best;
}

}  // namespace model
