#include "model/room/band_search.h"

#include "engine/on_threads.h"
#include "model/room/band_crossings.h"
#include "model/room/band_gap.h"
#include "model/room/band_look.h"
#include "model/room/shapes.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <map>
#include <set>
#include <utility>

namespace model {
namespace {

constexpr TapeMark coarse_looks = 24;  // over the whole range at first
// Beyond these only ends are still looked for, and the band says that not all of it is proved.
constexpr std::size_t most_looks = 400;

// "wheel well left"; of two members "post + rail".
std::string names_of(const Finding& finding) {
    if (finding.concerns.empty()) return finding.code;
    const auto& first = finding.concerns.front();
    if (first.kind == SubjectKind::obstacle || finding.concerns.size() == 1) return first.name;
    return first.name + " + " + finding.concerns[1].name;
}

using Looks = std::map<TapeMark, BandLook>;
using MarkGap = std::array<TapeMark, 2>;  // between neighbours

class Solver {
public:
    explicit Solver(const BandSearch& search)
        : search_{search},
          range_{search.range},
          step_{search.step},
          reach_{std::max(25.0,
                          mm_of(step_) * static_cast<double>(range_.to - range_.from) /
                              static_cast<double>(coarse_looks))} {}

    // False when told to stop.
    bool solve(TapeMark present) {
        const TapeMark span = range_.to - range_.from;
        present_ = std::clamp(present, range_.from, range_.to);
        std::set<TapeMark> marks{present_};
        for (TapeMark i = 0; i <= coarse_looks; ++i)
            marks.insert(range_.from + span * i / coarse_looks);
        look(marks);
        while (!stopped_ && refine()) {
        }
        if (!stopped_) look_again([&](Looks::const_iterator at) { return stops_an_interval(at); });
        return !stopped_;
    }

    void write(Band& band) const {
        band.looked_at = static_cast<int>(looks_.size());
        band.is_proved = unproved_ == 0;
        band.not_measured = best().not_measured;
        band.regardless = best().findings;
        std::optional<BandInterval> open;
        for (auto at = looks_.begin(); at != looks_.end(); ++at) {
            const bool fits = this->fits(at->second);
            if (fits && !open) {
                open = BandInterval{.from = at->first * step_, .below = stop_before(at)};
            }
            if (fits) open->to = at->first * step_;
            if (open && (!fits || std::next(at) == looks_.end())) {
                open->above = fits ? end_of_range(range_.ends_above, "the most it may be")
                                   : stop_of(at->second);
                band.intervals.push_back(*std::exchange(open, std::nullopt));
            }
        }
    }

    bool fits(const BandLook& look) const {
        return std::ranges::all_of(look.complaints, [&](const Complaint& complaint) {
            return regardless_.contains(complaint);
        });
    }

private:
    bool is_regardless(const Finding& finding) const {
        const auto complaints = complaints_of(finding);
        return std::ranges::all_of(complaints,
                                   [&](const Complaint& one) { return regardless_.contains(one); });
    }

    static BandStop end_of_range(bool by_limit, const char* words) {
        if (by_limit) return {.by = words};
        return {.is_of_search = true, .by = "nothing so far"};
    }

    BandStop stop_of(const BandLook& look) const {
        for (const bool of_room : {true, false}) {
            for (const auto& finding : look.findings) {
                const bool is_of_room = !finding.concerns.empty() &&
                                        finding.concerns.front().kind == SubjectKind::obstacle;
                if (is_of_room != of_room || is_regardless(finding)) continue;
                return {.by = names_of(finding), .finding = finding};
            }
        }
        return {};
    }

    BandStop stop_before(Looks::const_iterator at) const {
        if (at == looks_.begin()) return end_of_range(range_.ends_below, "the least it may be");
        return stop_of(std::prev(at)->second);
    }

    // An early error tells that a value does not fit, unless all of them have it.
    void look(const std::set<TapeMark>& wanted) {
        std::vector<TapeMark> marks;
        std::ranges::copy_if(wanted, std::back_inserter(marks),
                             [&](TapeMark mark) { return !looks_.contains(mark); });
        const bool may_glance = looks_.empty() || best().complaints.empty();
        look_at_all(marks, may_glance ? glance_at : look_at);
    }

    void look_again(const std::function<bool(Looks::const_iterator)>& is_wanted) {
        std::vector<TapeMark> marks;
        for (auto at = looks_.begin(); at != looks_.end(); ++at) {
            if (!at->second.is_whole && is_wanted(at)) marks.push_back(at->first);
        }
        look_at_all(marks, look_at);
    }

    void look_at_all(const std::vector<TapeMark>& marks, decltype(look_at)& looker) {
        std::vector<BandLook> found(marks.size());
        const auto look_at_one = [&](std::size_t i) {
            const auto there = with_dimension(search_.project, search_.dimension, marks[i] * step_);
            found[i] = looker(there, search_.catalogue, search_.scans, reach_);
        };
        stopped_ = !engine::for_each_on_threads(marks.size(), look_at_one, search_.go_on);
        if (stopped_) return;
        for (std::size_t i = 0; i < marks.size(); ++i)
            looks_.insert_or_assign(marks[i], std::move(found[i]));
    }

    bool stops_an_interval(Looks::const_iterator at) const {
        if (fits(at->second)) return false;
        return (at != looks_.begin() && fits(std::prev(at)->second)) ||
               (std::next(at) != looks_.end() && fits(std::next(at)->second));
    }

    // Obstacles and formulas that do not work out hide what else is wrong, so that they weigh more
    // than all of that. Next comes what the present value has not: a value that brings it is no
    // mend.
    std::array<std::size_t, 3> weight_of(const BandLook& look) const {
        constexpr std::array<std::string_view, 4> codes{"bad_obstacle", "formula_error",
                                                        "formula_cycle", "out_of_range"};
        const auto hidden = std::ranges::count_if(look.findings, [&](const Finding& finding) {
            return std::ranges::find(codes, finding.code) != codes.end();
        });
        const bool brings_more =
            !std::ranges::includes(looks_.at(present_).complaints, look.complaints);
        return {static_cast<std::size_t>(hidden), brings_more ? 1U : 0U, look.complaints.size()};
    }

    // The look with the least to complain of; of several the nearest to the present value.
    const BandLook& best() const {
        const auto better = [&](const auto& a, const auto& b) {
            const auto weight_a = weight_of(a.second);
            const auto weight_b = weight_of(b.second);
            if (weight_a != weight_b) return weight_a < weight_b;
            return std::abs(a.first - present_) < std::abs(b.first - present_);
        };
        return std::min_element(looks_.begin(), looks_.end(), better)->second;
    }

    // One more look at every gap between two neighbours that may hide an end. False when there is
    // none left.
    bool refine() {
        // Where none is without a fault, the best of them is found by all that they have.
        if (!best().complaints.empty()) look_again([](Looks::const_iterator) { return true; });
        if (stopped_) return false;
        regardless_ = best().complaints;
        if (!prove_gaps()) return false;
        std::set<TapeMark> wanted;
        const bool only_ends = looks_.size() >= most_looks;
        unproved_ = 0;
        for (auto a = looks_.begin(), b = std::next(a); b != looks_.end(); a = b++) {
            if (b->first - a->first < 2) continue;
            const TapeMark middle = a->first + (b->first - a->first) / 2;
            if (fits(a->second) != fits(b->second)) {
                wanted.insert(middle);
                continue;
            }
            auto inside = marks_at_crossings(*a, *b);
            if (fits(a->second) && !is_free_.at({a->first, b->first})) inside.insert(middle);
            if (only_ends && !inside.empty()) ++unproved_;
            if (!only_ends) wanted.merge(inside);
        }
        const auto before = looks_.size();
        while (!only_ends && wanted.size() > most_looks - before)
            wanted.erase(std::prev(wanted.end()));
        look(wanted);
        return looks_.size() > before;
    }

    // Tries those that were not tried yet. False when told to stop.
    bool prove_gaps() {
        std::vector<MarkGap> gaps;
        for (auto a = looks_.begin(), b = std::next(a); b != looks_.end(); a = b++) {
            const MarkGap gap{a->first, b->first};
            if (b->first - a->first < 2 || is_free_.contains(gap)) continue;
            if (fits(a->second) && fits(b->second)) gaps.push_back(gap);
        }
        std::vector<char> is_free(gaps.size());
        const auto prove_one = [&](std::size_t i) {
            const auto& [from, to] = gaps[i];
            is_free[i] = is_surely_free(looks_.at(from), looks_.at(to), reach_) ? 1 : 0;
        };
        stopped_ = !engine::for_each_on_threads(gaps.size(), prove_one, search_.go_on);
        for (std::size_t i = 0; i < gaps.size(); ++i) is_free_.emplace(gaps[i], is_free[i] != 0);
        return !stopped_;
    }

    // What moves unevenly does not cross where it would by even steps: what is left of the gap is
    // halved as well.
    std::set<TapeMark> marks_at_crossings(const Looks::value_type& a,
                                          const Looks::value_type& b) const {
        auto found = crossings({a.first, b.first}, a.second, b.second);
        const TapeMark apart = b.first - a.first;
        if (!found.empty() && apart < (range_.to - range_.from) / coarse_looks)
            found.insert(a.first + apart / 2);
        return found;
    }

    const BandSearch& search_;
    MarkRange range_;
    Nm step_;
    double reach_;
    Looks looks_;
    std::map<MarkGap, bool> is_free_;  // of those tried so far: whether it is proved
    std::set<Complaint> regardless_;
    TapeMark present_ = 0;
    int unproved_ = 0;  // gaps that were left as they are
    bool stopped_ = false;
};

}  // namespace

bool search_band(const BandSearch& search, Band& band) {
    Solver solver{search};
    if (!solver.solve(band.value / search.step)) return false;
    solver.write(band);
    band.fits_now = solver.fits(look_at(search.project, search.catalogue, search.scans, 0.0));
    return true;
}

}  // namespace model
