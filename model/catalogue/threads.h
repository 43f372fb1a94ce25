// Screw threads and the holes that are tapped for them: unified and ISO metric, both 60 degrees.
#pragma once

#include "engine/measure/length.h"
#include "model/catalogue/catalogue.h"

namespace model {

// Major diameter of a numbered screw: 0.060 in + 0.013 in a number (ASME B1.1; read in a public
// table of screw sizes).
engine::Length numbered_screw_diameter(int number);

// How much of the thread a hole leaves, in per cent of the shop charts' full height, 0.6495 P on
// each side: (D - d) / 1.2990 P (a tap maker's sheet of tap drill sizes, read). Some calculators
// take 5/8 of the sharp height for full and so print a fifth more for the same hole.
double percent_of_thread(engine::Length major, engine::Length pitch, engine::Length hole);

// The hole that leaves `percent` of the thread; rounded to the nanometre.
engine::Length tap_hole(engine::Length major, engine::Length pitch, double percent);

// 65 to 77 per cent are usual in aluminium (a carbide tooling page and a tap maker's sheet, read:
// charts aim at 75, a drill that cuts over its size leaves about 62 to 72).
constexpr double usual_thread_least = 65.0;
constexpr double usual_thread_most = 77.0;

// Whether a hole lies within the limits of the internal thread's minor diameter. Smaller: the tap
// binds or breaks; larger: the thread is weak.
enum class TapHole { too_small, right, too_large };
TapHole judge_tap_hole(const MachineScrew& screw, engine::Length hole);

// Tensile stress area in mm2: pi/4 (D - 0.9743/n)^2 of inch threads (UNC and UNF tables, read),
// pi/4 (D - 0.9382 P)^2 of metric ones (ISO 898-1, from memory).
double stress_area_mm2(MeasureSystem system, engine::Length major, engine::Length pitch);

// Limits of an external and an internal thread as they meet in stripping, mm.
struct ThreadMeeting {
    double pitch = 0.0;
    double engagement = 0.0;
    double external_major_least = 0.0;
    double internal_pitch_diameter_most = 0.0;
};

// Area in mm2 on which an internal thread strips: FED-STD-H28/2B, pi n Le Ds (1/2n + 0.57735
// (Ds - En)) (read in a paraphrase of Machinery's Handbook 24).
double internal_strip_area_mm2(const ThreadMeeting& meeting);

// Engagement at which a screw breaks before a thread of equal metal strips: 2 As / (pi/2 (D -
// 0.64952 P)) (a thread engagement page, read).
double engagement_for_equal_metals_mm(double stress_area_mm2, double major_mm, double pitch_mm);

// Threads that a wall holds when all of it is tapped. Fewer than three are too few (shop practice,
// from memory); a chamfer costs about one.
double threads_in_wall(engine::Length wall, engine::Length pitch);
constexpr double threads_least = 3.0;

// Three or more, the rounding of the pitch to a nanometre let pass.
bool has_enough_threads(engine::Length wall, engine::Length pitch);

}  // namespace model
