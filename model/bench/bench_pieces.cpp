#include "model/bench/bench.h"
#include "model/bench/bench_state.h"
#include "model/bench/blank_words.h"
#include "model/bench/cuts_held.h"
#include "model/bench/saw_cuts.h"
#include "model/schedule/piece_words.h"

#include <algorithm>
#include <set>
#include <tuple>

namespace model {
namespace {

WorkState state_of(bool is_needed, bool is_done) {
    if (is_done) return WorkState::done;
    return is_needed ? WorkState::open : WorkState::not_needed;
}

void set_states(const Piece& piece, bool is_fastened, const PieceTicks* ticks, BenchPiece& row) {
    for (const auto work : bench_works) {
        const bool is_done = ticks != nullptr && ticks->is_done(work);
        row.states[static_cast<std::size_t>(work)] =
            state_of(is_needed(piece, is_fastened, work), is_done);
    }
}

BenchWork begin_of(const BlankFit& fit) {
    if (fit.is_cut()) return BenchWork::cut;
    return fit.is_drilled() ? BenchWork::drill : BenchWork::deburr;
}

void set_verdict(const Project& project,
                 const Catalogue& catalogue,
                 const Resolved& resolved,
                 const PieceTicks& ticks,
                 BenchPiece& row) {
    const auto seen = seen_piece(project, catalogue, resolved, row.piece, ticks);
    row.verdict = seen.verdict;
    row.rework_begins = begin_of(seen.fit);
    row.what = words_of_fit(project, catalogue, resolved, row.piece, seen.wanted, seen.fit);
    const bool is_set = ticks.is_done(BenchWork::set);
    if (!is_set || row.what.empty()) return;
    if (seen.verdict == BenchVerdict::rework) {
        row.what.insert(row.what.begin(),
                        "it is set: take its fasteners out first, rivets by "
                        "drilling");
    } else {
        row.what.emplace_back("it is set: its rivets must be drilled out to take it off");
    }
}

// In the order of the pieces.
void set_cut_at_saw(const Project& project,
                    const Catalogue& catalogue,
                    const Resolved& resolved,
                    std::vector<BenchPiece>& rows) {
    const auto is_cut = cut_at_saw(project, catalogue, resolved, rows);
    for (std::size_t i = 0; i < rows.size(); ++i) {
        auto& row = rows[i];
        row.is_cut_at_saw = is_cut[i];
        if (!row.is_cut_at_saw) continue;
        row.states[static_cast<std::size_t>(BenchWork::cut)] = WorkState::done;
        if (row.verdict == BenchVerdict::nothing_done) row.verdict = BenchVerdict::still_right;
    }
}

void set_cuts_held(const Project& project,
                   const Catalogue& catalogue,
                   const Resolved& resolved,
                   const BenchTicks& ticks,
                   std::vector<BenchPiece>& rows) {
    const auto held = cuts_held(project, catalogue, resolved, ticks);
    for (auto& row : rows) {
        const auto* of_piece = ticks_of(ticks, row.name);
        if (of_piece == nullptr) continue;
        const auto& cut = held[static_cast<std::size_t>(of_piece - ticks.pieces.data())];
        if (!cut) continue;
        row.cut = cut->place;
        row.is_cut_as_before = cut->is_as_before;
    }
}

auto order_of(const Resolved& resolved, const BenchPiece& row) {
    const auto& piece = resolved.pieces[row.piece];
    return std::tuple(piece.mark, piece.hand, piece.frame, row.piece);
}

}  // namespace

std::string BenchPiece::sentence() const {
    std::string text;
    for (const auto& part : what) {
        if (!text.empty()) text += "; ";
        text += part;
    }
    return text;
}

std::vector<bool> fastened_pieces(const Resolved& resolved) {
    std::vector<bool> is_fastened(resolved.pieces.size(), false);
    for (const auto& fastener : resolved.fasteners) {
        for (std::uint8_t i = 0; i < fastener.stack_count; ++i) {
            const Index piece = fastener.stack[i].piece;
            if (piece < is_fastened.size()) is_fastened[piece] = true;
        }
    }
    return is_fastened;
}

bool is_needed(const Piece& piece, bool is_fastened, BenchWork work) {
    if (work == BenchWork::drill) return piece.hole_count > 0;
    return work != BenchWork::set || is_fastened;
}

SeenPiece seen_piece(const Project& project,
                     const Catalogue& catalogue,
                     const Resolved& resolved,
                     Index piece,
                     const PieceTicks& ticks) {
    SeenPiece seen{.wanted = made_as_resolved(project, catalogue, resolved, piece)};
    seen.fit = blank_fit(catalogue, ticks.made, seen.wanted, ticks.is_done(BenchWork::drill));
    if (!seen.fit.faults.empty()) {
        seen.verdict = BenchVerdict::spoiled;
    } else {
        seen.verdict = seen.fit.is_right() ? BenchVerdict::still_right : BenchVerdict::rework;
    }
    return seen;
}

const PieceTicks* ticks_of(const BenchTicks& ticks, const PieceName& name) {
    const auto found = std::ranges::lower_bound(ticks.pieces, name, {}, &PieceTicks::piece);
    return found != ticks.pieces.end() && found->piece == name ? &*found : nullptr;
}

std::vector<BenchPiece> bench_pieces(const Project& project,
                                     const Catalogue& catalogue,
                                     const Resolved& resolved,
                                     const BenchTicks& ticks) {
    const PieceWords words{project, catalogue, resolved};
    const auto names = piece_names(project, resolved);
    const auto is_fastened = fastened_pieces(resolved);
    std::vector<BenchPiece> rows;
    rows.reserve(resolved.pieces.size());
    for (Index i = 0; i < resolved.pieces.size(); ++i) {
        const auto& piece = resolved.pieces[i];
        auto& row = rows.emplace_back();
        row.piece = i;
        row.name = names[i];
        row.words = words.member(i);
        row.hand = piece.hand;
        if (piece.mark < resolved.marks.size()) row.mark = resolved.marks[piece.mark].name;
        const auto* of_piece = ticks_of(ticks, names[i]);
        set_states(piece, is_fastened[i], of_piece, row);
        if (of_piece != nullptr) set_verdict(project, catalogue, resolved, *of_piece, row);
    }
    set_cut_at_saw(project, catalogue, resolved, rows);
    set_cuts_held(project, catalogue, resolved, ticks, rows);
    std::ranges::sort(rows, {}, [&](const BenchPiece& row) { return order_of(resolved, row); });
    return rows;
}

std::vector<PieceTicks> left_over(const Project& project,
                                  const Resolved& resolved,
                                  const BenchTicks& ticks) {
    const auto names = piece_names(project, resolved);
    const std::set<PieceName> present(names.begin(), names.end());
    std::vector<PieceTicks> left;
    std::ranges::copy_if(ticks.pieces, std::back_inserter(left),
                         [&](const PieceTicks& each) { return !present.contains(each.piece); });
    return left;
}

std::optional<BenchWork> next_work(const BenchPiece& piece) {
    if (piece.verdict == BenchVerdict::spoiled) return BenchWork::cut;
    if (piece.verdict == BenchVerdict::rework) return piece.rework_begins;
    const auto open = std::ranges::find_if(
        bench_works, [&](BenchWork work) { return piece.state(work) == WorkState::open; });
    if (open == bench_works.end()) return std::nullopt;
    return *open;
}

std::optional<BenchWork> needed_before(const BenchPiece& piece, BenchWork work) {
    const auto lacks = [&](BenchWork earlier) {
        return earlier < work && piece.state(earlier) == WorkState::open;
    };
    if (lacks(BenchWork::cut)) return BenchWork::cut;
    if (work == BenchWork::set && lacks(BenchWork::drill)) return BenchWork::drill;
    return std::nullopt;
}

std::string words_of_none_ready(const std::vector<BenchPiece>& pieces,
                                BenchWork work,
                                std::optional<std::size_t> at) {
    const std::string done(done_name_of(work));
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        const auto& piece = pieces[i];
        const auto next = next_work(piece);
        if (i == at || piece.state(work) != WorkState::open || !next || *next == work) continue;
        return "no other piece is ready to be " + done + ": " + std::string(name_of(*next)) + " " +
               piece.mark + ", " + piece.words + ", first";
    }
    const bool is_in_hand = at && *at < pieces.size() && next_work(pieces[*at]) == work;
    return is_in_hand ? "no other piece is to be " + done : "every piece is " + done;
}

std::optional<std::size_t> next_piece(const std::vector<BenchPiece>& pieces,
                                      BenchWork work,
                                      std::optional<std::size_t> from,
                                      Seek seek) {
    const std::size_t count = pieces.size();
    const bool is_forward = seek == Seek::forward;
    // One before the first to be looked at, in the way of seeking.
    const std::size_t before = from && *from < count ? *from : (is_forward ? count - 1 : 0);
    for (std::size_t step = 1; step <= count; ++step) {
        const std::size_t at = (before + (is_forward ? step : count - step)) % count;
        if (next_work(pieces[at]) == work) return at;
    }
    return std::nullopt;
}

}  // namespace model
