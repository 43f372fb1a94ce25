#include "editor/places/lay_out.h"

#include "editor/kit/widgets.h"
#include "editor/places/dimension_list.h"
#include "editor/places/fastener_choice.h"
#include "editor/places/finding_list.h"
#include "editor/places/frame_list.h"
#include "editor/places/tape_choice.h"

#include <algorithm>

namespace editor {
namespace {

constexpr float heading_height = 22.0F;
constexpr float dimensions_in_sight = 6.0F;  // before the other sections get more than their least
constexpr float least_list = 46.0F;          // of those, where there is more to see

struct Heading {
    LayOutSection section;
    const char* name;
    std::string text;
    float width = 0.0F;  // 0: all of the line
};

// A triangle that points down where the section is open.
void draw_fold_mark(ImVec2 at, bool is_folded, ImU32 ink) {
    const float s = scaled(3.5F);
    ImDrawList& on = *ImGui::GetWindowDrawList();
    if (is_folded) {
        on.AddTriangleFilled({at.x - s * 0.7F, at.y - s}, {at.x + s, at.y},
                             {at.x - s * 0.7F, at.y + s}, ink);
    } else {
        on.AddTriangleFilled({at.x - s, at.y - s * 0.7F}, {at.x + s, at.y - s * 0.7F},
                             {at.x, at.y + s}, ink);
    }
}

// Clicking it folds the section, and unfolds it again.
void draw_heading(const Heading& heading, LayOutSections& sections) {
    auto& folded = sections.folded[static_cast<std::size_t>(heading.section)];
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float room = ImGui::GetContentRegionAvail().x;
    const float width = heading.width > 0.0F ? std::min(heading.width, room) : room;
    if (ImGui::InvisibleButton(heading.name, {width, scaled(heading_height)})) folded = !folded;
    const bool is_hot = ImGui::IsItemHovered();
    log_item(heading.name, folded ? "folded" : "open");
    draw_hint(folded ? "Show what is below" : "Fold it, for more room for the others");
    const ImU32 ink = is_hot ? colour::dye : colour::ink;
    draw_fold_mark({at.x + scaled(5), at.y + scaled(heading_height / 2)}, folded,
                   is_hot ? colour::dye : colour::quiet);
    draw_text_at(*ImGui::GetWindowDrawList(), {at.x + scaled(16), at.y + scaled(2)},
                 text_to_fit(heading.text, Type::strong, width - scaled(16)), Type::strong, ink);
}

void draw_line_above() {
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float y = at.y - ImGui::GetStyle().ItemSpacing.y / 2;
    ImGui::GetWindowDrawList()->AddLine({at.x, y}, {at.x + ImGui::GetContentRegionAvail().x, y},
                                        colour::line, scaled(1));
}

SectionWishes wishes_of(const Area& area, const Derived& derived, const LayOutState& state) {
    const auto& sections = state.sections;
    const float width = area.width - scaled(32);
    SectionWishes wishes{.least = scaled(least_list)};
    if (!sections.is_folded(LayOutSection::dimensions)) {
        wishes.dimensions = std::max(sections.dimensions_content, height_of_dimension());
        wishes.dimensions_first = dimensions_in_sight * height_of_dimension();
    }
    if (!derived.findings.empty() && !sections.is_folded(LayOutSection::findings)) {
        const auto height = height_of_findings(derived, state.cards, width);
        wishes.findings = height.folded + scaled(6);
        wishes.findings_open = height.whole + scaled(6);
    }
    const bool has_frames = !derived.project->frames.empty();
    if (has_frames && !sections.is_folded(LayOutSection::made_of)) {
        wishes.made_of_least = ImGui::GetFrameHeightWithSpacing() + height_of_first_stock();
        wishes.made_of =
            ImGui::GetFrameHeightWithSpacing() + height_of_frames(derived, width) + scaled(6);
    }
    return wishes;
}

// Below the headings, and with the space behind each list.
float room_for_lists(const Derived& derived, const SectionWishes& wishes) {
    const float spacing = ImGui::GetStyle().ItemSpacing.y;
    const float headings = derived.project->frames.empty() ? 2.0F : 3.0F;
    float room = ImGui::GetContentRegionAvail().y - headings * (scaled(heading_height) + spacing);
    for (const float wish : {wishes.dimensions, wishes.findings, wishes.made_of}) {
        if (wish > 0.0F) room -= spacing;
    }
    return std::max(0.0F, room);
}

struct LayOutHands {
    const Derived& derived;
    const model::Catalogue& catalogue;
    LayOutState& state;
};

std::optional<Change> draw_dimensions(LayOutHands& hands, float height) {
    auto& state = hands.state;
    const float width = size_of_text("Dimensions", Type::strong).x + scaled(24);
    draw_heading({LayOutSection::dimensions, "fold dimensions", "Dimensions", width},
                 state.sections);
    ImGui::SameLine();
    auto change = draw_tape_choice(hands.derived.project->shown);
    if (height <= 0.0F) return change;
    const ChildScope list("stated", {0, height});
    const float top = ImGui::GetCursorPosY();
    keep_first(change, draw_dimension_list(hands.derived, state.hand, state.selection, state.bands,
                                           state.unfolded, state.dialog));
    state.sections.dimensions_content = ImGui::GetCursorPosY() - top;
    return change;
}

std::optional<Change> draw_findings(LayOutHands& hands, float height) {
    auto& state = hands.state;
    const std::string words = count_words(hands.derived.summary);
    draw_line_above();
    draw_heading({LayOutSection::findings, "fold findings",
                  words.empty() ? std::string("Nothing to mend") : words},
                 state.sections);
    log_item("findings heading", words);
    if (height <= 0.0F) return std::nullopt;
    const ChildScope list("found", {0, height});
    return draw_finding_list(
        hands.derived, state.cards, state.selection,
        {hands.catalogue, state.mends, state.dialog, state.place, state.bands});
}

std::optional<Change> draw_made_of(LayOutHands& hands, float height) {
    auto& state = hands.state;
    const auto pieces = hands.derived.resolved.pieces.size();
    draw_line_above();
    draw_heading({LayOutSection::made_of, "fold made of",
                  "Made of " + std::to_string(pieces) + (pieces == 1 ? " piece" : " pieces")},
                 state.sections);
    if (height <= 0.0F) return std::nullopt;
    const ChildScope list("made of", {0, height});
    auto change = draw_fastener_choice(hands.derived, hands.catalogue);
    keep_first(change, draw_frame_list(hands.derived, hands.catalogue, state.selection,
                                       state.stock_filter, state.dialog));
    return change;
}

}  // namespace

std::optional<Change> draw_lay_out(const Area& area,
                                   const Derived& derived,
                                   const model::Catalogue& catalogue,
                                   LayOutState state) {
    const PanelScope panel("Lay out", area,
                           ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse);
    LayOutHands hands{derived, catalogue, state};
    const auto wishes = wishes_of(area, derived, state);
    const auto heights = section_heights(wishes, room_for_lists(derived, wishes));
    auto change = draw_dimensions(hands, heights.dimensions);
    keep_first(change, draw_findings(hands, heights.findings));
    if (!derived.project->frames.empty()) keep_first(change, draw_made_of(hands, heights.made_of));
    return change;
}

}  // namespace editor
