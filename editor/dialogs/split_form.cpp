#include "editor/dialogs/split_form.h"

#include "editor/by_name.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

#include <algorithm>

namespace editor {
namespace {

std::vector<std::string> planes_between_ends(const Derived& derived,
                                             const std::string& frame,
                                             const std::string& member) {
    const auto* stated = by_name(derived.project->frames, frame);
    const auto* bar = stated == nullptr ? nullptr : by_name(stated->members, member);
    if (bar == nullptr) return {};
    const auto from = plane_position(derived, frame, bar->from);
    const auto to = plane_position(derived, frame, bar->to);
    if (!from || !to) return {};
    auto planes = planes_in_order(derived, frame, bar->run);
    // At the place of an end another plane may lie, under a name of its own.
    std::erase_if(planes, [&](const std::string& plane) {
        const auto at = plane_position(derived, frame, plane);
        return !at || *at <= *from || *at >= *to;
    });
    return planes;
}

}  // namespace

SplitForm new_split_form(const Derived& derived,
                         const std::string& frame,
                         const std::string& member) {
    SplitForm form;
    form.frame = frame;
    form.member = member;
    const auto planes = planes_between_ends(derived, frame, member);
    if (!planes.empty()) form.plane = planes.front();
    return form;
}

FormOutcome draw_split_form(SplitForm& form,
                            const Derived& derived,
                            const model::Catalogue& catalogue) {
    const DialogScope dialog("Split", ("Split " + form.member).c_str(), scaled(520));
    if (!dialog) return {};
    const auto planes = planes_between_ends(derived, form.frame, form.member);
    draw_names_in_lines("at", planes, form.plane);
    draw_wrapped(
        planes.empty()
            ? "No layout plane lies between its ends. Lay out one where it is to be split."
            : "Two members then end at this plane. Each keeps what was said of its joints.",
        Type::small, colour::quiet);
    const model::SplitMember edit{form.frame, form.member, form.plane};
    update_trial(form.trial, derived, catalogue, form.frame, {form.member, form.plane},
                 [&] { return engine::Result<Change>(change_of(edit)); });
    if (planes.empty()) form.trial->refusal = "there is nowhere to split it yet";
    return end_frame_form(form, edit, "Split it");
}

}  // namespace editor
