#include "editor/dialogs/vent_present.h"

#include "editor/by_name.h"
#include "editor/dimension_values.h"
#include "editor/panel_facts.h"
#include "model/project/edit.h"

#include <algorithm>
#include <array>
#include <iterator>

namespace editor {
namespace {

const model::Panel* panel_of(const VentForm& form, const Derived& derived) {
    const auto* frame = by_name(derived.project->frames, form.frame);
    return frame == nullptr ? nullptr : by_name(frame->panels, form.panel);
}

using Corner = std::array<engine::Length, 2>;

struct Opening {
    Corner least;
    Corner most;
};

// None where one of them has no value.
std::optional<std::vector<Opening>> lengths_of(const std::vector<model::CutOut>& cut_outs,
                                               const Derived& derived) {
    std::vector<Opening> openings;
    for (const auto& cut_out : cut_outs) {
        Opening opening;
        for (std::size_t k = 0; k < 2; ++k) {
            const auto least = tried_length(derived, cut_out.least[k]);
            const auto most = tried_length(derived, cut_out.most[k]);
            if (!least || !most) return std::nullopt;
            opening.least[k] = least->length;
            opening.most[k] = most->length;
        }
        openings.push_back(opening);
    }
    return openings;
}

// Where the row would be were it put into the middle.
std::optional<Corner> middle_of(const VentForm& form,
                                const std::vector<Opening>& openings,
                                engine::Length gap,
                                const Derived& derived) {
    const auto sheet = sheet_size_of(derived, form.frame, form.panel);
    if (!sheet) return std::nullopt;
    const auto& first = openings.front();
    const model::VentRow row{
        .count = static_cast<int>(openings.size()),
        .width = first.most[0] - first.least[0],
        .height = first.most[1] - first.least[1],
        .gap = gap,
        .is_stacked = form.is_stacked,
        .sheet = *sheet,
        .graduation = engine::Length::from_nm(derived.resolved.shop.graduation)};
    const auto placed = model::vent_openings(row);
    return placed ? std::optional(placed->front().least) : std::nullopt;
}

}  // namespace

std::vector<model::CutOut> openings_now(const VentForm& form, const Derived& derived) {
    std::vector<model::CutOut> openings;
    const auto* panel = panel_of(form, derived);
    if (panel == nullptr) return openings;
    const std::string row = model::PutVents{}.name;
    std::ranges::copy_if(panel->cut_outs, std::back_inserter(openings), [&](const auto& cut_out) {
        return model::is_opening_of(cut_out.name, row);
    });
    return openings;
}

void take_openings(VentForm& form, const Derived& derived) {
    const auto found = lengths_of(openings_now(form, derived), derived);
    if (!found || found->empty()) return;
    const auto text = [&](engine::Length length) {
        return formula_of({.kind = engine::QuantityKind::length, .length = length},
                          derived.project->shown);
    };
    const auto& first = found->front();
    form.count = std::to_string(found->size());
    form.height = text(first.most[1] - first.least[1]);
    engine::Length gap;
    if (found->size() > 1) {
        const auto& second = (*found)[1];
        form.is_stacked = second.least[1] != first.least[1];
        const std::size_t along = form.is_stacked ? 1 : 0;
        gap = second.least[along] - first.most[along];
        form.gap = text(gap);
    }
    const auto middle = middle_of(form, *found, gap, derived);
    for (std::size_t k = 0; k < 2; ++k) {
        const bool is_in_middle = middle && (*middle)[k] == first.least[k];
        form.from[k] = is_in_middle ? std::string() : text(first.least[k]);
    }
}

VentWords vent_words(model::Axis face_axis) {
    switch (face_axis) {
        case model::Axis::x:
            return {
                "wide", "high", "height of each", "one above another", {"from front", "from foot"}};
        case model::Axis::y:
            break;
        case model::Axis::z:
            return {
                "wide", "deep", "depth of each", "one behind another", {"from left", "from front"}};
    }
    return {"wide", "high", "height of each", "one above another", {"from left", "from foot"}};
}

VentWords vent_words(const VentForm& form, const Derived& derived) {
    const auto* panel = panel_of(form, derived);
    return vent_words(panel == nullptr ? model::Axis::y : panel->face_axis);
}

}  // namespace editor
