#include "model/assembly/tool_access.h"

#include "model/resolve/surroundings.h"

#include <algorithm>

namespace model {
namespace {

// A driver's blade and the hand's first grip need this much more than the head, as where screws are
// chosen.
constexpr Nm beside_head = Length::nm_per_inch / 32;

// What the tool fills about the axis from one height above the head's surface to another.
Box column(const Fastener& fastener, Nm from, Nm to, Nm radius) {
    Box box{fastener.at, fastener.at};
    for (std::size_t k = 0; k < 3; ++k) {
        if (k == fastener.axis) continue;
        box.lo[k] -= radius;
        box.hi[k] += radius;
    }
    const Nm near = fastener.at[fastener.axis] - fastener.drive * from;
    const Nm far = fastener.at[fastener.axis] - fastener.drive * to;
    box.lo[fastener.axis] = std::min(near, far);
    box.hi[fastener.axis] = std::max(near, far);
    return box;
}

struct Tool {
    Box nose;
    Box housing;
    Box long_nose;  // instead of the housing
};

Tool tool_on(const Fastener& fastener, const Resolved& resolved, const Catalogue& catalogue) {
    const ResolvedShop& shop = resolved.shop;
    if (fastener.spec.kind == FastenerSpec::Kind::blind_rivet) {
        return {column(fastener, 0, shop.nose_reach, shop.nose_radius),
                column(fastener, shop.nose_reach, tool_length, shop.housing_radius),
                column(fastener, shop.nose_reach, tool_length, shop.nose_radius)};
    }
    Nm radius = shop.nose_radius;
    if (fastener.spec.index < catalogue.screws.size()) {
        const auto& screw = catalogue.screws[fastener.spec.index];
        radius = screw.head_diameter_most.nm() / 2 + beside_head;
    }
    const Box driver = column(fastener, 0, tool_length, radius);
    return {driver, driver, driver};
}

}  // namespace

ToolAccess tool_access(const FrameParts& parts, const PartWays& ways) {
    ToolAccess access;
    for (const auto& joint : parts.joints()) {
        ToolAccess::OfJoint here{PieceSet(parts.size()), PieceSet(parts.size()), false};
        const auto& resolved = parts.resolved();
        for (const auto& fastener : resolved.fasteners_of(resolved.joints[joint.joint])) {
            const Tool tool = tool_on(fastener, resolved, parts.catalogue());
            const Box all = engine::hull(tool.nose, engine::hull(tool.housing, tool.long_nose));
            for (Index i = 0; i < parts.size(); ++i) {
                if (!engine::overlaps(all, parts.piece(i).extents)) continue;
                const auto& bodies = ways.bodies(i);
                const bool is_own = joint.set.contains(i);
                const bool hits_nose = !is_own && reaches_into(tool.nose, bodies);
                if (hits_nose || (!is_own && reaches_into(tool.long_nose, bodies))) {
                    here.in_way_of_nose.insert(i);
                }
                if (!hits_nose && !reaches_into(tool.housing, bodies)) continue;
                if (is_own) here.needs_nose = true;
                if (!is_own) here.in_way.insert(i);
            }
        }
        if (here.needs_nose) here.in_way = here.in_way_of_nose;
        access.joints.push_back(std::move(here));
    }
    return access;
}

}  // namespace model
