#include "model/schedule/drill_order.h"

#include <algorithm>
#include <compare>
#include <tuple>
#include <unordered_map>

namespace model {
namespace {

// When in the day's work an operation is done.
int stage_of(HoleOperation operation) {
    switch (operation) {
        case HoleOperation::drill:
        case HoleOperation::pilot:
        case HoleOperation::tap_drill:
        case HoleOperation::clearance:
            return 0;
        case HoleOperation::match_drill:
            return 1;
        case HoleOperation::countersink:
            return 2;
        case HoleOperation::tap:
            return 3;
    }
    return 0;
}

// What the order is made by, most important first.
struct SortKey {
    int stage = 0;
    Nm drill_diameter = 0;
    Index drill = 0;
    Nm gauge = 0;
    Index section = 0;
    std::uint32_t group = 0;  // rises with mark and hand
    std::uint8_t wall = 0;
    Nm from_datum = 0;
    HoleOperation operation{};

    auto operator<=>(const SortKey&) const = default;
};

struct Keyed {
    SortKey key;
    DrillStep step;
};

Nm drill_diameter(const Catalogue& catalogue, const Hole& hole) {
    return hole.drill < catalogue.drills.size() ? catalogue.drills[hole.drill].diameter.nm()
                                                : hole.diameter;
}

// All holes of one thread together; the fence does not matter then, but says which hole it is.
SortKey tapping_key_of(const Piece& piece, const Hole& hole, std::uint32_t group) {
    return {.stage = stage_of(HoleOperation::tap),
            .drill = hole.tap,
            .gauge = hole.gauge,
            .section = piece.section,
            .group = group,
            .wall = hole.wall,
            .from_datum = hole.from_datum,
            .operation = HoleOperation::tap};
}

SortKey key_of(const Catalogue& catalogue,
               const Piece& piece,
               const Hole& hole,
               std::uint32_t group) {
    return {.stage = stage_of(hole.operation),
            .drill_diameter = drill_diameter(catalogue, hole),
            .drill = hole.drill,
            .gauge = hole.gauge,
            .section = piece.section,
            .group = group,
            .wall = hole.wall,
            .from_datum = hole.from_datum,
            .operation = hole.operation};
}

// Numbers the steps of one piece, which start at `first`; tapping has its hole's number.
void number_along_piece(std::vector<Keyed>& steps, std::size_t first) {
    std::vector<Keyed*> along;
    for (auto i = first; i < steps.size(); ++i) along.push_back(&steps[i]);
    std::ranges::stable_sort(along, [](const Keyed* a, const Keyed* b) {
        return std::tie(a->key.wall, a->key.from_datum, a->key.gauge, a->step.is_tapping) <
               std::tie(b->key.wall, b->key.from_datum, b->key.gauge, b->step.is_tapping);
    });
    int number = 0;
    for (auto* keyed : along) keyed->step.number = keyed->step.is_tapping ? number : ++number;
}

void number_setups(std::vector<Keyed>& sorted) {
    std::unordered_map<Nm, int> setups;
    for (auto& keyed : sorted) {
        const auto next = static_cast<int>(setups.size()) + 1;
        keyed.step.setup = setups.try_emplace(keyed.key.gauge, next).first->second;
    }
}

}  // namespace

std::vector<DrillStep> drill_order(const Catalogue& catalogue,
                                   const Resolved& resolved,
                                   const std::vector<MarkGroup>& groups) {
    std::vector<Keyed> keyed;
    for (std::uint32_t group = 0; group < groups.size(); ++group) {
        const auto& piece = resolved.pieces[groups[group].pieces.front()];
        const auto holes = resolved.holes_of(piece);
        const auto first = keyed.size();
        for (std::uint32_t hole = 0; hole < holes.size(); ++hole) {
            keyed.push_back(
                {key_of(catalogue, piece, holes[hole], group), {.group = group, .hole = hole}});
            if (holes[hole].tap == no_index) continue;
            keyed.push_back({tapping_key_of(piece, holes[hole], group),
                             {.group = group, .hole = hole, .is_tapping = true}});
        }
        number_along_piece(keyed, first);
    }
    std::ranges::stable_sort(keyed, {}, &Keyed::key);
    number_setups(keyed);
    std::vector<DrillStep> steps;
    steps.reserve(keyed.size());
    for (const auto& each : keyed) steps.push_back(each.step);
    return steps;
}

}  // namespace model
