#include "engine/drawing/glyph_table.h"

#include "engine/drawing/free_type.h"

#include FT_ADVANCES_H

#include <algorithm>
#include <cmath>

namespace engine {

GlyphTable::GlyphTable(FontFile file) {
    const FreeTypeFace font{file};
    FT_Face face = font.get();
    if (face == nullptr) return;
    const double units = face->units_per_EM;
    std::vector<FT_Fixed> advances(static_cast<std::size_t>(face->num_glyphs));
    FT_Get_Advances(face, 0, static_cast<FT_UInt>(face->num_glyphs), FT_LOAD_NO_SCALE,
                    advances.data());
    const auto glyph = [&](FT_UInt index) {
        const double advance = static_cast<double>(advances[index]) / units;
        return Glyph{index, advance, std::floor(advance * 1000.0) / 1000.0};
    };
    box_ = glyph(0);
    FT_UInt index = 0;
    for (FT_ULong code = FT_Get_First_Char(face, &index); index != 0;
         code = FT_Get_Next_Char(face, code, &index))
        entries_.push_back({static_cast<char32_t>(code), glyph(index)});
    if (FT_Load_Char(face, U'H', FT_LOAD_NO_SCALE) == 0)
        capital_height_ = static_cast<double>(face->glyph->metrics.horiBearingY) / units;
}

std::optional<Glyph> GlyphTable::glyph_of(char32_t character) const {
    const auto found = std::lower_bound(
        entries_.begin(), entries_.end(), character,
        [](const Entry& entry, char32_t wanted) { return entry.character < wanted; });
    if (found == entries_.end() || found->character != character) return std::nullopt;
    return found->glyph;
}

const GlyphTable& glyph_table(FontFile file) {
    static const GlyphTable regular{FontFile::roboto_regular};
    static const GlyphTable medium{FontFile::roboto_medium};
    static const GlyphTable fallback{FontFile::dejavu_sans};
    switch (file) {
        case FontFile::roboto_regular:
            return regular;
        case FontFile::roboto_medium:
            return medium;
        case FontFile::dejavu_sans:
            break;
    }
    return fallback;
}

}  // namespace engine
