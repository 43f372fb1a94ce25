#include "model/resolve/finding.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <utility>

namespace model {

std::string_view name_of(Severity severity) {
    constexpr std::array<std::string_view, 3> names{"note", "warning", "error"};
    return names[static_cast<std::size_t>(severity)];
}

std::string_view name_of(SubjectKind kind) {
    constexpr std::array<std::string_view, 15> names{
        "project", "shop",     "dimension",      "stock", "obstacle", "frame", "plane",  "bay",
        "member",  "diagonal", "leaning member", "joint", "panel",    "load",  "opening"};
    return names[static_cast<std::size_t>(kind)];
}

void merge_alike(std::vector<Finding>& findings, std::size_t first) {
    std::size_t kept = first;
    for (std::size_t i = first; i < findings.size(); ++i) {
        auto& next = findings[i];
        const auto begin = findings.begin() + static_cast<std::ptrdiff_t>(first);
        const auto end = findings.begin() + static_cast<std::ptrdiff_t>(kept);
        const auto alike = std::find_if(begin, end, [&](const Finding& other) {
            return other.code == next.code && other.severity == next.severity &&
                   other.numbers == next.numbers && other.what == next.what &&
                   other.mend == next.mend;
        });
        if (alike == end) {
            if (kept != i) findings[kept] = std::move(next);
            ++kept;
            continue;
        }
        // The two corners of one joint follow each other.
        for (auto& subject : next.concerns) {
            if (alike->concerns.back() != subject) alike->concerns.push_back(std::move(subject));
        }
    }
    findings.resize(kept);
}

std::string length_in_words(engine::Length length, engine::TapeStyle style) {
    style.with_unit = true;
    return engine::exact_text(length, style);
}

std::string depth_in_words(engine::Length depth, engine::TapeStyle style) {
    const auto unit = engine::bare_unit(style);
    const bool is_inch = unit == engine::LengthUnit::inch || unit == engine::LengthUnit::foot;
    const auto mark = is_inch ? engine::Length::nm_per_inch / 64 : engine::Length::nm_per_mm / 10;
    const auto marks = (depth.nm() + mark - 1) / mark;
    return length_in_words(engine::Length::from_nm(marks * mark), style);
}

std::string distance_in_words(double mm, const engine::TapeStyle& style) {
    const auto step = engine::tape_step(style).nm();
    const auto marks = static_cast<std::int64_t>(mm * 1e6 / static_cast<double>(step) + 1e-4);
    if (marks > 0) return length_in_words(engine::Length::from_nm(marks * step), style);
    return "less than " + length_in_words(engine::Length::from_nm(step), style);
}

std::string where_text(const Finding& finding) {
    std::string text;
    std::string_view frame;
    for (const auto& subject : finding.concerns) {
        if (!text.empty()) text += ", ";
        if (!subject.frame.empty() && subject.frame != frame) text += subject.frame + ": ";
        frame = subject.frame;
        text += name_of(subject.kind);
        if (!subject.name.empty()) text += " " + subject.name;
    }
    return text;
}

}  // namespace model
