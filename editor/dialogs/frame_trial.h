// What a change of a whole frame would come to: what it adds, and what would be found then.
#pragma once

#include "editor/by_name.h"
#include "editor/change.h"
#include "editor/derived.h"
#include "editor/dialogs/form_line.h"
#include "editor/kit/scopes.h"
#include "model/catalogue/catalogue.h"

#include <imgui.h>

#include <optional>
#include <string>
#include <vector>

namespace editor {

struct FrameTrial {
    WorkedOutOf of;
    std::vector<std::string> asked;  // what the form says
    std::string words;    // "6 layout planes, 14 members more, 2 bays less"; empty: it is refused
    std::string refusal;  // why
    std::string place;    // "X 0 to 20, Y 20 to 68, Z 0 to 34": what it takes up in the room then
    std::vector<model::Finding> findings;  // errors and warnings that it would bring
};

FrameTrial frame_trial(const Derived& derived,
                       const model::Catalogue& catalogue,
                       const std::string& frame,
                       std::vector<std::string> asked,
                       const engine::Result<Change>& change);

// Works it out anew where it is of another state or the form says something else by now.
template <class MakeChange>
void update_trial(std::optional<FrameTrial>& trial,
                  const Derived& derived,
                  const model::Catalogue& catalogue,
                  const std::string& frame,
                  const std::vector<std::string>& asked,
                  const MakeChange& make_change) {
    if (trial && trial->of == worked_out_of(derived) && trial->asked == asked) return;
    trial = frame_trial(derived, catalogue, frame, asked, make_change());
}

// The first frame and obstacle that a finding names together, of the obstacles that `fits` lets
// through.
template <class Fits>
void take_named_together(const Derived& derived,
                         std::string& frame,
                         std::string& obstacle,
                         const Fits& fits) {
    for (const auto& finding : derived.findings) {
        const auto& concerns = finding.concerns;
        if (concerns.size() < 2 || concerns[0].kind != model::SubjectKind::obstacle) continue;
        const auto* named = by_name(derived.project->room, concerns[0].name);
        if (named == nullptr || !fits(*named)) continue;
        frame = concerns[1].frame;
        obstacle = named->name;
        return;
    }
}

void draw_frame_trial(const FrameTrial& trial);

// One of the named things that `offers` lets through.
template <class List, class Offers>
void draw_names(const char* word, const List& list, std::string& chosen, Offers offers) {
    draw_form_word(word);
    const IdScope id(word);  // things of two kinds may have one name
    const float x = ImGui::GetCursorPosX();
    for (const auto& one : list) {
        if (!offers(one)) continue;
        ImGui::SetCursorPosX(x);
        if (draw_radio(one.name.c_str(), chosen == one.name)) chosen = one.name;
    }
}

}  // namespace editor
