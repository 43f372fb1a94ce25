#include "model/resolve/piece_subject.h"
#include "model/room/as_built.h"
#include "model/room/clearance.h"
#include "model/room/rounding.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

namespace model {
namespace {

constexpr Nm nm_of(double mm) { return static_cast<Nm>(mm * 1e6 + (mm < 0.0 ? -0.5 : 0.5)); }

// Up to a mark of the tape.
Length on_tape(double mm, const engine::TapeStyle& shown) {
    const Nm step = engine::tape_step(shown).nm();
    const double marks = mm * 1e6 / static_cast<double>(step);
    return Length::from_nm(static_cast<Nm>(std::max(1.0, std::ceil(marks - 1e-4))) * step);
}

std::string way_words(const engine::Vector& way) {
    constexpr std::array<const char*, 6> words{"towards smaller X",
                                               "towards larger X",
                                               "towards smaller Y",
                                               "towards larger Y",
                                               "down",
                                               "up"};
    std::size_t axis = 0;
    for (std::size_t k = 1; k < 3; ++k) {
        if (std::abs(way[k]) > std::abs(way[axis])) axis = k;
    }
    return words[2 * axis + (way[axis] > 0.0 ? 1U : 0U)];
}

bool is_worse(const NearPlace& a, const NearPlace& b) {
    if (a.depth != b.depth) return a.depth > b.depth;
    return a.distance < b.distance;
}

// What of a piece stands there, before its name.
std::string part_of(const RoomThing& thing) {
    if (thing.fastener == no_index) return {};
    return thing.is_tail ? "the tail of a fastener of " : "the head of a fastener of ";
}

// The places of one frame and one obstacle, the worst first.
class OneObstacle {
public:
    OneObstacle(const Project& project,
                const Resolved& resolved,
                const RoomObstacle& obstacle,
                std::vector<NearPlace> places)
        : project_{project},
          resolved_{resolved},
          obstacle_{obstacle},
          stated_{project.room[obstacle.obstacle]},
          places_{std::move(places)} {
        std::ranges::stable_sort(
            places_, [](const NearPlace& a, const NearPlace& b) { return is_worse(a, b); });
    }

    Finding finding() const {
        const auto& worst = places_.front();
        Finding finding = worst.depth > rounding_mm ? entering(worst) : too_near(worst);
        finding.concerns = subjects();
        for (std::size_t k = 0; k < 3; ++k) {
            finding.numbers.push_back(
                {std::string(1, "xyz"[k]), Length::from_nm(nm_of(worst.on_obstacle[k]))});
        }
        return finding;
    }

private:
    std::vector<Subject> subjects() const {
        std::vector<Subject> subjects{{SubjectKind::obstacle, {}, stated_.name}};
        for (const auto& place : places_) {
            const auto& piece = resolved_.pieces[place.thing.piece];
            auto subject = piece_subject(project_.frames[piece.frame], piece);
            if (std::ranges::find(subjects, subject) == subjects.end())
                subjects.push_back(std::move(subject));
        }
        return subjects;
    }

    std::string first_piece() const {
        const auto& thing = places_.front().thing;
        const auto& piece = resolved_.pieces[thing.piece];
        const auto subject = piece_subject(project_.frames[piece.frame], piece);
        return part_of(thing) + std::string(name_of(subject.kind)) + " " + subject.name;
    }

    Finding entering(const NearPlace& worst) const {
        const auto depth = on_tape(worst.depth, project_.shown);
        const bool clears = obstacle_.stays_clear;
        return {.code = clears ? "in_the_way" : "inside_obstacle",
                .severity = Severity::error,
                .numbers = {{"depth", depth}},
                .what = std::string(clears ? "what must stay clear is taken up by "
                                           : "the obstacle is in the place of ") +
                        first_piece() + ": it is free of it when moved " +
                        length_in_words(depth, project_.shown) + " " + way_words(worst.way_out),
                .mend =
                    "move the frame or a plane, step the frame over it, or let a dimension "
                    "go no further than it fits"};
    }

    Finding too_near(const NearPlace& worst) const {
        const auto wanted = Length::from_nm(obstacle_.wanted);
        return {
            .code = "clearance",
            .severity = Severity::warning,
            .numbers = {{"distance", Length::from_nm(nm_of(worst.distance))}, {"wanted", wanted}},
            .what = first_piece() +
                    (worst.distance > rounding_mm
                         ? " is " + distance_in_words(worst.distance, project_.shown) + " from it"
                         : std::string(" touches it")) +
                    "; " + length_in_words(wanted, project_.shown) + " of clearance is wanted",
            .mend = "move the frame or a plane, or ask for less clearance there"};
    }

    const Project& project_;
    const Resolved& resolved_;
    const RoomObstacle& obstacle_;
    const Obstacle& stated_;
    std::vector<NearPlace> places_;
};

}  // namespace

void report_near_places(const Project& project,
                        const Resolved& resolved,
                        std::span<const RoomObstacle> obstacles,
                        std::span<const NearPlace> places,
                        std::vector<Finding>& findings) {
    for (const auto& obstacle : obstacles) {
        for (Index f = 0; f < resolved.frames.size(); ++f) {
            std::vector<NearPlace> here;
            for (const auto& place : places) {
                if (place.obstacle == obstacle.obstacle &&
                    resolved.pieces[place.thing.piece].frame == f) {
                    here.push_back(place);
                }
            }
            if (here.empty()) continue;
            findings.push_back(OneObstacle(project, resolved, obstacle, std::move(here)).finding());
        }
    }
}

std::vector<Finding> room_findings(const Project& project,
                                   const Catalogue& catalogue,
                                   const Resolved& resolved,
                                   const ScanLibrary& scans) {
    std::vector<Finding> findings;
    const auto obstacles = room_obstacles(project, resolved, scans, findings);
    const auto places = near_places(resolved, catalogue, obstacles);
    report_near_places(project, resolved, obstacles, places, findings);
    report_frame_gaps(project, catalogue, resolved, findings);
    report_drawer_ways(project, catalogue, resolved, obstacles, findings);
    report_openings(project, resolved, findings);
    return findings;
}

}  // namespace model
