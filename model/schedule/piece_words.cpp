#include "model/schedule/piece_words.h"

#include "model/resolve/sheet_size.h"
#include "model/schedule/told_text.h"

#include <algorithm>
#include <array>
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

bool is_used_once(PieceKind kind) { return kind == PieceKind::foot || kind == PieceKind::backing; }

// " at post left and rail front top", " of post left".
std::string served(const Frame& frame, const Piece& piece) {
    const auto& members = frame.members;
    const auto& [first, second] = piece.serves;
    if (first >= members.size()) return {};
    if (is_used_once(piece.kind) || second >= members.size() || first == second)
        return " of " + members[first].name;
    return " at " + members[first].name + " and " + members[second].name;
}

}  // namespace

std::string part_words(const Project& project, const Piece& piece) {
    const std::string kind{name_of(piece.kind)};
    const auto& frame = project.frames[piece.frame];
    if (piece.kind == PieceKind::brace && piece.stated < frame.diagonals.size())
        return kind + " " + frame.diagonals[piece.stated].name;
    if (piece.kind == PieceKind::leaning && piece.stated < frame.leaning.size())
        return kind + " " + frame.leaning[piece.stated].name;
    if (piece.kind == PieceKind::panel && piece.stated < frame.panels.size())
        return kind + " " + frame.panels[piece.stated].name;
    return kind + served(frame, piece);
}

std::string_view name_of(PieceKind kind) {
    constexpr std::array<std::string_view, 10> names{"bar",    "brace",   "leaning member", "cleat",
                                                     "strap",  "backing", "foot",           "shim",
                                                     "gusset", "panel"};
    static_assert(static_cast<std::size_t>(PieceKind::panel) == names.size() - 1);
    return names[static_cast<std::size_t>(kind)];
}

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
    if (piece.member == no_index) return part_words(project_, piece);
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

std::string PieceWords::sheet_section(const Piece& piece) const {
    const auto size = [&](Nm nm) { return told_text(engine::Length::from_nm(nm), project_.shown); };
    return std::string(name_of(piece.kind)) + " " + size(sheet_thickness(piece)) + " x " +
           size(sheet_width(resolved_, piece));
}

std::string_view PieceWords::alloy(Index index) const {
    const auto& piece = resolved_.pieces[index];
    if (piece.stock < project_.stock.size()) return project_.stock[piece.stock].alloy;
    if (piece.kind == PieceKind::gusset) return project_.shop.gusset_alloy;
    const auto& panels = project_.frames[piece.frame].panels;
    const bool is_panel = piece.kind == PieceKind::panel && piece.stated < panels.size();
    return is_panel ? std::string_view(panels[piece.stated].material) : std::string_view{};
}

std::string_view PieceWords::wall(Index index, std::uint8_t wall) const {
    const auto& piece = resolved_.pieces[index];
    return is_of_sheet(piece.kind) ? "face" : wall_names_[piece.section][wall];
}

}  // namespace model
