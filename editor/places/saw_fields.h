// How the maker saws, and how much to buy beyond what is needed: fields of the shop's settings.
#pragma once

#include "editor/change.h"
#include "editor/derived.h"

#include <optional>
#include <string>

namespace editor {

// A setting, half typed.
struct SawTyping {
    std::string field;
    std::string text;
    std::string trouble;
    bool is_drawn = false;  // its field is on the screen in this frame
};

std::optional<Change> draw_saw_fields(const Derived& derived, SawTyping& typing);

// What is kept from the room, and what frames keep from one another.
std::optional<Change> draw_room_fields(const Derived& derived, SawTyping& typing);

// Ends the typing: the change to make, or none, with the reason in `trouble` when it will not do.
std::optional<Change> take_typed_saw(SawTyping& typing, const Derived& derived);

// The change that a typed text asks for; no edit where it is what stands there already. Fields:
// "saw kerf", "off each end", "spare fasteners", "clearance", "frame gap". Error: what cannot be
// read, and what is less than nothing.
engine::Result<Change> saw_change(const Derived& derived,
                                  const std::string& field,
                                  const std::string& text);

}  // namespace editor
