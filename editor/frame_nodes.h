// The nodes of a frame: where planes meet on a face, between which a brace or a leaning member may
// run.
#pragma once

#include "editor/derived.h"
#include "editor/selection.h"
#include "model/project/project.h"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace editor {

// The planes across the face's other two axes, in order.
using NodeName = std::array<std::string, 2>;

struct NodePair {
    std::string face;
    NodeName from;
    NodeName to;
};

// "left, bottom".
std::string words_of(const NodeName& node);

// None where the frame has no plane of that name.
std::optional<model::Axis> axis_of_plane(const model::Frame& frame, std::string_view plane);

// The planes of the frame on which members lie, by axis (y, x, z), then by where they are.
std::vector<std::string> faces_with_members(const Derived& derived, const model::Frame& frame);

// The nodes on the planes that the face's members stand on or end at; the lowest row first.
std::vector<NodeName> nodes_of_face(const Derived& derived,
                                    const model::Frame& frame,
                                    const std::string& face);

// From the first node of the face to the one across; none where it has no two that lie apart along
// both axes.
std::optional<NodePair> across_face(const Derived& derived,
                                    const model::Frame& frame,
                                    const std::string& face);

// Between corners of two members on one face: of two that are parallel, from the first one's
// beginning to the other one's end; of two that meet, from one's free end to the other's.
std::optional<NodePair> between_members(const model::Frame& frame,
                                        const model::Member& first,
                                        const model::Member& second);

// Those of the two members that are chosen, where it is two of this frame.
std::optional<NodePair> between_chosen(const model::Frame& frame, const Selection& selection);

// Where a post leans most likely: on a side of the frame, from its lowest node furthest back to the
// node of its top row that lies next to that one. None where no side has two rows of nodes.
std::optional<NodePair> along_back(const Derived& derived, const model::Frame& frame);

// Across the run of what goes from node to node: the axis of the face along which it goes less, and
// the way along that axis to the middle of what the face's members span.
struct AcrossRun {
    model::Axis axis = model::Axis::x;
    model::Sense inward = model::Sense::plus;
};
AcrossRun across_run(const Derived& derived, const model::Frame& frame, const NodePair& pair);

// Along the other diagonal of the same four corners.
void turn_to_other_corners(NodeName& from, NodeName& to);

}  // namespace editor
