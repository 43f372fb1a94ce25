#include "editor/dialogs/node_bar_choices.h"

#include "editor/by_name.h"
#include "editor/dialogs/form_line.h"
#include "editor/dimension_values.h"
#include "editor/frame_nodes.h"
#include "editor/node_bars.h"
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
template <class Bar>
void put_on_face(Bar& bar,
                 const std::string& face,
                 const Derived& derived,
                 const model::Frame& frame) {
    const auto before = axis_of_plane(frame, bar.face);
    bar.face = face;
    if (before == axis_of_plane(frame, face)) return;
    if (const auto pair = across_face(derived, frame, face)) {
        bar.from = pair->from;
        bar.to = pair->to;
    }
}

template <class Bar>
bool choose_face(Bar& bar, const Derived& derived, const model::Frame& frame) {
    std::vector<ListEntry> entries;
    std::optional<model::Axis> axis;
    bool is_listed = false;
    for (const auto& face : faces_with_members(derived, frame)) {
        const auto its_axis = axis_of_plane(frame, face);
        if (its_axis && its_axis != axis) entries.push_back({heading_of(*its_axis), true});
        axis = its_axis;
        entries.push_back({face});
        is_listed = is_listed || face == bar.face;
    }
    // What the project says though no list offers it is shown all the same.
    if (!is_listed) entries.push_back({bar.face});
    std::size_t chosen = 0;
    while (entries[chosen].is_heading || entries[chosen].text != bar.face) ++chosen;
    const auto clicked = draw_choice_button("face", "on the face", entries, chosen);
    if (clicked) put_on_face(bar, entries[*clicked].text, derived, frame);
    return clicked.has_value();
}

bool choose_node(const std::string& name, const std::vector<NodeName>& nodes, NodeName& node) {
    std::vector<NodeName> listed = nodes;
    if (std::find(listed.begin(), listed.end(), node) == listed.end()) listed.push_back(node);
    std::vector<ListEntry> entries;
    for (const auto& one : listed) entries.push_back({words_of(one)});
    const auto at = std::find(listed.begin(), listed.end(), node);
    const auto chosen = static_cast<std::size_t>(at - listed.begin());
    const auto clicked = draw_choice_button(name, name, entries, chosen);
    if (clicked) node = listed[*clicked];
    return clicked.has_value();
}

bool is_of_form(const model::Catalogue& catalogue,
                const std::string& section,
                model::SectionForm form) {
    const auto* it = model::find_section(catalogue, section);
    return it != nullptr && it->form == form;
}

struct StockEntry {
    std::string text;
    std::string stock;
    std::string section;  // of what is no stock yet
    bool is_heading = false;
};

void add_stock(std::vector<StockEntry>& bars,
               const Derived& derived,
               const model::Catalogue& catalogue,
               model::SectionForm form) {
    for (const auto& stock : derived.project->stock) {
        if (!is_of_form(catalogue, stock.section, form)) continue;
        const bool is_named_so = stock.name == stock.section;
        bars.push_back(
            {is_named_so ? stock.name : stock.name + ": " + stock.section, stock.name, {}, false});
    }
    const char* heading =
        form == model::SectionForm::flat ? "Flat bar of the project" : "Angle of the project";
    if (!bars.empty()) bars.insert(bars.begin(), {heading, {}, {}, true});
}

model::MeasureSystem system_of(const Derived& derived) {
    return is_metric(derived.project->shown) ? model::MeasureSystem::metric
                                             : model::MeasureSystem::inch;
}

// Those of the system in which lengths are shown; the others are rarely to be had beside them.
void add_catalogue(std::vector<StockEntry>& bars,
                   const Derived& derived,
                   const model::Catalogue& catalogue,
                   model::SectionForm form) {
    bars.push_back({"Not in the project yet", {}, {}, true});
    for (const auto& section : catalogue.sections) {
        const bool is_listed =
            section.form == form && section.system == system_of(derived) &&
            std::none_of(derived.project->stock.begin(), derived.project->stock.end(),
                         [&](const auto& stock) { return stock.section == section.id; });
        if (is_listed) bars.push_back({section.id, section.id, section.id, false});
    }
}

template <class Bar>
std::size_t index_of_stock(std::vector<StockEntry>& bars, const NodeBarForm<Bar>& form) {
    for (std::size_t i = 0; i < bars.size(); ++i) {
        const bool is_it = bars[i].stock == form.bar.stock && bars[i].section == form.section;
        if (!bars[i].is_heading && is_it) return i;
    }
    bars.push_back({form.bar.stock, form.bar.stock, form.section, false});
    return bars.size() - 1;
}

// The section of the catalogue that is nearest to this size.
const model::Section* nearest_section(const Derived& derived,
                                      const model::Catalogue& catalogue,
                                      model::SectionForm form) {
    // Common practice: flat bar about as wide as a leg of the angle, and as thick as a rivet grips
    // easily.
    constexpr double width_mm = 25.4;
    constexpr double thickness_mm = 3.175;
    const model::Section* nearest = nullptr;
    double least = 0.0;
    for (const auto& section : catalogue.sections) {
        if (section.form != form || section.system != system_of(derived)) continue;
        double off =
            std::abs(section.a.mm() - width_mm) + std::abs(section.thickness.mm() - thickness_mm);
        if (form == model::SectionForm::angle) off += std::abs(section.b.mm() - width_mm);
        if (nearest != nullptr && off >= least) continue;
        nearest = &section;
        least = off;
    }
    return nearest;
}

// That of the frame's members before the others of the project; empty: none is of the form.
std::string usual_stock(const Derived& derived,
                        const model::Catalogue& catalogue,
                        const std::string& frame,
                        model::SectionForm form) {
    const auto& stocks = derived.project->stock;
    const auto is_right = [&](const model::Stock& stock) {
        return is_of_form(catalogue, stock.section, form);
    };
    if (const auto* it = by_name(derived.project->frames, frame)) {
        for (const auto& member : it->members) {
            const auto* stock = by_name(stocks, member.stock);
            if (stock != nullptr && is_right(*stock)) return stock->name;
        }
    }
    const auto first = std::find_if(stocks.begin(), stocks.end(), is_right);
    return first == stocks.end() ? std::string() : first->name;
}

}  // namespace

template <class Bar>
bool draw_place_choices(Bar& bar, const Derived& derived, const model::Frame& frame) {
    bool is_changed = choose_face(bar, derived, frame);
    const auto nodes = nodes_of_face(derived, frame, bar.face);
    is_changed = choose_node("from", nodes, bar.from) || is_changed;
    is_changed = choose_node("to", nodes, bar.to) || is_changed;
    draw_form_word("");
    if (draw_button("Other corners", {.text = "lean it the other way", .weight = Weight::link})) {
        turn_to_other_corners(bar.from, bar.to);
        is_changed = true;
    }
    draw_hint("Along the other diagonal of the same four corners");
    return is_changed;
}

template <class Bar>
void draw_stock_choice(NodeBarForm<Bar>& form,
                       const Derived& derived,
                       const model::Catalogue& catalogue) {
    std::vector<StockEntry> bars;
    add_stock(bars, derived, catalogue, NodeBarKind<Bar>::form);
    add_catalogue(bars, derived, catalogue, NodeBarKind<Bar>::form);
    const std::size_t chosen = index_of_stock(bars, form);
    std::vector<ListEntry> entries;
    for (const auto& bar : bars) entries.push_back({bar.text, bar.is_heading});
    if (const auto clicked = draw_choice_button("bar", "of", entries, chosen)) {
        form.bar.stock = bars[*clicked].stock;
        form.section = bars[*clicked].section;
    }
}

bool is_choosing_for_node_bar() {
    return ImGui::IsPopupOpen("face list") || ImGui::IsPopupOpen("from list") ||
           ImGui::IsPopupOpen("to list") || ImGui::IsPopupOpen("bar list");
}

template <class Bar>
void choose_usual_stock(NodeBarForm<Bar>& form,
                        const Derived& derived,
                        const model::Catalogue& catalogue) {
    constexpr auto of_form = NodeBarKind<Bar>::form;
    form.bar.stock = usual_stock(derived, catalogue, form.frame, of_form);
    if (!form.bar.stock.empty()) return;
    const auto* nearest = nearest_section(derived, catalogue, of_form);
    if (nearest == nullptr) return;
    form.bar.stock = nearest->id;
    form.section = nearest->id;
}

template bool draw_place_choices(model::Diagonal&, const Derived&, const model::Frame&);
template bool draw_place_choices(model::Leaning&, const Derived&, const model::Frame&);
template void draw_stock_choice(BraceForm&, const Derived&, const model::Catalogue&);
template void draw_stock_choice(LeaningForm&, const Derived&, const model::Catalogue&);
template void choose_usual_stock(BraceForm&, const Derived&, const model::Catalogue&);
template void choose_usual_stock(LeaningForm&, const Derived&, const model::Catalogue&);

}  // namespace editor
