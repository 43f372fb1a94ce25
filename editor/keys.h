// The keys that the program knows, by the codes that the window library reports (printable keys
// have the code of their upper-case character; glfw_input.cpp checks the rest).
#pragma once

namespace editor::key {

inline constexpr int space = 32;
inline constexpr int minus = '-';
inline constexpr int equal = '=';
inline constexpr int escape = 256;
inline constexpr int enter = 257;
inline constexpr int tab = 258;
inline constexpr int backspace = 259;
inline constexpr int insert = 260;
inline constexpr int remove = 261;
inline constexpr int right = 262;
inline constexpr int left = 263;
inline constexpr int down = 264;
inline constexpr int up = 265;
inline constexpr int page_up = 266;
inline constexpr int page_down = 267;
inline constexpr int home = 268;
inline constexpr int end = 269;
inline constexpr int f1 = 290;
inline constexpr int keypad_subtract = 333;
inline constexpr int keypad_add = 334;
inline constexpr int keypad_enter = 335;
inline constexpr int left_shift = 340;
inline constexpr int left_control = 341;
inline constexpr int left_alt = 342;
inline constexpr int left_super = 343;
inline constexpr int right_shift = 344;
inline constexpr int right_control = 345;
inline constexpr int right_alt = 346;
inline constexpr int right_super = 347;
inline constexpr int count = 512;

// The key of the main block that a key of the number pad stands for.
constexpr int without_keypad(int code) {
    switch (code) {
        case keypad_subtract:
            return minus;
        case keypad_add:
            return equal;
        case keypad_enter:
            return enter;
        default:
            return code;
    }
}

}  // namespace editor::key
