#include "editor/places/bench_lines.h"

#include "editor/places/make_tables.h"
#include "model/schedule/fastener_words.h"
#include "model/schedule/tables.h"

#include <algorithm>
#include <map>

namespace editor {
namespace {

using model::BenchPiece;
using model::BenchWork;
using model::Index;

// Never broken between inches and their fraction.
std::string length_words(const Derived& derived, engine::Length length) {
    std::string words;
    for (const char c : model::length_text(*derived.project, length)) {
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

std::vector<std::string> cut_lines(const Derived& derived, const model::Piece& piece) {
    const auto* row = cut_of(derived, piece);
    if (row == nullptr) return {};
    std::vector<std::string> lines{length_words(derived, row->length)};
    if (row->width.nm() > 0) lines.front() += " x " + length_words(derived, row->width);
    lines.push_back("from " + row->section);
    lines.push_back("datum end " + row->end_a + ", far end " + row->end_b);
    return lines;
}

// A line for each setting of the fence: drill, leg and distances from the datum end.
std::vector<std::string> drill_lines(const Derived& derived, const model::Piece& piece) {
    std::vector<std::string> lines;
    std::string last;
    for (const auto& row : derived.drills) {
        if (row.mark != piece.mark || row.hand != piece.hand) continue;
        const auto head = row.leg + ", fence " + length_words(derived, row.gauge) + ", " +
                          std::string(name_of(row.operation)) + " " + row.drill + ", datum end " +
                          (row.datum_end == model::TableEnd::left ? "left" : "right") + ": ";
        if (head != last || lines.empty()) {
            lines.push_back(head + length_words(derived, row.from_datum));
            last = head;
        } else {
            lines.back() += ", " + length_words(derived, row.from_datum);
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
    for (const auto& joint : derived.resolved.joints) {
        if (joint.pieces[0] != piece && joint.pieces[1] != piece) continue;
        for (Index i = 0; i < joint.fastener_count; ++i) {
            ++counts[fasteners.words(fasteners.spec_of(joint.first_fastener + i)).label];
        }
    }
    std::vector<std::string> lines;
    for (const auto& [label, count] : counts)
        lines.push_back(std::to_string(count) + " x " + label);
    if (lines.empty()) lines.push_back("no fastener of its own");
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
            return cut_lines(derived, it);
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
