#include "model/resolve/fasten.h"

#include "model/resolve/brace_hold.h"
#include "model/resolve/fasten_findings.h"
#include "model/resolve/holds_error.h"
#include "model/resolve/joint_overrides.h"
#include "model/resolve/lap_fastener.h"
#include "model/resolve/lap_layout.h"
#include "model/resolve/near_lap.h"
#include "model/resolve/piece_subject.h"
#include "model/resolve/screw_choice.h"
#include "model/resolve/screw_findings.h"

#include <algorithm>
#include <string>
#include <utility>

namespace model {
namespace {

Nm thickest_of(const LapSite& site) {
    return std::max(thickness_of(site.upper.plates[site.lap.upper_wall]),
                    thickness_of(site.lower.plates[site.lap.lower_wall]));
}

bool needs_shim_of_brace(const Lap& lap) { return lap.is_of_brace && lap.gap > 0; }

class Planner {
public:
    Planner(const Project& project,
            const Catalogue& catalogue,
            const ResolvedShop& shop,
            const FrameSkeleton& skeleton,
            const engine::BoxTree& tree,
            const Slants& slants,
            Index first_piece,
            JointOverrides& overrides,
            std::vector<Finding>& findings)
        : project_{project},
          catalogue_{catalogue},
          s_{skeleton},
          frame_{project.frames[skeleton.frame]},
          slants_{slants},
          first_piece_{first_piece},
          findings_{findings},
          overrides_{overrides},
          fasteners_{catalogue, project.shop},
          near_{skeleton.pieces, tree, shop},
          layouts_{project.shop, shop, slants},
          screws_{catalogue} {}

    // Makes no shims under a brace for the laps in `shimless`, by number.
    std::vector<LapPlan> plan(std::span<const Lap> laps,
                              const std::vector<bool>& shimless,
                              bool ends_at_error = false) {
        std::vector<LapPlan> plans;
        plans.reserve(laps.size());
        shimless_ = shimless;
        for (std::size_t i = 0; i < laps.size(); ++i) {
            if (needs_shim_of_brace(laps[i]) && !shimless[i]) {
                near_.expect_shim_under_brace(laps[i]);
            }
        }
        for (std::size_t i = 0; i < laps.size(); ++i) {
            if (ends_at_error && holds_error(findings_)) break;
            const Lap& lap = laps[i];
            if (const LapPlan* holding = plan_holding(lap, plans)) {
                shimless_[i] = needs_shim_of_brace(lap);
                overrides_.note_held_by(names_of(lap.upper, lap.lower), name_of(*holding));
                continue;
            }
            auto planned = plan(lap);
            if (planned.wanted == 0) {
                shimless_[i] = needs_shim_of_brace(lap);
                continue;
            }
            if (shimless_[i]) continue;
            near_.note_settled(lap, planned.fastener, planned.head_on_upper, planned.layout);
            const bool is_shimmed = lap.gap > 0 && planned.layout.count > 0;
            if (is_shimmed && !lap.is_of_brace) near_.add_shim(lap);
            plans.push_back(std::move(planned));
        }
        if (!long_nosed_.empty()) findings_.push_back(long_nose(std::move(long_nosed_)));
        screws_.report(findings_);
        if (!thin_.empty()) findings_.push_back(thin_rivet(std::move(thin_)));
        return plans;
    }

    // Laps of braces for which no shim was made.
    const std::vector<bool>& shimless() const { return shimless_; }

private:
    Subject subject_of(const Lap& lap) const {
        return joint_subject(frame_, s_.pieces[lap.upper], s_.pieces[lap.lower]);
    }

    // A finding about a lap concerns the brace on it too, and one about a brace the member.
    void say(Finding finding, const Lap& lap) {
        if (lap.is_of_brace) {
            const Piece& upper = s_.pieces[lap.upper];
            const bool upper_is_brace = is_between_nodes(upper.kind);
            finding.concerns.push_back(
                piece_subject(frame_, upper_is_brace ? s_.pieces[lap.lower] : upper));
        }
        if (lap.cover != no_index) {
            finding.concerns.push_back(piece_subject(frame_, s_.pieces[lap.cover]));
        }
        findings_.push_back(std::move(finding));
    }

    std::string name_of(const LapPlan& plan) const {
        return joint_subject(frame_, s_.pieces[plan.lap.upper - first_piece_],
                             s_.pieces[plan.lap.lower - first_piece_])
            .name;
    }

    // What goes through the brace hard by and already holds it to that member; a shim is made only
    // where nothing else holds it. Null: there is nothing, or it is no lap of a brace.
    const LapPlan* plan_holding(const Lap& lap, const std::vector<LapPlan>& plans) const {
        if (!lap.is_of_brace) return nullptr;
        const bool brace_is_upper = is_between_nodes(s_.pieces[lap.upper].kind);
        const Index brace = (brace_is_upper ? lap.upper : lap.lower) + first_piece_;
        const Index member = (brace_is_upper ? lap.lower : lap.upper) + first_piece_;
        const Nm beside = lap.gap > 0 ? brace_reach(slants_, s_.pieces[brace - first_piece_]) : 0;
        Box reach = lap.rect;
        for (std::size_t k = 0; k < 3; ++k) {
            if (k == lap.normal_axis) continue;
            reach.lo[k] -= beside;
            reach.hi[k] += beside;
        }
        const auto found = std::ranges::find_if(plans, [&](const LapPlan& plan) {
            if (plan.layout.count < static_cast<int>(plan.wanted)) return false;
            const bool is_own = plan.lap.upper == brace || plan.lap.lower == brace;
            if (plan.lap.cover != brace && !(is_own && lap.gap > 0)) return false;
            const bool is_same = plan.lap.upper == member || plan.lap.lower == member;
            if (!is_same && lap.gap == 0) return false;
            Box rect = plan.lap.rect;
            rect.lo[lap.normal_axis] = rect.hi[lap.normal_axis] = reach.lo[lap.normal_axis];
            return engine::touches(rect, reach);
        });
        return found == plans.end() ? nullptr : &*found;
    }

    // A brace is known by its own name.
    const JointOverride* override_of(const Lap& lap) {
        const Piece& upper = s_.pieces[lap.upper];
        const Piece& lower = s_.pieces[lap.lower];
        if (!lap.is_of_brace) return overrides_.find(members_joined(upper, lower));
        return overrides_.find(names_of(lap.upper, lap.lower));
    }

    LapSite site_of(const Lap& lap) {
        const auto around = near_.pieces(lap);
        return {lap,
                s_.pieces[lap.upper],
                s_.pieces[lap.lower],
                around,
                lap.cover == no_index ? nullptr : &s_.pieces[lap.cover],
                near_.settled_beside()};
    }

    int count_in(const Lap& lap, const FastenerWish& wish, Index wanted) {
        const LapSite site = site_of(lap);
        const auto answer = fasteners_.choose(site, wish);
        return answer.choice ? layouts_.best(site, *answer.choice, wanted).layout.count : 0;
    }

    // Fasteners go through a brace on the lap unless more of them would fit beside it.
    Lap with_or_without_brace(const Lap& lap, const FastenerWish& wish, Index wanted) {
        if (lap.cover == no_index) return lap;
        const int through = count_in(lap, wish, wanted);
        if (through == static_cast<int>(wanted)) return lap;
        Lap bare = lap;
        bare.cover = no_index;
        return count_in(bare, wish, wanted) > through ? bare : lap;
    }

    struct Asked {
        const JointOverride* own = nullptr;
        FastenerWish wish;
        Index wanted = 0;
        Lap lap;
    };

    Asked asked_by(const Lap& stated, const JointOverride* own) {
        Asked asked{.own = own,
                    .wish = wish_of(catalogue_, project_.shop, own),
                    .wanted = static_cast<Index>(fasteners_wanted(project_.shop, own)),
                    .lap = stated};
        asked.lap = with_or_without_brace(stated, asked.wish, asked.wanted);
        return asked;
    }

    // What is said of a brace and a member counts for the lap of that member that the brace
    // covers, where nothing is said of the lap itself.
    Asked asked_of(const Lap& stated) {
        const JointOverride* own = override_of(stated);
        if (own == nullptr && stated.cover != no_index) {
            for (const Index member : {stated.upper, stated.lower}) {
                const auto names = names_of(stated.cover, member);
                const JointOverride* of_brace = overrides_.peek(names);
                if (of_brace == nullptr) continue;
                const Asked asked = asked_by(stated, of_brace);
                if (asked.lap.cover == no_index) continue;
                overrides_.find(names);
                return asked;
            }
        }
        return asked_by(stated, own);
    }

    std::array<std::string, 2> names_of(Index brace, Index member) const {
        return {piece_subject(frame_, s_.pieces[brace]).name,
                piece_subject(frame_, s_.pieces[member]).name};
    }

    // What else is said of a brace and the members that it is fastened to with others.
    void note_held(const Lap& lap) {
        if (lap.cover == no_index) return;
        for (const Index member : {lap.upper, lap.lower}) {
            overrides_.note_held_by(names_of(lap.cover, member), subject_of(lap).name);
        }
    }

    // A plan with nothing wanted: a lap that needs a shim but has no room for any fastener.
    LapPlan plan(const Lap& stated) {
        const auto [own, wish, wanted, lap] = asked_of(stated);
        note_held(lap);
        LapPlan plan{.frame = s_.frame};
        plan.wanted = wanted;
        plan.lap = lap;
        plan.lap.upper += first_piece_;
        plan.lap.lower += first_piece_;
        if (lap.cover != no_index) plan.lap.cover += first_piece_;
        const LapSite site = site_of(lap);
        if (auto fault = fault_of_wish(catalogue_, own, subject_of(lap))) {
            findings_.push_back(std::move(*fault));
        }
        const auto answer = fasteners_.choose(site, wish);
        if (!answer.choice) {
            say(no_fastener(answer.why_not, subject_of(lap)), lap);
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
        if (fits > 0 && laid_out.long_nose) note_once(long_nosed_, subject_of(lap));
        if (fits > 0 && answer.choice->diameter < thickest_of(site)) {
            note_once(thin_, subject_of(lap));
        }
        return plan;
    }

    // Laps of one joint follow each other.
    static void note_once(std::vector<Subject>& joints, Subject joint) {
        if (joints.empty() || joints.back() != joint) joints.push_back(std::move(joint));
    }

    // Which plate is the far one is known once the screws are laid out; what holds them has to suit
    // it.
    void settle_screws(const LapSite& site, const FastenerWish& wish, LapPlan& plan) {
        const auto answer = fasteners_.choose(site, wish, !plan.head_on_upper);
        if (!answer.choice) {
            say(no_fastener(answer.why_not, subject_of(site.lap)), site.lap);
            plan.layout = {};
            return;
        }
        plan.fastener = *answer.choice;
        const bool cover_is_far =
            site.cover != nullptr && site.lap.covers_upper != plan.head_on_upper;
        const Piece& far = cover_is_far         ? *site.cover
                           : plan.head_on_upper ? site.lower
                                                : site.upper;
        const auto wall = cover_is_far         ? std::uint8_t{0}
                          : plan.head_on_upper ? site.lap.lower_wall
                                               : site.lap.upper_wall;
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
        say(too_few_fasteners(catalogue_, few, smaller_that_helps(site, few, wish),
                              subject_of(site.lap)),
            site.lap);
    }

    // The thickest thinner one of which all would fit, or the one of which most would.
    SmallerFastener smaller_that_helps(const LapSite& site,
                                       const TooFew& few,
                                       const FastenerWish& wish) {
        if (wish.is_screw) {
            return smaller_that_helps(site, few, catalogue_.screws, [&](const MachineScrew& screw) {
                return fasteners_.choose(site,
                                         {.is_screw = true, .id = screw.id, .hold = wish.hold});
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
    Slants slants_;
    Index first_piece_;
    std::vector<Finding>& findings_;
    JointOverrides& overrides_;
    LapFasteners fasteners_;
    NearLap near_;
    LapLayouts layouts_;
    ScrewReview screws_;
    std::vector<bool> shimless_;
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
                                    const Slants& slants,
                                    Index first_piece,
                                    JointOverrides& overrides,
                                    std::vector<Finding>& findings,
                                    bool ends_at_error) {
    // Whether a brace needs a shim shows only once the laps that hold it are planned, and a shim
    // stands in their way: they are planned once to see which are made.
    std::vector<bool> shimless(laps.size(), false);
    if (std::ranges::any_of(laps, needs_shim_of_brace)) {
        std::vector<Finding> unsaid;
        JointOverrides untouched = overrides;
        Planner trial(project, catalogue, shop, skeleton, tree, slants, first_piece, untouched,
                      unsaid);
        trial.plan(laps, shimless);
        shimless = trial.shimless();
    }
    return Planner(project, catalogue, shop, skeleton, tree, slants, first_piece, overrides,
                   findings)
        .plan(laps, shimless, ends_at_error);
}

}  // namespace model
