#include "model/resolve/interference.h"

#include "engine/geometry/box_tree.h"

#include <algorithm>
#include <array>
#include <map>
#include <optional>

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

Finding interference(const Project& project, Subject a, Subject b, Nm depth) {
    return {.code = "interference",
            .severity = Severity::error,
            .concerns = {std::move(a), std::move(b)},
            .numbers = {{"depth", Length::from_nm(depth)}},
            .what = "these two would have to be in the same place: one enters the other by " +
                    length_in_words(Length::from_nm(depth), project.shown),
            .mend = "move a plane, turn a leg, or take one of them out"};
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
    const Frame& frame = project.frames[p.frame];
    if (p.kind == PieceKind::panel && p.stated < frame.panels.size()) {
        return {SubjectKind::panel, frame.name, frame.panels[p.stated].name};
    }
    if (p.member == no_index) return {SubjectKind::frame, {}, frame.name};
    return member_subject(frame, p.member);
}

void compare_frames(const Project& project,
                    const Resolved& resolved,
                    Index a,
                    Index b,
                    const Box& common,
                    std::vector<Finding>& findings) {
    const ResolvedFrame& first = resolved.frames[a];
    const ResolvedFrame& second = resolved.frames[b];
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
    std::map<std::array<Index, 2>, Entering> found;  // by their members
    const engine::BoxTree tree(boxes);
    for (Index i = second.first_piece; i < second.first_piece + second.piece_count; ++i) {
        const InRoom here = piece_in_room(second, resolved.pieces[i]);
        std::vector<Index> near;
        tree.for_each_touching(here.extents, [&](Index k) { near.push_back(pieces[k]); });
        std::sort(near.begin(), near.end());
        for (const Index k : near) {
            const InRoom other = piece_in_room(first, resolved.pieces[k]);
            const Nm depth =
                deepest({here.plates.data(), here.count}, {other.plates.data(), other.count});
            if (depth == 0) continue;
            const std::array<Index, 2> members{resolved.pieces[k].member,
                                               resolved.pieces[i].member};
            auto& deepest_yet = found[members];
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

void report_interference(const Project& project,
                         const FrameSkeleton& s,
                         const engine::BoxTree& tree,
                         std::vector<Finding>& findings) {
    const Frame& frame = project.frames[s.frame];
    std::map<std::array<Index, 2>, Nm> depths;  // of two bars, the lower number first
    for (Index p = 0; p < s.pieces.size(); ++p) {
        const Piece& piece = s.pieces[p];
        tree.for_each_touching(piece.extents, [&](Index q) {
            if (q <= p || s.bar_of[p] == s.bar_of[q]) return;
            if (!engine::overlaps(piece.extents, s.pieces[q].extents)) return;
            const Nm depth = deepest(piece.walls(), s.pieces[q].walls());
            if (depth == 0) return;
            Nm& most =
                depths[{std::min(s.bar_of[p], s.bar_of[q]), std::max(s.bar_of[p], s.bar_of[q])}];
            most = std::max(most, depth);
        });
    }
    for (const auto& [bars, depth] : depths) {
        findings.push_back(interference(project, member_subject(frame, s.bars[bars[0]].member),
                                        member_subject(frame, s.bars[bars[1]].member), depth));
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
