#include "editor/places/spoil_talk.h"

#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "editor/places/bar_text.h"
#include "model/buying/spoiled.h"
#include "model/resolve/finding.h"
#include "model/schedule/tables.h"

namespace editor {
namespace {

std::string kept_from(const Derived& derived) {
    return model::length_in_words(engine::Length::from_nm(derived.resolved.shop.least_offcut),
                                  derived.project->shown);
}

// It lies on the rack or in the scrap: where it is cut again too, nothing is left to say.
void give_place(SawListState& state) {
    state.spoiled->has_place = true;
    if (state.spoiled->is_cut_again) state.spoiled.reset();
}

std::optional<Change> take_answer(SawListState& state, const engine::Result<model::Edit>& answer) {
    state.spoiled->trouble = answer ? std::string() : engine::to_text(answer.error());
    if (!answer) return std::nullopt;
    give_place(state);
    return change_of(*answer);
}

void draw_cutting_again(const CutHands& hands, const SpoilTalk& talk) {
    const auto& derived = hands.derived;
    draw_wrapped(talk.piece.mark + " is spoiled; it should be " +
                     model::length_text(*derived.project, talk.piece.length) + " long.",
                 Type::strong);
    const auto words = model::words_of_cutting_again(*derived.project, derived.saw, talk.piece,
                                                     bars_currency(derived));
    draw_wrapped(words);
    log_item("cut again", words);
}

// How long the bad piece is, and the button that keeps it.
std::optional<Change> draw_bad_piece(const CutHands& hands, SpoilTalk& talk) {
    const auto measure =
        "Measure the bad piece: what lies behind it on its bar goes by that, and "
        "it is kept as an offcut where it is " +
        kept_from(hands.derived) + " or longer.";
    draw_wrapped(measure, Type::small, colour::quiet);
    log_item("measure bad piece", measure);
    ImGui::AlignTextToFramePadding();
    draw_text("the bad piece is", colour::quiet);
    ImGui::SameLine();
    const auto field =
        draw_field("bad piece", talk.typed, {.hint = "how long", .width = scaled(96)});
    if (field.changed) talk.trouble.clear();
    ImGui::SameLine();
    const bool asks = draw_button("keep bad piece", {.text = "Lay it on the rack"});
    draw_hint("As an offcut, from which shorter pieces are cut");
    ImGui::SameLine();
    const bool is_scrap =
        draw_button("close spoiled", {.text = "It is scrap", .weight = Weight::link});
    const auto trouble = talk.trouble;
    std::optional<Change> change;
    if (is_scrap) {
        change = bad_piece_scrapped(hands.derived, hands.state);
    } else if ((asks || field.entered) && !talk.typed.empty()) {
        change = bad_piece_kept(hands.derived, hands.state);
    }
    if (!trouble.empty()) draw_wrapped(trouble, Type::small, colour::red);
    log_item("bad piece trouble", trouble);
    return change;
}

// Once, where it would else be said out of sight.
void scroll_to(SpoilTalk& talk) {
    if (talk.was_shown) return;
    talk.was_shown = true;
    const float top = ImGui::GetWindowPos().y;
    const bool is_in_sight = ImGui::GetItemRectMin().y >= top &&
                             ImGui::GetItemRectMax().y <= top + ImGui::GetWindowHeight();
    if (!is_in_sight) ImGui::SetScrollHereY(0.5F);
}

}  // namespace

std::optional<Change> bad_piece_kept(const Derived& derived, SawListState& state) {
    const auto& talk = *state.spoiled;
    return take_answer(
        state, model::bad_piece_kept(*derived.project, derived.resolved, talk.piece, talk.typed));
}

std::optional<Change> bad_piece_scrapped(const Derived& derived, SawListState& state) {
    const auto& talk = *state.spoiled;
    if (talk.typed.empty()) {
        give_place(state);
        return std::nullopt;
    }
    return take_answer(state, model::bad_piece_measured(*derived.project, derived.resolved,
                                                        talk.piece, talk.typed));
}

bool is_talked_of(const SawListState& state, const model::SawCut& cut) {
    return state.spoiled && cut.place == state.spoiled->piece.place &&
           cut.state == model::CutState::spoiled;
}

std::optional<Change> draw_spoil_talk(const CutHands& hands) {
    auto& state = hands.state;
    if (!state.spoiled || !model::is_spoiled(hands.derived.saw, state.spoiled->piece))
        return std::nullopt;
    std::optional<Change> change;
    ImGui::BeginGroup();
    auto& talk = *state.spoiled;
    if (!talk.is_cut_again) draw_cutting_again(hands, talk);
    if (!talk.has_place) {
        change = draw_bad_piece(hands, talk);
    } else if (draw_button("close talk", {.text = "Say it no more", .weight = Weight::link})) {
        state.spoiled.reset();
    }
    ImGui::EndGroup();
    if (state.spoiled) scroll_to(*state.spoiled);
    return change;
}

}  // namespace editor
