#include "editor/kit/fonts.h"

#include "editor/kit/theme.h"
#include "engine/fonts/font_files.h"

#include <imgui.h>

#include <future>
#include <memory>
#include <span>

namespace editor {
namespace {

using Bytes = std::span<const unsigned char>;

// What people write names and notes with, and the signs of the trade.
constexpr ImWchar name_ranges[] = {0x20,   0x17F,  0x370,  0x52F,  0x2010, 0x205F, 0x2070, 0x20BF,
                                   0x2150, 0x215E, 0x2190, 0x2199, 0x21B6, 0x21B7, 0x2212, 0x2212,
                                   0x2260, 0x2265, 0x25A0, 0x25FF, 0x2713, 0x2718, 0};
// Those and the rarer signs of mathematics and technique, for plain text only: each takes time
// whenever the program starts.
constexpr ImWchar wide_ranges[] = {0x20,   0x17F,  0x370,  0x52F,  0x2010, 0x205F, 0x2070,
                                   0x20BF, 0x2150, 0x215E, 0x2190, 0x21FF, 0x2200, 0x22FF,
                                   0x2300, 0x23FF, 0x25A0, 0x26FF, 0x2713, 0x2718, 0};
constexpr ImWchar narrow_ranges[] = {0x20, 0xFF, 0x2010, 0x2044, 0x2150, 0x215E, 0};

constexpr int font_count = 5;  // one for each Type
constexpr float large_size = 30.0F;

// The atlas only reads them, but asks for a pointer that it might own.
void* as_void(Bytes bytes) { return const_cast<unsigned char*>(bytes.data()); }

void add_font(ImFontAtlas& atlas, Bytes first, float size, const ImWchar* ranges) {
    const Bytes fallback = engine::bytes_of(engine::FontFile::dejavu_sans);
    ImFontConfig config;
    config.FontDataOwnedByAtlas = false;
    // Glyphs stand where the font wants them, not on whole pixels: small text keeps its rhythm.
    config.OversampleH = 2;
    config.OversampleV = 1;
    atlas.AddFontFromMemoryTTF(as_void(first), static_cast<int>(first.size()), size, &config,
                               ranges);
    config.MergeMode = true;
    atlas.AddFontFromMemoryTTF(as_void(fallback), static_cast<int>(fallback.size()), size - 1.0F,
                               &config, ranges);
}

}  // namespace

void load_fonts(ImFontAtlas& atlas, float scale) {
    const Bytes regular = engine::bytes_of(engine::FontFile::roboto_regular);
    const Bytes medium = engine::bytes_of(engine::FontFile::roboto_medium);
    atlas.Clear();
    add_font(atlas, regular, text_size * scale, wide_ranges);
    add_font(atlas, regular, 13.0F * scale, name_ranges);
    add_font(atlas, medium, text_size * scale, name_ranges);
    add_font(atlas, medium, 18.0F * scale, name_ranges);
    add_font(atlas, regular, 21.0F * scale, narrow_ranges);
    add_font(atlas, medium, large_size * scale, narrow_ranges);
    atlas.Build();
}

ImFont* large_font() {
    const auto& fonts = ImGui::GetIO().Fonts->Fonts;
    return fonts.Size > font_count ? fonts[font_count] : font(Type::title);
}

FontsAhead::FontsAhead(float scale) : scale_{scale} {
    being_drawn_ = std::async(std::launch::async, [scale] {
        auto atlas = std::make_unique<ImFontAtlas>();
        load_fonts(*atlas, scale);
        return atlas;
    });
}

FontsAhead::~FontsAhead() = default;

ImFontAtlas& FontsAhead::atlas() {
    if (being_drawn_.valid()) atlas_ = being_drawn_.get();
    return *atlas_;
}

}  // namespace editor
