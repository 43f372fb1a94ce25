#include "editor/places/fastener_choice.h"

#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

#include <algorithm>
#include <string>

namespace editor {
namespace {

constexpr const char* by_rule = "rivet to suit the thickness";

std::optional<Change> draw_row_of(const std::string& id, const model::Shop& shop) {
    const std::string text = id.empty() ? by_rule : id;
    if (!draw_row(text, text, shop.fastener == id).clicked) return std::nullopt;
    auto changed = shop;
    changed.fastener = id;
    return Change{.edits = {model::SetShop{changed}}, .label = "Fasten with " + text};
}

std::optional<Change> draw_list(const model::Catalogue& catalogue,
                                const model::Shop& shop,
                                float room) {
    std::optional<Change> change;
    const ChildScope list("fasteners", {scaled(260), std::min(scaled(320), room)});
    keep_first(change, draw_row_of({}, shop));
    draw_text("Blind rivets", Type::small, colour::quiet);
    for (const auto& rivet : catalogue.rivets) keep_first(change, draw_row_of(rivet.id, shop));
    draw_text("Screws", Type::small, colour::quiet);
    for (const auto& screw : catalogue.screws) keep_first(change, draw_row_of(screw.id, shop));
    return change;
}

}  // namespace

std::optional<Change> draw_fastener_choice(const Derived& derived,
                                           const model::Catalogue& catalogue) {
    const auto& shop = derived.project->shop;
    ImGui::AlignTextToFramePadding();
    draw_text("Fastened with");
    ImGui::SameLine();
    const std::string text = shop.fastener.empty() ? by_rule : shop.fastener;
    const float width = ImGui::GetContentRegionAvail().x;
    if (draw_button("Fastener", {.text = text_with_arrow(text, width), .width = width})) {
        ImGui::OpenPopup("Fastener list");
    }
    const float room = popup_room();
    const PopupScope open("Fastener list");
    if (!open) return std::nullopt;
    auto change = draw_list(catalogue, shop, room);
    if (change) ImGui::CloseCurrentPopup();
    return change;
}

}  // namespace editor
