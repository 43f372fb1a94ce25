// The staggered lap, and the same with a notch where one leg alone is in the way.
#include "model/resolve/recipe_row.h"
#include "model/resolve/set_in.h"

namespace model {
namespace {

bool always(const Bar&, const Bar&) { return true; }

Unsuited not_between_tubes(const FrameSkeleton& s, const Meeting& meeting) {
    const Bar& upper = s.bars[meeting.upper];
    const Bar& lower = s.bars[meeting.lower];
    if (!upper.shape->is_closed || !lower.shape->is_closed || !share_a_face(upper, lower)) {
        return {};
    }
    return {"both are tubes, and a blind rivet can be set from outside only", "a corner cleat",
            false, "corner cleat"};
}

Unsuited not_in_a_tube(const FrameSkeleton& s, const Meeting& meeting) {
    if (!s.bars[meeting.lower].shape->is_closed) return not_between_tubes(s, meeting);
    return {"a tube has no leg that could be notched alone", "a corner cleat"};
}

}  // namespace

RecipeRow staggered_lap() {
    return {.told = {"staggered lap",
                     "the lower member lies behind the upper one's leg and is fastened to it"},
            .unsuited = not_between_tubes,
            .lies_behind = always};
}

RecipeRow coped_lap() {
    return {.told = {"coped lap",
                     "as the staggered lap, but a leg that alone is in the way is notched, so that "
                     "the other one can run on"},
            .unsuited = not_in_a_tube,
            .lies_behind = always,
            .notches = true};
}

}  // namespace model
