#include "model/resolve/room_boxes.h"

#include "model/resolve/named_values.h"

#include <algorithm>
#include <variant>

namespace model {
namespace {

constexpr Nm outward = 1'000'000'000;  // 1 m

class Reader {
public:
    Reader(const Project& project, const Resolved& resolved)
        : project_{project}, values_{project, resolved} {}

    std::vector<Box> boxes() {
        for (const auto& obstacle : project_.room) {
            std::visit([&](const auto& shape) { add(shape); }, obstacle.shape);
        }
        return std::move(boxes_);
    }

private:
    void add_between(const Place& least, const Place& most) {
        Box box;
        for (std::size_t k = 0; k < 3; ++k) {
            const auto lo = values_.length(least[k]);
            const auto hi = values_.length(most[k]);
            if (!lo || !hi || *lo >= *hi) return;
            box.lo[k] = *lo;
            box.hi[k] = *hi;
        }
        boxes_.push_back(box);
    }

    void add(const BoxObstacle& box) { add_between(box.least, box.most); }
    void add(const WheelWell& well) { add_between(well.least, well.most); }
    void add(const CeilingProfile&) {}
    void add(const CylinderObstacle&) {}
    void add(const DoorSwing&) {}
    void add(const ScannedObstacle&) {}

    void add(const WallProfile& wall) {
        const auto at = values_.length(wall.at);
        const auto from = values_.length(wall.from);
        const auto to = values_.length(wall.to);
        if (!at || !from || !to) return;
        const int inward = sign_of(wall.inside);
        for (std::size_t i = 0; i + 1 < wall.offsets.size(); ++i) {
            const auto low = values_.length(wall.offsets[i].height);
            const auto high = values_.length(wall.offsets[i + 1].height);
            const auto inset = values_.length(wall.offsets[i].inset);
            const auto next = values_.length(wall.offsets[i + 1].inset);
            if (!low || !high || !inset || !next) continue;
            const Nm face = *at + inward * std::min(*inset, *next);
            const Nm back = face - inward * outward;
            boxes_.push_back({{std::min(face, back), std::min(*from, *to), std::min(*low, *high)},
                              {std::max(face, back), std::max(*from, *to), std::max(*low, *high)}});
        }
    }

    const Project& project_;
    NamedValues values_;
    std::vector<Box> boxes_;
};

}  // namespace

std::vector<Box> room_boxes(const Project& project,
                            const Resolved& resolved,
                            const ResolvedFrame& frame) {
    const ResolvedFrame back{.origin = {}, .quarter_turns = (4 - frame.quarter_turns) & 3};
    auto boxes = Reader(project, resolved).boxes();
    for (auto& box : boxes) {
        for (std::size_t k = 0; k < 3; ++k) {
            box.lo[k] -= frame.origin[k];
            box.hi[k] -= frame.origin[k];
        }
        const Point p = to_room(back, box.lo);
        const Point q = to_room(back, box.hi);
        box = engine::hull({p, p}, {q, q});
    }
    return boxes;
}

}  // namespace model
