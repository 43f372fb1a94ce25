#include "editor/places/cautions.h"

#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

#include <array>
#include <string>

namespace editor {
namespace {

// Common practice, as in the sheet that is exported (model/schedule/how_to_read.cpp). What the
// maker of a tool says goes before all of it.
constexpr std::array<std::string_view, 6> cutting{
    "The instructions of the saw's maker come first: which blade, for which metal, how it is held.",
    "A blade for non-ferrous metal; never one for wood that its maker does not allow for "
    "aluminium.",
    "Clamp the bar, both sides of the cut where you can; never hold a short piece by hand.",
    "Let the blade come to full speed, cut slowly, and let it stop before you lift it.",
    "Chips are hot and sharp: no gloves near the turning blade, no loose sleeves, hearing "
    "protection on.",
    "Break all edges before you carry a piece."};

constexpr std::array<std::string_view, 6> drilling{
    "The instructions of the drill press's maker come first.",
    "Clamp the work, or hold it against a stop: a drill that catches spins it round.",
    "No gloves, loose sleeves or long hair near the turning drill.",
    "Punch the middle of the hole first, so that the drill does not wander.",
    "Brush chips away; never with a finger, never with compressed air.",
    "Deburr both faces before parts come together: chips between them hold them apart."};

constexpr std::array<std::string_view, 5> riveting{
    "The instructions of the setting tool's and the rivet's maker come first.",
    "Dry-fit all of it with temporary pins, and make it square by its diagonals, before the first "
    "rivet.",
    "The mandrel flies off when it breaks: catch it, and look away from the tail.",
    "Keep fingers out from between the sheets.",
    "Drill out a rivet that sits loose or crooked; do not set it a second time."};

constexpr Caution of_cutting{"Eyes and ears protected, bar clamped, hands clear of the blade.",
                             cutting};
constexpr Caution of_drilling{"Eye protection on; clamp the bar before the drill comes down.",
                              drilling};
constexpr Caution of_riveting{"Eye protection on; dry-fit and square the frame before you rivet.",
                              riveting};

const char* name_of(Work work) {
    switch (work) {
        case Work::cutting:
            return "caution for cutting";
        case Work::drilling:
            return "caution for drilling";
        case Work::riveting:
            break;
    }
    return "caution for riveting";
}

}  // namespace

const Caution& caution_of(Work work) {
    switch (work) {
        case Work::cutting:
            return of_cutting;
        case Work::drilling:
            return of_drilling;
        case Work::riveting:
            break;
    }
    return of_riveting;
}

void draw_caution(Work work) {
    const auto& caution = caution_of(work);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float indent = scaled(12);
    const float width = ImGui::GetContentRegionAvail().x - indent;
    const ImVec2 size = size_of_text(caution.line, Type::small, width);
    ImDrawList& on = *ImGui::GetWindowDrawList();
    on.AddRectFilled(at, {at.x + scaled(3), at.y + size.y}, colour::amber);
    draw_wrapped_at(on, {at.x + indent, at.y}, caution.line, Type::small, colour::amber, width);
    ImGui::Dummy({width + indent, size.y});
    log_item(name_of(work), caution.line);
    std::string further;
    for (const auto sentence : caution.further)
        further += (further.empty() ? "" : "\n") + std::string(sentence);
    draw_hint(further);
}

}  // namespace editor
