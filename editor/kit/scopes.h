// Guards that close what they opened. The packaged Dear ImGui stops the program over an unbalanced
// pair, so nothing here is opened by hand.
#pragma once

#include "editor/kit/item_log.h"
#include "editor/kit/theme.h"

#include <imgui.h>

namespace editor {

struct Area {
    float x = 0.0F;
    float y = 0.0F;
    float width = 0.0F;
    float height = 0.0F;
};

// Base of all: neither copied nor moved.
class Scope {
public:
    Scope(const Scope&) = delete;
    Scope& operator=(const Scope&) = delete;

protected:
    Scope() = default;
    ~Scope() = default;
};

enum class Layer { ground, floating };

// A fixed part of the window: no title, no moving, no folding. What floats lies over the ground.
class PanelScope : Scope {
public:
    PanelScope(const char* name,
               const Area& area,
               ImGuiWindowFlags more = 0,
               Layer layer = Layer::ground);
    ~PanelScope() { ImGui::End(); }

private:
    ItemScope items_;
};

class ChildScope : Scope {
public:
    explicit ChildScope(const char* name, ImVec2 size = {0, 0}, ImGuiWindowFlags flags = 0) {
        ImGui::BeginChild(name, size, false, flags);
    }
    ~ChildScope() { ImGui::EndChild(); }
};

class FontScope : Scope {
public:
    explicit FontScope(Type type) { ImGui::PushFont(font(type)); }
    ~FontScope() { ImGui::PopFont(); }
};

class ColourScope : Scope {
public:
    ColourScope(ImGuiCol which, ImU32 packed) { ImGui::PushStyleColor(which, packed); }
    ~ColourScope() { ImGui::PopStyleColor(); }
};

class StyleScope : Scope {
public:
    StyleScope(ImGuiStyleVar which, float value) { ImGui::PushStyleVar(which, value); }
    StyleScope(ImGuiStyleVar which, ImVec2 value) { ImGui::PushStyleVar(which, value); }
    ~StyleScope() { ImGui::PopStyleVar(); }
};

class IdScope : Scope {
public:
    explicit IdScope(const char* text) { ImGui::PushID(text); }
    explicit IdScope(int number) { ImGui::PushID(number); }
    ~IdScope() { ImGui::PopID(); }
};

class DisabledScope : Scope {
public:
    explicit DisabledScope(bool is_disabled) { ImGui::BeginDisabled(is_disabled); }
    ~DisabledScope() { ImGui::EndDisabled(); }
};

class WrapScope : Scope {
public:
    // Text wraps at the right edge of the panel.
    WrapScope() { ImGui::PushTextWrapPos(0.0F); }
    // Text wraps at that distance from the panel's left edge.
    explicit WrapScope(float at) { ImGui::PushTextWrapPos(at); }
    ~WrapScope() { ImGui::PopTextWrapPos(); }
};

class TooltipScope : Scope {
public:
    TooltipScope() { ImGui::BeginTooltip(); }
    ~TooltipScope() { ImGui::EndTooltip(); }
};

// Open only where it converts to true: `if (const PopupScope menu("Project"); menu) ...`
class OpenScope : Scope {
public:
    explicit operator bool() const { return is_open_; }

protected:
    explicit OpenScope(bool is_open) : is_open_{is_open} {}
    ~OpenScope() = default;

    bool is_open_ = false;
};

// How high the content of a popup of the last item may be; ask before the popup is opened.
float popup_room();

// Opens under the last item, or above it where there is more room; Escape closes it.
class PopupScope : public OpenScope {
public:
    explicit PopupScope(const char* name);
    ~PopupScope() {
        if (is_open_) ImGui::EndPopup();
    }

private:
    ItemScope items_;
};

class TableScope : public OpenScope {
public:
    TableScope(const char* name, int columns, ImGuiTableFlags flags = 0, ImVec2 size = {0, 0})
        : OpenScope{ImGui::BeginTable(name, columns, flags, size)} {}
    ~TableScope() {
        if (is_open_) ImGui::EndTable();
    }
};

// A question in the middle of the window that must be answered first. Opens itself.
class DialogScope : public OpenScope {
public:
    enum class Fields { stay, scroll };  // where there are too many for the window

    // width 0: as wide as its content. Fields that scroll are all that is drawn before
    // `end_scrolled_fields`: what comes behind it, the buttons, is always in sight.
    DialogScope(const char* name,
                const char* title,
                float width = 0.0F,
                Fields fields = Fields::stay);
    ~DialogScope();

private:
    ItemScope items_;
};

// Of the dialog that is open; does nothing where its fields stay.
void end_scrolled_fields();

}  // namespace editor
