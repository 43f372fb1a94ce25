#include "editor/kit/scopes.h"

#include "editor/keys.h"

#include <imgui_internal.h>

#include <algorithm>

namespace editor {
namespace {

constexpr ImGuiWindowFlags fixed_panel = ImGuiWindowFlags_NoTitleBar | ImGuiWindowFlags_NoMove |
                                         ImGuiWindowFlags_NoResize | ImGuiWindowFlags_NoCollapse |
                                         ImGuiWindowFlags_NoSavedSettings;

// Under the last item, or above it where a popup has more room and needs it.
bool goes_up() {
    const float below = ImGui::GetIO().DisplaySize.y - ImGui::GetItemRectMax().y;
    return below < scaled(400) && ImGui::GetItemRectMin().y > below;
}

float whole_room() {
    const float below = ImGui::GetIO().DisplaySize.y - ImGui::GetItemRectMax().y;
    return std::max(scaled(40), goes_up() ? ImGui::GetItemRectMin().y : below);
}

void place_popup() {
    const ImVec2 screen = ImGui::GetIO().DisplaySize;
    const ImVec2 least = ImGui::GetItemRectMin();
    const ImVec2 most = ImGui::GetItemRectMax();
    const bool is_right = least.x + scaled(340) > screen.x;
    ImGui::SetNextWindowSizeConstraints({0, 0}, {screen.x, whole_room()});
    ImGui::SetNextWindowPos({is_right ? most.x : least.x, goes_up() ? least.y : most.y},
                            ImGuiCond_Always, {is_right ? 1.0F : 0.0F, goes_up() ? 1.0F : 0.0F});
}

bool begin_popup(const char* name) {
    place_popup();
    return ImGui::BeginPopup(name);
}

constexpr float most_of_screen = 0.9F;
constexpr const char* fields_name = "fields";

// How high they were in the frame before: the library makes no child as high as its content.
struct ScrolledFields {
    bool are_open = false;
    float height = 0.0F;   // of the child
    float content = 0.0F;  // of what is in it
};

ScrolledFields& scrolled_fields() {
    static ScrolledFields fields;  // a dialog is alone on the screen
    return fields;
}

void begin_scrolled_fields() {
    auto& fields = scrolled_fields();
    if (ImGui::IsWindowAppearing()) fields = {};
    const auto* dialog = ImGui::GetCurrentWindow();
    const float beside = dialog->ContentSize.y - fields.height;
    const float room = ImGui::GetIO().DisplaySize.y * most_of_screen - 2 * dialog->WindowPadding.y -
                       std::max(0.0F, beside);
    fields.height = std::max(scaled(80), std::min(room, fields.content));
    // Columns lie where they do without it; at the right a dialog shows nothing in half its
    // padding.
    const float padded = dialog->WindowPadding.x;
    ImGui::SetCursorPosX(0);
    const StyleScope padding(ImGuiStyleVar_WindowPadding, ImVec2(padded, 0));
    ImGui::BeginChild(fields_name, {dialog->Size.x - padded / 2, fields.height}, false,
                      ImGuiWindowFlags_AlwaysUseWindowPadding);
    fields.are_open = true;
}

constexpr int frames_to_settle = 5;  // until a new dialog has the size of what it holds

bool is_settled(const ImGuiWindow* dialog) {
    if (dialog == nullptr || !dialog->WasActive) return false;
    const auto& open = ImGui::GetCurrentContext()->OpenPopupStack;
    return std::any_of(open.begin(), open.end(), [&](const ImGuiPopupData& one) {
        return one.Window == dialog &&
               ImGui::GetFrameCount() > one.OpenFrameCount + frames_to_settle;
    });
}

// In the middle; later its top stays, so that a line that comes or goes within it moves nothing
// above away from below the mouse. It goes up only where it would end too low.
void place_dialog(const char* name) {
    const ImVec2 screen = ImGui::GetIO().DisplaySize;
    const auto* dialog = ImGui::FindWindowByName(name);
    if (!is_settled(dialog)) {
        ImGui::SetNextWindowPos({screen.x / 2, screen.y * 0.46F}, ImGuiCond_Always, {0.5F, 0.5F});
        return;
    }
    const float lowest = screen.y * (1 + most_of_screen) / 2 - dialog->Size.y;
    const float top = std::max(0.0F, std::min(dialog->Pos.y, lowest));
    ImGui::SetNextWindowPos({screen.x / 2, top}, ImGuiCond_Always, {0.5F, 0});
}

bool begin_dialog(const char* name, float width) {
    if (!ImGui::IsPopupOpen(name)) ImGui::OpenPopup(name);
    const ImVec2 screen = ImGui::GetIO().DisplaySize;
    place_dialog(name);
    ImGui::SetNextWindowSizeConstraints({width, 0}, {screen.x * 0.94F, screen.y * most_of_screen});
    if (width > 0) ImGui::SetNextWindowSize({width, 0});
    const StyleScope padding(ImGuiStyleVar_WindowPadding, scaled(22, 18));
    return ImGui::BeginPopupModal(name, nullptr,
                                  ImGuiWindowFlags_NoTitleBar | ImGuiWindowFlags_NoMove |
                                      ImGuiWindowFlags_NoResize | ImGuiWindowFlags_NoSavedSettings |
                                      ImGuiWindowFlags_AlwaysAutoResize);
}

}  // namespace

PanelScope::PanelScope(const char* name, const Area& area, ImGuiWindowFlags more, Layer layer)
    : items_{name} {
    if (layer == Layer::ground) more |= ImGuiWindowFlags_NoBringToFrontOnFocus;
    ImGui::SetNextWindowPos({area.x, area.y});
    ImGui::SetNextWindowSize({area.width, area.height});
    ImGui::Begin(name, nullptr, fixed_panel | more);
}

float popup_room() { return whole_room() - 2 * ImGui::GetStyle().WindowPadding.y; }

PopupScope::PopupScope(const char* name) : OpenScope{begin_popup(name)}, items_{name} {
    if (is_open_ && ImGui::IsKeyPressed(key::escape, false)) ImGui::CloseCurrentPopup();
}

DialogScope::DialogScope(const char* name, const char* title, float width, Fields fields)
    : OpenScope{begin_dialog(name, width)}, items_{name} {
    if (!is_open_) return;
    {
        const FontScope font(Type::title);
        ImGui::TextUnformatted(title);
        ImGui::Dummy(scaled(1, 2));
    }
    if (fields == Fields::scroll) begin_scrolled_fields();
}

DialogScope::~DialogScope() {
    if (!is_open_) return;
    end_scrolled_fields();
    ImGui::EndPopup();
}

void end_scrolled_fields() {
    auto& fields = scrolled_fields();
    if (!fields.are_open) return;
    fields.are_open = false;
    fields.content = ImGui::GetCursorPosY() - ImGui::GetStyle().ItemSpacing.y;
    ImGui::EndChild();
}

}  // namespace editor
