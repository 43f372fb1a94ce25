// The one door through which a project changes: named edits, each a plain value.
#pragma once

#include "engine/result.h"
#include "model/project/project.h"
#include "model/project/vent.h"

#include <memory>
#include <string>
#include <type_traits>

namespace model {

// "Put" adds the thing, or replaces the one of that name. `instead_of` names the thing to replace
// when the edit also renames it; all that refers to it by name follows. What the thing itself
// refers to must be there, unless the thing it replaces lacked it too.

struct SetTitle {
    std::string name;
    std::string note;
};

struct SetShown {  // changes no length: "36" becomes "36 in" when lengths are shown in millimetres
    engine::TapeStyle shown;
};

struct SetShop {
    Shop shop;
};

struct PutDimension {
    Dimension dimension;
    std::string instead_of;
};

struct SetFormula {  // of a dimension
    std::string dimension;
    Formula formula;
};

struct RemoveDimension {  // refused while a formula refers to it
    std::string dimension;
};

struct PutStock {
    Stock stock;
    std::string instead_of;
};

struct RemoveStock {  // refused while a member is made of it
    std::string stock;
};

// What lies on the rack and at the saw, as the work goes on. Nothing else of the stock changes.
struct KeepBars {
    std::string stock;
    std::vector<Offcut> offcuts;
    std::vector<Offcut> at_home;
    std::vector<BarAtSaw> at_saw;
    std::string what_was_done;  // for the undo list: "Cut B from bar 2"
};

// Its name changes in the shop's choice too.
struct PutSupplier {
    Supplier supplier;
    std::string instead_of;
};

// The shop no longer buys from it.
struct RemoveSupplier {
    std::string supplier;
};

// Something was bought, and stands in the table of purchases under that number, from 1.
struct NotePurchase {  // refused where it is noted already
    int number = 0;
};

// It was not paid after all; what came with it stays.
struct TakePurchaseBack {
    int number = 0;
};

struct PutObstacle {
    Obstacle obstacle;
    std::string instead_of;
};

struct RemoveObstacle {
    std::string obstacle;
};

struct PutFrame {
    Frame frame;
    std::string instead_of;
};

// A dimension whose plain value says nothing but where the frame stands along an axis takes the new
// plain value.
struct PlaceFrame {
    std::string frame;
    Place origin;
    int quarter_turns = 0;  // any number: whole turns are taken off
};

struct SetFrameRecipe {  // how its members meet; empty: as the shop says
    std::string frame;
    std::string recipe;
};

struct RemoveFrame {
    std::string frame;
};

struct PutPlane {
    std::string frame;
    Plane plane;
    std::string instead_of;
};

struct SetPlanePosition {
    std::string frame;
    std::string plane;
    Formula position;
};

struct RemovePlane {  // refused while a member, bay or diagonal stands on it
    std::string frame;
    std::string plane;
};

struct PutBay {
    std::string frame;
    Bay bay;
    std::string instead_of;
};

struct RemoveBay {  // refused while a panel or a load is in it
    std::string frame;
    std::string bay;
};

struct PutMember {
    std::string frame;
    Member member;
    std::string instead_of;
};

struct RemoveMember {  // the joint overrides that name it go with it
    std::string frame;
    std::string member;
};

struct SetMemberStock {  // of every member of the frame, or of the members named
    std::string frame;
    std::vector<std::string> members;  // empty: all
    std::string stock;
};

struct PutDiagonal {  // its name may not be a member's: joints know both by name
    std::string frame;
    Diagonal diagonal;
    std::string instead_of;
};

struct RemoveDiagonal {  // the joint overrides that name it go with it
    std::string frame;
    std::string diagonal;
};

struct PutLeaning {  // its name may not be a member's or a diagonal's
    std::string frame;
    Leaning leaning;
    std::string instead_of;
};

struct RemoveLeaning {  // the joint overrides that name it go with it
    std::string frame;
    std::string leaning;
};

struct PutJoint {  // replaces the override of the same two members, in either order
    std::string frame;
    JointOverride joint;
};

struct RemoveJoint {
    std::string frame;
    std::array<std::string, 2> members;
};

struct PutPanel {
    std::string frame;
    Panel panel;
    std::string instead_of;
};

struct RemovePanel {
    std::string frame;
    std::string panel;
};

// Openings for air as cut-outs of a panel: "intake 1", "intake 2", ... All that had such a name
// before, whatever their number, go. Refused where the row is not within its sheet; whether members
// or other cut-outs are in the way is resolve's business.
struct PutVents {
    std::string frame;
    std::string panel;
    std::string name = "intake";
    VentRow row;
};

struct PutLoad {
    std::string frame;
    Load load;
    std::string instead_of;
};

struct RemoveLoad {
    std::string frame;
    std::string load;
};

struct PutOpening {
    std::string frame;
    MeasuredOpening opening;
    std::string instead_of;
};

struct RemoveOpening {
    std::string frame;
    std::string opening;
};

// ---- starters: they leave ordinary dimensions, planes, bays and members behind ------------------

// A rectangular cabinet: four posts, rails round bottom, top and each shelf level, and a divider
// post front and back (with rails between them, top and bottom) at each divider position.
struct StartBoxFrame {
    std::string frame;
    std::string stock;
    Formula width;                      // along x
    Formula depth;                      // along y
    Formula height;                     // along z
    std::vector<Formula> shelf_levels;  // heights of the shelves' upper faces, rising
    std::vector<Formula> dividers;      // positions along x, rising
    Place origin{"0", "0", "0"};
};

// A cabinet that stands over a wheel well at its back: the lower back part, `well_height` high and
// `well_depth` deep, is left out; the re-entrant edge is framed with the root on the line.
struct StartSteppedFrame {
    std::string frame;
    std::string stock;
    Formula width;
    Formula depth;
    Formula height;
    Formula well_height;
    Formula well_depth;
    std::vector<Formula> shelf_levels;  // above the well, rising
    std::vector<Formula> dividers;
    Place origin{"0", "0", "0"};
};

// ---- laying out by hand
// --------------------------------------------------------------------------

// The leg that points along the axis points the other way, of each of the members named; one that
// runs along the axis has no such leg and stays. Planes stay where they are. Refused where none of
// them has such a leg.
struct FlipLegs {
    std::string frame;
    std::vector<std::string> members;
    Axis along = Axis::x;
};

// What is stated of a member's two ends changes places: how far each is held back, and its foot.
// Legs and planes stay, so that all that meets it does. From which end holes are measured is not
// stated: pieces of one mark are read alike. A member whose planes are in the wrong order, so that
// nothing is left of it, gets them swapped with its ends. Refused where both ends are alike.
struct TurnEndForEnd {
    std::string frame;
    std::string member;
};

// One member becomes two that end at a plane across its run, between its ends: "rail" becomes
// "rail 1" and "rail 2". Each keeps the joint overrides with what it meets itself.
struct SplitMember {
    std::string frame;
    std::string member;
    std::string plane;
};

// Two members in one line that end at one plane become one; "rail 1" and "rail 2" become "rail",
// others take the name of the one that comes first along the run. Refused where they differ in
// stock, planes, legs, seat or rank, where the ends that meet are held back or have a foot, where
// their joint overrides with one other member differ, and where one runs the wrong way.
struct JoinMembers {
    std::string frame;
    std::array<std::string, 2> members;
};

// Adds the mirror image, about the middle between two planes, of each bar named (members, diagonals
// and leaning members) that has none. What lies on a plane has its image on the plane that lies
// opposite at present, or on a new one that stays opposite. Overrides of joints between bars that
// are mirrored come along. "post left" becomes "post right". Of all bars one has its image in any
// bar on that line, of those named in one with its legs and seat alike. The image of a brace that
// is named, where it would cross another brace or its own original, lies on the other side of the
// face; of all bars one that would cross itself is left out. Refused where all have their images,
// and where a member that is named would overlap its own.
struct MirrorBars {
    std::string frame;
    Axis axis = Axis::x;                 // across which left and right change places
    std::array<std::string, 2> between;  // planes across the axis; empty: its outermost two
    std::vector<std::string> bars;       // empty: all
};

// Repeats a bay along an axis towards larger values: what ends it there (planes, members,
// diagonals) and what stands within it comes again at each pitch; members along the axis that end
// where the bay does run on to the last of them; bays that begin there begin behind the last.
// "bay" becomes "bay", "bay 2", "bay 3". A plain value of the pitch becomes a dimension, unless a
// bay beside comes again by one of that value already. Planes and bars that are there already are
// not put there again, and a bar that ends where another one goes on becomes one with it where it
// is so at its original. Where the copies stand out beyond the bays beside the bay, bars that lie
// between them turn their legs to the copies. A bar that would push what it meets two layers in
// gets a rank behind that. Refused where another bay is in the way, or a bar takes up only part of
// the place of one that comes again, where bars would have to hold others on both sides, where one
// would come to lie behind another that parts it, with nothing to hold its ends, where one that
// gets a rank would push others two layers in, and where a re-entrant edge of the bay ends with it.
struct RepeatBay {
    std::string frame;
    std::string bay;
    Axis axis = Axis::x;
    int times = 1;            // how often it comes again
    Formula pitch;            // from one to the next; empty: as wide as the bay
    bool with_panels = true;  // of the bay, but for one on the face where it begins
    bool with_loads = false;  // that lie in the bay
};

// A copy of a frame with all in it. With dimensions of its own, each that its formulas stand on is
// copied too, and called after it, but for those that the room or the shop stands on. Mirrored, it
// is of the opposite hand: left and right, in its axes, change places; refused where a panel's
// cut-outs are measured from a side that would be another one. Planes of a step keep their place in
// the frame, and follow the obstacle where the copy stands as the original does along their axis.
// Along the others, too, the obstacle's measures and its clearance stay in their formulas, so that
// the copy's step goes on to be as large as the original's; only where the frame stands is left
// out.
struct CopyFrame {
    std::string frame;
    std::string copy;             // its name
    Place origin{"0", "0", "0"};  // in the room
    bool has_own_dimensions = false;
    bool is_mirrored = false;
};

// Removes a plane with all that stands on it. Two members in one line that end there become one
// where JoinMembers could make them one; two bays that meet there become one, called as the first,
// with the loads of both, with the panels of their far faces and, where both had one, the first
// one's panel of a side. All else that stands on the plane goes, with its joint overrides, panels
// and loads.
struct TakeOutPlane {
    std::string frame;
    std::string plane;
};

// Removes a bay with the panels and loads in it and, if asked, the bars that lie within it and
// beside no other bay; what runs on into it then ends where it begins, legs there that pointed into
// it alone turn away, a bar that would push what it meets two layers in gets a rank behind that, or
// loses such a rank with what it pushed in, and planes on which nothing stands any more go too, as
// do joint overrides of bars that no longer meet. Refused where what leans would lose what holds
// its end, and where bars would turn away from a re-entrant edge.
struct TakeOutBay {
    std::string frame;
    std::string bay;
    bool with_bars = false;
};

// ---- surveys ------------------------------------------------------------------------------------
// They leave ordinary dimensions and an obstacle behind.

// A wheel well as the tape measured it: "NAME length", "NAME height" and so on become dimensions,
// where they are plain values, and the obstacle's formulas use them.
struct SurveyWheelWell {
    std::string obstacle;
    Sense inside = Sense::plus;  // plus: it stands at the wall at smaller X
    Formula wall = "0";          // X of that wall, at the floor
    Formula datum = "0";         // Y from which `start` is measured
    Formula floor = "0";         // Z
    Formula start;               // from the datum to its near end
    Formula length;              // along Y
    Formula height;
    Formula reach;           // from the wall, at the floor
    Formula lean = "0";      // angle of its inner side
    Formula rounding = "0";  // radius of its top edges
    Formula corner = "0";    // radius of its upright edges
    std::string note;
};

// A wall measured from a plumb line at some heights.
struct SurveyWall {
    struct Reading {
        Formula height;
        Formula to_wall;  // level, from the line

        bool operator==(const Reading&) const = default;
    };

    std::string obstacle;
    Sense inside = Sense::plus;  // the side of the wall on which the room, and the line, is
    Formula line;                // X of the plumb line
    Formula from = "0";          // along Y
    Formula to;
    std::vector<Reading> readings;  // the lowest is the wall's foot
    std::string note;
};

// Takes out of a frame what an obstacle and its clearance take up, and frames the outline of
// what remains: posts and rails with their heels outside, in re-entrant edges with their roots
// on the line. The new planes stand on dimensions, so that moving the obstacle or the frame
// moves the step. For a box, a wheel well or a cylinder. Refused where a diagonal, a leaning
// member, a panel or a load is in the way, where nothing or a frame in two parts would remain,
// and where a new plane would lie nearer than `apart` to another one. What the frame's stock and
// fasteners want of `apart` and `standing` is told by model/room/fit_step.h.
struct StepOver {
    std::string frame;
    std::string obstacle;
    Formula clearance;  // becomes the obstacle's; empty: its own or the shop's
    Formula apart;      // empty: 3 1/2 in, which serves legs of 1 1/2 in
    // By how much heads and tails stand out from the faces that look at the obstacle: the planes
    // keep so much more than the clearance. Becomes a dimension of the frame's, which grows where
    // a later step wants more; empty: as an earlier step has it, or nothing.
    Formula standing;
};

// All of them; a plain list of types.
template <class... Kinds>
struct EditKinds {
    template <class Kind>
    static constexpr bool has = (std::is_same_v<Kind, Kinds> || ...);
};

using AllEdits = EditKinds<SetTitle,
                           SetShown,
                           SetShop,
                           PutDimension,
                           SetFormula,
                           RemoveDimension,
                           PutStock,
                           RemoveStock,
                           KeepBars,
                           PutSupplier,
                           RemoveSupplier,
                           NotePurchase,
                           TakePurchaseBack,
                           PutObstacle,
                           RemoveObstacle,
                           PutFrame,
                           PlaceFrame,
                           SetFrameRecipe,
                           RemoveFrame,
                           PutPlane,
                           SetPlanePosition,
                           RemovePlane,
                           PutBay,
                           RemoveBay,
                           PutMember,
                           RemoveMember,
                           SetMemberStock,
                           PutDiagonal,
                           RemoveDiagonal,
                           PutLeaning,
                           RemoveLeaning,
                           PutJoint,
                           RemoveJoint,
                           PutPanel,
                           RemovePanel,
                           PutVents,
                           PutLoad,
                           RemoveLoad,
                           PutOpening,
                           RemoveOpening,
                           StartBoxFrame,
                           StartSteppedFrame,
                           FlipLegs,
                           TurnEndForEnd,
                           SplitMember,
                           JoinMembers,
                           MirrorBars,
                           RepeatBay,
                           CopyFrame,
                           TakeOutPlane,
                           TakeOutBay,
                           SurveyWheelWell,
                           SurveyWall,
                           StepOver>;

struct OneOfAllEdits;  // a variant of them: model/project/edit_kinds.h

// One edit of any kind. What holds it is told by edit_value.cpp alone: hundreds of files hand
// edits on, and each would work out fifty kinds anew.
class Edit {
public:
    template <class Kind>
    requires(AllEdits::has<Kind>) Edit(Kind kind);  // not explicit: an edit is any of its kinds

    // None where it is of another kind.
    template <class Kind>
    requires(AllEdits::has<Kind>) const Kind* get_if() const;

    const OneOfAllEdits& one() const { return *one_; }

private:
    std::shared_ptr<const OneOfAllEdits> one_;  // never none
};

// The only way a project changes. An Error leaves nothing half done. Formulas are checked for
// being readable, not for their value: what they give is resolve's business.
engine::Result<Project> apply(Project before, const Edit& edit);

// What the user did, for the undo list: "Change depth", "Add member mid post".
std::string label_of(const Edit& edit);

}  // namespace model
