#include "model/schedule/how_to_read.h"

#include <algorithm>

namespace model {
namespace {

std::string state_of(const std::vector<Finding>& findings) {
    const auto errors = std::ranges::count(findings, Severity::error, &Finding::severity);
    if (errors == 0) return "Read findings.csv before you cut.\n";
    return "NOT FIT TO CUT FROM: findings.csv names " + std::to_string(errors) +
           (errors == 1 ? " thing that is" : " things that are") + " wrong. Mend these first.\n";
}

// How pieces are laid and measured follows DrillRow; the cautions are common practice.
constexpr const char* sheet = R"(
CUT (cut.csv, bars.csv)
  Square off the end of each bar first. bars.csv says which pieces come out of which bar and in
  what order; cut.csv says how many there are of each mark. Write the mark and the hand on every
  piece before it leaves the saw, and mark its datum end.
  Pieces of one mark are alike; "opposite" is the mirror image of "as drawn".
  "kind": a bar is a member or part of one; a brace is a diagonal; a leaning member is angle that
  leans; a cleat is a short angle in a corner; a strap is a flat bar across a joint; a backing lies
  behind a splice; a foot is what is fixed to floor or wall; a shim fills a gap; a gusset is a plate
  over a joint; a panel is sheet.
  Shims, gussets and panels are cut from sheet: they have a width too.
  "length" runs from long point to long point. "end_a" is the datum end, "end_b" the other one.
  "mitre 45 deg across leg a, long point at the heel": turn the saw 45 degrees off square, so that
  the line runs across leg a and the heel is left longest.
  "leg a notched back 1 in": cut that leg alone back from the end, with its corner left round, and
  leave the root and the other leg whole.
  "to its outline": pieces.json has the corners; the window shows the piece laid flat.

SHEET (sheet.csv)
  Each line is one mark of a panel, a gusset or a shim. "width" and "length" are those of the least
  rectangle that holds it; "see drawing": it is none itself. "corners" then has its corners in
  turn, " / " between two: how far along the length from the datum end, and how far across from the
  heel edge. "cut_outs_at" has those of each opening, "; " between two openings.
  "opening_1" and "opening_2", of a door or a drawer front: the clear way between the members, along
  x, y, z in that order. "weight" is that of one.
  A panel is the pattern: drill it first, clamp it in its place, then match-drill the members.
  A "clearance" hole in a panel is room for the head or the tail of the rivet that lies under it.
  Cut edges of sheet are as sharp as a knife and chips fly: wear gloves to carry it, never near a
  turning drill or saw; wear glasses; break all edges and round the corners. Clamp sheet before you
  drill it: it catches and spins. Dust of plywood and board harms the lungs: wear a mask. In wood a
  rivet with a large flange holds better: common practice.
  Nothing here says that a vent is large enough for gas, heat or batteries: follow the instructions
  of the appliance's maker and the local code. Openings that the window has sized are named
  "intake": they let in what the exhaust that was stated lets out, unless they were changed since,
  and are meant for nothing else.

DRILL (drill.csv)
  Each line is one hole of a mark and hand; "pieces" says how many pieces have it, as many as
  cut.csv has of them. The lines stand in working order: change drill and fence only when the line
  does.
  1. Set the fence to "gauge": from the fence to the middle of the drill.
  2. Lay the leg that the line names flat on its outer face, heel against the fence, so that the
     other leg stands up along the fence, away from you.
  3. "datum_end" says at which hand the end lies that you measure from.
  4. "from_datum" is measured from that end to the middle of the hole.
  For the opposite hand all numbers are the same; only the datum end lies at the other hand.
  "setup" is only a serial number of the fence's settings: the same number, the same "gauge".
  "diameter_in" and "diameter_mm" are those of the hole; of a tap line, those of its thread.
  "~" in front of a length: the exact one, in mm beside it, does not lie on a mark of the tape.
  "match-drill": do not drill it by measure. Pin the piece to its mate, which is drilled already,
  and drill through the mate's hole.
  Where the line names a smaller drill than the mate's hole, start with the drill that fits the
  mate's hole, only until its point has cut; take the parts apart and drill on with the named one.
  "mates_with" names the marks that the hole meets; "the van": the piece is fixed there through it.
  A hole for a screw is drilled in one operation and tapped in another:
  "clearance" lets the screw through the plate under its head; "tap drill" is the hole that the
  thread is cut in; "tap" cuts the thread. Tap lines come last and have the number of their hole.

TAP (the tap lines of drill.csv)
  Deburr or lightly countersink both sides first, so that the first thread starts clean.
  Start the tap dead square: clamp the part, and let a block with a hole or the chuck of the
  unplugged drill press guide the tap while you turn it by hand.
  Use a cutting oil or wax meant for aluminium. Turn half a turn on, a quarter back, to break the
  chip; do not force it: a tap that binds is about to break, and a broken tap ruins the part.
  Do not tap under power on a drill press that cannot reverse. Brush the chips out, never wipe
  them off with a finger, and run the screw through once before you join the parts.

JOIN (assembly.csv, fasteners.csv)
  assembly.csv has a line for each thing to do, in the order of the work. "step" is counted within
  each "frame", as in the book and in the window. "builds" says what is put together: "part 1" and so
  on lie flat on the bench first and are moved on as wholes, "the frame" is the rest. "from" is the
  side that a piece comes from, as you stand before the frame, "datum_side" the side of the frame at
  which its datum end then lies, flat on the bench too: two ends that look alike are told apart by
  it. "joint" numbers the joints of a frame in the order in which they are set: a joint has the same
  number where it is pinned and where it is set, also where the same marks meet elsewhere. Pin a
  joint as soon as its pieces are together; set it when its line comes, since later the tool may not
  reach it.
  "long nose": only the nose of the tool has room there, not its housing.
  "put on loose": the piece is laid in its place and nothing holds it yet; a clamp or a strap keeps
  it there. Its note says in which step it is held: "loose until step 5"; "loose": in none.
  Dry-fit what a step puts together with temporary sheet pins, which come out again as its rivets go
  in: fasteners.csv counts as many as are in at once. Make it square: the diagonals of a face are
  equal, and as long as square.csv says, from outside corner to outside corner; push on the ends of
  the longer one. Then set the fasteners, opposite corners first, as assembly.csv has them. "grip" is
  the range of thickness that a rivet holds.
  "hold": what one person alone cannot hold, and how to do it. "from heel to heel": a diagonal of
  bars inside of a frame, from where the heels of two of them cross to where those opposite do.
  "square": no diagonal proves that joint; hold a try square into it before you set it.
  Joints with screws come apart: use their own screws in the dry fit. A tapped hole is always in the
  plate away from the head. Set rivet nuts into their plate first, with their own setting tool.
  A pan head over its clearance hole needs no washer, so none are counted.
  Tighten screws in tapped aluminium by hand with a short driver, never with a power tool, and keep
  screws and nuts from shaking loose with thread-locking fluid for parts that come apart.

FIX (feet)
  A foot has one hole that no rivet goes through: "the van" in drill.csv. It takes the screw or bolt
  that holds the frame to floor or wall; none are counted, since what lies there decides which.
  Set the frame in its place, mark through the feet, and find out what lies behind every mark before
  you drill, from below or inside too: wiring, fuel, gas and brake lines, tanks, airbags. Where you
  cannot see it, do not drill. Keep the drill from running through with a stop, and seal bare metal.
  How a frame is anchored so that it holds in a crash is for those who are licensed for it.

TAKE CARE
  Eye protection on for sawing, drilling and riveting: chips and mandrels fly.
  Clamp the bar before the saw or the drill comes down; keep gloves and sleeves off turning tools.
  Deburr both faces of every hole and every cut end: edges of sheet and bar cut hands.
  Sweep chips up; do not breathe the dust or blow it about.
  Before you drill into the van know what lies behind: wiring, fuel, brake and gas lines, tanks,
  airbags. Leave gas, mains wiring, seats and belts to those who are licensed for them.
  A cabinet is thrown forward when the van brakes. These files say where holes go, not that the
  cabinet will hold: local codes and your own judgement decide.
)";

}  // namespace

std::string how_to_read(const Project& project, const std::vector<Finding>& findings) {
    return "How to work from these files: " + project.name + "\n\n" + state_of(findings) + sheet;
}

}  // namespace model
