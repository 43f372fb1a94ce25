#include "model/assembly/assembly_order.h"

#include <array>
#include <cmath>
#include <cstddef>

namespace model {

std::string_view name_of(AssemblyWork work) {
    constexpr std::array<std::string_view, 6> names{
        "flat on the bench", "joined on",    "panels",
        "screwed on",        "put on loose", "fixed to the van"};
    return names[static_cast<std::size_t>(work)];
}

std::string words_of(const Travel& along) {
    constexpr std::array<std::array<std::string_view, 2>, 3> sides{
        {{"the left", "the right"}, {"the front", "the back"}, {"below", "above"}}};
    std::string text;
    for (std::size_t k = 0; k < 3; ++k) {
        if (std::abs(along[k]) < 1e-6) continue;
        text += text.empty() ? "from " : " and ";
        text += sides[k][along[k] > 0.0 ? 0 : 1];
    }
    return text.empty() ? "laid down" : text;
}

}  // namespace model
