#include "tests/support/frame_builder.h"

#include <algorithm>
#include <utility>

namespace tests {
namespace {

using model::Axis;
using model::Sense;

constexpr std::array<std::string_view, 3> axis_names{"x", "y", "z"};

std::string sixty_fourths_text(Nm count) {
    const Nm whole = count / 64;
    const Nm rest = count % 64;
    if (rest == 0) return std::to_string(whole) + " in";
    const std::string fraction = std::to_string(rest) + "/64 in";
    return whole == 0 ? fraction : std::to_string(whole) + " " + fraction;
}

std::string millimetres_text(Nm length) {
    const std::string rest = std::to_string(length % 1'000'000);
    return std::to_string(length / 1'000'000) + "." + std::string(6 - rest.size(), '0') + rest +
           " mm";
}

// Four rails round one level; `z_leg` is where their vertical legs point.
void add_level(FrameBuilder& builder, const BoxShape& shape, Nm z, Sense z_leg) {
    const Nm w = shape.width;
    const Nm d = shape.depth;
    builder.member(shape.x_rails, Axis::x, {0, z}, 0, w, {Sense::plus, z_leg});
    builder.member(shape.x_rails, Axis::x, {d, z}, 0, w, {Sense::minus, z_leg});
    builder.member(shape.y_rails, Axis::y, {0, z}, 0, d, {Sense::plus, z_leg});
    builder.member(shape.y_rails, Axis::y, {w, z}, 0, d, {Sense::minus, z_leg});
}

}  // namespace

std::string formula_of(Nm length) {
    if (length < 0) return "-(" + formula_of(-length) + ")";
    if (length % inches_64(1) == 0) return sixty_fourths_text(length / inches_64(1));
    return millimetres_text(length);
}

model::Stock stock_of(std::string name, std::string section, std::string alloy, bool metric) {
    model::Stock stock;
    stock.name = std::move(name);
    stock.section = std::move(section);
    stock.alloy = std::move(alloy);
    stock.bars.push_back({.length = metric ? "6 m" : "20 ft"});
    return stock;
}

std::string FrameBuilder::plane(Axis axis, Nm position) {
    std::string name{axis_names[index_of(axis)]};
    name += std::to_string(position);
    std::replace(name.begin(), name.end(), '-', 'm');
    const bool known = std::any_of(frame_.planes.begin(), frame_.planes.end(),
                                   [&](const model::Plane& p) { return p.name == name; });
    if (!known) frame_.planes.push_back({name, axis, formula_of(position)});
    return name;
}

model::Member& FrameBuilder::member(
    std::string stock, Axis run, std::array<Nm, 2> on, Nm from, Nm to, std::array<Sense, 2> legs) {
    const auto [first, second] = model::across(run);
    model::Member member;
    member.name = "m" + std::to_string(frame_.members.size() + 1);
    member.stock = std::move(stock);
    member.run = run;
    member.on[0] = plane(first, on[0]);
    member.on[1] = plane(second, on[1]);
    member.from = plane(run, from);
    member.to = plane(run, to);
    member.legs = legs;
    frame_.members.push_back(std::move(member));
    return frame_.members.back();
}

model::Frame box_frame(std::string name, const BoxShape& shape) {
    FrameBuilder builder{std::move(name)};
    for (const Nm x : {Nm{0}, shape.width}) {
        for (const Nm y : {Nm{0}, shape.depth}) {
            builder.member(
                shape.posts, Axis::z, {x, y}, 0, shape.height,
                {x == 0 ? Sense::plus : Sense::minus, y == 0 ? Sense::plus : Sense::minus});
        }
    }
    add_level(builder, shape, 0, Sense::plus);
    for (const Nm z : shape.shelves) add_level(builder, shape, z, Sense::minus);
    add_level(builder, shape, shape.height, Sense::minus);
    return std::move(builder.frame());
}

model::Project box_project(const BoxShape& shape, std::string section, std::string alloy) {
    model::Project project;
    project.name = "box";
    project.stock.push_back(stock_of("main", std::move(section), std::move(alloy)));
    project.frames.push_back(box_frame("box", shape));
    return project;
}

std::string section_id(const model::Catalogue& catalogue,
                       model::SectionForm form,
                       Nm a,
                       Nm b,
                       Nm thickness,
                       bool filleted) {
    const auto found =
        std::find_if(catalogue.sections.begin(), catalogue.sections.end(), [&](const auto& s) {
            return s.form == form && s.a.nm() == a && s.b.nm() == b &&
                   s.thickness.nm() == thickness && (s.root_radius.nm() > 0) == filleted;
        });
    return found == catalogue.sections.end() ? "" : found->id;
}

}  // namespace tests
