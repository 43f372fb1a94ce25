#include "editor/dialogs/panel_choices.h"

#include "editor/by_name.h"
#include "editor/dialogs/form_line.h"
#include "editor/kit/widgets.h"
#include "editor/panel_facts.h"
#include "editor/places/choice_button.h"

#include <imgui.h>

#include <algorithm>
#include <vector>

namespace editor {
namespace {

constexpr const char* as_shop = "as the shop says";

// The texts of the lists are what is stored, but for the first where `otherwise` is given.
void choose_text(const std::string& name,
                 const std::string& word,
                 const std::vector<ListEntry>& entries,
                 std::string& text) {
    const auto at = std::find_if(entries.begin(), entries.end(), [&](const ListEntry& entry) {
        return !entry.is_heading && entry.text == text;
    });
    const auto chosen = static_cast<std::size_t>(at - entries.begin());
    if (const auto clicked = draw_choice_button(name, word, entries, chosen)) {
        text = entries[*clicked].text;
    }
}

}  // namespace

void draw_bay_and_face(model::Panel& panel, const Derived& derived, const std::string& frame) {
    std::vector<ListEntry> bays;
    if (const auto* it = by_name(derived.project->frames, frame)) {
        for (const auto& bay : it->bays) bays.push_back({bay.name});
    }
    choose_text("bay", "on the bay", bays, panel.bay);
    draw_form_word("its side");
    bool is_first = true;
    for (const auto& face : face_words()) {
        if (!is_first) ImGui::SameLine();
        is_first = false;
        const bool is_chosen = panel.face_axis == face.axis && panel.face_side == face.side;
        if (draw_radio(face.word, is_chosen)) {
            panel.face_axis = face.axis;
            panel.face_side = face.side;
        }
    }
}

void draw_material_choice(model::Panel& panel, const model::Catalogue& catalogue) {
    std::vector<ListEntry> entries{{"Aluminium", true}};
    for (const auto& alloy : catalogue.alloys) entries.push_back({alloy.id});
    entries.push_back({"Other sheet", true});
    for (const auto& sheet : catalogue.sheet_materials) entries.push_back({sheet.id});
    choose_text("material", "of", entries, panel.material);
}

void draw_fit_and_use(model::Panel& panel) {
    using model::PanelFit;
    using model::PanelUse;
    draw_radio_line<PanelFit>(
        "lies", panel.fit,
        {{PanelFit::overlay, "over the members"}, {PanelFit::inset, "between the members"}});
    draw_radio_line<PanelUse>("is", panel.use,
                              {{PanelUse::fixed, "fixed"},
                               {PanelUse::door, "a door"},
                               {PanelUse::drawer_front, "a drawer front"}});
}

void draw_rivet_choice(model::Panel& panel, const model::Catalogue& catalogue) {
    std::vector<ListEntry> entries{{as_shop}};
    for (const auto& rivet : catalogue.rivets) entries.push_back({rivet.id});
    std::string text = panel.fastener.empty() ? as_shop : panel.fastener;
    choose_text("rivet", "rivet", entries, text);
    panel.fastener = text == as_shop ? std::string() : text;
}

bool is_choosing_for_panel() {
    return ImGui::IsPopupOpen("bay list") || ImGui::IsPopupOpen("material list") ||
           ImGui::IsPopupOpen("rivet list");
}

}  // namespace editor
