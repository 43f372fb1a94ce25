#include "model/bench/bench_findings.h"

#include "model/bench/bench_state.h"
#include "model/bench/cuts_held.h"

#include <algorithm>
#include <string>
#include <utility>
#include <variant>

namespace model {
namespace {

std::optional<CutPlace> place_of(const Finding& finding) {
    if (finding.code != "cut_piece_unused" || finding.concerns.empty()) return std::nullopt;
    const auto number = [&](const char* name) -> std::size_t {
        const auto found = std::ranges::find(finding.numbers, name, &FindingNumber::name);
        if (found == finding.numbers.end()) return 0;
        const auto* count = std::get_if<double>(&found->value);
        return count == nullptr ? 0 : static_cast<std::size_t>(*count);
    };
    const auto bar = number("bar");
    const auto cut = number("cut");
    if (bar == 0 || cut == 0) return std::nullopt;
    return CutPlace{finding.concerns.front().name, bar - 1, cut - 1};
}

// The longest part along the piece that no hole touches.
Nm longest_undrilled(const MadePiece& made) {
    std::vector<std::pair<Nm, Nm>> holes;
    for (const auto& hole : made.holes) {
        holes.emplace_back(hole.from_datum - hole.diameter / 2,
                           hole.from_datum + hole.diameter / 2);
    }
    std::ranges::sort(holes);
    Nm longest = 0;
    Nm free_from = 0;
    for (const auto& [begin, end] : holes) {
        longest = std::max(longest, begin - free_from);
        free_from = std::max(free_from, end);
    }
    return std::max(longest, made.length - free_from);
}

void tell_holes(const Project& project, const PieceTicks& ticks, Finding& finding) {
    if (ticks.made.holes.empty()) return;
    const auto undrilled = engine::Length::from_nm(std::max<Nm>(longest_undrilled(ticks.made), 0));
    finding.what += "; the bench has drilled it, and no more than " +
                    length_in_words(undrilled, project.shown) + " of it has no holes";
    finding.numbers.push_back({"undrilled", undrilled});
}

void tell_rework(const BenchPiece& piece, Finding& finding) {
    finding.what += " as it is; but the bench can rework it into " + piece.mark + ", " +
                    words_of(piece.name) + ": " + piece.sentence();
    finding.mend = "rework it, and say so under Make > Bench: \"It is reworked\"; or " +
                   std::move(finding.mend);
}

// The bench has cut it anew, and the saw does not know of that: the step was undone.
void tell_reworked(const BenchPiece& piece, Finding& finding) {
    finding.what += "; the bench has made " + piece.mark + " of it, " + words_of(piece.name);
    finding.mend = "say so at the saw: \"Tell the saw\", under Make > Saw";
}

}  // namespace

void tell_of_bench(const Project& project,
                   const Catalogue& catalogue,
                   const Resolved& resolved,
                   const BenchTicks& ticks,
                   std::vector<Finding>& findings) {
    const bool is_concerned = std::ranges::any_of(
        findings, [](const Finding& finding) { return place_of(finding).has_value(); });
    if (!is_concerned || ticks.pieces.empty()) return;
    const auto held = cuts_held(project, catalogue, resolved, ticks);
    const auto pieces = bench_pieces(project, catalogue, resolved, ticks);
    for (auto& finding : findings) {
        const auto place = place_of(finding);
        if (!place) continue;
        const auto at = std::ranges::find_if(
            held, [&](const auto& cut) { return cut && cut->place == *place; });
        if (at == held.end()) continue;
        const auto& of = ticks.pieces[static_cast<std::size_t>(at - held.begin())];
        const auto piece = std::ranges::find(pieces, of.piece, &BenchPiece::name);
        const bool is_there = piece != pieces.end();
        if (is_there && (*at)->is_as_before && is_told_at_saw(*piece)) {
            tell_reworked(*piece, finding);
            continue;
        }
        if (is_there && piece->verdict == BenchVerdict::rework) tell_rework(*piece, finding);
        tell_holes(project, of, finding);
    }
}

}  // namespace model
