// Measure: the room, what is kept from it, and the real openings that frames go into.
#pragma once

#include "editor/change.h"
#include "editor/derived.h"
#include "editor/dialogs/dialog.h"
#include "editor/kit/scopes.h"
#include "editor/places/saw_fields.h"
#include "editor/room_facts.h"
#include "editor/selection.h"

#include <optional>
#include <string>
#include <string_view>

namespace editor {

struct MeasureState {
    Selection& selection;
    Dialog& dialog;
    SawTyping& shop;
    std::string reading;  // the scan that is being read, in words; empty: none
};

struct MeasureOutcome {
    std::optional<Change> change;
    std::string_view asked;  // a command
};

MeasureOutcome draw_measure(const Area& area,
                            const Derived& derived,
                            const RoomFacts& facts,
                            MeasureState state);

}  // namespace editor
