#include "model/book/works_in.h"

#include <algorithm>

namespace model {

bool has_work(const Resolved& resolved, Work work) {
    const auto has_hole = [&](const auto& is_such) {
        return std::ranges::any_of(resolved.holes, is_such);
    };
    switch (work) {
        case Work::cutting:
        case Work::deburring:
        case Work::into_the_van:
            return !resolved.pieces.empty();
        case Work::drilling:
            return !resolved.holes.empty();
        case Work::tapping:
            return has_hole([](const Hole& hole) {
                return hole.operation == HoleOperation::tap || hole.tap != no_index;
            });
        case Work::riveting:
            return std::ranges::any_of(resolved.fasteners, [](const Fastener& fastener) {
                return fastener.spec.kind == FastenerSpec::Kind::blind_rivet;
            });
    }
    return false;
}

void draw_cautions(PageFlow& flow, const Resolved& resolved, std::initializer_list<Work> works) {
    for (const Work work : works) {
        if (has_work(resolved, work)) draw_caution(flow, work);
    }
}

}  // namespace model
