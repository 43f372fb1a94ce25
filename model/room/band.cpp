#include "model/room/band.h"

#include "engine/on_threads.h"
#include "model/resolve/named_values.h"
#include "model/resolve/values.h"
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

using Mark = std::int64_t;  // a value is so many steps

constexpr Mark coarse_looks = 24;  // over the whole range at first
// Beyond these only ends are still looked for, and the band says that not all of it is proved.
constexpr std::size_t most_looks = 400;

Formula exact_formula(Nm value, const engine::TapeStyle& shown) {
    auto style = shown;
    style.with_unit = true;
    return engine::exact_text(Length::from_nm(value), style);
}

struct Range {
    Mark from = 0;
    Mark to = 0;
    bool ends_below = false;  // by the dimension's own least
    bool ends_above = false;
};

Mark floor_mark(Nm value, Nm step) {
    return value >= 0 ? value / step : -((-value + step - 1) / step);
}

Mark ceil_mark(Nm value, Nm step) { return -floor_mark(-value, step); }

Range range_of(const Dimension& dimension, const NamedValues& values, Nm value, Nm step) {
    constexpr Nm some = 24 * Length::nm_per_inch;
    Nm least = value > 0 ? step : 3 * value - some;
    Nm most = value > 0 ? std::max(3 * value, value + some) : some;
    Range range;
    if (dimension.least) {
        if (const auto stated = values.length(*dimension.least)) {
            least = *stated;
            range.ends_below = true;
        }
    }
    if (dimension.most) {
        if (const auto stated = values.length(*dimension.most)) {
            most = *stated;
            range.ends_above = true;
        }
    }
    range.from = ceil_mark(std::max(least, -most_length), step);
    range.to = floor_mark(std::min(most, most_length), step);
    return range;
}

// "wheel well left"; of two members "post + rail".
std::string names_of(const Finding& finding) {
    if (finding.concerns.empty()) return finding.code;
    const auto& first = finding.concerns.front();
    if (first.kind == SubjectKind::obstacle || finding.concerns.size() == 1) return first.name;
    return first.name + " + " + finding.concerns[1].name;
}

class Solver {
public:
    Solver(const Project& project,
           const Catalogue& catalogue,
           const ScanLibrary& scans,
           std::string_view dimension,
           Range range,
           Nm step,
           const std::function<bool()>& go_on)
        : project_{project},
          catalogue_{catalogue},
          scans_{scans},
          dimension_{dimension},
          range_{range},
          step_{step},
          reach_{std::max(25.0,
                          mm_of(step) * static_cast<double>(range.to - range.from) /
                              static_cast<double>(coarse_looks))},
          go_on_{go_on} {}

    // False when told to stop.
    bool solve(Mark present) {
        const Mark span = range_.to - range_.from;
        present_ = std::clamp(present, range_.from, range_.to);
        std::set<Mark> marks{present_};
        for (Mark i = 0; i <= coarse_looks; ++i)
            marks.insert(range_.from + span * i / coarse_looks);
        look(marks);
        while (!stopped_ && refine()) {
        }
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
    using Looks = std::map<Mark, BandLook>;

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

    void look(const std::set<Mark>& wanted) {
        std::vector<Mark> marks;
        std::ranges::copy_if(wanted, std::back_inserter(marks),
                             [&](Mark mark) { return !looks_.contains(mark); });
        std::vector<BandLook> found(marks.size());
        const auto look_at_one = [&](std::size_t i) {
            const auto there = with_dimension(project_, dimension_, marks[i] * step_);
            found[i] = look_at(there, catalogue_, scans_, reach_);
        };
        stopped_ = !engine::for_each_on_threads(marks.size(), look_at_one, go_on_);
        if (stopped_) return;
        for (std::size_t i = 0; i < marks.size(); ++i)
            looks_.emplace(marks[i], std::move(found[i]));
    }

    // Obstacles and formulas that do not work out hide what else is wrong, so that they weigh more
    // than all of that.
    static std::array<std::size_t, 2> weight_of(const BandLook& look) {
        constexpr std::array<std::string_view, 4> codes{"bad_obstacle", "formula_error",
                                                        "formula_cycle", "out_of_range"};
        const auto hidden = std::ranges::count_if(look.findings, [&](const Finding& finding) {
            return std::ranges::find(codes, finding.code) != codes.end();
        });
        return {static_cast<std::size_t>(hidden), look.complaints.size()};
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
        regardless_ = best().complaints;
        std::set<Mark> wanted;
        const bool only_ends = looks_.size() >= most_looks;
        unproved_ = 0;
        for (auto a = looks_.begin(), b = std::next(a); b != looks_.end(); a = b++) {
            if (b->first - a->first < 2) continue;
            const Mark middle = a->first + (b->first - a->first) / 2;
            if (fits(a->second) != fits(b->second)) {
                wanted.insert(middle);
                continue;
            }
            std::set<Mark> inside;
            add_crossings(*a, *b, inside);
            if (fits(a->second) && !is_surely_free(a->second, b->second, reach_))
                inside.insert(middle);
            if (only_ends && !inside.empty()) ++unproved_;
            if (!only_ends) wanted.merge(inside);
        }
        const auto before = looks_.size();
        while (!only_ends && wanted.size() > most_looks - before)
            wanted.erase(std::prev(wanted.end()));
        look(wanted);
        return looks_.size() > before;
    }

    // Where two planes of a frame change their order: the marks on both sides of it. Planes that
    // move unevenly are not there at once: what is left of the gap is halved as well.
    void add_crossings(const Looks::value_type& a,
                       const Looks::value_type& b,
                       std::set<Mark>& wanted) const {
        const auto& before = a.second.planes;
        const auto& after = b.second.planes;
        std::set<Mark> found;
        for (std::size_t f = 0; f < before.size() && f < after.size(); ++f) {
            for (std::size_t axis = 0; axis < 3; ++axis)
                add_crossings(a.first, b.first, before[f][axis], after[f][axis], found);
        }
        const Mark apart = b.first - a.first;
        if (!found.empty() && apart < (range_.to - range_.from) / coarse_looks)
            found.insert(a.first + apart / 2);
        wanted.merge(found);
    }

    static void add_crossings(Mark from,
                              Mark to,
                              const std::vector<double>& before,
                              const std::vector<double>& after,
                              std::set<Mark>& wanted) {
        for (std::size_t i = 0; i < std::min(before.size(), after.size()); ++i) {
            for (std::size_t k = i + 1; k < std::min(before.size(), after.size()); ++k) {
                const double apart = before[i] - before[k];
                const double then = after[i] - after[k];
                if (!((apart < 0.0 && then > 0.0) || (apart > 0.0 && then < 0.0))) continue;
                const double share = apart / (apart - then);
                const auto at =
                    from + static_cast<Mark>(std::llround(share * static_cast<double>(to - from)));
                for (const Mark mark : {at - 1, at, at + 1}) {
                    if (mark > from && mark < to) wanted.insert(mark);
                }
            }
        }
    }

    const Project& project_;
    const Catalogue& catalogue_;
    const ScanLibrary& scans_;
    std::string_view dimension_;
    Range range_;
    Nm step_;
    double reach_;
    const std::function<bool()>& go_on_;
    Looks looks_;
    std::set<Complaint> regardless_;
    Mark present_ = 0;
    int unproved_ = 0;  // gaps that were left as they are
    bool stopped_ = false;
};

const BandInterval* nearest_interval(const Band& band) {
    const BandInterval* nearest = nullptr;
    Nm least = 0;
    for (const auto& interval : band.intervals) {
        const Nm away = std::max({interval.from - band.value, band.value - interval.to, Nm{0}});
        if (nearest != nullptr && away >= least) continue;
        nearest = &interval;
        least = away;
    }
    return nearest;
}

}  // namespace

Nm band_step(const engine::TapeStyle& shown) {
    const auto unit = engine::bare_unit(shown);
    const bool is_inch = unit == engine::LengthUnit::inch || unit == engine::LengthUnit::foot;
    return is_inch ? Length::nm_per_inch / 64 : Length::nm_per_mm / 2;
}

bool keeps_from_fitting(const Finding& finding) {
    if (finding.severity == Severity::error) return true;
    if (finding.severity == Severity::note) return false;
    constexpr std::array<std::string_view, 4> codes{"clearance", "frame_gap", "loose_end",
                                                    "outside_limits"};
    return std::ranges::find(codes, finding.code) != codes.end();
}

Project with_dimension(Project project, std::string_view dimension, Nm value) {
    const auto found = std::ranges::find(project.dimensions, dimension, &Dimension::name);
    if (found != project.dimensions.end()) found->formula = exact_formula(value, project.shown);
    return project;
}

std::optional<Band> band_of(const Project& project,
                            const Catalogue& catalogue,
                            const ScanLibrary& scans,
                            std::string_view name,
                            const std::function<bool()>& go_on) {
    Resolved values_only;
    const Values named(project, values_only);
    const auto found = std::ranges::find(project.dimensions, name, &Dimension::name);
    if (found == project.dimensions.end() || found->kind != engine::QuantityKind::length)
        return std::nullopt;
    const NamedValues values(project, values_only);
    const auto value = values.length(found->formula);
    if (!value) return std::nullopt;
    const Nm step = band_step(project.shown);
    const Range range = range_of(*found, values, *value, step);
    Band band{.dimension = std::string(name),
              .value = *value,
              .searched_from = range.from * step,
              .searched_to = range.to * step};
    if (range.from > range.to) return band;
    Solver solver{project, catalogue, scans, name, range, step, go_on};
    if (!solver.solve(*value / step)) return std::nullopt;
    solver.write(band);
    band.fits_now = solver.fits(look_at(project, catalogue, scans, 0.0));
    return band;
}

bool fits_nowhere(const Band& band) {
    return std::ranges::any_of(band.regardless, [](const Finding& finding) {
        return finding.severity == Severity::error && !finding.concerns.empty() &&
               finding.concerns.front().kind == SubjectKind::obstacle;
    });
}

std::optional<Nm> largest_that_fits(const Band& band, const engine::TapeStyle& shown) {
    const auto* interval = nearest_interval(band);
    if (interval == nullptr || fits_nowhere(band)) return std::nullopt;
    const Nm step = engine::tape_step(shown).nm();
    const Nm on_tape = floor_mark(interval->to, step) * step;
    return on_tape >= interval->from ? on_tape : interval->to;
}

std::optional<Nm> least_that_fits(const Band& band, const engine::TapeStyle& shown) {
    const auto* interval = nearest_interval(band);
    if (interval == nullptr || fits_nowhere(band)) return std::nullopt;
    const Nm step = engine::tape_step(shown).nm();
    const Nm on_tape = ceil_mark(interval->from, step) * step;
    return on_tape <= interval->to ? on_tape : interval->from;
}

}  // namespace model
