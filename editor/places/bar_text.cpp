#include "editor/places/bar_text.h"

#include <functional>
#include <map>

namespace editor {
namespace {

std::string feet_text(engine::Length length) {
    constexpr auto inch = engine::Length::nm_per_inch;
    const auto inches = (length.nm() + inch / 2) / inch;
    const auto feet = inches / 12;
    const auto rest = inches % 12;
    if (feet == 0) return std::to_string(rest) + " in";
    const std::string text = std::to_string(feet) + " ft";
    return rest == 0 ? text : text + " " + std::to_string(rest) + " in";
}

}  // namespace

std::string bar_text(engine::Length length, const engine::TapeStyle& shown) {
    const auto unit = engine::bare_unit(shown);
    if (unit == engine::LengthUnit::inch || unit == engine::LengthUnit::foot) {
        return feet_text(length);
    }
    return engine::tape_text(length,
                             {.form = engine::TapeForm::metre, .decimals = 2, .with_unit = true});
}

std::vector<BarRun> bar_runs(const Derived& derived) {
    std::vector<BarRun> runs;
    for (std::size_t i = 0; i < derived.bars.size(); ++i) {
        if (runs.empty() || derived.bars[i].bar != derived.bars[i - 1].bar) runs.push_back({i, 0});
        ++runs.back().count;
    }
    return runs;
}

std::string bars_text(const Derived& derived, const std::string& section) {
    std::map<engine::Length, int, std::greater<>> count;
    int offcuts = 0;
    for (const auto& run : bar_runs(derived)) {
        const auto& row = derived.bars[run.first];
        if (!section.empty() && row.section != section) continue;
        if (row.is_offcut) {
            ++offcuts;
        } else {
            ++count[row.bar_length];
        }
    }
    std::string text;
    for (const auto& [length, number] : count) {
        if (!text.empty()) text += " + ";
        text += std::to_string(number) + " x " + bar_text(length, derived.project->shown);
    }
    if (offcuts == 0) return text.empty() ? "no bar" : text;
    const std::string rest = offcuts == 1 ? "an offcut" : std::to_string(offcuts) + " offcuts";
    // Only a section that is looked at alone tells of its offcuts: they are not bought.
    if (text.empty()) return section.empty() ? "no bar" : rest;
    return section.empty() ? text : text + " + " + rest;
}

}  // namespace editor
