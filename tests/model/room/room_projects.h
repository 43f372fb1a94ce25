// A box cabinet in a room, as a maker starts one.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/project/edit.h"

#include "tests/support/frame_builder.h"

#include <catch2/catch.hpp>

#include <string>
#include <utility>

namespace room_tests {

inline const model::Catalogue& catalogue() {
    static const auto loaded = model::load_catalogue(BARWRIGHT_ASSETS);
    REQUIRE(loaded.has_value());
    return *loaded;
}

// Dimensions width, depth and height; planes left 0, front 0, bottom 0.
inline model::Project cabinet(const model::Place& origin,
                              const std::string& width = "36 in",
                              const std::string& depth = "18 in",
                              const std::string& height = "30 in") {
    model::Project project{.name = "a cabinet in a room"};
    project.stock.push_back(tests::stock_of("main", "angle 1 x 1 x 1/8", "6063-T52"));
    auto started = model::apply(project, model::StartBoxFrame{.frame = "cabinet",
                                                              .stock = "main",
                                                              .width = width,
                                                              .depth = depth,
                                                              .height = height,
                                                              .origin = origin});
    REQUIRE(started.has_value());
    return *started;
}

inline model::Obstacle box(const std::string& name,
                           const model::Place& least,
                           const model::Place& most) {
    return {.name = name, .shape = model::BoxObstacle{least, most}};
}

}  // namespace room_tests
