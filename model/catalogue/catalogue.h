// The catalogue: sections, alloys, fasteners and drills, each row with its source.
#pragma once

#include "engine/geometry/box.h"
#include "engine/measure/length.h"
#include "engine/result.h"

#include <filesystem>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace model {

enum class SectionForm { angle, flat, channel, tube };
enum class MeasureSystem { inch, metric };

// A bar's cross-section. In its own axes a, b (see section_plates):
//   angle    leg a is `a` long, leg b is `b` long, both `thickness`; heel at the origin
//   flat     `a` wide, `thickness` thick; b is 0
//   channel  web `a` deep and `web_thickness`, flanges `b` wide and `thickness`
//   tube     side a is `a` wide, side b is `b` wide, wall `thickness`
struct Section {
    std::string id;  // "angle 1 x 1 x 1/8", "angle 30 x 30 x 3 mm"
    SectionForm form = SectionForm::angle;
    MeasureSystem system = MeasureSystem::inch;
    engine::Length a;
    engine::Length b;
    engine::Length thickness;
    engine::Length web_thickness;
    engine::Length root_radius;  // fillet in the inner corner; zero: square
    engine::Length toe_radius;   // rounding of the inner toe edge; of a tube: outer corner radius
    std::string usual_alloy;
    std::string usual_lengths;  // as the trade says it, for help text
    std::string source;

    bool operator==(const Section&) const = default;
};

// One flat wall of a section as a rectangle in the section's axes: a plate of the bar.
struct SectionPlate {
    std::string_view name;  // "leg a", "leg b", "face", "web", "near flange", "far flange", ...
    int normal_axis = 1;    // 0: the plate faces along a; 1: along b
    int outward = -1;       // sign of the outer face's normal along that axis
    std::array<engine::Nm, 2> lo{};  // a, b
    std::array<engine::Nm, 2> hi{};
    // Rounded inner corners count as keep-out squares, not as walls: no fastener, no lap.
    bool is_root_fillet = false;
};

// The walls of a section, then its root fillets. All coordinates are >= 0; the first wall has its
// outer face on b = 0, and for all forms but flat another wall has its outer face on a = 0:
//   angle    leg a (outer face b = 0, spans a), leg b (outer face a = 0, spans b), fillet
//   flat     face (outer face b = 0, spans a)
//   channel  web (outer face b = 0, spans a), near flange (outer face a = 0, spans b), far flange,
//            two fillets
//   tube     side a (outer face b = 0), side b (outer face a = 0), far side a, far side b, four
//            fillets
// Fillets are left out where the inner corners are square.
std::vector<SectionPlate> section_plates(const Section& section);

struct Alloy {
    std::string id;  // "6061-T6"
    std::string name;
    double density_kg_m3 = 2700.0;
    double yield_mpa = 0.0;
    double ultimate_mpa = 0.0;
    double elastic_mpa = 0.0;
    double shear_elastic_mpa = 0.0;
    std::string source;

    bool operator==(const Alloy&) const = default;
};

struct Drill {
    std::string name;    // "#30", "1/8", "F", "3.3 mm"
    std::string series;  // "number", "fraction", "letter", "metric"
    engine::Length diameter;
    std::string source;

    bool operator==(const Drill&) const = default;
};

// One length of a blind rivet. Limits are exact sixteenths for inch rivets.
struct RivetGrip {
    std::string code;  // "4-4"; metric: "4 x 8"
    engine::Length least;
    engine::Length most;
    engine::Length body_length;  // the longest that is allowed
    std::string source;

    bool operator==(const RivetGrip&) const = default;
};

struct BlindRivet {
    std::string id;  // "blind rivet 1/8", "blind rivet 4.0 mm"
    MeasureSystem system = MeasureSystem::inch;
    engine::Length diameter;  // nominal
    engine::Length body_diameter_most;
    engine::Length head_diameter_most;
    engine::Length head_height_most;
    engine::Length hole_least;
    engine::Length hole_most;
    std::string drill;                // name in drills
    engine::Length blind_side_extra;  // unset length beyond the body, most
    double shear_n = 0.0;             // least shear, lower of the listed figures; 0 where unknown
    double tension_n = 0.0;
    std::vector<RivetGrip> grips;  // rising
    std::string source;

    bool operator==(const BlindRivet&) const = default;
};

struct MachineScrew {
    std::string id;  // "machine screw 8-32", "machine screw M4"
    MeasureSystem system = MeasureSystem::inch;
    engine::Length diameter;
    engine::Length pitch;  // nearest nanometre
    double threads_per_inch = 0.0;
    engine::Length minor_least;  // of the internal thread
    engine::Length minor_most;
    double stress_area_mm2 = 0.0;
    std::string tap_drill;              // name in drills
    std::string clearance_drill;        // close fit
    std::string free_drill;             // free fit; metric: medium of ISO 273
    std::string loose_drill;            // for slots and joints that are shifted to fit
    engine::Length head_diameter_most;  // pan head
    engine::Length head_height_most;
    engine::Length nut_width_most;  // across the flats
    engine::Length nut_height_most;
    std::vector<engine::Length> lengths;  // sold, rising
    std::string source;

    bool operator==(const MachineScrew&) const = default;
};

// A blind threaded insert in one of its lengths: set into a hole, it gives a thin wall a thread.
struct RivetNut {
    std::string id;     // "rivet nut 8-32, grip 0.120 to 0.160 in"
    std::string screw;  // id of the screw that it takes
    std::string drill;  // name in drills
    engine::Length grip_least;
    engine::Length grip_most;
    engine::Length body_length;   // below the rim, before it is set
    engine::Length rim_diameter;  // what forms behind the wall is no wider
    engine::Length rim_height;
    std::string source;

    bool operator==(const RivetNut&) const = default;
};

// A temporary sheet pin: holds parts together through the rivet holes for the dry fit.
struct SheetPin {
    std::string id;           // "sheet pin 1/8"
    engine::Length diameter;  // nominal
    engine::Length hole;      // as its drill cuts it
    std::string drill;
    engine::Length grip_most;
    std::string source;

    bool operator==(const SheetPin&) const = default;
};

// A distance by rule, in multiples of `unit` ("fastener diameter", "hole diameter", ...). No value:
// the rule does not say.
struct LayoutRule {
    std::string id;  // "edge distance", "pitch"
    std::optional<double> least;
    std::optional<double> usual_least;
    std::optional<double> usual_most;
    std::optional<double> most;
    std::string unit;
    std::string applies_to;
    std::string source;

    bool operator==(const LayoutRule&) const = default;
};

// Surface speeds for high-speed steel drills, in feet a minute as the trade states them.
struct DrillingSpeed {
    std::string material;  // "aluminium"
    double least = 0.0;
    double usual = 0.0;
    double most = 0.0;
    double hand_drill_top_rpm = 0.0;
    std::string source;

    bool operator==(const DrillingSpeed&) const = default;
};

// Sheet for panels that is no alloy of `Alloy`.
struct SheetMaterial {
    std::string id;  // "birch plywood"
    double density_kg_m3 = 0.0;
    std::string source;

    bool operator==(const SheetMaterial&) const = default;
};

// What covers a vent.
struct VentCover {
    std::string id;          // "metal louvre"
    double free_area = 1.0;  // the part of the opening that air passes: above 0, at most 1
    std::string source;

    bool operator==(const VentCover&) const = default;
};

struct Catalogue {
    std::vector<Section> sections;
    std::vector<Alloy> alloys;
    std::vector<SheetMaterial> sheet_materials;
    std::vector<Drill> drills;
    std::vector<BlindRivet> rivets;  // rising diameter within a system
    std::vector<MachineScrew> screws;
    std::vector<RivetNut> rivet_nuts;
    std::vector<SheetPin> pins;
    std::vector<LayoutRule> layout_rules;
    std::vector<DrillingSpeed> drilling_speeds;
    std::vector<VentCover> vent_covers;

    bool operator==(const Catalogue&) const = default;
};

// Reads the tables under assets/catalogue. Errors name the file and the line.
engine::Result<Catalogue> load_catalogue(const std::filesystem::path& assets);

const Section* find_section(const Catalogue& catalogue, std::string_view id);
const Alloy* find_alloy(const Catalogue& catalogue, std::string_view id);
const SheetMaterial* find_sheet_material(const Catalogue& catalogue, std::string_view id);
const Drill* find_drill(const Catalogue& catalogue, std::string_view name);
const BlindRivet* find_rivet(const Catalogue& catalogue, std::string_view id);
const MachineScrew* find_screw(const Catalogue& catalogue, std::string_view id);
const LayoutRule* find_layout_rule(const Catalogue& catalogue, std::string_view id);
const DrillingSpeed* find_drilling_speed(const Catalogue& catalogue, std::string_view material);
const VentCover* find_vent_cover(const Catalogue& catalogue, std::string_view id);

// Of sheet, whether alloy or not; none: the catalogue does not know it.
std::optional<double> sheet_density_kg_m3(const Catalogue& catalogue, std::string_view material);

// The grip whose range holds the stack; of two that do, the one in which it lies nearer the middle
// (mid-range advice: common practice). A stack on the limit between two ranges belongs to the
// lower one. Null when none does.
const RivetGrip* grip_for(const BlindRivet& rivet, engine::Length stack);

// The rivet by the rule: the smallest whose diameter is at least the thickest plate's thickness
// (1 to 3 times the thickest sheet: NAVEDTRA 14018 p. 13), the largest where none is.
const BlindRivet* rivet_for(const Catalogue& catalogue,
                            MeasureSystem system,
                            engine::Length thickest);

// The screw by the rule: the thickest whose tap drill is no larger than the plate is thick (common
// practice) and that finds three threads in it (shop practice, from memory), of one diameter the
// coarse one; where there is none, the thinnest with the finest thread.
const MachineScrew* screw_for(const Catalogue& catalogue,
                              MeasureSystem system,
                              engine::Length plate);

// The same diameter with a finer thread; null when there is none.
const MachineScrew* finer_thread(const Catalogue& catalogue, const MachineScrew& screw);

// The rivet nut that takes the screw and whose grip holds the wall; null when none does.
const RivetNut* rivet_nut_for(const Catalogue& catalogue,
                              const MachineScrew& screw,
                              engine::Length wall);

// The ids nearest to a misspelt one, for the mend of a finding; at most `most`.
std::vector<std::string> nearest_section_ids(const Catalogue& catalogue,
                                             std::string_view id,
                                             std::size_t most = 3);

}  // namespace model
