#include "engine/drawing/ink.h"

namespace engine {
namespace {

constexpr InkParts grey_of(int level) {
    const auto part = static_cast<std::uint8_t>(level);
    return {part, part, part};
}

}  // namespace

InkParts parts_of(Ink ink) {
    switch (ink) {
        case Ink::black:
            break;
        case Ink::grey_75:
            return grey_of(64);
        case Ink::grey_50:
            return grey_of(128);
        case Ink::grey_25:
            return grey_of(191);
        case Ink::grey_10:
            return grey_of(230);
        case Ink::white:
            return grey_of(255);
        case Ink::blue:
            return {29, 63, 145};
        case Ink::red:
            return {166, 28, 28};
    }
    return grey_of(0);
}

// In line widths: dash 12, gap 3, long dash 24, dot 1/2 and its gaps 3 (ISO 128-2, from memory). A
// dot of half a width is lost on a copier, so that ours has one.
std::vector<double> dash_lengths(const Pen& pen) {
    const double width = pen.width;
    switch (pen.dash) {
        case Dash::continuous:
            break;
        case Dash::dashed:
            return {12 * width, 3 * width};
        case Dash::chain:
            return {24 * width, 3 * width, width, 3 * width};
        case Dash::dotted:
            return {width, 3 * width};
    }
    return {};
}

}  // namespace engine
