#include "engine/statics/torsion.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <cstddef>
#include <vector>

namespace {

// An angle with walls of thickness 1 and outer legs of equal length, the heel at the origin.
struct Angle {
    double leg;
    double fillet;
    double toe;

    bool holds(double x, double y) const {
        if (x <= 0 || y <= 0 || x >= leg || y >= leg) return false;
        if (y > x) std::swap(x, y);  // the two legs mirror one another
        if (y < 1) {
            const double past = x - (leg - toe);
            const double above = y - (1 - toe);
            return past <= 0 || above <= 0 || past * past + above * above < toe * toe;
        }
        const double across = 1 + fillet - x;
        const double up = 1 + fillet - y;
        return across > 0 && up > 0 && across * across + up * up > fillet * fillet;
    }
};

// Prandtl's torsion function by finite differences with the exact distance to the outline (Shortley
// and Weller), `cells` across a wall, by successive over-relaxation.
class TorsionFunction {
public:
    TorsionFunction(const Angle& angle, int cells)
        : h_{1.0 / cells}, width_{static_cast<std::size_t>(std::lround(angle.leg * cells)) + 1} {
        value_.assign(width_ * width_, 0.0);
        for (std::size_t i = 1; i + 1 < width_; ++i) {
            for (std::size_t j = 1; j + 1 < width_; ++j) add_node(angle, i, j);
        }
        const double relaxation = 2.0 / (1.0 + 3.2 / cells);
        for (int sweep = 0; sweep < 60 * cells; ++sweep) relax(relaxation);
    }

    double torsion_constant() const {
        double sum = 0.0;
        for (const auto& node : nodes_) sum += value_[node.at];
        // On a strip the scheme is exact at the nodes and their sum is low by 1 - h^2.
        return 2.0 * sum * h_ * h_ / (1.0 - h_ * h_);
    }

private:
    struct Node {
        std::size_t at;
        double weights[4];
        double diagonal;
    };

    void add_node(const Angle& angle, std::size_t i, std::size_t j) {
        const double x = static_cast<double>(i) * h_;
        const double y = static_cast<double>(j) * h_;
        if (!angle.holds(x, y)) return;
        const double e = reach(angle, x, y, h_, 0);
        const double w = reach(angle, x, y, -h_, 0);
        const double n = reach(angle, x, y, 0, h_);
        const double s = reach(angle, x, y, 0, -h_);
        nodes_.push_back(
            {i * width_ + j,
             {2 / (e * (e + w)), 2 / (w * (e + w)), 2 / (n * (n + s)), 2 / (s * (n + s))},
             2 / (e * w) + 2 / (n * s)});
    }

    // The part of a step that lies inside, by halving.
    static double reach(const Angle& angle, double x, double y, double dx, double dy) {
        if (angle.holds(x + dx, y + dy)) return 1.0;
        double inside = 0.0;
        double outside = 1.0;
        for (int k = 0; k < 40; ++k) {
            const double part = (inside + outside) / 2;
            (angle.holds(x + dx * part, y + dy * part) ? inside : outside) = part;
        }
        return std::max(inside, 1e-6);
    }

    void relax(double relaxation) {
        for (const auto& node : nodes_) {
            const double* const v = value_.data() + node.at;
            const double sum = node.weights[0] * v[width_] + node.weights[1] * *(v - width_) +
                               node.weights[2] * v[1] + node.weights[3] * *(v - 1) + 2.0 * h_ * h_;
            value_[node.at] += relaxation * (sum / node.diagonal - value_[node.at]);
        }
    }

    double h_;
    std::size_t width_;
    std::vector<double> value_;
    std::vector<Node> nodes_;
};

double by_rule(const Angle& angle) {
    return (2 * angle.leg - 1) / 3.0 + 3 * engine::wall_end_torsion(1) +
           2 * engine::rounded_toe_torsion(1, angle.toe) +
           engine::corner_torsion({.thicker = 1, .thinner = 1, .fillet = angle.fillet});
}

}  // namespace

TEST_CASE("the torsion rule of an angle agrees with a finite-difference solution",
          "[engine][statics]") {
    const auto angle =
        GENERATE(Angle{6, 0, 0}, Angle{6, 0.5, 0}, Angle{6, 1, 0.5}, Angle{6, 1.5, 1});
    CAPTURE(angle.fillet, angle.toe);
    const double solved = TorsionFunction{angle, 20}.torsion_constant();
    CHECK(by_rule(angle) == Approx(solved).epsilon(0.005));
}

TEST_CASE("a square bar twists like the textbook's", "[engine][statics]") {
    CHECK(engine::rectangle_torsion(2, 2) == Approx(0.140577 * 16).epsilon(1e-5));
}

TEST_CASE("a long thin strip loses two ends against a third of its length times thickness cubed",
          "[engine][statics]") {
    CHECK(engine::rectangle_torsion(50, 1) ==
          Approx(50.0 / 3.0 + 2 * engine::wall_end_torsion(1)).epsilon(1e-5));
}

TEST_CASE("a closed wall follows Bredt", "[engine][statics]") {
    CHECK(engine::closed_wall_torsion(9, 12, 0.5) == Approx(4 * 81 * 0.5 / 12));
}
