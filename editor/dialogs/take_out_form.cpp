#include "editor/dialogs/take_out_form.h"

#include "editor/by_name.h"
#include "editor/kit/item_log.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

#include <algorithm>

namespace editor {
namespace {

model::Edit edit_of(const TakeOutForm& form) {
    if (form.is_of_bay) return model::TakeOutBay{form.frame, form.name, form.with_bars};
    return model::TakeOutPlane{form.frame, form.name};
}

void draw_planes(TakeOutForm& form, const Derived& derived) {
    struct Way {
        model::Axis axis;
        const char* word;
    };
    for (const auto& [axis, word] :
         {Way{model::Axis::x, "left to right"}, Way{model::Axis::y, "front to back"},
          Way{model::Axis::z, "upward"}}) {
        draw_names_in_lines(word, planes_in_order(derived, form.frame, axis), form.name);
    }
}

std::string words_of(const TakeOutForm& form, const Derived& derived) {
    const auto* before = by_name(derived.project->frames, form.frame);
    const auto next = model::apply(*derived.project, edit_of(form));
    const auto* after = next ? by_name(next->frames, form.frame) : nullptr;
    if (before == nullptr || after == nullptr) return {};
    return words_of_gone(derived, *before, *after);
}

}  // namespace

TakeOutForm new_take_out_form(const Derived& derived, const std::string& frame, bool is_of_bay) {
    TakeOutForm form;
    form.frame = frame;
    if (frame.empty() && !derived.project->frames.empty()) {
        form.frame = derived.project->frames.front().name;
    }
    form.is_of_bay = is_of_bay;
    return form;
}

FormOutcome draw_take_out_form(TakeOutForm& form,
                               const Derived& derived,
                               const model::Catalogue& catalogue) {
    const DialogScope dialog("Take out",
                             form.is_of_bay ? "Remove a bay with what is in it"
                                            : "Remove a plane with what stands on it",
                             scaled(600));
    if (!dialog) return {};
    draw_frames(form, *derived.project);
    if (form.is_of_bay) {
        draw_names_in_lines("bay", bay_names(derived, form.frame), form.name);
        draw_check("with bars", form.with_bars, "with the bars that frame no other bay");
    } else {
        draw_planes(form, derived);
        draw_wrapped(
            "Bays on both sides of it become one, and members that meet there in one line do.",
            Type::small, colour::quiet);
    }
    const auto edit = edit_of(form);
    update_trial(form.trial, derived, catalogue, form.frame,
                 {form.frame, form.name, form.with_bars ? "bars" : ""}, [&] {
                     form.gone = words_of(form, derived);
                     return engine::Result<Change>(change_of(edit));
                 });
    if (form.name.empty()) {
        form.trial->refusal = form.is_of_bay ? "choose a bay" : "choose a plane";
    }
    if (!form.gone.empty()) {
        draw_wrapped(form.gone);
        log_item("gone", form.gone);
    }
    return end_frame_form(form, edit, "Remove it");
}

}  // namespace editor
