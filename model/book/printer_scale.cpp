#include "engine/measure/tape.h"
#include "model/book/drill_strips.h"
#include "model/schedule/told_text.h"

#include <cstdlib>
#include <string>

namespace model {
namespace {

constexpr Nm least_part_off = 20;  // of the ruler: 5 %

// What the printer makes of a ruler that measures so.
engine::Result<double> scale_of(const Project& project,
                                const char* which,
                                std::optional<engine::Length> measured) {
    if (!measured) return 1.0;
    const auto ruler = measured_ruler(project);
    const Nm off = std::abs(measured->nm() - ruler.nm());
    if (off <= ruler.nm() / least_part_off) return measured->mm() / ruler.mm();
    auto style = project.shown;
    style.with_unit = true;
    return engine::Error{engine::ErrorCode::out_of_range, which,
                         "the ruler of " + engine::exact_text(ruler, style) + " cannot measure " +
                             told_text(*measured, style) +
                             ", which is more than 5 % off; print the sheet at 100 %, without "
                             "fitting it to the page, and measure again"};
}

}  // namespace

engine::Length measured_ruler(const Project& project) {
    switch (project.shown.form) {
        case engine::TapeForm::inch_fraction:
        case engine::TapeForm::feet_inches:
        case engine::TapeForm::inch_decimal:
            return engine::Length::from_nm(4 * engine::Length::nm_per_inch);
        case engine::TapeForm::millimetre:
        case engine::TapeForm::centimetre:
        case engine::TapeForm::metre:
            break;
    }
    return engine::Length::from_nm(100 * engine::Length::nm_per_mm);
}

engine::Result<PrinterScale> printer_scale(const Project& project,
                                           std::optional<engine::Length> across,
                                           std::optional<engine::Length> down) {
    const auto x = scale_of(project, "ruler across", across);
    if (!x) return x.error();
    const auto y = scale_of(project, "ruler down", down);
    if (!y) return y.error();
    return PrinterScale{*x, *y};
}

}  // namespace model
