#include "tests/support/leaning_side.h"

#include <utility>

namespace tests {
namespace {

using model::Axis;
using model::Sense;

constexpr auto plus = Sense::plus;
constexpr auto minus = Sense::minus;

// Rails round one level; `z_leg` is where their upright legs point, `back` where the back rail is.
void add_level(
    FrameBuilder& builder, const LeaningShape& shape, Nm z, Nm side_to, Nm back, Sense z_leg) {
    const auto& stock = shape.stock;
    const Nm w = shape.width;
    builder.member(stock, Axis::x, {0, z}, 0, w, {plus, z_leg});
    builder.member(stock, Axis::x, {back, z}, 0, w, {minus, z_leg});
    for (const Nm x : {Nm{0}, w}) {
        auto& rail =
            builder.member(stock, Axis::y, {x, z}, 0, side_to, {x == 0 ? plus : minus, z_leg});
        // Runs past the rail of a shelf, which would part it.
        if (back != side_to) rail.rank = 15;
    }
}

void add_leaning(FrameBuilder& builder, const LeaningShape& shape, bool right) {
    model::Leaning leaning{.name = right ? "leaning right" : "leaning left", .stock = shape.posts};
    leaning.face = builder.plane(Axis::x, right ? shape.width : 0);
    leaning.from = {builder.plane(Axis::y, shape.depth), builder.plane(Axis::z, 0)};
    leaning.to = {builder.plane(Axis::y, back_at(shape, shape.height)),
                  builder.plane(Axis::z, shape.height)};
    leaning.leg = minus;
    builder.frame().leaning.push_back(std::move(leaning));
}

}  // namespace

Nm back_at(const LeaningShape& shape, Nm height) {
    const double part = static_cast<double>(height) / static_cast<double>(shape.height);
    return shape.depth - static_cast<Nm>(static_cast<double>(shape.leans_in) * part + 0.5);
}

model::Frame leaning_frame(std::string name, const LeaningShape& shape) {
    FrameBuilder builder{std::move(name)};
    for (const Nm x : {Nm{0}, shape.width}) {
        builder.member(shape.stock, Axis::z, {x, 0}, 0, shape.height,
                       {x == 0 ? plus : minus, plus});
    }
    add_level(builder, shape, 0, shape.depth, shape.depth, plus);
    for (const Nm z : shape.shelves) {
        const Nm back = back_at(shape, z);
        add_level(builder, shape, z, back, back - inches(2), minus);
    }
    const Nm top = back_at(shape, shape.height);
    add_level(builder, shape, shape.height, top, top, minus);
    for (const bool right : {false, true}) add_leaning(builder, shape, right);
    return std::move(builder.frame());
}

model::Project leaning_project(const LeaningShape& shape, std::string section) {
    model::Project project;
    project.name = "leaning";
    project.stock.push_back(stock_of("main", std::move(section), "6063-T52"));
    project.frames.push_back(leaning_frame("leaning", shape));
    return project;
}

}  // namespace tests
