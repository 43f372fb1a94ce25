#include "engine/geometry/solid.h"

#include "engine/geometry/vectors.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

constexpr std::uint32_t no_link = 0xFFFFFFFFU;

}  // namespace

Vector point_at(const SolidEdge& arc, double angle) {
    return plus(arc.centre,
                plus(scaled(arc.cosine, std::cos(angle)), scaled(arc.sine, std::sin(angle))));
}

void mirror(Solid& solid) {
    const auto turn_over = [](Vector& v) { v[0] = -v[0]; };
    for (auto& corner : solid.corners) turn_over(corner);
    for (auto& edge : solid.edges) {
        turn_over(edge.centre);
        turn_over(edge.cosine);
        turn_over(edge.sine);
    }
    for (auto& face : solid.faces) {
        turn_over(face.origin);
        turn_over(face.axis);
    }
    std::size_t first = 0;
    for (const auto end : solid.loop_ends) {
        const auto begin = solid.uses.begin();
        std::reverse(begin + static_cast<std::ptrdiff_t>(first), begin + end);
        for (auto i = first; i < end; ++i) solid.uses[i] = reversed(solid.uses[i]);
        first = end;
    }
}

SolidBuilder::SolidBuilder(Solid& solid) : solid_{solid} {
    solid.corners.clear();
    solid.edges.clear();
    solid.uses.clear();
    solid.loop_ends.clear();
    solid.faces.clear();
    solid.hole_count = 0;
}

std::uint32_t SolidBuilder::corner(const Vector& at) {
    solid_.corners.push_back(at);
    first_link_.push_back(no_link);
    return static_cast<std::uint32_t>(solid_.corners.size() - 1);
}

void SolidBuilder::note(std::uint32_t corner, std::uint32_t edge) {
    links_.push_back({edge, first_link_[corner]});
    first_link_[corner] = static_cast<std::uint32_t>(links_.size() - 1);
}

EdgeUse SolidBuilder::line(std::uint32_t from, std::uint32_t to) {
    for (auto link = first_link_[from]; link != no_link; link = links_[link].next) {
        const auto edge = links_[link].edge;
        const auto& known = solid_.edges[edge];
        if (known.from == from && known.to == to) return {edge, false};
        if (known.from == to && known.to == from) return {edge, true};
    }
    const auto edge = static_cast<std::uint32_t>(solid_.edges.size());
    solid_.edges.push_back({.from = from, .to = to});
    note(from, edge);
    note(to, edge);
    return {edge, false};
}

EdgeUse SolidBuilder::arc(const SolidEdge& arc) {
    solid_.edges.push_back(arc);
    solid_.edges.back().is_arc = true;
    return {static_cast<std::uint32_t>(solid_.edges.size() - 1), false};
}

void SolidBuilder::begin(const SolidFace& face) {
    solid_.faces.push_back(face);
    solid_.faces.back().first_loop = static_cast<std::uint32_t>(solid_.loop_ends.size());
    solid_.faces.back().loop_count = 0;
}

void SolidBuilder::end_loop() {
    solid_.loop_ends.push_back(static_cast<std::uint32_t>(solid_.uses.size()));
    ++solid_.faces.back().loop_count;
}

}  // namespace engine
