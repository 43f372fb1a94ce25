#include "editor/places/spoil_talk.h"

#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "model/buying/comparison.h"
#include "model/buying/spoiled.h"
#include "model/schedule/tables.h"

namespace editor {
namespace {

std::string currency_of(const Derived& derived) {
    if (derived.prices == nullptr) return derived.project->shop.currency;
    const auto from = model::chosen_supplier(*derived.project, *derived.prices);
    const bool has_own = from.prices != nullptr && !from.prices->terms.currency.empty();
    return has_own ? from.prices->terms.currency : derived.project->shop.currency;
}

std::string kept_from(const Derived& derived) {
    return model::length_text(*derived.project,
                              engine::Length::from_nm(derived.resolved.shop.least_offcut));
}

// How long the bad piece is, and the button that keeps it.
std::optional<Change> draw_bad_piece(const CutHands& hands, const model::SpoiledPiece& piece) {
    auto& talk = hands.state.spoiled;
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
    if ((asks || field.entered) && !talk.typed.empty()) {
        const auto kept = model::bad_piece_kept(*hands.derived.project, hands.derived.resolved,
                                                piece, talk.typed);
        if (kept) change = change_of(*kept);
        talk.trouble = kept ? std::string() : engine::to_text(kept.error());
    }
    ImGui::SameLine();
    if (draw_button("close spoiled", {.text = "It is scrap", .weight = Weight::link}) || change)
        talk = {};
    return change;
}

}  // namespace

std::optional<Change> draw_spoil_talk(const CutHands& hands) {
    auto& talk = hands.state.spoiled;
    if (talk.stock.empty()) return std::nullopt;
    const auto& derived = hands.derived;
    const model::SpoiledPiece piece{talk.stock, talk.mark, talk.length};
    if (!model::is_spoiled(*derived.project, derived.saw, piece)) return std::nullopt;
    draw_rule();
    draw_wrapped(talk.mark + " is spoiled; it should be " +
                     model::length_text(*derived.project, talk.length) + " long.",
                 Type::strong);
    const auto words =
        model::words_of_cutting_again(*derived.project, derived.saw, piece, currency_of(derived));
    draw_wrapped(words);
    log_item("cut again", words);
    draw_wrapped(
        "Measure the bad piece: it is kept as an offcut from " + kept_from(derived) + " on.",
        Type::small, colour::quiet);
    auto change = draw_bad_piece(hands, piece);
    if (!talk.trouble.empty()) draw_wrapped(talk.trouble, Type::small, colour::red);
    log_item("bad piece trouble", talk.trouble);
    return change;
}

}  // namespace editor
