#include "model/resolve/piece_prisms.h"

#include "model/resolve/flat_prism.h"
#include "model/resolve/piece_place.h"

#include <algorithm>
#include <limits>
#include <utility>

namespace model {
namespace {

bool slopes(const Piece& piece) {
    return std::ranges::any_of(
        piece.ends, [](const PieceEnd& end) { return end.slope != std::array<double, 2>{}; });
}

// A wall with its ends as they are cut, mm: near the datum end and at the far end, in the frame.
engine::Prism prism_of(const Piece& piece, const Plate& plate, const std::array<double, 2>& least) {
    const std::size_t run = index_of(piece.run);
    const std::array<std::size_t, 2> axis{index_of(piece.a_axis), 3 - run - index_of(piece.a_axis)};
    const std::array<int, 2> sense{piece.a_sense, piece.b_sense};
    engine::Prism prism;
    for (const auto& [a_hi, b_hi] :
         {std::pair{false, false}, {true, false}, {true, true}, {false, true}}) {
        engine::Vector corner{};
        std::array<double, 2> in_section{};
        for (std::size_t s = 0; s < 2; ++s) {
            const Nm at = (s == 0 ? a_hi : b_hi) ? plate.box.hi[axis[s]] : plate.box.lo[axis[s]];
            corner[axis[s]] = in_mm(at);
            in_section[s] = in_mm((at - piece.datum[axis[s]]) * sense[s]);
        }
        const auto at_end = [&](std::size_t end) {
            const auto& slope = piece.ends[end].slope;
            const double recedes = slope[0] * in_section[0] + slope[1] * in_section[1] - least[end];
            const double back = recedes + in_mm(piece.ends[end].wall_back[plate.wall]);
            const double from_datum = end == 0 ? back : in_mm(piece.length) - back;
            engine::Vector there = corner;
            there[run] = in_mm(piece.datum[run]) + piece.run_sense * from_datum;
            return there;
        };
        prism.near.push_back(at_end(0));
        prism.far.push_back(at_end(1));
    }
    return prism;
}

// What the cuts of both ends recede by where the section reaches furthest against them, mm.
std::array<double, 2> least_receding(const Piece& piece) {
    const std::size_t run = index_of(piece.run);
    const std::array<std::size_t, 2> axis{index_of(piece.a_axis), 3 - run - index_of(piece.a_axis)};
    const std::array<int, 2> sense{piece.a_sense, piece.b_sense};
    std::array<double, 2> least{std::numeric_limits<double>::max(),
                                std::numeric_limits<double>::max()};
    for (const auto& plate : piece.walls()) {
        if (plate.is_root_fillet) continue;
        for (std::size_t end = 0; end < 2; ++end) {
            double recedes = 0.0;
            for (std::size_t s = 0; s < 2; ++s) {
                const double slope = piece.ends[end].slope[s];
                const double p = in_mm((plate.box.lo[axis[s]] - piece.datum[axis[s]]) * sense[s]);
                const double q = in_mm((plate.box.hi[axis[s]] - piece.datum[axis[s]]) * sense[s]);
                recedes += std::min(slope * p, slope * q);
            }
            least[end] = std::min(least[end], recedes);
        }
    }
    return least;
}

// A wall of a piece that leans.
engine::Prism prism_of(const Piece& piece, std::size_t wall, const Slants& slants) {
    const std::size_t normal = face_axis(piece);
    return flat_prism(leaning_wall(slants, piece, axes_across(normal), wall), piece.plates[wall],
                      normal);
}

}  // namespace

bool is_oblique(const Piece& piece, const Slants& slants) {
    return slants.lean(piece) || slopes(piece);
}

std::vector<engine::Prism> prisms_of(const Piece& piece, const Slants& slants) {
    const auto least = least_receding(piece);
    std::vector<engine::Prism> prisms;
    for (std::size_t k = 0; k < piece.plate_count; ++k) {
        if (piece.plates[k].is_root_fillet) continue;
        prisms.push_back(slants.lean(piece) ? prism_of(piece, k, slants)
                                            : prism_of(piece, piece.plates[k], least));
    }
    return prisms;
}

engine::Prism prism_in_room(const ResolvedFrame& frame, engine::Prism prism) {
    const auto origin = to_room(frame, Point{});
    for (auto* face : {&prism.near, &prism.far}) {
        for (auto& corner : *face) {
            engine::Vector placed{};
            for (std::size_t i = 0; i < 3; ++i) {
                std::array<int, 3> axis{};
                axis[i] = 1;
                const auto turned = direction_to_room(frame, axis);
                for (std::size_t k = 0; k < 3; ++k) placed[k] += turned[k] * corner[i];
            }
            for (std::size_t k = 0; k < 3; ++k) corner[k] = placed[k] + in_mm(origin[k]);
        }
    }
    return prism;
}

std::vector<engine::Prism> prisms_in_room(const ResolvedFrame& frame,
                                          const Piece& piece,
                                          const Slants& slants) {
    auto prisms = prisms_of(piece, slants);
    for (auto& prism : prisms) prism = prism_in_room(frame, std::move(prism));
    return prisms;
}

Box box_in_room(const ResolvedFrame& frame, const Box& box) {
    const Point p = to_room(frame, box.lo);
    const Point q = to_room(frame, box.hi);
    Box out;
    for (std::size_t k = 0; k < 3; ++k) {
        out.lo[k] = std::min(p[k], q[k]);
        out.hi[k] = std::max(p[k], q[k]);
    }
    return out;
}

}  // namespace model
