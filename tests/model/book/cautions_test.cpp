// Each kind of work that a project has begins its chapter with its caution, and no other does.
#include "model/schedule/cautions.h"

#include "tests/model/book/book_job.h"
#include "tests/model/book/texts_on_page.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace {

using model::Work;

struct Expected {
    Work work;
    std::string chapter;
};

const std::vector<Expected>& chapters() {
    static const std::vector<Expected> all{{Work::cutting, "What to cut"},
                                           {Work::deburring, "What to cut"},
                                           {Work::drilling, "Marks to cut and drill"},
                                           {Work::tapping, "Marks to cut and drill"},
                                           {Work::riveting, "Order of assembly"},
                                           {Work::into_the_van, "Order of assembly"}};
    return all;
}

std::string closed_up(const std::string& text) {
    std::string closed;
    for (const char c : text)
        if (c != ' ') closed += c;
    return closed;
}

std::string head_of(Work work) {
    return closed_up("Caution, " + std::string(model::name_of(work)) + ": " +
                     std::string(model::caution_of(work).line));
}

// On which page a chapter begins; none where there is none.
std::optional<std::size_t> first_page(const engine::Document& book, const std::string& chapter) {
    for (const auto& bookmark : book.bookmarks)
        if (bookmark.level == 0 && bookmark.title == chapter) return bookmark.page;
    return std::nullopt;
}

std::size_t times(const engine::Document& book, Work work) {
    std::size_t count = 0;
    for (const auto& page : book.pages)
        count +=
            closed_up(tests::words_on(page)).find(head_of(work)) != std::string::npos ? 1U : 0U;
    return count;
}

// What is asked of the shop, by the tables that it works from.
bool is_asked(const model::Resolved& resolved, Work work) {
    std::size_t taps = 0;
    std::size_t rivets = 0;
    for (const auto& hole : resolved.holes) {
        taps +=
            hole.operation == model::HoleOperation::tap || hole.tap != model::no_index ? 1U : 0U;
    }
    for (const auto& fastener : resolved.fasteners)
        rivets += fastener.spec.kind == model::FastenerSpec::Kind::blind_rivet ? 1U : 0U;
    switch (work) {
        case Work::cutting:
        case Work::deburring:
        case Work::into_the_van:
            break;
        case Work::drilling:
            return !resolved.holes.empty();
        case Work::tapping:
            return taps > 0;
        case Work::riveting:
            return rivets > 0;
    }
    return !resolved.pieces.empty();
}

void check_cautions(const tests::BookJob& job, std::map<Work, std::array<int, 2>>& seen) {
    const auto book = tests::book_of(job);
    for (const auto& it : chapters()) {
        CAPTURE(model::name_of(it.work));
        const bool is_there = is_asked(job.resolved, it.work);
        ++seen[it.work][is_there ? 1 : 0];
        CHECK(times(book, it.work) == (is_there ? 1 : 0));
        if (!is_there) continue;
        const auto page = first_page(book, it.chapter);
        REQUIRE(page);
        const auto words = closed_up(tests::words_on(book.pages[*page]));
        const auto caution = words.find(head_of(it.work));
        REQUIRE(caution != std::string::npos);
        for (const auto sentence : model::caution_of(it.work).further)
            CHECK(words.find(closed_up(std::string(sentence))) != std::string::npos);
        // Before the first thing to do, which has a box or a table.
        for (const auto* begins : {"Howfareachmarkis", "Step1:", "Datumend"}) {
            const auto at = words.find(begins);
            if (at != std::string::npos) CHECK(caution < at);
        }
    }
}

// Screws instead of rivets, or the other way round.
void make_all_removable(model::Project& project) {
    const auto resolved = model::resolve(project, tests::book_catalogue());
    for (const auto& joint : resolved.joints) {
        const auto& frame = project.frames[joint.frame];
        const auto name = [&](model::Index piece) {
            const auto member = resolved.pieces[piece].member;
            return member < frame.members.size() ? frame.members[member].name : std::string{};
        };
        const auto a = name(joint.pieces[0]);
        const auto b = name(joint.pieces[1]);
        if (a.empty() || b.empty()) continue;
        project.frames[joint.frame].joints.push_back({.members = {a, b}, .removable = true});
    }
}

}  // namespace

TEST_CASE(
    "each kind of work in a project has its caution at the head of its chapter, and work "
    "that is not asked for has none",
    "[model][book][samples]") {
    std::map<Work, std::array<int, 2>> seen;  // how many projects are without it, and with it
    for (const auto& name : tests::sample_names()) {
        CAPTURE(name);
        check_cautions(tests::book_job(tests::sample(name)), seen);
    }
    {
        CAPTURE("nothing");
        check_cautions(tests::book_job({}), seen);
    }
    {
        CAPTURE("screws alone");
        auto project = tests::sample("tool_cabinet.json");
        make_all_removable(project);
        check_cautions(tests::book_job(project), seen);
    }
    for (const auto& it : chapters()) {
        CAPTURE(model::name_of(it.work), seen[it.work]);
        CHECK(seen[it.work][0] > 0);
        CHECK(seen[it.work][1] > 0);
    }
}

TEST_CASE("the cover reminds of each kind of work in the project, and of no other",
          "[model][book][samples]") {
    for (const auto& name : tests::sample_names()) {
        CAPTURE(name);
        const auto job = tests::book_job(tests::sample(name));
        const auto words = closed_up(tests::words_on(tests::book_of(job).pages[0]));
        for (const auto& it : chapters()) {
            CAPTURE(model::name_of(it.work));
            const auto line = closed_up(std::string(model::caution_of(it.work).line));
            CHECK((words.find(line) != std::string::npos) == is_asked(job.resolved, it.work));
        }
    }
}
