#include "tests/support/skeleton_checks.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <map>
#include <set>

namespace tests {
namespace {

// How far from the other piece an end may stop and still count as held by it: end gap, allowance
// and set-in together stay below it.
constexpr Nm end_reach = 25'400'000 / 2;
// How far from the end a fastener may sit that ties it to a piece running alongside.
constexpr Nm alongside_reach = 3 * Nm{25'400'000};

bool is_shim(const SkeletonPiece& piece) { return piece.section.rfind("shim", 0) == 0; }

std::array<Nm, 2> extent_along(const SkeletonPiece& piece, const SkeletonPiece& of) {
    Nm least = 0;
    Nm most = 0;
    bool first = true;
    for (const auto& plate : of.plates) {
        for (const Nm x : {plate.bounds.lo[0], plate.bounds.hi[0]}) {
            for (const Nm y : {plate.bounds.lo[1], plate.bounds.hi[1]}) {
                for (const Nm z : {plate.bounds.lo[2], plate.bounds.hi[2]}) {
                    const Nm t = along({x, y, z}, piece.datum, piece.run);
                    least = first ? t : std::min(least, t);
                    most = first ? t : std::max(most, t);
                    first = false;
                }
            }
        }
    }
    return {least, most};
}

// Where along its run a piece is tied: by each fastener, what the other pieces cover and where the
// fastener sits.
struct Tie {
    std::array<Nm, 2> covered{};
    Nm at = 0;
    bool is_alongside = false;
};

std::map<std::string, const SkeletonFastener*> fasteners_by_id(const Skeleton& skeleton) {
    std::map<std::string, const SkeletonFastener*> found;
    for (const auto& fastener : skeleton.fasteners) found[fastener.id] = &fastener;
    return found;
}

std::vector<Tie> ties_of(const Skeleton& skeleton,
                         const std::map<std::string, const SkeletonFastener*>& fasteners,
                         const SkeletonPiece& piece) {
    std::vector<Tie> ties;
    for (const auto& plate : piece.plates) {
        for (const auto& hole : plate.holes) {
            const auto found = fasteners.find(hole.fastener);
            if (found == fasteners.end()) continue;
            for (const auto& entry : found->second->stack) {
                const auto* other = skeleton.piece(entry.piece);
                if (other == nullptr || other == &piece || is_shim(*other)) continue;
                const bool alongside = std::abs(dot(other->run, piece.run)) > 0.999;
                ties.push_back({extent_along(piece, *other), along(hole.at, piece.datum, piece.run),
                                alongside});
            }
        }
    }
    return ties;
}

bool is_held_at(const std::vector<Tie>& ties, Nm end) {
    return std::any_of(ties.begin(), ties.end(), [end](const Tie& tie) {
        const bool covered = tie.covered[0] - end_reach <= end && end <= tie.covered[1] + end_reach;
        return covered && (!tie.is_alongside || std::abs(tie.at - end) <= alongside_reach);
    });
}

// "m3 part 2" is a part of m3.
std::string member_of(const SkeletonPiece& piece) {
    const auto at = piece.member.rfind(" part ");
    if (at == std::string::npos) return piece.member;
    const bool numbered =
        std::all_of(piece.member.begin() + static_cast<std::ptrdiff_t>(at) + 6, piece.member.end(),
                    [](unsigned char c) { return std::isdigit(c) != 0; });
    return numbered ? piece.member.substr(0, at) : piece.member;
}

// What a finding may be called that says why a lap has fewer fasteners than asked, or none.
constexpr std::array<std::string_view, 4> too_few{"too_few_fasteners", "no_fastener", "no_grip",
                                                  "no_drill"};

std::size_t laps_excused(const Skeleton& skeleton,
                         const std::string& frame,
                         const std::vector<std::string>& members) {
    std::size_t count = 0;
    for (const auto code : too_few) count += findings_naming(skeleton, code, frame, members);
    return count;
}

std::size_t excuses_for(const Skeleton& skeleton, const SkeletonPiece& piece) {
    const std::vector<std::string> members{member_of(piece)};
    return findings_naming(skeleton, "loose_end", piece.frame, members) +
           laps_excused(skeleton, piece.frame, members);
}

// Ends that nothing holds, by frame and member.
std::map<std::pair<std::string, std::string>, std::vector<std::string>> loose_ends(
    const Skeleton& skeleton) {
    std::map<std::pair<std::string, std::string>, std::vector<std::string>> loose;
    const auto fasteners = fasteners_by_id(skeleton);
    for (const auto& piece : skeleton.pieces) {
        if (is_shim(piece)) continue;
        const auto ties = ties_of(skeleton, fasteners, piece);
        for (const Nm end : {Nm{0}, piece.length}) {
            if (is_held_at(ties, end)) continue;
            loose[{piece.frame, member_of(piece)}].push_back(
                piece.id + (end == 0 ? " datum end" : " far end"));
        }
    }
    return loose;
}

void check_ends(const Skeleton& skeleton, Complaints& complaints) {
    for (const auto& [member, ends] : loose_ends(skeleton)) {
        const auto* piece = skeleton.piece(ends.front().substr(0, ends.front().find(' ')));
        const std::size_t excuses = piece == nullptr ? 0 : excuses_for(skeleton, *piece);
        if (excuses >= ends.size()) continue;
        std::string names;
        for (const auto& end : ends) names += (names.empty() ? "" : ", ") + end;
        complaints.push_back("nothing holds " + names + " (" + member.first + ": " + member.second +
                             ") and only " + std::to_string(excuses) + " findings say so");
    }
}

void check_laps(const Skeleton& skeleton, int per_lap, Complaints& complaints) {
    for (const auto& joint : skeleton.joints) {
        if (joint.fasteners.size() >= static_cast<std::size_t>(per_lap)) continue;
        std::vector<std::string> members;
        std::string frame;
        for (const auto& id : joint.pieces) {
            const auto* piece = skeleton.piece(id);
            if (piece == nullptr || is_shim(*piece)) continue;
            members.push_back(member_of(*piece));
            frame = piece->frame;
        }
        if (laps_excused(skeleton, frame, members) > 0) continue;
        complaints.push_back("joint " + joint.id + " has " +
                             std::to_string(joint.fasteners.size()) +
                             " fasteners and no finding says that more were wanted");
    }
}

bool is_boundary(std::string_view text, std::size_t at) {
    if (at >= text.size()) return true;
    const char c = text[at];
    return c == ',' || c == ':' || c == ';' || text.substr(at).rfind(" + ", 0) == 0;
}

bool names_it(std::string_view text, std::string_view name) {
    for (auto at = text.find(name); at != std::string_view::npos; at = text.find(name, at + 1)) {
        const bool starts = at == 0 || text[at - 1] == ' ';
        if (starts && is_boundary(text, at + name.size())) return true;
    }
    return false;
}

}  // namespace

std::size_t findings_naming(const Skeleton& skeleton,
                            std::string_view code,
                            std::string_view frame,
                            const std::vector<std::string>& members) {
    const auto& table = skeleton.findings;
    return static_cast<std::size_t>(
        std::count_if(table.rows.begin(), table.rows.end(), [&](const auto& row) {
            if (field(table, row, "code") != code) return false;
            const auto where = field(table, row, "where");
            return names_it(where, frame) &&
                   std::all_of(members.begin(), members.end(),
                               [&](const auto& member) { return names_it(where, member); });
        }));
}

Complaints fastening_complaints(const Skeleton& skeleton, const LayoutRules& rules) {
    Complaints complaints;
    check_ends(skeleton, complaints);
    if (rules.per_lap > 0) check_laps(skeleton, rules.per_lap, complaints);
    return complaints;
}

SkeletonCount count_of(const Skeleton& skeleton) {
    SkeletonCount count;
    count.pieces = skeleton.pieces.size();
    count.fasteners = skeleton.fasteners.size();
    for (const auto& piece : skeleton.pieces) count.ends += is_shim(piece) ? 0U : 2U;
    std::size_t loose = 0;
    for (const auto& [member, ends] : loose_ends(skeleton)) loose += ends.size();
    count.fastened_ends = count.ends - loose;
    return count;
}

}  // namespace tests
