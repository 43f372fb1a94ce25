#include "editor/dialogs/brace_choices.h"

#include "editor/by_name.h"
#include "editor/dialogs/form_line.h"
#include "editor/dimension_values.h"
#include "editor/frame_nodes.h"
#include "editor/places/choice_button.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace editor {
namespace {

const char* heading_of(model::Axis axis) {
    switch (axis) {
        case model::Axis::y:
            return "From front to back";
        case model::Axis::x:
            return "From left to right";
        case model::Axis::z:
            return "From bottom to top";
    }
    return "";
}

// Another face of the same kind keeps the nodes.
void put_on_face(model::Diagonal& diagonal,
                 const std::string& face,
                 const Derived& derived,
                 const model::Frame& frame) {
    const auto before = axis_of_plane(frame, diagonal.face);
    diagonal.face = face;
    if (before == axis_of_plane(frame, face)) return;
    if (const auto pair = across_face(derived, frame, face)) {
        diagonal.from = pair->from;
        diagonal.to = pair->to;
    }
}

void choose_face(model::Diagonal& diagonal, const Derived& derived, const model::Frame& frame) {
    std::vector<ListEntry> entries;
    std::optional<model::Axis> axis;
    bool is_listed = false;
    for (const auto& face : faces_with_members(derived, frame)) {
        const auto its_axis = axis_of_plane(frame, face);
        if (its_axis && its_axis != axis) entries.push_back({heading_of(*its_axis), true});
        axis = its_axis;
        entries.push_back({face});
        is_listed = is_listed || face == diagonal.face;
    }
    // What the project says though no list offers it is shown all the same.
    if (!is_listed) entries.push_back({diagonal.face});
    std::size_t chosen = 0;
    while (entries[chosen].is_heading || entries[chosen].text != diagonal.face) ++chosen;
    const auto clicked = draw_choice_button("face", "on the face", entries, chosen);
    if (clicked) put_on_face(diagonal, entries[*clicked].text, derived, frame);
}

void choose_node(const std::string& name, const std::vector<NodeName>& nodes, NodeName& node) {
    std::vector<NodeName> listed = nodes;
    if (std::find(listed.begin(), listed.end(), node) == listed.end()) listed.push_back(node);
    std::vector<ListEntry> entries;
    for (const auto& one : listed) entries.push_back({words_of(one)});
    const auto at = std::find(listed.begin(), listed.end(), node);
    const auto chosen = static_cast<std::size_t>(at - listed.begin());
    if (const auto clicked = draw_choice_button(name, name, entries, chosen)) {
        node = listed[*clicked];
    }
}

bool is_flat(const model::Catalogue& catalogue, const std::string& section) {
    const auto* it = model::find_section(catalogue, section);
    return it != nullptr && it->form == model::SectionForm::flat;
}

struct Bar {
    std::string text;
    std::string stock;
    std::string section;  // of what is no stock yet
    bool is_heading = false;
};

void add_stock(std::vector<Bar>& bars, const Derived& derived, const model::Catalogue& catalogue) {
    for (const auto& stock : derived.project->stock) {
        if (!is_flat(catalogue, stock.section)) continue;
        const bool is_named_so = stock.name == stock.section;
        bars.push_back(
            {is_named_so ? stock.name : stock.name + ": " + stock.section, stock.name, {}, false});
    }
    if (!bars.empty()) bars.insert(bars.begin(), {"Flat bar of the project", {}, {}, true});
}

model::MeasureSystem system_of(const Derived& derived) {
    return is_metric(derived.project->shown) ? model::MeasureSystem::metric
                                             : model::MeasureSystem::inch;
}

// Those of the system in which lengths are shown; the others are rarely to be had beside them.
void add_catalogue(std::vector<Bar>& bars,
                   const Derived& derived,
                   const model::Catalogue& catalogue) {
    bars.push_back({"Not in the project yet", {}, {}, true});
    for (const auto& section : catalogue.sections) {
        const bool is_listed =
            section.form == model::SectionForm::flat && section.system == system_of(derived) &&
            std::none_of(derived.project->stock.begin(), derived.project->stock.end(),
                         [&](const auto& stock) { return stock.section == section.id; });
        if (is_listed) bars.push_back({section.id, section.id, section.id, false});
    }
}

std::size_t index_of_bar(std::vector<Bar>& bars, const BraceForm& form) {
    for (std::size_t i = 0; i < bars.size(); ++i) {
        const bool is_it = bars[i].stock == form.diagonal.stock && bars[i].section == form.section;
        if (!bars[i].is_heading && is_it) return i;
    }
    bars.push_back({form.diagonal.stock, form.diagonal.stock, form.section, false});
    return bars.size() - 1;
}

}  // namespace

void draw_brace_place(model::Diagonal& diagonal,
                      const Derived& derived,
                      const model::Frame& frame) {
    choose_face(diagonal, derived, frame);
    const auto nodes = nodes_of_face(derived, frame, diagonal.face);
    choose_node("from", nodes, diagonal.from);
    choose_node("to", nodes, diagonal.to);
    draw_form_word("");
    if (draw_button("Other corners", {.text = "lean it the other way", .weight = Weight::link})) {
        turn_to_other_corners(diagonal.from, diagonal.to);
    }
    draw_hint("Along the other diagonal of the same four corners");
}

void draw_brace_bar(BraceForm& form, const Derived& derived, const model::Catalogue& catalogue) {
    std::vector<Bar> bars;
    add_stock(bars, derived, catalogue);
    add_catalogue(bars, derived, catalogue);
    const std::size_t chosen = index_of_bar(bars, form);
    std::vector<ListEntry> entries;
    for (const auto& bar : bars) entries.push_back({bar.text, bar.is_heading});
    if (const auto clicked = draw_choice_button("bar", "of", entries, chosen)) {
        form.diagonal.stock = bars[*clicked].stock;
        form.section = bars[*clicked].section;
    }
}

void draw_side_and_ends(model::Diagonal& diagonal) {
    using model::BraceEnds;
    using model::FaceSide;
    draw_radio_line<FaceSide>(
        "lies", diagonal.side,
        {{FaceSide::outside, "outside the members"}, {FaceSide::inside, "inside them"}});
    draw_radio_line<BraceEnds>(
        "its ends", diagonal.ends,
        {{BraceEnds::outline, "cut to the outline"}, {BraceEnds::square, "square"}});
}

bool is_choosing_for_brace() {
    return ImGui::IsPopupOpen("face list") || ImGui::IsPopupOpen("from list") ||
           ImGui::IsPopupOpen("to list") || ImGui::IsPopupOpen("bar list");
}

void choose_usual_bar(BraceForm& form, const Derived& derived, const model::Catalogue& catalogue) {
    for (const auto& stock : derived.project->stock) {
        if (!is_flat(catalogue, stock.section)) continue;
        form.diagonal.stock = stock.name;
        return;
    }
    // Common practice: about as wide as a leg of the angle, and as thick as a rivet grips easily.
    constexpr double width_mm = 25.4;
    constexpr double thickness_mm = 3.175;
    const model::Section* nearest = nullptr;
    double least = 0.0;
    for (const auto& section : catalogue.sections) {
        if (section.form != model::SectionForm::flat) continue;
        if (section.system != system_of(derived)) continue;
        const double off =
            std::abs(section.a.mm() - width_mm) + std::abs(section.thickness.mm() - thickness_mm);
        if (nearest != nullptr && off >= least) continue;
        nearest = &section;
        least = off;
    }
    if (nearest == nullptr) return;
    form.diagonal.stock = nearest->id;
    form.section = nearest->id;
}

}  // namespace editor
