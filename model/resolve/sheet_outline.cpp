#include "model/resolve/sheet_outline.h"

#include "model/resolve/brace_face.h"

#include <algorithm>

namespace model {

FlatPolygon sheet_loop(const Piece& part, const Corners& loop) {
    const auto axes = axes_across(part.plates[0].normal_axis);
    FlatPolygon polygon;
    for (const auto& corner : loop) {
        FlatPoint at{};
        for (std::size_t k = 0; k < 2; ++k) {
            const bool is_run = axes[k] == index_of(part.run);
            const bool is_a = axes[k] == index_of(part.a_axis);
            const int sense = is_run ? part.run_sense : is_a ? part.a_sense : part.b_sense;
            at[k] = static_cast<double>(part.datum[axes[k]] + sense * corner[is_run ? 0 : 1]);
        }
        polygon.push_back(at);
    }
    if (area_of(polygon) < 0.0) std::ranges::reverse(polygon);
    return polygon;
}

namespace {

// What the wall shares with it, seen across the sheet.
SharedPlace shared_by(const FlatPolygon& wall, const Piece& part, const Outline& outline) {
    const auto common = common_polygon(sheet_loop(part, outline.corners), wall);
    if (area_of(common) < least_area) return SharedPlace::none;
    auto shared = SharedPlace::sure;
    for (const auto& cut_out : outline.cut_outs) {
        const auto opening = sheet_loop(part, cut_out);
        const auto lies_within = [&](const FlatPoint& corner) {
            return depth_within(opening, corner) >= 0.0;
        };
        // Openings are rectangles; of any other shape nothing is sure.
        if (opening.size() == 4 && std::ranges::all_of(common, lies_within)) {
            return SharedPlace::none;
        }
        if (area_of(common_polygon(opening, wall)) > 0.0) shared = SharedPlace::in_doubt;
    }
    return shared;
}

}  // namespace

SharedPlace shared_place(const Slants& slants, const Piece& leaning, const Piece& part) {
    const Plate& sheet = part.plates[0];
    if (sheet.outline >= slants.outlines.size()) return SharedPlace::sure;
    if (sheet.normal_axis != face_axis(leaning)) return SharedPlace::in_doubt;
    const Outline& outline = slants.outlines[sheet.outline];
    auto shared = SharedPlace::none;
    for (std::size_t wall = 0; wall < leaning.plate_count; ++wall) {
        if (!engine::overlaps(leaning.plates[wall].box, sheet.box)) continue;
        const auto across = leaning_wall(slants, leaning, axes_across(sheet.normal_axis), wall);
        const auto by_wall = shared_by(across, part, outline);
        if (by_wall == SharedPlace::sure) return by_wall;
        if (by_wall == SharedPlace::in_doubt) shared = by_wall;
    }
    return shared;
}

}  // namespace model
