// Flush: legs share the layer, the lower member butts, a gusset laps both.
#include "model/resolve/corner_plate.h"

namespace model {
namespace {

bool never(const Bar&, const Bar&) { return false; }

Unsuited gusset_at(PartMaker& maker, const Corner& corner) {
    return add_gusset(maker, corner, true);
}

}  // namespace

RecipeRow flush() {
    return {.told = {"flush",
                     "both lie in one layer; the lower member butts, and a gusset of sheet laps "
                     "both on the inside (of tubes on the outside)"},
            .unsuited = not_flush,
            .lies_behind = never,
            .in_one_layer = true,
            .add_parts = gusset_at};
}

}  // namespace model
