#include "editor/places/lay_out_sections.h"

#include <algorithm>

namespace editor {
namespace {

constexpr float findings_share = 0.32F;  // of the room, while the dimensions want the rest
constexpr float made_of_share = 0.30F;

}  // namespace

SectionHeights section_heights(const SectionWishes& wishes, float room) {
    SectionHeights heights{
        .findings = std::min(wishes.findings, findings_share * room),
        .made_of = std::min(wishes.made_of, std::max(made_of_share * room, wishes.made_of_least))};
    const float first = std::min(wishes.dimensions, wishes.dimensions_first);
    const auto give_up = [&](float& from, float wish, float least_of_it) {
        const float lacking = first - (room - heights.findings - heights.made_of);
        const float least = std::min(wish, least_of_it);
        from -= std::clamp(lacking, 0.0F, std::max(0.0F, from - least));
    };
    give_up(heights.made_of, wishes.made_of, std::max(wishes.least, wishes.made_of_least));
    give_up(heights.findings, wishes.findings, wishes.least);
    float free = room - heights.findings - heights.made_of - wishes.dimensions;
    const auto take_more = [&](float& into, float wish) {
        const float more = std::clamp(wish - into, 0.0F, std::max(0.0F, free));
        into += more;
        free -= more;
    };
    take_more(heights.findings, wishes.findings);
    take_more(heights.made_of, wishes.made_of);
    heights.dimensions =
        wishes.dimensions > 0.0F ? std::max(0.0F, room - heights.findings - heights.made_of) : 0.0F;
    const bool is_open = wishes.findings_open > wishes.findings;
    if (is_open && wishes.findings_open > heights.findings) {
        const float below = room - heights.dimensions - heights.findings;
        const float more =
            std::clamp(wishes.findings_open - heights.findings, 0.0F, std::max(0.0F, below));
        heights.findings += more;
        heights.made_of = std::min(heights.made_of, room - heights.dimensions - heights.findings);
    }
    return heights;
}

}  // namespace editor
