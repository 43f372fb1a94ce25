#include "editor/places/assembly_list.h"

#include "editor/assembly_memo.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "model/assembly/step_words.h"

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
    std::vector<Index> pieces;
    for (const auto& move : order.steps[step].moves) {
        pieces.insert(pieces.end(), move.pieces.begin(), move.pieces.end());
    }
    selection = selection_of(*derived.project, derived.resolved, pieces);
}

std::string count_words(const model::AssemblyStep& step) {
    std::size_t pieces = 0;
    for (const auto& move : step.moves) {
        if (move.made_in == model::no_index) pieces += move.pieces.size();
    }
    if (pieces > 0) return std::to_string(pieces) + (pieces == 1 ? " piece" : " pieces");
    return std::to_string(step.sets.size()) + (step.sets.size() == 1 ? " joint" : " joints");
}

void draw_steps(const Derived& derived,
                const model::AssemblyOrder& order,
                MakeState& state,
                Selection& selection) {
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
        const auto count = count_words(step);
        const float beside = size_of_text(count, Type::small).x + scaled(12);
        const ImVec2 at = ImGui::GetCursorScreenPos();
        const auto title = text_to_fit(model::step_title(order, i), Type::text, width - beside);
        if (draw_row("step " + std::to_string(i + 1), title, state.step == i).clicked) {
            choose(derived, order, state, selection, i);
        }
        if (state.step == i && std::exchange(state.shows_step, false)) ImGui::SetScrollHereY();
        draw_text_at(*ImGui::GetWindowDrawList(),
                     {at.x + width - beside + scaled(8), at.y + scaled(2)}, count, Type::small,
                     colour::quiet);
    }
}

void draw_chosen(const Derived& derived,
                 const model::Catalogue& catalogue,
                 const model::AssemblyOrder& order,
                 std::size_t step) {
    const auto index = static_cast<Index>(step);
    draw_text(model::step_title(order, index), Type::strong);
    log_item("step", model::step_title(order, index));
    int number = 0;
    for (const auto& words :
         model::step_words(*derived.project, catalogue, derived.resolved, order, index)) {
        draw_wrapped(words.text);
        log_item("work " + std::to_string(++number), words.text);
    }
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

void draw_assembly_list(const Derived& derived,
                        const model::Catalogue& catalogue,
                        MakeState& state,
                        Selection& selection) {
    const auto& order = assembly_of(state.assembly, derived, catalogue).order;
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
        draw_steps(derived, order, state, selection);
    }
    draw_rule();
    const ChildScope chosen("chosen step", {0, 0});
    draw_chosen(derived, catalogue, order, state.step);
}

}  // namespace editor
