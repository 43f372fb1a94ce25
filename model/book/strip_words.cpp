#include "model/book/strip_words.h"

#include "engine/measure/tape.h"

#include <algorithm>

namespace model {
namespace {

std::string place_text(const Project& project, engine::Length length) {
    auto style = project.shown;
    style.with_unit = true;
    return engine::exact_text(length, style);
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

// All that is done at a hole: "#30", "match-drill #25, tap 10-24".
std::string tools_at(const MarkFacts& facts, Index hole) {
    std::string words;
    for (const auto& row : facts.drills) {
        if (row.pattern_hole != hole) continue;
        words += (words.empty() ? "" : ", ") + tool_words(row);
    }
    return words;
}

// What is done at each of its holes; empty where they differ, or there is none.
std::string tools_at_all(const MarkFacts& facts) {
    if (facts.drills.empty()) return {};
    const auto words = tools_at(facts, facts.drills.front().pattern_hole);
    const bool are_alike = std::ranges::all_of(facts.drills, [&](const DrillRow& row) {
        return tools_at(facts, row.pattern_hole) == words;
    });
    return are_alike ? words : std::string();
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

std::string strip_start_words(const StripPart& part) {
    const auto& start = part.tile->start;
    switch (start.kind) {
        case TileEnd::piece:
            break;
        case TileEnd::blank:
            return "lay off " + place_text(*part.project, start.at) + " from datum end";
        case TileEnd::joint:
            return "line on line, " + place_text(*part.project, start.at);
    }
    return "DATUM END at this edge";
}

std::vector<std::string> strip_arrow_words(const StripPart& part) {
    const auto& start = part.tile->start;
    switch (start.kind) {
        case TileEnd::piece:
            break;
        case TileEnd::blank:
            return {"to datum end:", place_text(*part.project, start.at)};
        case TileEnd::joint:
            return {"to datum end:", "line at " + place_text(*part.project, start.at)};
    }
    return {"to datum end:", "this edge"};
}

std::string strip_end_words(const StripPart& part) {
    const auto& end = part.tile->end;
    if (end.kind == TileEnd::joint) return part_number(part, 1) + " goes on at the line";
    if (end.kind == TileEnd::piece) return "far end at this edge";
    if (part.next == nullptr) return "nothing more is drilled";
    return part_number(part, 1) + ": at " + place_text(*part.project, part.next->start.at);
}

std::string strip_drill_words(const MarkFacts& facts) {
    const auto tools = tools_at_all(facts);
    if (tools.empty()) return {};
    const bool is_matched = facts.drills.front().operation == HoleOperation::match_drill;
    return "all " + tools + (is_matched ? ", through the mate" : "");
}

std::string strip_hole_words(const MarkFacts& facts, Index hole) {
    const auto row = std::ranges::find(facts.drills, hole, &DrillRow::pattern_hole);
    if (row == facts.drills.end()) return {};
    const auto number = std::to_string(row->hole);
    return tools_at_all(facts).empty() ? number + ": " + tools_at(facts, hole) : number;
}

}  // namespace model
