#include "editor/kit/hover_help.h"

#include <imgui_internal.h>

#include <algorithm>

namespace editor {
namespace {

constexpr double moment = 0.35;    // seconds
constexpr float low_item = 64.0F;  // of a higher one the pointer is far from its end

// What the pointer rests on: known by its window and its place there.
struct Rest {
    ImGuiID window = 0;
    ImVec2 at{0, 0};
    double since = 0.0;
    int frame = -1;
    int awaited = -1;  // the frame in which it was not long enough
};

Rest& rest() {
    static Rest it;  // there is one pointer
    return it;
}

void come_to_rest(Rest& it) {
    const int frame = ImGui::GetFrameCount();
    const ImGuiID window = ImGui::GetCurrentWindow()->ID;
    const ImVec2 at = ImGui::GetItemRectMin();
    const double now = ImGui::GetTime();
    const bool is_same = (it.frame == frame || it.frame == frame - 1) && it.window == window &&
                         it.at.x == at.x && it.at.y == at.y && it.since <= now;
    if (!is_same) it = {window, at, now, frame, it.awaited};
    it.frame = frame;
}

ImVec2 place_beside_item(ImVec2 size) {
    const ImVec2 screen = ImGui::GetIO().DisplaySize;
    const ImVec2 least = ImGui::GetItemRectMin();
    const ImVec2 most = ImGui::GetItemRectMax();
    const ImVec2 mouse = ImGui::GetIO().MousePos;
    const bool is_low = most.y - least.y <= scaled(low_item);
    const float gap = scaled(5);
    const float below = (is_low ? most.y : mouse.y + scaled(18)) + gap;
    const float above = (is_low ? least.y : mouse.y) - gap - size.y;
    const float x = std::clamp(least.x, 0.0F, std::max(0.0F, screen.x - size.x));
    return {x, below + size.y <= screen.y || above < 0.0F ? below : above};
}

}  // namespace

bool is_typing() { return ImGui::GetIO().WantTextInput; }

bool has_rested_on_item() {
    if (!ImGui::IsItemHovered(ImGuiHoveredFlags_AllowWhenDisabled)) return false;
    auto& it = rest();
    come_to_rest(it);
    if (is_typing() || ImGui::IsAnyMouseDown()) {
        it.since = ImGui::GetTime();
        return false;
    }
    if (ImGui::GetTime() - it.since >= moment) return true;
    it.awaited = it.frame;
    return false;
}

bool is_help_awaited() { return rest().awaited == ImGui::GetFrameCount(); }

HelpScope::HelpScope(ImVec2 content) {
    const ImVec2 padding = ImGui::GetStyle().WindowPadding;
    ImGui::SetNextWindowPos(
        place_beside_item({content.x + 2 * padding.x, content.y + 2 * padding.y}));
    ImGui::BeginTooltip();
}

}  // namespace editor
