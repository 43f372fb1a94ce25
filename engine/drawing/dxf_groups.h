// The groups that a DXF file of release 12 consists of: a code, and what it stands for.
#pragma once

#include "engine/drawing/page_items.h"

#include <string>
#include <string_view>

namespace engine {

// To the nanometre, the same on every machine.
std::string dxf_number(double value);

// What release 12 knows is ASCII; other characters are written by their number, "\U+00D8".
std::string dxf_words(std::string_view words);

class DxfGroups {
public:
    void group(int code, std::string_view value);
    void group(int code, int value) { group(code, std::to_string(value)); }
    void number(int code, double value) { group(code, dxf_number(value)); }
    // Three groups: x, y, and z, which is nothing.
    void place(int code, PagePoint p);

    std::string take() && { return std::move(text_); }

private:
    std::string text_;
};

}  // namespace engine
