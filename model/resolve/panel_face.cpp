#include "model/resolve/panel_face.h"

#include <algorithm>
#include <string_view>

namespace model {
namespace {

std::optional<Index> plane_number(const Frame& frame, std::string_view name, std::size_t axis) {
    const auto found = std::ranges::find(frame.planes, name, &Plane::name);
    if (found == frame.planes.end() || index_of(found->axis) != axis) return std::nullopt;
    return static_cast<Index>(found - frame.planes.begin());
}

// The least and the greatest plane of the bay along an axis.
std::optional<std::array<Index, 2>> planes_along(const Frame& frame,
                                                 const ResolvedFrame& placed,
                                                 const Bay& bay,
                                                 std::size_t axis) {
    const auto& names = axis == 0 ? bay.x : axis == 1 ? bay.y : bay.z;
    const auto one = plane_number(frame, names[0], axis);
    const auto two = plane_number(frame, names[1], axis);
    if (!one || !two) return std::nullopt;
    const auto p = placed.planes[*one].position;
    const auto q = placed.planes[*two].position;
    if (!p || !q) return std::nullopt;
    if (*p <= *q) return std::array{*one, *two};
    return std::array{*two, *one};
}

}  // namespace

std::optional<PanelFace> panel_face(const Frame& frame,
                                    const ResolvedFrame& placed,
                                    const Panel& panel) {
    const auto bay = std::ranges::find(frame.bays, panel.bay, &Bay::name);
    if (bay == frame.bays.end()) return std::nullopt;
    PanelFace face{.normal = index_of(panel.face_axis), .outward = sign_of(panel.face_side)};
    const auto across_face = planes_along(frame, placed, *bay, face.normal);
    if (!across_face) return std::nullopt;
    face.plane = *placed.planes[(*across_face)[face.outward > 0 ? 1 : 0]].position;
    for (std::size_t k = 0; k < 2; ++k) {
        face.axis[k] = index_of(across(panel.face_axis)[k]);
        const auto edges = planes_along(frame, placed, *bay, face.axis[k]);
        if (!edges) return std::nullopt;
        face.planes[k] = *edges;
        face.bay.lo[k] = *placed.planes[(*edges)[0]].position;
        face.bay.hi[k] = *placed.planes[(*edges)[1]].position;
    }
    return face;
}

Region seen_on(const PanelFace& face, const Box& box) {
    return {{box.lo[face.axis[0]], box.lo[face.axis[1]]},
            {box.hi[face.axis[0]], box.hi[face.axis[1]]}};
}

Nm outer_side(const PanelFace& face, const Box& box) {
    return face.outward > 0 ? box.hi[face.normal] - face.plane : face.plane - box.lo[face.normal];
}

Nm inner_side(const PanelFace& face, const Box& box) {
    return face.outward > 0 ? box.lo[face.normal] - face.plane : face.plane - box.hi[face.normal];
}

Box slab(const PanelFace& face, const Region& region, Nm from, Nm to) {
    Box box;
    for (std::size_t k = 0; k < 2; ++k) {
        box.lo[face.axis[k]] = region.lo[k];
        box.hi[face.axis[k]] = region.hi[k];
    }
    const Nm p = face.plane + face.outward * from;
    const Nm q = face.plane + face.outward * to;
    box.lo[face.normal] = std::min(p, q);
    box.hi[face.normal] = std::max(p, q);
    return box;
}

bool is_flat_on(const PanelFace& face, const Piece& piece, const Plate& plate) {
    return !is_of_sheet(piece.kind) && piece.lean == no_index && plate.outline == no_index &&
           !plate.is_root_fillet && plate.normal_axis == face.normal &&
           index_of(piece.run) != face.normal;
}

}  // namespace model
