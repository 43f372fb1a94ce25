// What to take care of where the work begins: one line, and the rest while the pointer rests on it.
#pragma once

#include <span>
#include <string_view>

namespace editor {

enum class Work { cutting, drilling, riveting };

struct Caution {
    std::string_view line;                      // what nobody may miss
    std::span<const std::string_view> further;  // sentences
};

const Caution& caution_of(Work work);

void draw_caution(Work work);

}  // namespace editor
