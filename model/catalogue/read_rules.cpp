#include "model/catalogue/read_tables.h"

namespace model {
namespace {

std::optional<double> number_if_any(Row& row, std::string_view column) {
    if (row.text_or_empty(column).empty()) return std::nullopt;
    return row.number(column);
}

// What a rule states has to rise from its least to its most.
void check_rises(Row& row, const LayoutRule& rule) {
    double before = 0.0;
    bool says_anything = false;
    for (const auto& value : {rule.least, rule.usual_least, rule.usual_most, rule.most}) {
        if (!value) continue;
        if (*value < before) row.fail("id", "the numbers of the rule do not rise");
        before = *value;
        says_anything = true;
    }
    if (!says_anything) row.fail("id", "the rule states no number");
}

LayoutRule read_rule(Row& row) {
    LayoutRule rule;
    rule.id = row.text("id");
    rule.least = number_if_any(row, "least");
    rule.usual_least = number_if_any(row, "usual_least");
    rule.usual_most = number_if_any(row, "usual_most");
    rule.most = number_if_any(row, "most");
    rule.unit = row.text("unit");
    rule.applies_to = row.text("applies_to");
    rule.source = row.text("source");
    check_rises(row, rule);
    return rule;
}

DrillingSpeed read_speed(Row& row) {
    return {.material = row.text("material"),
            .least = row.number("feet_per_minute_least"),
            .usual = row.number("feet_per_minute_usual"),
            .most = row.number("feet_per_minute_most"),
            .hand_drill_top_rpm = row.number("hand_drill_top_rpm"),
            .source = row.text("source")};
}

VentCover read_cover(Row& row) {
    VentCover cover{
        .id = row.text("id"), .free_area = row.number("free_area"), .source = row.text("source")};
    if (cover.free_area <= 0.0 || cover.free_area > 1.0) {
        row.fail("free_area", "it is a part of the opening: above 0, at most 1");
    }
    return cover;
}

}  // namespace

engine::Result<std::vector<LayoutRule>> read_layout_rules(const Table& table) {
    return rows_as<LayoutRule>(table, read_rule);
}

engine::Result<std::vector<DrillingSpeed>> read_drilling_speeds(const Table& table) {
    return rows_as<DrillingSpeed>(table, read_speed);
}

engine::Result<std::vector<VentCover>> read_vent_covers(const Table& table) {
    return rows_as<VentCover>(table, read_cover);
}

}  // namespace model
