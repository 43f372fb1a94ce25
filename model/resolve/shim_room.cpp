#include "model/resolve/shim_room.h"

#include "model/resolve/rect.h"

namespace model {
namespace {

Box gap_box(const Lap& lap) {
    Box box = lap.rect;
    (lap.towards_lower > 0 ? box.hi : box.lo)[lap.normal_axis] += lap.towards_lower * lap.gap;
    return box;
}

void cut_back(const FrameSkeleton& s, const std::vector<Index>& parts, Lap& lap) {
    for (const Index part : parts) {
        if (part == lap.upper || part == lap.lower) continue;
        for (const auto& plate : s.pieces[part].walls()) {
            if (!engine::overlaps(gap_box(lap), plate.box)) continue;
            lap.rect = without(lap.rect, plate.box, lap.normal_axis);
        }
    }
}

}  // namespace

void keep_shims_clear(const FrameSkeleton& s, std::vector<Lap>& laps) {
    std::vector<Index> parts;
    for (Index i = 0; i < s.pieces.size(); ++i) {
        if (s.bar_of[i] == no_index) parts.push_back(i);
    }
    if (parts.empty()) return;
    for (auto& lap : laps) {
        if (lap.gap > 0) cut_back(s, parts, lap);
    }
    std::erase_if(laps, [](const Lap& lap) { return !has_area(lap.rect, lap.normal_axis); });
}

}  // namespace model
