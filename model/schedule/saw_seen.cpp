#include "model/schedule/saw_seen.h"

#include "model/schedule/end_words.h"

#include <algorithm>
#include <cstdlib>
#include <map>

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

    // Takes the first that the cut can be; first of its mark, then of any.
    Index take(const BarCut& cut, Nm length) {
        for (const bool wants_mark : {true, false}) {
            const auto found = std::ranges::find_if(left_, [&](Index i) {
                const Piece& piece = resolved_.pieces[i];
                if (std::abs(piece.length - length) > same_cut) return false;
                if (wants_mark != (mark_of(piece) == cut.mark)) return false;
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
        for (const auto& cut : bar.cuts) as.cuts.push_back({.length = read(cut.length)});
    }
}

// Where each cut lies, those that are made first. A planned one for which there is nothing to be
// made, or no room, takes none, and its piece is free again.
void lay_out(const Resolved& resolved,
             const BarAtSaw& bar,
             BarSeen& seen,
             std::vector<Index>& planned) {
    const Nm end = seen.length - resolved.shop.end_trim;
    seen.next_start = resolved.shop.end_trim;
    const auto lay = [&](CutSeen& cut) {
        cut.start = seen.next_start;
        seen.next_start += cut.length + resolved.shop.kerf;
    };
    for (std::size_t i = 0; i < bar.cuts.size(); ++i) {
        if (bar.cuts[i].state != CutState::planned) lay(seen.cuts[i]);
    }
    for (std::size_t i = 0; i < bar.cuts.size(); ++i) {
        auto& cut = seen.cuts[i];
        if (bar.cuts[i].state != CutState::planned || cut.piece == no_index) continue;
        if (!bar.is_used_up && seen.next_start + cut.length <= end) {
            lay(cut);
            continue;
        }
        std::erase(planned, cut.piece);
        cut.piece = no_index;
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
        lay_out(resolved, at_saw[bar], seen.bars[bar], seen.planned);
    }
    return seen;
}

}  // namespace model
