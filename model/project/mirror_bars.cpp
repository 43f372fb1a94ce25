// The edit that adds the mirror images that bars of a frame lack.
#include "model/project/bar_places.h"
#include "model/project/change.h"
#include "model/project/frame_bars.h"
#include "model/project/free_name.h"
#include "model/project/in_frame.h"
#include "model/project/mirror.h"
#include "model/project/mirror_planes.h"
#include "model/project/opposite.h"

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
    return "its image would cross it on the same face; mirror it by its name to have that on the "
           "other side of the face";
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
    Mirroring(const Project& project, Frame& frame, const MirrorBars& edit)
        : frame_{frame},
          edit_{edit},
          before_{frame},
          chosen_(edit.bars.begin(), edit.bars.end()),
          places_{project, frame},
          planes_{project, frame, edit, places_} {}

    Changed mirror() {
        for (const std::string& bar : edit_.bars) {
            if (!has_bar(frame_, bar)) return no_such<Member>(described(frame_), bar);
        }
        if (auto found = planes_.find_sides(); !found) return found;
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

    bool is_chosen(const std::string& bar) const {
        return chosen_.empty() || chosen_.contains(bar);
    }

    // One that is named may be wanted back to back with what does its image's work already.
    Alike alike() const { return chosen_.empty() ? Alike::on_line : Alike::with_legs; }

    template <class Bar>
    Changed mirror_list(const std::vector<Bar>& before, std::vector<Bar>& bars) {
        const TakenPlaces<Bar> taken(before, places_, alike());
        for (const Bar& bar : before) {
            if (!is_chosen(bar.name)) continue;
            for (const std::string& plane : planes_of(bar)) {
                if (auto found = planes_.find_opposite(plane, described(bar)); !found) return found;
            }
            Bar image = image_of(bar, planes_.mirror(), places_);
            const auto there = find_image(taken, image, bar);
            if (!there) return there.error();
            if (*there != nullptr) {
                if (auto noted = note_there(bar, image, **there); !noted) return noted;
                continue;
            }
            image.name = free_bar_name(frame_, opposite_name(bar.name, edit_.axis));
            images_[bar.name] = image.name;
            bars.push_back(std::move(image));
        }
        return Done{};
    }

    // Null where the image is still to come: that of a brace that is named comes on the side of the
    // face where it crosses no other one.
    template <class Bar>
    engine::Result<const Bar*> find_image(const TakenPlaces<Bar>& taken,
                                          Bar& image,
                                          const Bar& bar) const {
        const Bar* there = image_there(taken, image, bar);
        if (there != nullptr || chosen_.empty() || !is_crossed(image)) return there;
        turn_over(image);
        if (!is_crossed(image)) return image_there(taken, image, bar);
        return Error{ErrorCode::invalid_value, inside(described(before_), described(bar)),
                     "its image would cross others on both sides of the face; take those on one "
                     "side out first"};
    }

    // Another bar that is the image, before the bar itself, which may lie across its own.
    template <class Bar>
    const Bar* image_there(const TakenPlaces<Bar>& taken, const Bar& image, const Bar& bar) const {
        const auto is_image = [&](const Bar& there) {
            return there.name != bar.name && stands_for(image, bar, there) &&
                   has_same_ends(there, image, places_);
        };
        if (const Bar* there = taken.holder(image, is_image)) return there;
        return taken.holder(image, [&](const Bar& there) { return stands_for(image, bar, there); });
    }

    // What lies along the bar as well as along its image stands back to back with both.
    template <class Bar>
    bool stands_for(const Bar& image, const Bar& bar, const Bar& there) const {
        return there.name == bar.name || has_same_place(there, image, places_, Alike::with_legs) ||
               !has_same_place(there, bar, places_, Alike::on_line);
    }
    // Of two braces from corner to corner each is the other's image, on whichever side.
    bool stands_for(const Diagonal& image, const Diagonal& bar, const Diagonal& there) const {
        return there.name == bar.name || has_same_ends(there, image, places_) ||
               !has_same_place(there, bar, places_, Alike::on_line);
    }

    bool is_crossed(const Diagonal& image) const {
        return std::ranges::any_of(before_.diagonals, [&](const Diagonal& it) {
            return it.side == image.side && has_same_place(it, image, places_, Alike::on_line) &&
                   !has_same_ends(it, image, places_);
        });
    }
    template <class Bar>
    bool is_crossed(const Bar&) const {
        return false;
    }

    static void turn_over(Diagonal& brace) {
        brace.side = brace.side == FaceSide::inside ? FaceSide::outside : FaceSide::inside;
    }
    template <class Bar>
    static void turn_over(Bar&) {}

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

    Frame& frame_;
    const MirrorBars& edit_;
    const Frame before_;
    const std::set<std::string> chosen_;  // empty: all
    const PlanePlaces places_;
    MirrorPlanes planes_;
    std::map<std::string, std::string> images_;  // of bars, by name
    std::optional<Error> overlap_;               // of the first bar that would overlap itself
};

}  // namespace

Changed change(Project& project, const MirrorBars& edit) {
    return in_frame(project, edit.frame,
                    [&](Frame& frame) { return Mirroring(project, frame, edit).mirror(); });
}

}  // namespace model
