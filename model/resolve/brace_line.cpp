#include "model/resolve/brace_line.h"

#include "model/resolve/brace_findings.h"
#include "model/resolve/lap_polygon.h"

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
bool find_nodes(BraceLine& line,
                const Frame& frame,
                const ResolvedFrame& placed,
                const Subject& subject,
                std::vector<Finding>& findings) {
    const Diagonal& stated = frame.diagonals[line.stated];
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
    findings.push_back(is_apart_0 || is_apart_1 ? brace_along_axis(subject)
                                                : brace_without_length(subject));
    return false;
}

}  // namespace

std::optional<BraceLine> brace_line(const PartRoom& room,
                                    const Frame& frame,
                                    const ResolvedFrame& placed,
                                    Index stated,
                                    std::vector<Finding>& findings) {
    const Diagonal& diagonal = frame.diagonals[stated];
    const Subject subject{SubjectKind::diagonal, frame.name, diagonal.name};
    const auto stock = std::ranges::find(room.project.stock, diagonal.stock, &Stock::name);
    const auto face = plane_named(frame, placed, diagonal.face);
    if (stock == room.project.stock.end() || !face) return std::nullopt;
    BraceLine line{.stated = stated,
                   .stock = static_cast<Index>(stock - room.project.stock.begin()),
                   .side = diagonal.side,
                   .ends = diagonal.ends,
                   .normal = face->axis,
                   .face = face->position,
                   .axes = axes_across(face->axis)};
    if (!find_nodes(line, frame, placed, subject, findings)) return std::nullopt;
    if (!runs_between(line, subject, findings)) return std::nullopt;
    const Index section = room.shapes[line.stock].section;
    if (section == no_index) return std::nullopt;
    const Section& of = room.catalogue.sections[section];
    if (of.form != SectionForm::flat) {
        findings.push_back(brace_of_no_flat(subject, of.id));
        return std::nullopt;
    }
    const SectionPlate& wall = room.shapes[line.stock].walls[0];
    line.width = wall.hi[0] - wall.lo[0];
    line.thickness = wall.hi[1] - wall.lo[1];
    return line;
}

}  // namespace model
