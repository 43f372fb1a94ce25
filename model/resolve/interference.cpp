#include "model/resolve/interference.h"

#include "engine/geometry/box_tree.h"
#include "engine/geometry/convex.h"
#include "model/resolve/piece_prisms.h"
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

Nm deepest(std::span<const engine::Prism> a, std::span<const engine::Prism> b) {
    double depth = 0.0;
    for (const auto& p : a) {
        for (const auto& q : b) depth = std::max(depth, engine::depth_of_overlap(p, q));
    }
    // Less is the rounding of doubles and, of what leans, of its corners.
    constexpr double least_that_counts = 2e-6;
    return depth < least_that_counts ? 0 : std::llround(depth * 1e6);
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

constexpr const char* mend_of_what_leaning_enters =
    "let the level member end in front of the leaning one: give it a plane of its own there, moved "
    "by a formula; or turn the leg along the face, choose other nodes, or take one of them out";

Finding interference(const Project& project, Subject a, Subject b, Nm depth, bool is_sure = true) {
    const auto is_any = [&](SubjectKind kind) { return a.kind == kind || b.kind == kind; };
    std::string mend = "move a plane, turn a leg, or take one of them out";
    if (is_any(SubjectKind::leaning)) mend = mend_of_what_leaning_enters;
    if (is_any(SubjectKind::diagonal)) {
        mend =
            "put the brace on the other side of the face, choose other nodes for it, or take it "
            "out";
    }
    return {.code = "interference",
            .severity = Severity::error,
            .concerns = {std::move(a), std::move(b)},
            .numbers = {{"depth", Length::from_nm(depth)}},
            .what = std::string("these two ") + (is_sure ? "would" : "may") +
                    " have to be in the same place: one enters the other by " +
                    depth_in_words(Length::from_nm(depth), project.shown),
            .mend = std::move(mend)};
}

// A piece's plates in the room.
struct InRoom {
    Box extents;
    std::array<Plate, 6> plates{};
    std::uint8_t count = 0;
};

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
