#include "model/schedule/weight.h"

#include "model/catalogue/section_shape.h"
#include "model/resolve/bar_cuts.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <map>
#include <numbers>
#include <utility>

namespace model {
namespace {

constexpr double mm3_per_m3 = 1.0e9;
// The pound of the international yard and pound agreement of 1959, from memory (restated in NIST SP
// 811, Appendix B).
constexpr double kg_per_pound = 0.45359237;

double mm(Nm nm) { return Length::from_nm(nm).mm(); }

struct Profile {
    engine::SectionShape shape;
    double area = 0.0;  // mm2
    std::array<double, 2> centroid{};
};

Profile profile_of(const Section& section) {
    Profile profile{.shape = section_shape(section)};
    const auto properties = engine::polygon_properties(profile.shape);
    profile.area = properties.area;
    profile.centroid = properties.centroid;
    return profile;
}

// How far a cut has receded where the section's centroid is: a bar cut by a plane holds as much as
// one of that length cut square.
double recess(const PieceEnd& end, const Profile& profile) {
    const auto along = [&](const std::array<double, 2>& at) {
        return end.slope[0] * at[0] + end.slope[1] * at[1];
    };
    if (end.slope == std::array<double, 2>{}) return 0.0;
    double least = along(profile.centroid);
    for (const auto& loop : profile.shape.loops) {
        for (const auto& corner : loop) least = std::min(least, along(corner));
    }
    return along(profile.centroid) - least;
}

double thickness_of(const Plate& plate) {
    return mm(plate.box.hi[plate.normal_axis] - plate.box.lo[plate.normal_axis]);
}

double notches_mm3(const Piece& piece, const Section& section) {
    if (has_square_ends(piece)) return 0.0;
    double total = 0.0;
    for (const auto& notch : end_notches(piece, section, section_plates(section))) {
        total += (notch.hi[0] - notch.lo[0]) * (notch.hi[1] - notch.lo[1]) *
                 (notch.back[0] + notch.back[1]);
    }
    return total;
}

double bar_mm3(const Piece& piece, const Section& section, const Profile& profile) {
    const double length =
        mm(piece.length) - recess(piece.ends[0], profile) - recess(piece.ends[1], profile);
    return std::max(profile.area * length - notches_mm3(piece, section), 0.0);
}

double area_mm2(const Corners& corners) {
    double twice = 0.0;
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const auto& a = corners[i];
        const auto& b = corners[(i + 1) % corners.size()];
        twice += mm(a[0]) * mm(b[1]) - mm(b[0]) * mm(a[1]);
    }
    return twice / 2.0;  // of what is cut out, clockwise, below zero
}

double sheet_mm3(const Piece& piece, const Resolved& resolved) {
    double total = 0.0;
    for (const auto& plate : piece.walls()) {
        if (plate.outline < resolved.outlines.size()) {
            const auto& outline = resolved.outlines[plate.outline];
            double area = area_mm2(outline.corners);
            for (const auto& cut_out : outline.cut_outs) area += area_mm2(cut_out);
            total += area * thickness_of(plate);
            continue;
        }
        const auto& box = plate.box;
        total += mm(box.hi[0] - box.lo[0]) * mm(box.hi[1] - box.lo[1]) * mm(box.hi[2] - box.lo[2]);
    }
    return total;
}

double holes_mm3(const Piece& piece, const Resolved& resolved) {
    double total = 0.0;
    for (const auto& hole : resolved.holes_of(piece)) {
        for (const auto& plate : piece.walls()) {
            if (plate.wall != hole.wall || plate.is_root_fillet) continue;
            total += std::numbers::pi / 4.0 * mm(hole.diameter) * mm(hole.diameter) *
                     thickness_of(plate);
            break;
        }
    }
    return total;
}

double density_of(const Piece& piece, const Project& project, const Catalogue& catalogue) {
    if (piece.kind == PieceKind::panel && piece.frame < project.frames.size() &&
        piece.stated < project.frames[piece.frame].panels.size()) {
        const auto& panels = project.frames[piece.frame].panels;
        return sheet_density_kg_m3(catalogue, panels[piece.stated].material).value_or(0.0);
    }
    const Alloy* alloy = piece.stock < project.stock.size()
                             ? find_alloy(catalogue, project.stock[piece.stock].alloy)
                             : find_alloy(catalogue, project.shop.gusset_alloy);
    return alloy == nullptr ? Alloy{}.density_kg_m3 : alloy->density_kg_m3;
}

}  // namespace

std::vector<double> piece_weights_kg(const Project& project,
                                     const Catalogue& catalogue,
                                     const Resolved& resolved) {
    std::map<Index, Profile> profiles;  // of the sections in use
    std::vector<double> weights;
    weights.reserve(resolved.pieces.size());
    for (const auto& piece : resolved.pieces) {
        double volume = 0.0;
        if (piece.section < catalogue.sections.size()) {
            auto at = profiles.find(piece.section);
            if (at == profiles.end()) {
                at = profiles.emplace(piece.section, profile_of(catalogue.sections[piece.section]))
                         .first;
            }
            volume = bar_mm3(piece, catalogue.sections[piece.section], at->second);
        } else {
            volume = sheet_mm3(piece, resolved);
        }
        volume = std::max(volume - holes_mm3(piece, resolved), 0.0);
        weights.push_back(volume / mm3_per_m3 * density_of(piece, project, catalogue));
    }
    return weights;
}

std::string weight_text(double kg, const engine::TapeStyle& shown) {
    const auto unit = engine::bare_unit(shown);
    const bool is_inch = unit == engine::LengthUnit::inch || unit == engine::LengthUnit::foot;
    const double value = is_inch ? kg / kg_per_pound : kg;
    const int decimals = value < 9.995 ? 2 : value < 99.95 ? 1 : 0;
    std::array<char, 32> buffer{};
    const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value,
                                   std::chars_format::fixed, decimals)
                         .ptr;
    const std::string number(buffer.data(), end);
    return (value <= 0.0 ? "0" : number) + (is_inch ? " lb" : " kg");
}

}  // namespace model
