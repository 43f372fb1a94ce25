#include "model/assembly/part.h"

#include "model/assembly/flat_parts.h"

#include <algorithm>
#include <utility>

namespace model {
namespace {

PartKind kind_of(const FrameParts& parts, Index i) {
    const Piece& piece = parts.piece(i);
    const auto joints = parts.joints_of(i);
    const auto is_held = [&](Index j) { return parts.joints()[j].is_fastened; };
    if (piece.kind == PieceKind::panel) {
        return std::ranges::any_of(joints, is_held) ? PartKind::panel : PartKind::hung;
    }
    const bool is_bar = piece.kind == PieceKind::bar || piece.kind == PieceKind::leaning;
    return is_bar ? PartKind::bar : PartKind::small;
}

Part made_of(const FrameParts& parts, PartKind kind, std::vector<Index> pieces) {
    Part part{.kind = kind, .pieces = std::move(pieces), .set = PieceSet(parts.size())};
    std::ranges::sort(part.pieces);
    for (const Index i : part.pieces) part.set.insert(i);
    return part;
}

// Of the two ways across it the one into the frame.
std::size_t off_bench(const FrameParts& parts, const Part& flat, Axis axis) {
    const std::size_t k = index_of(axis);
    Box here = parts.piece(flat.pieces.front()).extents;
    for (const Index i : flat.pieces) here = engine::hull(here, parts.piece(i).extents);
    Box all = here;
    for (Index i = 0; i < parts.size(); ++i) all = engine::hull(all, parts.piece(i).extents);
    const bool is_at_begin = here.lo[k] - all.lo[k] <= all.hi[k] - here.hi[k];
    return 2 * k + (is_at_begin ? 0 : 1);
}

// What rivets, and screws that stay, hold together.
std::vector<PieceSet> held_for_good(const FrameParts& parts) {
    std::vector<PieceSet> groups;
    PieceSet seen(parts.size());
    for (Index start = 0; start < parts.size(); ++start) {
        if (seen.contains(start)) continue;
        PieceSet group(parts.size());
        group.insert(start);
        std::vector<Index> open{start};
        while (!open.empty()) {
            const Index at = open.back();
            open.pop_back();
            for (const Index j : parts.joints_of(at)) {
                const JointOfFrame& joint = parts.joints()[j];
                if (!joint.is_fastened || joint.comes_apart) continue;
                for (const Index next : joint.together) {
                    if (!group.contains(next)) open.push_back(next);
                    group.insert(next);
                }
            }
        }
        seen |= group;
        groups.push_back(std::move(group));
    }
    return groups;
}

bool hangs_on_screws(const FrameParts& parts, const PieceSet& group) {
    return std::ranges::any_of(parts.joints(), [&](const JointOfFrame& joint) {
        return joint.comes_apart && joint.set.meets(group) && !joint.set.is_within(group);
    });
}

// Where screws hold most of a frame none of it counts as what comes off the rest.
std::vector<PieceSet> what_comes_off(const FrameParts& parts) {
    auto groups = held_for_good(parts);
    const auto main = std::ranges::max_element(groups, {}, [](const auto& g) { return g.size(); });
    if (main == groups.end() || 2 * main->size() < parts.size()) return {};
    groups.erase(main);
    std::erase_if(groups, [&](const PieceSet& group) { return !hangs_on_screws(parts, group); });
    return groups;
}

}  // namespace

std::vector<Part> single_parts(const FrameParts& parts, const PieceSet& of) {
    std::vector<Part> singles;
    of.for_each([&](Index i) {
        singles.push_back(made_of(parts, kind_of(parts, i), {i}));
        if (parts.piece(i).kind == PieceKind::panel) {
            singles.back().best_along = static_cast<Axis>(parts.piece(i).plates[0].normal_axis);
        }
    });
    return singles;
}

std::vector<Part> flat_and_single(const FrameParts& parts, Axis axis, const PieceSet& of) {
    std::vector<Part> all;
    PieceSet rest = of;
    for (auto& flat : flat_parts(parts, axis, of)) {
        Part part = made_of(parts, PartKind::flat, std::move(flat.pieces));
        part.face = std::move(flat.face);
        part.best_along = axis;
        part.inside = single_parts(parts, part.set);
        for (auto& piece : part.inside) piece.off_bench = off_bench(parts, part, axis);
        rest -= part.set;
        all.push_back(std::move(part));
    }
    for (auto& single : single_parts(parts, rest)) all.push_back(std::move(single));
    return all;
}

std::vector<Part> parts_of_frame(const FrameParts& parts, Axis axis) {
    std::vector<Part> all;
    PieceSet rest = parts.all();
    for (const auto& group : what_comes_off(parts)) {
        Part part = made_of(parts, PartKind::comes_apart, group.list());
        if (part.pieces.size() == 1) part.best_along = single_parts(parts, group)[0].best_along;
        if (part.pieces.size() > 1) part.inside = flat_and_single(parts, axis, group);
        rest -= group;
        all.push_back(std::move(part));
    }
    for (auto& part : flat_and_single(parts, axis, rest)) all.push_back(std::move(part));
    return all;
}

}  // namespace model
