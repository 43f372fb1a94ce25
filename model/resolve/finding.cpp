#include "model/resolve/finding.h"

#include <array>
#include <cstddef>

namespace model {

std::string_view name_of(Severity severity) {
    constexpr std::array<std::string_view, 3> names{"note", "warning", "error"};
    return names[static_cast<std::size_t>(severity)];
}

std::string_view name_of(SubjectKind kind) {
    constexpr std::array<std::string_view, 13> names{
        "project", "shop",   "dimension", "stock", "obstacle", "frame", "plane",
        "bay",     "member", "diagonal",  "joint", "panel",    "load"};
    return names[static_cast<std::size_t>(kind)];
}

std::string length_in_words(engine::Length length, engine::TapeStyle style) {
    style.with_unit = true;
    return engine::exact_text(length, style);
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
