#include "editor/places/assembly_list.h"

#include "editor/assembly_memo.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

#include <algorithm>

namespace editor {
namespace {

using model::Index;

void choose(const Derived& derived,
            const model::AssemblyOrder& order,
            MakeState& state,
            Selection& selection,
            std::size_t step) {
    state.step = step;
    state.assembly->joint.reset();
    std::vector<Index> pieces;
    for (const auto& move : order.steps[step].moves) {
        pieces.insert(pieces.end(), move.pieces.begin(), move.pieces.end());
    }
    selection = selection_of(*derived.project, derived.resolved, pieces);
}

void draw_steps(const Derived& derived,
                const AssemblyMemo& memo,
                MakeState& state,
                Selection& selection) {
    const auto& order = memo.order;
    Index frame = model::no_index;
    for (Index i = 0; i < order.steps.size(); ++i) {
        const auto& step = order.steps[i];
        if (step.frame != frame) {
            frame = step.frame;
            if (frame < derived.project->frames.size()) {
                draw_text(derived.project->frames[frame].name, Type::strong);
            }
        }
        const IdScope id(static_cast<int>(i));
        const float width = ImGui::GetContentRegionAvail().x;
        const auto& count = memo.counts[i];
        const float beside = size_of_text(count, Type::small).x + scaled(12);
        const ImVec2 at = ImGui::GetCursorScreenPos();
        const auto title = text_to_fit(memo.titles[i], Type::text, width - beside);
        if (draw_row("step " + std::to_string(i + 1), title, state.step == i).clicked) {
            choose(derived, order, state, selection, i);
        }
        log_item("step " + std::to_string(i + 1) + " count", count);
        if (state.step == i && std::exchange(state.shows_step, false)) ImGui::SetScrollHereY();
        draw_text_at(*ImGui::GetWindowDrawList(),
                     {at.x + width - beside + scaled(8), at.y + scaled(2)}, count, Type::small,
                     colour::quiet);
    }
}

// "A1 + A7: pin 2 x sheet pin 1/8, set 2 x blind rivet 1/8, grip 4-4; long nose"
std::string joint_work(const model::StepJoint& joint) {
    std::string words = joint.marks + ": ";
    if (!joint.pins.empty()) words += joint.pins == "clamp" ? "clamp" : "pin " + joint.pins;
    if (!joint.pins.empty() && !joint.fasteners.empty()) words += ", ";
    if (!joint.fasteners.empty()) words += "set " + joint.fasteners;
    return words + (joint.note.empty() ? "" : "; " + joint.note);
}

Selection both_at(const Derived& derived, const model::StepJoint& joint) {
    const auto& meet = derived.resolved.joints[joint.joint].pieces;
    return selection_of(*derived.project, derived.resolved, {meet[0], meet[1]});
}

// A joint's row: clicked, it selects what meets there. True then.
bool draw_joint(const model::StepJoint& joint, bool is_chosen) {
    const IdScope id(joint.number);
    const auto name = "joint " + std::to_string(joint.number);
    const auto text = std::to_string(joint.number) + "   " + joint.members;
    const float width = ImGui::GetContentRegionAvail().x;
    const auto fitting = text_to_fit(text, Type::text, width - scaled(8));
    const bool is_clicked = draw_row(name, fitting, is_chosen).clicked;
    draw_hint(text);
    const auto words = joint_work(joint);
    draw_wrapped(words, Type::small, colour::quiet);
    log_item(name + " work", text + ": " + words);
    return is_clicked;
}

void draw_joints(const Derived& derived,
                 const StepText& text,
                 AssemblyMemo& memo,
                 Selection& selection) {
    for (std::size_t i = 0; i < text.joints.size(); ++i) {
        const auto both = both_at(derived, text.joints[i]);
        const bool is_chosen = memo.joint.value_or(i) == i && selection == both;
        if (draw_joint(text.joints[i], is_chosen)) {
            memo.joint = i;
            selection = both;
        }
        if (memo.joint != i || !std::exchange(memo.shows_joint, false)) continue;
        ImGui::SetScrollHereY();
    }
}

void draw_chosen(const Derived& derived,
                 const StepText& text,
                 AssemblyMemo& memo,
                 Selection& selection) {
    draw_text(text.title, Type::strong);
    log_item("step", text.title);
    int number = 0;
    for (const auto& words : text.lines) {
        draw_wrapped(words.text);
        log_item("work " + std::to_string(++number), words.text);
    }
    if (text.joints.empty()) return;
    draw_rule();
    draw_text("Joints of this step", Type::strong);
    draw_joints(derived, text, memo, selection);
    draw_wrapped("Keys: arrows down and up for the steps, right and left for the joints of one.",
                 Type::small, colour::quiet);
}

void draw_problems(const model::AssemblyOrder& order) {
    int number = 0;
    for (const auto& problem : order.problems) {
        const auto text =
            model::where_text(problem) + ": " + problem.what + ". Mend: " + problem.mend;
        draw_wrapped(text, Type::small, colour::amber);
        log_item("problem " + std::to_string(++number), text);
    }
}

}  // namespace

void choose_step(const Derived& derived,
                 const model::Catalogue& catalogue,
                 MakeState& state,
                 Selection& selection,
                 int by) {
    const auto& order = assembly_of(state.assembly, derived, catalogue).order;
    if (order.steps.empty()) return;
    const auto last = static_cast<std::ptrdiff_t>(order.steps.size()) - 1;
    const auto next =
        std::clamp<std::ptrdiff_t>(static_cast<std::ptrdiff_t>(state.step) + by, 0, last);
    choose(derived, order, state, selection, static_cast<std::size_t>(next));
    state.shows_step = true;
}

void choose_joint(const Derived& derived,
                  const model::Catalogue& catalogue,
                  MakeState& state,
                  Selection& selection,
                  int by) {
    const auto& order = assembly_of(state.assembly, derived, catalogue).order;
    if (order.steps.empty()) return;
    auto& memo = *state.assembly;
    state.step = std::min(state.step, order.steps.size() - 1);
    const auto& joints = step_text_of(memo, derived, catalogue, state.step).joints;
    if (joints.empty()) return;
    const auto last = static_cast<std::ptrdiff_t>(joints.size()) - 1;
    const std::ptrdiff_t from =
        memo.joint ? static_cast<std::ptrdiff_t>(*memo.joint) : (by > 0 ? -1 : last + 1);
    memo.joint = static_cast<std::size_t>(std::clamp<std::ptrdiff_t>(from + by, 0, last));
    selection = both_at(derived, joints[*memo.joint]);
    memo.shows_joint = true;
}

void draw_assembly_list(const Derived& derived,
                        const model::Catalogue& catalogue,
                        MakeState& state,
                        Selection& selection) {
    const auto& memo = assembly_of(state.assembly, derived, catalogue);
    const auto& order = memo.order;
    if (order.steps.empty()) {
        draw_wrapped("There is nothing to put together yet: lay out a frame first.", Type::text,
                     colour::quiet);
        return;
    }
    state.step = std::min(state.step, order.steps.size() - 1);
    draw_problems(order);
    const float room = ImGui::GetContentRegionAvail().y;
    const float row = ImGui::GetTextLineHeightWithSpacing() + scaled(4);
    const float wanted =
        row * static_cast<float>(order.steps.size() + derived.project->frames.size());
    {
        const ChildScope list("steps", {0, std::min(wanted + scaled(4), room * 0.45F)});
        draw_steps(derived, memo, state, selection);
    }
    draw_rule();
    const ChildScope chosen("chosen step", {0, 0});
    const auto& text = step_text_of(*state.assembly, derived, catalogue, state.step);
    draw_chosen(derived, text, *state.assembly, selection);
}

}  // namespace editor
