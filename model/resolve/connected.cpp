#include "model/resolve/connected.h"

#include "model/resolve/piece_groups.h"

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace model {
namespace {

PieceGroups groups_of(const Resolved& resolved) {
    PieceGroups groups(resolved.pieces.size());
    for (const auto& joint : resolved.joints) {
        groups.join(joint.pieces[0], joint.pieces[1]);
        if (joint.brace != no_index) groups.join(joint.brace, joint.pieces[0]);
    }
    return groups;
}

Finding not_joined(const Frame& frame, const std::set<Index>& members) {
    Finding finding{.code = "not_joined",
                    .severity = Severity::error,
                    .numbers = {{"members", static_cast<double>(members.size())}},
                    .what = members.size() == 1
                                ? "it, or a part of it, laps nothing of the rest of the frame"
                                : "these hang together, but they lap nothing else of the frame",
                    .mend =
                        "let a member of the rest run to them, put a post or a rail between, "
                        "or make them a frame of their own"};
    for (const Index member : members) {
        finding.concerns.push_back({SubjectKind::member, frame.name, frame.members[member].name});
    }
    return finding;
}

}  // namespace

void report_loose_groups(const Project& project, Resolved& resolved) {
    auto groups = groups_of(resolved);
    for (Index f = 0; f < resolved.frames.size(); ++f) {
        const auto& placed = resolved.frames[f];
        std::map<Index, std::vector<Index>> by_group;  // in the order of their first pieces' roots
        for (Index i = 0; i < placed.piece_count; ++i) {
            const Index piece = placed.first_piece + i;
            if (resolved.pieces[piece].member != no_index) {
                by_group[groups.of(piece)].push_back(piece);
            }
        }
        if (by_group.size() < 2) continue;
        const auto largest = std::ranges::max_element(
            by_group, {}, [](const auto& entry) { return entry.second.size(); });
        std::set<std::set<Index>> loose;  // of members; the parts of a split one count once
        for (auto at = by_group.begin(); at != by_group.end(); ++at) {
            if (at == largest) continue;
            std::set<Index> members;
            for (const Index piece : at->second) members.insert(resolved.pieces[piece].member);
            loose.insert(std::move(members));
        }
        for (const auto& members : loose) {
            resolved.findings.push_back(not_joined(project.frames[f], members));
        }
    }
}

}  // namespace model
