#include "model/schedule/bar_work.h"

#include "engine/measure/formula.h"
#include "model/schedule/rack.h"
#include "model/schedule/saw_seen.h"
#include "model/schedule/shared_halves.h"

#include <algorithm>

namespace model {
namespace {

// As a length is typed: exactly, in inches where that is short, else in millimetres.
Formula formula_of(const Project& project, Nm length) {
    return length_in_words(engine::Length::from_nm(length), project.shown);
}

// Of what can be bought or lies there, the text that was typed for it.
class Texts {
public:
    Texts(const Project& project, const Resolved& resolved, const Stock& stock)
        : project_{project}, resolved_{resolved} {
        for (const auto& it : stock.bars) add(it.length);
        for (const auto& it : stock.at_home) add(it.length);
        for (const auto& it : stock.offcuts) add(it.length);
    }

    Formula of(Nm length) const {
        const auto found = std::ranges::find(known_, length, &Known::length);
        return found == known_.end() ? formula_of(project_, length) : found->text;
    }

private:
    struct Known {
        Nm length = 0;
        Formula text;
    };

    void add(const Formula& text) {
        // What lies there does not change its length with a dimension.
        if (!engine::names_in(text).empty()) return;
        if (const auto length = stated_length(project_, resolved_, text)) {
            known_.push_back({*length, text});
        }
    }

    const Project& project_;
    const Resolved& resolved_;
    std::vector<Known> known_;
};

BarCut planned_cut(const Project& project,
                   const Catalogue& catalogue,
                   const Resolved& resolved,
                   Index piece_index) {
    const auto& piece = resolved.pieces[piece_index];
    return {.length = formula_of(project, piece.length),
            .ends = ends_text(project, catalogue, resolved, piece),
            .mark = piece.mark == no_index ? std::string() : resolved.marks[piece.mark].name,
            .is_opposite = piece.hand == Hand::opposite};
}

bool has_made(const BarAtSaw& bar) {
    return std::ranges::any_of(bar.cuts,
                               [](const BarCut& cut) { return cut.state != CutState::planned; });
}

bool is_planned(const BarCut& cut) { return cut.state == CutState::planned; }

// A cut that was planned and is of no use any more is none.
bool is_cut_up(const BarAtSaw& bar, const BarSeen& seen) {
    if (bar.is_used_up || bar.cuts.empty()) return false;
    for (std::size_t i = 0; i < bar.cuts.size(); ++i) {
        if (is_planned(bar.cuts[i]) && seen.cuts[i].piece != no_index) return false;
    }
    return true;
}

}  // namespace

bool has_planned_cuts(const Project& project) {
    return std::ranges::any_of(project.stock, [](const Stock& stock) {
        return std::ranges::any_of(stock.at_saw, [](const BarAtSaw& bar) {
            return std::ranges::any_of(bar.cuts, is_planned);
        });
    });
}

std::vector<Edit> bars_bought(const Project& project,
                              const Catalogue& catalogue,
                              const Resolved& resolved,
                              const std::vector<BarPlan>& plans) {
    std::vector<Edit> edits;
    const auto odd = odd_halves(project, halves_to_buy(plans));
    for (const auto& plan : plans) {
        const auto& stock = project.stock[plan.stock];
        auto now = bars_kept(stock, "Buy the bars of " + stock.name);
        const Texts texts(project, resolved, stock);
        const auto seen = saw_seen(project, catalogue, resolved, plan.stock);
        for (const auto& bar : plan.bars) {
            if (bar.cuts.empty()) continue;
            const bool was_there = bar.from == BarFrom::saw;
            if (!was_there) {
                auto& lying = bar.from == BarFrom::offcut ? now.offcuts : now.at_home;
                if (bar.from != BarFrom::shop) take_one(project, resolved, lying, bar.length);
                now.at_saw.push_back(
                    {.length = texts.of(bar.length), .was_offcut = bar.from == BarFrom::offcut});
            }
            auto& at_saw = was_there ? now.at_saw[bar.at_saw] : now.at_saw.back();
            for (const auto& cut : bar.cuts) {
                if (was_there && std::ranges::binary_search(seen.planned, cut.piece)) continue;
                at_saw.cuts.push_back(planned_cut(project, catalogue, resolved, cut.piece));
            }
        }
        // Of an odd half that nobody shares the other one is bought too.
        for (const auto& it : odd) {
            if (it.half.stock == plan.stock && it.other == no_index)
                lay_one(now.at_home, texts.of(it.half.length));
        }
        if (now.at_saw != stock.at_saw) edits.emplace_back(std::move(now));
    }
    return edits;
}

std::vector<Edit> cuts_planned_anew(const Project& project) {
    std::vector<Edit> edits;
    for (const auto& stock : project.stock) {
        auto now = bars_kept(stock, "Plan the cuts of " + stock.name + " anew");
        now.at_saw.clear();
        for (auto bar : stock.at_saw) {
            if (!bar.is_used_up && !has_made(bar)) {
                lay_one(bar.was_offcut ? now.offcuts : now.at_home, bar.length);
                continue;
            }
            std::erase_if(bar.cuts, is_planned);
            now.at_saw.push_back(std::move(bar));
        }
        if (now.at_saw != stock.at_saw) edits.emplace_back(std::move(now));
    }
    return edits;
}

engine::Result<Edit> cut_marked(const Project& project,
                                const Resolved& resolved,
                                const std::vector<CutPlace>& cuts,
                                CutState state) {
    const auto none = [](const std::string& where, const std::string& what) {
        return engine::Error{engine::ErrorCode::unknown_name, where, "there is no such " + what};
    };
    if (cuts.empty()) return none("the saw", "cut");
    const auto stock = std::ranges::find(project.stock, cuts.front().stock, &Stock::name);
    if (stock == project.stock.end()) return none(cuts.front().stock, "stock");
    auto now = bars_kept(*stock, {});
    std::string marks;
    for (const auto& place : cuts) {
        const auto where = "stock " + place.stock + ", bar " + std::to_string(place.bar + 1);
        if (place.stock != stock->name) return none(where, "bar of stock " + stock->name);
        if (place.bar >= now.at_saw.size()) return none(where, "bar");
        if (place.cut >= now.at_saw[place.bar].cuts.size()) return none(where, "cut");
        auto& cut = now.at_saw[place.bar].cuts[place.cut];
        if (cut.state == CutState::spoiled && state != CutState::spoiled) {
            const auto back = take_from_rack(project, resolved, now, cut);
            if (!back) return back.error();
        }
        cut.state = state;
        if (marks.find(cut.mark) == std::string::npos)
            marks += (marks.empty() ? "" : ", ") + cut.mark;
    }
    const std::string what =
        cuts.size() == 1 ? marks : std::to_string(cuts.size()) + " of " + marks;
    now.what_was_done = state == CutState::cut       ? "Cut " + what
                        : state == CutState::spoiled ? "Spoil " + what
                                                     : "Take back the cut of " + what;
    return Edit{std::move(now)};
}

std::vector<Edit> offcuts_racked(const Project& project,
                                 const Catalogue& catalogue,
                                 const Resolved& resolved) {
    std::vector<Edit> edits;
    for (Index i = 0; i < project.stock.size(); ++i) {
        const auto& stock = project.stock[i];
        auto now = bars_kept(stock, "Lay the offcuts of " + stock.name + " on the rack");
        const auto seen = saw_seen(project, catalogue, resolved, i);
        for (std::size_t bar = 0; bar < now.at_saw.size(); ++bar) {
            auto& at_saw = now.at_saw[bar];
            if (!is_cut_up(at_saw, seen.bars[bar])) continue;
            at_saw.is_used_up = true;
            const Nm left = seen.bars[bar].length - seen.bars[bar].next_start;
            if (left < resolved.shop.least_offcut || left <= 0) continue;
            lay_one(now.offcuts, formula_of(project, left));
        }
        if (now.at_saw != stock.at_saw) edits.emplace_back(std::move(now));
    }
    return edits;
}

}  // namespace model
