#include "model/resolve/piece_reading.h"

#include "model/resolve/bar_cuts.h"
#include "model/resolve/hash.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdlib>
#include <utility>

namespace model {
namespace {

std::int64_t slope_reading(double slope) { return std::llround(slope * 1.0e9); }

bool read_alike(const PieceEnd& a, const PieceEnd& b) {
    return slope_reading(a.slope[0]) == slope_reading(b.slope[0]) &&
           slope_reading(a.slope[1]) == slope_reading(b.slope[1]) && a.wall_back == b.wall_back;
}

using Loop = std::vector<std::array<Nm, 4>>;

// From the least corner on, in its own sense.
Loop loop_of(const Corners& near, const Corners& far) {
    const bool is_bevelled = far.size() == near.size();
    Loop loop;
    loop.reserve(near.size());
    for (std::size_t i = 0; i < near.size(); ++i) {
        const auto& inner = is_bevelled ? far[i] : near[i];
        loop.push_back({near[i][0], near[i][1], inner[0], inner[1]});
    }
    std::rotate(loop.begin(), std::min_element(loop.begin(), loop.end()), loop.end());
    return loop;
}

// Twice the area; wraps round for a sheet larger than a van, which harms no hash.
std::uint64_t twice_area(const Corners& corners) {
    std::uint64_t twice = 0;
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const auto& a = corners[i];
        const auto& b = corners[(i + 1) % corners.size()];
        twice += as_bits(a[0]) * as_bits(b[1]) - as_bits(b[0]) * as_bits(a[1]);
    }
    return twice;
}

std::uint64_t hash_of(const Outline& outline) {
    std::uint64_t h = mixed(outline.corners.size(), twice_area(outline.corners));
    std::uint64_t sum = 0;
    for (const auto& cut_out : outline.cut_outs) {
        sum += mixed(cut_out.size(), twice_area(cut_out));
    }
    return mixed(h, sum);
}

}  // namespace

bool is_plain(const Piece& piece) {
    return piece.plates[0].outline == no_index && has_square_ends(piece);
}

bool read_alike(const std::array<PieceEnd, 2>& a, const std::array<PieceEnd, 2>& b) {
    return read_alike(a[0], b[0]) && read_alike(a[1], b[1]);
}

std::uint64_t hash_of(const std::array<PieceEnd, 2>& ends) {
    std::uint64_t h = 0x2545F491;
    for (const auto& end : ends) {
        for (const double slope : end.slope) h = mixed(h, as_bits(slope_reading(slope)));
        for (const Nm back : end.wall_back) h = mixed(h, as_bits(back));
    }
    return h;
}

FaceOutlines face_outlines(const Resolved& resolved, const Plate& plate) {
    FaceOutlines outlines;
    if (plate.outline != no_index) outlines.near = resolved.outlines[plate.outline];
    if (plate.outline_far != no_index) outlines.far = resolved.outlines[plate.outline_far];
    return outlines;
}

OutlineReading reading_of(const FaceOutlines& outlines) {
    const auto& [near, far] = outlines;
    OutlineReading reading;
    for (std::size_t i = 0; i < near.cut_outs.size(); ++i) {
        const bool has_far = i < far.cut_outs.size();
        reading.push_back(loop_of(near.cut_outs[i], has_far ? far.cut_outs[i] : Corners{}));
    }
    std::sort(reading.begin(), reading.end());
    reading.insert(reading.begin(), loop_of(near.corners, far.corners));
    return reading;
}

bool read_alike(const OutlineReading& a, const OutlineReading& b, Nm rounding) {
    if (rounding == 0) return a == b;
    const auto near = [&](Nm p, Nm q) { return std::abs(p - q) <= rounding; };
    return std::ranges::equal(a, b, [&](const Loop& one, const Loop& other) {
        return std::ranges::equal(one, other, [&](const auto& corner, const auto& its) {
            return std::ranges::equal(corner, its, near);
        });
    });
}

std::uint64_t invariant_hash(const FaceOutlines& outlines) {
    if (outlines.far.corners.empty()) return hash_of(outlines.near);
    return hash_of(outlines.near) + hash_of(outlines.far);
}

}  // namespace model
