#include "model/room/as_built.h"

#include "model/resolve/named_values.h"
#include "model/room/shapes.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace model {
namespace {

// The measures of one opening, mm.
struct Measures {
    double height = 0.0;
    std::array<double, 3> widths{};
    std::array<std::optional<double>, 2> diagonals;
    std::array<double, 2> plumb{};
    std::array<LeanFrom, 2> lean_from{};
};

// One side alone may lean by all that the widths differ. What lies beyond that, or beyond none, by
// more than this part of the height was not measured so but mistyped: common practice.
constexpr double most_lean = 0.1;

// How far the side leans in, by the diagonal that ends at its top; none where that cannot be.
std::optional<double> lean_by_diagonal(const Measures& m, std::size_t side) {
    const auto& diagonal = m.diagonals[1 - side];
    if (!diagonal || !(*diagonal > m.height)) return std::nullopt;
    const double lean = m.widths[0] - std::sqrt(*diagonal * *diagonal - m.height * m.height);
    const double narrower = m.widths[0] - m.widths[2];
    const double beyond = std::max(lean - std::max(0.0, narrower), std::min(0.0, narrower) - lean);
    return beyond <= most_lean * m.height ? std::optional(lean) : std::nullopt;
}

// Where no plumb line was held to a side, its lean follows from what else was measured.
void complete_leans(Measures& m, const std::array<std::optional<double>, 2>& plumb) {
    const double narrower = m.widths[0] - m.widths[2];
    std::array<std::optional<double>, 2> lean = plumb;
    for (std::size_t side = 0; side < 2; ++side) {
        if (lean[side] || plumb[1 - side]) continue;
        lean[side] = lean_by_diagonal(m, side);
        if (lean[side]) m.lean_from[side] = LeanFrom::diagonal;
    }
    for (std::size_t side = 0; side < 2; ++side) {
        if (lean[side]) continue;
        const bool is_left_over = lean[1 - side].has_value();
        m.lean_from[side] = is_left_over ? LeanFrom::widths : LeanFrom::half_widths;
        m.plumb[side] = is_left_over ? narrower - *lean[1 - side] : narrower / 2.0;
    }
    for (std::size_t side = 0; side < 2; ++side) m.plumb[side] = lean[side].value_or(m.plumb[side]);
}

std::optional<Measures> measures_of(const MeasuredOpening& opening, const NamedValues& values) {
    Measures m;
    const auto read = [&](const Formula& formula, double& into) {
        const auto value = values.length(formula);
        if (value) into = mm_of(*value);
        return value.has_value();
    };
    std::array<std::optional<double>, 2> plumb;
    bool all = read(opening.height, m.height);
    for (std::size_t k = 0; k < 3; ++k) all = read(opening.widths[k], m.widths[k]) && all;
    for (std::size_t k = 0; k < 2; ++k) {
        if (!opening.plumb[k].empty()) all = read(opening.plumb[k], plumb[k].emplace()) && all;
        if (opening.diagonals[k].empty()) continue;
        all = read(opening.diagonals[k], m.diagonals[k].emplace()) && all;
    }
    if (!all) return std::nullopt;
    complete_leans(m, plumb);
    return m;
}

// Why it is no opening, as a sentence; else empty.
std::string fault_of(const MeasuredOpening& opening, const Measures& m) {
    if (opening.through == Axis::z) return "a frame goes into it along X or Y, not along Z";
    if (!(m.height > 0.0)) return "its height is not above 0";
    if (!(*std::ranges::min_element(m.widths) > 0.0)) return "a width of it is not above 0";
    return {};
}

bool is_by_widths(LeanFrom from) {
    return from == LeanFrom::widths || from == LeanFrom::half_widths;
}

// What a diagonal off by a little makes the lean that follows from it off by, times that.
double growth(const Measures& m, std::size_t side) {
    if (m.lean_from[side] != LeanFrom::diagonal) return 1.0;
    const double diagonal = *m.diagonals[1 - side];
    return diagonal / std::sqrt(diagonal * diagonal - m.height * m.height);
}

// What follows from a measure is not compared with it.
std::vector<ClosingError> closing_errors(const Measures& m) {
    const auto& [bottom, middle, top] = m.widths;
    std::vector<ClosingError> errors;
    if (std::ranges::none_of(m.lean_from, is_by_widths))
        errors.push_back({"width at the top", top - (bottom - m.plumb[0] - m.plumb[1]),
                          most_closing_error_mm * (growth(m, 0) + growth(m, 1)) / 2.0});
    const std::array<const char*, 2> names{"diagonal from lower left to upper right",
                                           "diagonal from lower right to upper left"};
    for (std::size_t k = 0; k < 2; ++k) {
        if (!m.diagonals[k] || m.lean_from[1 - k] == LeanFrom::diagonal) continue;
        errors.push_back(
            {names[k], *m.diagonals[k] - std::hypot(bottom - m.plumb[1 - k], m.height)});
    }
    return errors;
}

// How far a side stands in at a height above the bottom. The sides are straight from bottom to top
// but for the bow.
double stands_in(const Measures& m, std::size_t side, double height) {
    const double part = height / m.height;
    const double bow = ((m.widths[0] + m.widths[2]) / 2.0 - m.widths[1]) / 2.0;
    const double bowed = 1.0 - std::abs(2.0 * std::clamp(part, 0.0, 1.0) - 1.0);
    return m.plumb[side] * part + bow * bowed;
}

// The sides are furthest in at one of these: they have a corner half-way up the opening alone.
std::array<Nm, 3> heights_told(Nm frame, Nm opening) {
    const Nm top = std::min(frame, opening);
    return {0, opening / 2 < top ? opening / 2 : top / 2, top};
}

// Over all pieces, along an axis of the frame.
struct Extent {
    Nm lo = 0;
    Nm hi = 0;
};

std::optional<Extent> extent_of(const Resolved& resolved, const ResolvedFrame& frame, Axis axis) {
    if (frame.piece_count == 0) return std::nullopt;
    const std::size_t k = index_of(axis);
    const auto& first = resolved.pieces[frame.first_piece].extents;
    Extent extent{first.lo[k], first.hi[k]};
    for (Index i = frame.first_piece; i < frame.first_piece + frame.piece_count; ++i) {
        extent.lo = std::min(extent.lo, resolved.pieces[i].extents.lo[k]);
        extent.hi = std::max(extent.hi, resolved.pieces[i].extents.hi[k]);
    }
    return extent;
}

std::string level_words(const OpeningFit& fit, OpeningLevel level, const engine::TapeStyle& shown) {
    if (level == OpeningLevel::bottom) return "at the bottom";
    if (level == OpeningLevel::top) return "at the top";
    if (fit.heights[1] == fit.heights[2] / 2) return "half-way up";
    return length_in_words(Length::from_nm(fit.heights[1]), shown) + " above the bottom";
}

std::string gap_words(const OpeningFit& fit, std::size_t side, const engine::TapeStyle& shown) {
    const Nm step = engine::tape_step(shown).nm();
    std::string text = std::string(name_of(static_cast<OpeningSide>(side))) + " ";
    for (std::size_t level = 0; level < 3; ++level) {
        const Nm gap = std::max<Nm>(fit.gaps[side][level], 0) / step * step;
        text += (level == 0 ? "" : ", ") + length_in_words(Length::from_nm(gap), shown) + " " +
                level_words(fit, static_cast<OpeningLevel>(level), shown);
    }
    return text;
}

Length rounded_up(Nm length, const engine::TapeStyle& shown) {
    const Nm step = engine::tape_step(shown).nm();
    return Length::from_nm((length + step - 1) / step * step);
}

Finding not_plumbed(const Subject& subject, const OpeningFit& fit) {
    return {.code = "opening_not_plumbed",
            .severity = Severity::warning,
            .concerns = {subject},
            .what = std::string("which way its sides lean was not measured, so ") +
                    (fit.narrows == 0 ? "both are taken to be plumb"
                                      : "each is taken to lean by half of what the widths differ") +
                    "; where both lean the same way, a frame binds though every width is enough",
            .mend = "hold a plumb line at a side, or measure a diagonal"};
}

// Whether it is known from diagonals alone which way the sides lean.
bool is_by_diagonals_alone(const OpeningFit& fit) {
    return std::ranges::count(fit.lean_from, LeanFrom::diagonal) > 0;
}

void report(const Project& project,
            const Subject& subject,
            const OpeningFit& fit,
            std::vector<Finding>& findings) {
    for (const auto& error : fit.closing) {
        if (std::abs(error.mm) <= error.most_mm + 1e-6) continue;  // rounding apart
        const auto off = Length::from_nm(std::llround(std::abs(error.mm) * 1e6));
        findings.push_back(
            {.code = "opening_open_error",
             .severity = Severity::warning,
             .concerns = {subject},
             .numbers = {{"off", off}},
             .what = "the " + error.of + " is off from the other measures by " +
                     length_in_words(rounded_up(off.nm(), project.shown), project.shown),
             .mend = "measure again; a bottom that is not level shows in the "
                     "diagonals"});
    }
    if (std::ranges::count(fit.lean_from, LeanFrom::half_widths) > 0)
        findings.push_back(not_plumbed(subject, fit));
    if (fit.too_tall > 0) {
        findings.push_back(
            {.code = "opening_too_low",
             .severity = Severity::warning,
             .concerns = {subject},
             .numbers = {{"by", Length::from_nm(fit.too_tall)}},
             .what = "the frame stands " +
                     length_in_words(rounded_up(fit.too_tall, project.shown), project.shown) +
                     " higher than the opening was measured",
             .mend = "make the frame lower; if the sides go on above, measure them as high as "
                     "the frame stands"});
    }
    if (fit.binds) {
        const auto by = rounded_up(-fit.slack, project.shown);
        findings.push_back(
            {.code = "opening_binds",
             .severity = Severity::error,
             .concerns = {subject},
             .numbers = {{"by", Length::from_nm(-fit.slack)}},
             .what = "a square frame binds in it: between the left side " +
                     level_words(fit, fit.tightest[0], project.shown) + " and the right side " +
                     level_words(fit, fit.tightest[1], project.shown) + " there is " +
                     length_in_words(by, project.shown) + " too little",
             .mend = std::string(is_by_diagonals_alone(fit)
                                     ? "hold a plumb line at a side to be sure of how it leans; "
                                     : "") +
                     "make the frame narrower by as much and by the clearance that you want"});
        return;
    }
    const Nm taper = std::max(fit.taper(OpeningSide::left), fit.taper(OpeningSide::right));
    findings.push_back(
        {.code = "opening_tapers",
         .severity = Severity::note,
         .concerns = {subject},
         .numbers = {{"slack", Length::from_nm(fit.slack)}, {"taper", Length::from_nm(taper)}},
         .what = "with the frame plumb in its middle the gaps are: " +
                 gap_words(fit, 0, project.shown) + "; " + gap_words(fit, 1, project.shown),
         .mend = "put shims as thick as that there, or fill each side with one tapered strip"});
}

}  // namespace

std::string_view name_of(OpeningSide side) { return side == OpeningSide::left ? "left" : "right"; }

Nm OpeningFit::taper(OpeningSide side) const {
    const auto& of = gaps[static_cast<std::size_t>(side)];
    const auto [least, most] = std::ranges::minmax(of);
    return most - least;
}

std::string fault_of_opening(const Project& project,
                             const Resolved& resolved,
                             const MeasuredOpening& opening) {
    const auto measures = measures_of(opening, NamedValues(project, resolved));
    return measures ? fault_of(opening, *measures) : std::string();
}

std::optional<OpeningFit> opening_fit(const Project& project,
                                      const Resolved& resolved,
                                      Index frame,
                                      const MeasuredOpening& opening) {
    if (frame >= resolved.frames.size()) return std::nullopt;
    const auto measures = measures_of(opening, NamedValues(project, resolved));
    if (!measures || !fault_of(opening, *measures).empty()) return std::nullopt;
    const Axis across = opening.through == Axis::x ? Axis::y : Axis::x;
    const auto width = extent_of(resolved, resolved.frames[frame], across);
    const auto height = extent_of(resolved, resolved.frames[frame], Axis::z);
    if (!width || !height) return std::nullopt;

    OpeningFit fit{.frame_width = width->hi - width->lo, .frame_height = height->hi - height->lo};
    fit.closing = closing_errors(*measures);
    fit.lean_from = measures->lean_from;
    fit.narrows = std::llround((measures->widths[0] - measures->widths[2]) * 1e6);
    const Nm opening_height = std::llround(measures->height * 1e6);
    fit.too_tall = std::max<Nm>(fit.frame_height - opening_height, 0);
    fit.heights = heights_told(fit.frame_height, opening_height);
    std::array<std::array<double, 3>, 2> in{};
    std::array<double, 2> most{};
    for (std::size_t side = 0; side < 2; ++side) {
        for (std::size_t level = 0; level < 3; ++level)
            in[side][level] = stands_in(*measures, side, mm_of(fit.heights[level]));
        const auto furthest = std::ranges::max_element(in[side]);
        most[side] = *furthest;
        fit.tightest[side] = static_cast<OpeningLevel>(furthest - in[side].begin());
    }
    const double slack = measures->widths[0] - most[0] - most[1] - mm_of(fit.frame_width);
    fit.slack = std::llround(slack * 1e6);
    fit.binds = fit.slack < 0;
    for (std::size_t side = 0; side < 2; ++side) {
        for (std::size_t level = 0; level < 3; ++level) {
            const double gap = slack / 2.0 + most[side] - in[side][level];
            fit.gaps[side][level] = std::llround(gap * 1e6);
        }
    }
    return fit;
}

void report_openings(const Project& project,
                     const Resolved& resolved,
                     std::vector<Finding>& findings) {
    const NamedValues values{project, resolved};
    for (Index f = 0; f < project.frames.size(); ++f) {
        const auto& frame = project.frames[f];
        for (const auto& opening : frame.openings) {
            const Subject subject{SubjectKind::opening, frame.name, opening.name};
            const auto measures = measures_of(opening, values);
            if (auto fault = measures ? fault_of(opening, *measures) : std::string();
                !fault.empty()) {
                findings.push_back({.code = "bad_opening",
                                    .severity = Severity::error,
                                    .concerns = {subject},
                                    .what = std::move(fault),
                                    .mend = "mend its measures; until then nothing says whether "
                                            "the frame goes in"});
            }
            if (const auto fit = opening_fit(project, resolved, f, opening))
                report(project, subject, *fit, findings);
        }
    }
}

}  // namespace model
