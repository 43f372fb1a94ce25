// The sections of the Lay out place: which are folded, and how high each is.
#pragma once

#include <array>
#include <cstddef>

namespace editor {

enum class LayOutSection : std::size_t { dimensions, findings, made_of };

struct LayOutSections {
    std::array<bool, 3> folded{};     // in the order of LayOutSection
    float dimensions_content = 0.0F;  // how high all of them are, as drawn last

    bool is_folded(LayOutSection section) const {
        return folded[static_cast<std::size_t>(section)];
    }
};

// Of the lists below their headings.
struct SectionHeights {
    float dimensions = 0.0F;
    float findings = 0.0F;
    float made_of = 0.0F;
};

// What each would take if it had all the room it wants; 0: folded, or not there.
struct SectionWishes {
    float dimensions = 0.0F;
    float dimensions_first = 0.0F;  // so much of it before the others get more than their least
    float findings = 0.0F;          // with no card open
    float findings_open = 0.0F;
    float made_of = 0.0F;
    float made_of_least = 0.0F;  // the first frame's stock and what holds it
    float least = 0.0F;          // of each of the others
};

// Shares out the room. Where a card is open the findings take from what lies below them, never from
// above: what was clicked stays where it is.
SectionHeights section_heights(const SectionWishes& wishes, float room);

}  // namespace editor
