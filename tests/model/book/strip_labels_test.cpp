#include "model/book/strip_labels.h"

#include "model/book/mark_facts.h"
#include "model/book/stamp.h"

#include "tests/model/book/printed_sample.h"
#include "tests/model/book/strip_on_sheet.h"
#include "tests/model/catalogue/shipped_catalogue.h"
#include "tests/model/project/sample_files.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <map>

using engine::PageBox;
using engine::Paper;
using tests::PaperOnSheet;
using tests::PrintedSample;

namespace {

bool are_clear(const PageBox& a, const PageBox& b) {
    return a.left + a.width <= b.left || b.left + b.width <= a.left || a.top + a.height <= b.top ||
           b.top + b.height <= a.top;
}

// What is still there when the paper is cut out.
std::size_t check_paper(const PaperOnSheet& paper, const model::MarkFacts& facts, int parts) {
    std::size_t named = 0;
    CAPTURE(paper.name, paper.box.left, paper.box.top);
    const auto words = tests::words_within(paper, paper.box);
    CHECK_THAT(words, Catch::Contains(paper.name));
    CHECK_THAT(words, Catch::Contains("datum end"));
    CHECK(paper.arrows == 1);
    if (parts > 1) CHECK_THAT(words, Catch::Contains(" of " + std::to_string(parts)));
    REQUIRE(paper.legs.size() <= facts.flat.walls.size());
    for (const auto& leg : paper.legs) {
        const auto on_leg = tests::words_within(paper, leg);
        CAPTURE(on_leg);
        std::vector<std::string> names;
        for (const auto& wall : facts.flat.walls) names.push_back(model::strip_leg_words(wall));
        const auto said = tests::said_among(on_leg, names).size();
        const bool is_drilled =
            std::any_of(paper.holes.begin(), paper.holes.end(),
                        [&](const auto& cross) { return !are_clear(cross, leg); });
        CHECK((said == 1 || (said == 0 && !is_drilled)));
        named += said;
    }
    for (const auto& text : paper.texts) {
        const bool is_number = text.text.find_first_not_of("0123456789") == std::string::npos ||
                               text.text.find(": ") < 4;
        if (is_number && text.lettering.size <= model::hole_number_size) {
            // The middle of each cross can be punched.
            for (const auto& cross : paper.holes)
                CHECK(are_clear(text.box, {cross.left + 3.0, cross.top + 3.0, 2.0, 2.0}));
            continue;
        }
        for (const auto& cross : paper.holes) {
            CAPTURE(text.text);
            CHECK(are_clear(text.box, cross));
        }
    }
    return named;
}

}  // namespace

TEST_CASE(
    "each paper keeps its mark, hand, part, legs and the way to the datum end when it is cut "
    "out, clear of every cross",
    "[model][book][strips]") {
    std::size_t papers = 0;
    std::size_t legs = 0;
    std::size_t legs_named = 0;
    for (const auto& name : model_tests::sample_names()) {
        for (const auto& shown : {tests::inches, tests::millimetres}) {
            const PrintedSample sample(name, shown);
            const auto all =
                model::mark_facts(sample.project, shipped_catalogue(), sample.resolved);
            std::map<std::string, const model::MarkFacts*> by_name;
            for (const auto& facts : all)
                by_name[model::name_of_mark(sample.resolved, facts)] = &facts;
            for (const auto paper : {Paper::letter, Paper::a4}) {
                CAPTURE(name, engine::name_of(paper));
                const auto strips = model::drill_strips(sample.project, shipped_catalogue(),
                                                        sample.resolved, {.paper = paper});
                std::vector<PaperOnSheet> drawn;
                std::map<std::string, int> parts;
                for (const auto& page : strips.document.pages)
                    for (const auto& it : tests::papers_on(page)) {
                        ++parts[it.name];
                        drawn.push_back(it);
                    }
                for (const auto& it : drawn) {
                    CAPTURE(it.name);
                    REQUIRE(by_name.count(it.name) == 1);
                    legs_named += check_paper(it, *by_name[it.name], parts[it.name]);
                    legs += it.legs.size();
                }
                papers += drawn.size();
            }
        }
    }
    CHECK(papers > 500);
    CHECK(legs_named * 100 >= legs * 98);
}

// ---- narrow legs --------------------------------------------------------------------------------

namespace {

// An angle of 12 mm legs, drilled in both; the longest words that a mark has.
struct NarrowStrip {
    model::Project project;
    model::Resolved resolved;
    model::MarkFacts facts;
    model::StripTile tile;

    NarrowStrip(double length, double pitch) {
        resolved.marks = {{.name = "A17"}};
        facts.cut.hand = model::Hand::opposite;
        facts.cut.quantity = 4;
        facts.flat = {.width = 24.0, .length = length};
        facts.flat.walls = {{"leg a", 0, 12.0, 0.0}, {"leg b", 1, 12.0, 24.0}};
        for (double at = 6.0; at < length; at += pitch) {
            for (const std::size_t wall : {0U, 1U}) {
                const auto hole = static_cast<model::Index>(facts.flat.holes.size());
                facts.flat.holes.push_back({hole, wall, wall == 0 ? 6.0 : 18.0, at, 3.3});
                facts.drills.push_back({.leg = facts.flat.walls[wall].name,
                                        .hole = static_cast<int>(hole) + 1,
                                        .drill = "#30",
                                        .pattern_hole = hole});
            }
        }
        tile = {.wall_count = 2, .to = length, .part = 2, .parts = 13};
    }

    model::StripLabels labels() const {
        return model::strip_labels({.project = &project,
                                    .resolved = &resolved,
                                    .facts = &facts,
                                    .outside = &facts.flat,
                                    .tile = &tile});
    }
};

std::string words_of(const model::StripLabels& labels, bool on_tab) {
    std::string words;
    for (const auto& label : labels.labels) {
        if ((label.box.top < 0.0) != on_tab) continue;
        for (const auto& line : label.lines) words += line + " ";
    }
    return words;
}

void check_clear(const NarrowStrip& strip, const model::StripLabels& labels) {
    for (const auto& label : labels.labels) {
        CAPTURE(label.lines.front());
        CHECK(label.size >= 2.0);
        CHECK(label.box.left >= 0.5);
        CHECK(label.box.left + label.box.width <= strip.facts.flat.width - 0.5);
        CHECK(label.box.top >= -labels.tab);
        CHECK(label.box.top + label.box.height <= strip.tile.to - 0.5);
        for (const auto& hole : strip.facts.flat.holes)
            CHECK(are_clear(label.box, {hole.across - 4.0, hole.down - 4.0, 8.0, 8.0}));
        for (const auto& other : labels.labels)
            CHECK((&label == &other || are_clear(label.box, other.box)));
    }
}

}  // namespace

TEST_CASE("on narrow legs words are turned along the leg or broken, before a tab is added",
          "[model][book][strips]") {
    const NarrowStrip strip(200.0, 45.0);
    const auto labels = strip.labels();
    CHECK(labels.tab == 0.0);
    check_clear(strip, labels);
    const auto words = words_of(labels, false);
    for (const auto* wanted :
         {"A17 opposite hand", "part 2 of 13", "leg a, outside", "leg b, outside", "datum end"})
        CHECK_THAT(words, Catch::Contains(wanted));
    CHECK(std::any_of(labels.labels.begin(), labels.labels.end(),
                      [](const auto& label) { return label.is_turned; }));
}

TEST_CASE("where holes leave no room for words, a tab at the datum end has them",
          "[model][book][strips]") {
    const NarrowStrip strip(100.0, 10.0);
    const auto labels = strip.labels();
    REQUIRE(labels.tab > 5.0);
    check_clear(strip, labels);
    const auto words = words_of(labels, true);
    for (const auto* wanted : {"A17 opposite", "2 of 13", "leg a,", "leg b,", "datum end"})
        CHECK_THAT(words, Catch::Contains(wanted));
    CHECK(words_of(labels, false).empty());
    // The end of the piece lies below the tab.
    CHECK(labels.labels.back().arrow == model::LabelArrow::down);
}

TEST_CASE("a tab that one leg needs names all legs from the left", "[model][book][strips]") {
    NarrowStrip strip(100.0, 10.0);
    auto& holes = strip.facts.flat.holes;
    holes.erase(
        std::remove_if(holes.begin(), holes.end(), [](const auto& hole) { return hole.wall == 1; }),
        holes.end());
    const auto labels = strip.labels();
    REQUIRE(labels.tab > 0.0);
    CHECK_THAT(words_of(labels, true),
               Catch::Contains("from left: leg a, outside; leg b, outside") ||
                   Catch::Contains("from left: leg a, outside; leg b,"));
}

TEST_CASE("words are turned or broken before they are small", "[model][book][strips]") {
    const NarrowStrip strip(200.0, 45.0);
    for (const auto& label : strip.labels().labels) {
        CAPTURE(label.lines.front());
        const bool is_name = label.weight == engine::LetterWeight::bold;
        CHECK(label.size >= (is_name ? 2.8 : 2.3));
    }
}

TEST_CASE("a number without room beside its cross stands aside with a lead, or is not drawn",
          "[model][book][strips]") {
    for (const double pitch : {2.8, 3.5, 4.2}) {
        CAPTURE(pitch);
        const NarrowStrip strip(60.0, pitch);
        const auto labels = strip.labels();
        std::size_t led = 0;
        for (const auto& number : labels.numbers) {
            CAPTURE(number.words);
            const double height = engine::capital_height(number.size);
            const PageBox box{number.at.x, number.at.y - height,
                              engine::text_width(number.words, number.size), height};
            for (const auto& hole : strip.facts.flat.holes) {
                // Beside its own one it stands within the corner of its square.
                if (std::to_string(hole.hole + 1) == number.words) continue;
                const double r = hole.diameter / 2;
                CHECK(are_clear(box, {hole.across - r, hole.down - r, 2 * r, 2 * r}));
            }
            if (number.lead) ++led;
        }
        const auto unnumbered = strip.facts.flat.holes.size() - labels.numbers.size();
        CHECK(led + unnumbered > 0);
        // On the strip or its tab it is said of each.
        const auto said = words_of(labels, false) + words_of(labels, true);
        for (const auto& hole : strip.facts.flat.holes) {
            const auto number = std::to_string(hole.hole + 1);
            CAPTURE(number, said);
            const bool is_numbered = std::ranges::any_of(
                labels.numbers, [&](const auto& it) { return it.words == number; });
            CHECK((is_numbered || said.find("hole " + number + " stands") != std::string::npos));
        }
    }
}

TEST_CASE("words lie on what is left of a piece with a sloped end", "[model][book][strips]") {
    NarrowStrip strip(120.0, 60.0);
    strip.facts.flat.loops = {{{0.0, 60.0}, {12.0, 0.0}, {12.0, 120.0}, {0.0, 120.0}},
                              {{12.0, 0.0}, {24.0, 0.0}, {24.0, 120.0}, {12.0, 120.0}}};
    const auto labels = strip.labels();
    check_clear(strip, labels);
    for (const auto& label : labels.labels) {
        if (label.box.left > 12.0 || label.box.top < 0.0) continue;
        CAPTURE(label.lines.front(), label.box.left, label.box.top);
        CHECK(label.box.top > 60.0 - 5.0 * label.box.left);
    }
}
