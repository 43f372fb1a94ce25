#include "model/project/bar_places.h"

namespace model {

namespace {

template <class Bar>
bool has_same_nodes(const Bar& a, const Bar& b) {
    return a.face == b.face && ((a.from == b.from && a.to == b.to) ||  //
                                (a.from == b.to && a.to == b.from));
}

// From corner to corner of one field of a face: they lie along one another, or cross.
template <class Bar>
bool has_same_field(const Bar& a, const Bar& b) {
    return a.face == b.face && (a.from[0] == b.from[0] || a.from[0] == b.to[0]) &&
           (a.from[1] == b.from[1] || a.from[1] == b.to[1]) &&
           (a.to[0] == b.from[0] || a.to[0] == b.to[0]) &&
           (a.to[1] == b.from[1] || a.to[1] == b.to[1]);
}

}  // namespace

bool has_same_place(const Member& a, const Member& b, const PlanePlaces& places, Alike alike) {
    if (a.run != b.run) return false;
    if (alike == Alike::with_legs && (a.legs != b.legs || a.seat != b.seat)) return false;
    for (const Axis axis : across(a.run)) {
        if (reach(a, places, axis) != reach(b, places, axis)) return false;
    }
    const auto one = reach(a, places, a.run);
    const auto other = reach(b, places, b.run);
    return one && other && (*one)[0] < (*other)[1] && (*other)[0] < (*one)[1];
}

bool has_same_place(const Diagonal& a, const Diagonal& b, const PlanePlaces&, Alike alike) {
    if (alike == Alike::on_line) return has_same_field(a, b);
    return has_same_nodes(a, b) && a.side == b.side;
}

bool has_same_place(const Leaning& a, const Leaning& b, const PlanePlaces&, Alike alike) {
    return has_same_nodes(a, b) && (alike == Alike::on_line || a.leg == b.leg);
}

bool has_same_ends(const Member& a, const Member& b, const PlanePlaces& places) {
    return reach(a, places, a.run) == reach(b, places, b.run);
}

bool has_same_ends(const Diagonal& a, const Diagonal& b, const PlanePlaces&) {
    return has_same_nodes(a, b);
}

bool has_same_ends(const Leaning& a, const Leaning& b, const PlanePlaces&) {
    return has_same_nodes(a, b);
}

bool holds_all_of(const Member& outer, const Member& inner, const PlanePlaces& places) {
    const auto around = reach(outer, places, outer.run);
    const auto within = reach(inner, places, inner.run);
    return around && within && (*around)[0] <= (*within)[0] && (*within)[1] <= (*around)[1];
}

PlaceKey key_of(const Member& bar, const PlanePlaces& places) {
    PlaceKey key{};
    for (std::size_t i = 0; i < 2; ++i) {
        key[i] = places.known(bar.on[i], across(bar.run)[i]).value_or(0);
    }
    return key;
}

}  // namespace model
