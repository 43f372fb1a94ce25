#include "editor/places/bench_lines.h"

#include "editor/places/make_tables.h"
#include "model/schedule/fastener_words.h"
#include "model/schedule/length_texts.h"
#include "model/schedule/tables.h"

#include <algorithm>
#include <map>
#include <span>

namespace editor {
namespace {

using model::BenchPiece;
using model::BenchWork;
using model::Index;

// With its unit; never broken between inches and their fraction.
std::string length_words(const Derived& derived, engine::Length length) {
    auto style = derived.project->shown;
    style.with_unit = true;
    std::string words;
    for (const char c : model::shown_text(length, style)) {
        if (c == ' ') {
            words += "\xC2\xA0";
        } else {
            words += c;
        }
    }
    return words;
}

const model::CutRow* cut_of(const Derived& derived, const model::Piece& piece) {
    const auto row = std::ranges::find_if(derived.cuts, [&](const model::CutRow& it) {
        return it.mark == piece.mark && it.hand == piece.hand;
    });
    return row == derived.cuts.end() ? nullptr : &*row;
}

// ", bar 2": where its cut is planned, or was made.
std::string bar_words(const Derived& derived, Index piece) {
    for (const auto& bar : derived.saw) {
        const auto cut = std::ranges::find(bar.cuts, piece, &model::SawCut::piece);
        if (cut == bar.cuts.end()) continue;
        return ", bar " + std::to_string(bar.number) + ", from " +
               length_words(derived, cut->start) + " on";
    }
    return {};
}

std::vector<std::string> cut_lines(const Derived& derived, Index index) {
    const auto& piece = derived.resolved.pieces[index];
    const auto* row = cut_of(derived, piece);
    if (row == nullptr) return {};
    std::vector<std::string> lines{length_words(derived, row->length)};
    if (row->width.nm() > 0) lines.front() += " x " + length_words(derived, row->width);
    lines.push_back("from " + row->section + bar_words(derived, index));
    lines.push_back("datum end " + row->end_a + ", far end " + row->end_b);
    return lines;
}

// What is drilled by its mate's holes needs no fence.
std::string setting_words(const Derived& derived, const model::DrillRow& row) {
    std::string words = row.leg + ", ";
    const bool is_by_mate = row.operation == model::HoleOperation::match_drill;
    if (!is_by_mate) words += "fence " + length_words(derived, row.gauge) + ", ";
    words += std::string(name_of(row.operation)) + " " + row.drill;
    if (is_by_mate) words += " through " + row.mates_with;
    return words + ", datum end " + (row.datum_end == model::TableEnd::left ? "left" : "right") +
           ": ";
}

// A line for each setting: of the fence, the drill and how the piece lies; distances from the datum
// end.
std::vector<std::string> drill_lines(const Derived& derived, const model::Piece& piece) {
    std::vector<std::string> settings;
    std::vector<std::string> lines;
    for (const auto& row : derived.drills) {
        if (row.mark != piece.mark || row.hand != piece.hand) continue;
        const auto setting = setting_words(derived, row);
        const auto distance = length_words(derived, row.from_datum);
        const auto same = std::ranges::find(settings, setting);
        if (same == settings.end()) {
            settings.push_back(setting);
            lines.push_back(setting + distance);
        } else {
            lines[static_cast<std::size_t>(same - settings.begin())] += ", " + distance;
        }
    }
    return lines;
}

std::vector<std::string> fit_lines(const Derived& derived, Index piece) {
    const auto& resolved = derived.resolved;
    std::string mates;
    std::vector<Index> seen;
    for (const auto& joint : resolved.joints) {
        const auto [a, b] = joint.pieces;
        if (a != piece && b != piece) continue;
        const Index other = a == piece ? b : a;
        if (std::ranges::find(seen, other) != seen.end()) continue;
        seen.push_back(other);
        mates += mates.empty() ? "" : ", ";
        mates += mark_name(derived, resolved.pieces[other].mark);
    }
    if (mates.empty()) return {"it meets no other piece"};
    return {"meets " + mates, "pin it, and see that every hole meets its mate"};
}

std::vector<std::string> set_lines(const Derived& derived,
                                   const model::Catalogue& catalogue,
                                   Index piece) {
    const model::FastenersInUse fasteners(catalogue, derived.resolved);
    std::map<std::string, int> counts;
    for (Index i = 0; i < derived.resolved.fasteners.size(); ++i) {
        const auto& fastener = derived.resolved.fasteners[i];
        const auto plates = std::span(fastener.stack).first(fastener.stack_count);
        if (std::ranges::find(plates, piece, &model::StackPlate::piece) == plates.end()) continue;
        ++counts[fasteners.words(fasteners.spec_of(i)).label];
    }
    std::vector<std::string> lines;
    for (const auto& [label, count] : counts)
        lines.push_back(std::to_string(count) + " x " + label);
    lines.push_back("in the order that Assembly gives");
    return lines;
}

}  // namespace

std::vector<std::string> bench_lines(const Derived& derived,
                                     const model::Catalogue& catalogue,
                                     const BenchPiece& piece,
                                     BenchWork work) {
    const auto& it = derived.resolved.pieces[piece.piece];
    switch (work) {
        case BenchWork::cut:
            return cut_lines(derived, piece.piece);
        case BenchWork::deburr:
            return {"both ends and every edge; each hole once it is drilled"};
        case BenchWork::drill:
            return drill_lines(derived, it);
        case BenchWork::fit:
            return fit_lines(derived, piece.piece);
        case BenchWork::set:
            break;
    }
    return set_lines(derived, catalogue, piece.piece);
}

}  // namespace editor
