#include "engine/files/csv.h"
#include "model/schedule/csv_tables.h"
#include "model/schedule/decimal_inches.h"
#include "model/schedule/decimal_mm.h"
#include "model/schedule/drill_order.h"
#include "model/schedule/fastener_words.h"
#include "model/schedule/laying.h"
#include "model/schedule/length_texts.h"
#include "model/schedule/piece_words.h"
#include "model/schedule/tables.h"

#include <algorithm>
#include <cstdint>

namespace model {
namespace {

// The marks that one hole of a mark meets, over all its pieces: "B1; B2"; "the van" for a hole by
// which a piece is fixed to it.
std::string mates_of(const Resolved& resolved, const MarkGroup& group, std::uint32_t hole) {
    std::vector<Index> marks;
    std::string text;
    for (const auto piece : group.pieces) {
        const auto holes = resolved.holes_of(resolved.pieces[piece]);
        if (hole >= holes.size()) continue;
        if (holes[hole].mate == no_index) {
            text = "the van";
            continue;
        }
        const auto mark = resolved.pieces[holes[hole].mate].mark;
        const auto place = std::ranges::lower_bound(marks, mark);
        if (mark == no_index || (place != marks.end() && *place == mark)) continue;
        marks.insert(place, mark);
    }
    for (const auto mark : marks) {
        if (!text.empty()) text += "; ";
        text += resolved.marks[mark].name;
    }
    return text;
}

// The fasteners that go into one hole of a mark, over all its pieces: stacks may differ.
std::string fasteners_of(const Resolved& resolved,
                         const FastenersInUse& fasteners,
                         const MarkGroup& group,
                         std::uint32_t hole) {
    std::vector<std::size_t> specs;
    for (const auto piece : group.pieces) {
        const auto holes = resolved.holes_of(resolved.pieces[piece]);
        if (hole >= holes.size() || holes[hole].fastener == no_index) continue;
        const auto spec = fasteners.spec_of(holes[hole].fastener);
        const auto place = std::ranges::lower_bound(specs, spec);
        if (place == specs.end() || *place != spec) specs.insert(place, spec);
    }
    std::string text;
    for (const auto spec : specs) {
        if (!text.empty()) text += "; ";
        text += fasteners.words(spec).label;
    }
    return text;
}

// "#30", "F", "3.3 mm"; a fraction with its unit, since a spreadsheet would take a bare "1/8" for a
// date.
std::string drill_name(const Catalogue& catalogue, const Hole& hole) {
    if (hole.drill >= catalogue.drills.size()) return {};
    const auto& drill = catalogue.drills[hole.drill];
    return drill.series == "fraction" ? drill.name + " in" : drill.name;
}

// "tap 8-32" for "machine screw 8-32".
std::string tap_name(const MachineScrew& screw) {
    return "tap " + screw.id.substr(screw.id.rfind(' ') + 1);
}

// The same place with the tap put in.
void turn_into_tapping(const Catalogue& catalogue, const Hole& hole, DrillRow& row) {
    row.operation = HoleOperation::tap;
    if (hole.tap >= catalogue.screws.size()) return;
    row.diameter = catalogue.screws[hole.tap].diameter;
    row.drill = tap_name(catalogue.screws[hole.tap]);
}

}  // namespace

std::vector<DrillRow> drill_rows(const Project& project,
                                 const Catalogue& catalogue,
                                 const Resolved& resolved) {
    const PieceWords words{project, catalogue, resolved};
    const FastenersInUse fasteners{catalogue, resolved};
    const auto groups = pieces_by_mark(resolved);
    const auto order = drill_order(catalogue, resolved, groups);
    std::vector<DrillRow> rows;
    rows.reserve(order.size());
    for (const auto& step : order) {
        const auto& group = groups[step.group];
        const auto pattern = group.pieces.front();
        const auto& piece = resolved.pieces[pattern];
        const auto& hole = resolved.holes_of(piece)[step.hole];
        rows.push_back({.mark = group.mark,
                        .hand = group.hand,
                        .leg = std::string(words.wall(pattern, hole.wall)),
                        .hole = step.number,
                        .pieces = static_cast<int>(group.pieces.size()),
                        .from_datum = engine::Length::from_nm(hole.from_datum),
                        .gauge = engine::Length::from_nm(hole.gauge),
                        .diameter = engine::Length::from_nm(hole.diameter),
                        .drill = drill_name(catalogue, hole),
                        .operation = hole.operation,
                        .fastener = fasteners_of(resolved, fasteners, group, step.hole),
                        .mates_with = mates_of(resolved, group, step.hole),
                        .setup = step.setup,
                        .pattern_hole = piece.first_hole + step.hole,
                        .datum_end = datum_end_on_table(piece, hole.wall)});
        if (step.is_tapping) turn_into_tapping(catalogue, hole, rows.back());
    }
    return rows;
}

std::string drill_csv(const Project& project,
                      const Resolved& resolved,
                      const std::vector<DrillRow>& rows) {
    engine::CsvText text{"mark",        "hand",          "pieces",    "leg",      "hole",
                         "from_datum",  "from_datum_mm", "gauge",     "gauge_mm", "diameter_in",
                         "diameter_mm", "drill",         "operation", "fastener", "mates_with",
                         "setup",       "datum_end"};
    LengthTexts shown{project.shown};
    for (const auto& row : rows) {
        text.row({resolved.marks[row.mark].name, name_of(row.hand), std::to_string(row.pieces),
                  row.leg, std::to_string(row.hole), shown(row.from_datum),
                  decimal_mm(row.from_datum), shown(row.gauge), decimal_mm(row.gauge),
                  decimal_inches(row.diameter), decimal_mm(row.diameter), row.drill,
                  name_of(row.operation), row.fastener, row.mates_with, std::to_string(row.setup),
                  row.datum_end == TableEnd::left ? "left" : "right"});
    }
    return std::move(text).take();
}

}  // namespace model
