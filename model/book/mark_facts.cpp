#include "model/book/mark_facts.h"

#include <cstddef>
#include <tuple>
#include <unordered_map>
#include <utility>

namespace model {
namespace {

std::vector<int> numbers_of(const MarkFacts& facts) {
    std::unordered_map<Index, int> by_hole;
    for (const auto& row : facts.drills) by_hole[row.pattern_hole] = row.hole;
    std::vector<int> numbers;
    for (const auto& hole : facts.flat.holes) {
        const auto found = by_hole.find(hole.hole);
        numbers.push_back(found == by_hole.end() ? 0 : found->second);
    }
    return numbers;
}

std::size_t slot_of(Index mark, Hand hand) {
    return std::size_t{2} * mark + (hand == Hand::opposite ? 1 : 0);
}

}  // namespace

std::vector<MarkFacts> mark_facts(const Project& project,
                                  const Catalogue& catalogue,
                                  const Resolved& resolved) {
    std::vector<std::vector<DrillRow>> drills(resolved.marks.size() * 2);
    for (auto& row : drill_rows(project, catalogue, resolved))
        drills[slot_of(row.mark, row.hand)].push_back(std::move(row));
    std::vector<MarkFacts> all;
    for (auto& row : cut_rows(project, catalogue, resolved)) {
        MarkFacts facts;
        facts.drills = std::move(drills[slot_of(row.mark, row.hand)]);
        facts.cut = std::move(row);
        facts.flat = with_datum_above(unrolled_piece(resolved, catalogue, facts.pattern()));
        facts.numbers = numbers_of(facts);
        all.push_back(std::move(facts));
    }
    return all;
}

std::string ends_sentence(const MarkFacts& facts) {
    const auto& [a, b] = std::tie(facts.cut.end_a, facts.cut.end_b);
    if (facts.is_sheet()) return a == "square" ? "All corners square." : "Cut to its outline.";
    if (a == b) return "Both ends: " + a + ".";
    return "Datum end: " + a + ". Far end: " + b + ".";
}

std::string work_words(const DrillRow& row) {
    if (row.operation == HoleOperation::tap) return row.drill;
    return std::string(name_of(row.operation)) + " " + row.drill;
}

std::string name_of_mark(const Resolved& resolved, const MarkFacts& facts) {
    std::string name = resolved.marks[facts.cut.mark].name;
    if (facts.cut.hand == Hand::as_drawn) name += " as drawn";
    if (facts.cut.hand == Hand::opposite) name += " opposite hand";
    return name;
}

}  // namespace model
