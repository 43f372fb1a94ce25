#include "editor/dialogs/copy_form.h"

#include "editor/by_name.h"
#include "editor/dialogs/checked_field.h"
#include "editor/kit/item_log.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "model/resolve/piece_prisms.h"

#include <algorithm>

namespace editor {
namespace {

model::CopyFrame edit_of(const CopyForm& form) {
    return {.frame = form.frame,
            .copy = form.copy,
            .origin = form.origin,
            .has_own_dimensions = form.has_own_dimensions,
            .is_mirrored = form.is_mirrored};
}

std::vector<std::string> asked_by(const CopyForm& form) {
    return {
        form.frame,     form.copy,
        form.origin[0], form.origin[1],
        form.origin[2], std::to_string(form.has_own_dimensions) + std::to_string(form.is_mirrored)};
}

// Where along the van the copy must stand to be clear behind all frames: a hand's breadth, which
// leaves heads and tails of rivets their place, on a whole inch or centimetre.
engine::Nm place_behind_all(const Derived& derived, std::size_t original) {
    constexpr std::size_t along = 1;
    constexpr auto hand = 100 * engine::Length::nm_per_mm;
    const auto origin = derived.resolved.frames[original].origin[along];
    std::optional<engine::Nm> begin;
    std::optional<engine::Nm> end;
    for (const auto& piece : derived.resolved.pieces) {
        const auto& frame = derived.resolved.frames[piece.frame];
        const auto box = model::box_in_room(frame, piece.extents);
        const auto lo = box.lo[along], hi = box.hi[along];
        end = end ? std::max(*end, hi) : hi;
        if (piece.frame == original) begin = begin ? std::min(*begin, lo) : lo;
    }
    if (!begin) return origin;
    const auto unit = engine::bare_unit(derived.project->shown);
    const bool is_inch = unit == engine::LengthUnit::inch || unit == engine::LengthUnit::foot;
    const engine::Nm step =
        is_inch ? engine::Nm{engine::Length::nm_per_inch} : 10 * engine::Length::nm_per_mm;
    return (origin + *end - *begin + hand) / step * step;
}

void fill_for_frame(CopyForm& form, const Derived& derived) {
    const auto& frames = derived.project->frames;
    const auto* frame = by_name(frames, form.frame);
    if (frame == nullptr || form.of_frame == form.frame) return;
    form.of_frame = form.frame;
    const auto number = static_cast<std::size_t>(frame - frames.data());
    form.origin = frame->origin;
    form.origin[1] = engine::exact_text(engine::Length::from_nm(place_behind_all(derived, number)),
                                        derived.project->shown);
    form.copy = frame->name + " 2";
    for (int n = 3; by_name(frames, form.copy) != nullptr; ++n) {
        form.copy = frame->name + " " + std::to_string(n);
    }
}

std::string words_of(const CopyForm& form, const Derived& derived) {
    const auto next = model::apply(*derived.project, edit_of(form));
    if (!next) return {};
    const auto& copy = next->frames.back();
    const std::size_t dimensions = next->dimensions.size() - derived.project->dimensions.size();
    std::string words = "a frame of " + std::to_string(copy.members.size()) + " members more";
    if (dimensions > 0) words += ", " + std::to_string(dimensions) + " dimensions more";
    return words;
}

}  // namespace

CopyForm new_copy_form(const Derived& derived, const std::string& frame) {
    CopyForm form;
    form.frame = frame;
    if (frame.empty() && !derived.project->frames.empty()) {
        form.frame = derived.project->frames.front().name;
    }
    return form;
}

FormOutcome draw_copy_form(CopyForm& form,
                           const Derived& derived,
                           const model::Catalogue& catalogue) {
    const DialogScope dialog("Copy", "Copy the frame", scaled(560));
    if (!dialog) return {};
    draw_frames(form, *derived.project);
    fill_for_frame(form, derived);
    draw_form_line("name", form.copy, "of the copy", form.is_fresh);
    CheckedFields fields(derived);
    fields.draw_length("across, X", "place x", form.origin[0], "0");
    fields.draw_length("along, Y", "place y", form.origin[1], "0");
    fields.draw_length("up, Z", "place z", form.origin[2], "0");
    draw_radio_line<bool>("dimensions", form.has_own_dimensions,
                          {{false, "the same ones"}, {true, "ones of its own"}});
    draw_radio_line<bool>("hand", form.is_mirrored, {{false, "as it is"}, {true, "opposite"}});
    draw_wrapped(form.is_mirrored
                     ? "Left and right change places: every piece that has a left and a right "
                       "hand becomes the other one."
                     : "Every piece comes a second time, under the same marks.",
                 Type::small, colour::quiet);
    const auto edit = edit_of(form);
    update_trial(form.trial, derived, catalogue, form.copy, asked_by(form),
                 [&] { return engine::Result<Change>(change_of(edit)); });
    if (form.trial->words.empty()) form.trial->words = words_of(form, derived);
    if (!form.trial->place.empty()) {
        draw_wrapped("It then takes up " + form.trial->place + ".");
    }
    return end_frame_form(form, edit, "Copy it", fields.are_all_known());
}

}  // namespace editor
