#include "editor/places/join_fields.h"

#include "editor/by_name.h"
#include "editor/dimension_values.h"
#include "editor/error_words.h"
#include "editor/join_choices.h"
#include "editor/kit/scopes.h"
#include "editor/kit/term.h"
#include "editor/kit/widgets.h"
#include "editor/node_bars.h"

#include <utility>

namespace editor {
namespace {

bool is_there(const model::Project& project, const JointName& joint) {
    const auto* frame = by_name(project.frames, joint.frame);
    return frame != nullptr && is_taken(*frame, joint.members[0]) &&
           is_taken(*frame, joint.members[1]);
}

std::optional<Change> note_change(const model::Project& project, const JoinTyping& typing) {
    if (!is_there(project, typing.joint)) return std::nullopt;
    auto entry = joint_entry(project, typing.joint);
    if (entry.note == typing.text) return std::nullopt;
    entry.note = typing.text;
    return joint_change(project, typing.joint.frame, entry, "Note on " + words_of(typing.joint));
}

std::string trouble_with_thickness(const Derived& derived, const std::string& text) {
    if (text.empty()) return {};
    const auto value = tried_length(derived, text);
    if (!value) return error_words(value.error(), text);
    return value->length > engine::Length{} ? "" : "a gusset is thicker than nothing";
}

std::string without_rim(const std::string& text) {
    const auto first = text.find_first_not_of(' ');
    if (first == std::string::npos) return {};
    return text.substr(first, text.find_last_not_of(' ') - first + 1);
}

std::optional<Change> thickness_change(const Derived& derived, JoinTyping& typing) {
    const std::string text = without_rim(typing.text);
    auto shop = derived.project->shop;
    if (text == shop.gusset_thickness) return std::nullopt;
    typing.trouble = trouble_with_thickness(derived, text);
    if (!typing.trouble.empty()) return std::nullopt;
    shop.gusset_thickness = text;
    return Change{.edits = {model::SetShop{std::move(shop)}},
                  .label = text.empty() ? "Gussets as thick as the bar" : "Gussets " + text};
}

struct FieldText {
    const char* name;
    const char* hint;
    std::string present;
};

std::optional<Change> draw_one(const Derived& derived,
                               const FieldText& it,
                               const JoinTyping& here,
                               JoinTyping& typing) {
    const bool is_typed = typing.field == here.field && typing.joint == here.joint;
    std::string text = is_typed ? typing.text : it.present;
    // Of another joint it is another field: what is half typed stays with its own.
    const IdScope id((here.joint.frame + '\n' + words_of(here.joint)).c_str());
    ImGui::AlignTextToFramePadding();
    draw_term(it.name, colour::quiet);
    ImGui::SameLine(scaled(104));
    const auto field = draw_field(it.name, text, {.hint = it.hint});
    std::optional<Change> change;
    if (field.active || field.changed || field.left) {
        if (!is_typed || typing.text != text) {
            typing = here;
            typing.text = text;
        }
        if (field.entered || field.left) change = take_typed_join(typing, derived);
    }
    if (typing.field != here.field || typing.joint != here.joint) return change;
    typing.is_drawn = true;
    if (!typing.trouble.empty()) draw_wrapped(typing.trouble, Type::small, colour::red);
    return change;
}

}  // namespace

std::optional<Change> take_typed_join(JoinTyping& typing, const Derived& derived) {
    std::optional<Change> change;
    if (typing.field == JoinTyping::Field::note) change = note_change(*derived.project, typing);
    if (typing.field == JoinTyping::Field::gusset_thickness) {
        typing.trouble.clear();
        change = thickness_change(derived, typing);
    }
    if (typing.trouble.empty()) typing = {};
    return change;
}

std::optional<Change> draw_note_field(const Derived& derived,
                                      const JointName& joint,
                                      JoinTyping& typing) {
    return draw_one(derived, {"Note", "to remember", joint_entry(*derived.project, joint).note},
                    {.field = JoinTyping::Field::note, .joint = joint}, typing);
}

std::optional<Change> draw_gusset_field(const Derived& derived, JoinTyping& typing) {
    return draw_one(derived,
                    {"Gusset sheet", "as thick as the bar", derived.project->shop.gusset_thickness},
                    {.field = JoinTyping::Field::gusset_thickness}, typing);
}

}  // namespace editor
