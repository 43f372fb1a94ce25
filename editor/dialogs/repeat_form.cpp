#include "editor/dialogs/repeat_form.h"

#include "editor/by_name.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

#include <algorithm>
#include <charconv>

namespace editor {
namespace {

// 0 for what is no whole number: the edit tells what it may be.
int whole_number(const std::string& text) {
    int number = 0;
    const char* const end = text.data() + text.size();
    const auto [stop, error] = std::from_chars(text.data(), end, number);
    return error == std::errc() && stop == end ? number : 0;
}

model::RepeatBay edit_of(const RepeatForm& form) {
    return {.frame = form.frame,
            .bay = form.bay,
            .axis = form.axis,
            .times = whole_number(form.times),
            .pitch = form.pitch,
            .with_panels = form.with_panels,
            .with_loads = form.with_loads};
}

std::vector<std::string> asked_by(const RepeatForm& form) {
    return {
        form.frame, form.bay,   std::to_string(static_cast<int>(form.axis)),
        form.times, form.pitch, std::to_string(form.with_panels) + std::to_string(form.with_loads)};
}

void draw_bays(RepeatForm& form, const Derived& derived) {
    const auto bays = bay_names(derived, form.frame);
    if (std::ranges::count(bays, form.bay) == 0) form.bay = bays.empty() ? "" : bays.front();
    draw_names_in_lines("bay", bays, form.bay);
}

}  // namespace

bool has_bays(const model::Project& project) {
    return std::ranges::any_of(project.frames,
                               [](const model::Frame& frame) { return !frame.bays.empty(); });
}

RepeatForm new_repeat_form(const Derived& derived, const std::string& frame) {
    RepeatForm form;
    form.frame = frame;
    if (!frame.empty()) return form;
    for (const auto& one : derived.project->frames) {
        if (form.frame.empty() && !one.bays.empty()) form.frame = one.name;
    }
    return form;
}

FormOutcome draw_repeat_form(RepeatForm& form,
                             const Derived& derived,
                             const model::Catalogue& catalogue) {
    const DialogScope dialog("Repeat", "Repeat a bay", scaled(560));
    if (!dialog) return {};
    draw_frames(form, *derived.project);
    draw_bays(form, derived);
    draw_radio_line<model::Axis>("way", form.axis,
                                 {{model::Axis::x, "to the right"},
                                  {model::Axis::y, "to the back"},
                                  {model::Axis::z, "upward"}});
    draw_short_line("times", form.times, "1", form.is_fresh);
    draw_short_line("apart", "pitch", form.pitch, "as wide as it is");
    draw_check("with panels", form.with_panels, "with its panels");
    ImGui::SameLine();
    draw_check("with loads", form.with_loads, "with its loads");
    draw_wrapped(
        "What ends the bay comes again so far apart, and what runs along it runs on. The new "
        "planes follow that length.",
        Type::small, colour::quiet);
    const auto edit = edit_of(form);
    update_trial(form.trial, derived, catalogue, form.frame, asked_by(form),
                 [&] { return engine::Result<Change>(change_of(edit)); });
    return end_frame_form(form, edit, "Repeat it");
}

}  // namespace editor
