#include "editor/bench_saw.h"

#include "editor/bench_desk.h"

#include <algorithm>

namespace editor {
namespace {

using model::CutState;

// "bar 2", "bars 2, 5": in which pieces like that one are cut, or to be.
std::string bar_words(const BenchDesk& bench,
                      model::Index piece,
                      CutState state,
                      const Derived& derived) {
    std::string numbers;
    bool are_many = false;
    for (const auto& bar : derived.saw) {
        const bool has_it = std::ranges::any_of(bar.cuts, [&](const model::SawCut& cut) {
            return cut.state == state && cut.piece < bench.alike.size() &&
                   bench.alike[cut.piece] == bench.alike[piece];
        });
        if (!has_it) continue;
        are_many = !numbers.empty();
        numbers += (are_many ? ", " : "") + std::to_string(bar.number);
    }
    if (numbers.empty()) return {};
    return (are_many ? ", bars " : ", bar ") + numbers;
}

}  // namespace

std::vector<model::SawTick> cuts_to_tick(BenchDesk* bench,
                                         const Derived& derived,
                                         const model::Catalogue& catalogue) {
    if (bench == nullptr || bench->ticks.pieces.empty()) return {};
    work_out(*bench, derived, catalogue);
    return model::cuts_to_tick(derived.saw, bench->alike, bench->pieces);
}

std::string saw_words(const BenchDesk& bench,
                      const model::BenchPiece& piece,
                      const Derived& derived) {
    if (piece.piece >= bench.alike.size() || bench.alike[piece.piece] == model::no_index) return {};
    if (piece.is_cut_at_saw)
        return "Ticked at the saw" + bar_words(bench, piece.piece, CutState::cut, derived);
    if (piece.state(model::BenchWork::cut) != model::WorkState::done) return {};
    const auto bars = bar_words(bench, piece.piece, CutState::planned, derived);
    if (bars.empty()) return {};
    return "The saw still has it to cut" + bars +
           ": \"Tick what the bench has cut\", at the saw, ticks it there too";
}

}  // namespace editor
