#include "tests/editor/headless_ui.h"

#include "editor/dialogs/starter_form.h"
#include "editor/dimension_values.h"
#include "editor/keys.h"
#include "editor/kit/fonts.h"
#include "editor/kit/theme.h"
#include "editor/screen.h"

#include <catch2/catch.hpp>
#include <imgui_internal.h>
#include <unistd.h>

#include <atomic>
#include <utility>

namespace tests {
namespace {

namespace key = editor::key;

// As the window's backend fills it.
constexpr std::pair<int, int> key_map[] = {
    {ImGuiKey_Tab, key::tab},
    {ImGuiKey_LeftArrow, key::left},
    {ImGuiKey_RightArrow, key::right},
    {ImGuiKey_UpArrow, key::up},
    {ImGuiKey_DownArrow, key::down},
    {ImGuiKey_PageUp, key::page_up},
    {ImGuiKey_PageDown, key::page_down},
    {ImGuiKey_Home, key::home},
    {ImGuiKey_End, key::end},
    {ImGuiKey_Insert, key::insert},
    {ImGuiKey_Delete, key::remove},
    {ImGuiKey_Backspace, key::backspace},
    {ImGuiKey_Space, key::space},
    {ImGuiKey_Enter, key::enter},
    {ImGuiKey_Escape, key::escape},
    {ImGuiKey_KeyPadEnter, key::keypad_enter},
    {ImGuiKey_A, 'A'},
    {ImGuiKey_C, 'C'},
    {ImGuiKey_V, 'V'},
    {ImGuiKey_X, 'X'},
    {ImGuiKey_Y, 'Y'},
    {ImGuiKey_Z, 'Z'},
};

// The fonts are built once for all tests.
ImFontAtlas* shared_fonts() {
    static const auto atlas = [] {
        auto fonts = std::make_unique<ImFontAtlas>();
        editor::load_fonts(*fonts, 1.0F);
        unsigned char* pixels = nullptr;
        int width = 0;
        int height = 0;
        fonts->GetTexDataAsRGBA32(&pixels, &width, &height);
        return fonts;
    }();
    return atlas.get();
}

void use_clipboard(ImGuiIO& io, std::string& clipboard) {
    io.ClipboardUserData = &clipboard;
    io.GetClipboardTextFn = [](void* user) {
        return static_cast<const std::string*>(user)->c_str();
    };
    io.SetClipboardTextFn = [](void* user, const char* text) {
        *static_cast<std::string*>(user) = text;
    };
}

}  // namespace

std::shared_ptr<const model::Catalogue> test_catalogue() {
    static const auto tables = [] {
        auto loaded = model::load_catalogue(BARWRIGHT_ASSETS);
        REQUIRE(loaded);
        return std::make_shared<const model::Catalogue>(std::move(loaded).value());
    }();
    return tables;
}

HeadlessUi::HeadlessUi(float width, float height) : desk{test_catalogue()} {
    ImGui::CreateContext(shared_fonts());
    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr;
    io.DisplaySize = {width, height};
    io.DeltaTime = 1.0F / 60.0F;
    for (const auto& [name, code] : key_map) io.KeyMap[name] = code;
    use_clipboard(io, clipboard);
    editor::set_style(1.0F, editor::Theme::light);
    settle();
}

HeadlessUi::~HeadlessUi() { ImGui::DestroyContext(); }

void HeadlessUi::frame() {
    input.apply(ImGui::GetIO());
    items_.begin_frame();
    ImGui::NewFrame();
    editor::draw_screen(desk);
    ImGui::Render();
}

void HeadlessUi::settle() {
    int guard = 0;
    do {
        frame();
    } while ((input.is_pending() || desk.ui.goes_on) && ++guard < 10'000);
    for (int i = 0; i < 3; ++i) frame();
}

bool HeadlessUi::has(std::string_view name) const {
    return items_.items().find(name) != items_.items().end();
}

const editor::ItemRecord& HeadlessUi::item(std::string_view name) const {
    const auto at = items_.items().find(name);
    INFO("item " << name);
    REQUIRE(at != items_.items().end());
    return at->second;
}

void HeadlessUi::move_to(float x, float y) {
    input.move(x, y);
    settle();
}

void HeadlessUi::click_at(float x, float y) {
    move_to(x, y);
    input.button(0, true);
    input.button(0, false);
    settle();
    // Far enough in time that the next click is no double click.
    for (int i = 0; i < 20; ++i) frame();
}

void HeadlessUi::click(std::string_view name) {
    const auto& at = item(name);
    INFO("item " << name);
    REQUIRE(at.visible);
    REQUIRE(at.enabled);
    click_at(at.middle_x(), at.middle_y());
}

void HeadlessUi::double_click(std::string_view name) {
    const auto at = item(name);
    move_to(at.middle_x(), at.middle_y());
    for (int i = 0; i < 2; ++i) {
        input.button(0, true);
        input.button(0, false);
    }
    settle();
    for (int i = 0; i < 20; ++i) frame();
}

void HeadlessUi::drag(std::string_view name, float dx, float dy, int button, int modifier) {
    const auto at = item(name);
    move_to(at.middle_x(), at.middle_y());
    if (modifier != 0) input.key(modifier, true);
    input.button(button, true);
    settle();
    constexpr int steps = 5;
    for (int i = 1; i <= steps; ++i) {
        const float share = static_cast<float>(i) / static_cast<float>(steps);
        input.move(at.middle_x() + dx * share, at.middle_y() + dy * share);
        frame();
    }
    input.button(button, false);
    if (modifier != 0) input.key(modifier, false);
    settle();
    for (int i = 0; i < 20; ++i) frame();
}

void HeadlessUi::press(int code, int modifier, int modifier2) {
    if (modifier != 0) input.key(modifier, true);
    if (modifier2 != 0) input.key(modifier2, true);
    input.key(code, true);
    input.key(code, false);
    if (modifier2 != 0) input.key(modifier2, false);
    if (modifier != 0) input.key(modifier, false);
    settle();
}

void HeadlessUi::type(std::string_view text) {
    const char* at = text.data();
    const char* end = at + text.size();
    while (at < end) {
        unsigned code_point = 0;
        at += ImTextCharFromUtf8(&code_point, at, end);
        input.character(code_point);
    }
    settle();
}

void HeadlessUi::write(std::string_view name, std::string_view text) {
    click(name);
    press('A', key::left_control);
    type(text);
}

void HeadlessUi::fill(std::string_view name, std::string_view text) {
    write(name, text);
    press(key::enter);
}

std::string HeadlessUi::shown(std::string_view dimension) {
    const auto value = editor::value_of(now(), dimension);
    return value ? editor::quantity_text(*value, now().project->shown) : "no value";
}

TemporaryFolder::TemporaryFolder() {
    static std::atomic<int> number{0};
    const auto name =
        "barwright_editor_test_" + std::to_string(::getpid()) + "_" + std::to_string(number++);
    path_ = std::filesystem::temp_directory_path() / name;
    std::filesystem::create_directories(path_);
}

TemporaryFolder::~TemporaryFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
}

void start_frame(editor::Desk& desk, editor::StarterKind kind) {
    const auto& now = editor::derived(desk);
    const auto form = editor::starter_form(kind, now, *desk.catalogue);
    const auto change = editor::starter_change(form, now, *desk.catalogue);
    REQUIRE(change);
    REQUIRE(editor::submit(desk, *change));
    desk.ui.view.wants_fit = true;
}

void start_box(editor::Desk& desk) { start_frame(desk, editor::StarterKind::box); }

}  // namespace tests
