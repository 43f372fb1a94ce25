#include "model/catalogue/section_shape.h"

#include "engine/statics/torsion.h"

#include <cmath>

namespace model {
namespace {

using OutlineCorner = std::array<double, 2>;
using Loop = std::vector<OutlineCorner>;

constexpr double pi = 3.14159265358979323846;

// As many as bring the published areas and moments of rounded sections to 0.05 %.
constexpr int chords_per_quarter = 48;

// The sizes in mm.
struct Sizes {
    double a;
    double b;
    double t;
    double web;
    double root;
    double toe;
};

Sizes sizes_of(const Section& section) {
    return {section.a.mm(),           section.b.mm(),
            section.thickness.mm(),   section.web_thickness.mm(),
            section.root_radius.mm(), section.toe_radius.mm()};
}

// A quarter of a circle about `centre`, from `from` degrees on; to the left where `turn` is +1.
void add_arc(Loop& loop, OutlineCorner centre, double radius, double from, int turn) {
    if (radius <= 0.0) {
        loop.push_back(centre);
        return;
    }
    for (int i = 0; i <= chords_per_quarter; ++i) {
        const double degrees = from + turn * 90.0 * i / chords_per_quarter;
        const double angle = degrees * pi / 180.0;
        loop.push_back(
            {centre[0] + radius * std::cos(angle), centre[1] + radius * std::sin(angle)});
    }
}

Loop angle_outline(const Sizes& s) {
    Loop loop{{0.0, 0.0}, {s.a, 0.0}};
    add_arc(loop, {s.a - s.toe, s.t - s.toe}, s.toe, 0.0, 1);
    add_arc(loop, {s.t + s.root, s.t + s.root}, s.root, 270.0, -1);
    add_arc(loop, {s.t - s.toe, s.b - s.toe}, s.toe, 0.0, 1);
    loop.push_back({0.0, s.b});
    return loop;
}

Loop channel_outline(const Sizes& s) {
    Loop loop{{0.0, 0.0}, {s.a, 0.0}, {s.a, s.b}};
    add_arc(loop, {s.a - s.t + s.toe, s.b - s.toe}, s.toe, 90.0, 1);
    add_arc(loop, {s.a - s.t - s.root, s.web + s.root}, s.root, 0.0, -1);
    add_arc(loop, {s.t + s.root, s.web + s.root}, s.root, 270.0, -1);
    add_arc(loop, {s.t - s.toe, s.b - s.toe}, s.toe, 0.0, 1);
    loop.push_back({0.0, s.b});
    return loop;
}

// Counter-clockwise; the arcs come first where the corner is rounded.
Loop rounded_rectangle(OutlineCorner lo, OutlineCorner hi, double radius) {
    Loop loop;
    add_arc(loop, {lo[0] + radius, lo[1] + radius}, radius, 180.0, 1);
    add_arc(loop, {hi[0] - radius, lo[1] + radius}, radius, 270.0, 1);
    add_arc(loop, {hi[0] - radius, hi[1] - radius}, radius, 0.0, 1);
    add_arc(loop, {lo[0] + radius, hi[1] - radius}, radius, 90.0, 1);
    return loop;
}

Loop reversed(Loop loop) { return {loop.rbegin(), loop.rend()}; }

// Walls as b t^3 / 3, with what ends and corners add: torsion.h.
double angle_torsion(const Sizes& s) {
    const double walls = (s.a + s.b - s.t) * std::pow(s.t, 3) / 3.0;
    return walls + 3.0 * engine::wall_end_torsion(s.t) +
           2.0 * engine::rounded_toe_torsion(s.t, s.toe) +
           engine::corner_torsion({.thicker = s.t, .thinner = s.t, .fillet = s.root});
}

double channel_torsion(const Sizes& s) {
    const double flanges = 2.0 * s.b * std::pow(s.t, 3) / 3.0;
    const double web = (s.a - 2.0 * s.t) * std::pow(s.web, 3) / 3.0;
    return flanges + web + 4.0 * engine::wall_end_torsion(s.t) +
           2.0 * engine::rounded_toe_torsion(s.t, s.toe) +
           2.0 * engine::corner_torsion({.thicker = std::max(s.t, s.web),
                                         .thinner = std::min(s.t, s.web),
                                         .fillet = s.root});
}

// Middle line with corners halfway between the outer and the inner rounding: so the AISC Steel
// Construction Manual, Part 1, for rounded tubes, and the Aluminum Design Manual, Part V, for
// square ones (the rule from memory, the values read).
double tube_torsion(const Sizes& s) {
    const double middle_a = s.a - s.t;
    const double middle_b = s.b - s.t;
    const double radius = (s.toe + s.root) / 2.0;
    const double area = middle_a * middle_b - (4.0 - pi) * radius * radius;
    const double perimeter = 2.0 * (middle_a + middle_b) - 2.0 * (4.0 - pi) * radius;
    return engine::closed_wall_torsion(area, perimeter, s.t);
}

// Where the legs' middle lines cross (thin-wall theory: each leg's shear flow runs along its own
// middle line; AISC Design Guide 9, from memory). A fillet moves it a little.
OutlineCorner angle_shear_centre(const Sizes& s) { return {s.t / 2.0, s.t / 2.0}; }

// Behind the web by 3 b^2 tf / (6 b tf + h tw) from its middle line, b from there to the flange
// tips, h between the flanges' middles (thin-wall theory; AISC Design Guide 9, from memory).
OutlineCorner channel_shear_centre(const Sizes& s) {
    const double b = s.b - s.web / 2.0;
    const double h = s.a - s.t;
    const double behind = 3.0 * b * b * s.t / (6.0 * b * s.t + h * s.web);
    return {s.a / 2.0, s.web / 2.0 - behind};
}

// t^3 / 36 times the sum of the cubes of the legs' middle lines (AISC Steel Construction Manual,
// from memory; its table of angles, read, agrees to 0.5 %).
double angle_warping(const Sizes& s) {
    const double legs = std::pow(s.a - s.t / 2.0, 3) + std::pow(s.b - s.t / 2.0, 3);
    return std::pow(s.t, 3) / 36.0 * legs;
}

// tf b^3 h^2 / 12 (3 b tf + 2 h tw) / (6 b tf + h tw), b and h as for the shear centre (AISC Design
// Guide 9, from memory).
double channel_warping(const Sizes& s) {
    const double b = s.b - s.web / 2.0;
    const double h = s.a - s.t;
    const double shape = (3.0 * b * s.t + 2.0 * h * s.web) / (6.0 * b * s.t + h * s.web);
    return s.t * std::pow(b, 3) * h * h / 12.0 * shape;
}

}  // namespace

engine::SectionShape section_shape(const Section& section) {
    const auto s = sizes_of(section);
    switch (section.form) {
        case SectionForm::angle:
            return {{angle_outline(s)}};
        case SectionForm::flat:
            return {{rounded_rectangle({0.0, 0.0}, {s.a, s.t}, 0.0)}};
        case SectionForm::channel:
            return {{channel_outline(s)}};
        case SectionForm::tube:
            return {{rounded_rectangle({0.0, 0.0}, {s.a, s.b}, s.toe),
                     reversed(rounded_rectangle({s.t, s.t}, {s.a - s.t, s.b - s.t}, s.root))}};
    }
    return {};
}

engine::SectionProperties section_properties(const Section& section) {
    const auto s = sizes_of(section);
    auto properties = engine::polygon_properties(section_shape(section));
    properties.shear_centre =
        properties.centroid;  // of doubly symmetric sections; cw is taken as 0
    switch (section.form) {
        case SectionForm::angle:
            properties.j = angle_torsion(s);
            properties.cw = angle_warping(s);
            properties.shear_centre = angle_shear_centre(s);
            break;
        case SectionForm::flat:
            properties.j = engine::rectangle_torsion(std::max(s.a, s.t), std::min(s.a, s.t));
            break;
        case SectionForm::channel:
            properties.j = channel_torsion(s);
            properties.cw = channel_warping(s);
            properties.shear_centre = channel_shear_centre(s);
            break;
        case SectionForm::tube:
            properties.j = tube_torsion(s);
            break;
    }
    return properties;
}

double mass_per_metre(const Section& section, const Alloy& alloy) {
    constexpr double mm2_per_m2 = 1e6;
    return engine::polygon_properties(section_shape(section)).area / mm2_per_m2 *
           alloy.density_kg_m3;
}

}  // namespace model
