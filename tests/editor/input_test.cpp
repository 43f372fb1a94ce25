#include "editor/input.h"

#include <catch2/catch.hpp>
#include <imgui.h>

using editor::InputQueue;
namespace key = editor::key;

namespace {

// How many frames the queue needs, and in how many of them the key is down.
struct KeyCount {
    int frames = 0;
    int down = 0;
};

KeyCount play(InputQueue& queue, ImGuiIO& io, int code) {
    KeyCount count;
    while (queue.is_pending()) {
        queue.apply(io);
        ++count.frames;
        if (io.KeysDown[code]) ++count.down;
    }
    return count;
}

}  // namespace

TEST_CASE("a key pressed and let go within one poll is down for one frame", "[editor][input]") {
    InputQueue queue;
    ImGuiIO io;
    queue.key('S', true);
    queue.key('S', false);
    const auto count = play(queue, io, 'S');
    CHECK(count.frames == 2);
    CHECK(count.down == 1);
}

TEST_CASE("ten quick presses of a shortcut all arrive", "[editor][input]") {
    InputQueue queue;
    ImGuiIO io;
    for (int i = 0; i < 10; ++i) {
        queue.key(key::left_control, true);
        queue.key('S', true);
        queue.key('S', false);
        queue.key(key::left_control, false);
    }
    int presses = 0;
    bool was_down = false;
    while (queue.is_pending()) {
        queue.apply(io);
        const bool is_down = io.KeysDown[int{'S'}];
        if (is_down && !was_down && io.KeyCtrl) ++presses;
        was_down = is_down;
    }
    CHECK(presses == 10);
}

TEST_CASE("the pointer arrives one frame before the button goes down", "[editor][input]") {
    InputQueue queue;
    ImGuiIO io;
    queue.move(10, 20);
    queue.move(30, 40);
    queue.button(0, true);
    queue.apply(io);
    CHECK(io.MousePos.x == 30);
    CHECK_FALSE(io.MouseDown[0]);
    queue.apply(io);
    CHECK(io.MouseDown[0]);
}

TEST_CASE("the pointer does not move on in the frame in which a button changes",
          "[editor][input]") {
    InputQueue queue;
    ImGuiIO io;
    queue.move(10, 10);
    queue.button(0, true);
    queue.move(90, 10);
    queue.button(0, false);
    queue.apply(io);
    queue.apply(io);
    CHECK(io.MouseDown[0]);
    CHECK(io.MousePos.x == 10);
    queue.apply(io);
    CHECK(io.MousePos.x == 90);
    CHECK(io.MouseDown[0]);
    queue.apply(io);
    CHECK_FALSE(io.MouseDown[0]);
}

TEST_CASE("a character typed after a key waits for the next frame", "[editor][input]") {
    InputQueue queue;
    ImGuiIO io;
    queue.key(key::backspace, true);
    queue.key(key::backspace, false);
    queue.character('x');
    queue.apply(io);
    CHECK(io.InputQueueCharacters.empty());
    queue.apply(io);
    CHECK(io.InputQueueCharacters.empty());
    queue.apply(io);
    CHECK(io.InputQueueCharacters.size() == 1);
}

TEST_CASE("wheel notches in a row are one turn", "[editor][input]") {
    InputQueue queue;
    ImGuiIO io;
    for (int i = 0; i < 5; ++i) queue.wheel(0, 1);
    queue.apply(io);
    CHECK(io.MouseWheel == 5);
    CHECK_FALSE(queue.is_pending());
}

TEST_CASE("losing the focus lets go of every key and button", "[editor][input]") {
    InputQueue queue;
    ImGuiIO io;
    queue.key(key::left_control, true);
    queue.button(0, true);
    queue.lose_focus();
    while (queue.is_pending()) queue.apply(io);
    CHECK_FALSE(io.KeyCtrl);
    CHECK_FALSE(io.MouseDown[0]);
    CHECK_FALSE(queue.is_held());
}

TEST_CASE("keys that the window cannot name are passed over", "[editor][input]") {
    InputQueue queue;
    queue.key(-1, true);
    queue.key(100'000, true);
    queue.button(17, true);
    CHECK_FALSE(queue.is_pending());
}
