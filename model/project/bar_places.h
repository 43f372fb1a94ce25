// Which places of a frame its bars take up, whichever planes they are stated by.
#pragma once

#include "model/project/plane_places.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace model {

bool has_same_place(const Member& a, const Member& b, const PlanePlaces& places);
bool has_same_place(const Diagonal& a, const Diagonal& b, const PlanePlaces& places);
bool has_same_place(const Leaning& a, const Leaning& b, const PlanePlaces& places);

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
    TakenPlaces(const std::vector<Bar>& bars, const PlanePlaces& places) : places_{places} {
        for (const Bar& bar : bars) take(bar);
    }

    void take(const Bar& bar) { bars_.emplace(key_of(bar, places_), bar); }

    // The name of the bar that is there already; none where the place is free.
    std::optional<std::string> holder(const Bar& bar) const {
        const auto [begin, end] = bars_.equal_range(key_of(bar, places_));
        for (auto it = begin; it != end; ++it) {
            if (has_same_place(it->second, bar, places_)) return it->second.name;
        }
        return std::nullopt;
    }

private:
    const PlanePlaces& places_;
    std::multimap<PlaceKey, Bar> bars_;
};

}  // namespace model
