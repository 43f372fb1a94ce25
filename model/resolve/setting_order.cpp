#include "model/resolve/setting_order.h"

#include "model/resolve/piece_subject.h"
#include "model/resolve/surroundings.h"

#include <algorithm>
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

bool keeps_the_tool_off(const Piece& piece,
                        const Fastener& fastener,
                        const ResolvedShop& shop,
                        bool long_nose) {
    const Nm behind = long_nose ? shop.nose_radius : shop.housing_radius;
    return std::ranges::any_of(piece.walls(), [&](const Plate& plate) {
        return is_in_the_way(plate.box, fastener, 0, shop.nose_reach, shop.nose_radius) ||
               is_in_the_way(plate.box, fastener, shop.nose_reach, tool_length, behind);
    });
}

// A joint, and the pieces that must not be on yet when it is set.
struct Blocked {
    Index joint = 0;
    std::vector<Index> by;
};

std::vector<Blocked> blocked_joints(const Resolved& resolved, std::span<const EarlyJoint> joints) {
    std::vector<Blocked> all;
    for (const auto& [index, long_nose] : joints) {
        const Joint& joint = resolved.joints[index];
        const ResolvedFrame& frame = resolved.frames[joint.frame];
        Blocked blocked{.joint = index, .by = {}};
        for (Index p = frame.first_piece; p < frame.first_piece + frame.piece_count; ++p) {
            if (p == joint.pieces[0] || p == joint.pieces[1] || p == joint.shim) continue;
            const Piece& piece = resolved.pieces[p];
            if (piece.kind == PieceKind::panel) continue;  // put on last of all
            const auto fasteners = resolved.fasteners_of(joint);
            if (std::ranges::any_of(fasteners, [&](const Fastener& fastener) {
                    return keeps_the_tool_off(piece, fastener, resolved.shop, long_nose);
                })) {
                blocked.by.push_back(p);
            }
        }
        if (!blocked.by.empty()) all.push_back(std::move(blocked));
    }
    return all;
}

using Before = std::pair<Index, Index>;  // a piece that must be on before another one is

std::set<Before> pairs_of(const Resolved& resolved, std::span<const Blocked> blocked) {
    std::set<Before> pairs;
    for (const auto& one : blocked) {
        for (const Index piece : resolved.joints[one.joint].pieces) {
            for (const Index later : one.by) pairs.insert({piece, later});
        }
    }
    return pairs;
}

// Pieces in an order that keeps all pairs; those in or behind a loop are left out, and their pairs
// stay in `pairs`.
std::vector<Index> order_of(std::set<Before>& pairs) {
    std::set<Index> left;
    for (const auto& [first, later] : pairs) left.insert({first, later});
    std::vector<Index> order;
    const auto must_wait = [&](Index piece) {
        return std::ranges::any_of(pairs, [&](const Before& pair) { return pair.second == piece; });
    };
    for (auto at = left.begin(); at != left.end();) {
        if (must_wait(*at)) {
            ++at;
            continue;
        }
        const Index piece = *at;
        order.push_back(piece);
        left.erase(at);
        std::erase_if(pairs, [&](const Before& pair) { return pair.first == piece; });
        at = left.begin();
    }
    return order;
}

// Without what only lies behind a loop.
void keep_loops(std::set<Before>& pairs) {
    for (std::size_t before = pairs.size() + 1; before != pairs.size();) {
        before = pairs.size();
        std::set<Index> followed;
        for (const auto& pair : pairs) followed.insert(pair.first);
        std::erase_if(pairs, [&](const Before& pair) { return !followed.contains(pair.second); });
    }
}

class Report {
public:
    Report(const Project& project, Resolved& resolved) : project_{project}, resolved_{resolved} {}

    void add(std::span<const Blocked> blocked) {
        auto pairs = pairs_of(resolved_, blocked);
        const auto order = order_of(pairs);
        keep_loops(pairs);
        const std::size_t first = resolved_.findings.size();
        std::vector<Subject> in_loop;
        std::size_t settable = 0;
        for (const auto& one : blocked) {
            if (is_in(one, pairs)) {
                in_loop.push_back(joint(one.joint));
            } else {
                resolved_.findings.push_back(set_before(one));
                ++settable;
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

    // "rail left top"; of a part: "the part at post + rail".
    std::string words(Index piece) const {
        const Piece& of = resolved_.pieces[piece];
        if (of.kind == PieceKind::shim) {
            const auto at = std::ranges::find(resolved_.joints, piece, &Joint::shim);
            if (at == resolved_.joints.end()) return "a shim";
            return "the shim at " + joint(static_cast<Index>(at - resolved_.joints.begin())).name;
        }
        const auto subject = piece_subject(project_.frames[of.frame], of);
        return subject.kind == SubjectKind::joint ? "the part at " + subject.name : subject.name;
    }

    std::string list(std::span<const Index> pieces, std::string_view last) const {
        std::vector<std::string> names;
        for (const Index piece : pieces) {
            auto name = words(piece);
            if (std::ranges::find(names, name) == names.end()) names.push_back(std::move(name));
        }
        std::string text;
        for (std::size_t i = 0; i < names.size(); ++i) {
            if (i > 0) text += i + 1 == names.size() ? std::string(last) : std::string(", ");
            text += names[i];
        }
        return text;
    }

    bool is_in(const Blocked& one, const std::set<Before>& loops) const {
        for (const Index piece : resolved_.joints[one.joint].pieces) {
            for (const Index later : one.by) {
                if (loops.contains({piece, later})) return true;
            }
        }
        return false;
    }

    Finding set_before(const Blocked& one) const {
        return {.code = "set_before",
                .severity = Severity::note,
                .concerns = {joint(one.joint)},
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
                .severity = Severity::error,
                .concerns = std::move(joints),
                .what =
                    "each of these joints would have to be set before a piece of another one "
                    "of them is on, so in no order does the tool reach them all",
                .mend = "make one of them removable, turn a leg, or choose another recipe there"};
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
    const auto blocked = blocked_joints(resolved, joints);
    Report report(project, resolved);
    for (std::size_t begin = 0; begin < blocked.size();) {
        const auto frame = resolved.joints[blocked[begin].joint].frame;
        std::size_t end = begin;
        while (end < blocked.size() && resolved.joints[blocked[end].joint].frame == frame) ++end;
        report.add(std::span(blocked).subspan(begin, end - begin));
        begin = end;
    }
}

}  // namespace model
