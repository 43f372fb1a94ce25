#include "model/resolve/values.h"

#include "model/project/shop_limits.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

namespace model {
namespace {

bool is_workable(Nm length) { return length <= most_length && length >= -most_length; }

Finding formula_finding(const Subject& where, std::string_view what, const engine::Error& error) {
    std::string text = "the ";
    text += what;
    text += " cannot be worked out: ";
    text += error.message;
    if (!error.where.empty()) text += " (" + error.where + ")";
    return {.code = error.code == engine::ErrorCode::cycle ? "formula_cycle" : "formula_error",
            .severity = Severity::error,
            .concerns = {where},
            .what = std::move(text),
            .mend = "correct the formula; until then what stands on it is left out"};
}

Finding too_long(const Subject& where, std::string_view what) {
    return {.code = "out_of_range",
            .severity = Severity::error,
            .concerns = {where},
            .what = "the " + std::string(what) + " is longer than 1 km",
            .mend = "give a length that a bar can have"};
}

// One setting of the shop: where it comes from, where it goes, and what it must be.
struct ShopSetting {
    const char* name;
    Formula Shop::*formula;
    Nm ResolvedShop::*value;
    bool may_be_zero;
    bool follows_tape = false;  // where it is empty
};

constexpr ShopSetting shop_settings[] = {
    {"kerf", &Shop::kerf, &ResolvedShop::kerf, true},
    {"end trim", &Shop::end_trim, &ResolvedShop::end_trim, true},
    {"least held", &Shop::least_held, &ResolvedShop::least_held, true},
    {"least offcut", &Shop::least_offcut, &ResolvedShop::least_offcut, true},
    {"end gap", &Shop::end_gap, &ResolvedShop::end_gap, true, true},
    {"graduation", &Shop::graduation, &ResolvedShop::graduation, false, true},
    {"nose radius", &Shop::nose_radius, &ResolvedShop::nose_radius, true},
    {"nose reach", &Shop::nose_reach, &ResolvedShop::nose_reach, true},
    {"housing radius", &Shop::housing_radius, &ResolvedShop::housing_radius, true},
    {"panel gap", &Shop::panel_gap, &ResolvedShop::panel_gap, true},
    {"panel pitch", &Shop::panel_pitch, &ResolvedShop::panel_pitch, false},
    {"clearance", &Shop::clearance, &ResolvedShop::clearance, true},
    {"frame gap", &Shop::frame_gap, &ResolvedShop::frame_gap, true},
};

Finding bad_setting(const char* name, bool may_be_zero) {
    return {.code = "bad_setting",
            .severity = Severity::error,
            .concerns = {{SubjectKind::shop, {}, name}},
            .what = std::string("the shop's ") + name +
                    (may_be_zero ? " is below zero" : " is not above zero"),
            .mend = "the default is used until it is mended"};
}

// A mark of a maker's tape: that of inch fractions where they are not coarser than 1/16 in, which
// would leave wide gaps, 1/32 in with decimal inches, 1 mm on a metric one. Common practice.
Nm shop_mark(const engine::TapeStyle& shown) {
    using engine::TapeForm;
    switch (shown.form) {
        case TapeForm::inch_fraction:
        case TapeForm::feet_inches:
            return std::min(engine::tape_step(shown).nm(), Length::nm_per_inch / 16);
        case TapeForm::inch_decimal:
            return Length::nm_per_inch / 32;
        case TapeForm::millimetre:
        case TapeForm::centimetre:
        case TapeForm::metre:
            break;
    }
    return Length::nm_per_mm;
}

Nm default_of(const ShopSetting& setting, const engine::TapeStyle& shown) {
    if (setting.follows_tape) return shop_mark(shown);
    const auto length = engine::read_length(Shop{}.*setting.formula, engine::LengthUnit::inch);
    return length ? length->nm() : 0;
}

void check_ratio(
    double value, double least, double most, const char* name, std::vector<Finding>& findings) {
    if (std::isfinite(value) && value >= least && value <= most) return;
    findings.push_back(
        {.code = "bad_setting",
         .severity = Severity::error,
         .concerns = {{SubjectKind::shop, {}, name}},
         .numbers = {{"given", value}, {"least", least}, {"most", most}},
         .what = std::string("the shop's ") + name + " is outside what can be worked with",
         .mend = "the nearest allowed value is used until it is mended"});
}

}  // namespace

Values::Values(const Project& project, Resolved& out)
    : out_{out}, bare_{engine::bare_unit(project.shown)} {
    std::vector<engine::NamedFormula> formulas;
    formulas.reserve(project.dimensions.size());
    for (const auto& d : project.dimensions) formulas.push_back({d.name, d.formula, d.kind});
    out_.dimensions = engine::evaluate_all(formulas, bare_);

    for (std::size_t i = 0; i < project.dimensions.size(); ++i) {
        const auto& dimension = project.dimensions[i];
        const Subject where{SubjectKind::dimension, {}, dimension.name};
        const auto& value = out_.dimensions[i];
        if (!value) {
            out_.findings.push_back(formula_finding(where, "formula", value.error()));
            continue;
        }
        if (!engine::is_name(dimension.name)) {
            out_.findings.push_back({.code = "bad_name",
                                     .severity = Severity::warning,
                                     .concerns = {where},
                                     .what = "no formula can use this name",
                                     .mend = "begin it with a letter, and leave out signs and the "
                                             "words that formulas use themselves"});
        }
        if (!named_.emplace(dimension.name, *value).second) {
            out_.findings.push_back({.code = "duplicate_name",
                                     .severity = Severity::error,
                                     .concerns = {where},
                                     .what = "another dimension has the same name",
                                     .mend = "rename one of them; the first one counts"});
        }
    }
    for (std::size_t i = 0; i < project.dimensions.size(); ++i) {
        const auto& d = project.dimensions[i];
        if (!out_.dimensions[i] || d.kind != engine::QuantityKind::length) continue;
        const Subject where{SubjectKind::dimension, {}, d.name};
        const Length value = out_.dimensions[i]->length;
        const auto outside = [&](const std::optional<Formula>& limit, bool is_least) {
            if (!limit) return;
            const auto bound = length(*limit, where, is_least ? "least value" : "most value");
            if (!bound || (is_least ? value.nm() >= *bound : value.nm() <= *bound)) return;
            out_.findings.push_back(
                {.code = "outside_limits",
                 .severity = Severity::warning,
                 .concerns = {where},
                 .numbers = {{"value", value},
                             {is_least ? "least" : "most", Length::from_nm(*bound)}},
                 .what = "the value, " + length_in_words(value, project.shown) +
                         (is_least ? ", is below its least, " : ", is above its most, ") +
                         length_in_words(Length::from_nm(*bound), project.shown),
                 .mend = "change the value, or the limit that you gave it"});
        };
        outside(d.least, true);
        outside(d.most, false);
    }
}

engine::Result<engine::Quantity> Values::evaluated(const Formula& formula,
                                                   engine::QuantityKind kind) const {
    const engine::NameLookup lookup =
        [this](std::string_view name) -> std::optional<engine::Quantity> {
        const auto found = named_.find(name);
        if (found == named_.end()) return std::nullopt;
        return found->second;
    };
    return engine::evaluate(formula, kind, bare_, lookup);
}

void Values::check(const Formula& formula,
                   engine::QuantityKind kind,
                   const Subject& where,
                   std::string_view what) {
    const auto value = evaluated(formula, kind);
    if (!value) out_.findings.push_back(formula_finding(where, what, value.error()));
}

std::optional<Nm> Values::length(const Formula& formula,
                                 const Subject& where,
                                 std::string_view what) {
    const auto value = evaluated(formula, engine::QuantityKind::length);
    if (!value) {
        out_.findings.push_back(formula_finding(where, what, value.error()));
        return std::nullopt;
    }
    if (!is_workable(value->length.nm())) {
        out_.findings.push_back(too_long(where, what));
        return std::nullopt;
    }
    return value->length.nm();
}

ResolvedShop shop_values(const Project& project, Values& values, std::vector<Finding>& findings) {
    ResolvedShop shop;
    for (const auto& setting : shop_settings) {
        const Subject where{SubjectKind::shop, {}, setting.name};
        const auto& formula = project.shop.*setting.formula;
        if (formula.empty() && setting.follows_tape) {
            shop.*setting.value = shop_mark(project.shown);
            continue;
        }
        const auto value = values.length(formula, where, setting.name);
        const bool ok = value && (*value > 0 || (*value == 0 && setting.may_be_zero));
        if (value && !ok) findings.push_back(bad_setting(setting.name, setting.may_be_zero));
        shop.*setting.value = ok ? *value : default_of(setting, project.shown);
    }
    if (!project.shop.gusset_thickness.empty()) {
        const Subject where{SubjectKind::shop, {}, "gusset thickness"};
        const auto value = values.length(project.shop.gusset_thickness, where, "gusset thickness");
        if (value && *value <= 0) findings.push_back(bad_setting("gusset thickness", false));
        shop.gusset_thickness = value ? std::max<Nm>(*value, 0) : 0;
    }
    check_ratio(project.shop.edge_distance, least_edge_distance, most_edge_distance,
                "edge distance", findings);
    check_ratio(project.shop.pitch, least_pitch, most_pitch, "pitch", findings);
    check_ratio(project.shop.per_lap, 1.0, 12.0, "fasteners per lap", findings);
    check_ratio(project.shop.spare_percent, 0.0, 1000.0, "spare percentage", findings);
    return shop;
}

}  // namespace model
