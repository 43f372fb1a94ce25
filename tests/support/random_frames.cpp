#include "tests/support/random_frames.h"

#include <algorithm>
#include <cstddef>
#include <utility>

namespace tests {
namespace {

using model::Axis;
using model::Sense;

Sense random_sense(Dice& dice) { return dice.chance(50) ? Sense::plus : Sense::minus; }

void make_of(model::Member& member, const Role& role) {
    member.stock = role.stock;
    member.turned = role.turned;
}

// A box while it is laid out: its outer sizes and the planes inside it.
struct BoxLayout {
    Nm width = 0;
    Nm depth = 0;
    Nm height = 0;
    std::vector<Nm> levels;    // bottom, shelves, top
    std::vector<Nm> dividers;  // along x
    Sense shelf_legs = Sense::minus;
};

BoxLayout random_layout(Dice& dice, const Ruler& ruler) {
    BoxLayout box;
    const bool small = dice.chance(10);
    box.width = ruler.draw(dice, inches(small ? 4 : 10), inches(small ? 10 : 72));
    box.depth = ruler.draw(dice, inches(small ? 4 : 8), inches(small ? 10 : 30));
    box.height = ruler.draw(dice, inches(small ? 4 : 10), inches(small ? 10 : 80));
    const std::uint32_t shelves = dice.below(4);
    const std::uint32_t dividers = dice.below(3);
    box.levels = ruler.positions(dice, shelves, 0, box.height, inches(4));
    box.levels.insert(box.levels.begin(), 0);
    box.levels.push_back(box.height);
    box.dividers = ruler.positions(dice, dividers, 0, box.width, inches(5));
    box.shelf_legs = random_sense(dice);
    return box;
}

Sense inward(Nm position) { return position == 0 ? Sense::plus : Sense::minus; }

Sense leg_at_level(const BoxLayout& box, Nm z) {
    if (z == 0) return Sense::plus;
    return z == box.height ? Sense::minus : box.shelf_legs;
}

void add_edges(FrameBuilder& builder, const BoxLayout& box, const Roles& roles) {
    for (const Nm x : {Nm{0}, box.width}) {
        for (const Nm y : {Nm{0}, box.depth}) {
            make_of(builder.member("", Axis::z, {x, y}, 0, box.height, {inward(x), inward(y)}),
                    roles.posts);
        }
    }
    for (const Nm z : box.levels) {
        const Sense z_leg = leg_at_level(box, z);
        for (const Nm y : {Nm{0}, box.depth}) {
            make_of(builder.member("", Axis::x, {y, z}, 0, box.width, {inward(y), z_leg}),
                    roles.x_rails);
        }
        for (const Nm x : {Nm{0}, box.width}) {
            make_of(builder.member("", Axis::y, {x, z}, 0, box.depth, {inward(x), z_leg}),
                    roles.y_rails);
        }
    }
}

void add_dividers(FrameBuilder& builder, Dice& dice, const BoxLayout& box, const Roles& roles) {
    for (const Nm x : box.dividers) {
        const Sense side = random_sense(dice);
        for (const Nm y : {Nm{0}, box.depth}) {
            make_of(builder.member("", Axis::z, {x, y}, 0, box.height, {side, inward(y)}),
                    roles.dividers);
        }
        for (const Nm z : box.levels) {
            const bool is_outer = z == 0 || z == box.height;
            if (!is_outer && !dice.chance(50)) continue;
            make_of(builder.member("", Axis::y, {x, z}, 0, box.depth, {side, leg_at_level(box, z)}),
                    roles.y_rails);
        }
    }
}

// A rail across one bay of the front or back, or of a side, between two levels.
void add_mid_rail(FrameBuilder& builder,
                  Dice& dice,
                  const BoxLayout& box,
                  const Roles& roles,
                  const Ruler& ruler) {
    const auto level = dice.below(static_cast<std::uint32_t>(box.levels.size() - 1));
    const auto heights =
        ruler.positions(dice, 1, box.levels[level], box.levels[level + 1], inches(2));
    if (heights.empty()) return;
    const Sense z_leg = random_sense(dice);
    if (dice.chance(40)) {
        const Nm x = dice.chance(50) ? 0 : box.width;
        make_of(builder.member("", Axis::y, {x, heights[0]}, 0, box.depth, {inward(x), z_leg}),
                roles.mid_rails);
        return;
    }
    std::vector<Nm> stops{0};
    stops.insert(stops.end(), box.dividers.begin(), box.dividers.end());
    stops.push_back(box.width);
    const auto bay = dice.below(static_cast<std::uint32_t>(stops.size() - 1));
    const Nm y = dice.chance(50) ? 0 : box.depth;
    make_of(builder.member("", Axis::x, {y, heights[0]}, stops[bay], stops[bay + 1],
                           {inward(y), z_leg}),
            roles.mid_rails);
}

// ---- steps --------------------------------------------------------------------------------------

// A corner of the profile, in (along the step, up); the outline runs counter-clockwise.
struct Corner {
    Nm p = 0;
    Nm z = 0;
};

std::vector<Corner> random_profile(Dice& dice, const Ruler& ruler) {
    const Nm length = ruler.draw(dice, inches(24), inches(60));
    const Nm height = ruler.draw(dice, inches(20), inches(40));
    const Nm well_height = ruler.draw(dice, inches(5), inches(14));
    const Nm near = ruler.draw(dice, inches(5), length - inches(14));
    const Nm far = ruler.draw(dice, near + inches(6), length - inches(5));
    switch (dice.below(3)) {
        case 0:  // the well at the far end
            return {{0, 0},           {near, 0},  {near, well_height}, {length, well_height},
                    {length, height}, {0, height}};
        case 1:  // at the near end
            return {{near, 0},   {length, 0},      {length, height},
                    {0, height}, {0, well_height}, {near, well_height}};
        default:  // in the middle
            return {{0, 0},   {near, 0},   {near, well_height}, {far, well_height},
                    {far, 0}, {length, 0}, {length, height},    {0, height}};
    }
}

Sense sense_of(Nm difference) { return difference > 0 ? Sense::plus : Sense::minus; }

// What the swept profile is laid out along: `p` is x or y, the sweep `q` the other one.
struct Sweep {
    Axis p = Axis::y;
    Axis q = Axis::x;
    Nm width = 0;  // along q

    // A pair in the order of across(run), from values along (p, q, z) of which one is the run's.
    template <class T>
    std::array<T, 2> pair(Axis run, T along_p, T along_q, T along_z) const {
        const T along_x = p == Axis::x ? along_p : along_q;
        const T along_y = p == Axis::y ? along_p : along_q;
        if (run == Axis::x) return {along_y, along_z};
        if (run == Axis::y) return {along_x, along_z};
        return {along_x, along_y};
    }
};

// The member along the sweep at the profile's corner `at`.
void add_swept(FrameBuilder& builder,
               const Sweep& sweep,
               const Corner& before,
               const Corner& at,
               const Corner& after,
               const Role& role) {
    const Nm turn = (at.p - before.p) / 1000 * ((after.z - at.z) / 1000) -
                    (at.z - before.z) / 1000 * ((after.p - at.p) / 1000);
    const bool is_reentrant = turn < 0;
    // The legs lie along the two edges that meet here, away from the corner.
    const Sense p_leg = sense_of(before.p != at.p ? before.p - at.p : after.p - at.p);
    const Sense z_leg = sense_of(before.z != at.z ? before.z - at.z : after.z - at.z);
    auto& member = builder.member("", sweep.q, sweep.pair<Nm>(sweep.q, at.p, 0, at.z), 0,
                                  sweep.width, sweep.pair(sweep.q, p_leg, Sense::plus, z_leg));
    make_of(member, role);
    if (is_reentrant) member.seat = model::Seat::root;
}

// The two members along the profile's edge from `a` to `b`, one on each end of the sweep.
void add_edge(FrameBuilder& builder,
              const Sweep& sweep,
              const Corner& a,
              const Corner& b,
              const Roles& roles) {
    const bool is_level = a.z == b.z;
    const Axis run = is_level ? sweep.p : Axis::z;
    // Counter-clockwise: the inside is on the left of the direction of travel.
    const Sense inside = is_level ? sense_of(b.p - a.p) : sense_of(a.z - b.z);
    const Nm from = is_level ? std::min(a.p, b.p) : std::min(a.z, b.z);
    const Nm to = is_level ? std::max(a.p, b.p) : std::max(a.z, b.z);
    const Role& role = !is_level ? roles.posts : run == Axis::x ? roles.x_rails : roles.y_rails;
    for (const Nm q : {Nm{0}, sweep.width}) {
        auto& member = builder.member("", run, sweep.pair<Nm>(run, a.p, q, a.z), from, to,
                                      sweep.pair(run, inside, inward(q), inside));
        make_of(member, role);
    }
}

}  // namespace

std::vector<Nm> Ruler::positions(
    Dice& dice, std::uint32_t count, Nm least, Nm most, Nm apart) const {
    std::vector<Nm> found;
    for (std::uint32_t i = 0; i < count; ++i) {
        const Nm floor = (found.empty() ? least : found.back()) + apart;
        if (floor > most - apart) break;
        found.push_back(draw(dice, floor, most - apart));
        if (found.back() > most - apart || found.back() < floor) {
            found.pop_back();
            break;
        }
    }
    return found;
}

model::Frame random_box(Dice& dice, std::string name, const Roles& roles, const Ruler& ruler) {
    const BoxLayout box = random_layout(dice, ruler);
    FrameBuilder builder{std::move(name)};
    add_edges(builder, box, roles);
    add_dividers(builder, dice, box, roles);
    const std::uint32_t mid_rails = dice.below(4);
    for (std::uint32_t i = 0; i < mid_rails; ++i) add_mid_rail(builder, dice, box, roles, ruler);
    return std::move(builder.frame());
}

model::Frame random_step(Dice& dice, std::string name, const Roles& roles, const Ruler& ruler) {
    const auto profile = random_profile(dice, ruler);
    Sweep sweep;
    if (dice.chance(50)) std::swap(sweep.p, sweep.q);
    sweep.width = ruler.draw(dice, inches(10), inches(48));
    FrameBuilder builder{std::move(name)};
    const std::size_t count = profile.size();
    for (std::size_t i = 0; i < count; ++i) {
        const Corner& before = profile[(i + count - 1) % count];
        const Corner& after = profile[(i + 1) % count];
        const Role& role = sweep.q == Axis::x ? roles.x_rails : roles.y_rails;
        add_swept(builder, sweep, before, profile[i], after, role);
        add_edge(builder, sweep, profile[i], after, roles);
    }
    return std::move(builder.frame());
}

model::Frame random_tangle(Dice& dice,
                           std::string name,
                           const std::vector<std::string>& stocks,
                           const Ruler& ruler) {
    FrameBuilder builder{std::move(name)};
    std::array<std::vector<Nm>, 3> planes;
    for (auto& positions : planes) {
        const std::uint32_t count = 3 + dice.below(3);
        for (std::uint32_t i = 0; i < count; ++i) {
            positions.push_back(ruler.draw(dice, 0, inches(40)));
        }
    }
    const std::uint32_t members = 4 + dice.below(30);
    for (std::uint32_t i = 0; i < members; ++i) {
        const auto run = static_cast<Axis>(dice.below(3));
        const auto [first, second] = model::across(run);
        const Nm on_first = dice.one_of(planes[index_of(first)]);
        const Nm on_second = dice.one_of(planes[index_of(second)]);
        const Nm from = dice.one_of(planes[index_of(run)]);
        const Nm to = dice.one_of(planes[index_of(run)]);
        const Sense leg_a = random_sense(dice);
        const Sense leg_b = random_sense(dice);
        auto& member = builder.member(dice.one_of(stocks), run, {on_first, on_second},
                                      std::min(from, to), std::max(from, to), {leg_a, leg_b});
        member.turned = dice.chance(30);
        if (dice.chance(15)) member.seat = model::Seat::root;
        if (dice.chance(10)) member.rank = static_cast<int>(dice.below(50));
        if (dice.chance(5)) std::swap(member.from, member.to);
    }
    return std::move(builder.frame());
}

}  // namespace tests
