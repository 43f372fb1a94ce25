// The real opening that a frame goes into: whether what was measured agrees, where a square frame
// binds in it, and what to put into the gaps.
#pragma once

#include "model/resolve/resolved.h"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace model {

// A place where the frame meets a side of the opening.
enum class OpeningSide { left, right };
enum class OpeningLevel { bottom, middle, top };

std::string_view name_of(OpeningSide side);

// By tape and plumb line alone, a difference of more than this asks to measure again: 1/8 in,
// common practice. What leans by a diagonal grows with its slope.
inline constexpr double most_closing_error_mm = 3.175;

// How the measurements disagree, mm: what was measured less what follows from the others.
struct ClosingError {
    std::string of;  // "width at the top", "diagonal from lower left to upper right"
    double mm = 0.0;
    double most_mm = most_closing_error_mm;  // more asks to measure again

    bool operator==(const ClosingError&) const = default;
};

// How it is known how far a side leans in.
enum class LeanFrom {
    plumb_line,  // measured
    diagonal,    // follows from a diagonal, the width at the bottom and the height
    widths,      // what the widths leave beside the other side's
    half_widths  // nothing tells: half of what the widths narrow by
};

struct OpeningFit {
    Nm frame_width = 0;  // over its pieces; heads and tails are looked at by clearances
    Nm frame_height = 0;
    Nm too_tall = 0;                      // how much of that is above what was measured
    Nm narrows = 0;                       // from the bottom to the top, by the widths
    std::array<LeanFrom, 2> lean_from{};  // of the left side and of the right one
    std::vector<ClosingError> closing;
    bool binds = false;
    // Of the whole: what is left between the frame and the nearest places of both sides, together;
    // less than 0 where it binds.
    Nm slack = 0;
    std::array<OpeningLevel, 2> tightest{};  // on the left and on the right
    // Of the levels above the bottom: the middle one is half-way up the opening, or, of a frame
    // that does not reach so high, half-way up the frame.
    std::array<Nm, 3> heights{};
    // With the slack in equal parts on both sides: the gaps at these heights. What a shim there is
    // thick.
    std::array<std::array<Nm, 3>, 2> gaps{};  // [side][level]

    // How much wider the widest gap of a side is than its narrowest: the taper of a filler strip.
    Nm taper(OpeningSide side) const;
};

// Why it is no opening, as a sentence; empty where it is one, and where a formula fails.
std::string fault_of_opening(const Project& project,
                             const Resolved& resolved,
                             const MeasuredOpening& opening);

// The frame stands plumb on the level from which the sides were measured. Half-way up, what the
// middle width is less than half of the others' sum counts half on each side, since a tape does not
// tell which side bows. Nothing where a formula fails, the frame is empty, or the opening has no
// width or height.
std::optional<OpeningFit> opening_fit(const Project& project,
                                      const Resolved& resolved,
                                      Index frame,
                                      const MeasuredOpening& opening);

// `bad_opening` (error: no width or height, or through Z), `opening_binds` (error),
// `opening_open_error` (warning: measurements disagree), `opening_too_low` (warning: the frame
// stands above what was measured), `opening_not_plumbed` (warning: nothing tells which side leans),
// and `opening_tapers` (note: the shims, or the taper of a strip, at each side).
void report_openings(const Project& project,
                     const Resolved& resolved,
                     std::vector<Finding>& findings);

}  // namespace model
