#include "editor/places/paper.h"

#include "editor/kit/widgets.h"
#include "editor/paper_desk.h"
#include "editor/places/choice_row.h"
#include "model/book/drill_strips.h"
#include "model/resolve/finding.h"

#include <string>

namespace editor {
namespace {

std::string listed(const std::vector<std::string>& marks) {
    std::string words;
    for (const auto& mark : marks) words += (words.empty() ? "" : ", ") + mark;
    return words;
}

void draw_changes(PaperDesk& papers) {
    if (!papers.stamps_trouble.empty()) {
        draw_wrapped("Whether the book is still true cannot be told: " + papers.stamps_trouble,
                     Type::small, colour::amber);
        log_item("stamps", papers.stamps_trouble);
        return;
    }
    if (!papers.printed) return;
    if (papers.changed.empty() && papers.gone.empty()) {
        draw_wrapped(
            "Each mark is cut and drilled as the book says; its numbers and lists may be others.",
            Type::small, colour::quiet);
        log_item("changed", "");
        return;
    }
    if (!papers.changed.empty()) {
        draw_wrapped("Drawn otherwise now: " + listed(papers.changed) + ".", Type::text,
                     colour::amber);
    }
    log_item("changed", listed(papers.changed));
    if (!papers.gone.empty()) {
        draw_wrapped("Not there any more: " + listed(papers.gone) + ".", Type::text, colour::amber);
        log_item("gone", listed(papers.gone));
    }
    if (draw_button("Write the changed drawings alone", {.enabled = !papers.changed.empty()})) {
        papers.wish = PaperWish::changed;
    }
    draw_wrapped(
        "What is ticked at the bench is compared there: what can be reworked, what is "
        "spoiled.",
        Type::small, colour::quiet);
}

void draw_ruler_field(const char* name, const char* words, std::string& typed) {
    ImGui::AlignTextToFramePadding();
    draw_text(words);
    ImGui::SameLine(scaled(140));
    draw_field(name, typed, {.hint = "as it should be", .width = scaled(120), .nudged = {}});
}

void draw_strips(PaperDesk& papers, const Derived& derived) {
    draw_text("Drill strips", Type::strong);
    draw_wrapped(
        "Paper at full size to wrap round the bar: a fold at the heel, a cross at each "
        "hole. Print at 100 %.");
    const auto ruler =
        model::length_in_words(model::measured_ruler(*derived.project), derived.project->shown);
    draw_wrapped("Each sheet has a ruler of " + ruler +
                     " across and down. Where yours measure otherwise, type what they measure, and "
                     "write the strips anew.",
                 Type::small, colour::quiet);
    draw_ruler_field("across", "across, it measures", papers.across);
    draw_ruler_field("down", "down, it measures", papers.down);
    if (draw_button("Write the drill strips")) papers.wish = PaperWish::strips;
}

}  // namespace

void draw_paper(const Derived& derived, MakeState& state) {
    if (!state.paper) return;
    auto& papers = *state.paper;
    const auto now = paper_of(papers, *derived.project);
    const auto chosen =
        draw_choice_row<engine::Paper>(now, {{engine::Paper::letter, "Letter", "Letter"},
                                             {engine::Paper::a4, "A4", "A4"},
                                             {engine::Paper::tabloid, "Tabloid", "Tabloid"},
                                             {engine::Paper::a3, "A3", "A3"}});
    if (chosen != now) papers.paper = chosen;
    if (!papers.said.empty()) {
        draw_wrapped(papers.said, Type::small, papers.is_trouble ? colour::amber : colour::quiet);
        log_item("said", papers.said);
    }
    draw_rule();
    draw_text("Shop book", Type::strong);
    draw_wrapped(
        "All that lies on the bench, without a computer beside the drill press: what to "
        "buy, bars and stops, a drawing of each mark, frames, corners, the order of "
        "assembly, checks to sign.");
    if (draw_button("Write the shop book", {.weight = Weight::main})) papers.wish = PaperWish::book;
    draw_changes(papers);
    draw_rule();
    draw_strips(papers, derived);
}

}  // namespace editor
