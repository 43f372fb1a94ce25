#include "model/book/strip_words.h"

#include "model/schedule/told_text.h"

#include <algorithm>

namespace model {
namespace {

std::string place_text(const Project& project, engine::Length length) {
    auto style = project.shown;
    style.with_unit = true;
    return told_text(length, style);
}

// "#30"; what is done otherwise than drilling through is named: "match-drill #30".
std::string tool_words(const DrillRow& row) {
    switch (row.operation) {
        case HoleOperation::drill:
        case HoleOperation::pilot:
        case HoleOperation::clearance:
            return row.drill;
        case HoleOperation::tap_drill:
        case HoleOperation::tap:
        case HoleOperation::match_drill:
        case HoleOperation::countersink:
            break;
    }
    return work_words(row);
}

std::string part_number(const StripPart& part, int number) {
    return "part " + std::to_string(part.tile->part + number);
}

}  // namespace

std::string strip_name(const StripPart& part) { return name_of_mark(*part.resolved, *part.facts); }

std::string strip_part_words(const StripPart& part) {
    if (part.tile->parts < 2) return {};
    return part_number(part, 0) + " of " + std::to_string(part.tile->parts);
}

std::string strip_count_words(const StripPart& part) {
    const int count = part.facts->cut.quantity;
    std::string words = "for " + std::to_string(count) + (count == 1 ? " piece" : " pieces");
    const auto which = strip_part_words(part);
    return which.empty() ? words : words + ", " + which;
}

std::string strip_leg_words(const UnrolledWall& wall) {
    return wall.name == "face" ? "outer face" : wall.name + ", outside";
}

std::string strip_start_words(const StripPart& part, bool has_tab) {
    const auto& start = part.tile->start;
    switch (start.kind) {
        case TileEnd::piece:
            break;
        case TileEnd::blank:
            return has_tab ? "lay the heavy line at " + place_text(*part.project, start.at)
                           : "lay off " + place_text(*part.project, start.at) + " from datum end";
        case TileEnd::joint:
            return "line on line, " + place_text(*part.project, start.at);
    }
    return has_tab ? "DATUM END at the heavy line" : "DATUM END at this edge";
}

std::vector<std::string> strip_arrow_words(const StripPart& part, bool has_tab) {
    const auto& start = part.tile->start;
    const auto from = place_text(*part.project, start.at) + " from datum end";
    switch (start.kind) {
        case TileEnd::piece:
            break;
        case TileEnd::blank:
            if (has_tab)
                return {"to datum end:", place_text(*part.project, start.at) + " from heavy line"};
            return {"upper edge:", from};
        case TileEnd::joint:
            return {"upper joint line:", from};
    }
    return {"to datum end:", has_tab ? "heavy line" : "this edge"};
}

std::string strip_tab_words(const StripPart& part) {
    return part.tile->start.kind == TileEnd::piece ? "tab, beyond the piece" : "tab, for words";
}

std::string strip_end_words(const StripPart& part) {
    const auto& end = part.tile->end;
    if (end.kind == TileEnd::joint) return part_number(part, 1) + " goes on at the line";
    if (end.kind == TileEnd::piece) return "far end at this edge";
    if (part.next == nullptr) return "nothing more is drilled";
    return part_number(part, 1) + ": at " + place_text(*part.project, part.next->start.at);
}

StripTools::StripTools(const MarkFacts& facts) {
    for (const auto& row : facts.drills) {
        auto& at = at_holes_.try_emplace(row.pattern_hole, AtHole{row.hole, {}}).first->second;
        at.tools += (at.tools.empty() ? "" : ", ") + tool_words(row);
    }
    if (at_holes_.empty()) return;
    is_matched_ = facts.drills.front().operation == HoleOperation::match_drill;
    const auto& first = at_holes_.begin()->second.tools;
    const bool are_alike = std::ranges::all_of(
        at_holes_, [&](const auto& entry) { return entry.second.tools == first; });
    if (are_alike) common_ = first;
}

std::string StripTools::drill_words() const {
    if (common_.empty()) return {};
    return "all " + common_ + (is_matched_ ? ", through the mate" : "");
}

std::string StripTools::hole_words(Index hole) const {
    const auto found = at_holes_.find(hole);
    if (found == at_holes_.end()) return {};
    const auto& [number, tools] = found->second;
    return std::to_string(number) + (common_.empty() ? ": " + tools : std::string());
}

}  // namespace model
