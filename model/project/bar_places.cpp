#include "model/project/bar_places.h"

namespace model {

namespace {

template <class Bar>
bool has_same_nodes(const Bar& a, const Bar& b) {
    return a.face == b.face && ((a.from == b.from && a.to == b.to) ||  //
                                (a.from == b.to && a.to == b.from));
}

}  // namespace

bool has_same_place(const Member& a, const Member& b, const PlanePlaces& places) {
    if (a.run != b.run || a.legs != b.legs || a.seat != b.seat) return false;
    for (const Axis axis : across(a.run)) {
        if (reach(a, places, axis) != reach(b, places, axis)) return false;
    }
    const auto one = reach(a, places, a.run);
    const auto other = reach(b, places, b.run);
    return one && other && (*one)[0] < (*other)[1] && (*other)[0] < (*one)[1];
}

bool has_same_place(const Diagonal& a, const Diagonal& b, const PlanePlaces&) {
    return has_same_nodes(a, b) && a.side == b.side;
}

bool has_same_place(const Leaning& a, const Leaning& b, const PlanePlaces&) {
    return has_same_nodes(a, b) && a.leg == b.leg;
}

PlaceKey key_of(const Member& bar, const PlanePlaces& places) {
    PlaceKey key{};
    for (std::size_t i = 0; i < 2; ++i) {
        key[i] = places.known(bar.on[i], across(bar.run)[i]).value_or(0);
    }
    return key;
}

}  // namespace model
