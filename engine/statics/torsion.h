// St Venant torsion constants of the shapes that bars are made of.
#pragma once

namespace engine {

// Of a solid rectangle, by the series of Timoshenko and Goodier, Theory of Elasticity, article 109
// (from memory).
double rectangle_torsion(double long_side, double short_side);

// Of a closed thin wall, by Bredt: 4 A^2 t / p over the wall's middle line (Timoshenko and Goodier,
// article 115, from memory).
double closed_wall_torsion(double enclosed_area, double perimeter, double wall);

// A corner of an open thin-walled section: two walls that meet at a right angle, the outer corner
// square, the inner one with a fillet.
struct WallCorner {
    double thicker = 0.0;
    double thinner = 0.0;
    double fillet = 0.0;
};

// What a corner adds to the sum of its walls' b t^3 / 3, where one wall is counted to the outer
// face and the other to the inner one, and each end of the first costs `wall_end_torsion`.
double corner_torsion(const WallCorner& corner);

// What the square end of a wall costs.
double wall_end_torsion(double wall);

// What rounding one corner of a wall's end costs on top.
double rounded_toe_torsion(double wall, double radius);

}  // namespace engine
