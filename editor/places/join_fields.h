// Fields of the Join place that take text: a joint's note, the thickness of gussets.
#pragma once

#include "editor/change.h"
#include "editor/derived.h"
#include "editor/joint_list.h"

#include <optional>
#include <string>

namespace editor {

// A text, half typed.
struct JoinTyping {
    enum class Field { none, note, gusset_thickness };
    Field field = Field::none;
    JointName joint;  // of a note
    std::string text;
    std::string trouble;    // why it was not taken
    bool is_drawn = false;  // its field is on the screen in this frame
};

// Ends the typing: the change to make, or none, with the reason in `trouble` when it will not do.
std::optional<Change> take_typed_join(JoinTyping& typing, const Derived& derived);

std::optional<Change> draw_note_field(const Derived& derived,
                                      const JointName& joint,
                                      JoinTyping& typing);

std::optional<Change> draw_gusset_field(const Derived& derived, JoinTyping& typing);

}  // namespace editor
