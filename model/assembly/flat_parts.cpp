#include "model/assembly/flat_parts.h"

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <tuple>
#include <utility>

namespace model {
namespace {

constexpr std::size_t least_pieces = 3;

// The plane across the axis in which a piece lies.
class PlaneOf {
public:
    PlaneOf(const FrameParts& parts, Axis axis) : parts_{parts}, axis_{axis} {}

    const Plane* stated(Index local) const {
        const std::string* name = name_of_plane(parts_.piece(local));
        if (name == nullptr) return nullptr;
        const auto& planes = parts_.stated().planes;
        const auto found = std::ranges::find(planes, *name, &Plane::name);
        return found != planes.end() && found->axis == axis_ ? &*found : nullptr;
    }

    std::optional<Nm> position(Index local) const {
        const Plane* plane = stated(local);
        if (plane == nullptr) return std::nullopt;
        const auto number = static_cast<std::size_t>(plane - parts_.stated().planes.data());
        const auto& placed = parts_.placed().planes;
        return number < placed.size() ? placed[number].position : std::nullopt;
    }

private:
    const std::string* name_of_plane(const Piece& piece) const {
        const Frame& frame = parts_.stated();
        if (piece.member < frame.members.size()) {
            const Member& member = frame.members[piece.member];
            if (member.run == axis_) return nullptr;
            return &member.on[across(member.run)[0] == axis_ ? 0 : 1];
        }
        if (piece.kind == PieceKind::leaning && piece.stated < frame.leaning.size()) {
            return &frame.leaning[piece.stated].face;
        }
        return nullptr;
    }

    const FrameParts& parts_;
    Axis axis_;
};

// Pieces that are joined to one another by fasteners, of `of`; each set with its least piece first.
std::vector<PieceSet> joined_within(const FrameParts& parts, const PieceSet& of) {
    std::vector<PieceSet> groups;
    PieceSet seen(parts.size());
    of.for_each([&](Index start) {
        if (seen.contains(start)) return;
        PieceSet group(parts.size());
        std::vector<Index> open{start};
        group.insert(start);
        while (!open.empty()) {
            const Index at = open.back();
            open.pop_back();
            for (const Index j : parts.joints_of(at)) {
                const JointOfFrame& joint = parts.joints()[j];
                if (!joint.is_fastened) continue;
                for (const Index next : joint.together) {
                    if (!of.contains(next) || group.contains(next)) continue;
                    group.insert(next);
                    open.push_back(next);
                }
            }
        }
        seen |= group;
        groups.push_back(std::move(group));
    });
    return groups;
}

// Gussets, cleats, braces, shims and feet that hold nothing but this.
void add_what_it_holds(const FrameParts& parts, const PieceSet& of, PieceSet& group) {
    for (Index i = 0; i < parts.size(); ++i) {
        const Piece& piece = parts.piece(i);
        if (!of.contains(i) || group.contains(i)) continue;
        if (piece.kind == PieceKind::bar || piece.kind == PieceKind::leaning ||
            piece.kind == PieceKind::panel) {
            continue;
        }
        const auto joints = parts.joints_of(i);
        const bool is_of_it = std::ranges::all_of(joints, [&](Index j) {
            return std::ranges::all_of(parts.joints()[j].together, [&](Index other) {
                return other == i || group.contains(other) ||
                       parts.piece(other).kind == PieceKind::shim;
            });
        });
        if (is_of_it && !joints.empty()) group.insert(i);
    }
}

std::size_t joints_within(const FrameParts& parts, const PieceSet& group) {
    return static_cast<std::size_t>(
        std::ranges::count_if(parts.joints(), [&](const JointOfFrame& joint) {
            return joint.is_fastened && joint.set.is_within(group);
        }));
}

double area_of(const FrameParts& parts, const FlatPart& part, Axis axis) {
    Box all = parts.piece(part.pieces.front()).extents;
    for (const Index i : part.pieces) all = engine::hull(all, parts.piece(i).extents);
    double area = 1.0;
    for (const Axis k : across(axis)) {
        area *= static_cast<double>(all.hi[index_of(k)] - all.lo[index_of(k)]) / 1e6;
    }
    return area;
}

}  // namespace

std::vector<FlatPart> flat_parts(const FrameParts& parts, Axis axis, const PieceSet& of) {
    const PlaneOf plane_of(parts, axis);
    std::map<Nm, PieceSet> by_plane;
    of.for_each([&](Index i) {
        const auto at = plane_of.position(i);
        if (at) by_plane.try_emplace(*at, parts.size()).first->second.insert(i);
    });
    std::vector<FlatPart> flat;
    for (const auto& [at, lying] : by_plane) {
        for (auto& group : joined_within(parts, lying)) {
            if (group.size() < least_pieces) continue;
            const Plane* plane = plane_of.stated(group.list().front());
            add_what_it_holds(parts, of, group);
            flat.push_back({plane->name, group.list()});
        }
    }
    return flat;
}

std::vector<Axis> axes_by_worth(const FrameParts& parts, const PieceSet& of) {
    struct Worth {
        std::size_t joints = 0;
        double area = 0.0;
        Axis axis = Axis::x;
    };
    std::vector<Worth> worths;
    for (const Axis axis : {Axis::x, Axis::y, Axis::z}) {
        Worth worth{.axis = axis};
        const auto flat = flat_parts(parts, axis, of);
        for (const auto& part : flat) {
            worth.area = std::max(worth.area, area_of(parts, part, axis));
            if (part.face != flat.front().face && part.face != flat.back().face) continue;
            PieceSet set(parts.size());
            for (const Index i : part.pieces) set.insert(i);
            worth.joints += joints_within(parts, set);
        }
        worths.push_back(worth);
    }
    std::ranges::stable_sort(worths, [](const Worth& a, const Worth& b) {
        return std::tie(b.joints, a.area) < std::tie(a.joints, b.area);
    });
    std::vector<Axis> axes;
    for (const auto& worth : worths) axes.push_back(worth.axis);
    return axes;
}

}  // namespace model
