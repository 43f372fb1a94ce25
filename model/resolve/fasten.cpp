#include "model/resolve/fasten.h"

#include "model/resolve/fastener_choice.h"
#include "model/resolve/joint_overrides.h"
#include "model/resolve/lap_room.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <utility>

namespace model {
namespace {

// Room for the tool and the hand behind it: common hand tools are 6 to 8 in long, from memory.
constexpr Nm tool_length = 6 * Length::nm_per_inch;

std::array<Nm, 2> surfaces(const Lap& lap, const Plate& upper, const Plate& lower) {
    const std::size_t n = lap.normal_axis;
    if (lap.towards_lower > 0) return {upper.box.lo[n], lower.box.hi[n]};
    return {upper.box.hi[n], lower.box.lo[n]};
}

Nm thickness_of(const Plate& plate, std::size_t normal) {
    return plate.box.hi[normal] - plate.box.lo[normal];
}

Nm in_diameters(double ratio, double least, double most, Nm diameter) {
    const double used = std::isfinite(ratio) ? std::clamp(ratio, least, most) : least;
    return std::llround(used * static_cast<double>(diameter));
}

// Least distance from `value` to a multiple of `step`.
Nm off_the_marks(Nm value, Nm step) {
    const Nm over = ((value % step) + step) % step;
    return std::min(over, step - over);
}

Nm phase_of(Nm value, Nm step) { return ((value % step) + step) % step; }

// One side on which the head may go, and what comes of it.
struct Attempt {
    bool head_on_upper = true;
    bool long_nose = false;  // only the nose clears what stands beside it, not the tool behind it
    Layout layout;
    bool match_drilled = false;
};

struct KnownChoice {
    Nm thickest = 0;
    Nm stack = 0;
    MeasureSystem system = MeasureSystem::inch;
    std::string id;
    RivetChoice choice;
};

class Planner {
public:
    Planner(const Project& project,
            const Catalogue& catalogue,
            const ResolvedShop& shop,
            const FrameSkeleton& skeleton,
            Index first_piece,
            std::vector<Finding>& findings)
        : project_{project},
          catalogue_{catalogue},
          shop_{shop},
          s_{skeleton},
          frame_{project.frames[skeleton.frame]},
          first_piece_{first_piece},
          findings_{findings},
          overrides_{frame_, findings} {}

    std::vector<LapPlan> plan(std::span<const Lap> laps) {
        std::vector<LapPlan> plans;
        plans.reserve(laps.size());
        for (const auto& lap : laps) {
            if (auto planned = plan(lap); planned.wanted > 0) plans.push_back(std::move(planned));
        }
        overrides_.report_unused(findings_);
        if (!long_nosed_.empty()) report_long_noses();
        return plans;
    }

private:
    // A plan with nothing wanted: a lap that needs a shim but has no room for any fastener.
    LapPlan plan(const Lap& lap) {
        const Piece& upper = s_.pieces[lap.upper];
        const Piece& lower = s_.pieces[lap.lower];
        const std::string& upper_name = frame_.members[upper.member].name;
        const std::string& lower_name = frame_.members[lower.member].name;
        const JointOverride* own = overrides_.find(upper_name, lower_name);

        LapPlan plan{.lap = lap, .frame = s_.frame};
        plan.lap.upper += first_piece_;
        plan.lap.lower += first_piece_;
        plan.wanted = static_cast<Index>(fasteners_wanted(project_.shop, own));
        const RivetChoice choice = choose(lap, own);
        if (!is_usable(choice, lap)) return plan;
        gather_near(lap);
        const Attempt attempt = better_side(lap, choice, plan.wanted);
        fill(plan, choice, attempt);
        const auto fits = static_cast<Index>(attempt.layout.count);
        if (fits < plan.wanted) report_too_few(lap, choice, fits, plan.wanted);
        if (fits == 0 && lap.gap > 0) return {};
        if (fits > 0 && attempt.long_nose) long_nosed_.push_back(joint_subject(lap));
        return plan;
    }

    RivetChoice choose(const Lap& lap, const JointOverride* own) {
        const Piece& upper = s_.pieces[lap.upper];
        const Nm a = thickness_of(upper.plates[lap.upper_wall], lap.normal_axis);
        const Nm b = thickness_of(s_.pieces[lap.lower].plates[lap.lower_wall], lap.normal_axis);
        const std::string empty;
        const std::string& id = own != nullptr && own->fastener ? *own->fastener : empty;
        if (!id.empty() && find_rivet(catalogue_, id) == nullptr) report_unknown(lap, id);
        return remembered_choice(id, catalogue_.sections[upper.section].system, std::max(a, b),
                                 a + b + lap.gap);
    }

    // Laps of one project ask for a handful of different fasteners.
    RivetChoice remembered_choice(const std::string& id,
                                  MeasureSystem system,
                                  Nm thickest,
                                  Nm stack) {
        for (const auto& known : known_) {
            if (known.thickest == thickest && known.stack == stack && known.system == system &&
                known.id == id) {
                return known.choice;
            }
        }
        known_.push_back({thickest, stack, system, id,
                          choose_rivet(catalogue_, project_.shop, id, system, thickest, stack)});
        return known_.back().choice;
    }

    Subject joint_subject(const Lap& lap) const {
        return {SubjectKind::joint, frame_.name,
                frame_.members[s_.pieces[lap.upper].member].name + " + " +
                    frame_.members[s_.pieces[lap.lower].member].name};
    }

    void report_unknown(const Lap& lap, const std::string& id) {
        const bool is_screw = find_screw(catalogue_, id) != nullptr;
        findings_.push_back({.code = is_screw ? "screw_is_riveted" : "unknown_fastener",
                             .severity = is_screw ? Severity::warning : Severity::error,
                             .concerns = {joint_subject(lap)},
                             .what = is_screw ? "screws are not laid out yet"
                                              : "the catalogue has no fastener \"" + id + "\"",
                             .mend = "choose a blind rivet; until then one is chosen by the "
                                     "thickness of the plates"});
    }

    bool is_usable(const RivetChoice& choice, const Lap& lap) {
        Finding finding{.severity = Severity::error, .concerns = {joint_subject(lap)}};
        if (choice.rivet == nullptr) {
            finding.code = "no_fastener";
            finding.what = "the catalogue has no blind rivet for these plates";
            finding.mend = "add one to the catalogue";
        } else if (choice.grip == nullptr) {
            finding.code = "no_grip";
            finding.what = choice.rivet->id + " is sold in no length that grips this stack";
            finding.mend = "choose a thicker rivet, or thinner bar";
        } else if (choice.drill == nullptr) {
            finding.code = "no_drill";
            finding.what = "no drill at hand makes the hole for " + choice.rivet->id;
            finding.mend = "get drill " + choice.rivet->drill + ", or choose another rivet";
        } else {
            return true;
        }
        findings_.push_back(std::move(finding));
        return false;
    }

    void gather_near(const Lap& lap) {
        bars_near_.clear();
        for (const Index piece : {lap.upper, lap.lower}) {
            const Index bar = s_.bar_of[piece];
            const Neighbours around = s_.around[bar];
            bars_near_.push_back(bar);
            for (Index k = 0; k < around.count; ++k) {
                bars_near_.push_back(s_.near[around.first + k]);
            }
        }
        std::sort(bars_near_.begin(), bars_near_.end());
        bars_near_.erase(std::unique(bars_near_.begin(), bars_near_.end()), bars_near_.end());

        Box reach = lap.rect;
        for (std::size_t k = 0; k < 3; ++k) {
            const Nm by =
                k == lap.normal_axis ? tool_length : shop_.housing_radius + tool_length / 6;
            reach.lo[k] -= by;
            reach.hi[k] += by;
        }
        near_.clear();
        for (const Index bar : bars_near_) {
            const Bar& b = s_.bars[bar];
            for (Index p = b.first_piece; p < b.first_piece + b.piece_count; ++p) {
                if (engine::touches(s_.pieces[p].extents, reach)) near_.push_back(&s_.pieces[p]);
            }
        }
    }

    // Most fasteners first; of equal ways the one that needs no nose extension, then the one with
    // the head outside, for looks.
    Attempt better_side(const Lap& lap, const RivetChoice& choice, Index wanted) {
        Attempt best;
        for (const bool long_nose : {false, true}) {
            for (const bool head_on_upper : {true, false}) {
                const Attempt next = attempt(lap, choice, wanted, head_on_upper, long_nose);
                if (next.layout.count == static_cast<int>(wanted)) return next;
                if (next.layout.count > best.layout.count) best = next;
            }
        }
        return best;
    }

    Attempt attempt(const Lap& lap,
                    const RivetChoice& choice,
                    Index wanted,
                    bool head_on_upper,
                    bool long_nose) {
        const Piece& upper = s_.pieces[lap.upper];
        const Piece& lower = s_.pieces[lap.lower];
        const Plate& upper_wall = upper.plates[lap.upper_wall];
        const Plate& lower_wall = lower.plates[lap.lower_wall];
        const Nm diameter = choice.rivet->diameter.nm();
        const LapAxes axes = lap_axes(upper, lower);
        const Region within =
            inside_edges(axes, lap, upper_wall, lower_wall,
                         in_diameters(project_.shop.edge_distance, 1.5, 20.0, diameter));
        const Nm pitch = in_diameters(project_.shop.pitch, 3.0, 50.0, diameter);

        Attempt result{.head_on_upper = head_on_upper, .long_nose = long_nose};
        if (within.lo[0] > within.hi[0] || within.lo[1] > within.hi[1]) return result;
        gather_obstacles(lap, choice, axes, within, result);
        const auto n = static_cast<int>(wanted);
        // Half marks serve where no mark lies within the room that there is.
        for (const Nm step : {shop_.graduation, shop_.graduation / 2}) {
            if (step <= 0) continue;
            const Marks marks = marks_for(upper, lower, axes, choice, head_on_upper, step, result);
            result.layout = best_layout_around(within, obstacles_, marks, n, pitch);
            if (result.layout.count > 0) break;
        }
        return result;
    }

    void gather_obstacles(const Lap& lap,
                          const RivetChoice& choice,
                          const LapAxes& axes,
                          const Region& within,
                          const Attempt& tried) {
        const auto surface = surfaces(lap, s_.pieces[lap.upper].plates[lap.upper_wall],
                                      s_.pieces[lap.lower].plates[lap.lower_wall]);
        const Nm head = choice.rivet->head_diameter_most.nm() / 2;
        const Nm behind = tried.long_nose ? shop_.nose_radius : shop_.housing_radius;
        const std::array<ClearSpace, 2> tool{
            ClearSpace{0, shop_.nose_reach, std::max(shop_.nose_radius, head)},
            ClearSpace{shop_.nose_reach, tool_length, std::max(behind, head)}};
        const auto tail = tail_space(lap, choice);
        const int towards_lower = lap.towards_lower;
        obstacles_.clear();
        const std::span<const ClearSpace> head_clear(tool);
        const std::span<const ClearSpace> tail_clear(&tail, 1);
        add_obstacles(axes, lap, within, near_, surface[0], -towards_lower,
                      tried.head_on_upper ? head_clear : tail_clear, obstacles_);
        add_obstacles(axes, lap, within, near_, surface[1], towards_lower,
                      tried.head_on_upper ? tail_clear : head_clear, obstacles_);
    }

    ClearSpace tail_space(const Lap& lap, const RivetChoice& choice) const {
        const Nm stack =
            lap.gap + thickness_of(s_.pieces[lap.upper].plates[lap.upper_wall], lap.normal_axis) +
            thickness_of(s_.pieces[lap.lower].plates[lap.lower_wall], lap.normal_axis);
        return {0, blind_reach(*choice.rivet, *choice.grip, stack), tail_radius(*choice.rivet)};
    }

    // The marks of the pattern's tape: distances from its datum end, and gauges from its heel.
    // Where the other piece's marks fall elsewhere by more than the hole's clearance it is
    // match-drilled.
    static Marks marks_for(const Piece& upper,
                           const Piece& lower,
                           const LapAxes& axes,
                           const RivetChoice& choice,
                           bool head_on_upper,
                           Nm step,
                           Attempt& result) {
        const Nm upper_datum = upper.datum[axes.axis[0]] - axes.heel[axes.axis[0]];
        const Nm lower_datum = lower.datum[axes.axis[1]] - axes.heel[axes.axis[1]];
        const Nm clearance = choice.drill->diameter.nm() - choice.rivet->diameter.nm();
        result.match_drilled = off_the_marks(upper_datum, step) > clearance ||
                               off_the_marks(lower_datum, step) > clearance;
        Marks marks{.step = step};
        const std::size_t along_pattern = head_on_upper ? 0 : 1;
        const Nm datum = head_on_upper ? upper_datum : lower_datum;
        marks.phase[along_pattern] = phase_of(axes.sense[along_pattern] * datum, step);
        return marks;
    }

    // Nose extensions of up to about 1 in are sold for hand tools: a rivet maker's advice page.
    void report_long_noses() {
        Finding finding{.code = "long_nose",
                        .severity = Severity::note,
                        .numbers = {{"joints", static_cast<double>(long_nosed_.size())}},
                        .what =
                            "the setting tool's nose reaches these rivets, but the tool behind "
                            "it would hit the leg beside them",
                        .mend = "set them with a nose extension, or give a wider leg"};
        finding.concerns = std::move(long_nosed_);
        findings_.push_back(std::move(finding));
    }

    void fill(LapPlan& plan, const RivetChoice& choice, const Attempt& attempt) const {
        plan.rivet = static_cast<Index>(choice.rivet - catalogue_.rivets.data());
        plan.grip = static_cast<Index>(choice.grip - choice.rivet->grips.data());
        plan.drill = static_cast<Index>(choice.drill - catalogue_.drills.data());
        plan.head_on_upper = attempt.head_on_upper;
        plan.match_drilled = attempt.match_drilled;
        plan.layout = attempt.layout;
    }

    void report_too_few(const Lap& lap, const RivetChoice& choice, Index fits, Index wanted) {
        findings_.push_back(
            {.code = "too_few_fasteners",
             .severity = fits == 0 ? Severity::error : Severity::warning,
             .concerns = {joint_subject(lap)},
             .numbers = {{"fits", static_cast<double>(fits)},
                         {"wanted", static_cast<double>(wanted)},
                         {"diameter", choice.rivet->diameter}},
             .what = (fits == 0 ? std::string("no ")
                                : "only " + std::to_string(fits) + " of " + std::to_string(wanted) +
                                      " ") +
                     choice.rivet->id +
                     (fits == 0   ? " fits"
                      : fits == 1 ? " fits"
                                  : " fit") +
                     " in this lap with its edge distance, pitch and room for the tool",
             .mend = what_would_help(lap, choice, fits, wanted)});
    }

    std::string what_would_help(const Lap& lap,
                                const RivetChoice& choice,
                                Index fits,
                                Index wanted) {
        for (const BlindRivet* thinner = next_thinner(catalogue_, *choice.rivet);
             thinner != nullptr; thinner = next_thinner(catalogue_, *thinner)) {
            RivetChoice other = choice;
            other.rivet = thinner;
            other.grip = grip_for(*thinner, Length::from_nm(stack_of(lap)));
            other.drill = find_drill(catalogue_, thinner->drill);
            if (other.grip == nullptr || other.drill == nullptr) continue;
            const int count = better_side(lap, other, wanted).layout.count;
            if (count > static_cast<int>(fits)) {
                return "a smaller rivet (" + thinner->id + ": " + std::to_string(count) +
                       " would fit), a wider leg, or a gusset";
            }
        }
        return "a wider leg, or a gusset";
    }

    Nm stack_of(const Lap& lap) const {
        return lap.gap +
               thickness_of(s_.pieces[lap.upper].plates[lap.upper_wall], lap.normal_axis) +
               thickness_of(s_.pieces[lap.lower].plates[lap.lower_wall], lap.normal_axis);
    }

    const Project& project_;
    const Catalogue& catalogue_;
    const ResolvedShop& shop_;
    const FrameSkeleton& s_;
    const Frame& frame_;
    Index first_piece_;
    std::vector<Finding>& findings_;
    JointOverrides overrides_;
    std::vector<KnownChoice> known_;
    std::vector<Index> bars_near_;
    std::vector<const Piece*> near_;
    std::vector<Region> obstacles_;
    std::vector<Subject> long_nosed_;
};

}  // namespace

std::vector<LapPlan> plan_fasteners(const Project& project,
                                    const Catalogue& catalogue,
                                    const ResolvedShop& shop,
                                    const FrameSkeleton& skeleton,
                                    std::span<const Lap> laps,
                                    Index first_piece,
                                    std::vector<Finding>& findings) {
    return Planner(project, catalogue, shop, skeleton, first_piece, findings).plan(laps);
}

}  // namespace model
