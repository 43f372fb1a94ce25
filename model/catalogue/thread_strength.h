// What a tapped hole holds against the screw that is in it. Guidance, never certification.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/catalogue/threads.h"

#include <optional>

namespace model {

// The worst that an external and an internal thread of the usual classes may come to, as they meet
// over `engagement`: classes 2A and 2B of ASME B1.1, 6g and 6H of ISO 965-1. The formulas of the
// tolerances are from memory; they give the published limits of 8-32 within 0.0001 in and of M4
// within 0.002 mm.
ThreadMeeting worst_meeting(const MachineScrew& screw, engine::Length engagement);

// Pull-out of a screw from a tapped wall by the Aluminum Design Manual, J.5, in newtons; lengths in
// inches (from memory; its pieces meet at 1/8 and 1/4 in). None outside 0.060 to 0.375 in of
// engagement.
struct PullOut {
    double diameter_in = 0.0;
    double engagement_in = 0.0;
    double strip_area_in2_per_in = 0.0;  // of the internal thread, an inch of engagement
    double yield_mpa = 0.0;
    double ultimate_mpa = 0.0;
};
std::optional<double> pull_out_n(const PullOut& screw);

// What strips the thread out of the wall: the lower of the strip area at 0.6 of the alloy's
// ultimate strength (Aluminum Design Manual: shear is 0.6 of tension; from memory) and, for inch
// screws, the pull-out above.
double strip_force_n(const MachineScrew& screw, engine::Length engagement, const Alloy& wall);

// What breaks the screw itself: its stress area at 60 000 psi (SAE J82, grade 60M) or 420 MPa
// (ISO 898-1, class 4.8); both from memory. Stronger screws only strip the wall sooner.
double screw_force_n(const MachineScrew& screw);

}  // namespace model
