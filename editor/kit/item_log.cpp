#include "editor/kit/item_log.h"

#include <imgui.h>
#include <imgui_internal.h>

#include <cassert>

namespace editor {
namespace {

ItemLog* listener = nullptr;

bool is_enabled() {
    return (ImGui::GetCurrentContext()->CurrentItemFlags & ImGuiItemFlags_Disabled) == 0;
}

// An item half under the edge of a scrolled panel cannot be clicked at its middle.
bool is_middle_visible(const ItemRecord& item) {
    // Not the window's present one: within a table that is the column's.
    const ImRect& clip = ImGui::GetCurrentWindowRead()->InnerClipRect;
    return clip.Contains(ImVec2(item.middle_x(), item.middle_y()));
}

}  // namespace

ItemLog::ItemLog() {
    assert(listener == nullptr);
    listener = this;
}

ItemLog::~ItemLog() { listener = nullptr; }

ItemScope::ItemScope(std::string_view name) {
    if (listener == nullptr) return;
    length_before_ = listener->path_.size();
    listener->path_.append(name).append("/");
}

ItemScope::~ItemScope() {
    if (listener != nullptr) listener->path_.resize(length_before_);
}

void log_item(std::string_view name, std::string_view value) {
    if (listener == nullptr) return;
    const ImVec2 least = ImGui::GetItemRectMin();
    const ImVec2 most = ImGui::GetItemRectMax();
    ItemRecord record{least.x, least.y, most.x, most.y, ImGui::IsItemVisible(), is_enabled()};
    record.visible = record.visible && is_middle_visible(record);
    record.value = value;
    listener->items_.insert_or_assign(listener->path_ + std::string(name), std::move(record));
}

void log_rectangle(std::string_view name, const ItemRecord& record) {
    if (listener == nullptr) return;
    listener->items_.insert_or_assign(listener->path_ + std::string(name), record);
}

}  // namespace editor
