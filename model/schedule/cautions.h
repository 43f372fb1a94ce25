// What to take care of at each kind of work: on the screen and on paper, where that work begins.
#pragma once

#include <array>
#include <cstdint>
#include <span>
#include <string_view>

namespace model {

// The last one: before anything is drilled into the van.
enum class Work : std::uint8_t { cutting, drilling, tapping, riveting, deburring, into_the_van };

inline constexpr std::array<Work, 6> all_works{Work::cutting,  Work::drilling,  Work::tapping,
                                               Work::riveting, Work::deburring, Work::into_the_van};

std::string_view name_of(Work work);  // "cutting"

struct Caution {
    std::string_view line;                      // what nobody may miss
    std::span<const std::string_view> further;  // sentences; the first defers to a maker or a code
};

// Common practice, from memory. What the maker of a tool says goes before all of it.
const Caution& caution_of(Work work);

// To stand wherever a page could be taken for a promise that a cabinet holds.
inline constexpr std::string_view strength_note{
    "This book says where things are cut, drilled and fastened, not that the cabinet will hold. "
    "Anything in it about strength is guidance, never a certification: a cabinet is thrown forward "
    "when the van brakes, and local codes and those who are licensed for it decide how it is "
    "anchored."};

}  // namespace model
