// The fonts, carried inside the program: text looks the same on any machine and in tests.
#pragma once

#include <future>
#include <memory>

struct ImFont;
struct ImFontAtlas;

namespace editor {

// Fills the atlas anew, one font for each Type in its order and the large one, at that scale.
void load_fonts(ImFontAtlas& atlas, float scale);

// What is read at arm's length, beside the drill press.
ImFont* large_font();

// An atlas that a thread fills while a window is being opened, which takes about as long. It must
// be waited for, by atlas(), before Dear ImGui has a context: they share its allocator's count.
class FontsAhead {
public:
    explicit FontsAhead(float scale);
    ~FontsAhead();
    FontsAhead(const FontsAhead&) = delete;
    FontsAhead& operator=(const FontsAhead&) = delete;

    float scale() const { return scale_; }
    ImFontAtlas& atlas();

private:
    float scale_ = 1.0F;
    std::future<std::unique_ptr<ImFontAtlas>> being_drawn_;
    std::unique_ptr<ImFontAtlas> atlas_;
};

}  // namespace editor
