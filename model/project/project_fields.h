// What every thing in a project is made of, said once: the key in the file, the member that holds
// it and what that member means. Reading, writing, renaming and checking all walk these lists, so
// a field cannot be known to one and forgotten by another.
#pragma once

#include "model/project/project.h"
#include "model/project/shop_limits.h"

#include <array>
#include <cstdint>
#include <limits>
#include <optional>
#include <string_view>

namespace model {

enum class Role { value, name, text, formula, reference };

// What a reference names. Planes, bays and members are those of the frame that the reference is in.
enum class Target { none, stock, plane, bay, member };

struct Meaning {
    Role role = Role::value;
    std::optional<engine::QuantityKind> quantity;  // of a formula; none: as the dimension's kind
    Target target = Target::none;
    double least = std::numeric_limits<double>::lowest();  // of a number
    double most = std::numeric_limits<double>::max();
    bool is_power_of_two = false;
    bool may_be_empty = false;  // of a formula: then something else decides
};

inline constexpr Meaning plain{};
inline constexpr Meaning a_name{.role = Role::name};
inline constexpr Meaning a_text{.role = Role::text};
inline constexpr Meaning a_formula{.role = Role::formula};
inline constexpr Meaning a_length{.role = Role::formula, .quantity = engine::QuantityKind::length};
inline constexpr Meaning a_length_or_none{
    .role = Role::formula, .quantity = engine::QuantityKind::length, .may_be_empty = true};
inline constexpr Meaning an_angle{.role = Role::formula, .quantity = engine::QuantityKind::angle};

constexpr Meaning refers_to(Target target) { return {.role = Role::reference, .target = target}; }
constexpr Meaning between(double least, double most) { return {.least = least, .most = most}; }

struct Field {
    std::string_view key;
    Meaning meaning;
    bool is_needed = false;  // otherwise it is left out of the file while it has its default value
};

constexpr Field needed(std::string_view key, Meaning meaning = plain) {
    return {key, meaning, true};
}
constexpr Field optional(std::string_view key, Meaning meaning = plain) {
    return {key, meaning, false};
}

// ---- words for enumerations, in the order of the enumerators ------------------------------------

template <class E>
inline constexpr std::array<std::string_view, 0> words_for{};

template <>
inline constexpr std::array<std::string_view, 3> words_for<Axis>{"x", "y", "z"};
template <>
inline constexpr std::array<std::string_view, 2> words_for<Sense>{"minus", "plus"};
template <>
inline constexpr std::array<std::string_view, 4> words_for<BayUse>{"open", "drawer", "door",
                                                                   "heavy load"};
template <>
inline constexpr std::array<std::string_view, 2> words_for<WayHome>{"delivered", "fetched"};
template <>
inline constexpr std::array<std::string_view, 3> words_for<CutState>{"planned", "cut", "spoiled"};
template <>
inline constexpr std::array<std::string_view, 2> words_for<Seat>{"heel", "root"};
template <>
inline constexpr std::array<std::string_view, 2> words_for<FaceSide>{"inside", "outside"};
template <>
inline constexpr std::array<std::string_view, 2> words_for<BraceEnds>{"outline", "square"};
template <>
inline constexpr std::array<std::string_view, 3> words_for<ScrewHold>{"tapped", "nut", "rivet nut"};
template <>
inline constexpr std::array<std::string_view, 2> words_for<PanelFit>{"inset", "overlay"};
template <>
inline constexpr std::array<std::string_view, 3> words_for<PanelUse>{"fixed", "door",
                                                                     "drawer front"};
template <>
inline constexpr std::array<std::string_view, 3> words_for<engine::QuantityKind>{"length", "angle",
                                                                                 "number"};
template <>
inline constexpr std::array<std::string_view, 5> words_for<engine::LengthUnit>{
    "inch", "foot", "millimetre", "centimetre", "metre"};
template <>
inline constexpr std::array<std::string_view, 6> words_for<engine::TapeForm>{
    "inch fraction", "feet and inches", "decimal inch", "millimetre", "centimetre", "metre"};

// ---- things -------------------------------------------------------------------------------------

template <class T>
struct Of {};  // picks the list of fields

// What a thing is called in messages; empty for what is no thing with fields.
template <class T>
inline constexpr std::string_view thing_name{};

// Things so short that the file gives each of them one line.
template <class T>
inline constexpr bool is_on_one_line = false;

template <class T>
concept Thing = !thing_name<T>.empty();

template <>
inline constexpr std::string_view thing_name<engine::TapeStyle> = "style of lengths";
template <>
inline constexpr bool is_on_one_line<engine::TapeStyle> = true;

template <class Visit>
void visit_fields(Visit& visit, Of<engine::TapeStyle>) {
    visit(needed("form"), &engine::TapeStyle::form);
    visit(optional("denominator", {.least = 1, .most = 64, .is_power_of_two = true}),
          &engine::TapeStyle::denominator);
    visit(optional("decimals", between(0, 7)), &engine::TapeStyle::decimals);
    visit(optional("with_unit"), &engine::TapeStyle::with_unit);
}

template <>
inline constexpr std::string_view thing_name<Dimension> = "dimension";

template <class Visit>
void visit_fields(Visit& visit, Of<Dimension>) {
    visit(needed("name", a_name), &Dimension::name);
    visit(optional("kind"), &Dimension::kind);
    visit(needed("formula", a_formula), &Dimension::formula);
    visit(optional("least", a_formula), &Dimension::least);
    visit(optional("most", a_formula), &Dimension::most);
    visit(optional("note", a_text), &Dimension::note);
}

// ---- room ---------------------------------------------------------------------------------------

template <>
inline constexpr std::string_view thing_name<BoxObstacle> = "box";

template <class Visit>
void visit_fields(Visit& visit, Of<BoxObstacle>) {
    visit(needed("least", a_length), &BoxObstacle::least);
    visit(needed("most", a_length), &BoxObstacle::most);
}

template <>
inline constexpr std::string_view thing_name<WheelWell> = "wheel well";

template <class Visit>
void visit_fields(Visit& visit, Of<WheelWell>) {
    visit(needed("least", a_length), &WheelWell::least);
    visit(needed("most", a_length), &WheelWell::most);
    visit(optional("top_radius", a_length), &WheelWell::top_radius);
    visit(optional("corner_radius", a_length), &WheelWell::corner_radius);
    visit(optional("inner_side"), &WheelWell::inner_side);
    visit(optional("inner_sense"), &WheelWell::inner_sense);
    visit(optional("lean", an_angle), &WheelWell::lean);
}

template <>
inline constexpr std::string_view thing_name<WallProfile::Offset> = "wall offset";
template <>
inline constexpr bool is_on_one_line<WallProfile::Offset> = true;

template <class Visit>
void visit_fields(Visit& visit, Of<WallProfile::Offset>) {
    visit(needed("height", a_length), &WallProfile::Offset::height);
    visit(needed("inset", a_length), &WallProfile::Offset::inset);
}

template <>
inline constexpr std::string_view thing_name<WallProfile::Station> = "wall station";

template <class Visit>
void visit_fields(Visit& visit, Of<WallProfile::Station>) {
    visit(needed("along", a_length), &WallProfile::Station::along);
    visit(needed("offsets"), &WallProfile::Station::offsets);
}

template <>
inline constexpr std::string_view thing_name<WallProfile> = "wall profile";

template <class Visit>
void visit_fields(Visit& visit, Of<WallProfile>) {
    visit(needed("at", a_length), &WallProfile::at);
    visit(optional("inside"), &WallProfile::inside);
    visit(needed("from", a_length), &WallProfile::from);
    visit(needed("to", a_length), &WallProfile::to);
    visit(needed("offsets"), &WallProfile::offsets);
    visit(optional("stations"), &WallProfile::stations);
}

template <>
inline constexpr std::string_view thing_name<CeilingProfile::Offset> = "ceiling offset";
template <>
inline constexpr bool is_on_one_line<CeilingProfile::Offset> = true;

template <class Visit>
void visit_fields(Visit& visit, Of<CeilingProfile::Offset>) {
    visit(needed("across", a_length), &CeilingProfile::Offset::across);
    visit(needed("drop", a_length), &CeilingProfile::Offset::drop);
}

template <>
inline constexpr std::string_view thing_name<CeilingProfile::Station> = "ceiling station";

template <class Visit>
void visit_fields(Visit& visit, Of<CeilingProfile::Station>) {
    visit(needed("along", a_length), &CeilingProfile::Station::along);
    visit(needed("offsets"), &CeilingProfile::Station::offsets);
}

template <>
inline constexpr std::string_view thing_name<CeilingProfile> = "ceiling profile";

template <class Visit>
void visit_fields(Visit& visit, Of<CeilingProfile>) {
    visit(needed("at", a_length), &CeilingProfile::at);
    visit(needed("from", a_length), &CeilingProfile::from);
    visit(needed("to", a_length), &CeilingProfile::to);
    visit(needed("offsets"), &CeilingProfile::offsets);
    visit(optional("stations"), &CeilingProfile::stations);
}

template <>
inline constexpr std::string_view thing_name<CylinderObstacle> = "cylinder";

template <class Visit>
void visit_fields(Visit& visit, Of<CylinderObstacle>) {
    visit(needed("foot", a_length), &CylinderObstacle::foot);
    visit(optional("along"), &CylinderObstacle::along);
    visit(needed("radius", a_length), &CylinderObstacle::radius);
    visit(needed("length", a_length), &CylinderObstacle::length);
}

template <>
inline constexpr std::string_view thing_name<DoorSwing> = "door swing";

template <class Visit>
void visit_fields(Visit& visit, Of<DoorSwing>) {
    visit(needed("hinge", a_length), &DoorSwing::hinge);
    visit(needed("width", a_length), &DoorSwing::width);
    visit(needed("height", a_length), &DoorSwing::height);
    visit(optional("closed", an_angle), &DoorSwing::closed);
    visit(optional("open", an_angle), &DoorSwing::open);
}

template <>
inline constexpr std::string_view thing_name<ScannedObstacle> = "scan";

template <class Visit>
void visit_fields(Visit& visit, Of<ScannedObstacle>) {
    visit(needed("file", a_text), &ScannedObstacle::file);
    visit(optional("unit"), &ScannedObstacle::unit);
    visit(optional("at", a_length), &ScannedObstacle::at);
    visit(optional("turn", an_angle), &ScannedObstacle::turn);
}

template <>
inline constexpr std::string_view thing_name<Obstacle> = "obstacle";

template <class Visit>
void visit_fields(Visit& visit, Of<Obstacle>) {
    visit(needed("name", a_name), &Obstacle::name);
    // In the order of ObstacleShape.
    visit.one_of(std::array{optional("box"), optional("wheel_well"), optional("wall_profile"),
                            optional("ceiling_profile"), optional("cylinder"),
                            optional("door_swing"), optional("scan")},
                 &Obstacle::shape);
    visit(optional("stays_clear"), &Obstacle::stays_clear);
    visit(optional("clearance", a_length_or_none), &Obstacle::clearance);
    visit(optional("note", a_text), &Obstacle::note);
}

// ---- stock --------------------------------------------------------------------------------------

inline constexpr double most_money = 1e12;
inline constexpr double most_count = 1e6;

template <>
inline constexpr std::string_view thing_name<BarOffer> = "bar";
template <>
inline constexpr bool is_on_one_line<BarOffer> = true;

template <class Visit>
void visit_fields(Visit& visit, Of<BarOffer>) {
    visit(needed("length", a_length), &BarOffer::length);
    visit(optional("price", between(0, most_money)), &BarOffer::price);
    visit(optional("limit", between(0, most_count)), &BarOffer::limit);
}

template <>
inline constexpr std::string_view thing_name<Offcut> = "offcut";
template <>
inline constexpr bool is_on_one_line<Offcut> = true;

template <class Visit>
void visit_fields(Visit& visit, Of<Offcut>) {
    visit(needed("length", a_length), &Offcut::length);
    visit(optional("count", between(0, most_count)), &Offcut::count);
}

template <>
inline constexpr std::string_view thing_name<BarCut> = "bar cut";
template <>
inline constexpr bool is_on_one_line<BarCut> = true;

template <class Visit>
void visit_fields(Visit& visit, Of<BarCut>) {
    visit(needed("length", a_length), &BarCut::length);
    visit(optional("ends", a_text), &BarCut::ends);
    visit(optional("mark", a_text), &BarCut::mark);
    visit(optional("is_opposite"), &BarCut::is_opposite);
    visit(optional("state"), &BarCut::state);
    visit(optional("took", a_length_or_none), &BarCut::took);
    visit(optional("measured", a_length_or_none), &BarCut::measured);
    visit(optional("is_on_rack"), &BarCut::is_on_rack);
}

template <>
inline constexpr std::string_view thing_name<BarAtSaw> = "bar at the saw";

template <class Visit>
void visit_fields(Visit& visit, Of<BarAtSaw>) {
    visit(needed("length", a_length), &BarAtSaw::length);
    visit(optional("was_offcut"), &BarAtSaw::was_offcut);
    visit(optional("is_used_up"), &BarAtSaw::is_used_up);
    visit(optional("purchase", between(0, most_count)), &BarAtSaw::purchase);
    visit(optional("cuts"), &BarAtSaw::cuts);
}

template <>
inline constexpr std::string_view thing_name<Stock> = "stock";

template <class Visit>
void visit_fields(Visit& visit, Of<Stock>) {
    visit(needed("name", a_name), &Stock::name);
    visit(needed("section", a_text), &Stock::section);
    visit(needed("alloy", a_text), &Stock::alloy);
    visit(optional("bars"), &Stock::bars);
    visit(optional("offcuts"), &Stock::offcuts);
    visit(optional("at_home"), &Stock::at_home);
    visit(optional("at_saw"), &Stock::at_saw);
}

// ---- frames -------------------------------------------------------------------------------------

template <>
inline constexpr std::string_view thing_name<Plane> = "plane";
template <>
inline constexpr bool is_on_one_line<Plane> = true;

template <class Visit>
void visit_fields(Visit& visit, Of<Plane>) {
    visit(needed("name", a_name), &Plane::name);
    visit(needed("axis"), &Plane::axis);
    visit(needed("position", a_length), &Plane::position);
}

template <>
inline constexpr std::string_view thing_name<Bay> = "bay";

template <class Visit>
void visit_fields(Visit& visit, Of<Bay>) {
    visit(needed("name", a_name), &Bay::name);
    visit(needed("x", refers_to(Target::plane)), &Bay::x);
    visit(needed("y", refers_to(Target::plane)), &Bay::y);
    visit(needed("z", refers_to(Target::plane)), &Bay::z);
    visit(optional("use"), &Bay::use);
    visit(optional("note", a_text), &Bay::note);
}

template <>
inline constexpr std::string_view thing_name<Member> = "member";

template <class Visit>
void visit_fields(Visit& visit, Of<Member>) {
    visit(needed("name", a_name), &Member::name);
    visit(needed("stock", refers_to(Target::stock)), &Member::stock);
    visit(needed("run"), &Member::run);
    visit(needed("on", refers_to(Target::plane)), &Member::on);
    visit(needed("from", refers_to(Target::plane)), &Member::from);
    visit(needed("to", refers_to(Target::plane)), &Member::to);
    visit(needed("legs"), &Member::legs);
    visit(optional("seat"), &Member::seat);
    visit(optional("turned"), &Member::turned);
    visit(optional("rank", between(-most_count, most_count)), &Member::rank);
    visit(optional("allowance_from", a_length), &Member::allowance_from);
    visit(optional("allowance_to", a_length), &Member::allowance_to);
    visit(optional("foot_from"), &Member::foot_from);
    visit(optional("foot_to"), &Member::foot_to);
    visit(optional("note", a_text), &Member::note);
}

template <>
inline constexpr std::string_view thing_name<Diagonal> = "diagonal";

template <class Visit>
void visit_fields(Visit& visit, Of<Diagonal>) {
    visit(needed("name", a_name), &Diagonal::name);
    visit(needed("stock", refers_to(Target::stock)), &Diagonal::stock);
    visit(needed("face", refers_to(Target::plane)), &Diagonal::face);
    visit(needed("from", refers_to(Target::plane)), &Diagonal::from);
    visit(needed("to", refers_to(Target::plane)), &Diagonal::to);
    visit(optional("side"), &Diagonal::side);
    visit(optional("ends"), &Diagonal::ends);
    visit(optional("note", a_text), &Diagonal::note);
}

template <>
inline constexpr std::string_view thing_name<Leaning> = "leaning member";

template <class Visit>
void visit_fields(Visit& visit, Of<Leaning>) {
    visit(needed("name", a_name), &Leaning::name);
    visit(needed("stock", refers_to(Target::stock)), &Leaning::stock);
    visit(needed("face", refers_to(Target::plane)), &Leaning::face);
    visit(needed("from", refers_to(Target::plane)), &Leaning::from);
    visit(needed("to", refers_to(Target::plane)), &Leaning::to);
    visit(optional("leg"), &Leaning::leg);
    visit(optional("note", a_text), &Leaning::note);
}

inline constexpr double most_per_lap = 100;

template <>
inline constexpr std::string_view thing_name<JointOverride> = "joint";

template <class Visit>
void visit_fields(Visit& visit, Of<JointOverride>) {
    visit(needed("members", refers_to(Target::member)), &JointOverride::members);
    visit(optional("recipe", a_text), &JointOverride::recipe);
    visit(optional("fastener", a_text), &JointOverride::fastener);
    visit(optional("count", between(0, most_per_lap)), &JointOverride::count);
    visit(optional("removable"), &JointOverride::removable);
    visit(optional("screw_hold"), &JointOverride::screw_hold);
    visit(optional("note", a_text), &JointOverride::note);
}

template <>
inline constexpr std::string_view thing_name<CutOut> = "cut-out";

template <class Visit>
void visit_fields(Visit& visit, Of<CutOut>) {
    visit(needed("name", a_name), &CutOut::name);
    visit(needed("least", a_length), &CutOut::least);
    visit(needed("most", a_length), &CutOut::most);
    visit(optional("is_vent"), &CutOut::is_vent);
}

template <>
inline constexpr std::string_view thing_name<Panel> = "panel";

template <class Visit>
void visit_fields(Visit& visit, Of<Panel>) {
    visit(needed("name", a_name), &Panel::name);
    visit(needed("bay", refers_to(Target::bay)), &Panel::bay);
    visit(needed("face_axis"), &Panel::face_axis);
    visit(needed("face_side"), &Panel::face_side);
    visit(optional("material", a_text), &Panel::material);
    visit(needed("thickness", a_length), &Panel::thickness);
    visit(optional("fit"), &Panel::fit);
    visit(optional("use"), &Panel::use);
    visit(optional("clear_gap", a_length_or_none), &Panel::clear_gap);
    visit(optional("fastener", a_text), &Panel::fastener);
    visit(optional("pitch", a_length_or_none), &Panel::pitch);
    visit(optional("cut_outs"), &Panel::cut_outs);
    visit(optional("note", a_text), &Panel::note);
}

inline constexpr double most_mass_kg = 1e6;

template <>
inline constexpr std::string_view thing_name<Load> = "load";

template <class Visit>
void visit_fields(Visit& visit, Of<Load>) {
    visit(needed("name", a_name), &Load::name);
    visit(needed("mass_kg", between(0, most_mass_kg)), &Load::mass_kg);
    visit.one_of(std::array{optional("bay", refers_to(Target::bay)), optional("at", a_length)},
                 &Load::where);
    visit(optional("note", a_text), &Load::note);
}

template <>
inline constexpr std::string_view thing_name<MeasuredOpening> = "measured opening";

template <class Visit>
void visit_fields(Visit& visit, Of<MeasuredOpening>) {
    visit(needed("name", a_name), &MeasuredOpening::name);
    visit(optional("through"), &MeasuredOpening::through);
    visit(needed("height", a_length), &MeasuredOpening::height);
    visit(needed("widths", a_length), &MeasuredOpening::widths);
    visit(optional("diagonals", a_length_or_none), &MeasuredOpening::diagonals);
    visit(optional("plumb", a_length_or_none), &MeasuredOpening::plumb);
    visit(optional("note", a_text), &MeasuredOpening::note);
}

template <>
inline constexpr std::string_view thing_name<Frame> = "frame";

template <class Visit>
void visit_fields(Visit& visit, Of<Frame>) {
    visit(needed("name", a_name), &Frame::name);
    visit(optional("note", a_text), &Frame::note);
    visit(optional("origin", a_length), &Frame::origin);
    visit(optional("quarter_turns", between(0, 3)), &Frame::quarter_turns);
    visit(optional("recipe", a_text), &Frame::recipe);
    visit(optional("planes"), &Frame::planes);
    visit(optional("bays"), &Frame::bays);
    visit(optional("members"), &Frame::members);
    visit(optional("diagonals"), &Frame::diagonals);
    visit(optional("leaning"), &Frame::leaning);
    visit(optional("joints"), &Frame::joints);
    visit(optional("panels"), &Frame::panels);
    visit(optional("loads"), &Frame::loads);
    visit(optional("openings"), &Frame::openings);
}

// ---- shop and project ---------------------------------------------------------------------------

template <>
inline constexpr std::string_view thing_name<Shop> = "shop";

// Least edge distance and pitch: see Shop; upper ends only keep nonsense out.
template <class Visit>
void visit_fields(Visit& visit, Of<Shop>) {
    visit(optional("kerf", a_length), &Shop::kerf);
    visit(optional("end_trim", a_length), &Shop::end_trim);
    visit(optional("least_held", a_length), &Shop::least_held);
    visit(optional("least_offcut", a_length), &Shop::least_offcut);
    visit(optional("end_gap", a_length_or_none), &Shop::end_gap);
    visit(optional("graduation", a_length_or_none), &Shop::graduation);
    visit(optional("edge_distance", between(least_edge_distance, most_edge_distance)),
          &Shop::edge_distance);
    visit(optional("pitch", between(least_pitch, most_pitch)), &Shop::pitch);
    visit(optional("recipe", a_text), &Shop::recipe);
    visit(optional("gusset_thickness", a_length_or_none), &Shop::gusset_thickness);
    visit(optional("gusset_alloy", a_text), &Shop::gusset_alloy);
    visit(optional("panel_gap", a_length), &Shop::panel_gap);
    visit(optional("panel_pitch", a_length), &Shop::panel_pitch);
    visit(optional("per_lap", between(0, most_per_lap)), &Shop::per_lap);
    visit(optional("fastener", a_text), &Shop::fastener);
    visit(optional("screw", a_text), &Shop::screw);
    visit(optional("screw_hold"), &Shop::screw_hold);
    visit(optional("foot_screw", a_text), &Shop::foot_screw);
    visit(optional("nose_radius", a_length), &Shop::nose_radius);
    visit(optional("nose_reach", a_length), &Shop::nose_reach);
    visit(optional("housing_radius", a_length), &Shop::housing_radius);
    visit(optional("drills", a_text), &Shop::drills);
    visit(optional("clearance", a_length), &Shop::clearance);
    visit(optional("frame_gap", a_length), &Shop::frame_gap);
    visit(optional("spare_percent", between(0, 1000)), &Shop::spare_percent);
    visit(optional("tax_percent", between(0, 1000)), &Shop::tax_percent);
    visit(optional("delivery_fee", between(0, most_money)), &Shop::delivery_fee);
    visit(optional("currency", a_text), &Shop::currency);
    visit(optional("supplier", a_text), &Shop::supplier);
}

template <>
inline constexpr std::string_view thing_name<Supplier> = "supplier";

template <class Visit>
void visit_fields(Visit& visit, Of<Supplier>) {
    visit(needed("name", a_name), &Supplier::name);
    visit(needed("prices", a_text), &Supplier::prices);
    visit(optional("way"), &Supplier::way);
    visit(optional("note", a_text), &Supplier::note);
}

template <>
inline constexpr std::string_view thing_name<Project> = "project";

// After the format version.
template <class Visit>
void visit_fields(Visit& visit, Of<Project>) {
    visit(needed("name", a_text), &Project::name);
    visit(optional("note", a_text), &Project::note);
    visit(optional("shown"), &Project::shown);
    visit(optional("dimensions"), &Project::dimensions);
    visit(optional("room"), &Project::room);
    visit(optional("stock"), &Project::stock);
    visit(optional("frames"), &Project::frames);
    visit(optional("suppliers"), &Project::suppliers);
    visit(optional("purchases", between(1, most_count)), &Project::purchases);
    visit(optional("shop"), &Project::shop);
}

}  // namespace model
