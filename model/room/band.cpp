#include "model/room/band.h"

#include "model/resolve/named_values.h"
#include "model/resolve/values.h"
#include "model/room/band_search.h"
#include "model/room/shapes.h"

#include <algorithm>
#include <array>
#include <utility>

namespace model {
namespace {

Formula exact_formula(Nm value, const engine::TapeStyle& shown) {
    auto style = shown;
    style.with_unit = true;
    return engine::exact_text(Length::from_nm(value), style);
}

TapeMark floor_mark(Nm value, Nm step) {
    return value >= 0 ? value / step : -((-value + step - 1) / step);
}

TapeMark ceil_mark(Nm value, Nm step) { return -floor_mark(-value, step); }

MarkRange range_of(const Dimension& dimension, const NamedValues& values, Nm value, Nm step) {
    constexpr Nm some = 24 * Length::nm_per_inch;
    Nm least = value > 0 ? step : 3 * value - some;
    Nm most = value > 0 ? std::max(3 * value, value + some) : some;
    MarkRange range;
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
    constexpr std::array<std::string_view, 5> codes{"clearance", "frame_gap", "loose_end",
                                                    "opening_too_low", "outside_limits"};
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
    const MarkRange range = range_of(*found, values, *value, step);
    Band band{.dimension = std::string(name),
              .value = *value,
              .searched_from = range.from * step,
              .searched_to = range.to * step};
    if (range.from > range.to) return band;
    if (!search_band({project, catalogue, scans, name, range, step, go_on}, band))
        return std::nullopt;
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
