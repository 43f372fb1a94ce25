#include "editor/opening_verdicts.h"

#include <algorithm>
#include <cmath>

namespace editor {
namespace {

using model::Severity;

std::string words_of(model::Nm length, const Derived& derived) {
    return model::length_in_words(engine::Length::from_nm(length), derived.project->shown);
}

std::string tightest_words(const model::OpeningFit& fit) {
    return "nearest on the left at the " + name_of(fit.tightest[0]) + ", on the right at the " +
           name_of(fit.tightest[1]);
}

void tell_fit(OpeningVerdict& verdict, const Derived& derived) {
    const auto& fit = *verdict.fit;
    if (fit.binds) {
        verdict.severity = Severity::error;
        verdict.words = "binds by " + words_of(-fit.slack, derived) + "; " + tightest_words(fit);
    } else if (fit.too_tall > 0) {
        verdict.severity = Severity::warning;
        verdict.words = "stands " + words_of(fit.too_tall, derived) + " above what was measured";
    } else {
        verdict.words = "goes in with " + words_of(fit.slack, derived) + " to spare across; " +
                        tightest_words(fit);
    }
}

void tell_measures(OpeningVerdict& verdict, const Derived& derived) {
    const auto& shown = derived.project->shown;
    double worst = 0.0;
    for (const auto& error : verdict.fit->closing) {
        worst = std::max(worst, std::abs(error.mm));
        if (std::abs(error.mm) <= error.most_mm) continue;
        verdict.doubts.push_back("measure again: the " + error.of + " is " +
                                 model::distance_in_words(std::abs(error.mm), shown) +
                                 (error.mm > 0 ? " more" : " less") +
                                 " than follows from the others");
    }
    if (verdict.fit->closing.empty()) {
        verdict.sureness = "nothing was measured twice, so no measure proves another";
    } else if (verdict.doubts.empty()) {
        const auto apart = engine::Length::from_nm(std::llround(worst * 1e6));
        verdict.sureness = "the measures agree within " + model::depth_in_words(apart, shown);
    }
    for (const auto from : verdict.fit->lean_from) {
        if (from != model::LeanFrom::half_widths || verdict.fit->narrows == 0) continue;
        verdict.doubts.emplace_back("which side leans was not measured: hold a plumb line to one");
        break;
    }
}

OpeningVerdict verdict_of(model::Index frame,
                          const model::MeasuredOpening& opening,
                          const Derived& derived) {
    const auto& project = *derived.project;
    OpeningVerdict verdict;
    verdict.frame = project.frames[frame].name;
    verdict.opening = opening.name;
    verdict.words = model::fault_of_opening(project, derived.resolved, opening);
    if (!verdict.words.empty()) {
        verdict.severity = Severity::error;
        return verdict;
    }
    verdict.fit = model::opening_fit(project, derived.resolved, frame, opening);
    if (!verdict.fit) {
        verdict.severity = Severity::warning;
        verdict.words = "cannot be told: a measure of it cannot be read, or the frame is empty";
        return verdict;
    }
    tell_fit(verdict, derived);
    tell_measures(verdict, derived);
    return verdict;
}

}  // namespace

std::vector<OpeningVerdict> opening_verdicts(const Derived& derived) {
    std::vector<OpeningVerdict> verdicts;
    const auto& frames = derived.project->frames;
    for (model::Index f = 0; f < frames.size() && f < derived.resolved.frames.size(); ++f) {
        for (const auto& opening : frames[f].openings)
            verdicts.push_back(verdict_of(f, opening, derived));
    }
    return verdicts;
}

std::string name_of(model::OpeningLevel level) {
    switch (level) {
        case model::OpeningLevel::bottom:
            return "bottom";
        case model::OpeningLevel::middle:
            return "middle";
        case model::OpeningLevel::top:
            return "top";
    }
    return "";
}

}  // namespace editor
