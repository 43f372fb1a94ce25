#include "model/schedule/export.h"

#include "model/schedule/piece_words.h"

#include <algorithm>

namespace model {

std::optional<ExportFormat> export_format(std::string_view ending) {
    std::string small(ending);
    std::ranges::transform(small, small.begin(), [](char c) {
        return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    });
    if (small == ".step" || small == ".stp") return ExportFormat::step;
    if (small == ".glb") return ExportFormat::glb;
    if (small == ".stl") return ExportFormat::stl;
    if (small == ".obj") return ExportFormat::obj;
    return std::nullopt;
}

engine::Result<std::string> exported(const Project& project,
                                     const Catalogue& catalogue,
                                     const Resolved& resolved,
                                     ExportFormat format) {
    if (resolved.pieces.empty()) {
        return engine::Error{.code = engine::ErrorCode::invalid_value,
                             .where = project.name,
                             .message = "it has no piece to export; lay out a member first"};
    }
    switch (format) {
        case ExportFormat::step:
            return step_file(project, catalogue, resolved);
        case ExportFormat::glb:
            return glb_file(project, catalogue, resolved);
        case ExportFormat::stl:
            return stl_file(catalogue, resolved);
        case ExportFormat::obj:
            return obj_file(project, catalogue, resolved);
    }
    return std::string();
}

std::string export_name(const PieceWords& words, const Resolved& resolved, Index index) {
    const auto& piece = resolved.pieces[index];
    const auto member = words.member(index);
    return piece.mark < resolved.marks.size() ? resolved.marks[piece.mark].name + " " + member
                                              : member;
}

}  // namespace model
