// What a maker has done to each single piece, kept beside the project, and what that means after
// later edits: still right, to be reworked, or spoiled.
#pragma once

#include "engine/result.h"
#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"
#include "model/schedule/bar_work.h"

#include <array>
#include <compare>
#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace model {

// ---- work ---------------------------------------------------------------------------------------

// In the order in which it is done to a piece. `set`: its fasteners are set.
enum class BenchWork { cut, deburr, drill, fit, set };

inline constexpr std::size_t bench_work_count = 5;
inline constexpr std::array<BenchWork, bench_work_count> bench_works{
    BenchWork::cut, BenchWork::deburr, BenchWork::drill, BenchWork::fit, BenchWork::set};

std::string_view name_of(BenchWork work);       // "cut", "deburr", "drill", "fit", "set"
std::string_view done_name_of(BenchWork work);  // "cut", "deburred", "drilled", "fitted", "set"

// ---- which piece --------------------------------------------------------------------------------

// A piece by what is stated: neither dimensions nor marks change it.
struct PieceName {
    std::string frame;
    std::string kind;             // "bar", "brace", "cleat": name_of(PieceKind)
    std::vector<std::string> of;  // the member, brace, leaning member or panel; of what a recipe
                                  // makes the members that it joins; of a shim what it lies between
    int number = 1;               // the part of a member, from 1; else among those named alike

    auto operator<=>(const PieceName&) const = default;
    bool operator==(const PieceName&) const = default;
};

// As Resolved::pieces; no two are the same.
std::vector<PieceName> piece_names(const Project& project, const Resolved& resolved);

// "counter: rail front top", "counter: cleat 2 of post left and rail front top".
std::string words_of(const PieceName& name);

// ---- what was made ------------------------------------------------------------------------------

struct MadeEnd {
    std::array<std::int64_t, 2> slope{};  // as PieceEnd::slope, in thousand-millionths
    std::array<Nm, 4> wall_back{};        // as PieceEnd::wall_back

    bool operator==(const MadeEnd&) const = default;
};

// As Hole, by the piece's reading at the time.
struct MadeHole {
    std::uint8_t wall = 0;
    Nm from_datum = 0;
    Nm gauge = 0;
    Nm diameter = 0;
    HoleOperation operation = HoleOperation::drill;
    std::string tap;            // id of the screw whose thread is cut in it; empty: none
    bool is_left_open = false;  // wanted no more, and the maker has seen to it

    bool operator==(const MadeHole&) const = default;
};

// A piece as it lies on the bench, all lengths in nanometres.
struct MadePiece {
    std::string section;  // id in the catalogue; of a part of sheet empty
    std::string alloy;    // of a panel its material
    Nm length = 0;
    Nm width = 0;                 // of a part of sheet, and its thickness; else 0
    Nm thickness = 0;             //
    bool is_right_handed = true;  // the axes by which it is read: run, section a, section b
    std::array<MadeEnd, 2> ends;  // at the datum end, at the far end
    std::string end_words;        // the same in words, as the saw tells a cut: ends_text
    Outline outline;              // of what is cut to one; else without corners
    Outline outline_far;          // of its inner face where an edge is bevelled
    std::vector<MadeHole> holes;  // all that are in it; none before it is drilled

    bool operator==(const MadePiece&) const = default;
};

// What a cut was at the saw.
struct CutBefore {
    Nm length = 0;
    std::string ends;  // ends_text

    bool operator==(const CutBefore&) const = default;
};

struct PieceTicks {
    PieceName piece;
    std::array<bool, bench_work_count> done{};  // by BenchWork; at least one is
    MadePiece made;
    std::vector<CutBefore> cut_before;  // of one that was cut anew at the bench, the last one last

    bool is_done(BenchWork work) const { return done[static_cast<std::size_t>(work)]; }
    bool operator==(const PieceTicks&) const = default;
};

struct BenchTicks {
    std::vector<PieceTicks> pieces;  // in order of name, none twice

    bool operator==(const BenchTicks&) const = default;
};

// ---- the file -----------------------------------------------------------------------------------

// "counter.bench.json" beside "counter.json".
std::filesystem::path path_of_ticks(const std::filesystem::path& project_file);

// One line for each piece. The same ticks give the same bytes.
std::string ticks_text(const BenchTicks& ticks);

// Errors (bad_file) with a JSON pointer or line and column in `where`; newer_version for a file of
// a later program. A field that is not known is refused with its place, since writing the file
// again would lose it.
engine::Result<BenchTicks> ticks_from_text(std::string_view text);

// No ticks where there is no file. Errors as above, with the file's name.
engine::Result<BenchTicks> read_ticks(const std::filesystem::path& path);

// Replaces the file whole, or leaves it as it was. Error: cannot_write.
engine::Result<engine::Done> write_ticks(const std::filesystem::path& path,
                                         const BenchTicks& ticks);

// ---- what it means now --------------------------------------------------------------------------

enum class BenchVerdict { nothing_done, still_right, rework, spoiled };

enum class WorkState { not_needed, open, done };

struct BenchPiece {
    Index piece = 0;  // in Resolved::pieces
    PieceName name;
    std::string words;  // "rail front top": PieceWords::member
    std::string mark;
    Hand hand = Hand::none;
    std::array<WorkState, bench_work_count> states{};  // by BenchWork
    bool is_cut_at_saw = false;   // by what is ticked there: done whether it is ticked here or not
    std::optional<CutPlace> cut;  // of what is ticked here: which one it was at the saw
    bool is_cut_as_before = false;  // that one is as before the bench cut it anew
    BenchVerdict verdict = BenchVerdict::nothing_done;
    // Of `rework` what is to be done, in order: "cut 1/4 in off the far end"; "drill leg a 5 1/2 in
    // from the datum end at 11/16 in, 0.1285 in". Of `spoiled` why: "1/4 in too short".
    std::vector<std::string> what;
    BenchWork rework_begins = BenchWork::cut;  // of `rework`: the first kind of work in it

    WorkState state(BenchWork work) const { return states[static_cast<std::size_t>(work)]; }
    std::string sentence() const;  // `what` with "; " between
};

// All pieces in order of mark, hand (as drawn first) and frame.
//
// A piece is compared with what was made however it is turned: end for end, legs exchanged, but
// never as its mirror image. Lengths and places that differ by no more than `same_cut` are the
// same. What is too long is cut at whichever ends leave the most of what is drilled right;
// turning it only to drill it all over again is no rework. A hole is the same one where place,
// diameter and thread are, whether it was drilled alone or with its mate.
//
// A hole that is wanted no more stays open and is deburred, where it lies whole in the piece and no
// new hole comes within two diameters of it from middle to middle: common practice, no verdict on
// strength. What is set must have its rivets drilled out before anything is reworked.
//
// What is ticked as cut at the saw is cut (see saw_cuts.h).
std::vector<BenchPiece> bench_pieces(const Project& project,
                                     const Catalogue& catalogue,
                                     const Resolved& resolved,
                                     const BenchTicks& ticks);

// The ticks whose piece is in the project no more, as they are: they are kept, and count again when
// it comes back.
std::vector<PieceTicks> left_over(const Project& project,
                                  const Resolved& resolved,
                                  const BenchTicks& ticks);

// What is to be done next to a piece: the first work that is open; of one to be reworked where that
// begins; of a spoiled one the cut, since it is made anew. None: it is finished.
std::optional<BenchWork> next_work(const BenchPiece& piece);

// The earlier work without which this one cannot be done, where it is open: nothing is done to a
// piece that is not cut, and no fastener set in one that is not drilled (common practice).
std::optional<BenchWork> needed_before(const BenchPiece& piece, BenchWork work);

// Why there is no piece whose next work this is, or none but `at`: "no other piece is ready to be
// drilled: deburr A4, post left, first"; "every piece is drilled".
std::string words_of_none_ready(const std::vector<BenchPiece>& pieces,
                                BenchWork work,
                                std::optional<std::size_t> at);

enum class Seek { forward, backward };

// The place in `pieces` of the next one after `from` whose next work is this; round the end to the
// other one, `from` itself last. Without `from` the first, or the last one seeking backward.
std::optional<std::size_t> next_piece(const std::vector<BenchPiece>& pieces,
                                      BenchWork work,
                                      std::optional<std::size_t> from,
                                      Seek seek = Seek::forward);

// ---- changes ------------------------------------------------------------------------------------

// The work is done to the piece as the project has it now. Errors (invalid_value): work that the
// piece does not need, a piece that must be reworked first or is spoiled, with the mend.
engine::Result<BenchTicks> ticked(const Project& project,
                                  const Catalogue& catalogue,
                                  const Resolved& resolved,
                                  BenchTicks ticks,
                                  Index piece,
                                  BenchWork work);

// One tick taken back; with `drill` the holes but those left open, with the last one all that was
// made.
BenchTicks taken_back(BenchTicks ticks, const PieceName& piece, BenchWork work);

// All that `bench_pieces` asks for is done: the piece is as the project has it now, with holes that
// stay open. It is then neither deburred, fitted nor set. Error (invalid_value): a piece that is
// not to be reworked.
engine::Result<BenchTicks> reworked(const Project& project,
                                    const Catalogue& catalogue,
                                    const Resolved& resolved,
                                    BenchTicks ticks,
                                    Index piece);

// A spoiled piece is put away and made anew: all its ticks are gone. Also for one left over.
BenchTicks put_away(BenchTicks ticks, const PieceName& piece);

// Frames, members, braces, leaning members and panels that were renamed from one state of the
// project to another: their ticks follow. A name counts as changed where the lists are of one size
// and differ in that place by names that the other has not; where they do so in several places,
// because more than one edit lies between, if nothing but the name differs there.
BenchTicks with_names_followed(BenchTicks ticks, const Project& before, const Project& after);

// Whether there is anything to follow, ticked or not.
bool are_names_changed(const Project& before, const Project& after);

}  // namespace model
