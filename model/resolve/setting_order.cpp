#include "model/resolve/setting_order.h"

#include "engine/geometry/box_tree.h"
#include "model/resolve/lap_polygon.h"
#include "model/resolve/piece_subject.h"
#include "model/resolve/surroundings.h"

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <utility>

namespace model {
namespace {

// Whether the wall reaches into what must stay clear about the axis from one height above the
// head's surface to another.
bool is_in_the_way(const Box& wall, const Fastener& fastener, Nm from, Nm to, Nm radius) {
    for (std::size_t k = 0; k < 3; ++k) {
        if (k == fastener.axis) continue;
        if (wall.lo[k] - radius >= fastener.at[k] || wall.hi[k] + radius <= fastener.at[k]) {
            return false;
        }
    }
    const Nm surface = fastener.at[fastener.axis];
    const Nm least =
        fastener.drive > 0 ? surface - wall.hi[fastener.axis] : wall.lo[fastener.axis] - surface;
    const Nm most =
        fastener.drive > 0 ? surface - wall.lo[fastener.axis] : wall.hi[fastener.axis] - surface;
    return least < to && from < most;
}

bool keeps_the_tool_off(const Resolved& resolved,
                        const Piece& piece,
                        const Fastener& fastener,
                        bool long_nose) {
    const ResolvedShop& shop = resolved.shop;
    const Nm behind = long_nose ? shop.nose_radius : shop.housing_radius;
    const Slants slants{resolved.outlines, resolved.leans};
    return std::ranges::any_of(boxes_of(slants, piece), [&](const Box& box) {
        return is_in_the_way(box, fastener, 0, shop.nose_reach, shop.nose_radius) ||
               is_in_the_way(box, fastener, shop.nose_reach, tool_length, behind);
    });
}

// A joint, and the pieces that must not be on yet when it is set.
struct Blocked {
    Index joint = 0;
    std::vector<Index> by;
};

// The pieces of one frame by where they are.
class FramePieces {
public:
    FramePieces(const Resolved& resolved, Index frame)
        : resolved_{resolved}, first_{resolved.frames[frame].first_piece} {
        std::vector<Box> extents;
        for (Index i = 0; i < resolved.frames[frame].piece_count; ++i) {
            extents.push_back(resolved.pieces[first_ + i].extents);
        }
        tree_.emplace(extents);
    }

    // What keeps the tool off one of the joint's rivets; panels are put on last of all.
    std::vector<Index> in_the_way(const Joint& joint, bool long_nose) const {
        std::set<Index> found;
        for (const auto& fastener : resolved_.fasteners_of(joint)) {
            const Lap lap{.normal_axis = fastener.axis, .rect = {fastener.at, fastener.at}};
            tree_->for_each_touching(tool_reach(lap, resolved_.shop), [&](Index i) {
                const Index p = first_ + i;
                if (p == joint.pieces[0] || p == joint.pieces[1] || p == joint.shim) return;
                if (p == joint.brace) return;
                const Piece& piece = resolved_.pieces[p];
                if (piece.kind == PieceKind::panel) return;
                if (keeps_the_tool_off(resolved_, piece, fastener, long_nose)) {
                    found.insert(p);
                }
            });
        }
        return {found.begin(), found.end()};
    }

private:
    const Resolved& resolved_;
    Index first_;
    std::optional<engine::BoxTree> tree_;
};

// Those that must be there when it is set.
std::vector<Index> pieces_of(const Joint& joint) {
    std::vector<Index> pieces(joint.pieces.begin(), joint.pieces.end());
    if (joint.brace != no_index) pieces.push_back(joint.brace);
    return pieces;
}

using Before = std::pair<Index, Index>;  // a piece that must be on before another one is

std::set<Before> pairs_of(const Resolved& resolved, std::span<const Blocked> blocked) {
    std::set<Before> pairs;
    for (const auto& one : blocked) {
        for (const Index piece : pieces_of(resolved.joints[one.joint])) {
            for (const Index later : one.by) pairs.insert({piece, later});
        }
    }
    return pairs;
}

// Pieces in an order that keeps all pairs, of several that may come next the first; those in a loop
// or behind one are left out.
std::vector<Index> order_of(const std::set<Before>& pairs) {
    std::map<Index, int> waits_for;
    for (const auto& [first, later] : pairs) {
        waits_for.emplace(first, 0);
        ++waits_for.emplace(later, 0).first->second;
    }
    std::set<Index> ready;
    for (const auto& [piece, count] : waits_for) {
        if (count == 0) ready.insert(piece);
    }
    std::vector<Index> order;
    while (!ready.empty()) {
        const Index piece = *ready.begin();
        ready.erase(ready.begin());
        order.push_back(piece);
        for (auto at = pairs.lower_bound({piece, 0}); at != pairs.end() && at->first == piece;
             ++at) {
            if (--waits_for[at->second] == 0) ready.insert(at->second);
        }
    }
    return order;
}

// Whether `to` must be on after `from`, by way of others.
bool leads_to(const std::set<Before>& pairs, Index from, Index to) {
    std::set<Index> seen{from};
    std::vector<Index> open{from};
    while (!open.empty()) {
        const Index piece = open.back();
        open.pop_back();
        if (piece == to) return true;
        for (auto at = pairs.lower_bound({piece, 0}); at != pairs.end() && at->first == piece;
             ++at) {
            if (seen.insert(at->second).second) open.push_back(at->second);
        }
    }
    return false;
}

class Report {
public:
    Report(const Project& project, Resolved& resolved) : project_{project}, resolved_{resolved} {}

    void add(std::span<const Blocked> blocked) {
        const auto pairs = pairs_of(resolved_, blocked);
        const auto order = order_of(pairs);
        const std::set<Index> placed(order.begin(), order.end());
        const std::size_t first = resolved_.findings.size();
        std::vector<Subject> in_loop;
        std::size_t settable = 0;
        for (const auto& one : blocked) {
            const bool is_settable =
                std::ranges::all_of(one.by, [&](Index later) { return placed.contains(later); });
            settable += is_settable ? 1U : 0U;
            if (!is_settable && is_in_loop(one, pairs)) {
                for (auto& subject : subjects(one.joint)) in_loop.push_back(std::move(subject));
            } else {
                resolved_.findings.push_back(set_before(one));
            }
        }
        merge_alike(resolved_.findings, first);
        if (settable > 0) resolved_.findings.push_back(setting_order(blocked, order, settable));
        if (!in_loop.empty()) resolved_.findings.push_back(no_order(std::move(in_loop)));
    }

private:
    const Frame& frame_of(Index joint) const {
        return project_.frames[resolved_.joints[joint].frame];
    }

    Subject joint(Index index) const {
        const auto& pieces = resolved_.joints[index].pieces;
        return joint_subject(frame_of(index), resolved_.pieces[pieces[0]],
                             resolved_.pieces[pieces[1]]);
    }

    std::vector<Subject> subjects(Index index) const {
        return joint_subjects(frame_of(index), resolved_, index);
    }

    // "rail left top", "post part 2"; of a part: "the part at post + rail".
    std::string words(Index piece) const {
        const Piece& of = resolved_.pieces[piece];
        if (of.kind == PieceKind::shim) {
            const auto at = std::ranges::find(resolved_.joints, piece, &Joint::shim);
            if (at == resolved_.joints.end()) return "a shim";
            return "the shim at " + joint(static_cast<Index>(at - resolved_.joints.begin())).name;
        }
        const auto subject = piece_subject(project_.frames[of.frame], of);
        if (subject.kind == SubjectKind::joint) return "the part at " + subject.name;
        if (subject.kind == SubjectKind::diagonal) return "brace " + subject.name;
        if (subject.kind == SubjectKind::leaning) return "leaning member " + subject.name;
        return subject.name + (is_split(of) ? " part " + std::to_string(of.part + 1) : "");
    }

    bool is_split(const Piece& piece) const {
        if (piece.member == no_index) return false;
        const auto& frame = resolved_.frames[piece.frame];
        const auto all = std::span(resolved_.pieces).subspan(frame.first_piece, frame.piece_count);
        return std::ranges::count(all, piece.member, &Piece::member) > 1;
    }

    std::string list(std::span<const Index> pieces, std::string_view last) const {
        std::string text;
        for (std::size_t i = 0; i < pieces.size(); ++i) {
            if (i > 0) text += i + 1 == pieces.size() ? std::string(last) : std::string(", ");
            text += words(pieces[i]);
        }
        return text;
    }

    bool is_in_loop(const Blocked& one, const std::set<Before>& pairs) const {
        return std::ranges::any_of(pieces_of(resolved_.joints[one.joint]), [&](Index piece) {
            return std::ranges::any_of(one.by,
                                       [&](Index later) { return leads_to(pairs, later, piece); });
        });
    }

    Finding set_before(const Blocked& one) const {
        return {.code = "set_before",
                .severity = Severity::note,
                .concerns = subjects(one.joint),
                .what = "once " + list(one.by, " or ") +
                        " is on, the setting tool does not reach these rivets",
                .mend = "set them before; or choose another recipe, or turn a leg"};
    }

    Finding setting_order(std::span<const Blocked> blocked,
                          std::span<const Index> order,
                          std::size_t settable) const {
        const auto& frame = frame_of(blocked.front().joint);
        return {.code = "setting_order",
                .severity = Severity::note,
                .concerns = {{SubjectKind::frame, {}, frame.name}},
                .numbers = {{"joints", static_cast<double>(settable)}},
                .what = "the rivets of " + std::to_string(settable) +
                        (settable == 1 ? " joint" : " joints") +
                        " must be set before all pieces are on; there is an order that works",
                .mend =
                    "put these on one after the other, and set the rivets of each joint as "
                    "soon as both its pieces are there: " +
                    list(order, ", then ")};
    }

    static Finding no_order(std::vector<Subject> joints) {
        return {.code = "no_setting_order",
                .severity = Severity::warning,
                .concerns = std::move(joints),
                .what =
                    "put on one piece after the other, each of these joints would have to be "
                    "set before a piece of another one of them is on",
                .mend =
                    "rivet parts of the frame together on the bench before you join them, make "
                    "one of the joints removable, turn a leg, or choose another recipe there"};
    }

    const Project& project_;
    Resolved& resolved_;
};

}  // namespace

std::vector<EarlyJoint> early_joints(std::span<const LapPlan> plans) {
    std::vector<EarlyJoint> joints;
    for (Index i = 0; i < plans.size(); ++i) {
        if (plans[i].before_others && plans[i].layout.count > 0) {
            joints.push_back({i, plans[i].long_nose});
        }
    }
    return joints;
}

void report_setting_order(const Project& project,
                          std::span<const EarlyJoint> joints,
                          Resolved& resolved) {
    Report report(project, resolved);
    for (std::size_t at = 0; at < joints.size();) {
        const Index frame = resolved.joints[joints[at].joint].frame;
        const FramePieces pieces(resolved, frame);
        std::vector<Blocked> blocked;
        for (; at < joints.size() && resolved.joints[joints[at].joint].frame == frame; ++at) {
            const auto& [index, long_nose] = joints[at];
            auto by = pieces.in_the_way(resolved.joints[index], long_nose);
            if (!by.empty()) blocked.push_back({index, std::move(by)});
        }
        if (!blocked.empty()) report.add(blocked);
    }
}

}  // namespace model
