#include "model/schedule/piece_words.h"

#include <algorithm>
#include <cstddef>

namespace model {
namespace {

std::vector<std::vector<Index>> part_counts(const Project& project, const Resolved& resolved) {
    std::vector<std::vector<Index>> counts;
    counts.reserve(project.frames.size());
    for (const auto& frame : project.frames) counts.emplace_back(frame.members.size(), 0U);
    for (const auto& piece : resolved.pieces) {
        if (piece.kind == PieceKind::bar && piece.member != no_index)
            ++counts[piece.frame][piece.member];
    }
    return counts;
}

std::vector<Index> joints_of_shims(const Resolved& resolved) {
    std::vector<Index> joints(resolved.pieces.size(), no_index);
    for (Index i = 0; i < resolved.joints.size(); ++i) {
        if (resolved.joints[i].shim != no_index) joints[resolved.joints[i].shim] = i;
    }
    return joints;
}

std::vector<std::vector<std::string_view>> wall_names(const Catalogue& catalogue,
                                                      const Resolved& resolved) {
    std::vector<std::vector<std::string_view>> names(catalogue.sections.size());
    for (const auto& piece : resolved.pieces) {
        if (is_of_sheet(piece.kind) || !names[piece.section].empty()) continue;
        for (const auto& plate : section_plates(catalogue.sections[piece.section])) {
            names[piece.section].push_back(plate.name);
        }
    }
    return names;
}

std::string_view kind_word(PieceKind kind) {
    switch (kind) {
        case PieceKind::bar:
            return "bar";
        case PieceKind::brace:
            return "brace";
        case PieceKind::cleat:
            return "cleat";
        case PieceKind::strap:
            return "strap";
        case PieceKind::backing:
            return "backing";
        case PieceKind::shim:
            return "shim";
        case PieceKind::gusset:
            return "gusset";
        case PieceKind::foot:
            return "foot";
        case PieceKind::panel:
            return "panel";
    }
    return {};
}

}  // namespace

PieceWords::PieceWords(const Project& project, const Catalogue& catalogue, const Resolved& resolved)
    : project_{project},
      catalogue_{catalogue},
      resolved_{resolved},
      part_counts_{part_counts(project, resolved)},
      joint_of_shim_{joints_of_shims(resolved)},
      wall_names_{wall_names(catalogue, resolved)} {}

std::string PieceWords::member(Index index) const {
    const auto& piece = resolved_.pieces[index];
    if (piece.kind == PieceKind::shim) {
        if (joint_of_shim_[index] == no_index) return {};
        const auto& joint = resolved_.joints[joint_of_shim_[index]];
        return "between " + member(joint.pieces[0]) + " and " + member(joint.pieces[1]);
    }
    if (piece.member == no_index) return std::string(kind_word(piece.kind));
    const auto& name = project_.frames[piece.frame].members[piece.member].name;
    if (part_counts_[piece.frame][piece.member] < 2) return name;
    return name + " part " + std::to_string(piece.part + 1);
}

const std::string& PieceWords::frame(Index piece) const {
    return project_.frames[resolved_.pieces[piece].frame].name;
}

std::string PieceWords::section(Index index) const {
    const auto& piece = resolved_.pieces[index];
    return is_of_sheet(piece.kind) ? sheet_section(piece) : catalogue_.sections[piece.section].id;
}

std::string PieceWords::sheet_section(const Piece& shim) const {
    const auto normal = shim.plates[0].normal_axis;
    const auto width_axis = 3 - normal - index_of(shim.run);
    const auto size = [&](std::size_t axis) {
        return engine::exact_text(
            engine::Length::from_nm(shim.extents.hi[axis] - shim.extents.lo[axis]), project_.shown);
    };
    return std::string(kind_word(shim.kind)) + " " + size(normal) + " x " + size(width_axis);
}

std::string_view PieceWords::alloy(Index index) const {
    const auto& piece = resolved_.pieces[index];
    if (piece.stock == no_index) return {};
    return project_.stock[piece.stock].alloy;
}

std::string_view PieceWords::wall(Index index, std::uint8_t wall) const {
    const auto& piece = resolved_.pieces[index];
    return is_of_sheet(piece.kind) ? "face" : wall_names_[piece.section][wall];
}

}  // namespace model
