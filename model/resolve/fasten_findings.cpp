#include "model/resolve/fasten_findings.h"

#include <utility>

namespace model {

Finding no_fastener(const NoFastener& why, Subject joint) {
    return {.code = why.code,
            .severity = Severity::error,
            .concerns = {std::move(joint)},
            .numbers = why.numbers,
            .what = why.what,
            .mend = why.mend};
}

Finding too_few_fasteners(const Catalogue& catalogue,
                          const TooFew& few,
                          const SmallerFastener& smaller,
                          Subject joint) {
    const auto& id = fastener_id(catalogue, few.choice.spec);
    const auto fits = std::to_string(few.fits);
    const auto wanted = std::to_string(few.wanted);
    const auto how_many = few.fits == 0 ? "no " + id + " fits"
                                        : "only " + fits + " of " + wanted + " " + id +
                                              (few.fits == 1 ? " fits" : " fit");
    const bool is_rivet = few.choice.spec.kind == FastenerSpec::Kind::blind_rivet;
    const std::string what_it_is = is_rivet ? "rivet" : "screw";
    const auto smaller_one = smaller.id.empty()
                                 ? std::string{}
                                 : std::string{"a smaller "} + what_it_is + " (" + smaller.id +
                                       ": " + std::to_string(smaller.count) + " would fit), ";
    const auto finer_marks = few.on_half_marks <= few.fits
                                 ? std::string{}
                                 : "a tape with marks half as far apart (" +
                                       std::to_string(few.on_half_marks) + " would fit), ";
    return {.code = "too_few_fasteners",
            .severity = few.fits == 0 ? Severity::error : Severity::warning,
            .concerns = {std::move(joint)},
            .numbers = {{"fits", static_cast<double>(few.fits)},
                        {"wanted", static_cast<double>(few.wanted)},
                        {"diameter", Length::from_nm(few.choice.diameter)}},
            .what = how_many + " in this lap with its edge distance, pitch and room for the tool",
            .mend = finer_marks + smaller_one + "a wider leg, or a gusset"};
}

// The rule: 1 to 3 times the thickest sheet, NAVEDTRA 14018 p. 13.
Finding thin_rivet(std::vector<Subject> joints) {
    const auto count = static_cast<double>(joints.size());
    return {.code = "thin_rivet",
            .severity = Severity::note,
            .concerns = std::move(joints),
            .numbers = {{"joints", count}},
            .what =
                "the rivets are thinner than the thickest plate that they hold; the rule is 1 "
                "to 3 times its thickness",
            .mend =
                "choose a thicker rivet if its legs have room for one, or thinner bar; "
                "otherwise count on the rivet's own strength only"};
}

// Nose extensions of up to about 1 in are sold for hand tools: a rivet maker's advice page.
Finding long_nose(std::vector<Subject> joints) {
    const auto count = static_cast<double>(joints.size());
    return {.code = "long_nose",
            .severity = Severity::note,
            .concerns = std::move(joints),
            .numbers = {{"joints", count}},
            .what =
                "the setting tool's nose reaches these rivets, but the tool behind it would "
                "hit the leg beside them",
            .mend = "set them with a nose extension, or give a wider leg"};
}

}  // namespace model
