#include "model/book/book.h"

#include "engine/drawing/pdf.h"
#include "engine/files/csv.h"
#include "model/assembly/assembly_order.h"
#include "model/schedule/cautions.h"
#include "model/schedule/csv_tables.h"
#include "model/schedule/decimal_mm.h"
#include "model/schedule/page_flow.h"
#include "model/schedule/square.h"

#include "tests/model/book/book_job.h"
#include "tests/model/book/texts_on_page.h"
#include "tests/support/random_project.h"

#include <catch2/catch.hpp>

#include <algorithm>

namespace {

using engine::Paper;

// Texts are broken into lines at spaces, and long words within: both sides without spaces.
std::string closed_up(const std::string& text) {
    std::string closed;
    for (const char c : text)
        if (c != ' ' && c != '\n') closed += c;
    return closed;
}

std::vector<std::string> titles_of(const engine::Document& document, int level) {
    std::vector<std::string> titles;
    for (const auto& bookmark : document.bookmarks)
        if (bookmark.level == level) titles.push_back(bookmark.title);
    return titles;
}

// Everything is inside of its page, with a margin that no printer refuses (5 mm, common practice).
void check_inside(const engine::Document& document) {
    for (std::size_t i = 0; i < document.pages.size(); ++i) {
        const auto& page = document.pages[i];
        CAPTURE(i);
        for (const auto& item : page.items()) {
            const auto* text = std::get_if<engine::DrawnText>(&item);
            if (text == nullptr) continue;
            CAPTURE(text->text);
            const auto& look = text->lettering;
            const double width = engine::text_width(text->text, look.size, look.weight);
            const double before = engine::before_anchor(width, look.anchor);
            const bool is_upright = look.turned_deg == 90;
            const double first = is_upright ? text->at.y + before : text->at.x - before;
            const double last = is_upright ? first - width : first + width;
            const double most = is_upright ? page.size().height : page.size().width;
            CHECK(std::min(first, last) >= 5.0);
            CHECK(std::max(first, last) <= most - 5.0);
            CHECK(text->at.y <= page.size().height - 5.0);
            CHECK(text->at.y >= 5.0);
        }
    }
}

}  // namespace

namespace {

// Whether one page alone says all that of a mark, each as a word of its own.
bool is_told_on_one_page(const engine::Document& book, const std::vector<std::string>& fields) {
    return std::ranges::any_of(book.pages, [&](const engine::Page& page) {
        const auto words = " " + tests::words_on(page) + " ";
        return std::ranges::all_of(fields, [&](const std::string& field) {
            return words.find(" " + field) != std::string::npos;
        });
    });
}

// What the page with its drawing says of a mark and hand.
std::vector<std::string> fields_of(const tests::BookJob& job, const model::CutRow& row) {
    std::string count = std::to_string(row.quantity) + (row.quantity == 1 ? " piece" : " pieces");
    if (row.hand == model::Hand::as_drawn) count += ", as drawn ";
    if (row.hand == model::Hand::opposite) count += ", opposite hand ";
    std::vector<std::string> fields{job.resolved.marks[row.mark].name + " " + count, row.section,
                                    model::length_on_paper(job.project, row.length),
                                    model::decimal_mm(row.length) + " mm"};
    if (!row.alloy.empty()) fields.push_back(row.alloy + ";");
    if (model::is_of_sheet(row.kind)) return fields;
    fields.push_back(row.end_a + ".");
    fields.push_back(row.end_b + ".");
    return fields;
}

}  // namespace

TEST_CASE("the book holds every field of the cut list, each mark's on a page of its own",
          "[model][book][samples]") {
    for (const auto& name : tests::sample_names()) {
        CAPTURE(name);
        const auto job = tests::book_job(tests::sample(name));
        const auto book = tests::book_of(job);
        const auto words = closed_up(tests::words_in(book));
        const auto rows = model::cut_rows(job.project, tests::book_catalogue(), job.resolved);
        REQUIRE_FALSE(rows.empty());
        for (const auto& row : rows) {
            const auto fields = fields_of(job, row);
            CAPTURE(job.resolved.marks[row.mark].name, fields);
            CHECK(is_told_on_one_page(book, fields));
            CHECK(words.find(closed_up(row.frames)) != std::string::npos);
            CHECK(words.find(closed_up(row.members)) != std::string::npos);
            // Another number would be missed.
            auto other = row;
            other.quantity += 1;
            CHECK_FALSE(is_told_on_one_page(book, fields_of(job, other)));
            other = row;
            other.length = other.length + engine::Length::from_nm(1'234'567);
            CHECK_FALSE(is_told_on_one_page(book, fields_of(job, other)));
        }
    }
}

TEST_CASE("the book holds every diagonal that proves a frame square", "[model][book][samples]") {
    for (const auto& name : tests::sample_names()) {
        CAPTURE(name);
        const auto job = tests::book_job(tests::sample(name));
        const auto words = closed_up(tests::words_in(tests::book_of(job)));
        const auto table = engine::read_csv(
            model::square_csv(job.project, model::square_rows(job.project, job.resolved)));
        REQUIRE(table);
        for (const auto& row : table->rows) {
            for (const auto& field : {row[4], row[6]}) {
                CAPTURE(field);
                CHECK(words.find(closed_up(field)) != std::string::npos);
            }
        }
    }
}

TEST_CASE("chapters are reached by bookmarks, in the order of the work", "[model][book]") {
    const auto book = tests::book_of(tests::book_job(tests::sample("tool_cabinet.json")));
    CHECK(titles_of(book, 0) ==
          std::vector<std::string>{"Cover", "What to buy", "What to cut", "Marks to cut and drill",
                                   "Frames", "Typical corners", "Fasteners and pins",
                                   "Order of assembly", "Diagonals and checks", "Index of marks"});
    CHECK(std::is_sorted(
        book.bookmarks.begin(), book.bookmarks.end(),
        [](const engine::Bookmark& a, const engine::Bookmark& b) { return a.page < b.page; }));
    for (const auto& bookmark : book.bookmarks) CHECK(bookmark.page < book.pages.size());
}

TEST_CASE("the order of assembly is printed step by step, with the diagonals to measure",
          "[model][book][samples]") {
    for (const auto& name : tests::sample_names()) {
        CAPTURE(name);
        const auto job = tests::book_job(tests::sample(name));
        const auto order =
            model::assembly_order(job.project, tests::book_catalogue(), job.resolved);
        const auto words = closed_up(tests::words_in(tests::book_of(job)));
        std::vector<int> numbers(job.project.frames.size(), 0);
        for (const auto& step : order.steps) {
            const auto title = "Step" + std::to_string(++numbers[step.frame]) + ":" +
                               closed_up(std::string(model::name_of(step.work)));
            CAPTURE(title);
            CHECK(words.find(title) != std::string::npos);
            for (const auto square : step.squares) {
                const auto diagonal = "measure" + closed_up(model::length_on_paper(
                                                      job.project, order.squares[square].diagonal));
                CHECK(words.find(diagonal) != std::string::npos);
            }
        }
    }
}

TEST_CASE("the book alone tells how a piece is laid to be drilled, and what its signs mean",
          "[model][book]") {
    const auto book = tests::book_of(tests::book_job(tests::sample("work_counter.json")));
    const auto chapter =
        std::ranges::find(book.bookmarks, "Marks to cut and drill", &engine::Bookmark::title);
    REQUIRE(chapter != book.bookmarks.end());
    const auto words = tests::words_on(book.pages[chapter->page]);
    for (const auto* needed : {"heel against the fence", "flat on its outer face", "Set the fence",
                               "datum end at the right", "\"~\" before a length", "match-drill"}) {
        CAPTURE(needed);
        CHECK(words.find(needed) != std::string::npos);
    }
}

TEST_CASE("the book alone tells whose directions its steps mean, and how to prove a divider square",
          "[model][book]") {
    const auto book = tests::book_of(tests::book_job(tests::sample("work_counter.json")));
    const auto page_of = [&](const std::string& title) {
        const auto chapter = std::ranges::find(book.bookmarks, title, &engine::Bookmark::title);
        REQUIRE(chapter != book.bookmarks.end());
        return closed_up(tests::words_on(book.pages[chapter->page]));
    };
    CHECK_THAT(page_of("Order of assembly"),
               Catch::Contains(closed_up("Directions are those of the cabinet as it stands")));
    CHECK_THAT(page_of("Diagonals and checks"), Catch::Contains(closed_up("divider 1")) &&
                                                    Catch::Contains(closed_up("heel to heel")));
}

TEST_CASE("each page says which it is of how many, and carries the stamp", "[model][book]") {
    const auto job = tests::book_job(tests::sample("parts_box.json"));
    const auto book = tests::book_of(job);
    for (std::size_t i = 0; i < book.pages.size(); ++i) {
        const auto words = tests::words_on(book.pages[i]);
        CHECK_THAT(words, Catch::Contains("page " + std::to_string(i + 1) + " of " +
                                          std::to_string(book.pages.size())));
        CHECK_THAT(words, Catch::Contains("stamp "));
        CHECK_THAT(words, Catch::Contains(job.project.name));
    }
}

TEST_CASE("the same project gives the same book", "[model][book]") {
    const auto name = GENERATE(as<std::string>{}, "tool_cabinet.json", "mixed_bench.json");
    const auto one = engine::pdf_bytes(tests::book_of(tests::book_job(tests::sample(name))));
    const auto two = engine::pdf_bytes(tests::book_of(tests::book_job(tests::sample(name))));
    REQUIRE(one);
    REQUIRE(two);
    CHECK(*one == *two);
}

TEST_CASE("no text is cut off, on any paper and in both systems of measure",
          "[model][book][samples]") {
    for (const auto& name : tests::sample_names()) {
        for (const auto paper : {Paper::a4, Paper::letter, Paper::a3, Paper::tabloid}) {
            for (const auto form :
                 {engine::TapeForm::inch_fraction, engine::TapeForm::millimetre}) {
                CAPTURE(name, engine::name_of(paper));
                auto job = tests::book_job(tests::sample(name));
                job.project.shown.form = form;
                check_inside(tests::book_of(job, paper));
            }
        }
    }
}

TEST_CASE("a project with nothing in it has a book that says so", "[model][book]") {
    const auto book = tests::book_of(tests::book_job({}));
    REQUIRE(engine::pdf_bytes(book));
    const auto words = tests::words_in(book);
    CHECK_THAT(words, Catch::Contains("There is no piece to draw yet."));
    CHECK_THAT(words, Catch::Contains("There is no piece to cut yet."));
    CHECK_THAT(words, Catch::Contains("There is nothing to buy."));
    check_inside(book);
}

TEST_CASE("a project with errors says on its cover that nothing is to be cut from it",
          "[model][book]") {
    auto project = tests::sample("tool_cabinet.json");
    project.frames[0].members[0].from = "nowhere";
    const auto job = tests::book_job(project);
    const auto book = tests::book_of(job);
    CHECK_THAT(tests::words_on(book.pages[0]), Catch::Contains("NOT FIT TO CUT FROM"));
    REQUIRE(engine::pdf_bytes(book));
    const auto sound = tests::book_of(tests::book_job(tests::sample("tool_cabinet.json")));
    CHECK_THAT(tests::words_on(sound.pages[0]), !Catch::Contains("NOT FIT TO CUT FROM"));
}

TEST_CASE("the picture on the cover leaves room for what stands below it", "[model][book][cover]") {
    for (const auto paper : {engine::Paper::a4, engine::Paper::letter}) {
        auto job = tests::book_job(tests::sample("tool_cabinet.json"));
        for (std::size_t errors = 0; errors < 12; ++errors) {
            const auto book = tests::book_of(job, paper);
            REQUIRE(book.bookmarks.size() > 1);
            CAPTURE(engine::name_of(paper), errors);
            CHECK(book.bookmarks[1].page == 1);
            job.supply.findings.push_back({.code = "interference",
                                           .severity = model::Severity::error,
                                           .what = "two pieces lie in one place, and it takes two "
                                                   "lines of the cover to tell of that, as it does "
                                                   "of many a fault"});
        }
    }
}

TEST_CASE("names of any length and with any signs are printed, or as much of them as fits",
          "[model][book]") {
    auto project = tests::sample("parts_box.json");
    project.name = std::string(400, 'W');
    project.frames[0].name = std::string(300, 'M');
    project.frames[0].members[0].name = std::string(500, 'x') + "\n\t\x01\xFF";
    const auto book = tests::book_of(tests::book_job(project));
    REQUIRE(engine::pdf_bytes(book));
    check_inside(book);
}

TEST_CASE("strength is never certified", "[model][book]") {
    const auto words = closed_up(
        tests::words_in(tests::book_of(tests::book_job(tests::sample("tool_cabinet.json")))));
    CHECK(words.find(closed_up(std::string(model::strength_note))) != std::string::npos);
}

// Names may be as long as the file allows; each step names its pieces.
TEST_CASE("a name that is longer than a page goes on on the next one", "[model][book]") {
    constexpr std::size_t letters = 12'000;
    auto project = tests::sample("parts_box.json");
    project.frames[0].members[0].name = std::string(letters, 'x');
    for (const auto paper : {Paper::a4, Paper::letter}) {
        const auto book = tests::book_of(tests::book_job(project), paper);
        check_inside(book);
        std::size_t from = book.pages.size();
        std::size_t to = book.pages.size();
        for (const auto& bookmark : book.bookmarks) {
            if (bookmark.title == "Order of assembly") from = bookmark.page;
            if (bookmark.title == "Diagonals and checks") to = bookmark.page;
        }
        std::size_t printed = 0;
        for (std::size_t i = from; i < to; ++i) {
            const auto words = tests::words_on(book.pages[i]);
            printed += static_cast<std::size_t>(std::ranges::count(words, 'x'));
        }
        // Where it is put on, and at each of its joints.
        CHECK(printed >= 2 * letters);
    }
}

TEST_CASE("random skeletons of every shape have books that can be printed", "[model][book]") {
    for (std::uint32_t seed = 1; seed <= 12; ++seed) {
        CAPTURE(seed);
        const auto random = tests::random_project(seed, tests::book_catalogue());
        const auto book = tests::book_of(tests::book_job(random.project));
        CHECK(engine::pdf_bytes(book));
        check_inside(book);
    }
}
