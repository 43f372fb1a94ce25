// The edit that adds the mirror images that bars of a frame lack.
#include "model/project/bar_places.h"
#include "model/project/change.h"
#include "model/project/free_name.h"
#include "model/project/in_frame.h"
#include "model/project/mirror.h"
#include "model/project/opposite.h"
#include "model/project/position_sum.h"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

namespace model {

namespace {

using engine::Done;
using engine::Error;
using engine::ErrorCode;

Member image_of(const Member& bar, const Mirror& mirror, const PlanePlaces&) {
    return mirrored(bar, mirror);
}
Diagonal image_of(const Diagonal& bar, const Mirror& mirror, const PlanePlaces&) {
    return mirrored(bar, mirror);
}
Leaning image_of(const Leaning& bar, const Mirror& mirror, const PlanePlaces& places) {
    return mirrored(bar, mirror, places);
}

std::vector<std::string> planes_of(const Member& bar) {
    return {bar.on[0], bar.on[1], bar.from, bar.to};
}
template <class Bar>
std::vector<std::string> planes_of(const Bar& bar) {
    return {bar.face, bar.from[0], bar.from[1], bar.to[0], bar.to[1]};
}

class Mirroring {
public:
    Mirroring(Project& project, Frame& frame, const MirrorBars& edit)
        : project_{project},
          frame_{frame},
          edit_{edit},
          before_{frame},
          chosen_(edit.bars.begin(), edit.bars.end()),
          places_{project, frame},
          mirror_{.axis = edit.axis} {}

    Changed mirror() {
        for (const std::string& bar : edit_.bars) {
            if (!has_bar(frame_, bar)) return no_such<Member>(described(frame_), bar);
        }
        if (auto found = find_sides(); !found) return found;
        if (auto done = mirror_list(before_.members, frame_.members); !done) return done;
        if (auto done = mirror_list(before_.diagonals, frame_.diagonals); !done) return done;
        if (auto done = mirror_list(before_.leaning, frame_.leaning); !done) return done;
        if (frame_.planes.size() + bars_in(frame_) == before_.planes.size() + bars_in(before_)) {
            return refused("each of the bars chosen has its mirror image already");
        }
        mirror_joints();
        return Done{};
    }

private:
    static std::size_t bars_in(const Frame& frame) {
        return frame.members.size() + frame.diagonals.size() + frame.leaning.size();
    }

    Error refused(const std::string& why) const {
        return {ErrorCode::invalid_value, described(before_), why};
    }

    // The two planes about whose middle all is mirrored.
    Changed find_sides() {
        sides_ = edit_.between;
        if (sides_[0].empty() || sides_[1].empty()) take_outermost();
        std::array<Nm, 2> at{};
        for (std::size_t k = 0; k < 2; ++k) {
            const auto place = places_.at(sides_[k], edit_.axis, described(before_));
            if (!place) return place.error();
            at[k] = *place;
        }
        if (at[0] == at[1]) {
            return refused("both planes lie at one place; choose two that lie apart");
        }
        sum_ = at[0] + at[1];
        return Done{};
    }

    void take_outermost() {
        std::optional<Nm> least;
        std::optional<Nm> most;
        for (const Plane& plane : before_.planes) {
            const auto at = places_.known(plane.name, edit_.axis);
            if (!at) continue;
            if (!least || *at < *least) {
                least = at;
                sides_[0] = plane.name;
            }
            if (!most || *at > *most) {
                most = at;
                sides_[1] = plane.name;
            }
        }
    }

    bool is_chosen(const std::string& bar) const {
        return chosen_.empty() || chosen_.contains(bar);
    }

    template <class Bar>
    Changed mirror_list(const std::vector<Bar>& before, std::vector<Bar>& bars) {
        TakenPlaces<Bar> taken(before, places_);
        for (const Bar& bar : before) {
            if (!is_chosen(bar.name)) continue;
            for (const std::string& plane : planes_of(bar)) {
                if (auto found = find_opposite(plane, described(bar)); !found) return found;
            }
            Bar image = image_of(bar, mirror_, places_);
            if (auto there = taken.holder(image)) {
                images_[bar.name] = *std::move(there);
                continue;
            }
            image.name = free_bar_name(frame_, opposite_name(bar.name, edit_.axis));
            images_[bar.name] = image.name;
            taken.take(image);
            bars.push_back(std::move(image));
        }
        return Done{};
    }

    Changed find_opposite(const std::string& name, const std::string& bar) {
        const auto found = find_named(frame_.planes, name);
        if (found == frame_.planes.end())
            return no_such<Plane>(inside(described(frame_), bar), name);
        if (found->axis != edit_.axis || mirror_.opposite.contains(name)) return Done{};
        const auto at = places_.at(name, edit_.axis, inside(described(frame_), bar));
        if (!at) return at.error();
        if (const auto there = places_.plane_at(edit_.axis, sum_ - *at)) {
            mirror_.opposite.emplace(name, sum_ - *at == *at ? name : *there);
        } else {
            mirror_.opposite.emplace(name, add_plane(*found));
        }
        return Done{};
    }

    std::string add_plane(const Plane& plane) {
        const auto is_taken = [&](const std::string& name) {
            return find_named(frame_.planes, name) != frame_.planes.end();
        };
        PositionSum position(project_.shown);
        for (const std::string& side : sides_) {
            position.add(find_named(frame_.planes, side)->position);
        }
        position.add(plane.position, -1);
        Plane image{free_name(opposite_name(plane.name, edit_.axis), is_taken), edit_.axis,
                    position.formula()};
        frame_.planes.push_back(image);
        return image.name;
    }

    void mirror_joints() {
        for (const JointOverride& joint : before_.joints) {
            JointOverride image = joint;
            bool has_images = true;
            for (std::string& bar : image.members) {
                const auto found = images_.find(bar);
                has_images = has_images && found != images_.end();
                if (has_images) bar = found->second;
            }
            if (has_images && is_new(image)) frame_.joints.push_back(std::move(image));
        }
    }

    bool is_new(const JointOverride& image) const {
        const bool has_new_bar =
            !has_bar(before_, image.members[0]) || !has_bar(before_, image.members[1]);
        const std::array turned{image.members[1], image.members[0]};
        return has_new_bar && std::ranges::none_of(frame_.joints, [&](const JointOverride& joint) {
                   return joint.members == image.members || joint.members == turned;
               });
    }

    Project& project_;
    Frame& frame_;
    const MirrorBars& edit_;
    const Frame before_;
    const std::set<std::string> chosen_;  // empty: all
    const PlanePlaces places_;
    Mirror mirror_;
    std::array<std::string, 2> sides_;
    Nm sum_ = 0;
    std::map<std::string, std::string> images_;  // of bars, by name
};

}  // namespace

Changed change(Project& project, const MirrorBars& edit) {
    return in_frame(project, edit.frame,
                    [&](Frame& frame) { return Mirroring(project, frame, edit).mirror(); });
}

}  // namespace model
