// The embedded fonts as cairo knows them.
#pragma once

#include "engine/fonts/font_files.h"

#include <cairo.h>

#include <array>
#include <memory>

namespace engine {

struct CairoFontGone {
    void operator()(cairo_font_face_t* face) const { cairo_font_face_destroy(face); }
};
using CairoFont = std::unique_ptr<cairo_font_face_t, CairoFontGone>;

// Opens each font when it is first asked for. cairo may keep what it was given after these are
// gone, and lets go of the font's file then.
class PdfFonts {
public:
    // Null where memory ran out.
    cairo_font_face_t* face(FontFile file);

private:
    std::array<CairoFont, 3> faces_;
};

}  // namespace engine
