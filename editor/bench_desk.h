// What has been ticked at the bench, kept in a file beside the project, and the pieces as they are
// now.
#pragma once

#include "editor/change.h"
#include "editor/derived.h"
#include "editor/selection.h"
#include "model/bench/bench.h"

#include <filesystem>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace editor {

struct Desk;

struct BenchDesk {
    std::filesystem::path project_file;  // beside which the ticks lie; empty: not saved yet
    std::filesystem::path awaited;       // the project's file, where they could not go along yet
    model::BenchTicks ticks;
    // States of the project between which names were followed, and which the project's file does
    // not have yet: the ticks in theirs bear the names of the project in its file.
    std::vector<std::pair<Snapshot, Snapshot>> renamed;
    std::string trouble;           // why the file cannot be used: nothing is ticked then
    std::string refused;           // why the last tick was not made
    std::string said;              // what the last key did besides, or why it went nowhere
    std::optional<Change> at_saw;  // what the saw is to know of what was done here
    Snapshot of;                   // whose pieces these are
    bool is_stale = true;          // the pieces, by other ticks
    std::size_t state = 1;         // another one with each change of the ticks
    std::vector<model::BenchPiece> pieces;
    std::vector<model::Index> alike;  // by piece of the project: model::alike_at_saw
    std::vector<model::PieceTicks> left_over;
    model::BenchWork work = model::BenchWork::cut;  // that is gone through
    std::optional<std::size_t> at;                  // in `pieces`: the one in hand
};

// Once in each frame: reads the ticks of a project that was opened, takes them along where it was
// saved under another name, and lets them follow what is renamed. Works nothing out.
void tend_bench(Desk& desk);

// The pieces as they are now, the one in hand among them.
void work_out(BenchDesk& bench, const Derived& derived, const model::Catalogue& catalogue);

// So many pieces on, or back, among those whose next work this is.
void seek(BenchDesk& bench, int by);

// Other work is gone through, from the first piece that is ready for it.
void take_up(BenchDesk& bench, model::BenchWork work);

// One piece on, or back, of those that need this work, done or not: what is done can be taken back.
void turn_to_next(BenchDesk& bench, int by);

// Each writes the file, or says in `refused` why nothing was done. With a tick the next piece is
// taken in hand; where there is none, that is said. What is cut by the saw's ticks alone is ticked
// as cut here too with further work on it, and when another one that looks alike is cut here.
void tick(BenchDesk& bench, const Derived& derived, const model::Catalogue& catalogue);
// What is ticked as cut at the saw stays cut, and is told to be taken back there.
void take_back(BenchDesk& bench, const Derived& derived);
// The cut that it was at the saw becomes one of the new length: `at_saw`.
void note_reworked(BenchDesk& bench, const Derived& derived, const model::Catalogue& catalogue);
// The spoiled one in hand; the cut that it was at the saw counts as spoiled: `at_saw`.
void put_in_hand_away(BenchDesk& bench, const Derived& derived);
void put_away(BenchDesk& bench, const model::PieceName& piece);
// What was reworked here and stands at the saw as it was before: `at_saw`.
void tell_saw(BenchDesk& bench, const Derived& derived, const model::Catalogue& catalogue);

// How many pieces need that work, and how many have it behind them.
struct WorkCount {
    std::size_t needed = 0;
    std::size_t done = 0;
};
WorkCount count_of(const BenchDesk& bench, model::BenchWork work);

}  // namespace editor
