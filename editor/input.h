// What the user does, as one queue: fed by the window in the program and by the driver in tests.
//
// Dear ImGui 1.86 has no queue of its own: a key pressed and let go within one slow frame would be
// lost, and a click would land where the pointer is by then. So the queue gives out at most one
// key, button or wheel transition a frame, and lets the pointer arrive one frame before a button
// moves.
#pragma once

#include "editor/keys.h"

#include <array>
#include <cstddef>
#include <deque>

struct ImGuiIO;

namespace editor {

class InputQueue {
public:
    void move(float x, float y);
    void button(int which, bool is_down);  // 0 left, 1 right, 2 middle
    void wheel(float across, float along);
    void key(int code, bool is_down);  // unknown keys (code -1) are passed over
    void character(unsigned code_point);
    void lose_focus();  // nothing is held any more

    bool is_pending() const { return !events_.empty(); }

    // Whether a key or button is down: it may repeat, so frames must go on.
    bool is_held() const;

    // Gives the next frame its share; after the backend's new frame, before ImGui's.
    void apply(ImGuiIO& io);

private:
    enum class Kind { move, button, wheel, key, character, lose_focus };

    struct Event {
        Kind kind = Kind::move;
        int which = 0;
        bool is_down = false;
        float x = 0.0F;
        float y = 0.0F;
    };

    // What this frame has been given so far.
    struct Share {
        bool moved = false;
        bool wheeled = false;
        bool typed = false;
        bool changed = false;
    };

    static bool must_wait(const Event& event, const Share& share);
    void take(const Event& event, Share& share, ImGuiIO& io);
    void let_all_go();
    void copy_to(ImGuiIO& io) const;
    bool has_key(int a, int b) const;

    std::deque<Event> events_;
    float x_ = -3.4e38F;  // ImGui's "nowhere"
    float y_ = -3.4e38F;
    std::array<bool, 5> buttons_{};
    std::array<bool, key::count> keys_{};
};

}  // namespace editor
