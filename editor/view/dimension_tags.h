// Dimension lines over the view, each with its strip of tape: pull it and the skeleton follows.
#pragma once

#include "editor/change.h"
#include "editor/derived.h"
#include "editor/dimension_hand.h"
#include "editor/kit/scopes.h"
#include "editor/view/view_state.h"

#include <glm/vec3.hpp>

#include <optional>
#include <vector>

namespace editor {

// A dimension that is, as it stands, the position of a plane of a frame.
struct TaggedDimension {
    std::size_t dimension = 0;  // in the project
    std::size_t frame = 0;
    model::Axis axis = model::Axis::x;
    model::Nm from = 0;  // along that axis of the frame
    model::Nm to = 0;

    bool operator==(const TaggedDimension&) const = default;
};

// In order of frame, axis and length; each dimension once.
std::vector<TaggedDimension> tagged_dimensions(const Derived& derived);

// How many pixels beside the skeleton the lines and tags take, at scale 1.
float room_for_tags(const std::vector<TaggedDimension>& tags);

// Where tags must not lie may be given; those that were drawn are put to it.
std::optional<Change> draw_dimension_tags(const Area& area,
                                          const Derived& derived,
                                          const ViewState& view,
                                          DimensionHand& hand,
                                          std::vector<Area>* covered = nullptr);

}  // namespace editor
