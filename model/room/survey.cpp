#include "model/room/survey.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <numbers>

namespace model {
namespace {

constexpr double radians_of_a_degree = std::numbers::pi / 180.0;
constexpr Nm again_inch = engine::Length::nm_per_inch / 8;
constexpr Nm again_metric = 3'000'000;

// As a formula that gives exactly it.
Formula plain(Nm length) {
    const auto digits = std::to_string(std::abs(length) % 1'000'000);
    return (length < 0 ? "-" : "") + std::to_string(std::abs(length) / 1'000'000) + "." +
           std::string(6 - digits.size(), '0') + digits + " mm";
}

Formula plain_degrees(double hundredths) {
    const auto whole = std::llround(hundredths * 100.0);
    return std::to_string(whole / 100) + "." + (whole % 100 < 10 ? "0" : "") +
           std::to_string(whole % 100) + " deg";
}

bool is_metric(const engine::TapeStyle& shown) {
    const auto unit = engine::bare_unit(shown);
    return unit != engine::LengthUnit::inch && unit != engine::LengthUnit::foot;
}

}  // namespace

ClosingGrade grade_of(const Closing& closing, const engine::TapeStyle& shown) {
    const Nm error = std::abs(closing.error());
    if (error <= engine::tape_step(shown).nm()) return ClosingGrade::closes;
    return error <= (is_metric(shown) ? again_metric : again_inch) ? ClosingGrade::ordinary
                                                                   : ClosingGrade::measure_again;
}

std::string closing_words(const Closing& closing, const engine::TapeStyle& shown) {
    const auto grade = grade_of(closing, shown);
    if (grade == ClosingGrade::closes) return "closes to the mark";
    const auto error = engine::Length::from_nm(std::abs(closing.error()));
    const std::string by = length_in_words(error, shown) +
                           (closing.error() > 0 ? " more" : " less") + " than in one go";
    return by +
           (grade == ClosingGrade::ordinary ? ": as good as a tape measures" : ": measure again");
}

std::vector<Closing> well_closings(const WellTape& tape) {
    std::vector<Closing> closings;
    if (tape.start && tape.length && tape.behind && tape.room_length) {
        closings.push_back(
            {"along the van", *tape.start + *tape.length + *tape.behind, *tape.room_length});
    }
    if (tape.reach && tape.across && tape.room_width) {
        closings.push_back({"across the van",
                            *tape.reach + *tape.across + tape.opposite.value_or(0),
                            *tape.room_width});
    }
    return closings;
}

std::optional<double> well_lean(const WellTape& tape) {
    if (!tape.top_reach || !tape.reach) return 0.0;
    if (!tape.height || *tape.height <= 0) return std::nullopt;
    const double in = static_cast<double>(*tape.reach - *tape.top_reach);
    const double lean = std::atan2(in, static_cast<double>(*tape.height)) / radians_of_a_degree;
    constexpr double most_lean = 60.0;
    if (!(lean >= 0.0) || lean > most_lean) return std::nullopt;
    return std::floor(lean * 100.0) / 100.0;
}

std::optional<Nm> well_rounding(const WellTape& tape) {
    const auto lean = well_lean(tape);
    if (!tape.rounding_gap || *tape.rounding_gap < 0 || !lean) return std::nullopt;
    const double half = (90.0 - *lean) / 2.0 * radians_of_a_degree;
    const double radius = static_cast<double>(*tape.rounding_gap) / (1.0 / std::cos(half) - 1.0);
    return static_cast<Nm>(std::llround(radius));
}

std::optional<WheelWell> well_as_measured(const WellPlace& place, const WellTape& tape) {
    const auto lean = well_lean(tape);
    if (!tape.start || !tape.length || !tape.height || !tape.reach || !lean) return std::nullopt;
    const bool is_left = place.inside == Sense::plus;
    const Nm near = place.datum + *tape.start;
    const Nm out = place.wall + sign_of(place.inside) * *tape.reach;
    return WheelWell{.least = {plain(is_left ? place.wall : out), plain(near), plain(place.floor)},
                     .most = {plain(is_left ? out : place.wall), plain(near + *tape.length),
                              plain(place.floor + *tape.height)},
                     .top_radius = plain(place.rounding),
                     .corner_radius = plain(place.corner),
                     .inner_sense = place.inside,
                     .lean = plain_degrees(*lean)};
}

std::optional<WallProfile> wall_as_measured(
    Sense inside, Nm line, Nm from, Nm to, const WallTape& tape) {
    WallProfile wall{.inside = inside, .from = plain(from), .to = plain(to)};
    for (const auto& row : tape.rows) {
        if (!row.height || !row.to_wall) return std::nullopt;
        wall.offsets.push_back(
            {plain(*row.height), plain(*tape.rows.front().to_wall - *row.to_wall)});
    }
    if (tape.rows.empty()) return std::nullopt;
    wall.at = plain(line - sign_of(inside) * *tape.rows.front().to_wall);
    return wall;
}

std::vector<Closing> wall_closings(const WallTape& tape, const engine::TapeStyle& shown) {
    std::vector<Closing> closings;
    for (const auto& row : tape.rows) {
        if (!row.height || !row.to_wall || !row.to_other || !row.across) continue;
        const auto height = length_in_words(engine::Length::from_nm(*row.height), shown);
        closings.push_back({height + " up", *row.to_wall + *row.to_other, *row.across});
    }
    return closings;
}

}  // namespace model
