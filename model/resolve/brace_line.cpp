#include "model/resolve/brace_line.h"

#include "model/resolve/brace_findings.h"
#include "model/resolve/lap_polygon.h"
#include "model/resolve/leaning_findings.h"

#include <algorithm>
#include <string>

namespace model {
namespace {

struct FoundPlane {
    std::size_t axis = 0;
    Nm position = 0;
};

// The first plane of that name; none where there is none or its formula failed.
std::optional<FoundPlane> plane_named(const Frame& frame,
                                      const ResolvedFrame& placed,
                                      const std::string& name) {
    const auto plane = std::ranges::find(frame.planes, name, &Plane::name);
    if (plane == frame.planes.end()) return std::nullopt;
    const auto& at = placed.planes[static_cast<std::size_t>(plane - frame.planes.begin())];
    if (!at.position) return std::nullopt;
    return FoundPlane{index_of(at.axis), *at.position};
}

// False where a node's planes are not known or lie across the wrong axes.
template <class Stated>
bool find_nodes(BraceLine& line,
                const Stated& stated,
                const Frame& frame,
                const ResolvedFrame& placed,
                const Subject& subject,
                std::vector<Finding>& findings) {
    bool is_known = true;
    const auto find = [&](std::size_t end, const std::array<std::string, 2>& names) {
        for (std::size_t k = 0; k < 2; ++k) {
            const auto plane = plane_named(frame, placed, names[k]);
            is_known = is_known && plane;
            if (!plane) continue;
            line.nodes[end][k] = plane->position;
            if (plane->axis == line.axes[k]) continue;
            findings.push_back(brace_on_wrong_axis(subject, names[k]));
            is_known = false;
        }
    };
    find(0, stated.from);
    find(1, stated.to);
    return is_known;
}

bool runs_between(const BraceLine& line, const Subject& subject, std::vector<Finding>& findings) {
    const auto& [from, to] = line.nodes;
    const bool is_apart_0 = from[0] != to[0];
    const bool is_apart_1 = from[1] != to[1];
    if (is_apart_0 && is_apart_1) return true;
    if (!is_apart_0 && !is_apart_1) {
        findings.push_back(brace_without_length(subject));
        return false;
    }
    findings.push_back(subject.kind == SubjectKind::leaning ? leaning_along_axis(subject)
                                                            : brace_along_axis(subject));
    return false;
}

// All but its width and thickness.
template <class Stated>
std::optional<BraceLine> line_between(const PartRoom& room,
                                      const Frame& frame,
                                      const ResolvedFrame& placed,
                                      const Stated& stated,
                                      const Subject& subject,
                                      std::vector<Finding>& findings) {
    const auto stock = std::ranges::find(room.project.stock, stated.stock, &Stock::name);
    const auto face = plane_named(frame, placed, stated.face);
    if (stock == room.project.stock.end() || !face) return std::nullopt;
    BraceLine line{.stock = static_cast<Index>(stock - room.project.stock.begin()),
                   .normal = face->axis,
                   .face = face->position,
                   .axes = axes_across(face->axis)};
    if (!find_nodes(line, stated, frame, placed, subject, findings)) return std::nullopt;
    if (!runs_between(line, subject, findings)) return std::nullopt;
    if (room.shapes[line.stock].section == no_index) return std::nullopt;
    return line;
}

// Of its first wall, along section axis a and across that.
void take_size(BraceLine& line, const StockShape& shape) {
    const SectionPlate& wall = shape.walls[0];
    line.width = wall.hi[0] - wall.lo[0];
    line.thickness = wall.hi[1] - wall.lo[1];
}

const Section& section_of(const PartRoom& room, const BraceLine& line) {
    return room.catalogue.sections[room.shapes[line.stock].section];
}

}  // namespace

std::optional<BraceLine> brace_line(const PartRoom& room,
                                    const Frame& frame,
                                    const ResolvedFrame& placed,
                                    Index stated,
                                    std::vector<Finding>& findings) {
    const Diagonal& diagonal = frame.diagonals[stated];
    const Subject subject{SubjectKind::diagonal, frame.name, diagonal.name};
    auto line = line_between(room, frame, placed, diagonal, subject, findings);
    if (!line) return std::nullopt;
    line->stated = stated;
    line->side = diagonal.side;
    line->ends = diagonal.ends;
    if (section_of(room, *line).form != SectionForm::flat) {
        findings.push_back(brace_of_no_flat(subject, section_of(room, *line).id));
        return std::nullopt;
    }
    take_size(*line, room.shapes[line->stock]);
    return line;
}

std::optional<BraceLine> leaning_line(const PartRoom& room,
                                      const Frame& frame,
                                      const ResolvedFrame& placed,
                                      Index stated,
                                      std::vector<Finding>& findings) {
    const Leaning& leaning = frame.leaning[stated];
    const Subject subject{SubjectKind::leaning, frame.name, leaning.name};
    auto line = line_between(room, frame, placed, leaning, subject, findings);
    if (!line) return std::nullopt;
    line->stated = stated;
    if (section_of(room, *line).form != SectionForm::angle) {
        findings.push_back(leaning_of_no_angle(subject, section_of(room, *line).id));
        return std::nullopt;
    }
    take_size(*line, room.shapes[line->stock]);
    return line;
}

}  // namespace model
