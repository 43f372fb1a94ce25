// The outside of a frame as its bays make it: flat rectangles between layout planes. Only files of
// this folder use it.
#pragma once

#include "model/resolve/resolved.h"

#include <array>
#include <map>
#include <string>
#include <tuple>
#include <vector>

namespace model {

using Span = std::array<Nm, 2>;

// A side of a bay, along the two axes of its plane.
struct SideOfBay {
    std::array<Span, 2> span{};
    std::array<std::array<std::string, 2>, 2> planes;
};

// In one plane: the axis across it, its position, and whether the bay lies behind it (-1) or before
// it (+1).
using SideKey = std::tuple<std::size_t, Nm, int>;

struct Sides {
    std::string plane;
    std::vector<SideOfBay> sides;
};

double area_of(const SideOfBay& side);  // in nm2
double shared_area(const SideOfBay& a, const SideOfBay& b);

// The sides of bays that no other bay lies against; those of one plane that make up a rectangle
// together are one. Of a frame without bays: of the box round all its planes.
std::map<SideKey, Sides> outside_of(const Frame& frame, const ResolvedFrame& placed);

}  // namespace model
