#include "model/book/free_place.h"

#include <algorithm>

namespace model {
namespace {

constexpr double touching = 1.0e-9;
constexpr double try_step = 2.0;  // mm

// A box that is moved as far up and left as it goes touches the area's edge or a blocked box.
std::vector<double> places_along(double from,
                                 double to,
                                 const std::vector<double>& behind_blocked) {
    std::vector<double> places{from};
    for (const double place : behind_blocked)
        if (place > from && place <= to + touching) places.push_back(place);
    std::sort(places.begin(), places.end());
    places.erase(std::unique(places.begin(), places.end()), places.end());
    return places;
}

}  // namespace

bool are_apart(const engine::PageBox& a, const engine::PageBox& b) {
    return a.left + a.width <= b.left + touching || b.left + b.width <= a.left + touching ||
           a.top + a.height <= b.top + touching || b.top + b.height <= a.top + touching;
}

std::optional<engine::PageBox> free_place(
    const engine::PageBox& area,
    const std::vector<engine::PageBox>& blocked,
    BoxSize size,
    const std::function<bool(const engine::PageBox&)>& is_sound) {
    const double most_left = area.left + area.width - size.width;
    const double most_top = area.top + area.height - size.height;
    if (most_left < area.left - touching || most_top < area.top - touching) return std::nullopt;
    std::vector<double> across;
    std::vector<double> down;
    for (const auto& it : blocked) {
        across.push_back(it.left + it.width);
        down.push_back(it.top + it.height);
    }
    for (double at = area.left; is_sound && at <= most_left; at += try_step) across.push_back(at);
    for (double at = area.top; is_sound && at <= most_top; at += try_step) down.push_back(at);
    for (const double top : places_along(area.top, most_top, down)) {
        for (const double left : places_along(area.left, most_left, across)) {
            const engine::PageBox box{left, top, size.width, size.height};
            const bool is_free = std::ranges::all_of(
                blocked, [&](const engine::PageBox& other) { return are_apart(box, other); });
            if (is_free && (!is_sound || is_sound(box))) return box;
        }
    }
    return std::nullopt;
}

}  // namespace model
