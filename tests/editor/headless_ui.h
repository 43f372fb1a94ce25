// Drives the real window's panels without a window: items are found by name, mouse and keyboard go
// through the same input queue as in the program.
#pragma once

#include "editor/desk.h"
#include "editor/input.h"
#include "editor/kit/item_log.h"

#include <imgui.h>

#include <filesystem>
#include <memory>
#include <string>
#include <string_view>

namespace tests {

// The catalogue of the source tree, read once.
std::shared_ptr<const model::Catalogue> test_catalogue();

class HeadlessUi {
public:
    explicit HeadlessUi(float width = 1600, float height = 1000);
    ~HeadlessUi();
    HeadlessUi(const HeadlessUi&) = delete;
    HeadlessUi& operator=(const HeadlessUi&) = delete;

    editor::Desk desk;
    editor::InputQueue input;
    std::string clipboard;

    void frame();
    // Frames until the queue is empty and the panels have come to rest.
    void settle();

    bool has(std::string_view name) const;
    const editor::ItemMap& items() const { return items_.items(); }
    // Fails the test when there is no such item.
    const editor::ItemRecord& item(std::string_view name) const;

    void click(std::string_view name);
    void double_click(std::string_view name);
    void click_at(float x, float y);
    void move_to(float x, float y);
    // Presses on the item, moves by so many pixels in some steps, lets go.
    void drag(std::string_view name, float dx, float dy, int button = 0, int modifier = 0);
    void press(int key, int modifier = 0, int modifier2 = 0);
    void type(std::string_view text);
    // Clicks the field, replaces what is in it, and presses Enter.
    void fill(std::string_view name, std::string_view text);
    // The same without Enter.
    void write(std::string_view name, std::string_view text);

    // What follows from the project now.
    const editor::Derived& now() { return editor::derived(desk); }
    std::string shown(std::string_view dimension);

private:
    editor::ItemLog items_;
};

// A folder of its own for one test, gone afterwards.
class TemporaryFolder {
public:
    TemporaryFolder();
    ~TemporaryFolder();
    TemporaryFolder(const TemporaryFolder&) = delete;
    TemporaryFolder& operator=(const TemporaryFolder&) = delete;

    const std::filesystem::path& path() const { return path_; }

private:
    std::filesystem::path path_;
};

// A frame as its starter makes it; not saved.
void start_frame(editor::Desk& desk, editor::StarterKind kind);

// A box frame with one shelf, as the starter makes it; not saved.
void start_box(editor::Desk& desk);

}  // namespace tests
