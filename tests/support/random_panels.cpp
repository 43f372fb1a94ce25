#include "tests/support/random_panels.h"

#include "engine/measure/tape.h"

#include "tests/support/frame_builder.h"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace tests {
namespace {

struct PlacedPlane {
    std::string name;
    Nm position = 0;
};

// Planes across an axis whose position is a plain length, rising.
std::vector<PlacedPlane> planes_across(const model::Frame& frame, model::Axis axis) {
    std::vector<PlacedPlane> planes;
    for (const auto& plane : frame.planes) {
        if (plane.axis != axis) continue;
        const auto position = engine::read_length(plane.position, engine::LengthUnit::inch);
        if (position) planes.push_back({plane.name, position->nm()});
    }
    std::sort(planes.begin(), planes.end(),
              [](const auto& a, const auto& b) { return a.position < b.position; });
    return planes;
}

// Two planes: the outermost ones, or neighbours.
std::optional<std::array<std::string, 2>> random_pair(Dice& dice,
                                                      const std::vector<PlacedPlane>& planes) {
    if (planes.size() < 2) return std::nullopt;
    const bool is_whole = dice.chance(50);
    const auto first = dice.below(static_cast<std::uint32_t>(planes.size() - 1));
    if (is_whole) return std::array{planes.front().name, planes.back().name};
    return std::array{planes[first].name, planes[first + 1].name};
}

void add_bays(Dice& dice, model::Frame& frame) {
    const std::uint32_t count = 1 + dice.below(3);
    for (std::uint32_t i = 0; i < count; ++i) {
        const auto x = random_pair(dice, planes_across(frame, model::Axis::x));
        const auto y = random_pair(dice, planes_across(frame, model::Axis::y));
        const auto z = random_pair(dice, planes_across(frame, model::Axis::z));
        if (!x || !y || !z) return;
        frame.bays.push_back({.name = "bay " + std::to_string(i + 1), .x = *x, .y = *y, .z = *z});
    }
}

// Most lie well inside the sheet, some reach over its edge or over a member, some overlap.
std::vector<model::CutOut> random_cut_outs(Dice& dice) {
    std::vector<model::CutOut> cut_outs;
    const std::uint32_t count = dice.chance(40) ? 1 + dice.below(3) : 0;
    for (std::uint32_t i = 0; i < count; ++i) {
        model::CutOut cut_out{.name = "cut-out " + std::to_string(i + 1)};
        for (std::size_t k = 0; k < 2; ++k) {
            const Nm least = inches_64(dice.between(0, 640));
            const Nm size = inches_64(dice.between(16, 256));
            cut_out.least[k] = formula_of(least);
            cut_out.most[k] = formula_of(least + size);
        }
        cut_out.is_vent = dice.chance(50);
        cut_outs.push_back(std::move(cut_out));
    }
    return cut_outs;
}

model::Panel random_panel(Dice& dice, const model::Frame& frame, bool metric) {
    constexpr std::array<const char*, 4> inch_sheets{"1/16 in", "1/8 in", "1/4 in", "1/2 in"};
    constexpr std::array<const char*, 4> metric_sheets{"1.5 mm", "3 mm", "6 mm", "12 mm"};
    constexpr std::array<const char*, 3> materials{"5052-H32", "birch plywood", "softwood plywood"};
    model::Panel panel;
    panel.bay = dice.one_of(frame.bays).name;
    panel.face_axis = static_cast<model::Axis>(dice.below(3));
    panel.face_side = dice.chance(50) ? model::Sense::minus : model::Sense::plus;
    panel.material = dice.one_of(materials);
    panel.thickness = metric ? dice.one_of(metric_sheets) : dice.one_of(inch_sheets);
    panel.fit = dice.chance(50) ? model::PanelFit::inset : model::PanelFit::overlay;
    if (dice.chance(35)) {
        panel.use = dice.chance(50) ? model::PanelUse::door : model::PanelUse::drawer_front;
    }
    if (dice.chance(25)) panel.clear_gap = metric ? "2 mm" : "1/8 in";
    if (dice.chance(25)) panel.pitch = metric ? "100 mm" : "4 in";
    panel.cut_outs = random_cut_outs(dice);
    return panel;
}

}  // namespace

void add_random_panels(Dice& dice, model::Project& project, bool metric) {
    for (auto& frame : project.frames) {
        if (frame.bays.empty()) add_bays(dice, frame);
        if (frame.bays.empty()) continue;
        const std::uint32_t count = 1 + dice.below(4);
        for (std::uint32_t i = 0; i < count; ++i) {
            auto panel = random_panel(dice, frame, metric);
            panel.name = "panel " + std::to_string(i + 1);
            frame.panels.push_back(std::move(panel));
        }
    }
}

}  // namespace tests
