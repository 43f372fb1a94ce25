#include "editor/places/finding_list.h"

#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

#include <algorithm>
#include <numeric>
#include <vector>

namespace editor {
namespace {

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

std::vector<std::size_t> worst_first(const std::vector<model::Finding>& findings) {
    std::vector<std::size_t> order(findings.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return findings[a].severity > findings[b].severity;
    });
    return order;
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

// Three paragraphs: what kind and where, what, and the mend.
void draw_card(const model::Finding& finding,
               const std::string& name,
               bool is_chosen,
               Selection& selection,
               const Derived& derived) {
    const Shades shades = shades_of(finding.severity);
    const float pad = scaled(11);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    const float room = width - 2 * pad;
    const std::string where = model::where_text(finding);
    const std::string head = std::string(shades.word) + ": " + words_of(finding.code);
    const std::string what = (where.empty() ? "" : where + " \xE2\x80\x94 ") + finding.what;
    const float head_height = height_of_wrapped(head, Type::strong, room) + scaled(2);
    const float what_height = height_of_wrapped(what, Type::small, room);
    const float mend_height =
        finding.mend.empty() ? 0 : height_of_wrapped(finding.mend, Type::small, room) + scaled(3);
    const float height = head_height + what_height + mend_height + 2 * scaled(8);
    ImGui::InvisibleButton(name.c_str(), {width, height});
    const bool hot = ImGui::IsItemHovered();
    if (ImGui::IsItemClicked())
        selection = selection_of(*derived.project, derived.resolved, finding);
    log_item(name, finding.code);
    ImDrawList& on = *ImGui::GetWindowDrawList();
    const ImVec2 end{at.x + width, at.y + height};
    on.AddRectFilled(at, end, shades.ground, scaled(3));
    on.AddRect(at, end, is_chosen || hot ? colour::dye : shades.edge, scaled(3), 0,
               is_chosen ? scaled(2) : 1.0F);
    float y = at.y + scaled(8);
    draw_card_text(on, {at.x + pad, y}, head, Type::strong, shades.text, room);
    y += head_height;
    draw_card_text(on, {at.x + pad, y}, what, Type::small, colour::ink, room);
    y += what_height + scaled(3);
    draw_card_text(on, {at.x + pad, y}, finding.mend, Type::small, colour::dye, room);
}

}  // namespace

void draw_finding_list(const Derived& derived, Selection& selection) {
    const auto& findings = derived.findings;
    if (findings.empty()) {
        draw_text("Nothing to look at", Type::small, colour::quiet);
        return;
    }
    const std::string count = std::to_string(findings.size());
    draw_text(findings.size() == 1 ? "One finding" : count + " findings", Type::strong);
    ImGui::SameLine();
    draw_text("click to see where", Type::small, colour::quiet);
    constexpr std::size_t most = 60;  // beyond that nobody reads on
    int number = 0;
    for (const std::size_t i : worst_first(findings)) {
        const auto& finding = findings[i];
        if (static_cast<std::size_t>(number) == most) {
            draw_text("and " + std::to_string(findings.size() - most) + " more", colour::quiet);
            break;
        }
        const bool is_chosen = !finding.concerns.empty() && selection.subjects == finding.concerns;
        draw_card(finding, "finding " + std::to_string(++number), is_chosen, selection, derived);
    }
}

}  // namespace editor
