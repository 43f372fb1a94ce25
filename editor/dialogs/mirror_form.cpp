#include "editor/dialogs/mirror_form.h"

#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

#include <algorithm>
#include <utility>

namespace editor {
namespace {

model::MirrorBars edit_of(const MirrorForm& form) {
    return {.frame = form.frame,
            .axis = form.axis,
            .between = form.between,
            .bars = form.is_of_all ? std::vector<std::string>{} : form.chosen};
}

std::vector<std::string> asked_by(const MirrorForm& form) {
    return {form.frame, std::to_string(static_cast<int>(form.axis)),
            form.is_of_all ? "all" : "chosen", form.between[0], form.between[1]};
}

// Those of another axis or frame do not serve.
void draw_middle(MirrorForm& form, const Derived& derived) {
    const auto planes = planes_in_order(derived, form.frame, form.axis);
    for (auto& side : form.between) {
        if (std::ranges::count(planes, side) == 0) side.clear();
    }
    if (planes.size() < 2) return;
    if (form.between[0].empty()) form.between[0] = planes.front();
    if (form.between[1].empty()) form.between[1] = planes.back();
    if (planes.size() == 2) return;
    draw_names_in_lines("between", planes, form.between[0]);
    draw_names_in_lines("and", planes, form.between[1]);
}

}  // namespace

MirrorForm new_mirror_form(const Derived& derived,
                           const std::string& frame,
                           std::vector<std::string> chosen) {
    MirrorForm form;
    form.frame = frame;
    if (frame.empty() && !derived.project->frames.empty()) {
        form.frame = derived.project->frames.front().name;
    }
    form.is_of_all = chosen.empty();
    form.chosen = std::move(chosen);
    return form;
}

FormOutcome draw_mirror_form(MirrorForm& form,
                             const Derived& derived,
                             const model::Catalogue& catalogue) {
    const DialogScope dialog("Mirror", "Mirror bars", scaled(560));
    if (!dialog) return {};
    if (form.chosen.empty()) {
        draw_frames(form, *derived.project);
    } else {
        const bool is_one = form.chosen.size() == 1;
        const std::string chosen =
            is_one ? form.chosen.front() : std::to_string(form.chosen.size()) + " chosen bars";
        draw_radio_line<bool>("what", form.is_of_all,
                              {{false, chosen.c_str()}, {true, "all of the frame"}});
    }
    draw_radio_line<model::Axis>("way", form.axis,
                                 {{model::Axis::x, "left to right"},
                                  {model::Axis::y, "front to back"},
                                  {model::Axis::z, "bottom to top"}});
    draw_middle(form, derived);
    draw_wrapped(
        "What has its mirror image already stays as it is; what lacks one gets it, and planes for "
        "it that stay opposite when the frame grows.",
        Type::small, colour::quiet);
    const auto edit = edit_of(form);
    update_trial(form.trial, derived, catalogue, form.frame, asked_by(form),
                 [&] { return engine::Result<Change>(change_of(edit)); });
    return end_frame_form(form, edit, "Mirror");
}

}  // namespace editor
