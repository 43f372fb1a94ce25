#include "editor/places/spoil_talk.h"

#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "editor/places/bar_text.h"
#include "model/buying/spoiled.h"
#include "model/schedule/tables.h"

namespace editor {
namespace {

std::string kept_from(const Derived& derived) {
    return model::length_text(*derived.project,
                              engine::Length::from_nm(derived.resolved.shop.least_offcut));
}

// How long the bad piece is, and the button that keeps it.
std::optional<Change> draw_bad_piece(const CutHands& hands, SpoilTalk& talk) {
    std::optional<Change> change;
    ImGui::AlignTextToFramePadding();
    draw_text("the bad piece is", colour::quiet);
    ImGui::SameLine();
    const auto field =
        draw_field("bad piece", talk.typed, {.hint = "how long", .width = scaled(96)});
    if (field.changed) talk.trouble.clear();
    ImGui::SameLine();
    const bool asks = draw_button("keep bad piece", {.text = "Lay it on the rack"});
    draw_hint("As an offcut, from which shorter pieces are cut");
    if ((asks || field.entered) && !talk.typed.empty())
        change = bad_piece_kept(hands.derived, talk);
    ImGui::SameLine();
    if (draw_button("close spoiled", {.text = "It is scrap", .weight = Weight::link}) || change)
        hands.state.spoiled.reset();
    return change;
}

}  // namespace

std::optional<Change> bad_piece_kept(const Derived& derived, SpoilTalk& talk) {
    const auto kept =
        model::bad_piece_kept(*derived.project, derived.resolved, talk.piece, talk.typed);
    talk.trouble = kept ? std::string() : engine::to_text(kept.error());
    return kept ? std::optional{change_of(*kept)} : std::nullopt;
}

std::optional<Change> draw_spoil_talk(const CutHands& hands) {
    const auto& derived = hands.derived;
    if (!hands.state.spoiled || !model::is_spoiled(derived.saw, hands.state.spoiled->piece))
        return std::nullopt;
    auto& talk = *hands.state.spoiled;
    draw_rule();
    draw_wrapped(talk.piece.mark + " is spoiled; it should be " +
                     model::length_text(*derived.project, talk.piece.length) + " long.",
                 Type::strong);
    const auto words = model::words_of_cutting_again(*derived.project, derived.saw, talk.piece,
                                                     bars_currency(derived));
    draw_wrapped(words);
    log_item("cut again", words);
    draw_wrapped(
        "Measure the bad piece: it is kept as an offcut from " + kept_from(derived) + " on.",
        Type::small, colour::quiet);
    auto change = draw_bad_piece(hands, talk);
    if (!hands.state.spoiled) return change;
    if (!talk.trouble.empty()) draw_wrapped(talk.trouble, Type::small, colour::red);
    log_item("bad piece trouble", talk.trouble);
    return change;
}

}  // namespace editor
