// FreeType's handles, given back by themselves.
#pragma once

#include "engine/fonts/font_files.h"

#include <ft2build.h>

#include FT_FREETYPE_H

namespace engine {

// One of the embedded fonts. Each has a library of its own, so that threads do not meet in it.
class FreeTypeFace {
public:
    explicit FreeTypeFace(FontFile file) {
        const auto bytes = bytes_of(file);
        if (FT_Init_FreeType(&library_) != 0) return;
        FT_New_Memory_Face(library_, bytes.data(), static_cast<FT_Long>(bytes.size()), 0, &face_);
    }
    ~FreeTypeFace() {
        if (face_ != nullptr) FT_Done_Face(face_);
        if (library_ != nullptr) FT_Done_FreeType(library_);
    }
    FreeTypeFace(const FreeTypeFace&) = delete;
    FreeTypeFace& operator=(const FreeTypeFace&) = delete;

    // Null where memory ran out.
    FT_Face get() const { return face_; }

private:
    FT_Library library_ = nullptr;
    FT_Face face_ = nullptr;
};

}  // namespace engine
