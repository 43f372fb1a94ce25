// What is drawn with: inks and pens that keep their meaning when a page is printed in black and
// white.
#pragma once

#include <cstdint>
#include <vector>

namespace engine {

// Greys by how much black they have. Blue and red are dark enough to be read as grey: they may
// repeat what a shape, a line or a word tells, never tell it alone.
enum class Ink : std::uint8_t { black, grey_75, grey_50, grey_25, grey_10, white, blue, red };

struct InkParts {
    std::uint8_t red = 0;
    std::uint8_t green = 0;
    std::uint8_t blue = 0;

    bool operator==(const InkParts&) const = default;
};

InkParts parts_of(Ink ink);

// Line widths in mm, each 1.4 times the one before: ISO 128-2, from memory.
constexpr double hair_width = 0.13;    // hatches
constexpr double thin_width = 0.18;    // dimension and leader lines
constexpr double narrow_width = 0.25;  // folds, hidden and centre lines
constexpr double wide_width = 0.5;     // visible outlines

// continuous; dashed: hidden edges; chain: centre lines; dotted: what is not there.
enum class Dash : std::uint8_t { continuous, dashed, chain, dotted };

struct Pen {
    double width = 0.25;  // mm
    Ink ink = Ink::black;
    Dash dash = Dash::continuous;

    bool operator==(const Pen&) const = default;
};

// Lengths of line and gap in turn, mm; empty for a continuous line.
std::vector<double> dash_lengths(const Pen& pen);

}  // namespace engine
