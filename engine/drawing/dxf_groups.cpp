#include "engine/drawing/dxf_groups.h"

#include "engine/drawing/printable_text.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstddef>
#include <cstdio>

namespace engine {

std::string dxf_number(double value) {
    constexpr double steps = 1.0e6;
    const double rounded = std::round(value * steps) / steps;
    std::array<char, 48> text{};
    const auto end = std::to_chars(text.data(), text.data() + text.size(),
                                   rounded == 0.0 ? 0.0 : rounded, std::chars_format::fixed, 6)
                         .ptr;
    return {text.data(), end};
}

std::string dxf_words(std::string_view words) {
    std::string made;
    const auto characters = characters_of(printable_text(words));
    for (const char32_t character : characters) {
        if (character >= 0x20 && character < 0x7F) {
            made += static_cast<char>(character);
            continue;
        }
        std::array<char, 16> text{};
        std::snprintf(text.data(), text.size(), "\\U+%04X", static_cast<unsigned>(character));
        made += text.data();
    }
    return made;
}

void DxfGroups::group(int code, std::string_view value) {
    const std::string number = std::to_string(code);
    text_.append(3 - std::min<std::size_t>(number.size(), 3), ' ');
    text_ += number;
    text_ += "\r\n";
    text_ += value;
    text_ += "\r\n";
}

void DxfGroups::place(int code, PagePoint p) {
    number(code, p.x);
    number(code + 10, p.y);
    number(code + 20, 0.0);
}

}  // namespace engine
