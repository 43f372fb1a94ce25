#include "tests/support/skeleton_checks.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <map>
#include <utility>

namespace tests {
namespace {

using MarkAndHand = std::pair<std::string, std::string>;

long count_in(std::string_view text) { return std::strtol(std::string(text).c_str(), nullptr, 10); }

std::array<Nm, 2> extent_along_run(const SkeletonPiece& piece, const SkeletonPlate& plate) {
    std::array<Nm, 2> extent{};
    for (std::size_t i = 0; i < plate.outline.size(); ++i) {
        const double u = dot(plate.u, piece.run);
        const double v = dot(plate.v, piece.run);
        const Nm base = along(plate.origin, piece.datum, piece.run);
        const Nm t =
            base + static_cast<Nm>(std::llround(u * static_cast<double>(plate.outline[i][0]) +
                                                v * static_cast<double>(plate.outline[i][1])));
        extent[0] = i == 0 ? t : std::min(extent[0], t);
        extent[1] = i == 0 ? t : std::max(extent[1], t);
    }
    return extent;
}

void check_plate(const SkeletonPiece& piece, const SkeletonPlate& plate, Complaints& complaints) {
    const std::string name = piece.id + " " + plate.leg;
    const bool is_square = std::abs(dot(plate.u, plate.v)) < 1e-9 &&
                           std::abs(dot(plate.v, plate.n)) < 1e-9 &&
                           std::abs(dot(plate.n, plate.u)) < 1e-9;
    if (!is_square) complaints.push_back("the axes of " + name + " are not square to one another");
    if (plate.thickness <= 0) complaints.push_back(name + " has no thickness");
    if (plate.outline.size() < 3) complaints.push_back(name + " has no outline");
    if (std::abs(dot(plate.v, piece.run)) > 1e-9) {
        complaints.push_back("the gauge of " + name + " does not lie across the run");
    }
}

// A mitred or notched wall may end before the piece does, but not all of them.
void check_length(const SkeletonPiece& piece, Complaints& complaints) {
    std::array<Nm, 2> whole{piece.length, 0};
    for (const auto& plate : piece.plates) {
        const auto extent = extent_along_run(piece, plate);
        whole = {std::min(whole[0], extent[0]), std::max(whole[1], extent[1])};
    }
    if (whole != std::array<Nm, 2>{0, piece.length}) {
        complaints.push_back(piece.id + " does not reach from the datum end over its length");
    }
}

void check_pieces(const Skeleton& skeleton, Complaints& complaints) {
    for (const auto& piece : skeleton.pieces) {
        if (piece.length <= 0) complaints.push_back(piece.id + " has no length");
        if (piece.plates.empty()) complaints.push_back(piece.id + " has no plates");
        if (piece.mark.empty()) complaints.push_back(piece.id + " has no mark");
        for (const auto& plate : piece.plates) check_plate(piece, plate, complaints);
        check_length(piece, complaints);
    }
}

void check_cut(const Skeleton& skeleton, Complaints& complaints) {
    std::map<MarkAndHand, std::vector<const SkeletonPiece*>> pieces;
    for (const auto& piece : skeleton.pieces) pieces[{piece.mark, piece.hand}].push_back(&piece);
    const auto& table = skeleton.cut;
    for (const auto& row : table.rows) {
        const MarkAndHand key{field(table, row, "mark"), field(table, row, "hand")};
        const auto found = pieces.find(key);
        const std::string name = "mark " + key.first + " " + key.second;
        const long quantity = count_in(field(table, row, "quantity"));
        const auto count = found == pieces.end() ? 0L : static_cast<long>(found->second.size());
        if (quantity != count) {
            complaints.push_back("cut.csv asks for " + std::to_string(quantity) + " of " + name +
                                 " and there are " + std::to_string(count));
        }
        if (found == pieces.end()) continue;
        const auto length = nm_of_mm_text(field(table, row, "length_mm"));
        for (const auto* piece : found->second) {
            if (length != piece->length || field(table, row, "section") != piece->section) {
                complaints.push_back("cut.csv has another length or section for " + piece->id +
                                     " of " + name);
            }
        }
        pieces.erase(found);
    }
    for (const auto& [key, left] : pieces) {
        complaints.push_back("cut.csv does not list mark " + key.first + " " + key.second);
    }
}

void check_fastener_counts(const Skeleton& skeleton, Complaints& complaints) {
    std::map<std::string, long> needed;
    for (const auto& fastener : skeleton.fasteners) ++needed[fastener.spec];
    const auto& table = skeleton.fastener_table;
    for (const auto& row : table.rows) {
        const std::string name{field(table, row, "fastener")};
        if (!diameter_of_spec(name)) continue;  // pins and nuts
        needed[name] -= count_in(field(table, row, "needed"));
        const long total = count_in(field(table, row, "total"));
        const long parts =
            count_in(field(table, row, "needed")) + count_in(field(table, row, "spares"));
        if (total != parts) complaints.push_back("fasteners.csv adds up wrongly for " + name);
    }
    for (const auto& [spec, left] : needed) {
        if (left == 0) continue;
        complaints.push_back("fasteners.csv counts " + spec + " wrongly, by " +
                             std::to_string(left));
    }
}

}  // namespace

Complaints table_complaints(const Skeleton& skeleton) {
    Complaints complaints;
    check_pieces(skeleton, complaints);
    check_cut(skeleton, complaints);
    check_fastener_counts(skeleton, complaints);
    return complaints;
}

Complaints skeleton_complaints(const Skeleton& skeleton, const LayoutRules& rules) {
    Complaints all;
    for (const auto& part :
         {table_complaints(skeleton), interference_complaints(skeleton), stack_complaints(skeleton),
          layout_complaints(skeleton, rules), fastening_complaints(skeleton, rules),
          drill_complaints(skeleton), mark_complaints(skeleton), foot_complaints(skeleton),
          panel_complaints(skeleton, rules)}) {
        all.insert(all.end(), part.begin(), part.end());
    }
    return all;
}

Complaints skeleton_complaints(const SkeletonFiles& files, const LayoutRules& rules) {
    const auto skeleton = read_skeleton(files);
    if (!skeleton) return {"the files cannot be read: " + to_text(skeleton.error())};
    return skeleton_complaints(*skeleton, rules);
}

}  // namespace tests
