#include "tests/support/skeleton_checks.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <map>
#include <set>
#include <utility>

namespace tests {
namespace {

bool is_shim(const SkeletonPiece& piece) { return piece.section.rfind("shim", 0) == 0; }

// Its edges are no ends: a door is hung, and a shelf may lie on two of its sides.
bool is_panel(const SkeletonPiece& piece) { return piece.section.rfind("panel", 0) == 0; }

// The widest side of the section.
Nm width_of(const SkeletonPiece& piece) {
    Nm width = 0;
    for (const auto& plate : piece.plates) {
        for (const auto& corner : plate.outline) {
            for (const auto& other : plate.outline) {
                const double v = std::abs(static_cast<double>(corner[1] - other[1]));
                width = std::max(width, static_cast<Nm>(v));
            }
        }
    }
    return width;
}

// A fastener to another piece: where along the run it sits, and how near an end it must be to hold
// it. A lap that begins within one and a half widths of an end holds it (pieces may run on past a
// node), and the fastener lies somewhere in the lap, which is no longer than the other is wide; of
// a piece that runs alongside, no longer than three widths.
struct Tie {
    Nm at = 0;
    Nm reach = 0;
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
    const Nm reach = width_of(piece) * 3 / 2;
    for (const auto& plate : piece.plates) {
        for (const auto& hole : plate.holes) {
            const auto found = fasteners.find(hole.fastener);
            if (found == fasteners.end()) continue;
            for (const auto& entry : found->second->stack) {
                const auto* other = skeleton.piece(entry.piece);
                if (other == nullptr || other == &piece || is_shim(*other)) continue;
                const bool alongside = std::abs(dot(other->run, piece.run)) > 0.999;
                const Nm lap = width_of(alongside ? piece : *other) * (alongside ? 3 : 1);
                ties.push_back({along(hole.at, piece.datum, piece.run), reach + lap});
            }
        }
    }
    return ties;
}

bool is_held_at(const std::vector<Tie>& ties, Nm end) {
    return std::any_of(ties.begin(), ties.end(),
                       [end](const Tie& tie) { return std::abs(tie.at - end) <= tie.reach; });
}

// What a finding may be called that says why a lap has fewer fasteners than asked, or none.
constexpr std::array<std::string_view, 8> too_few{
    "too_few_fasteners", "no_fastener",  "no_grip",   "no_drill",
    "no_length",         "no_rivet_nut", "tap_binds", "thread_strips"};

std::size_t laps_excused(const Skeleton& skeleton,
                         const std::string& frame,
                         const std::vector<std::string>& members) {
    std::size_t count = 0;
    for (const auto code : too_few) count += findings_naming(skeleton, code, frame, members);
    return count;
}

std::size_t excuses_for(const Skeleton& skeleton, const SkeletonPiece& piece) {
    const auto members = stated_members(piece);
    // One lap may hold both ends of a short piece.
    return findings_naming(skeleton, "loose_end", piece.frame, members) +
           2 * laps_excused(skeleton, piece.frame, members);
}

// Ends that nothing holds, by frame and member.
std::map<std::pair<std::string, std::string>, std::vector<std::string>> loose_ends(
    const Skeleton& skeleton) {
    std::map<std::pair<std::string, std::string>, std::vector<std::string>> loose;
    const auto fasteners = fasteners_by_id(skeleton);
    for (const auto& piece : skeleton.pieces) {
        if (is_shim(piece) || is_panel(piece)) continue;
        const auto ties = ties_of(skeleton, fasteners, piece);
        for (const Nm end : {Nm{0}, piece.length}) {
            if (is_held_at(ties, end)) continue;
            loose[{piece.frame, stated_member(piece)}].push_back(
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
                             ") and only " + std::to_string(excuses) + " of them are in a finding");
    }
}

void check_laps(const Skeleton& skeleton, int per_lap, Complaints& complaints) {
    for (const auto& joint : skeleton.joints) {
        if (joint.fasteners.size() >= static_cast<std::size_t>(per_lap)) continue;
        if (joint.recipe == "panel") continue;  // by the pitch: panel_complaints
        std::vector<std::string> members;
        std::string frame;
        for (const auto& id : joint.pieces) {
            const auto* piece = skeleton.piece(id);
            if (piece == nullptr || is_shim(*piece)) continue;
            for (auto& name : stated_members(*piece)) members.push_back(std::move(name));
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

bool names_member(std::string_view where, std::string_view frame, std::string_view member) {
    // A piece is called "brace NAME" after the diagonal NAME that was stated.
    constexpr std::string_view brace = "brace ";
    if (member.starts_with(brace)) {
        const auto stated = "diagonal " + std::string(member.substr(brace.size()));
        if (names_it(where, frame) && names_it(where, stated)) return true;
    }
    return names_it(where, frame) && names_it(where, member);
}

std::size_t findings_naming(const Skeleton& skeleton,
                            std::string_view code,
                            std::string_view frame,
                            const std::vector<std::string>& members) {
    const auto& table = skeleton.findings;
    return static_cast<std::size_t>(
        std::count_if(table.rows.begin(), table.rows.end(), [&](const auto& row) {
            if (field(table, row, "code") != code) return false;
            const auto where = field(table, row, "where");
            return std::all_of(members.begin(), members.end(), [&](const auto& member) {
                return names_member(where, frame, member);
            });
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
    for (const auto& piece : skeleton.pieces) {
        count.ends += is_shim(piece) || is_panel(piece) ? 0U : 2U;
    }
    std::size_t loose = 0;
    for (const auto& [member, ends] : loose_ends(skeleton)) loose += ends.size();
    count.fastened_ends = count.ends - loose;
    return count;
}

}  // namespace tests
