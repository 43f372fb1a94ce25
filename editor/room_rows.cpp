#include "editor/room_rows.h"

#include "model/room/frame_distances.h"

#include <algorithm>
#include <cmath>

namespace editor {
namespace {

using model::Index;

double mm_of(model::Nm length) { return static_cast<double>(length) / 1e6; }

RoomRow row_of(const std::string& frame,
               const model::Obstacle& obstacle,
               const ObstacleFacts& facts) {
    RoomRow row;
    row.frame = frame;
    row.other = obstacle.name;
    row.is_known = facts.has_shape;
    row.wanted = mm_of(facts.wanted);
    row.reach = row.wanted + facts.reach_mm;
    return row;
}

void tell_nearest(RoomRow& row, const model::NearPlace& near) {
    row.clear = near.distance;
    row.depth = near.depth;
    row.pieces = {near.thing.piece};
    row.from = near.on_thing;
    row.to = near.on_obstacle;
    if (near.depth <= 0.0) return;
    for (std::size_t k = 0; k < 3; ++k) row.to[k] = near.on_thing[k] + near.way_out[k] * near.depth;
}

void add_obstacles(std::vector<RoomRow>& rows,
                   Index frame,
                   const Derived& derived,
                   const RoomFacts& facts) {
    const auto& room = derived.project->room;
    for (Index i = 0; i < room.size() && i < facts.obstacles.size(); ++i) {
        const auto& it = facts.obstacles[i];
        auto row = row_of(derived.project->frames[frame].name, room[i], it);
        for (const auto& near : it.of_frames) {
            if (derived.resolved.pieces[near.thing.piece].frame == frame) tell_nearest(row, near);
        }
        rows.push_back(std::move(row));
    }
}

void add_frames(std::vector<RoomRow>& rows,
                Index frame,
                const Derived& derived,
                const std::vector<model::FrameDistance>& distances,
                double reach_mm) {
    const auto& pieces = derived.resolved.pieces;
    const auto& frames = derived.project->frames;
    for (Index other = frame + 1; other < frames.size(); ++other) {
        RoomRow row;
        row.frame = frames[frame].name;
        row.other = frames[other].name;
        row.is_frame = true;
        row.wanted = mm_of(derived.resolved.shop.frame_gap);
        row.reach = reach_mm;
        for (const auto& near : distances) {
            const std::array<Index, 2> both{near.things[0].piece, near.things[1].piece};
            if (pieces[both[0]].frame != frame || pieces[both[1]].frame != other) continue;
            row.clear = near.distance;
            row.pieces = {both[0], both[1]};
            row.from = near.at[0];
            row.to = near.at[1];
        }
        rows.push_back(std::move(row));
    }
}

// Down to a mark of the tape: no more than there is.
std::string distance_words(double mm, const engine::TapeStyle& shown) {
    return model::distance_in_words(mm, shown);
}

}  // namespace

std::vector<RoomRow> room_rows(const Derived& derived,
                               const RoomFacts& facts,
                               const model::Catalogue& catalogue) {
    const double reach = mm_of(derived.resolved.shop.frame_gap) + facts.reach_mm;
    const auto distances = model::frame_distances(derived.resolved, catalogue, reach);
    std::vector<RoomRow> rows;
    const auto count = std::min(derived.project->frames.size(), derived.resolved.frames.size());
    for (Index frame = 0; frame < count; ++frame) {
        add_obstacles(rows, frame, derived, facts);
        add_frames(rows, frame, derived, distances, reach);
    }
    return rows;
}

std::string clearance_words(const RoomRow& row, const engine::TapeStyle& shown) {
    if (!row.is_known) return "has no shape";
    if (!row.clear) return "over " + distance_words(row.reach, shown);
    if (row.depth > 0.0) {
        const auto depth = engine::Length::from_nm(std::llround(row.depth * 1e6));
        return model::depth_in_words(depth, shown) + " inside";
    }
    return *row.clear <= 0.0 ? "touches" : distance_words(*row.clear, shown);
}

MeasuredLine line_of(const RoomRow& row, const engine::TapeStyle& shown) {
    return {row.frame + " to " + row.other, row.from, row.to, clearance_words(row, shown)};
}

}  // namespace editor
