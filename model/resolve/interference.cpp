#include "model/resolve/interference.h"

#include "engine/geometry/box_tree.h"
#include "engine/geometry/convex.h"
#include "model/resolve/piece_place.h"
#include "model/resolve/piece_subject.h"
#include "model/resolve/sheet_outline.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <map>
#include <optional>
#include <string>
#include <utility>

namespace model {
namespace {

// How far two boxes would have to be moved apart along one axis; 0 when they share no volume.
Nm depth_of(const Box& a, const Box& b) {
    if (!engine::overlaps(a, b)) return 0;
    const Box both = engine::intersection(a, b);
    return std::min({both.hi[0] - both.lo[0], both.hi[1] - both.lo[1], both.hi[2] - both.lo[2]});
}

Nm deepest(std::span<const Plate> a, std::span<const Plate> b) {
    Nm depth = 0;
    for (const auto& p : a) {
        for (const auto& q : b) {
            if (!p.is_root_fillet && !q.is_root_fillet) {
                depth = std::max(depth, depth_of(p.box, q.box));
            }
        }
    }
    return depth;
}

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
            const double from_datum = end == 0 ? recedes : in_mm(piece.length) - recedes;
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

// The wall of a piece that leans.
engine::Prism prism_of(const Piece& piece, const Plate& plate, const Slants& slants) {
    const std::size_t normal = plate.normal_axis;
    const auto axes = axes_across(normal);
    engine::Prism prism;
    for (const auto& corner : leaning_wall(slants, piece, axes)) {
        engine::Vector at{};
        for (std::size_t k = 0; k < 2; ++k) at[axes[k]] = corner[k] / 1e6;
        at[normal] = in_mm(plate.box.lo[normal]);
        prism.near.push_back(at);
        at[normal] = in_mm(plate.box.hi[normal]);
        prism.far.push_back(at);
    }
    return prism;
}

std::vector<engine::Prism> prisms_of(const Piece& piece, const Slants& slants) {
    const auto least = least_receding(piece);
    std::vector<engine::Prism> prisms;
    for (const auto& plate : piece.walls()) {
        if (plate.is_root_fillet) continue;
        prisms.push_back(slants.lean(piece) ? prism_of(piece, plate, slants)
                                            : prism_of(piece, plate, least));
    }
    return prisms;
}

Nm deepest(std::span<const engine::Prism> a, std::span<const engine::Prism> b) {
    double depth = 0.0;
    for (const auto& p : a) {
        for (const auto& q : b) depth = std::max(depth, engine::depth_of_overlap(p, q));
    }
    // Less is the rounding of doubles and, of what leans, of its corners.
    constexpr double least_that_counts = 2e-6;
    return depth < least_that_counts ? 0 : std::llround(depth * 1e6);
}

bool is_oblique(const Piece& piece, const Slants& slants) {
    return slants.lean(piece) || slopes(piece);
}

Nm deepest(const Piece& a, const Piece& b, const Slants& slants) {
    if (!is_oblique(a, slants) && !is_oblique(b, slants)) return deepest(a.walls(), b.walls());
    return deepest(prisms_of(a, slants), prisms_of(b, slants));
}

// Of a brace and a part of sheet what is cut out of that counts too.
SharedPlace shared_by(const Slants& slants, const Piece& a, const Piece& b) {
    if (slants.lean(a) && is_of_sheet(b.kind)) return shared_place(slants, a, b);
    if (slants.lean(b) && is_of_sheet(a.kind)) return shared_place(slants, b, a);
    return SharedPlace::sure;
}

Finding interference(const Project& project, Subject a, Subject b, Nm depth, bool is_sure = true) {
    const bool is_of_brace = a.kind == SubjectKind::diagonal || b.kind == SubjectKind::diagonal;
    return {.code = "interference",
            .severity = Severity::error,
            .concerns = {std::move(a), std::move(b)},
            .numbers = {{"depth", Length::from_nm(depth)}},
            .what = std::string("these two ") + (is_sure ? "would" : "may") +
                    " have to be in the same place: one enters the other by " +
                    length_in_words(Length::from_nm(depth), project.shown),
            .mend = is_of_brace ? "put the brace on the other side of the face, choose other nodes "
                                  "for it, or take it out"
                                : "move a plane, turn a leg, or take one of them out"};
}

// A piece's plates in the room.
struct InRoom {
    Box extents;
    std::array<Plate, 6> plates{};
    std::uint8_t count = 0;
};

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

InRoom piece_in_room(const ResolvedFrame& frame, const Piece& piece) {
    InRoom out{box_in_room(frame, piece.extents), piece.plates, piece.plate_count};
    for (std::size_t k = 0; k < out.count; ++k) {
        out.plates[k].box = box_in_room(frame, piece.plates[k].box);
    }
    return out;
}

std::optional<Box> frame_in_room(const Resolved& resolved, const ResolvedFrame& frame) {
    std::optional<Box> all;
    for (Index i = frame.first_piece; i < frame.first_piece + frame.piece_count; ++i) {
        const Box box = box_in_room(frame, resolved.pieces[i].extents);
        all = all ? engine::hull(*all, box) : box;
    }
    return all;
}

Subject subject_of(const Project& project, const Resolved& resolved, Index piece) {
    const Piece& p = resolved.pieces[piece];
    return piece_subject(project.frames[p.frame], p);
}

// A member is one thing however often it is split; every other part is one of its own.
Index thing_of(const FrameSkeleton& s, Index piece) {
    const Index bar = s.bar_of[piece];
    return bar != no_index ? bar : static_cast<Index>(s.bars.size()) + piece;
}

Index key_of(const Piece& piece, Index number) {
    constexpr Index beyond_members = 0x8000'0000U;
    return piece.member != no_index ? piece.member : beyond_members + number;
}

void compare_frames(const Project& project,
                    const Resolved& resolved,
                    Index a,
                    Index b,
                    const Box& common,
                    std::vector<Finding>& findings) {
    const ResolvedFrame& first = resolved.frames[a];
    const ResolvedFrame& second = resolved.frames[b];
    const Slants slants{resolved.outlines, resolved.leans};
    std::vector<Index> pieces;
    std::vector<Box> boxes;
    for (Index i = first.first_piece; i < first.first_piece + first.piece_count; ++i) {
        const Box box = box_in_room(first, resolved.pieces[i].extents);
        if (!engine::overlaps(box, common)) continue;
        pieces.push_back(i);
        boxes.push_back(box);
    }
    struct Entering {
        Nm depth = 0;
        Index one = 0;
        Index other = 0;
    };
    std::map<std::array<Index, 2>, Entering> found;  // by member, or by part
    const engine::BoxTree tree(boxes);
    for (Index i = second.first_piece; i < second.first_piece + second.piece_count; ++i) {
        const InRoom here = piece_in_room(second, resolved.pieces[i]);
        std::vector<Index> near;
        tree.for_each_touching(here.extents, [&](Index k) { near.push_back(pieces[k]); });
        std::sort(near.begin(), near.end());
        for (const Index k : near) {
            const Piece& one = resolved.pieces[k];
            const Piece& two = resolved.pieces[i];
            const InRoom other = piece_in_room(first, one);
            const Nm depth =
                is_oblique(one, slants) || is_oblique(two, slants)
                    ? deepest(prisms_in_room(first, one, slants),
                              prisms_in_room(second, two, slants))
                    : deepest({here.plates.data(), here.count}, {other.plates.data(), other.count});
            if (depth == 0) continue;
            auto& deepest_yet =
                found[{key_of(resolved.pieces[k], k), key_of(resolved.pieces[i], i)}];
            if (depth > deepest_yet.depth) deepest_yet = {depth, k, i};
        }
    }
    for (const auto& [members, entering] : found) {
        findings.push_back(interference(project, subject_of(project, resolved, entering.one),
                                        subject_of(project, resolved, entering.other),
                                        entering.depth));
    }
}

}  // namespace

Nm depth_of_interference(const Piece& a, const Piece& b, const Slants& slants) {
    return deepest(a, b, slants);
}

void report_interference(const Project& project,
                         const FrameSkeleton& s,
                         const Slants& slants,
                         const engine::BoxTree& tree,
                         std::vector<Finding>& findings) {
    const Frame& frame = project.frames[s.frame];
    struct Deepest {
        Nm depth = 0;
        std::array<Index, 2> pieces{};
        bool is_sure = true;
    };
    std::map<std::array<Index, 2>, Deepest> found;  // of two things, the lower number first
    for (Index p = 0; p < s.pieces.size(); ++p) {
        const Piece& piece = s.pieces[p];
        tree.for_each_touching(piece.extents, [&](Index q) {
            if (q <= p || thing_of(s, p) == thing_of(s, q)) return;
            if (!engine::overlaps(piece.extents, s.pieces[q].extents)) return;
            const Nm depth = deepest(piece, s.pieces[q], slants);
            if (depth == 0) return;
            const auto shared = shared_by(slants, piece, s.pieces[q]);
            if (shared == SharedPlace::none) return;
            const Index one = thing_of(s, p);
            const Index other = thing_of(s, q);
            auto& most = found[{std::min(one, other), std::max(one, other)}];
            if (depth > most.depth) most = {depth, {p, q}, shared == SharedPlace::sure};
        });
    }
    for (const auto& [things, deepest] : found) {
        findings.push_back(interference(project, piece_subject(frame, s.pieces[deepest.pieces[0]]),
                                        piece_subject(frame, s.pieces[deepest.pieces[1]]),
                                        deepest.depth, deepest.is_sure));
    }
}

void report_interference_of_frames(const Project& project,
                                   const Resolved& resolved,
                                   std::vector<Finding>& findings) {
    std::vector<Box> boxes;
    std::vector<Index> frames;
    for (Index f = 0; f < resolved.frames.size(); ++f) {
        const auto box = frame_in_room(resolved, resolved.frames[f]);
        if (!box) continue;
        frames.push_back(f);
        boxes.push_back(*box);
    }
    const engine::BoxTree tree(boxes);
    for (Index i = 0; i < frames.size(); ++i) {
        std::vector<Index> later;
        tree.for_each_touching(boxes[i], [&](Index k) {
            if (k > i && engine::overlaps(boxes[i], boxes[k])) later.push_back(k);
        });
        std::sort(later.begin(), later.end());
        for (const Index k : later) {
            compare_frames(project, resolved, frames[i], frames[k],
                           engine::intersection(boxes[i], boxes[k]), findings);
        }
    }
}

}  // namespace model
