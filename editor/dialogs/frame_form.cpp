#include "editor/dialogs/frame_form.h"

#include "editor/by_name.h"
#include "editor/kit/item_log.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

#include <imgui.h>

#include <algorithm>
#include <utility>

namespace editor {
namespace {

constexpr std::size_t most_named = 6;

template <class Things>
void add_gone(const Things& before, const Things& after, std::vector<std::string>& gone) {
    for (const auto& thing : before) {
        if (by_name(after, thing.name) == nullptr) gone.push_back(thing.name);
    }
}

}  // namespace

void draw_frames(FrameForm& form, const model::Project& project) {
    if (project.frames.size() < 2) return;
    draw_names("frame", project.frames, form.frame, [](const auto&) { return true; });
}

void draw_names_in_lines(const char* word,
                         const std::vector<std::string>& names,
                         std::string& chosen) {
    draw_form_word(word);
    const IdScope id(word);
    const ItemScope items(word);
    const float left = ImGui::GetCursorPosX();
    const float right = ImGui::GetWindowPos().x + ImGui::GetWindowContentRegionMax().x;
    bool is_first = true;
    for (const auto& name : names) {
        const float width = size_of_text(name, Type::text).x + ImGui::GetFrameHeight() +
                            2.0F * ImGui::GetStyle().ItemInnerSpacing.x;
        const float next = ImGui::GetItemRectMax().x + ImGui::GetStyle().ItemSpacing.x + width;
        if (!is_first && next < right) {
            ImGui::SameLine();
        } else {
            ImGui::SetCursorPosX(left);
        }
        is_first = false;
        if (draw_radio(name.c_str(), chosen == name)) chosen = name;
    }
    if (names.empty()) draw_text("there is none", Type::text, colour::quiet);
}

std::vector<std::string> planes_in_order(const Derived& derived,
                                         const std::string& frame,
                                         model::Axis axis) {
    const auto& frames = derived.project->frames;
    const auto* stated = by_name(frames, frame);
    if (stated == nullptr) return {};
    const auto& placed = derived.resolved.frames[static_cast<std::size_t>(stated - frames.data())];
    std::vector<std::pair<engine::Nm, std::string>> found;
    for (std::size_t i = 0; i < stated->planes.size(); ++i) {
        const auto at = placed.planes[i].position;
        if (stated->planes[i].axis == axis && at) found.emplace_back(*at, stated->planes[i].name);
    }
    std::ranges::stable_sort(found, {}, [](const auto& one) { return one.first; });
    std::vector<std::string> names;
    for (auto& one : found) names.push_back(std::move(one.second));
    return names;
}

std::vector<std::string> bay_names(const Derived& derived, const std::string& frame) {
    std::vector<std::string> names;
    const auto* stated = by_name(derived.project->frames, frame);
    if (stated == nullptr) return names;
    for (const auto& bay : stated->bays) names.push_back(bay.name);
    return names;
}

std::string words_of_gone(const model::Frame& before, const model::Frame& after) {
    std::vector<std::string> gone;
    add_gone(before.members, after.members, gone);
    add_gone(before.diagonals, after.diagonals, gone);
    add_gone(before.leaning, after.leaning, gone);
    add_gone(before.bays, after.bays, gone);
    add_gone(before.panels, after.panels, gone);
    add_gone(before.loads, after.loads, gone);
    std::string words;
    for (std::size_t i = 0; i < std::min(most_named, gone.size()); ++i) {
        words += (i > 0 ? ", " : "") + gone[i];
    }
    if (gone.size() > most_named) {
        words += " and " + std::to_string(gone.size() - most_named) + " more";
    }
    return words;
}

FormOutcome end_frame_form(FrameForm& form,
                           const model::Edit& edit,
                           std::string_view verb,
                           bool can_put) {
    draw_rule();
    draw_frame_trial(*form.trial);
    const auto answer =
        draw_form_answers({}, {.verb = verb, .can_put = can_put && form.trial->refusal.empty()});
    FormOutcome outcome;
    if (answer.puts) outcome.change = change_of(edit);
    outcome.is_cancelled = answer.is_cancelled;
    end_form(form.is_fresh, outcome);
    return outcome;
}

}  // namespace editor
