// How the lines that members lie on meet, whichever planes those are stated by.
#pragma once

#include "model/project/frame_bars.h"

#include <array>
#include <cstddef>
#include <optional>
#include <vector>

namespace model {

// As resolve takes it; lower ones lie outside.
int rank_of(const Member& member);

struct Placed {
    const Member* bar = nullptr;
    ReachBox at;
};

// Those that have a place. The frame must outlive them, and keep its members.
std::vector<Placed> placed_members(const Frame& frame, const PlanePlaces& places);

// How bars of one run meet an end of another bar.
struct Met {
    bool is_passed = false;
    const Member* ending = nullptr;
};

Met met_at(const Placed& it, std::size_t end, Axis run, const std::vector<Placed>& all);

// Where the lines of two meet.
struct Crossing {
    bool first_ends = false;
    bool second_ends = false;
    std::array<Nm, 3> at{};
};

std::optional<Crossing> crossing(const Placed& a, const Placed& b);

}  // namespace model
