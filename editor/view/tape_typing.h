// A length typed into a measure: the layout plane behind its second end moves.
#pragma once

#include "editor/change.h"
#include "editor/derived.h"
#include "editor/view/seeing_state.h"
#include "model/catalogue/catalogue.h"

#include <cstddef>
#include <optional>
#include <string>

namespace editor {

// What a measure along one axis of the room moves.
struct TapeGrip {
    std::string frame;
    std::string plane;
    model::Nm at = 0;      // the plane, in its frame
    int sense = 1;         // of the way along the frame's axis by which the measure grows
    std::size_t axis = 0;  // of the room
    model::Nm length = 0;  // as it is measured
};

// The grip; none, and then it is said why.
struct TapeHold {
    std::optional<TapeGrip> grip;
    std::string reason;
};

TapeHold tape_hold(const Derived& derived, const TapeTaken& taken);

// Opens the field, or says why not.
void begin_typing_length(TapeHand& hand, const Derived& derived);

// Ends the typing: the change to make, or none, with the reason in `refused` when the text will not
// do. `keep_field` leaves the text there to be mended.
std::optional<Change> take_typed_length(TapeHand& hand,
                                        const Derived& derived,
                                        const model::Catalogue& catalogue,
                                        bool keep_field);

// The measure is shown as it is now, if that change has been made.
void follow_typed_length(TapeHand& hand, const Snapshot& project, Revision revision);

}  // namespace editor
