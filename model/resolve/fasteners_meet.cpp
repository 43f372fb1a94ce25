#include "model/resolve/fasteners_meet.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>
#include <string>
#include <tuple>
#include <vector>

namespace model {
namespace {

// A round part of a fastener: a stretch along its axis, in the frame.
struct RoundPart {
    Nm from = 0;
    Nm to = 0;
    Nm radius = 0;
};

// Head, shank and formed tail. The tail is about 1.5 diameters across and one long: common
// practice.
std::array<RoundPart, 3> parts_of(const Catalogue& catalogue, const Fastener& fastener) {
    const BlindRivet& rivet = catalogue.rivets[fastener.spec.index];
    const Nm d = rivet.diameter.nm();
    const Nm start = fastener.at[fastener.axis];
    const auto part = [&](Nm from, Nm to, Nm radius) {
        const Nm a = start + fastener.drive * from;
        const Nm b = start + fastener.drive * to;
        return RoundPart{std::min(a, b), std::max(a, b), radius};
    };
    return {part(-rivet.head_height_most.nm(), 0, rivet.head_diameter_most.nm() / 2),
            part(0, fastener.grip, d / 2), part(fastener.grip, fastener.grip + d, d * 3 / 4)};
}

// How far a value lies outside a stretch.
Nm outside(Nm value, Nm from, Nm to) { return std::max({from - value, value - to, Nm{0}}); }

// Half the width of a round part at `off` from its axis; below zero when it does not reach there.
double half_width(Nm radius, Nm off) {
    if (off >= radius) return -1.0;
    const auto r = static_cast<double>(radius);
    const auto o = static_cast<double>(off);
    return std::sqrt(r * r - o * o);
}

// Two parts whose axes lie square to each other, exactly: along the third axis each covers a
// stretch about its own axis, narrowed by how far the other part ends short of it.
bool crossing_parts_meet(const Fastener& f,
                         const RoundPart& p,
                         const Fastener& g,
                         const RoundPart& q) {
    const std::size_t third = 3U - f.axis - g.axis;
    const double a = half_width(p.radius, outside(f.at[g.axis], q.from, q.to));
    const double b = half_width(q.radius, outside(g.at[f.axis], p.from, p.to));
    const auto apart = static_cast<double>(std::abs(f.at[third] - g.at[third]));
    return a >= 0 && b >= 0 && apart < a + b;
}

bool parallel_parts_meet(const Fastener& f,
                         const RoundPart& p,
                         const Fastener& g,
                         const RoundPart& q) {
    if (p.from >= q.to || q.from >= p.to) return false;
    double squared = 0;
    for (std::size_t i = 0; i < 3; ++i) {
        if (i == f.axis) continue;
        const auto d = static_cast<double>(f.at[i] - g.at[i]);
        squared += d * d;
    }
    const auto reach = static_cast<double>(p.radius + q.radius);
    return squared < reach * reach;
}

bool meet(const Catalogue& catalogue, const Fastener& f, const Fastener& g) {
    for (const auto& p : parts_of(catalogue, f)) {
        for (const auto& q : parts_of(catalogue, g)) {
            const bool hit = f.axis == g.axis ? parallel_parts_meet(f, p, g, q)
                                              : crossing_parts_meet(f, p, g, q);
            if (hit) return true;
        }
    }
    return false;
}

// A fastener of a piece and where it sits along the piece's run.
struct Place {
    Nm along = 0;
    Index fastener = 0;
};

std::vector<Place> places_along(const Resolved& resolved, const Piece& piece) {
    std::vector<Place> places;
    for (const Hole& hole : resolved.holes_of(piece)) {
        places.push_back({hole.from_datum, hole.fastener});
    }
    std::sort(places.begin(), places.end(), [](const Place& a, const Place& b) {
        return std::tie(a.along, a.fastener) < std::tie(b.along, b.fastener);
    });
    return places;
}

Subject joint_subject(const Project& project, const Resolved& resolved, Index index) {
    const Joint& joint = resolved.joints[index];
    const Frame& frame = project.frames[joint.frame];
    const auto name = [&](Index piece) {
        return frame.members[resolved.pieces[piece].member].name;
    };
    return {SubjectKind::joint, frame.name, name(joint.pieces[0]) + " + " + name(joint.pieces[1])};
}

using JointPair = std::array<Index, 2>;

// All pairs of joints of which two fasteners meet, each once and in order. Fasteners that meet lie
// nearer along the run of the piece that they share than their heads are wide.
std::vector<JointPair> joints_that_meet(const Catalogue& catalogue, const Resolved& resolved) {
    Nm widest = 0;
    for (const auto& rivet : catalogue.rivets) {
        widest = std::max(widest, rivet.head_diameter_most.nm());
    }
    std::vector<JointPair> pairs;
    for (const auto& piece : resolved.pieces) {
        const auto places = places_along(resolved, piece);
        for (std::size_t i = 0; i < places.size(); ++i) {
            const Fastener& f = resolved.fasteners[places[i].fastener];
            for (std::size_t j = i + 1; j < places.size(); ++j) {
                if (places[j].along - places[i].along >= widest) break;
                const Fastener& g = resolved.fasteners[places[j].fastener];
                if (f.joint == g.joint || !meet(catalogue, f, g)) continue;
                pairs.push_back({std::min(f.joint, g.joint), std::max(f.joint, g.joint)});
            }
        }
    }
    std::sort(pairs.begin(), pairs.end());
    pairs.erase(std::unique(pairs.begin(), pairs.end()), pairs.end());
    return pairs;
}

}  // namespace

void report_fasteners_that_meet(const Project& project,
                                const Catalogue& catalogue,
                                Resolved& resolved) {
    for (const auto& [a, b] : joints_that_meet(catalogue, resolved)) {
        resolved.findings.push_back(
            {.code = "fasteners_meet",
             .severity = Severity::warning,
             .concerns = {joint_subject(project, resolved, a), joint_subject(project, resolved, b)},
             .what = "a fastener of one of these joints would run into a fastener of the other",
             .mend = "ask for fewer fasteners in one of them, choose a smaller rivet, or give a "
                     "wider leg"});
    }
}

}  // namespace model
