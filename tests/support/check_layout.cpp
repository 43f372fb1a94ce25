#include "tests/support/skeleton_bodies.h"
#include "tests/support/skeleton_checks.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

namespace tests {
namespace {

constexpr Nm thirty_second = 25'400'000 / 32;

// ---- room around a fastener ---------------------------------------------------------------------

// A round part of a fastener, taken as the box that just fits inside it along the axis' two
// cross directions, so that what enters it is surely in the way.
Box inscribed_box(const SkeletonFastener& fastener, Nm from, Nm to, Nm radius) {
    const std::size_t axis = *world_axis(fastener.axis);
    const Nm half = radius * 7 / 10;
    Box box{fastener.at, fastener.at};
    for (std::size_t i = 0; i < 3; ++i) {
        if (i == axis) {
            const Nm a = fastener.at[i] + (fastener.axis[i] > 0 ? from : -from);
            const Nm b = fastener.at[i] + (fastener.axis[i] > 0 ? to : -to);
            box.lo[i] = std::min(a, b);
            box.hi[i] = std::max(a, b);
        } else {
            box.lo[i] -= half;
            box.hi[i] += half;
        }
    }
    return box;
}

// Whether a box reaches into the round part, exactly.
bool reaches_into(const Box& plate, const SkeletonFastener& fastener, Nm from, Nm to, Nm radius) {
    const std::size_t axis = *world_axis(fastener.axis);
    const Box part = inscribed_box(fastener, from, to, radius);
    if (plate.lo[axis] >= part.hi[axis] || part.lo[axis] >= plate.hi[axis]) return false;
    double squared = 0;
    for (std::size_t i = 0; i < 3; ++i) {
        if (i == axis) continue;
        const Nm out =
            std::max({plate.lo[i] - fastener.at[i], fastener.at[i] - plate.hi[i], Nm{0}});
        squared += static_cast<double>(out) * static_cast<double>(out);
    }
    return squared < static_cast<double>(radius) * static_cast<double>(radius);
}

using Place2 = std::array<Nm, 2>;

double squared_distance(const Place2& p, const Place2& a, const Place2& b) {
    const double ab_u = static_cast<double>(b[0] - a[0]);
    const double ab_v = static_cast<double>(b[1] - a[1]);
    const double ap_u = static_cast<double>(p[0] - a[0]);
    const double ap_v = static_cast<double>(p[1] - a[1]);
    const double size = ab_u * ab_u + ab_v * ab_v;
    const double t = size > 0 ? std::clamp((ap_u * ab_u + ap_v * ab_v) / size, 0.0, 1.0) : 0.0;
    const double u = ap_u - t * ab_u;
    const double v = ap_v - t * ab_v;
    return u * u + v * v;
}

// From the metal of a plate that faces the same way; 0 within it.
double distance_from(const SkeletonPlate& plate, const Place2& at) {
    const std::size_t count = plate.outline.size();
    double least = std::numeric_limits<double>::max();
    bool is_inside = false;
    for (std::size_t i = 0; i < count; ++i) {
        const auto& a = plate.outline[i];
        const auto& b = plate.outline[(i + 1) % count];
        least = std::min(least, squared_distance(at, a, b));
        if ((a[1] > at[1]) == (b[1] > at[1])) continue;
        const double t = static_cast<double>(at[1] - a[1]) / static_cast<double>(b[1] - a[1]);
        const double crossing = static_cast<double>(a[0]) + t * static_cast<double>(b[0] - a[0]);
        if (static_cast<double>(at[0]) < crossing) is_inside = !is_inside;
    }
    return is_inside ? 0.0 : std::sqrt(least);
}

// The same of a plate that leans in its own plane, with the fastener square on it.
bool reach_into_leaning(
    const SkeletonPlate& plate, const SkeletonFastener& fastener, Nm from, Nm to, Nm radius) {
    const Nm face = along(plate.origin, fastener.at, fastener.axis);
    const bool is_along = dot(plate.n, fastener.axis) > 0;
    const Nm inner = face + (is_along ? plate.thickness : -plate.thickness);
    if (std::max(face, inner) <= from || to <= std::min(face, inner)) return false;
    const Place2 at{along(fastener.at, plate.origin, plate.u),
                    along(fastener.at, plate.origin, plate.v)};
    // A nanometre or two of rounding are no fault.
    return distance_from(plate, at) < static_cast<double>(radius) - 3.0;
}

// The same of what is left of a plate; of slanting ones whether they reach into the box within.
bool reach_into(
    const SkeletonPlate& plate, const SkeletonFastener& fastener, Nm from, Nm to, Nm radius) {
    const bool is_square_on = std::abs(std::abs(dot(plate.n, fastener.axis)) - 1.0) < 1e-9;
    if (is_square_on && !world_axis(plate.u)) {
        return reach_into_leaning(plate, fastener, from, to, radius);
    }
    return std::any_of(plate.bodies.begin(), plate.bodies.end(), [&](const ConvexBody& body) {
        if (body.box) return reaches_into(*body.box, fastener, from, to, radius);
        return share_volume(body, body_of(inscribed_box(fastener, from, to, radius)));
    });
}

struct SetFastener {
    const SkeletonFastener* fastener = nullptr;
    Nm diameter = 0;
    Nm stack = 0;
    Nm tail_radius = 0;
    Nm tail_length = 0;
};

Nm stack_of(const SkeletonFastener& fastener) {
    Nm total = 0;
    for (const auto& plate : fastener.stack) total += plate.thickness;
    return total;
}

// What stands beyond the stack. A rivet's tail is one diameter long and 1.5 across; a screw's end
// is as long as its name says; a nut is at least two diameters across and 0.6 high (ASME B18.6.3,
// ISO 4032; from memory), a rivet nut about 1.3 across and 1.5 long (from memory).
SetFastener set_fastener(const SkeletonFastener& fastener, Nm diameter) {
    SetFastener set{&fastener, diameter, stack_of(fastener), diameter * 3 / 4, diameter};
    if (fastener.hold.empty()) return set;
    const Nm out = length_of_screw(fastener.spec).value_or(0) - set.stack;
    set.tail_radius = diameter / 2;
    set.tail_length = std::max<Nm>(0, out);
    if (fastener.hold == "nut") set.tail_radius = diameter;
    if (fastener.hold == "rivet nut") {
        set.tail_radius = diameter * 13 / 20;
        set.tail_length = std::max(set.tail_length, diameter);
    }
    return set;
}

// A head is about two diameters across; a formed tail 1.5 diameters and, with 1/32 in to spare,
// 0.75 D + 1/32 in from the centre to what stands beside it (the layout rule of the design).
void check_room(const Skeleton& skeleton, const SetFastener& set, Complaints& complaints) {
    const Nm d = set.diameter;
    for (const auto& piece : skeleton.pieces) {
        for (const auto& plate : piece.plates) {
            // A hole about the head or the tail: round, so that it is clear on all sides.
            const auto has_hole = [&](Nm diameter) {
                return std::any_of(plate.holes.begin(), plate.holes.end(), [&](const auto& hole) {
                    return hole.fastener == set.fastener->id && hole.operation == "clearance" &&
                           hole.diameter > diameter;
                });
            };
            if (!has_hole(2 * d) && reach_into(plate, *set.fastener, -d / 4, 0, d)) {
                complaints.push_back("the head of fastener " + set.fastener->id + " runs into " +
                                     piece.id + " " + plate.leg);
            }
            const bool is_rivet = set.fastener->hold.empty();
            const Nm tail = is_rivet ? set.tail_radius + thirty_second : set.tail_radius;
            if (!has_hole(2 * set.tail_radius) &&
                reach_into(plate, *set.fastener, set.stack, set.stack + set.tail_length, tail)) {
                complaints.push_back("the tail of fastener " + set.fastener->id + " runs into " +
                                     piece.id + " " + plate.leg);
            }
        }
    }
}

// What excuses a head that the tool cannot reach past a piece when all is together.
bool is_set_early(const Skeleton& skeleton,
                  const SkeletonFastener& fastener,
                  const SkeletonPiece& in_the_way) {
    std::vector<std::string> members;
    std::string frame;
    for (const auto& entry : fastener.stack) {
        const auto* piece = skeleton.piece(entry.piece);
        if (piece == nullptr || piece->section.rfind("shim", 0) == 0) continue;
        for (auto& name : stated_members(*piece)) members.push_back(std::move(name));
        frame = piece->frame;
    }
    const auto names = [&](const auto& row) {
        const auto where = field(skeleton.findings, row, "where");
        return std::all_of(members.begin(), members.end(),
                           [&](const auto& member) { return names_member(where, frame, member); });
    };
    const auto blockers = stated_members(in_the_way);
    const auto& rows = skeleton.findings.rows;
    return std::any_of(rows.begin(), rows.end(), [&](const auto& row) {
        const auto code = field(skeleton.findings, row, "code");
        if (code == "no_setting_order") return names(row);
        if (code != "set_before" || !names(row)) return false;
        const auto what = field(skeleton.findings, row, "what");
        return in_the_way.section.rfind("shim", 0) == 0 ||
               std::all_of(blockers.begin(), blockers.end(), [&](const auto& blocker) {
                   return what.find(blocker) != std::string_view::npos;
               });
    });
}

// Panels are put on last, and a screw's driver is no rivet tool.
void check_nose(const Skeleton& skeleton,
                const SetFastener& set,
                const LayoutRules& rules,
                Complaints& complaints) {
    if (!set.fastener->hold.empty()) return;
    for (const auto& piece : skeleton.pieces) {
        if (piece.section.rfind("panel", 0) == 0) continue;
        for (const auto& plate : piece.plates) {
            const bool is_hit =
                reach_into(plate, *set.fastener, -rules.nose_reach, 0, rules.nose_radius);
            if (!is_hit || is_set_early(skeleton, *set.fastener, piece)) continue;
            complaints.push_back("the tool cannot reach fastener " + set.fastener->id + " past " +
                                 piece.id + " " + plate.leg);
        }
    }
}

// Whether a piece of one stack and a piece of the other are known to be in the same place, or a
// finding `fasteners_meet` names all members of both.
bool are_excused(const Skeleton& skeleton, const SkeletonFastener& f, const SkeletonFastener& g) {
    for (const auto& a : f.stack) {
        for (const auto& b : g.stack) {
            const auto* first = skeleton.piece(a.piece);
            const auto* second = skeleton.piece(b.piece);
            if (first == nullptr || second == nullptr || first == second) continue;
            if (is_found_clash(skeleton, *first, *second)) return true;
        }
    }
    std::vector<std::string> members;
    std::string frame;
    for (const auto* fastener : {&f, &g}) {
        for (const auto& entry : fastener->stack) {
            const auto* piece = skeleton.piece(entry.piece);
            if (piece == nullptr || piece->section.rfind("shim", 0) == 0) continue;
            for (auto& name : stated_members(*piece)) members.push_back(std::move(name));
            frame = piece->frame;
        }
    }
    return findings_naming(skeleton, "fasteners_meet", frame, members) > 0;
}

void check_one_another(const Skeleton& skeleton,
                       const std::vector<SetFastener>& set,
                       Complaints& complaints) {
    struct Body {
        Box box;
        std::size_t index;
    };
    std::vector<Body> bodies;
    for (std::size_t i = 0; i < set.size(); ++i) {
        const auto& [fastener, d, stack, tail_radius, tail_length] = set[i];
        bodies.push_back({inscribed_box(*fastener, 0, stack, d / 2), i});
        bodies.push_back({inscribed_box(*fastener, stack, stack + tail_length, tail_radius), i});
        bodies.push_back({inscribed_box(*fastener, -d / 4, 0, d), i});
    }
    std::sort(bodies.begin(), bodies.end(),
              [](const Body& a, const Body& b) { return a.box.lo[0] < b.box.lo[0]; });
    for (std::size_t i = 0; i < bodies.size(); ++i) {
        for (std::size_t j = i + 1; j < bodies.size(); ++j) {
            if (bodies[j].box.lo[0] >= bodies[i].box.hi[0]) break;
            if (bodies[i].index == bodies[j].index) continue;
            if (!overlaps(bodies[i].box, bodies[j].box)) continue;
            if (are_excused(skeleton, *set[bodies[i].index].fastener,
                            *set[bodies[j].index].fastener)) {
                continue;
            }
            complaints.push_back("fasteners " + set[bodies[i].index].fastener->id + " and " +
                                 set[bodies[j].index].fastener->id + " run into each other");
        }
    }
}

// ---- edge distance and pitch --------------------------------------------------------------------

std::vector<std::array<Place2, 2>> edges_of(const SkeletonPlate& plate) {
    std::vector<std::array<Place2, 2>> edges;
    const auto add = [&](const std::vector<Place2>& loop) {
        for (std::size_t k = 0; k < loop.size(); ++k) {
            edges.push_back({loop[k], loop[(k + 1) % loop.size()]});
        }
    };
    add(plate.outline);
    add(plate.outline_far);
    for (const auto& loop : plate.cut_outs) add(loop);
    return edges;
}

// Rounded down to the nanometre by less than one.
bool is_nearer_than(double squared, double distance) { return std::sqrt(squared) < distance - 1.0; }

using FastenersById = std::map<std::string, SetFastener>;

void check_plate_layout(const Skeleton& skeleton,
                        const SkeletonPiece& piece,
                        const SkeletonPlate& plate,
                        const FastenersById& fasteners,
                        const LayoutRules& rules,
                        Complaints& complaints) {
    const auto diameter = [&](const SkeletonHole& hole) {
        const auto found = fasteners.find(hole.fastener);
        return static_cast<double>(found == fasteners.end() ? hole.diameter
                                                            : found->second.diameter);
    };
    const auto excused = [&](const SkeletonHole& a, const SkeletonHole& b) {
        const auto first = fasteners.find(a.fastener);
        const auto second = fasteners.find(b.fastener);
        return first != fasteners.end() && second != fasteners.end() &&
               are_excused(skeleton, *first->second.fastener, *second->second.fastener);
    };
    const std::string where = " in " + piece.id + " " + plate.leg;
    for (std::size_t i = 0; i < plate.holes.size(); ++i) {
        const auto& hole = plate.holes[i];
        const double edge = rules.edge_distance * diameter(hole);
        // Behind the heel of a foot the other leg stands up: for the screw it is no edge.
        const bool has_heel = is_foot(piece) && hole.fastener.empty() && piece.plates.size() == 2;
        for (const auto& [a, b] : edges_of(plate)) {
            if (has_heel && a[1] == 0 && b[1] == 0) continue;
            if (is_nearer_than(squared_distance(hole.in_plate, a, b), edge)) {
                complaints.push_back("hole " + hole.id + where + " is too near an edge");
            }
        }
        for (std::size_t j = i + 1; j < plate.holes.size(); ++j) {
            const auto& other = plate.holes[j];
            const double pitch = rules.pitch * std::max(diameter(hole), diameter(other));
            const double apart = squared_distance(hole.in_plate, other.in_plate, other.in_plate);
            if (is_nearer_than(apart, pitch) && !excused(hole, other)) {
                complaints.push_back("holes " + hole.id + " and " + other.id + where +
                                     " are nearer than the pitch");
            }
        }
    }
}

}  // namespace

Complaints layout_complaints(const Skeleton& skeleton, const LayoutRules& rules) {
    Complaints complaints;
    FastenersById fasteners;
    std::vector<SetFastener> set;
    for (const auto& fastener : skeleton.fasteners) {
        const auto diameter = diameter_of_spec(fastener.spec);
        if (!diameter) {
            complaints.push_back("fastener " + fastener.id +
                                 " is of no known size: " + fastener.spec);
            continue;
        }
        const auto one = set_fastener(fastener, *diameter);
        if (!fastener.hold.empty() && length_of_screw(fastener.spec).value_or(0) < one.stack) {
            complaints.push_back("screw " + fastener.id + " does not reach through its stack");
        }
        fasteners[fastener.id] = one;
        if (world_axis(fastener.axis)) set.push_back(one);
    }
    for (const auto& piece : skeleton.pieces) {
        for (const auto& plate : piece.plates) {
            check_plate_layout(skeleton, piece, plate, fasteners, rules, complaints);
        }
    }
    for (const auto& one : set) {
        check_room(skeleton, one, complaints);
        check_nose(skeleton, one, rules, complaints);
    }
    check_one_another(skeleton, set, complaints);
    return complaints;
}

}  // namespace tests
