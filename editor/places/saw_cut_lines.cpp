#include "editor/places/saw_cut_lines.h"

#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "model/schedule/tables.h"

namespace editor {
namespace {

using model::CutState;
using model::SawTick;

std::string cut_words(const model::SawCut& cut, const Derived& derived) {
    const auto& project = *derived.project;
    const std::string hand = cut.hand == model::Hand::opposite ? " opp." : "";
    return cut.mark + hand + "  " + model::length_text(project, cut.length);
}

// From the bar's datum end.
std::string from_to_words(const model::SawCut& cut, const Derived& derived) {
    const auto& project = *derived.project;
    return "from " + model::length_text(project, cut.start) + " to " +
           model::length_text(project, model::end_of(cut));
}

std::optional<Change> draw_cut_box(const std::string& name,
                                   const model::SawBar& bar,
                                   const SawTick& tick,
                                   const CutHands& hands) {
    const auto& cut = bar.cuts[tick.cut];
    const auto words = cut_words(cut, hands.derived);
    if (cut.state == CutState::spoiled) {
        ImGui::AlignTextToFramePadding();
        draw_text(words + "  spoiled", colour::quiet);
        log_item(name + " is", words);
        return std::nullopt;
    }
    bool is_made = cut.state == CutState::cut;
    std::optional<Change> change;
    if (draw_check(name, is_made, words)) {
        const auto to = is_made ? CutState::cut : CutState::planned;
        change = ticked(hands.derived, hands.catalogue, hands.state, {tick}, to);
    }
    draw_hint(tick_hint(hands.derived, {tick}, is_made));
    log_item(name + " is", words);
    return change;
}

std::optional<Change> draw_spoiled_link(const std::string& name,
                                        const model::SawCut& cut,
                                        const SawTick& tick,
                                        const CutHands& hands) {
    const bool is_spoiled = cut.state == CutState::spoiled;
    const std::string link = is_spoiled ? "good after all" : "spoiled";
    std::optional<Change> change;
    if (draw_button(name + " " + link, {.text = link, .weight = Weight::link})) {
        change = is_spoiled
                     ? ticked(hands.derived, hands.catalogue, hands.state, {tick}, CutState::cut)
                     : spoiled(hands.derived, hands.catalogue, hands.state, tick);
    }
    draw_hint(is_spoiled ? "It can be used, and comes back from the rack if it lies there"
                         : "Cut wrong: it is planned again from what is left");
    return change;
}

}  // namespace

std::optional<Change> draw_cut(const model::SawBar& bar, std::size_t index, const CutHands& hands) {
    const auto& cut = bar.cuts[index];
    const IdScope id(static_cast<int>(index));
    const std::string name =
        "bar " + std::to_string(bar.number) + " cut " + std::to_string(index + 1);
    const SawTick tick{bar.number, index};
    auto change = draw_cut_box(name, bar, tick, hands);
    ImGui::SameLine();
    ImGui::AlignTextToFramePadding();
    draw_text(from_to_words(cut, hands.derived), Type::small, colour::quiet);
    ImGui::SameLine();
    if (cut.state == CutState::cut && cut.piece == model::no_index) {
        draw_text("fits nothing now", Type::small, colour::amber);
        draw_hint("Prove says what becomes of it");
        ImGui::SameLine();
    }
    if (auto link = draw_spoiled_link(name, cut, tick, hands)) change = std::move(link);
    return change;
}

}  // namespace editor
