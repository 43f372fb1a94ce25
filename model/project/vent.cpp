#include "model/project/vent.h"

#include "model/project/shop_limits.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

namespace model {
namespace {

using engine::Error;
using engine::ErrorCode;
using engine::Length;

constexpr int most_openings = 100;  // keeps nonsense out
// Keeps areas finite and widths within what resolve works with: 1 km.
constexpr Length most_side = Length::from_nm(1'000'000'000'000);
constexpr double most_ratio = 100.0;  // keeps nonsense out
// A floating error of division must not cost a whole mark of the tape.
constexpr double rounding = 1.0e-12;

Error invalid(std::string where, std::string message) {
    return {ErrorCode::invalid_value, std::move(where), std::move(message)};
}

bool is_side(Length length) { return length > Length{} && length <= most_side; }

bool is_part(double free_area) { return free_area > 0.0 && free_area <= 1.0; }

std::optional<Error> fault_of_count(int count) {
    if (count >= 1 && count <= most_openings) return std::nullopt;
    return invalid("openings", "give how many: 1 to " + std::to_string(most_openings));
}

struct Area {
    double operator()(const RoundVent& vent) const {
        constexpr double pi = 3.14159265358979323846;
        return pi / 4.0 * vent.diameter.mm() * vent.diameter.mm();
    }
    double operator()(const RectangularVent& vent) const {
        return vent.width.mm() * vent.height.mm();
    }
};

struct HasSize {
    bool operator()(const RoundVent& vent) const { return is_side(vent.diameter); }
    bool operator()(const RectangularVent& vent) const {
        return is_side(vent.width) && is_side(vent.height);
    }
};

std::optional<Error> fault_of(const VentDemand& demand) {
    const auto part =
        "the part of an opening that air passes is above 0 and at most 1; choose a "
        "cover that lets air pass";
    if (!std::visit(HasSize{}, demand.exhaust)) {
        return invalid("exhaust", "give its size, above zero: the diameter, or width and height");
    }
    if (!is_part(demand.exhaust_free_area)) return invalid("exhaust cover", part);
    if (!(demand.ratio >= 1.0 && demand.ratio <= most_ratio)) {
        return invalid("ratio",
                       "give a number from 1 to 100; 1 makes the intake as large as the exhaust, "
                       "and a smaller intake would starve it");
    }
    if (!is_part(demand.intake_free_area)) return invalid("intake cover", part);
    if (auto fault = fault_of_count(demand.count)) return fault;
    if (!is_side(demand.height))
        return invalid("height", "give the height of an opening, above zero");
    if (!is_side(demand.graduation)) {
        return invalid("graduation", "widths need a mark to be rounded up to; set one in the shop");
    }
    return std::nullopt;
}

// The first coordinate of the row: as stated, or so that it lies in the middle.
Length start_of(const std::optional<Length>& stated, Length sheet, Length taken, Length mark) {
    if (stated) return *stated;
    const auto middle = (sheet - taken).nm() / 2;
    const auto step = mark.nm() > 0 ? mark.nm() : 1;
    return std::max(least_sheet_land, Length::from_nm(middle / step * step));
}

std::optional<Error> fault_of(const VentRow& row) {
    if (auto fault = fault_of_count(row.count)) return fault;
    if (!is_side(row.width)) return invalid("width", "give the width of an opening, above zero");
    if (!is_side(row.height)) return invalid("height", "give the height of an opening, above zero");
    if (row.count > 1 && (row.gap < least_sheet_land || row.gap > most_side)) {
        return invalid("gap", "leave at least 1/16 in of sheet between openings");
    }
    return std::nullopt;
}

}  // namespace

engine::Result<VentSizing> vent_sizing(const VentDemand& demand) {
    if (auto fault = fault_of(demand)) return *std::move(fault);
    VentSizing sizing;
    sizing.exhaust_net_mm2 = std::visit(Area{}, demand.exhaust) * demand.exhaust_free_area;
    sizing.needed_net_mm2 = sizing.exhaust_net_mm2 * demand.ratio;
    sizing.needed_gross_mm2 = sizing.needed_net_mm2 / demand.intake_free_area;
    const double of_all = demand.height.mm() * demand.count;
    const double marks = sizing.needed_gross_mm2 / of_all / demand.graduation.mm();
    if (!(marks * demand.graduation.mm() < most_side.mm())) {
        return invalid("height",
                       "with openings so low they would be wider than 1 km; make them "
                       "higher or take more of them");
    }
    const double whole = std::ceil(marks - marks * rounding);
    sizing.width = demand.graduation * static_cast<std::int64_t>(whole);
    sizing.reached_net_mm2 = sizing.width.mm() * of_all * demand.intake_free_area;
    return sizing;
}

engine::Result<std::vector<VentOpening>> vent_openings(const VentRow& row) {
    if (auto fault = fault_of(row)) return *std::move(fault);
    const std::size_t along = row.is_stacked ? 1 : 0;
    const std::array<Length, 2> size{row.width, row.height};
    std::array<Length, 2> taken = size;
    taken[along] = size[along] * row.count + row.gap * (row.count - 1);
    std::array<Length, 2> start;
    for (std::size_t k = 0; k < 2; ++k) {
        const char* const side = k == 0 ? "width" : "height";
        if (taken[k] + least_sheet_land * 2 > row.sheet[k]) {
            return invalid(side,
                           std::string("the openings are larger than the panel in its ") + side +
                               "; make them smaller, choose another number, or set them in the "
                               "other direction");
        }
        start[k] = start_of(row.lower_corner[k], row.sheet[k], taken[k], row.graduation);
        if (start[k] < least_sheet_land || start[k] + taken[k] + least_sheet_land > row.sheet[k]) {
            return invalid("lower corner",
                           std::string("the openings would reach over the edge of the panel in "
                                       "its ") +
                               side + "; move them, leaving 1/16 in of sheet or more");
        }
    }
    std::vector<VentOpening> openings;
    for (int i = 0; i < row.count; ++i) {
        VentOpening opening{.least = start};
        opening.least[along] += (size[along] + row.gap) * i;
        for (std::size_t k = 0; k < 2; ++k) opening.most[k] = opening.least[k] + size[k];
        openings.push_back(opening);
    }
    return openings;
}

bool is_opening_of(std::string_view cut_out, std::string_view row) {
    if (cut_out.size() < row.size() + 2 || cut_out.substr(0, row.size()) != row) return false;
    const auto number = cut_out.substr(row.size() + 1);
    return cut_out[row.size()] == ' ' &&
           number.find_first_not_of("0123456789") == std::string_view::npos;
}

}  // namespace model
