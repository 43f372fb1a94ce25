#include "editor/glfw_input.h"

#include <GLFW/glfw3.h>

#include <string_view>

namespace editor {
namespace {

static_assert(key::escape == GLFW_KEY_ESCAPE && key::enter == GLFW_KEY_ENTER &&
              key::tab == GLFW_KEY_TAB && key::backspace == GLFW_KEY_BACKSPACE &&
              key::insert == GLFW_KEY_INSERT && key::remove == GLFW_KEY_DELETE &&
              key::right == GLFW_KEY_RIGHT && key::left == GLFW_KEY_LEFT &&
              key::down == GLFW_KEY_DOWN && key::up == GLFW_KEY_UP &&
              key::page_up == GLFW_KEY_PAGE_UP && key::page_down == GLFW_KEY_PAGE_DOWN &&
              key::home == GLFW_KEY_HOME && key::end == GLFW_KEY_END && key::f1 == GLFW_KEY_F1 &&
              key::keypad_enter == GLFW_KEY_KP_ENTER && key::keypad_add == GLFW_KEY_KP_ADD &&
              key::keypad_subtract == GLFW_KEY_KP_SUBTRACT && key::space == GLFW_KEY_SPACE &&
              key::minus == GLFW_KEY_MINUS && key::equal == GLFW_KEY_EQUAL &&
              key::left_shift == GLFW_KEY_LEFT_SHIFT && key::right_super == GLFW_KEY_RIGHT_SUPER &&
              key::count > GLFW_KEY_LAST);

WindowEvents& events_of(GLFWwindow* window) {
    auto& events = *static_cast<WindowEvents*>(glfwGetWindowUserPointer(window));
    events.has_happened = true;
    return events;
}

// Codes are places on a US keyboard. Shortcuts mean the letter that is printed on the key, so
// letters go by what the layout calls them.
int code_by_layout(int code, int scancode) {
    if (code < GLFW_KEY_SPACE || code > GLFW_KEY_WORLD_2) return code;
    const char* name = glfwGetKeyName(code, scancode);
    if (name == nullptr || name[0] == '\0' || name[1] != '\0') return code;
    const char c = name[0];
    if (c >= 'a' && c <= 'z') return c - 'a' + 'A';
    if (c >= 'A' && c <= 'Z') return c;
    if (c == '+' || c == '=') return key::equal;
    if (c == '-') return key::minus;
    return code;
}

void on_key(GLFWwindow* window, int code, int scancode, int action, int /*modifiers*/) {
    auto& events = events_of(window);
    if (action == GLFW_REPEAT) return;  // Dear ImGui repeats by itself
    const int known = key::without_keypad(code_by_layout(code, scancode));
    events.input.key(known, action == GLFW_PRESS);
}

void on_character(GLFWwindow* window, unsigned code_point) {
    events_of(window).input.character(code_point);
}

// The pointer's place comes by its own callback, in order: asking for it here would give where it
// is now, not where the button was pressed.
void on_button(GLFWwindow* window, int button, int action, int /*modifiers*/) {
    events_of(window).input.button(button, action == GLFW_PRESS);
}

void on_move(GLFWwindow* window, double x, double y) {
    events_of(window).input.move(static_cast<float>(x), static_cast<float>(y));
}

void on_scroll(GLFWwindow* window, double x, double y) {
    events_of(window).input.wheel(static_cast<float>(x), static_cast<float>(y));
}

void on_focus(GLFWwindow* window, int is_focused) {
    auto& events = events_of(window);
    if (is_focused == GLFW_FALSE) events.input.lose_focus();
    events.has_come_back = is_focused != GLFW_FALSE;
}

void on_drop(GLFWwindow* window, int count, const char** paths) {
    auto& events = events_of(window);
    for (int i = 0; i < count; ++i) events.dropped.emplace_back(paths[i]);
}

void on_close(GLFWwindow* window) {
    events_of(window).wants_to_close = true;
    glfwSetWindowShouldClose(window, GLFW_FALSE);  // not before the question is answered
}

void on_size(GLFWwindow* window, int /*width*/, int /*height*/) { events_of(window); }
void on_scale(GLFWwindow* window, float /*x*/, float /*y*/) { events_of(window); }
void on_refresh(GLFWwindow* window) { events_of(window); }

}  // namespace

void listen_to(GLFWwindow* window, WindowEvents& events) {
    glfwSetWindowUserPointer(window, &events);
    glfwSetKeyCallback(window, on_key);
    glfwSetCharCallback(window, on_character);
    glfwSetMouseButtonCallback(window, on_button);
    glfwSetCursorPosCallback(window, on_move);
    glfwSetScrollCallback(window, on_scroll);
    glfwSetWindowFocusCallback(window, on_focus);
    glfwSetDropCallback(window, on_drop);
    glfwSetWindowCloseCallback(window, on_close);
    glfwSetFramebufferSizeCallback(window, on_size);
    glfwSetWindowContentScaleCallback(window, on_scale);
    glfwSetWindowRefreshCallback(window, on_refresh);
}

}  // namespace editor
