#include "tests/bench/bench_projects.h"

#include "tests/support/frame_builder.h"

#include <array>
#include <cmath>
#include <string>
#include <utility>

namespace tests {
namespace {

using model::Axis;
using model::Sense;

model::Project empty_project(std::string_view name) {
    model::Project project;
    project.name = name;
    project.stock.push_back(stock_of("main", "angle 1 x 1 x 1/8", "6063-T52"));
    return project;
}

// Three to seven shelves, and sizes that differ from cabinet to cabinet by sixteenths.
model::Frame cabinet(int number) {
    BoxShape shape;
    shape.width = inches(24) + inches_64(4) * (number % 173);
    shape.depth = inches(16) + inches_64(4) * (number % 37);
    const int shelves = 3 + number % 5;
    for (int i = 1; i <= shelves; ++i) shape.shelves.push_back(inches(9) * i);
    shape.height = inches(9) * (shelves + 1);
    auto frame = box_frame("cabinet " + std::to_string(number + 1), shape);
    frame.origin[0] = formula_of(inches(40) * (number % 50));
    frame.origin[1] = formula_of(inches(40) * (number / 50));
    return frame;
}

model::Project cabinets(int members) {
    auto project = empty_project("cabinets");
    int count = 0;
    for (int i = 0; count < members; ++i) {
        project.frames.push_back(cabinet(i));
        count += static_cast<int>(project.frames.back().members.size());
    }
    return project;
}

// The twelve edges of one box of the lattice, legs inward: neighbours stand back to back.
void add_cell(FrameBuilder& builder, Nm x0, Nm z0) {
    const std::array<Nm, 2> x{x0, x0 + inches(20)};
    const std::array<Nm, 2> y{0, inches(16)};
    const std::array<Nm, 2> z{z0, z0 + inches(18)};
    const std::array<Sense, 2> in{Sense::plus, Sense::minus};
    for (std::size_t i = 0; i < 2; ++i) {
        for (std::size_t j = 0; j < 2; ++j) {
            builder.member("main", Axis::z, {x[i], y[j]}, z[0], z[1], {in[i], in[j]});
            builder.member("main", Axis::x, {y[i], z[j]}, x[0], x[1], {in[i], in[j]});
            builder.member("main", Axis::y, {x[i], z[j]}, y[0], y[1], {in[i], in[j]});
        }
    }
}

model::Project lattice(int members) {
    auto project = empty_project("lattice");
    FrameBuilder builder{"lattice"};
    const int cells = (members + 11) / 12;
    const int wide = std::max(1, static_cast<int>(std::sqrt(static_cast<double>(cells))));
    for (int i = 0; i < cells; ++i) {
        add_cell(builder, inches(20) * (i % wide), inches(18) * (i / wide));
    }
    project.frames.push_back(std::move(builder.frame()));
    return project;
}

}  // namespace

std::string_view name_of(BenchShape shape) {
    return shape == BenchShape::cabinets ? "cabinets" : "lattice";
}

model::Project bench_project(BenchShape shape, int members) {
    return shape == BenchShape::cabinets ? cabinets(members) : lattice(members);
}

}  // namespace tests
