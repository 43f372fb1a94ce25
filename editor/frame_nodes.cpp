#include "editor/frame_nodes.h"

#include "editor/by_name.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace editor {
namespace {

using model::Axis;

// What could not be worked out lies before all others.
model::Nm position_of(const Derived& derived, const model::Frame& frame, std::string_view plane) {
    const auto* it = by_name(frame.planes, plane);
    const auto f = static_cast<std::size_t>(&frame - derived.project->frames.data());
    if (it == nullptr || f >= derived.resolved.frames.size()) return 0;
    const auto p = static_cast<std::size_t>(it - frame.planes.data());
    const auto& placed = derived.resolved.frames[f].planes;
    return p < placed.size() ? placed[p].position.value_or(0) : 0;
}

void add_once(std::vector<std::string>& names, const std::string& name) {
    if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
}

void sort_by_position(std::vector<std::string>& planes,
                      const Derived& derived,
                      const model::Frame& frame) {
    std::stable_sort(planes.begin(), planes.end(), [&](const auto& a, const auto& b) {
        return position_of(derived, frame, a) < position_of(derived, frame, b);
    });
}

bool lies_on(const model::Member& member, const std::string& plane) {
    return member.on[0] == plane || member.on[1] == plane;
}

// A member that lies on the face, as a line on it.
struct LineOnFace {
    std::size_t along = 0;  // which of the face's two axes
    std::string on;         // its plane across the other one
    std::array<NodeName, 2> ends;
};

std::optional<LineOnFace> line_on_face(const model::Frame& frame,
                                       const model::Member& member,
                                       const std::string& face) {
    const auto normal = axis_of_plane(frame, face);
    if (!normal || !lies_on(member, face) || member.run == *normal) return std::nullopt;
    const auto axes = model::across(*normal);
    LineOnFace line{.along = axes[0] == member.run ? 0U : 1U,
                    .on = member.on[0] == face ? member.on[1] : member.on[0]};
    for (std::size_t end = 0; end < 2; ++end) {
        line.ends[end][line.along] = end == 0 ? member.from : member.to;
        line.ends[end][1 - line.along] = line.on;
    }
    return line;
}

std::array<std::vector<std::string>, 2> planes_used(const Derived& derived,
                                                    const model::Frame& frame,
                                                    const std::string& face) {
    std::array<std::vector<std::string>, 2> used;
    for (const auto& member : frame.members) {
        const auto line = line_on_face(frame, member, face);
        if (!line) continue;
        for (const auto& end : line->ends) {
            for (std::size_t k = 0; k < 2; ++k) add_once(used[k], end[k]);
        }
    }
    for (auto& planes : used) sort_by_position(planes, derived, frame);
    return used;
}

std::optional<NodePair> between_lines(const std::string& face,
                                      const LineOnFace& first,
                                      const LineOnFace& second) {
    if (first.along == second.along) {
        if (first.on == second.on) return std::nullopt;
        return NodePair{face, first.ends[0], second.ends[1]};
    }
    // The end that does not lie on the other one's line.
    const auto free_end = [](const LineOnFace& line, const LineOnFace& other) {
        return line.ends[0][line.along] != other.on ? line.ends[0] : line.ends[1];
    };
    return NodePair{face, free_end(first, second), free_end(second, first)};
}

// Whether a member of the face begins or ends at the node.
bool is_end_of_member(const model::Frame& frame, const std::string& face, const NodeName& node) {
    return std::any_of(frame.members.begin(), frame.members.end(), [&](const auto& member) {
        const auto line = line_on_face(frame, member, face);
        return line && (line->ends[0] == node || line->ends[1] == node);
    });
}

std::vector<const model::Member*> chosen_members(const model::Frame& frame,
                                                 const Selection& selection) {
    std::vector<const model::Member*> members;
    for (const auto& piece : selection.pieces) {
        if (piece.frame != frame.name || piece.member.empty()) continue;
        const auto* member = by_name(frame.members, piece.member);
        if (member == nullptr) continue;
        if (std::find(members.begin(), members.end(), member) == members.end()) {
            members.push_back(member);
        }
    }
    return members;
}

}  // namespace

std::string words_of(const NodeName& node) { return node[0] + ", " + node[1]; }

std::optional<Axis> axis_of_plane(const model::Frame& frame, std::string_view plane) {
    const auto* it = by_name(frame.planes, plane);
    return it == nullptr ? std::nullopt : std::optional(it->axis);
}

std::vector<std::string> faces_with_members(const Derived& derived, const model::Frame& frame) {
    std::vector<std::string> faces;
    for (const auto axis : {Axis::y, Axis::x, Axis::z}) {
        std::vector<std::string> of_axis;
        for (const auto& plane : frame.planes) {
            const bool has_member = std::any_of(
                frame.members.begin(), frame.members.end(),
                [&](const model::Member& member) { return lies_on(member, plane.name); });
            if (plane.axis == axis && has_member) of_axis.push_back(plane.name);
        }
        sort_by_position(of_axis, derived, frame);
        faces.insert(faces.end(), of_axis.begin(), of_axis.end());
    }
    return faces;
}

std::vector<NodeName> nodes_of_face(const Derived& derived,
                                    const model::Frame& frame,
                                    const std::string& face) {
    const auto used = planes_used(derived, frame, face);
    std::vector<NodeName> nodes;
    for (const auto& second : used[1]) {
        for (const auto& first : used[0]) nodes.push_back({first, second});
    }
    return nodes;
}

std::optional<NodePair> across_face(const Derived& derived,
                                    const model::Frame& frame,
                                    const std::string& face) {
    const auto used = planes_used(derived, frame, face);
    if (used[0].size() < 2 || used[1].size() < 2) return std::nullopt;
    return NodePair{face, {used[0].front(), used[1].front()}, {used[0].back(), used[1].back()}};
}

std::optional<NodePair> between_members(const model::Frame& frame,
                                        const model::Member& first,
                                        const model::Member& second) {
    for (const auto& face : first.on) {
        const auto a = line_on_face(frame, first, face);
        const auto b = line_on_face(frame, second, face);
        const auto pair = a && b ? between_lines(face, *a, *b) : std::nullopt;
        if (pair) return pair;
    }
    return std::nullopt;
}

std::optional<NodePair> between_chosen(const model::Frame& frame, const Selection& selection) {
    const auto members = chosen_members(frame, selection);
    if (members.size() != 2) return std::nullopt;
    return between_members(frame, *members[0], *members[1]);
}

std::optional<NodePair> along_back(const Derived& derived, const model::Frame& frame) {
    for (const auto& face : faces_with_members(derived, frame)) {
        if (axis_of_plane(frame, face) != Axis::x) continue;
        const auto used = planes_used(derived, frame, face);  // along y, along z
        if (used[0].size() < 2 || used[1].size() < 2) continue;
        const NodeName from{used[0].back(), used[1].front()};
        for (auto plane = used[0].rbegin() + 1; plane != used[0].rend(); ++plane) {
            const NodeName to{*plane, used[1].back()};
            if (is_end_of_member(frame, face, to)) return NodePair{face, from, to};
        }
    }
    return std::nullopt;
}

AcrossRun across_run(const Derived& derived, const model::Frame& frame, const NodePair& pair) {
    const auto normal = axis_of_plane(frame, pair.face);
    if (!normal) return {};
    const auto at = [&](const NodeName& node, std::size_t k) {
        return static_cast<double>(position_of(derived, frame, node[k]));
    };
    const auto apart = [&](std::size_t k) { return std::abs(at(pair.to, k) - at(pair.from, k)); };
    const std::size_t less = apart(1) > apart(0) ? 0 : 1;
    const auto used = planes_used(derived, frame, pair.face)[less];
    if (used.empty()) return {model::across(*normal)[less], model::Sense::plus};
    const auto ends = [&](const std::string& low, const std::string& high) {
        return static_cast<double>(position_of(derived, frame, low)) +
               static_cast<double>(position_of(derived, frame, high));
    };
    const bool is_low = at(pair.from, less) + at(pair.to, less) < ends(used.front(), used.back());
    return {model::across(*normal)[less], is_low ? model::Sense::plus : model::Sense::minus};
}

void turn_to_other_corners(NodeName& from, NodeName& to) { std::swap(from[1], to[1]); }

}  // namespace editor
