#include "model/resolve/resolved.h"

#include <cstddef>

namespace model {
namespace {

// A quarter turn about Z, counter-clockwise seen from above: (x, y) becomes (-y, x).
template <class Triple>
Triple turned(Triple t, int quarter_turns) {
    for (int i = 0; i < (quarter_turns & 3); ++i) {
        const auto x = t[0];
        t[0] = -t[1];
        t[1] = x;
    }
    return t;
}

}  // namespace

Point to_room(const ResolvedFrame& frame, const Point& in_frame) {
    Point p = turned(in_frame, frame.quarter_turns);
    for (std::size_t i = 0; i < 3; ++i) p[i] += frame.origin[i];
    return p;
}

std::array<int, 3> direction_to_room(const ResolvedFrame& frame, const std::array<int, 3>& d) {
    return turned(d, frame.quarter_turns);
}

std::string_view name_of(HoleOperation operation) {
    constexpr std::array<std::string_view, 7> names{"drill",     "pilot",       "tap drill",  "tap",
                                                    "clearance", "match-drill", "countersink"};
    return names[static_cast<std::size_t>(operation)];
}

}  // namespace model
