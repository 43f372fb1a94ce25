// Room for a small box among others.
#pragma once

#include "engine/drawing/page_items.h"

#include <functional>
#include <optional>
#include <vector>

namespace model {

struct BoxSize {
    double width = 0.0;
    double height = 0.0;
};

bool are_apart(const engine::PageBox& a, const engine::PageBox& b);

// The uppermost place in the area where a box of that size is clear of all blocked ones, of these
// the one farthest left. Where `is_sound` is given, places are tried in steps of 2 mm as well, and
// taken if it says so.
std::optional<engine::PageBox> free_place(
    const engine::PageBox& area,
    const std::vector<engine::PageBox>& blocked,
    BoxSize size,
    const std::function<bool(const engine::PageBox&)>& is_sound = {});

}  // namespace model
