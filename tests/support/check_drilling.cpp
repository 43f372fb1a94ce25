#include "tests/support/skeleton_checks.h"

#include <algorithm>
#include <cstdlib>
#include <map>
#include <tuple>
#include <utility>

namespace tests {
namespace {

using MarkAndHand = std::pair<std::string, std::string>;

// One hole as the drill press sees it.
struct Drilled {
    std::string leg;
    Nm from_datum = 0;
    Nm gauge = 0;
    Nm diameter = 0;
    std::string operation;
    std::string datum_end;

    auto key() const { return std::tie(leg, from_datum, gauge, diameter, operation, datum_end); }
    bool operator<(const Drilled& other) const { return key() < other.key(); }
    bool operator==(const Drilled& other) const { return key() == other.key(); }
};

std::string text_of(const Drilled& hole) {
    return hole.leg + " at " + std::to_string(hole.from_datum) + " nm, gauge " +
           std::to_string(hole.gauge) + " nm, " + std::to_string(hole.diameter) + " nm, " +
           hole.operation + ", datum end " + hole.datum_end;
}

Drilled drilled_from_row(const engine::CsvTable& table,
                         const engine::CsvRow& row,
                         Complaints& complaints) {
    const auto nm = [&](std::string_view heading) {
        const auto value = nm_of_mm_text(field(table, row, heading));
        if (!value) {
            complaints.push_back("drill.csv has no exact number under " + std::string(heading) +
                                 ": " + std::string(field(table, row, heading)));
        }
        return value.value_or(-1);
    };
    Drilled hole;
    hole.leg = field(table, row, "leg");
    hole.from_datum = nm("from_datum_mm");
    hole.gauge = nm("gauge_mm");
    hole.diameter = nm("diameter_mm");
    hole.operation = field(table, row, "operation");
    hole.datum_end = field(table, row, "datum_end");
    return hole;
}

// A wall lies on its outer face, the heel away from the maker: up is the wall's inward normal, the
// gauge runs towards the maker, so up x gauge is to the right.
std::string datum_end_of(const SkeletonPiece& piece, const SkeletonPlate& plate) {
    return dot(cross(plate.n, plate.v), piece.run) > 0 ? "left" : "right";
}

// A place measured in the world; of a piece that lies along no axis of the world the place on its
// plate that is given, if it is the same but for the rounding of both.
Nm measured(const SkeletonPiece& piece, Nm in_world, Nm on_plate) {
    constexpr Nm oblique_rounding = 4;
    const bool is_same = std::abs(in_world - on_plate) <= oblique_rounding;
    return !world_axis(piece.run) && is_same ? on_plate : in_world;
}

// The holes of a piece, measured in the world from its datum along its run and across each wall.
std::vector<Drilled> drilled_in_world(const SkeletonPiece& piece) {
    std::vector<Drilled> holes;
    for (const auto& plate : piece.plates) {
        for (const auto& hole : plate.holes) {
            holes.push_back(
                {plate.leg,
                 measured(piece, along(hole.at, piece.datum, piece.run), hole.in_plate[0]),
                 measured(piece, along(hole.at, piece.datum, plate.v), hole.in_plate[1]),
                 hole.diameter, hole.operation, datum_end_of(piece, plate)});
            if (hole.tap.empty()) continue;
            auto tapped = holes.back();
            tapped.operation = "tap";
            tapped.diameter = diameter_of_spec(hole.tap).value_or(-1);
            holes.push_back(tapped);
        }
    }
    std::sort(holes.begin(), holes.end());
    return holes;
}

// The same piece laid the other way about.
std::vector<Drilled> laid_mirrored(std::vector<Drilled> holes) {
    for (auto& hole : holes) hole.datum_end = hole.datum_end == "left" ? "right" : "left";
    std::sort(holes.begin(), holes.end());
    return holes;
}

void compare(const std::string& name,
             const std::vector<Drilled>& listed,
             const std::vector<Drilled>& found,
             Complaints& complaints) {
    if (listed == found) return;
    std::vector<Drilled> missing;
    std::vector<Drilled> extra;
    std::set_difference(found.begin(), found.end(), listed.begin(), listed.end(),
                        std::back_inserter(missing));
    std::set_difference(listed.begin(), listed.end(), found.begin(), found.end(),
                        std::back_inserter(extra));
    for (const auto& hole : missing) {
        complaints.push_back("drill.csv does not list a hole of " + name + ": " + text_of(hole));
    }
    for (const auto& hole : extra) {
        complaints.push_back("drill.csv lists a hole that " + name +
                             " does not have: " + text_of(hole));
    }
}

void compare_counts(const Skeleton& skeleton, Complaints& complaints) {
    std::map<MarkAndHand, int> made;
    for (const auto& piece : skeleton.pieces) ++made[{piece.mark, piece.hand}];
    const auto& table = skeleton.drill;
    for (const auto& row : table.rows) {
        const MarkAndHand key{field(table, row, "mark"), field(table, row, "hand")};
        const std::string pieces{field(table, row, "pieces")};
        if (pieces == std::to_string(made[key])) continue;
        complaints.push_back("drill.csv counts " + pieces + " pieces of mark " + key.first + " " +
                             key.second + ", of which there are " + std::to_string(made[key]));
    }
}

}  // namespace

Complaints drill_complaints(const Skeleton& skeleton) {
    Complaints complaints;
    std::map<MarkAndHand, std::vector<Drilled>> listed;
    const auto& table = skeleton.drill;
    for (const auto& row : table.rows) {
        const MarkAndHand key{field(table, row, "mark"), field(table, row, "hand")};
        listed[key].push_back(drilled_from_row(table, row, complaints));
    }
    compare_counts(skeleton, complaints);
    for (auto& [key, holes] : listed) std::sort(holes.begin(), holes.end());
    std::map<MarkAndHand, bool> seen;
    for (const auto& piece : skeleton.pieces) {
        const MarkAndHand key{piece.mark, piece.hand};
        seen[key] = true;
        const auto found = listed.find(key);
        const auto rows = found == listed.end() ? std::vector<Drilled>{} : found->second;
        const auto holes = drilled_in_world(piece);
        // A piece without a hand is its own mirror image (mark_complaints sees to that), so it may
        // stand in its place the other way about from how the mark is laid on the table.
        if (piece.hand.empty() && rows == laid_mirrored(holes)) continue;
        compare(piece.id + " (mark " + piece.mark + " " + piece.hand + ")", rows, holes,
                complaints);
    }
    for (const auto& [key, holes] : listed) {
        if (!seen.count(key)) {
            complaints.push_back("drill.csv lists mark " + key.first + " " + key.second +
                                 ", which no piece has");
        }
    }
    return complaints;
}

}  // namespace tests
