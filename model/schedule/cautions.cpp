#include "model/schedule/cautions.h"

namespace model {
namespace {

using namespace std::string_view_literals;

constexpr std::array cutting{
    "The instructions of the saw's maker come first: which blade, for which metal, how it is held."sv,
    "A blade for non-ferrous metal; never one for wood that its maker does not allow for "
    "aluminium."sv,
    "Clamp the bar, both sides of the cut where you can, and support its ends; never hold a short piece by hand."sv,
    "Let the blade come to full speed, cut slowly, and let it stop before you lift it."sv,
    "Chips are hot and sharp: no gloves near the turning blade, no loose sleeves, hearing "
    "protection on."sv,
    "Measure the first piece of each setting of the stop before the others are cut."sv,
    "Break all edges before you carry a piece."sv};

constexpr std::array drilling{
    "The instructions of the drill press's maker come first."sv,
    "Clamp the work, or hold it against a stop: a drill that catches spins it round."sv,
    "No gloves, loose sleeves or long hair near the turning drill."sv,
    "Punch the middle of the hole first, so that the drill does not wander."sv,
    "Brush chips away; never with a finger, never with compressed air."sv,
    "Deburr both faces before parts come together: chips between them hold them apart."sv};

constexpr std::array tapping{
    "The instructions of the tap's and the cutting oil's maker come first."sv,
    "Start the tap dead square: let a block with a hole, or the chuck of the unplugged drill "
    "press, "
    "guide it while you turn it by hand."sv,
    "Half a turn on, a quarter back, to break the chip; do not force a tap that binds: it breaks, "
    "and its splinters fly."sv,
    "Never tap under power on a drill press that cannot reverse."sv,
    "Brush the chips out, never wipe them off with a finger."sv};

constexpr std::array riveting{
    "The instructions of the setting tool's and the rivet's maker come first."sv,
    "Dry-fit what a step puts together with temporary pins, and make it square by its diagonals, "
    "before its first rivet."sv,
    "The mandrel flies off when it breaks: catch it, and look away from the tail."sv,
    "Keep fingers out from between the sheets."sv,
    "Drill out a rivet that sits loose or crooked; do not set it a second time."sv};

constexpr std::array deburring{
    "The instructions of the tool's maker come first."sv,
    "Clamp the piece; draw the scraper or file away from you and from the hand that holds."sv,
    "Both faces of every hole, every cut end, all edges of sheet: they are as sharp as a knife."sv,
    "Gloves to carry bar and sheet; none near anything that turns."sv,
    "Sweep chips up; do not breathe the dust or blow it about."sv};

constexpr std::array into_the_van{
    "The instructions of the van's maker come first, also on where a body may be drilled at all."sv,
    "Behind a wall, under a floor or above a ceiling may lie fuel, brake and gas lines, wiring, "
    "tanks and airbags; in some vans high voltage, which kills."sv,
    "Look from below and from inside too. Where you cannot see what lies there, do not drill."sv,
    "Disconnect the battery as the van's maker says; let a stop keep the drill from running "
    "through."sv,
    "Seal bare metal before it rusts."sv,
    "Leave gas, mains wiring, high voltage, seats and belts to those who are licensed for them; "
    "local codes decide."sv};

constexpr Caution of_cutting{"Eyes and ears protected, bar clamped, hands clear of the blade.",
                             cutting};
constexpr Caution of_drilling{"Eye protection on; clamp the bar before the drill comes down.",
                              drilling};
constexpr Caution of_tapping{"Eye protection on; clamp the part, and turn the tap by hand.",
                             tapping};
constexpr Caution of_riveting{
    "Eye protection on; dry-fit and square each step before you rivet it.", riveting};
constexpr Caution of_deburring{
    "Eye protection on; a fresh edge cuts: break it before you carry it.", deburring};
constexpr Caution of_into_the_van{"Know what lies behind every mark before you drill into the van.",
                                  into_the_van};

}  // namespace

std::string_view name_of(Work work) {
    constexpr std::array<std::string_view, 6> names{
        "cutting", "drilling", "tapping", "riveting", "deburring", "drilling into the van"};
    return names[static_cast<std::size_t>(work)];
}

const Caution& caution_of(Work work) {
    switch (work) {
        case Work::cutting:
            return of_cutting;
        case Work::drilling:
            return of_drilling;
        case Work::tapping:
            return of_tapping;
        case Work::riveting:
            return of_riveting;
        case Work::deburring:
            return of_deburring;
        case Work::into_the_van:
            break;
    }
    return of_into_the_van;
}

}  // namespace model
