// Walls and ceilings: a line across the room, given at stations along it.
#include "model/room/shapes.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace model {
namespace {

constexpr double outward = 1000.0;  // mm: how thick a wall is taken
constexpr double beyond = 1000.0;   // mm: how far it goes on past what was measured

// How far the surface stands in at a place across it (a height, or X), mm.
struct Inset {
    double across = 0.0;
    double in = 0.0;
};

struct Section {
    double along = 0.0;
    std::vector<Inset> insets;  // by place
};

double between(const Inset& a, const Inset& b, double across) {
    return a.in + (across - a.across) / (b.across - a.across) * (b.in - a.in);
}

// Two insets at one place are a step: just above it the last of them counts, just below the first.
double inset_above(const Section& section, double across) {
    const auto& all = section.insets;
    const auto next = std::ranges::upper_bound(all, across, {}, &Inset::across);
    if (next == all.begin()) return all.front().in;
    if (next == all.end()) return all.back().in;
    return between(*(next - 1), *next, across);
}

double inset_below(const Section& section, double across) {
    const auto& all = section.insets;
    const auto here = std::ranges::lower_bound(all, across, {}, &Inset::across);
    if (here == all.begin()) return all.front().in;
    if (here == all.end()) return all.back().in;
    return between(*(here - 1), *here, across);
}

bool has_three_at_one_place(const Section& section) {
    for (std::size_t i = 2; i < section.insets.size(); ++i) {
        if (section.insets[i].across == section.insets[i - 2].across) return true;
    }
    return false;
}

// Turns (across, along, in) into the room.
struct Directions {
    std::size_t across = 2;  // axes
    std::size_t in = 0;
    double at = 0.0;  // where `in` is 0
    double sense = 1.0;

    engine::Vector point(double place, double along, double inset) const {
        engine::Vector p{};
        p[across] = place;
        p[1] = along;
        p[in] = at + sense * inset;
        return p;
    }
};

// Where the surface lies at the four corners of a field between two stations and two places.
struct Field {
    std::array<double, 2> along{};
    std::array<double, 2> across{};
    std::array<std::array<double, 2>, 2> in{};  // [along][across]
};

using Corner = std::array<std::size_t, 2>;  // of a field: [along, across]

engine::Prism body_behind(const Directions& to_room,
                          const Field& field,
                          std::initializer_list<Corner> corners,
                          double back) {
    engine::Prism prism;
    for (const auto& [i, k] : corners) {
        prism.near.push_back(to_room.point(field.across[k], field.along[i], field.in[i][k]));
        prism.far.push_back(to_room.point(field.across[k], field.along[i], back));
    }
    return prism;
}

// Four corners seldom lie in one plane: then the field is two triangles, folded so that they stand
// further into the room than the other fold would.
void add_field(std::vector<engine::Prism>& bodies,
               const Directions& to_room,
               const Field& field,
               double back) {
    const double twist = field.in[0][0] + field.in[1][1] - field.in[0][1] - field.in[1][0];
    constexpr double flat = 1e-9;
    if (std::abs(twist) < flat) {
        bodies.push_back(body_behind(to_room, field, {{0, 0}, {1, 0}, {1, 1}, {0, 1}}, back));
    } else if (twist > 0.0) {
        bodies.push_back(body_behind(to_room, field, {{0, 0}, {1, 0}, {1, 1}}, back));
        bodies.push_back(body_behind(to_room, field, {{0, 0}, {1, 1}, {0, 1}}, back));
    } else {
        bodies.push_back(body_behind(to_room, field, {{0, 0}, {1, 0}, {0, 1}}, back));
        bodies.push_back(body_behind(to_room, field, {{1, 0}, {1, 1}, {0, 1}}, back));
    }
}

std::vector<double> places_of(const std::vector<Section>& sections) {
    std::vector<double> places;
    for (const auto& section : sections) {
        for (const auto& inset : section.insets) places.push_back(inset.across);
    }
    std::sort(places.begin(), places.end());
    places.erase(std::unique(places.begin(), places.end()), places.end());
    places.insert(places.begin(), places.front() - beyond);
    places.push_back(places.back() + beyond);
    return places;
}

std::vector<engine::Prism> bodies_of(const std::vector<Section>& sections,
                                     const Directions& to_room) {
    double least = 0.0;
    for (const auto& section : sections) {
        for (const auto& inset : section.insets) least = std::min(least, inset.in);
    }
    const auto places = places_of(sections);
    std::vector<engine::Prism> bodies;
    for (std::size_t i = 0; i + 1 < sections.size(); ++i) {
        const Section* ends[] = {&sections[i], &sections[i + 1]};
        if (!(ends[0]->along < ends[1]->along)) continue;
        for (std::size_t k = 0; k + 1 < places.size(); ++k) {
            Field field{{ends[0]->along, ends[1]->along}, {places[k], places[k + 1]}, {}};
            for (std::size_t e = 0; e < 2; ++e) {
                field.in[e] = {inset_above(*ends[e], places[k]),
                               inset_below(*ends[e], places[k + 1])};
            }
            add_field(bodies, to_room, field, least - outward);
        }
    }
    return bodies;
}

// One reading of a list of offsets: none where a formula fails.
template <class Offset, class Read>
std::optional<Section> section_of(const std::vector<Offset>& offsets, Read read) {
    Section section;
    for (const auto& offset : offsets) {
        const auto inset = read(offset);
        if (!inset) return std::nullopt;
        section.insets.push_back(*inset);
    }
    std::stable_sort(section.insets.begin(), section.insets.end(),
                     [](const Inset& a, const Inset& b) { return a.across < b.across; });
    return section;
}

struct Reading {
    std::vector<Section> sections;
    std::string fault;
};

// The sections in order along Y; the last one goes on to the end.
template <class Profile, class Read>
Reading sections_of(const Profile& profile, const NamedValues& values, Read read) {
    const auto from = values.length(profile.from);
    const auto to = values.length(profile.to);
    const auto first = section_of(profile.offsets, read);
    if (!from || !to || !first) return {};
    const double near = mm_of(std::min(*from, *to));
    const double far = mm_of(std::max(*from, *to));
    if (far - near < mm_of(least_measure)) return {.fault = "it ends along Y where it begins"};
    if (first->insets.empty()) return {.fault = "it has no offsets: give at least one"};
    Reading reading{.sections = {*first}};
    reading.sections[0].along = near;
    for (const auto& station : profile.stations) {
        const auto along = values.length(station.along);
        auto section = section_of(station.offsets, read);
        if (!along || !section) return {};
        if (section->insets.empty()) return {.fault = "a station of it has no offsets"};
        section->along = mm_of(*along);
        if (section->along < near || section->along > far)
            return {.fault = "a station of it lies before its beginning or beyond its end"};
        reading.sections.push_back(std::move(*section));
    }
    std::stable_sort(reading.sections.begin() + 1, reading.sections.end(),
                     [](const Section& a, const Section& b) { return a.along < b.along; });
    if (reading.sections.back().along < far) {
        reading.sections.push_back(reading.sections.back());
        reading.sections.back().along = far;
    }
    for (const auto& section : reading.sections) {
        if (has_three_at_one_place(section))
            return {.fault = "three of its offsets are at one place: two make a step"};
    }
    return reading;
}

}  // namespace

SolidObstacle solid_of(const WallProfile& wall, const NamedValues& values) {
    const auto at = values.length(wall.at);
    auto reading = sections_of(wall, values, [&](const auto& offset) -> std::optional<Inset> {
        const auto height = values.length(offset.height);
        const auto inset = values.length(offset.inset);
        if (!height || !inset) return std::nullopt;
        return Inset{mm_of(*height), mm_of(*inset)};
    });
    if (!at || reading.sections.empty()) return {.fault = std::move(reading.fault)};
    const Directions to_room{
        .across = 2, .in = 0, .at = mm_of(*at), .sense = static_cast<double>(sign_of(wall.inside))};
    return {.bodies = bodies_of(reading.sections, to_room)};
}

SolidObstacle solid_of(const CeilingProfile& ceiling, const NamedValues& values) {
    const auto at = values.length(ceiling.at);
    auto reading = sections_of(ceiling, values, [&](const auto& offset) -> std::optional<Inset> {
        const auto across = values.length(offset.across);
        const auto drop = values.length(offset.drop);
        if (!across || !drop) return std::nullopt;
        return Inset{mm_of(*across), mm_of(*drop)};
    });
    if (!at || reading.sections.empty()) return {.fault = std::move(reading.fault)};
    const Directions to_room{.across = 0, .in = 2, .at = mm_of(*at), .sense = -1.0};
    return {.bodies = bodies_of(reading.sections, to_room)};
}

}  // namespace model
