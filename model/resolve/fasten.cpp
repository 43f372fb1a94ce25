#include "model/resolve/fasten.h"

#include "model/resolve/fasten_findings.h"
#include "model/resolve/joint_overrides.h"
#include "model/resolve/lap_layout.h"
#include "model/resolve/piece_subject.h"
#include "model/resolve/screw_choice.h"
#include "model/resolve/screw_findings.h"
#include "model/resolve/surroundings.h"

#include <algorithm>
#include <string>
#include <utility>

namespace model {
namespace {

Nm thickness_of(const Plate& plate) {
    return plate.box.hi[plate.normal_axis] - plate.box.lo[plate.normal_axis];
}

Nm thickest_of(const LapSite& site) {
    return std::max(thickness_of(site.upper.plates[site.lap.upper_wall]),
                    thickness_of(site.lower.plates[site.lap.lower_wall]));
}

struct KnownAnswer {
    Nm thickest = 0;
    StackSizes sizes;
    MeasureSystem system = MeasureSystem::inch;
    FastenerWish wish;
    FastenerAnswer answer;
};

class Planner {
public:
    Planner(const Project& project,
            const Catalogue& catalogue,
            const ResolvedShop& shop,
            const FrameSkeleton& skeleton,
            const engine::BoxTree& tree,
            Index first_piece,
            JointOverrides& overrides,
            std::vector<Finding>& findings)
        : project_{project},
          catalogue_{catalogue},
          s_{skeleton},
          frame_{project.frames[skeleton.frame]},
          first_piece_{first_piece},
          findings_{findings},
          overrides_{overrides},
          surroundings_{skeleton.pieces, tree, shop},
          layouts_{project.shop, shop},
          screws_{catalogue} {}

    std::vector<LapPlan> plan(std::span<const Lap> laps) {
        std::vector<LapPlan> plans;
        plans.reserve(laps.size());
        for (const auto& lap : laps) {
            if (auto planned = plan(lap); planned.wanted > 0) plans.push_back(std::move(planned));
        }
        if (!long_nosed_.empty()) findings_.push_back(long_nose(std::move(long_nosed_)));
        screws_.report(findings_);
        if (!thin_.empty()) findings_.push_back(thin_rivet(std::move(thin_)));
        return plans;
    }

private:
    Subject subject_of(const Lap& lap) const {
        return joint_subject(frame_, s_.pieces[lap.upper], s_.pieces[lap.lower]);
    }

    // A plan with nothing wanted: a lap that needs a shim but has no room for any fastener.
    LapPlan plan(const Lap& lap) {
        const JointOverride* own =
            overrides_.find(members_joined(s_.pieces[lap.upper], s_.pieces[lap.lower]));
        LapPlan plan{.lap = lap, .frame = s_.frame};
        plan.lap.upper += first_piece_;
        plan.lap.lower += first_piece_;
        plan.wanted = static_cast<Index>(fasteners_wanted(project_.shop, own));
        const LapSite site{lap, s_.pieces[lap.upper], s_.pieces[lap.lower], surroundings_.of(lap)};
        const auto wish = wish_of(catalogue_, project_.shop, own);
        if (auto fault = fault_of_wish(catalogue_, own, subject_of(lap))) {
            findings_.push_back(std::move(*fault));
        }
        const auto answer = choose(site, wish);
        if (!answer.choice) {
            findings_.push_back(no_fastener(answer.why_not, subject_of(lap)));
            return plan;
        }
        const auto laid_out = layouts_.best(site, *answer.choice, plan.wanted);
        plan.fastener = *answer.choice;
        plan.head_on_upper = laid_out.head_on_upper;
        plan.match_drilled = laid_out.match_drilled;
        plan.long_nose = laid_out.long_nose;
        plan.before_others = laid_out.before_others;
        plan.layout = laid_out.layout;
        const auto fits = static_cast<Index>(laid_out.layout.count);
        if (fits < plan.wanted) report_too_few(site, *answer.choice, wish, fits, plan.wanted);
        if (fits > 0 && wish.is_screw) settle_screws(site, wish, plan);
        if (plan.layout.count == 0 && lap.gap > 0) return {};
        if (wish.is_screw) return plan;
        if (fits > 0 && laid_out.long_nose) long_nosed_.push_back(subject_of(lap));
        if (fits > 0 && answer.choice->diameter < thickest_of(site)) {
            thin_.push_back(subject_of(lap));
        }
        return plan;
    }

    // The lower wall is the far one unless said otherwise; where it has no fastener, the upper one
    // may have.
    FastenerAnswer choose(const LapSite& site, const FastenerWish& wish) {
        auto answer = choose(site, wish, false);
        return answer.choice ? answer : choose(site, wish, true);
    }

    FastenerAnswer choose(const LapSite& site, const FastenerWish& wish, bool upper_is_far) {
        const Nm upper = thickness_of(site.upper.plates[site.lap.upper_wall]);
        const Nm lower = thickness_of(site.lower.plates[site.lap.lower_wall]);
        const StackSizes sizes{.total = stack_of(site),
                               .thinnest = std::min(upper, lower),
                               .far = upper_is_far ? upper : lower};
        const Piece& of_bar = site.upper.section == no_index ? site.lower : site.upper;
        return remembered_answer(wish, catalogue_.sections[of_bar.section].system,
                                 std::max(upper, lower), sizes);
    }

    // Laps of one project ask for a handful of different fasteners.
    const FastenerAnswer& remembered_answer(const FastenerWish& wish,
                                            MeasureSystem system,
                                            Nm thickest,
                                            const StackSizes& sizes) {
        for (const auto& known : known_) {
            if (known.thickest == thickest && known.sizes == sizes && known.system == system &&
                known.wish == wish) {
                return known.answer;
            }
        }
        known_.push_back({thickest, sizes, system, wish,
                          wish.is_screw
                              ? choose_screw(catalogue_, project_.shop, wish, system, sizes)
                              : choose_rivet(catalogue_, project_.shop, wish.id, system, thickest,
                                             sizes.total)});
        return known_.back().answer;
    }

    // Which plate is the far one is known once the screws are laid out; what holds them has to suit
    // it.
    void settle_screws(const LapSite& site, const FastenerWish& wish, LapPlan& plan) {
        const auto answer = choose(site, wish, !plan.head_on_upper);
        if (!answer.choice) {
            findings_.push_back(no_fastener(answer.why_not, subject_of(site.lap)));
            plan.layout = {};
            return;
        }
        plan.fastener = *answer.choice;
        const Piece& far = plan.head_on_upper ? site.lower : site.upper;
        const auto wall = plan.head_on_upper ? site.lap.lower_wall : site.lap.upper_wall;
        screws_.look_at({.choice = plan.fastener,
                         .stack = Length::from_nm(stack_of(site)),
                         .far = Length::from_nm(thickness_of(far.plates[wall])),
                         .alloy = alloy_of(far),
                         .subject = subject_of(site.lap)},
                        findings_);
    }

    const Alloy* alloy_of(const Piece& piece) const {
        if (piece.stock >= project_.stock.size()) {
            return find_alloy(catalogue_, project_.shop.gusset_alloy);
        }
        return find_alloy(catalogue_, project_.stock[piece.stock].alloy);
    }

    void report_too_few(const LapSite& site,
                        const FastenerChoice& choice,
                        const FastenerWish& wish,
                        Index fits,
                        Index wanted) {
        const auto on_half_marks = layouts_.count_on_half_marks(site, choice, wanted);
        const TooFew few{.choice = choice,
                         .fits = fits,
                         .wanted = wanted,
                         .on_half_marks = static_cast<Index>(on_half_marks)};
        findings_.push_back(too_few_fasteners(catalogue_, few, smaller_that_helps(site, few, wish),
                                              subject_of(site.lap)));
    }

    // The thickest thinner one of which all would fit, or the one of which most would.
    SmallerFastener smaller_that_helps(const LapSite& site,
                                       const TooFew& few,
                                       const FastenerWish& wish) {
        if (wish.is_screw) {
            return smaller_that_helps(site, few, catalogue_.screws, [&](const MachineScrew& screw) {
                return choose(site, {.is_screw = true, .id = screw.id, .hold = wish.hold});
            });
        }
        return smaller_that_helps(site, few, catalogue_.rivets, [&](const BlindRivet& rivet) {
            return fit_rivet(catalogue_, project_.shop, rivet, stack_of(site));
        });
    }

    template <class Kind, class Fit>
    SmallerFastener smaller_that_helps(const LapSite& site,
                                       const TooFew& few,
                                       const std::vector<Kind>& all,
                                       const Fit& fit) {
        const Kind* next = &all[few.choice.spec.index];
        SmallerFastener best{.count = static_cast<int>(few.fits)};
        while ((next = next_thinner(all, *next)) != nullptr) {
            const auto answer = fit(*next);
            if (!answer.choice) continue;
            const int count = layouts_.best(site, *answer.choice, few.wanted).layout.count;
            if (count > best.count) best = {next->id, count};
            if (count == static_cast<int>(few.wanted)) break;
        }
        return best;
    }

    const Project& project_;
    const Catalogue& catalogue_;
    const FrameSkeleton& s_;
    const Frame& frame_;
    Index first_piece_;
    std::vector<Finding>& findings_;
    JointOverrides& overrides_;
    Surroundings surroundings_;
    LapLayouts layouts_;
    ScrewReview screws_;
    std::vector<KnownAnswer> known_;
    std::vector<Subject> long_nosed_;
    std::vector<Subject> thin_;
};

}  // namespace

std::vector<LapPlan> plan_fasteners(const Project& project,
                                    const Catalogue& catalogue,
                                    const ResolvedShop& shop,
                                    const FrameSkeleton& skeleton,
                                    const engine::BoxTree& tree,
                                    std::span<const Lap> laps,
                                    Index first_piece,
                                    JointOverrides& overrides,
                                    std::vector<Finding>& findings) {
    return Planner(project, catalogue, shop, skeleton, tree, first_piece, overrides, findings)
        .plan(laps);
}

}  // namespace model
