// Geometric properties of a cross-section given as a polygon with rounded corners.
#pragma once

#include <array>
#include <vector>

namespace engine {

// Closed outline in mm, counter-clockwise, with holes clockwise.
struct SectionShape {
    std::vector<std::vector<std::array<double, 2>>> loops;
};

// About the centroid unless said otherwise; mm, mm2, mm3, mm4, radians.
struct SectionProperties {
    double area = 0.0;
    std::array<double, 2> centroid{};
    double ix = 0.0;  // second moment about the axis parallel to a (the first axis)
    double iy = 0.0;
    double ixy = 0.0;
    double i_major = 0.0;
    double i_minor = 0.0;
    double major_angle = 0.0;              // from the first axis to the major principal axis
    double r_minor = 0.0;                  // least radius of gyration
    double j = 0.0;                        // St Venant torsion constant
    double cw = 0.0;                       // warping constant, mm6
    std::array<double, 2> shear_centre{};  // in the shape's axes
    double zx = 0.0;                       // plastic moduli
    double zy = 0.0;
};

// Area, centroid, moments, principal axes and plastic moduli by Green's theorem over the loops. j,
// cw and shear_centre are left at zero: they depend on the form (see model/catalogue).
SectionProperties polygon_properties(const SectionShape& shape);

}  // namespace engine
