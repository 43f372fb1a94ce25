// What the program has to say about a project: a stable code, the things it concerns, its numbers
// and a mend in words. Any part of resolve and any check may report findings.
#pragma once

#include "engine/measure/length.h"
#include "engine/measure/tape.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace model {

enum class Severity { note, warning, error };

std::string_view name_of(Severity severity);  // "note", "warning", "error"

enum class SubjectKind {
    project,
    shop,
    dimension,
    stock,
    obstacle,
    frame,
    plane,
    bay,
    member,
    diagonal,
    leaning,
    joint,
    panel,
    load,
    opening
};

std::string_view name_of(SubjectKind kind);

// Something the user stated, found by kind and name. Joints are named by their two members.
struct Subject {
    SubjectKind kind = SubjectKind::project;
    std::string frame;  // empty for what belongs to no frame
    std::string name;

    bool operator==(const Subject&) const = default;
};

struct FindingNumber {
    std::string name;  // "depth", "fits", "wanted"
    std::variant<engine::Length, double> value;

    bool operator==(const FindingNumber&) const = default;
};

struct Finding {
    std::string code;  // "loose_end": never changes once published
    Severity severity = Severity::warning;
    std::vector<Subject> concerns;
    std::vector<FindingNumber> numbers;
    std::string what;  // one sentence, no trailing stop
    std::string mend;  // what would cure it

    bool operator==(const Finding&) const = default;
};

// From `first` on, findings of one code that say the same become one that concerns all their
// things.
void merge_alike(std::vector<Finding>& findings, std::size_t first);

// A length in a sentence: exact, with its unit: "3/32 in".
std::string length_in_words(engine::Length length, engine::TapeStyle style);

// How deep something enters: on a 1/64 in mark where lengths are shown in inches or feet, else in
// tenths of a millimetre; what lies between goes up to the next.
std::string depth_in_words(engine::Length depth, engine::TapeStyle style);

// How far apart two things are, in millimetres: on the marks of the tape, no more than there is;
// "less than 1/16 in" where that is less than one.
std::string distance_in_words(double mm, const engine::TapeStyle& style);

// "counter: post left, rail front top": the things it concerns, in words.
std::string where_text(const Finding& finding);

}  // namespace model

// Made once, in finding_lists.cpp.
extern template class std::vector<model::Finding>;
extern template class std::vector<model::FindingNumber>;
extern template class std::vector<model::Subject>;
