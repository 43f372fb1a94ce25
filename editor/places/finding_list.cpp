#include "editor/places/finding_list.h"

#include "editor/finding_groups.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

#include <algorithm>
#include <vector>

namespace editor {
namespace {

constexpr std::size_t most_cards = 40;  // beyond that nobody reads on

struct Shades {
    ImU32 ground;
    ImU32 edge;
    ImU32 text;
    const char* word;
};

Shades shades_of(model::Severity severity) {
    switch (severity) {
        case model::Severity::error:
            return {colour::red_ground, colour::red_edge, colour::red, "Wrong"};
        case model::Severity::warning:
            return {colour::amber_ground, colour::amber_edge, colour::amber, "Look at"};
        case model::Severity::note:
            break;
    }
    return {colour::note_ground, colour::line, colour::quiet, "Note"};
}

// "loose_end" is "loose end".
std::string words_of(std::string code) {
    std::replace(code.begin(), code.end(), '_', ' ');
    return code;
}

float height_of_wrapped(const std::string& text, Type type, float width) {
    const ImFont* face = font(type);
    return face->CalcTextSizeA(face->FontSize, 1.0e6F, width, text.c_str()).y;
}

void draw_card_text(
    ImDrawList& on, ImVec2 at, const std::string& text, Type type, ImU32 ink, float width) {
    const ImFont* face = font(type);
    on.AddText(face, face->FontSize, at, ink, text.c_str(), nullptr, width);
}

// Three paragraphs: what kind, where and what, and the mend.
struct CardText {
    std::string head;
    std::string what;
    std::string mend;
};

CardText text_of(const FindingGroup& group, const std::vector<model::Finding>& findings) {
    const auto& finding = findings[group.findings[0]];
    const std::string where = where_words(group, findings);
    return {std::string(shades_of(finding.severity).word) + ": " + words_of(finding.code),
            (where.empty() ? "" : where + " \xE2\x80\x94 ") + finding.what, finding.mend};
}

struct CardHeights {
    float head = 0.0F;
    float what = 0.0F;
    float mend = 0.0F;

    float whole() const { return head + what + mend + 2 * scaled(8); }
};

float room_in(float width) { return width - 2 * scaled(11); }

CardHeights heights_of(const CardText& text, float width) {
    const float room = room_in(width);
    return {height_of_wrapped(text.head, Type::strong, room) + scaled(2),
            height_of_wrapped(text.what, Type::small, room) + scaled(3),
            text.mend.empty() ? 0 : height_of_wrapped(text.mend, Type::small, room)};
}

// Gives whether it was clicked.
bool draw_card(const CardText& text,
               const Shades& shades,
               const std::string& name,
               bool is_chosen) {
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    const CardHeights heights = heights_of(text, width);
    const float room = room_in(width);
    const float x = at.x + (width - room) / 2;
    ImGui::InvisibleButton(name.c_str(), {width, heights.whole()});
    const bool hot = ImGui::IsItemHovered();
    const bool clicked = ImGui::IsItemClicked();
    log_item(name, text.head);
    ImDrawList& on = *ImGui::GetWindowDrawList();
    const ImVec2 end{at.x + width, at.y + heights.whole()};
    on.AddRectFilled(at, end, shades.ground, scaled(3));
    on.AddRect(at, end, is_chosen || hot ? colour::dye : shades.edge, scaled(3), 0,
               is_chosen ? scaled(2) : 1.0F);
    float y = at.y + scaled(8);
    draw_card_text(on, {x, y}, text.head, Type::strong, shades.text, room);
    y += heights.head;
    draw_card_text(on, {x, y}, text.what, Type::small, colour::ink, room);
    y += heights.what;
    draw_card_text(on, {x, y}, text.mend, Type::small, colour::dye, room);
    return clicked;
}

void draw_heading(std::size_t count) {
    draw_text(count == 1 ? "One finding" : std::to_string(count) + " findings", Type::strong);
    ImGui::SameLine();
    draw_text("click to see where", Type::small, colour::quiet);
}

}  // namespace

void draw_finding_list(const Derived& derived, Selection& selection) {
    const auto& findings = derived.findings;
    if (findings.empty()) {
        draw_text("Nothing to look at", Type::small, colour::quiet);
        return;
    }
    draw_heading(findings.size());
    const auto& groups = derived.finding_groups;
    for (std::size_t i = 0; i < std::min(most_cards, groups.size()); ++i) {
        const auto& group = groups[i];
        const Shades shades = shades_of(findings[group.findings[0]].severity);
        const bool is_chosen = !group.concerns.empty() && selection.subjects == group.concerns;
        const std::string name = "finding " + std::to_string(i + 1);
        if (draw_card(text_of(group, findings), shades, name, is_chosen)) {
            selection = selection_of_subjects(*derived.project, derived.resolved, group.concerns);
        }
    }
    if (groups.size() > most_cards) {
        draw_text("and " + std::to_string(groups.size() - most_cards) + " more", colour::quiet);
    }
}

float height_of_findings(const Derived& derived, float width) {
    const float line = ImGui::GetTextLineHeightWithSpacing();
    float height = line;
    const auto& groups = derived.finding_groups;
    for (std::size_t i = 0; i < std::min(most_cards, groups.size()); ++i) {
        const CardText text = text_of(groups[i], derived.findings);
        height += heights_of(text, width).whole() + ImGui::GetStyle().ItemSpacing.y;
    }
    return groups.size() > most_cards ? height + line : height;
}

}  // namespace editor
