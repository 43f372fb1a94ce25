// Which places of a frame its bars take up, whichever planes they are stated by.
#pragma once

#include "model/project/plane_places.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace model {

// Two bars of one line may stand back to back, so that the way their legs point, their seat or
// their side of a face tells them apart; or whatever lies along the line is looked for.
enum class Alike { with_legs, on_line };

bool has_same_place(const Member& a, const Member& b, const PlanePlaces& places, Alike alike);
bool has_same_place(const Diagonal& a, const Diagonal& b, const PlanePlaces& places, Alike alike);
bool has_same_place(const Leaning& a, const Leaning& b, const PlanePlaces& places, Alike alike);

// Whether of two bars at one place each reaches as far as the other.
bool has_same_ends(const Member& a, const Member& b, const PlanePlaces& places);
bool has_same_ends(const Diagonal& a, const Diagonal& b, const PlanePlaces& places);
bool has_same_ends(const Leaning& a, const Leaning& b, const PlanePlaces& places);

// Whether of two bars at one place the first reaches at least as far as the second at both ends;
// what lies between the nodes of one field does.
bool holds_all_of(const Member& outer, const Member& inner, const PlanePlaces& places);

template <class Bar>
bool holds_all_of(const Bar&, const Bar&, const PlanePlaces&) {
    return true;
}

// Alike for bars that may take up one place, and seldom for others.
using PlaceKey = std::array<Nm, 2>;

PlaceKey key_of(const Member& bar, const PlanePlaces& places);

template <class Bar>
PlaceKey key_of(const Bar& bar, const PlanePlaces& places) {
    const auto axis = places.axis_of(bar.face);
    return {axis ? places.known(bar.face, *axis).value_or(0) : 0, 0};
}

template <class Bar>
class TakenPlaces {
public:
    TakenPlaces(const std::vector<Bar>& bars, const PlanePlaces& places, Alike alike)
        : places_{places}, alike_{alike} {
        for (const Bar& bar : bars) bars_.emplace(key_of(bar, places_), bar);
    }

    // The bar that is there already, of those that may count; null where the place is free.
    template <class MayCount>
    const Bar* holder(const Bar& bar, MayCount may_count) const {
        const auto [begin, end] = bars_.equal_range(key_of(bar, places_));
        for (auto it = begin; it != end; ++it) {
            if (!has_same_place(it->second, bar, places_, alike_)) continue;
            if (may_count(it->second)) return &it->second;
        }
        return nullptr;
    }
    const Bar* holder(const Bar& bar) const {
        return holder(bar, [](const Bar&) { return true; });
    }

private:
    const PlanePlaces& places_;
    Alike alike_;
    std::multimap<PlaceKey, Bar> bars_;
};

}  // namespace model
