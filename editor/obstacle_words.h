// Obstacles of the room in a maker's words.
#pragma once

#include "editor/derived.h"
#include "model/project/project.h"

#include <array>
#include <string>

namespace editor {

// What a new obstacle begins as. What is kept clear is a box in which nothing is.
enum class ObstacleKind {
    box,
    wheel_well,
    wall,
    ceiling,
    pipe_or_tank,
    door_swing,
    kept_clear,
    scan
};

struct ObstacleKindRow {
    ObstacleKind kind = ObstacleKind::box;
    const char* word = "";
    const char* hint = "";
};

inline constexpr std::array<ObstacleKindRow, 8> obstacle_kinds{
    {{ObstacleKind::wheel_well, "wheel well", "A box with a rounded top whose inner side may lean"},
     {ObstacleKind::wall, "wall", "How far it stands in at some heights, all along or at stations"},
     {ObstacleKind::ceiling, "ceiling", "How far it comes down at some places across the van"},
     {ObstacleKind::box, "box", "A ledge, a step, a battery: anything square"},
     {ObstacleKind::pipe_or_tank, "pipe or tank", "Anything round and straight"},
     {ObstacleKind::door_swing, "door swing", "What a door sweeps that turns about upright hinges"},
     {ObstacleKind::kept_clear, "kept clear",
      "Where nothing is but nothing may stand: a walkway, a hatch, a slider's track"},
     {ObstacleKind::scan, "scan", "A mesh of triangles in a file: PLY, STL, OBJ or GLB"}}};

ObstacleKind kind_of(const model::Obstacle& obstacle);
const char* word_of(ObstacleKind kind);

// "24 x 30 x 9 5/16", "31 long, 9 high, reaches 8 1/2"; "not known" where a formula fails.
std::string size_words(const model::Obstacle& obstacle, const Derived& derived);

// A sensible one to begin with; its name is free.
model::Obstacle new_obstacle(const Derived& derived, ObstacleKind kind);

// "tank", or "tank 2" where there is a tank already.
std::string free_obstacle_name(const model::Project& project, const std::string& wanted);

}  // namespace editor
