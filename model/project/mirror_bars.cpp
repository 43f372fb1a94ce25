// The edit that adds the mirror images that bars of a frame lack.
#include "model/project/bar_places.h"
#include "model/project/change.h"
#include "model/project/frame_bars.h"
#include "model/project/free_name.h"
#include "model/project/in_frame.h"
#include "model/project/mirror.h"
#include "model/project/opposite.h"
#include "model/project/position_sum.h"

#include <algorithm>
#include <cstddef>
#include <map>
#include <optional>
#include <set>
#include <utility>

namespace model {

namespace {

using engine::Done;
using engine::Error;
using engine::ErrorCode;

template <class Bar>
Bar image_of(const Bar& bar, const Mirror& mirror, const PlanePlaces&) {
    return mirrored(bar, mirror);
}
Leaning image_of(const Leaning& bar, const Mirror& mirror, const PlanePlaces& places) {
    return mirrored(bar, mirror, places);
}

// Of a bar and its own image.
std::string overlap_of(const Member&) {
    return "its image would overlap it; let it end before the middle, or reach as far on the other "
           "side";
}
template <class Bar>
std::string overlap_of(const Bar&) {
    return "its image would cross it on the same face; add that by hand, on the other side of it";
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
        if (bars_in(frame_) == bars_in(before_)) {
            return overlap_.value_or(
                refused("each of the bars chosen has its mirror image already"));
        }
        remove_unused_planes();
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
        if (sides_[0].empty() || (edit_.between != sides_ && sides_[0] == sides_[1])) {
            return refused(std::string("it has no two planes across ") +
                           "xyz"[index_of(edit_.axis)] +
                           " between which it could be mirrored; add one first");
        }
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
        // One that is named may be wanted back to back with what does its image's work already.
        const Alike alike = edit_.bars.empty() ? Alike::on_line : Alike::with_legs;
        const TakenPlaces<Bar> taken(before, places_, alike);
        for (const Bar& bar : before) {
            if (!is_chosen(bar.name)) continue;
            for (const std::string& plane : planes_of(bar)) {
                if (auto found = find_opposite(plane, described(bar)); !found) return found;
            }
            Bar image = image_of(bar, mirror_, places_);
            const auto counts = [&](const Bar& there) { return stands_for(image, bar, there); };
            if (const Bar* there = taken.holder(image, counts)) {
                if (auto noted = note_there(bar, image, *there); !noted) return noted;
                continue;
            }
            image.name = free_bar_name(frame_, opposite_name(bar.name, edit_.axis));
            images_[bar.name] = image.name;
            bars.push_back(std::move(image));
        }
        return Done{};
    }

    // What lies along the bar as well as along its image stands back to back with both.
    template <class Bar>
    bool stands_for(const Bar& image, const Bar& bar, const Bar& there) const {
        return there.name == bar.name || has_same_place(there, image, places_, Alike::with_legs) ||
               !has_same_place(there, bar, places_, Alike::on_line);
    }

    // A bar that passes the middle, but not as far as it begins before it, has no image.
    template <class Bar>
    Changed note_there(const Bar& bar, const Bar& image, const Bar& there) {
        if (there.name != bar.name || has_same_ends(bar, image, places_)) {
            images_[bar.name] = there.name;
            return Done{};
        }
        const std::string where = inside(described(before_), described(bar));
        if (!overlap_) overlap_ = Error{ErrorCode::invalid_value, where, overlap_of(bar)};
        return edit_.bars.empty() ? Changed(Done{}) : Changed(*overlap_);
    }

    Changed find_opposite(const std::string& name, const std::string& bar) {
        const auto found = find_named(frame_.planes, name);
        const std::string where = inside(described(frame_), bar);
        if (found == frame_.planes.end()) return no_such<Plane>(where, name);
        if (found->axis != edit_.axis || mirror_.opposite.contains(name)) return Done{};
        const auto at = places_.at(name, edit_.axis, where);
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

    // That stand for a bar whose image was there already.
    void remove_unused_planes() {
        for (std::size_t i = frame_.planes.size(); i > before_.planes.size(); --i) {
            const auto plane = frame_.planes.begin() + static_cast<std::ptrdiff_t>(i - 1);
            if (users_of(frame_, {Target::plane, plane->name}).empty()) frame_.planes.erase(plane);
        }
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
        return has_new_bar && !has_joint(frame_, image.members);
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
    std::optional<Error> overlap_;               // of the first bar that would overlap itself
};

}  // namespace

Changed change(Project& project, const MirrorBars& edit) {
    return in_frame(project, edit.frame,
                    [&](Frame& frame) { return Mirroring(project, frame, edit).mirror(); });
}

}  // namespace model
