#include "engine/drawing/pdf_fonts.h"

#include "engine/drawing/free_type.h"

#include <cairo-ft.h>

namespace engine {
namespace {

void forget_face(void* face) { delete static_cast<FreeTypeFace*>(face); }

CairoFont opened_font(FontFile file) {
    static const cairo_user_data_key_t key{};
    auto face = std::make_unique<FreeTypeFace>(file);
    if (face->get() == nullptr) return nullptr;
    CairoFont font{cairo_ft_font_face_create_for_ft_face(face->get(), FT_LOAD_NO_HINTING)};
    const auto status = cairo_font_face_set_user_data(font.get(), &key, face.get(), forget_face);
    if (status != CAIRO_STATUS_SUCCESS) return nullptr;
    static_cast<void>(face.release());
    return font;
}

}  // namespace

cairo_font_face_t* PdfFonts::face(FontFile file) {
    auto& face = faces_[static_cast<std::size_t>(file)];
    if (!face) face = opened_font(file);
    return face.get();
}

}  // namespace engine
