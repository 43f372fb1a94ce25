// A counter and a wheel well in its way, for the tests of stepping over.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/project/edit.h"
#include "model/resolve/resolve.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

namespace step_over_tests {

using namespace model;

inline const Catalogue& catalogue() {
    static const auto loaded = load_catalogue(BARWRIGHT_ASSETS);
    if (!loaded) FAIL(engine::to_text(loaded.error()));
    return *loaded;
}

inline Project edited(const Project& before, const Edit& edit) {
    auto after = apply(before, edit);
    if (!after) FAIL(to_text(after.error()));
    return *after;
}

inline engine::Error refused(const Project& before, const Edit& edit) {
    const auto after = apply(before, edit);
    REQUIRE_FALSE(after.has_value());
    CHECK_FALSE(after.error().message.empty());
    return after.error();
}

// A counter 48 x 22 x 34 in of 1 1/4 in angle, which takes two rivets in every lap of a step.
inline Project counter_project(std::vector<Formula> dividers = {},
                               std::vector<Formula> shelves = {}) {
    const Project empty{
        .stock = {{.name = "angle", .section = "angle 1 1/4 x 1 1/4 x 1/8", .alloy = "6063-T52"}}};
    return edited(empty, StartBoxFrame{.frame = "counter",
                                       .stock = "angle",
                                       .width = "48",
                                       .depth = "22",
                                       .height = "34",
                                       .shelf_levels = std::move(shelves),
                                       .dividers = std::move(dividers)});
}

inline Obstacle box_at(Place least, Place most) {
    return {.name = "wheel well", .shape = WheelWell{.least = least, .most = most}};
}

// 31 in long, 9 in into the counter and 12 in high, 8 in from its left end.
inline const Obstacle well_in_middle = box_at({"8", "13", "-1"}, {"39", "30", "12"});

inline Project with(Project project, Obstacle obstacle) {
    return edited(project, PutObstacle{std::move(obstacle)});
}

inline const StepOver over_well{.frame = "counter", .obstacle = "wheel well"};

inline Project stepped(const Obstacle& obstacle) {
    return edited(with(counter_project(), obstacle), over_well);
}

inline const Frame& frame_of(const Project& project) { return project.frames.front(); }

template <class T>
const T* find(const std::vector<T>& things, const std::string& name) {
    const auto found = std::ranges::find(things, name, &T::name);
    return found == things.end() ? nullptr : &*found;
}

template <class T>
const T& named(const std::vector<T>& things, const std::string& name) {
    const T* found = find(things, name);
    if (found == nullptr) FAIL("there is no " + name);
    return *found;
}

inline engine::Nm place(const Project& project, const std::string& plane) {
    const Resolved resolved = resolve(project, catalogue());
    const auto& planes = frame_of(project).planes;
    const auto found = std::ranges::find(planes, plane, &Plane::name);
    if (found == planes.end()) FAIL("there is no plane " + plane);
    const auto at = resolved.frames[0].planes[static_cast<std::size_t>(found - planes.begin())];
    return at.position.value_or(-1);
}

constexpr engine::Nm quarters(engine::Nm count) { return count * 6'350'000; }

inline std::string faults(const Project& project) {
    std::string text;
    for (const Finding& finding : resolve(project, catalogue()).findings) {
        if (finding.severity == Severity::note) continue;
        text += finding.code + ": " + where_text(finding) + "\n";
    }
    return text;
}

inline long roots(const Project& project) {
    return std::ranges::count(frame_of(project).members, Seat::root, &Member::seat);
}

}  // namespace step_over_tests
