#include "model/schedule/saw_seen.h"

#include "model/schedule/end_words.h"

#include <algorithm>
#include <cstdlib>
#include <map>
#include <utility>

namespace model {
namespace {

// The pieces of one stock that are still without a cut.
class Unmade {
public:
    Unmade(const Project& project,
           const Catalogue& catalogue,
           const Resolved& resolved,
           Index stock)
        : project_{project}, catalogue_{catalogue}, resolved_{resolved} {
        for (Index i = 0; i < resolved.pieces.size(); ++i) {
            if (resolved.pieces[i].stock == stock) left_.push_back(i);
        }
    }

    // Takes the first that the cut can be; first of its mark and the hand that is written on it,
    // then of its mark, then of any.
    Index take(const BarCut& cut, Nm length) {
        for (const auto& [wants_mark, wants_hand] : {std::pair{true, true}, {true, false}, {}}) {
            const auto found =
                std::ranges::find_if(left_, [&, mark = wants_mark, hand = wants_hand](Index i) {
                    const Piece& piece = resolved_.pieces[i];
                    if (std::abs(piece.length - length) > same_cut) return false;
                    if (mark != (mark_of(piece) == cut.mark)) return false;
                    if (hand && cut.is_opposite != (piece.hand == Hand::opposite)) return false;
                    return ends_of(i) == cut.ends;
                });
            if (found == left_.end()) continue;
            const Index piece = *found;
            left_.erase(found);
            return piece;
        }
        return no_index;
    }

private:
    const std::string& mark_of(const Piece& piece) const {
        static const std::string none;
        return piece.mark == no_index ? none : resolved_.marks[piece.mark].name;
    }

    // Put into words once for each piece.
    const std::string& ends_of(Index piece) {
        auto& text = ends_[piece];
        if (text.empty()) {
            text = ends_text(project_, catalogue_, resolved_, resolved_.pieces[piece]);
        }
        return text;
    }

    const Project& project_;
    const Catalogue& catalogue_;
    const Resolved& resolved_;
    std::vector<Index> left_;
    std::map<Index, std::string> ends_;
};

void read_lengths(const Project& project,
                  const Resolved& resolved,
                  const std::vector<BarAtSaw>& at_saw,
                  SawSeen& seen) {
    const auto read = [&](const Formula& formula) -> Nm {
        const auto length = stated_length(project, resolved, formula);
        if (length) return *length;
        seen.refused.push_back(length.error());
        return 0;
    };
    for (const auto& bar : at_saw) {
        auto& as = seen.bars.emplace_back();
        as.length = read(bar.length);
        for (const auto& cut : bar.cuts) {
            as.cuts.push_back({.length = read(cut.length)});
            const auto& taken = formula_of_taken(cut);
            const Nm known = &taken == &cut.length ? 0 : read(taken);
            as.cuts.back().taken = known > 0 ? known : as.cuts.back().length;
        }
    }
}

bool is_still_planned(const BarCut& cut) { return cut.state == CutState::planned; }

// A planned cut for which there is nothing to be made, or no room beside those that are made, takes
// none, and its piece is free again.
void drop_without_room(const Resolved& resolved,
                       const BarAtSaw& bar,
                       BarSeen& seen,
                       std::vector<Index>& planned) {
    const Nm kerf = resolved.shop.kerf;
    Nm next = resolved.shop.end_trim;
    for (std::size_t i = 0; i < bar.cuts.size(); ++i) {
        if (!is_still_planned(bar.cuts[i])) next += seen.cuts[i].taken + kerf;
    }
    for (std::size_t i = 0; i < bar.cuts.size(); ++i) {
        auto& cut = seen.cuts[i];
        if (!is_still_planned(bar.cuts[i]) || cut.piece == no_index) continue;
        if (!bar.is_used_up && next + cut.taken <= seen.length - resolved.shop.end_trim) {
            next += cut.taken + kerf;
            continue;
        }
        std::erase(planned, cut.piece);
        cut.piece = no_index;
    }
}

// Where each cut lies: as printed, whichever is made first.
void lay_out(const Resolved& resolved, const BarAtSaw& bar, BarSeen& seen) {
    seen.next_start = resolved.shop.end_trim;
    for (std::size_t i = 0; i < bar.cuts.size(); ++i) {
        auto& cut = seen.cuts[i];
        if (is_still_planned(bar.cuts[i]) && cut.piece == no_index) continue;
        cut.start = seen.next_start;
        seen.next_start += cut.taken + resolved.shop.kerf;
    }
    if (bar.is_used_up) seen.next_start = seen.length;
}

// Whether run, section a and section b turn like the fingers of the right hand: what a mirror image
// does the other way round.
bool is_right_handed(const Piece& piece) {
    const auto run = index_of(piece.run);
    const auto a = index_of(piece.a_axis);
    const bool follows = (run + 1) % 3 == a;
    return follows == (piece.run_sense * piece.a_sense * piece.b_sense > 0);
}

}  // namespace

const Formula& formula_of_taken(const BarCut& cut) {
    // What is only planned will take what it is now.
    if (cut.state == CutState::planned) return cut.length;
    if (!cut.took.empty()) return cut.took;
    const bool is_known = cut.state == CutState::spoiled && !cut.measured.empty();
    return is_known ? cut.measured : cut.length;
}

std::string ends_text(const Project& project,
                      const Catalogue& catalogue,
                      const Resolved& resolved,
                      const Piece& piece) {
    static_cast<void>(project);
    // In one way of showing lengths, whatever the project's is.
    static const Project in_tenths{
        .shown = {.form = engine::TapeForm::millimetre, .decimals = 1, .with_unit = true}};
    const auto ends = end_words(in_tenths, catalogue, resolved, piece);
    const std::string text = ends[0] + "; " + ends[1];
    if (ends[0] == "square" && ends[1] == "square") return text;
    // Flats, channels and tubes are turned over to become their mirror image.
    if (catalogue.sections[piece.section].form != SectionForm::angle) return text;
    return text + (is_right_handed(piece) ? "; right-handed" : "; left-handed");
}

SawSeen saw_seen(const Project& project,
                 const Catalogue& catalogue,
                 const Resolved& resolved,
                 Index stock) {
    SawSeen seen;
    const auto& at_saw = project.stock[stock].at_saw;
    if (at_saw.empty()) return seen;
    read_lengths(project, resolved, at_saw, seen);
    Unmade unmade(project, catalogue, resolved, stock);
    const auto take = [&](CutState state, std::vector<Index>& pieces) {
        for (std::size_t bar = 0; bar < at_saw.size(); ++bar) {
            for (std::size_t i = 0; i < at_saw[bar].cuts.size(); ++i) {
                const auto& cut = at_saw[bar].cuts[i];
                auto& as = seen.bars[bar].cuts[i];
                if (cut.state != state || as.length == 0) continue;
                as.piece = unmade.take(cut, as.length);
                if (as.piece != no_index) pieces.push_back(as.piece);
            }
        }
        std::ranges::sort(pieces);
    };
    take(CutState::cut, seen.cut);
    take(CutState::planned, seen.planned);
    for (std::size_t bar = 0; bar < at_saw.size(); ++bar) {
        drop_without_room(resolved, at_saw[bar], seen.bars[bar], seen.planned);
        lay_out(resolved, at_saw[bar], seen.bars[bar]);
    }
    return seen;
}

}  // namespace model
