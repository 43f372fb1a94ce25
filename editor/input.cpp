#include "editor/input.h"

#include <imgui.h>

#include <algorithm>

namespace editor {

void InputQueue::move(float x, float y) { events_.push_back({Kind::move, 0, false, x, y}); }

void InputQueue::button(int which, bool is_down) {
    if (which < 0 || static_cast<std::size_t>(which) >= buttons_.size()) return;
    events_.push_back({Kind::button, which, is_down});
}

void InputQueue::wheel(float across, float along) {
    events_.push_back({Kind::wheel, 0, false, across, along});
}

void InputQueue::key(int code, bool is_down) {
    if (code < 0 || code >= key::count) return;
    events_.push_back({Kind::key, code, is_down});
}

void InputQueue::character(unsigned code_point) {
    events_.push_back({Kind::character, static_cast<int>(code_point)});
}

void InputQueue::lose_focus() { events_.push_back({Kind::lose_focus}); }

bool InputQueue::is_held() const {
    const auto down = [](bool held) { return held; };
    return std::any_of(buttons_.begin(), buttons_.end(), down) ||
           std::any_of(keys_.begin(), keys_.end(), down);
}

void InputQueue::apply(ImGuiIO& io) {
    Share share;
    while (!events_.empty() && !must_wait(events_.front(), share)) {
        const Event event = events_.front();
        events_.pop_front();
        take(event, share, io);
    }
    copy_to(io);
}

bool InputQueue::must_wait(const Event& event, const Share& share) {
    switch (event.kind) {
        case Kind::move:
            return share.changed || share.wheeled || share.typed;
        case Kind::wheel:
            return share.moved || share.changed || share.typed;
        case Kind::character:  // ImGui reads a frame's characters before its keys
            return share.changed;
        case Kind::button:
            return share.moved || share.wheeled || share.changed || share.typed;
        case Kind::key:
        case Kind::lose_focus:
            return share.wheeled || share.changed || share.typed;
    }
    return false;
}

void InputQueue::take(const Event& event, Share& share, ImGuiIO& io) {
    switch (event.kind) {
        case Kind::move:
            x_ = event.x;
            y_ = event.y;
            share.moved = true;
            break;
        case Kind::wheel:
            io.MouseWheelH += event.x;
            io.MouseWheel += event.y;
            share.wheeled = true;
            break;
        case Kind::character:
            io.AddInputCharacter(static_cast<unsigned>(event.which));
            share.typed = true;
            break;
        case Kind::button:
            buttons_[static_cast<std::size_t>(event.which)] = event.is_down;
            share.changed = true;
            break;
        case Kind::key:
            keys_[static_cast<std::size_t>(event.which)] = event.is_down;
            share.changed = true;
            break;
        case Kind::lose_focus:
            let_all_go();
            share.changed = true;
            break;
    }
}

void InputQueue::let_all_go() {
    buttons_.fill(false);
    keys_.fill(false);
}

void InputQueue::copy_to(ImGuiIO& io) const {
    io.MousePos = {x_, y_};
    std::copy(buttons_.begin(), buttons_.end(), io.MouseDown);
    std::copy(keys_.begin(), keys_.end(), io.KeysDown);
    io.KeyShift = has_key(key::left_shift, key::right_shift);
    io.KeyCtrl = has_key(key::left_control, key::right_control);
    io.KeyAlt = has_key(key::left_alt, key::right_alt);
    io.KeySuper = has_key(key::left_super, key::right_super);
}

bool InputQueue::has_key(int a, int b) const {
    return keys_[static_cast<std::size_t>(a)] || keys_[static_cast<std::size_t>(b)];
}

}  // namespace editor
