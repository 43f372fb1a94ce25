#include "model/resolve/screw_findings.h"

#include "model/catalogue/thread_strength.h"
#include "model/catalogue/threads.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace model {
namespace {

std::string one_decimal(double value) {
    const auto tenths = std::lround(value * 10.0);
    return std::to_string(tenths / 10) + "." + std::to_string(tenths % 10);
}

Finding warning(std::string code, Subject joint, std::string what, std::string mend) {
    return {.code = std::move(code),
            .severity = Severity::warning,
            .concerns = {std::move(joint)},
            .what = std::move(what),
            .mend = std::move(mend)};
}

// At least three full threads have to hold: shop practice, from memory.
Finding few_threads(const Catalogue& catalogue,
                    const MachineScrew& screw,
                    const ScrewedJoint& joint) {
    const double threads = threads_in_wall(joint.far, screw.pitch);
    const auto* finer = finer_thread(catalogue, screw);
    const bool finer_helps = finer != nullptr && has_enough_threads(joint.far, finer->pitch);
    return {.code = "few_threads",
            .severity = Severity::error,
            .concerns = {joint.subject},
            .numbers = {{"threads", threads}, {"thickness", joint.far}},
            .what = screw.id + " finds " + one_decimal(threads) +
                    " threads in the plate that is tapped; it takes three, so the hole would strip",
            .mend = (finer_helps ? "choose the finer thread " + finer->id + " (drill " +
                                       finer->tap_drill + "), or hold the screw "
                                 : std::string{"hold the screw "}) +
                    "with a nut or a rivet nut"};
}

}  // namespace

std::optional<Finding> fault_of_wish(const Catalogue& catalogue,
                                     const JointOverride* own,
                                     const Subject& joint) {
    if (own == nullptr || !own->fastener || own->fastener->empty()) return std::nullopt;
    const std::string& id = *own->fastener;
    if (find_screw(catalogue, id) != nullptr) return std::nullopt;
    const bool is_rivet = find_rivet(catalogue, id) != nullptr;
    if (is_rivet && own->removable) {
        return warning("rivet_in_removable", joint,
                       "a joint that comes apart asks for " + id +
                           ", which can only be drilled out; it gets machine screws instead",
                       "name a machine screw, or let the joint stay together");
    }
    if (is_rivet) return std::nullopt;
    auto unknown =
        warning("unknown_fastener", joint, "the catalogue has no fastener \"" + id + "\"",
                "choose one that it has; until then one is chosen by the thickness of the plates");
    unknown.severity = Severity::error;
    return unknown;
}

void ScrewReview::look_at(const ScrewedJoint& joint, std::vector<Finding>& findings) {
    using Kind = FastenerSpec::Kind;
    const auto& spec = joint.choice.spec;
    const auto& screw = catalogue_.screws[spec.index];
    if (spec.kind == Kind::screw_tapped) look_at_thread(screw, joint, findings);
    if (spec.kind == Kind::screw_in_rivet_nut) {
        rims_.push_back(joint.subject);
        highest_rim_ = std::max(highest_rim_, catalogue_.rivet_nuts[spec.nut].rim_height);
    }
    // One diameter out of the plate is more than any thread needs: common practice.
    const auto out = screw.lengths[spec.grip] - joint.stack;
    if (spec.kind == Kind::screw_tapped && out > screw.diameter) {
        long_.push_back(joint.subject);
        furthest_out_ = std::max(furthest_out_, out);
    }
}

void ScrewReview::look_at_thread(const MachineScrew& screw,
                                 const ScrewedJoint& joint,
                                 std::vector<Finding>& findings) {
    if (!has_enough_threads(joint.far, screw.pitch)) {
        findings.push_back(few_threads(catalogue_, screw, joint));
    }
    if (joint.choice.far_hole.diameter > joint.far.nm()) {
        large_.push_back(joint.subject);
        largest_hole_ = std::max(largest_hole_, Length::from_nm(joint.choice.far_hole.diameter));
        const auto* other = screw_for(catalogue_, screw.system, joint.far);
        if (other != nullptr && other->diameter < screw.diameter) {
            instead_of_large_ = other->id + " (drill " + other->tap_drill + ")";
        }
    }
    if (joint.alloy == nullptr) return;
    const double share = strip_force_n(screw, joint.far, *joint.alloy) / screw_force_n(screw);
    if (share >= 1.0) return;
    weak_.push_back(joint.subject);
    least_share_ = std::min(least_share_, share);
}

void ScrewReview::report(std::vector<Finding>& findings) {
    const auto note = [&](std::string code, std::vector<Subject>& joints, FindingNumber number,
                          std::string what, std::string mend) {
        if (joints.empty()) return;
        const auto count = static_cast<double>(joints.size());
        findings.push_back({.code = std::move(code),
                            .severity = Severity::note,
                            .concerns = std::move(joints),
                            .numbers = {{"joints", count}, std::move(number)},
                            .what = std::move(what),
                            .mend = std::move(mend)});
        joints.clear();
    };
    // The strengths that are set against each other: see thread_strength.h.
    note("thread_is_weaker", weak_, {"per_cent", 100.0 * least_share_},
         "the thread in the plate strips before the screw breaks; the weakest holds " +
             std::to_string(std::lround(100.0 * least_share_)) +
             " per cent of what the screw could",
         "tighten by hand only; where the full strength of the screw is wanted use a nut, or a "
         "thicker plate");
    note("large_tap_hole", large_, {"hole", largest_hole_},
         "the tapped holes are larger than their plate is thick; common practice is no larger",
         (instead_of_large_.empty() ? std::string{} : "choose " + instead_of_large_ + ", or ") +
             "hold the screws with nuts or rivet nuts");
    note("rivet_nut_rim", rims_, {"rim", highest_rim_},
         "the rims of the rivet nuts stand between the plates and hold them apart",
         "buy them with a thin or sunk rim, and set them before the frame is dry-fitted");
    note("screw_stands_out", long_, {"out", furthest_out_},
         "the shortest screws that are sold stand out of the plate by more than their diameter",
         "cut them off and round the ends, or put a washer under each head");
}

}  // namespace model
