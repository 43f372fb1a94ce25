#include "model/room/fit_step.h"

#include "model/project/change.h"
#include "model/resolve/resolve.h"
#include "model/room/clearance.h"
#include "model/room/shapes.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <string>

namespace model {
namespace {

using Counts = std::map<std::string, int>;

// By code, what keeps a frame from being built. How many fasteners a lap takes depends on the stock
// more than on where the planes are.
Counts faults_of(const Resolved& resolved) {
    Counts counts;
    for (const auto& finding : resolved.findings) {
        if (finding.severity == Severity::note || finding.code == "too_few_fasteners") continue;
        ++counts[finding.code];
    }
    return counts;
}

bool has_more(const Counts& counts, const Counts& than) {
    return std::ranges::any_of(counts, [&](const auto& count) {
        const auto was = than.find(count.first);
        return count.second > (was == than.end() ? 0 : was->second);
    });
}

// How far a member is set in behind one of it. Nothing runs on through the hollow of a tube.
Nm layer_of(const Section& section) {
    if (section.form == SectionForm::tube) return std::max(section.a.nm(), section.b.nm());
    return std::max(section.thickness.nm(), section.web_thickness.nm());
}

class Fitting {
public:
    Fitting(const Project& project, const Catalogue& catalogue)
        : project_{project}, catalogue_{catalogue}, before_{resolve(project, catalogue)} {
        mark_ = std::max<Nm>(1, before_.shop.graduation);
    }

    StepOver fitted(StepOver edit) const {
        if (!edit.apart.empty()) return with_standing(edit);
        StepOver close = edit;
        close.apart = as_formula(mark_);
        close = with_standing(close);
        const auto tried = apply(project_, close);
        if (tried && !has_more(faults_of(resolve(*tried, catalogue_)), faults_of(before_))) {
            return close;
        }
        close.apart = as_formula(up_to_mark(apart_in(edit.frame)));
        return close;
    }

private:
    StepOver with_standing(StepOver edit) const {
        if (!edit.standing.empty()) return edit;
        // What is nearer once the step has moved may stand out further than what was before.
        constexpr int most_tries = 4;
        Nm standing = 0;
        for (int i = 0; i < most_tries; ++i) {
            const auto tried = apply(project_, edit);
            if (!tried) break;
            const Nm wanted = up_to_mark(longest_near(*tried, edit));
            if (wanted <= standing) break;
            standing = wanted;
            edit.standing = as_formula(standing);
        }
        return edit;
    }

    // How far those heads and tails of the frame stand out that come too near to the obstacle.
    Nm longest_near(const Project& tried, const StepOver& edit) const {
        const auto resolved = resolve(tried, catalogue_);
        std::vector<Finding> told;
        auto obstacles = room_obstacles(tried, resolved, {}, told);
        std::erase_if(obstacles, [&](const RoomObstacle& obstacle) {
            return tried.room[obstacle.obstacle].name != edit.obstacle;
        });
        double longest = 0.0;
        for (const auto& place :
             near_places(resolved, catalogue_, obstacles, {.with_depth = false})) {
            const auto& frame = resolved.pieces[place.thing.piece].frame;
            if (place.thing.fastener == no_index || tried.frames[frame].name != edit.frame) {
                continue;
            }
            longest = std::max(longest, length_of(resolved, place.thing));
        }
        return static_cast<Nm>(std::llround(longest * 1e6));
    }

    // mm, along the fastener.
    static double length_of(const Resolved& resolved, const RoomThing& thing) {
        const auto& frame = resolved.frames[resolved.pieces[thing.piece].frame];
        std::size_t axis = resolved.fasteners[thing.fastener].axis;
        if (axis < 2 && frame.quarter_turns % 2 != 0) axis = 1 - axis;
        return thing.bounds.hi[axis] - thing.bounds.lo[axis];
    }

    // Two members of one wall whose legs turn to one another, each set in behind two others at
    // most.
    Nm apart_in(const std::string& frame) const {
        Nm widest = 0;
        Nm thickest = 0;
        const auto found = std::ranges::find(project_.frames, frame, &Frame::name);
        if (found == project_.frames.end()) return widest;
        for (const auto& member : found->members) {
            const auto stock = std::ranges::find(project_.stock, member.stock, &Stock::name);
            if (stock == project_.stock.end()) continue;
            const auto* section = find_section(catalogue_, stock->section);
            if (section == nullptr) continue;
            widest = std::max({widest, section->a.nm(), section->b.nm()});
            thickest = std::max(thickest, layer_of(*section));
        }
        return 2 * (widest + 2 * thickest);
    }

    Nm up_to_mark(Nm length) const { return (length + mark_ - 1) / mark_ * mark_; }

    Formula as_formula(Nm length) const {
        auto shown = project_.shown;
        shown.with_unit = true;
        return engine::exact_text(engine::Length::from_nm(length), shown);
    }

    const Project& project_;
    const Catalogue& catalogue_;
    Resolved before_;
    Nm mark_ = 1;  // of the marks that holes lie on, so that planes lie on them too
};

}  // namespace

StepOver fitted_step(const Project& project, const Catalogue& catalogue, StepOver edit) {
    return Fitting(project, catalogue).fitted(std::move(edit));
}

}  // namespace model
