// What there is to say of the threads that screws hold by: each finding with its numbers and the
// right drill or another hold as its mend.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/resolve/fastener_choice.h"
#include "model/resolve/finding.h"

#include <optional>
#include <string>
#include <vector>

namespace model {

// A rivet that the joint asks for although it is to come apart, or a fastener that is not known;
// none when all is well.
std::optional<Finding> fault_of_wish(const Catalogue& catalogue,
                                     const JointOverride* own,
                                     const Subject& joint);

// One joint with screws.
struct ScrewedJoint {
    const FastenerChoice& choice;
    Length stack;
    Length far;                    // thickness of the plate that is tapped or has the nut
    const Alloy* alloy = nullptr;  // of that plate; null: not known
    Subject subject;
};

// Looks at the screws of a frame joint by joint. Faults are told at once, what only has to be known
// once for all joints.
class ScrewReview {
public:
    explicit ScrewReview(const Catalogue& catalogue) : catalogue_{catalogue} {}

    void look_at(const ScrewedJoint& joint, std::vector<Finding>& findings);
    void report(std::vector<Finding>& findings);

private:
    void look_at_thread(const MachineScrew& screw,
                        const ScrewedJoint& joint,
                        std::vector<Finding>& findings);

    const Catalogue& catalogue_;
    std::vector<Subject> weak_;
    double least_share_ = 1.0;
    std::vector<Subject> large_;
    Length largest_hole_;
    std::string instead_of_large_;
    std::vector<Subject> rims_;
    Length highest_rim_;
    std::vector<Subject> long_;
    Length furthest_out_;
};

}  // namespace model
